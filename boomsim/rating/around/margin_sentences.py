"""The room of one load in each direction, in sentences."""

from math import ceil, degrees, floor, isfinite

import numpy as np

from boomsim.rating.around.direction_margins import HAIR, Margins
from boomsim.rating.around.slew_directions import direction
from boomsim.units import show, show_rated


def tell_margins(found: Margins, *, units: str) -> str:
    """Say where the load is rated, and where it has most and least room.

    Returns
    -------
    str
        Two sentences
    """
    load, radius = show_rated(found.load, units), show(found.radius, "length", units)
    return f"{load} at {radius} {_where(found)}. {_most_and_least(found)}"


def _where(found: Margins) -> str:
    if np.all(found.rated):
        return "is no more than is rated, all around"
    if not len(found.spans):
        return "is more than is rated, whichever way the boom points"
    # Rounded inwards: nobody stands on the edge of a sector.
    spans = [
        f"{ceil(degrees(begin) - 1e-6)}° to {floor(degrees(end) + 1e-6)}°"
        for begin, end in found.spans
    ]
    return (
        f"is no more than is rated only while the boom points {' or '.join(spans)} (0° is over the "
        "rear, 90° over the right side, 180° over the front)"
    )


def _most_and_least(found: Margins) -> str:
    # Of both sides alike the right one is named.
    right = np.where(found.slew >= 0.0, 0.0, HAIR)
    best, worst = int(np.argmax(found.tips - right)), int(np.argmin(found.tips + right))
    if not isfinite(found.tips[worst]):
        return "Nowhere does any load tip the crane at this radius."
    if found.tips[best] - found.tips[worst] < HAIR:
        return f"It has the same room everywhere: {_room(found, worst)}."
    return (
        f"Most room {_named(found, best)}: {_room(found, best)}; least "
        f"{_named(found, worst)}: {_room(found, worst)}."
    )


def _named(found: Margins, place: int) -> str:
    return direction(float(found.slew[place]))


def _room(found: Margins, place: int) -> str:
    share, tips = float(found.share[place]), float(found.tips[place])
    of_rated = (
        f"{percent_of_rated(share)} of the rated load" if isfinite(share) else "nothing rated"
    )
    return f"{of_rated}, and {times(tips)} to tipping without any margin"


def percent_of_rated(share: float) -> str:
    """Write what is used of a rated load, rounded up; all of it, searched twice, is 100 %."""
    return f"{ceil(100.0 * (share - HAIR) - 1e-9)} %" if isfinite(share) else "nothing rated"


def times(tips: float) -> str:
    """Write by how many times a load may grow until it tips, rounded down."""
    return f"{floor(100.0 * tips) / 100.0:.2f} times" if isfinite(tips) else "never"
