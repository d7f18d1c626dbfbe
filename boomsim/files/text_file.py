"""Text files written as a whole or not at all."""

from os import PathLike
from pathlib import Path

from boomsim.files.whole_files import refuse_target, whole_file


def write_whole(text: str, path: str | PathLike[str], *, ending: str) -> Path:
    """Write a text file whole or not at all.

    Parameters
    ----------
    ending : str
        That the name must have, such as ".html"

    Raises
    ------
    ValueError
        If the ending is another, or the folder does not exist.
    """
    target = refuse_ending(path, ending=ending)
    with whole_file(target) as part:
        part.write_text(text, encoding="utf-8")
    return target


def refuse_ending(path: str | PathLike[str], *, ending: str) -> Path:
    """Refuse a file that could not be written, before any work is done."""
    target = Path(path)
    if target.suffix.lower() != ending:
        stem = target.stem or "file"
        raise ValueError(f'"{target.name}" should end in {ending}, as "{stem}{ending}".')
    refuse_target(target)
    return target
