"""A link as a QR code (ISO/IEC 18004), for a camera: one path that a page draws.

Only segno's encoder is used, which needs nothing else; where it is not at hand there is no code.
"""

from typing import Any

QUIET = 4
"""Modules of white that a reader needs all round [1]."""

MOST_LETTERS = 2300
"""A longer text does not fit into a code of the middle level of correction."""


def link_code(text: str) -> dict[str, Any]:
    """Make the code of a link.

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
    try:
        from segno.encoder import encode
    except ImportError:
        return {"size": 0, "path": ""}
    if not 0 < len(text) <= MOST_LETTERS:
        return {"size": 0, "path": ""}
    made = encode(text, error="m", micro=False)  # type: ignore[no-untyped-call]
    found = [
        f"M{x + QUIET},{y + QUIET}h1v1h-1z"
        for y, row in enumerate(made.matrix)
        for x, dark in enumerate(row)
        if dark
    ]
    return {"size": len(made.matrix) + 2 * QUIET, "path": "".join(found)}
