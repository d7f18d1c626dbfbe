"""May I make this pick? Every check is worked out; the first that fails decides."""

import numpy as np
from sympy import Abs, Max, Min, pi, symbols

from boomsim.mechanics.stability.support_reactions import ground_pressure
from boomsim.papers.check_models.boom_truck_picks import (
    BLOCK,
    COLUMNS,
    ROWS,
    SLINGS,
    Column,
    cell,
    largest_float,
    radii_at,
    rated,
    row_beyond,
    whole_chart,
)
from boomsim.papers.check_models.mats_under_float import on_a_mat, utilisation_of
from boomsim.papers.check_models.question_charts import LENGTH, MASS, STEP, system_with
from boomsim.papers.language.first_failing_check import first_over
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Values

R_1, R_2, m, m_b, m_s, P, b, q_0, v, v_0, k = symbols("R_1 R_2 m m_b m_s P b q_0 v v_0 k")
C_0, C_1, C_2, C_3, C_4 = symbols("C_0 C_1 C_2 C_3 C_4")
R, C, G, u, w, p, g, D = symbols("R C G u w p g D")

LOAD, WIND, GROUND, GO = 1, 2, 3, 4
LIMIT = {METRIC: (9.0, 10.0, 12.0), US: (20.0, 22.0, 26.0)}
OUT = {"full": "all the way out", "half": "half out"}
SPEED = {METRIC: "m/s", US: "mph"}


def draw(chance: Chance, system: str, _: Values) -> Drawn:
    """Choose which check is to fail first, and then figures with which it does."""
    first, place = 1 + chance.integer(GO), chance.integer(len(COLUMNS))
    column, row = COLUMNS[place], 1 + chance.integer(len(ROWS[system]) - 1)
    length, mass = (float(unit(one[system]).factor) for one in (LENGTH, MASS))
    radii = radii_at(chance, system, row)
    first_one, other_one = chance.shuffled(radii)
    capacity = cell(system, row=row, column=column)
    fails = {check: _fails(chance, check, first) for check in (LOAD, WIND, GROUND)}
    block, slings = chance.pick(BLOCK[system]), chance.pick(SLINGS[system])
    step = float(STEP[system])
    gross = (
        round(capacity * utilisation_of(chance, fails[LOAD]) / step) * step
        if capacity > 0
        else np.nan
    )
    values = {
        "R_1": first_one * length, "R_2": other_one * length, "k": place, "C_0": capacity * mass,
        "m_b": block * mass, "m_s": slings * mass, "m": (gross - block - slings) * mass,
        **_wind(chance, system, fails=fails[WIND]), **_others(system, row, column),
    }  # fmt: skip
    force = largest_float(column, load=gross * mass, radius=max(radii) * length)
    values |= on_a_mat(chance, system, force, fails=fails[GROUND])
    words = {"way": column.way, "support": OUT[column.support], "sector": _where(column)}
    return Drawn(values=values, words=words, table=whole_chart(system))


def _fails(chance: Chance, check: int, first: int) -> bool:
    """Checks before the first that fails pass; of those behind it some fail as well."""
    return check == first or (check > first and chance.integer(3) == 0)


def _where(column: Column) -> str:
    """Where the load goes, as the question says it."""
    return "stays over the rear" if column.sector == "rear" else "is slewed from the rear to a side"


def _wind(chance: Chance, system: str, *, fails: bool) -> dict[str, float]:
    """Measured gusts and the wind up to which the chart holds."""
    one, limit = float(unit(SPEED[system]).factor), chance.pick(LIMIT[system])
    return {"v_0": limit * one, "v": round(limit * utilisation_of(chance, fails), 1) * one}


def _others(system: str, row: int, column: Column) -> dict[str, float]:
    """Figures that a misreading leads to."""
    mass = float(unit(MASS[system]).factor)
    turned = {
        "C_2": Column(way=column.way, support=_not(column.support, "full", "half"),
                      sector=column.sector),
        "C_3": Column(way=column.way, support=column.support,
                      sector=_not(column.sector, "all around", "rear")),
        "C_4": Column(way=_not(column.way, "even", "in turn"), support=column.support,
                      sector=column.sector),
    }  # fmt: skip
    found = {name: cell(system, row=row, column=one) * mass for name, one in turned.items()}
    return found | {"C_1": cell(system, row=row - 1, column=column) * mass}


def _not(word: str, one: str, other: str) -> str:
    """The other one of two words."""
    return other if word == one else one


def check(given: Values) -> float:
    """Rate the crane where the load hangs farthest out, stand it on its mats, and decide."""
    column = COLUMNS[round(given["k"])]
    farthest = max(given["R_1"], given["R_2"])
    system = system_with(given["m_s"], SLINGS, of="mass")
    radius = ROWS[system][row_beyond(system, farthest)] * float(unit(LENGTH[system]).factor)
    gross = given["m"] + given["m_b"] + given["m_s"]
    pressed = float(ground_pressure(np.array(given["P"]), area=given["b"] ** 2))
    if gross > rated(column, radius):
        return LOAD
    if given["v"] > given["v_0"]:
        return WIND
    return GROUND if pressed > given["q_0"] else GO


