"""The program in a process of its own, as a shell starts it."""

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


def one_line(text: str) -> str:
    """The only line of a text."""
    lines = text.splitlines()
    assert len(lines) == 1, text
    return lines[0]
