"""Spot the error in a lift plan: one line is wrong, and the lines behind it follow from it."""

from collections.abc import Callable

import numpy as np
from sympy import Abs, Integer, pi, symbols

from boomsim.mechanics.stability.support_reactions import ground_pressure
from boomsim.papers.check_models.boom_truck_picks import (
    BLOCK,
    COLUMNS,
    ROWS,
    SLINGS,
    cell,
    largest_float,
    radii_at,
    rated,
)
from boomsim.papers.check_models.mats_under_float import BEARING, SIDE, on_a_mat, utilisation_of
from boomsim.papers.check_models.question_charts import LENGTH, MASS, STEP
from boomsim.papers.language.first_failing_check import first_over
from boomsim.papers.numbers.amounts import result
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import unit
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Table, Values

r_1, r_2, R, C_1, C_2, m, m_b, m_s = symbols("r_1 r_2 R C_1 C_2 m m_b m_s")
P, b, q_0, k, j = symbols("P b q_0 k j")
E, G, u, p, g, D = symbols("E G u p g D")

LOAD, GROUND, GO = 1, 2, 3
LINES = (
    ("C", "gross rated capacity"), ("G", "gross load"), ("u", "utilisation of the rated capacity"),
    ("A", "area of the mat"), ("p", "pressure under the mat"), ("g", "utilisation of the ground"),
)  # fmt: skip
"""Lines of a plan: letter and words."""

Line = Callable[[Values], float]
RIGHT: dict[str, Line] = {
    "C": lambda have: have["C_2"],
    "G": lambda have: have["m"] + have["m_b"] + have["m_s"],
    "u": lambda have: have["G"] / have["C"],
    "A": lambda have: have["b"] ** 2,
    "p": lambda have: have["P"] / have["A"],
    "g": lambda have: have["p"] / have["q_0"],
}
WRONG: tuple[tuple[str, Line], ...] = (
    ("C", lambda have: have["C_1"]),
    ("C", lambda have: (have["C_1"] + have["C_2"]) / 2),
    ("G", lambda have: have["m"]),
    ("G", lambda have: have["m"] - have["m_b"] - have["m_s"]),
    ("u", lambda have: have["C"] / have["G"]),
    ("A", lambda have: np.pi / 4 * have["b"] ** 2),
    ("A", lambda have: 2 * have["b"] ** 2),
    ("p", lambda have: have["P"] / (4 * have["A"])),
    ("g", lambda have: have["q_0"] / have["p"]),
)
"""Mistakes, by the line in which they are made."""
SEEN = 0.05
"""Least difference that a mistake makes in its own line [1]."""


def plan(have: Values, wrong: tuple[str, Line] | None) -> dict[str, float]:
    """Work through the lines of a plan, with a mistake in one of them.

    Parameters
    ----------
    have : mapping of str to float
        Givens [SI]
    wrong : (str, callable) or None
        Among `WRONG`

    Returns
    -------
    dict of str to float
        By letter [SI]
    """
    values = dict(have)
    for letter, _ in LINES:
        line = wrong[1] if wrong and wrong[0] == letter else RIGHT[letter]
        values[letter] = float(line(values))
    return values


def draw(chance: Chance, system: str, _: Values) -> Drawn:
    """Choose a pick, which check fails, and in which line the plan is wrong."""
    first, place = 1 + chance.integer(GO), chance.integer(len(COLUMNS))
    column, row = COLUMNS[place], 1 + chance.integer(len(ROWS[system]) - 1)
    length, mass = (float(unit(one[system]).factor) for one in (LENGTH, MASS))
    radius = max(radii_at(chance, system, row))
    block, slings = chance.pick(BLOCK[system]), chance.pick(SLINGS[system])
    step, capacity = float(STEP[system]), cell(system, row=row, column=column)
    gross = round(capacity * utilisation_of(chance, first == LOAD) / step) * step
    ground_fails = first == GROUND or (first == LOAD and chance.integer(3) == 0)
    force = largest_float(column, load=gross * mass, radius=radius * length)
    have = {
        "r_1": ROWS[system][row - 1] * length, "r_2": ROWS[system][row] * length,
        "R": radius * length, "j": place,
        "C_1": cell(system, row=row - 1, column=column) * mass, "C_2": capacity * mass,
        "m_b": block * mass, "m_s": slings * mass, "m": (gross - block - slings) * mass,
        **on_a_mat(chance, system, force, fails=ground_fails),
    }  # fmt: skip
    letter = chance.pick([one for one, _ in LINES])
    wrong = chance.pick([one for one in WRONG if one[0] == letter])
    if not np.isfinite(have["P"]) or not _is_seen(have, wrong):
        return Drawn(values={"P": float("nan")})
    line = [one for one, _ in LINES].index(letter) + 1
    return Drawn(values=have | {"k": line}, table=_printed(plan(have, wrong), system))


def _is_seen(have: Values, wrong: tuple[str, Line]) -> bool:
    """Whether a mistake changes its own line clearly, to something that could be meant."""
    right, other = plan(have, None)[wrong[0]], plan(have, wrong)[wrong[0]]
    return other > 0 and abs(other - right) > SEEN * right


