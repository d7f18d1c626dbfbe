"""Notebooks and exercises that come with the package: in a folder, a checkout or a zip."""

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from boomsim.files.file_errors import FileError

KNOWN_BY = {"notebooks": "explorer.ipynb", "exercises": "quiz-10-minutes.toml"}
"""A file that says it is this folder, and not another of the same name."""


def shipped(folder: str) -> Traversable:
    """Find a folder that came with the package.

    Parameters
    ----------
    folder : str
        A key of `KNOWN_BY`

    Returns
    -------
    Traversable
        Inside an installed package; in a checkout beside it

    Raises
    ------
    FileError
        If it is in neither place.
    """
    for around in (files("boomsim"), Path(__file__).resolve().parents[2]):
        place = around / folder
        if (place / KNOWN_BY[folder]).is_file():
            return place
    raise FileError(
        f"The {folder} did not come with this installation. Install boomsim again, or run from a "
        "checkout of it."
    )


def shipped_files(folder: str, *, ending: str) -> dict[str, Traversable]:
    """List the files of a folder that came with the package.

    Parameters
    ----------
    folder : str
        A key of `KNOWN_BY`
    ending : str
        Of the files wanted, such as ".toml"

    Returns
    -------
    dict of str to Traversable
        By name, in alphabetical order
    """
    found = {one.name: one for one in shipped(folder).iterdir() if one.name.endswith(ending)}
    return dict(sorted(found.items()))
