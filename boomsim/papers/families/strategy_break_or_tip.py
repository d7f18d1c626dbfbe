"""Past the rated load the crane tips, or something gives way before it does."""

from functools import cache

import numpy as np
from sympy import Float, Max, Min, symbols

from boomsim.machine.machine_files import load_machine
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Values
from boomsim.rating.capacity import rate
from boomsim.rating.overload.failure_loads import ends_of
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import label

P, S, T, R, k = symbols("P S T R k")
F, n = symbols("F n")

LIGHT, HALVES, HEAVY, ALL = (
    (0.0, 0.0, 0.0, 1.0), (0.0, 0.0, 0.45, 0.45), (1.0, 0.0, 0.0, 0.0), (0.9,) * 4,
)  # fmt: skip
CELLS = (
    (LIGHT, 7.0), (LIGHT, 12.0), (HALVES, 5.0), (HALVES, 6.0), (HALVES, 8.0), (HALVES, 10.0),
    (HEAVY, 6.0), (HEAVY, 8.0), (ALL, 8.0), (ALL, 12.0),
)  # fmt: skip
"""Configurations of the invented yard crane, with radii [m]."""


@cache
def studies() -> tuple[tuple[float, float, float], ...]:
    """Raise the load in every cell until the crane has broken and has tipped.

    Returns
    -------
    tuple of tuple of float
        For each of `CELLS` the rated load, the load at which something gives way and that at which
        the crane tips [kg]
    """
    setup = set_up(load_machine("yard60"))
    extension, radius = (np.array(column) for column in zip(*CELLS, strict=True))
    rating = rate(setup, extension=extension, radius=radius[:, None])
    rated, near = rating.capacity, rating.tipping_load
    ends = ends_of(setup, boom=rating.boom, rated=rated, held=rating.angle, near=near)
    whole = np.stack([rated, ends.failure, ends.tipping], axis=-1)[:, 0]
    return tuple((float(p), float(s), float(t)) for p, s, t in whole)


def draw(chance: Chance, _: str, __: Values) -> Drawn:
    """Choose a cell."""
    cell = chance.integer(len(CELLS))
    extension, radius = CELLS[cell]
    values = dict(zip("PST", studies()[cell], strict=True))
    return Drawn(
        values={**values, "R": radius, "k": cell},
        words={"configuration": label(np.array(extension)) + " %"},
    )


def check(given: Values) -> float:
    """Take both loads and the rated one from the study, unrounded."""
    rated, breaks, tips = studies()[round(given["k"])]
    return min(breaks, tips) / rated


LOAD = {"metric": "drawn in t by 0.05", "us": "drawn in lb by 100"}

FAMILY = Family(
    id="strategy_break_or_tip",
    topic="strategy",
    title="Break or tip first",
    text="For an invented crane in the configuration {configuration} the chart allows {P=} at a "
    "radius of {R}. From there the load is raised further and further. At {T=} the crane would "
    "tip; at {S=} a part of it would give way. At which multiple of the rated load does the first "
    "of these happen?",
    assume="The load is raised slowly, and nobody luffs while it is.",
    givens=(
        Given(P, "rated load", **LOAD),
        Given(S, "load at which a part gives way", **LOAD),
        Given(T, "load at which the crane tips", **LOAD),
        Given(R, "radius", metric="drawn in m by 0.1", us="drawn in ft by 0.1"),
        Given(k, "cell of the study", metric="drawn by 1", us="drawn by 1"),
    ),
    steps=(
        Step(F, Min(S, T), "load at which it ends",
             "The smaller of the two comes first. If the crane tips first, a float comes up and "
             "warns; what gives way first does so without a warning.",
             metric="t", us="lb", figures=4),
        Step(n, F / P, "multiple of the rated load", "Divide by the rated load.",
             metric="", us=""),
    ),
    slips=(
        Slip(F, Max(S, T), "took the later of the two"),
        Slip(n, 1 / Float("0.85"), "took the margin against tipping that the rule keeps, although "
             "strength governs the rated load"),
        Slip(n, Float("1.5"), "took the margin against yield, although a boom also carries itself"),
        Slip(n, Max(S, T) / F, "divided one load by the other instead of by the rated load"),
        Slip(n, P / F, "turned the ratio over"),
        Slip(n, (S + T) / (2 * P), "took the middle of both"),
    ),
    check=check,
    agreement=0.01,
    draw=draw,
)  # fmt: skip