def _printed(values: Values, system: str) -> Table:
    """Write the plan."""
    units = {
        "C": MASS[system], "G": MASS[system], "u": "%", "g": "%", "p": BEARING[system][0],
        "A": f"{SIDE[system][0]}^2",
    }  # fmt: skip
    amounts = {name: result(values[name], unit(one), figures=4) for name, one in units.items()}
    rows = tuple(
        (f"{number}", words, amounts[letter].text(system=system))
        for number, (letter, words) in enumerate(LINES, start=1)
    )
    return Table(rows=(("line", "what", "plan"), *rows), caption="Lift plan; invented machine")


def check(given: Values) -> float:
    """Rate the crane at the row's radius, stand it on its mats, and decide."""
    column = COLUMNS[round(given["j"])]
    gross = given["m"] + given["m_b"] + given["m_s"]
    if gross > rated(column, given["r_2"]):
        return LOAD
    pressed = float(ground_pressure(np.array(given["P"]), area=given["b"] ** 2))
    return GROUND if pressed > given["q_0"] else GO


_MASS = {"metric": "drawn in t by 0.05", "us": "drawn in lb by 100"}
_LENGTH = {"metric": "drawn in m by 0.1", "us": "drawn in ft by 0.1"}

FAMILY = Family(
    id="decisions_error_in_plan",
    topic="decisions",
    title="The error in a lift plan",
    text="A lift plan is checked. The load weighs {m=}, the hook block {m_b=}, the slings {m_s=}; "
    "it hangs at {R=} where it is farthest out. For this way to stand, the chart has {C_1=} at "
    "{r_1=} and {C_2=} at {r_2=}. The most loaded float carries {P=} and stands on a square "
    "mat {b=} wide; the ground bears {q_0=}. In one line of the plan below a mistake is made; "
    "the lines behind it follow from it. Find that line and the right figures. Which check "
    "fails first: 1 load, 2 ground? Write 3 if none does: go.",
    assume="Between two radii the chart is read at the larger one.",
    givens=(
        Given(C_1, "capacity at the smaller radius", **_MASS),
        Given(C_2, "capacity at the larger radius", **_MASS),
        Given(r_1, "smaller radius of the chart", **_LENGTH),
        Given(r_2, "larger radius of the chart", **_LENGTH),
        Given(R, "radius", **_LENGTH),
        Given(m, "load", **_MASS),
        Given(m_b, "hook block", **_MASS),
        Given(m_s, "slings", **_MASS),
        Given(P, "largest float load", metric="drawn in kN by 10", us="drawn in lbf by 1000"),
        Given(b, "width of the mat", metric="drawn in m by 0.1", us="drawn in ft by 0.25"),
        Given(q_0, "bearing of the ground", metric="drawn in kN/m^2 by 10",
              us="drawn in lbf/ft^2 by 100"),
        Given(k, "line of the mistake", metric="drawn by 1", us="drawn by 1"),
        Given(j, "column of the chart", metric="drawn by 1", us="drawn by 1"),
    ),
    steps=(
        Step(E, k, "line of the mistake",
             "Work through the lines from the top: the first that differs has the mistake.",
             metric="", us="", figures=1, whole=True),
        Step(G, m + m_b + m_s, "right gross load",
             "All that hangs below the head counts as load: add hook block and slings.",
             metric="t", us="lb", nearest=("0.05", "100")),
        Step(u, G / C_2, "right utilisation of the rated capacity",
             "Divide by what is rated at the larger radius.", metric="%", us="%"),
        Step(p, P / b**2, "right pressure under the mat",
             "Divide the float load by the area of the mat.", metric="kN/m^2", us="lbf/ft^2"),
        Step(g, p / q_0, "right utilisation of the ground",
             "Divide the pressure by what the ground bears.",
             metric="%", us="%"),
        Step(D, first_over(u, g), "first check that fails",
             "The first check with more than 100 % stops the pick.",
             metric="", us="", figures=1, whole=True),
    ),
    slips=(
        Slip(E, k + 1, "named the line behind the mistake, where it only shows"),
        Slip(E, Integer(len(LINES)), "named the last line, where every mistake above it shows"),
        Slip(G, m, "forgot that hook block and slings are part of the gross load"),
        Slip(G, m + m_b, "forgot the slings"),
        Slip(G, m - m_b - m_s, "took hook block and slings off the load"),
        Slip(u, G / C_1, "read the row of the smaller radius"),
        Slip(u, C_2 / G, "divided the rated capacity by the load"),
        Slip(p, 4 * P / (pi * b**2), "took the mat for a round one"),
        Slip(p, P / (4 * b**2), "shared the float load among all four floats"),
        Slip(g, q_0 / p, "divided what the ground bears by the pressure"),
        Slip(D, GO - first_over(g, u), "named the last check that fails and not the first"),
    ),
    check=check,
    draw=draw,
    where=(Abs(u - 1) > 0.03, Abs(g - 1) > 0.03),
    by_check=True,
)  # fmt: skip
