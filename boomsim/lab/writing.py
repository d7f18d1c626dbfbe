"""Text files written as a whole or not at all."""

from os import PathLike
from pathlib import Path


def write_whole(text: str, path: str | PathLike[str], *, ending: str) -> Path:
    """Write a file beside its place and move it there when it is complete.

    Parameters
    ----------
    text : str
    path : str or path
    ending : str
        That the name must have, such as ".html"

    Returns
    -------
    Path

    Raises
    ------
    ValueError
        If the ending is another, or the folder does not exist.
    """
    target = refuse_ending(path, ending=ending)
    beside = target.with_name(target.name + ".part")
    try:
        beside.write_text(text, encoding="utf-8")
        beside.replace(target)
    finally:
        beside.unlink(missing_ok=True)
    return target


def refuse_ending(path: str | PathLike[str], *, ending: str) -> Path:
    """Refuse a file that could not be written, before any work is done.

    Parameters
    ----------
    path : str or path
    ending : str

    Returns
    -------
    Path
    """
    target = Path(path)
    if target.suffix.lower() != ending:
        stem = target.stem or "file"
        raise ValueError(f'"{target.name}" should end in {ending}, as "{stem}{ending}".')
    if not target.parent.is_dir():
        raise ValueError(f'The folder "{target.parent}" does not exist. Make it first.')
    if target.is_dir():
        raise ValueError(f'"{target}" is a folder. Give another name.')
    return target
