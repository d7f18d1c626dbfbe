"""Mats under the most loaded float, on ground that bears it or does not."""

from math import ceil, isfinite

from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit

FORCE = {METRIC: ("kN", 10.0), US: ("lbf", 1000.0)}
"""Unit of float loads, and the step to which they are rounded up."""
SIDE = {METRIC: ("m", 0.1, 5, 16), US: ("ft", 0.25, 6, 20)}
"""Unit of mats, its step, and the least and most steps."""
BEARING = {METRIC: ("kN/m^2", (100, 120, 150, 200, 250)),
           US: ("lbf/ft^2", (2000, 2500, 3000, 4000, 5000))}  # fmt: skip


def utilisation_of(chance: Chance, fails: bool) -> float:
    """Draw a share of what is permitted, clearly above it or clearly below.

    Returns
    -------
    float
        [1]
    """
    return (106 + chance.integer(25) if fails else 70 + chance.integer(25)) / 100


def on_a_mat(chance: Chance, system: str, force: float, *, fails: bool) -> dict[str, float]:
    """Choose a square mat and the ground below it.

    Parameters
    ----------
    chance : Chance
    system : str
    force : float
        Of the most loaded float; NaN where the crane tips [N]
    fails : bool
        Whether the ground is to bear less than the mat presses

    Returns
    -------
    dict of str to float
        Float load P as a plan has it, rounded up [N], width b of the mat [m], bearing q_0 [Pa]; P
        alone is NaN if no mat on offer fits
    """
    if not isfinite(force):
        return {"P": force}
    told = _rounded_up(force, system)
    low, high = (1.06, 1.40) if fails else (0.60, 0.94)
    name, by, least, most = SIDE[system]
    sides = [n * by * float(unit(name).factor) for n in range(least, most + 1)]
    grounds = [one * float(unit(BEARING[system][0]).factor) for one in BEARING[system][1]]
    fitting = [
        {"b": side, "q_0": one, "P": told}
        for side in sides
        for one in grounds
        if low <= told / side**2 / one <= high
    ]
    return chance.pick(fitting) if fitting else {"P": float("nan")}


def _rounded_up(force: float, system: str) -> float:
    """Round a float load up to the step of a plan [N]."""
    name, step = FORCE[system]
    one = step * float(unit(name).factor)
    return ceil(force / one - 1e-9) * one
