"""A text as a QR code (ISO/IEC 18004), for a camera: one path that a page or a sheet draws.

Only segno's encoder is used, which needs nothing else; where it is not at hand there is no code.
"""

from typing import Any

from boomsim.figures.colours_and_lines import INK, PAPER

QUIET = 4
"""Modules of white that a reader needs all round [1]."""

MOST_LETTERS = 2300
"""A longer text does not fit into a code of the middle level of correction."""


def qr_code(text: str) -> dict[str, Any]:
    """Make the code of a text.

    Returns
    -------
    dict
        `size`: modules along a side with the quiet zone [1]; `path`: SVG path of the dark modules;
        both empty where no code can be made

    Examples
    --------
    >>> qr_code("https://example.org/crane.html#machine=bench")["size"]
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


def qr_svg(text: str) -> str:
    """Draw the code of a text.

    Returns
    -------
    str
        SVG, black on white, as large as what it is put into; nothing where no code can be made
    """
    made = qr_code(text)
    size = made["size"]
    if not size:
        return ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {size} {size}">'
        f'<path fill="{PAPER}" d="M0,0h{size}v{size}h-{size}z"/>'
        f'<path fill="{INK}" d="{made["path"]}"/></svg>'
    )
