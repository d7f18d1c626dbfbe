"""What an indicator shows and what is, in sentences for a class."""

from math import degrees, isfinite

from boomsim.machine.model import Support, TurningMass
from boomsim.rating.indicator.indicator_study import LESS, Indicated, Row
from boomsim.rating.parts_reeved import parts_said
from boomsim.rating.strategies import label
from boomsim.units import show

WHY = {
    "as told": "What it was told is so: its load is as near as a straight boom's statics come.",
    "bending ignored": "The boom bends and the load hangs farther out than a straight boom says: "
    "it takes the radius too small and the load too large.",
    "side pull": "The cylinder holds the boom up and not sideways: a pull across is not measured.",
    "leaning ahead": "Its angle hangs by the plumb line and shows that the boom is lower; that the "
    "whole crane leans with it, no sensor tells.",
    "leaning across": "No sensor tells that the crane leans across the boom.",
    "wind from behind": "Wind that pushes the boom outwards loads the cylinder: it reads as load.",
    "wind across": "The cylinder holds the boom up and not sideways: wind across is not measured.",
    "swinging out": "The rope pulls the head outwards and loads the cylinder: it reads as load, "
    "and where the load hangs, no sensor tells.",
    "way out": "The boom is as long as it was told: which sections are out, no length tells. Empty "
    "push and chart are those of another way.",
    "counterweight": "The cylinder stands between boom and superstructure: what lies behind is not "
    "measured.",
    "outriggers": "The cylinder stands between boom and superstructure: what stands below is not "
    "measured.",
    "parts of line": "The lead line pulls the head back harder than it reckons with: that relieves "
    "the cylinder and reads as less load.",
}
"""Why it sees a condition or does not."""


def name_of(row: Row, found: Indicated, *, units: str) -> str:
    """Name a condition with its amount, or what is beside what was told.

    Parameters
    ----------
    row : Row
    found : Indicated
    units : str
        "metric" or "us"
    """
    condition, much = row.condition, found.amounts
    actual, told = condition.actual, condition.entered
    lean, wind = show(much.lean, "angle", units), show(much.wind, "speed", units)
    names = {
        "as told": "all as it was told",
        "bending ignored": "it ignores that the boom bends",
        "side pull": f"side pull, {show(much.side_pull, 'share', units)} of the load",
        "leaning ahead": f"leaning {lean} ahead",
        "leaning across": f"leaning {lean} across",
        "wind from behind": f"wind {wind} from behind",
        "wind across": f"wind {wind} across",
        "swinging out": f"slewed round: rope {degrees(found.swing_angle):.1f}° out",
        "way out": f"way out ({label(condition.extension)}), told ({label(condition.told)})",
        "counterweight": f"counterweight {_weighs(actual.counterweight, units)}, "
        f"told {_weighs(told.counterweight, units)}",
        "outriggers": f"{_stands(actual.support)}, told {told.support.name}",
        "parts of line": f"{parts_said(actual.parts)}, told {told.parts}",
    }
    return names[condition.key]


def _weighs(weight: TurningMass, units: str) -> str:
    """Name a counterweight; in pounds its mass, for its name has tonnes in it."""
    return show(weight.mass, "mass", units) if units == "us" and weight.mass > 0.0 else weight.name


def _stands(support: Support) -> str:
    return f"{support.kind} {support.name}"


def tell_row(row: Row, found: Indicated, *, units: str) -> str:
    """Say what it shows, what is, and why."""
    name = name_of(row, found, units=units)
    load, radius = show(row.shown.load, "mass", units), show(row.shown.radius, "length", units)
    return (
        f"{name[0].upper()}{name[1:]}: it shows {load} at {radius}, "
        f"{percent(row.shown_utilisation)}; it is {percent(row.utilisation)}. "
        f"{WHY[row.condition.key]}"
    )


def tell_worst(found: Indicated, *, units: str) -> str:
    """Say where it shows too little by most.

    Returns
    -------
    str
        One sentence
    """
    short = [row for row in found.rows if row.verdict == LESS]
    if not short:
        return "Here the indicator shows too little in none of these conditions."
    worst = max(short, key=lambda row: row.utilisation - row.shown_utilisation)
    return (
        f"The indicator shows {percent(worst.shown_utilisation)} and it is "
        f"{percent(worst.utilisation)}: {name_of(worst, found, units=units)}."
    )


def percent(share: float) -> str:
    """Write how much of a rated load is used; more than all of it never reads as 100 %."""
    if not isfinite(share):
        return "blank" if share != share else "not rated"
    whole = round(100.0 * share)
    return f"{max(whole, 101) if share > 1.0 + 1e-9 else whole} %"
