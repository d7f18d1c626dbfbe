"""Sentences on the way of a load: how far it may go, and what would happen beyond."""

from math import ceil, degrees

from boomsim.rating.empty_hook.empty_hook_sentences import near_radius
from boomsim.rating.limits.limit_kind import STABILITY, TIPS
from boomsim.rating.limits.limit_sentences import WHAT_SETS
from boomsim.rating.path.lowering_study import Lowering
from boomsim.rating.path.path_marks import Mark, Marks, Place
from boomsim.units import show

SKETCH = "it bends beyond the model by then: a sketch"


def tell_lowering(found: Lowering, *, units: str) -> str:
    """Say how far down a boom may come with a load, and what would happen beyond."""
    load = show(found.load, "mass", units)
    rated = found.marks.rated
    if not found.is_rated_at_start:
        where = place_words(found.start, units=units)
        return (
            f"With {load} this boom must not be lowered: the load is more than is rated already "
            f"where the way begins, at {where} radius."
        )
    if rated is None:
        return (
            f"With {load} this boom is rated all the way down, to "
            f"{place_words(found.end, units=units)} radius: nowhere is the load more than is rated."
        )
    ends = tell_ends(found.marks, units=units, direction=-1.0)
    return (
        f"With {load} this boom is rated down to {limit_words(rated.place, units=units)} radius: "
        f"beyond it the load is more than is rated; {ends}."
    )


def tell_ends(marks: Marks, *, units: str, direction: float) -> str:
    """Say what would happen on the way if nobody stopped it, without any margin.

    Parameters
    ----------
    direction : float
        1 where places along the way grow, -1 where they become less [1]

    Returns
    -------
    str
        A clause
    """
    first = marks.first_of_ends(direction=direction)
    if first is None:
        way = "out" if direction > 0.0 else "down"
        return f"even all the way {way} nothing would break and it would not tip"
    note = "" if first.place.is_valid else f" ({SKETCH})"
    if first.limit.kind.passed == TIPS:
        return f"it would tip at {near_radius(first.place.radius, units=units)} radius{note}"
    then = ""
    if marks.tips is not None:
        then = f", before it tips at {near_radius(marks.tips.place.radius, units=units)}"
    where = f"{near_radius(first.place.radius, units=units)} radius"
    return f"something would break at {where} ({first.limit.words}){then}{note}"


def tell_what_sets(mark: Mark) -> str:
    """Say what sets the rated figure that a load has come up to."""
    words = WHAT_SETS[mark.limit.set_by]
    said = words if mark.limit.set_by == STABILITY else f"{words} ({mark.limit.words})"
    return f"The rated load there: {said}."


def place_words(place: Place, *, units: str) -> str:
    """Write where a way begins or ends, as a table of it does.

    Returns
    -------
    str
        Such as "80.0°, 2.24 m"
    """
    return f"{show(place.angle, 'angle', units)}, {show(place.radius, 'length', units)}"


def limit_words(place: Place, *, units: str) -> str:
    """Write a place down to which a load is rated, angle rounded up and radius rounded down.

    Returns
    -------
    str
        Such as "51.5°, 14.3 m"
    """
    return f"{steep(place.angle)}, {near_radius(place.radius, units=units)}"


def steep(angle: float) -> str:
    """Write a boom angle for speaking, rounded up to a tenth.

    Parameters
    ----------
    angle : float
        [rad]
    """
    tenths = ceil(10.0 * degrees(angle) - 1e-6)
    return f"{tenths / 10.0 + 0.0:.1f}°"
