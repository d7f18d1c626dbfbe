"""A link as a QR code (ISO/IEC 18004), for a camera: one path that a page draws.

Only segno's encoder is used, which needs nothing else; where it is not at hand there is no code.
"""

from importlib import import_module
from typing import Any

QUIET = 4
"""Modules of white that a reader needs all round [1]."""

MOST_LETTERS = 2300
"""A longer text does not fit into a code of the middle level of correction."""


def has_codes() -> bool:
    """Whether there is something that makes codes."""
    try:
        import_module("segno.encoder")
    except ImportError:
        return False
    return True


def link_code(text: str) -> dict[str, Any]:
    """Make the code of a link.

    Parameters
    ----------
    text : str

    Returns
    -------
    dict
        `size`: modules along a side with the quiet zone [1]; `path`: SVG path of the dark modules;
        both empty where no code can be made

    Examples
    --------
    >>> link_code("https://example.org/crane.html#machine=bench")["size"]
    41
    """
    if not has_codes() or not 0 < len(text) <= MOST_LETTERS:
        return {"size": 0, "path": ""}
    made = import_module("segno.encoder").encode(text, error="m", micro=False)
    found = [
        f"M{x + QUIET},{y + QUIET}h1v1h-1z"
        for y, row in enumerate(made.matrix)
        for x, dark in enumerate(row)
        if dark
    ]
    return {"size": len(made.matrix) + 2 * QUIET, "path": "".join(found)}
