"""Standard output and standard error, whatever they are connected to."""

import os
import sys
from contextlib import suppress
from pathlib import Path
from typing import TextIO


def prepare() -> None:
    """Make both streams safe to write to."""
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            # It was closed; a file opened later must not be taken for it. This one stays open.
            setattr(sys, name, Path(os.devnull).open("w", encoding="utf-8"))  # noqa: SIM115
        stream = getattr(sys, name)
        if hasattr(stream, "reconfigure"):
            # A terminal with an old code page shows a question mark rather than a traceback.
            stream.reconfigure(errors="replace")


def in_utf_8() -> None:
    """Write what is UTF-8 by its definition, a machine file, as UTF-8 in every code page."""
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(encoding="utf-8")


def is_utf_8() -> bool:
    """Whether standard output can hold every character."""
    return str(getattr(sys.stdout, "encoding", "")).lower().replace("-", "") == "utf8"


def say(text: str) -> None:
    """Print to standard error if it is open."""
    with suppress(OSError, ValueError):
        print(text, file=sys.stderr, flush=True)


def what_failed(error: OSError) -> str:
    """Say what the system refused: a file by its name, or else to take the answer."""
    why = error.strerror or str(error)
    if error.filename is None:
        return (
            f"the answer cannot be written to standard output: {why}. Make room there, or send it "
            "somewhere else."
        )
    return f"{error.filename}: {why}. Check the name, and that you may use it."


def finish() -> None:
    """Drop what could not be written: Python would try again at the end and trip over it."""
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except (OSError, ValueError):
            _drop(stream)


def _drop(stream: TextIO) -> None:
    with suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)
