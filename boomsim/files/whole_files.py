"""Files that are there whole or not at all."""

import os
import secrets
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from shutil import rmtree

from boomsim.files.file_errors import FileError, explained

PART = ".boomsim-"
"""How the name of a file begins that is not whole yet."""


@contextmanager
def whole_file(target: Path) -> Iterator[Path]:
    """Give a file to write beside the target, and put it in its place once it is whole.

    Parameters
    ----------
    target : Path
        A link is followed; a device or a pipe is written to as it is

    Raises
    ------
    FileError
        If the folder is missing, the target is a folder or protected, or the disk is full
    """
    refuse_target(target)
    with explained(target, to_be="written"):
        if target.exists() and not target.is_file():
            yield target
            return
        place = target.resolve()
        # Named before its first byte is written: an interruption at any moment finds it.
        part = place.with_name(f"{PART}{secrets.token_hex(8)}.part")
        try:
            yield part
            part.replace(place)
        finally:
            with suppress(OSError):
                part.unlink()


def write_whole(target: Path, content: bytes) -> Path:
    """Write a file so that nobody ever sees half of it.

    Parameters
    ----------
    target : Path
        Its folder is made if it is not there

    Returns
    -------
    Path
        The target
    """
    make_folder(target.parent)
    with whole_file(target) as part:
        part.write_bytes(content)
    return target


@contextmanager
def room_in(folder: Path) -> Iterator[Path]:
    """Give a folder for files that are to be put in their places together.

    Parameters
    ----------
    folder : Path
        Where it is made, and taken away again with all that is left in it
    """
    room = folder / f"{PART}{secrets.token_hex(8)}"
    with explained(folder, to_be="written"):
        try:
            room.mkdir()
            yield room
        finally:
            rmtree(room, ignore_errors=True)


def make_folder(folder: Path) -> Path:
    """Make a folder, and those above it, unless it is there.

    Returns
    -------
    Path
        The folder
    """
    with explained(folder, to_be="written"):
        folder.mkdir(parents=True, exist_ok=True)
    return folder


def refuse_target(target: Path) -> None:
    """Refuse a file that could not be written, before any work is done.

    Raises
    ------
    FileError
    """
    with explained(target, to_be="written"):
        if target.is_dir():
            raise FileError(f'"{target}" is a folder. Give the name of a file.')
        if not target.parent.is_dir():
            raise FileError(
                f'The folder "{target.parent}" for "{target.name}" does not exist. Make it first, '
                "or give another folder."
            )
        if target.exists() and not os.access(target, os.W_OK):
            raise FileError(f'"{target}" is protected against writing. Give another name.')
