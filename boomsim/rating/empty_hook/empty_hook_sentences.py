"""Where the crane turns over with its empty hook, in a sentence."""

from math import ceil, degrees
from typing import Any

import numpy as np

from boomsim.machine.model import Machine
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook
from boomsim.rating.parts_reeved import what_hangs
from boomsim.units import display, listed, show

NO_MARGIN = "about the least tipping line and without any margin"


def tell_empty_hook(found: EmptyHook, *, units: str, row: int = 0) -> str:
    """Say from where on the crane turns over, rounded to the safe side.

    Parameters
    ----------
    row : int
        Which of the configurations

    Returns
    -------
    str
        A sentence; empty where the crane never turns over
    """
    radius, angle = float(found.radius[row]), float(found.angle[row])
    if radius == np.inf:
        return ""
    hung = hanging_words(found.setup.machine, mass=float(found.load[row]), units=units)
    begun = f"{hung} the crane turns over"
    if not radius > 0.0:
        return (
            f"{begun} at every boom angle, {NO_MARGIN}: set up like this it cannot stand with this "
            "boom."
        )
    return (
        f"{begun} from {near_radius(radius, units=units)} outwards, {NO_MARGIN}: never lower this "
        f"boom below {steep_angle(angle)}."
    )


def hanging_words(machine: Machine, *, mass: float, units: str) -> str:
    """Name what hangs on the empty hook.

    Parameters
    ----------
    mass : float
        Of all of it [kg]

    Returns
    -------
    str
        Begins a sentence
    """
    named = what_hangs(machine)
    if not named:
        return "With nothing on the rope"
    said = show(mass, "mass", units)
    if named == ("rope",):
        return f"With nothing but its own rope hanging ({said})"
    return f"With the empty hook ({listed(named)}, {said})"


def under_hook_words(machine: Machine) -> str:
    """Say why nothing is rated where less could hang than hangs on the empty hook already.

    Parameters
    ----------
    machine : Machine
        It may have neither hook block, slings nor rope weight

    Returns
    -------
    str
        Within a sentence
    """
    named = what_hangs(machine)
    if not named:
        return "nothing is rated here"
    if len(named) > 1 or named == ("slings",):
        return f"less is rated here than {listed(named)} weigh"
    return f"less is rated here than the {named[0]} weighs"


def near_radius(radius: float, *, units: str) -> str:
    """Write a radius from which on something must not be, rounded down.

    Parameters
    ----------
    radius : float
        [m]
    """
    return display("length", units, like=radius).text_down(radius)


def steep_angle(angle: float) -> str:
    """Write an angle below which the boom must not come, rounded up to a whole degree.

    Parameters
    ----------
    angle : float
        [rad]
    """
    return f"{ceil(degrees(angle) - 1e-6)}°"


def plain_empty_hook(found: EmptyHook, *, row: int = 0) -> dict[str, Any]:
    """Tell the same as plain values, SI.

    Returns
    -------
    dict
        Without angle and radius where the crane never turns over, or stands nowhere
    """
    somewhere = bool(found.turns_over[row]) and bool(found.stands[row])
    return {
        "load": float(found.load[row]),
        "turns_over": bool(found.turns_over[row]),
        "stands": bool(found.stands[row]),
        "least_boom_angle": float(found.angle[row]) if somewhere else None,
        "greatest_radius": float(found.radius[row]) if somewhere else None,
    }
