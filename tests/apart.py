"""The program in a process of its own, as a shell starts it."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[1]
PROGRAM = (sys.executable, "-m", "boomsim")


def environment(**more: str) -> dict[str, str]:
    """Ours, with the package found from any folder."""
    path = os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])
    return os.environ | {"PYTHONPATH": path, "OPENBLAS_NUM_THREADS": "1"} | more


def started(*words: str, cwd: Path, **options: Any) -> subprocess.Popen[str]:
    """Start a command and do not wait for it."""
    pipe = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, "encoding": "utf-8"}
    return subprocess.Popen(
        [*PROGRAM, *words], cwd=cwd, **({"env": environment()} | pipe | options)
    )


def ran(*words: str, cwd: Path, **options: Any) -> tuple[int, str, str]:
    """Run a command: exit code, standard output, standard error."""
    process = started(*words, cwd=cwd, **options)
    out, err = process.communicate(timeout=300)
    return process.returncode, out, err


ONE_AFTER_ANOTHER = """
import io, json, sys
from contextlib import redirect_stderr, redirect_stdout
from boomsim.cli import main
told = []
for words in json.loads(sys.argv[1]):
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err):
        code = main(words)
    told.append((code, out.getvalue(), err.getvalue()))
print(json.dumps(told))
"""


def ran_in_turn(
    commands: list[list[str]], *, cwd: Path, **options: Any
) -> list[tuple[int, str, str]]:
    """Run commands one after another in one other process; of each what `ran` gives."""
    done = subprocess.run(
        [sys.executable, "-c", ONE_AFTER_ANOTHER, json.dumps(commands)],
        cwd=cwd, capture_output=True, encoding="utf-8", check=True, timeout=300,
        **({"env": environment()} | options),
    )  # fmt: skip
    return [tuple(one) for one in json.loads(done.stdout)]


def one_line(text: str) -> str:
    """The only line of a text."""
    lines = text.splitlines()
    assert len(lines) == 1, text
    return lines[0]
