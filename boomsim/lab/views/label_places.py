"""Labels that step out of one another's way."""

from boomsim.lab.views.svg_text import Box, Point


def spread(wanted: list[Point], widths: list[float], *, high: float, box: Box) -> list[Point]:
    """Move labels up until none covers an earlier one.

    Parameters
    ----------
    wanted : list of (float, float)
        Right end of each label's base line [px]
    widths : list of float
        [px]
    high : float
        Height of a line of type [px]
    box : Box
        That they stay in

    Returns
    -------
    list of (float, float)
        Right end of each label's base line [px]
    """
    placed: list[Point] = []
    for (x, y), width in zip(wanted, widths, strict=True):
        x = min(max(x, box.x + width + 2.0), box.right - 2.0)
        y = min(max(y, box.y + high), box.bottom - 2.0)
        for (other_x, other_y), other_width in zip(placed, widths, strict=False):
            beside = x < other_x - other_width - 6.0 or x - width > other_x + 6.0
            if not beside and abs(y - other_y) < high:
                y = other_y - high
        placed.append((x, max(y, box.y + high)))
    return placed
