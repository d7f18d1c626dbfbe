"""What can go wrong with a file, said so that the reader knows what to do next."""

import errno
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_FULL = {errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)}


class FileError(ValueError):
    """A file or folder that cannot be read or written: says which, why, and the way out."""


@contextmanager
def explained(target: Path, *, to_be: str) -> Iterator[None]:
    """Turn the system's error into a sentence.

    Parameters
    ----------
    to_be : str
        "read" or "written"

    Raises
    ------
    FileError
    """
    refuse_name(target)
    try:
        yield
    except BrokenPipeError:
        raise
    except OSError as error:
        raise FileError(f"{shown(target)} cannot be {to_be}: {_reason(error, to_be)}") from None


def shown(path: Path) -> str:
    """Show a path, but not a page of it; of one that leads nowhere 80 characters."""
    text = str(path)
    half = 80 if os.path.isdir(path.parent) and len(path.name) <= 80 else 39
    return text if len(text) <= 2 * half + 1 else f"{text[:half]}…{text[-half:]}"


def refuse_name(path: Path) -> None:
    """Refuse what no file can be called."""
    try:
        fits = b"\0" not in os.fsencode(path)
    except UnicodeEncodeError:
        fits = False
    if not fits:
        raise FileError(f"{ascii(str(path))[:80]} is no name of a file here. Give another name.")


def _reason(error: OSError, to_be: str) -> str:
    """Say why, and what helps."""
    why = f"{error.strerror or error}."
    if error.errno == errno.ENAMETOOLONG:
        return f"{why} Give a shorter name."
    if to_be == "read":
        return f"{why} Check its name, and that you may read it."
    if error.errno in _FULL:
        return f"{why} Choose another folder, or make room on the disk."
    if error.errno in (errno.EACCES, errno.EPERM):
        return f"{why} Choose another folder, or close it in other programs."
    return f"{why} Choose another folder."