_MASS = {"metric": "drawn in t by 0.05", "us": "drawn in lb by 100"}
_LENGTH = {"metric": "drawn in m by 0.1", "us": "drawn in ft by 0.1"}
STEPS = (f"{STEP[METRIC]}", f"{STEP[US]}")
_SPEED = {"metric": "drawn in m/s by 0.1", "us": "drawn in mph by 0.1"}

FAMILY = Family(
    id="decisions_may_i_lift",
    topic="decisions",
    title="May I make this pick?",
    text="A load of {m=} is picked up at a measured radius of {R_1=} and set down at {R_2=}. Its "
    'sections are out "{way}" ("even": each section half; "in turn": section 1 all, section 2 '
    "half), the outrigger beams are {support}, and the boom {sector}. The hook block weighs "
    "{m_b=}, the slings {m_s=}. Gusts of {v=} are measured; the chart holds up to {v_0=}. The most "
    "loaded float carries {P=} and stands on a square mat {b=} wide; the ground bears {q_0=}. "
    "The checks are 1 load, 2 wind, 3 ground. Which check is the first that fails? Write 4 if "
    "none does: go.",
    assume="Between two radii the chart is read at the larger one; what leaves the rear needs the "
    "figures for all around.",
    givens=(
        Given(C_0, "the cell that counts", **_MASS),
        Given(C_1, "the row above", **_MASS),
        Given(C_2, "the other outrigger beams", **_MASS),
        Given(C_3, "the other sector", **_MASS),
        Given(C_4, "the other way out", **_MASS),
        Given(m, "load", **_MASS),
        Given(R_1, "radius at the pick", **_LENGTH),
        Given(R_2, "radius where it is set down", **_LENGTH),
        Given(m_b, "hook block", **_MASS),
        Given(m_s, "slings", **_MASS),
        Given(v, "gusts", **_SPEED),
        Given(v_0, "wind of the chart", **_SPEED),
        Given(P, "largest float load", metric="drawn in kN by 10", us="drawn in lbf by 1000"),
        Given(b, "width of the mat", metric="drawn in m by 0.1", us="drawn in ft by 0.25"),
        Given(q_0, "bearing of the ground", metric="drawn in kN/m^2 by 10",
              us="drawn in lbf/ft^2 by 100"),
        Given(k, "column of the chart", metric="drawn by 1", us="drawn by 1"),
    ),
    steps=(
        Step(R, Max(R_1, R_2), "radius that counts",
             "The load hangs farthest out where the crane may lift least: take the larger radius.",
             metric="m", us="ft"),
        Step(C, C_0, "gross rated capacity",
             "Find the column of way out, outriggers and sector, and the row of the next larger "
             "radius.", metric="t", us="lb", nearest=STEPS),
        Step(G, m + m_b + m_s, "gross load",
             "All that hangs below the head counts as load: add hook block and slings.",
             metric="t", us="lb", nearest=STEPS),
        Step(u, G / C, "utilisation of the rated capacity",
             "Divide the gross load by what is rated.",
             metric="%", us="%"),
        Step(w, v / v_0, "utilisation of the permitted wind",
             "Divide the gusts by the wind of the chart.",
             metric="%", us="%"),
        Step(p, P / b**2, "pressure under the mat", "Divide the float load by the area of the mat.",
             metric="kN/m^2", us="lbf/ft^2"),
        Step(g, p / q_0, "utilisation of the ground",
             "Divide the pressure by what the ground bears.",
             metric="%", us="%"),
        Step(D, first_over(u, w, g), "first check that fails",
             "Go through the checks in their order: the first with more than 100 % stops the pick.",
             metric="", us="", figures=1, whole=True),
    ),
    slips=(
        Slip(R, Min(R_1, R_2), "took the smaller of both radii"),
        Slip(R, (R_1 + R_2) / 2, "took the mean of both radii"),
        Slip(C, C_1, "read the row of the smaller radius"),
        Slip(C, C_2, "read the column of the other outrigger beams"),
        Slip(C, C_3, "read the column of the other sector"),
        Slip(C, C_4, "read the column of the other way out"),
        Slip(G, m, "forgot that hook block and slings are part of the gross load"),
        Slip(G, m + m_b, "forgot the slings"),
        Slip(G, m - m_b - m_s, "took hook block and slings off the load"),
        Slip(u, C / G, "divided the rated capacity by the load"),
        Slip(w, v_0 / v, "divided the permitted wind by the gusts"),
        Slip(p, 4 * P / (pi * b**2), "took the mat for a round one"),
        Slip(p, P / (4 * b**2), "shared the float load among all four floats"),
        Slip(g, q_0 / p, "divided what the ground bears by the pressure"),
        Slip(D, GO - first_over(g, w, u), "named the last check that fails and not the first"),
        Slip(D, first_over(u, 0, 0), "looked at the load alone"),
    ),
    check=check,
    draw=draw,
    where=(Abs(u - 1) > 0.03, Abs(w - 1) > 0.03, Abs(g - 1) > 0.03),
    by_check=True,
)  # fmt: skip
