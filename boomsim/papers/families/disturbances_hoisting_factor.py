"""A load picked up in a hurry counts for more than it weighs."""

from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Disturbances
from boomsim.mechanics.hoisting_factor import HOISTING_CLASSES
from boomsim.papers.check_models.standing_crane import crane, stand
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Table, Values
from boomsim.units import FOOT

m, v, v_0, a, b, a_1, b_1, k = symbols("m v v_0 a b a_1 b_1 k")
phi, P = symbols("phi P")

SPEED = {METRIC: 1.0, US: float(FOOT)}
"""Speed for which the table gives its growth [m/s]."""


def table(system: str) -> Table:
    """Write the hoisting classes."""
    speed = SPEED[system]
    rows = (
        (f"HC{n}", f"{least:.2f}", f"{slope * speed:.{2 if system == METRIC else 4}f}")
        for n, (least, slope) in HOISTING_CLASSES.items()
    )
    head = ("hoisting class", "a, at creeping speed", "b, growth")
    return Table(rows=(head, *rows), caption="Hoisting factor (EN 13001-2)")


def draw(chance: Chance, system: str, _: Values) -> Drawn:
    """Choose a hoisting class, and one that a candidate may mistake for it."""
    here, there = chance.some(tuple(HOISTING_CLASSES), count=2)
    speed = SPEED[system]
    (least, slope), (other, other_slope) = HOISTING_CLASSES[here], HOISTING_CLASSES[there]
    return Drawn(
        values={
            "a": least, "b": slope * speed, "a_1": other, "b_1": other_slope * speed,
            "k": float(here),
        },
        words={"name": f"HC{here}"},
        table=table(system),
    )  # fmt: skip


def check(given: Values) -> float:
    """Hoist the load on the call path, and weigh it by the pull in the lead line."""
    boom = crane()
    change = Disturbances(hoist_speed=given["v"], hoist_class=round(given["k"]))
    state = stand(boom, load=given["m"], angle=0.5, disturbances=change).state
    return float(state.line_pull[0, 0]) * boom.machine.hoist.parts[-1] / GRAVITY


FAMILY = Family(
    id="disturbances_hoisting_factor",
    topic="disturbances",
    title="Hoisting factor",
    text="A gross load of {m=} is picked up off the ground at a steady hoisting speed of {v=}. The "
    "hoist is of class {name}. The table has hoisting factors {a:} at creeping speed and their "
    "growth {b:} for every {v_0=} of speed. Which load must the structure be able to carry?",
    assume="The factor grows evenly with the hoisting speed, from its value at creeping speed.",
    givens=(
        Given(m, "gross load", metric="4 to 30 t by 0.5", us="9000 to 66000 lb by 1000"),
        Given(a, "factor at creeping speed", metric="drawn by 0.01", us="drawn by 0.01"),
        Given(b, "growth", metric="drawn by 0.01", us="drawn by 0.0001"),
        Given(a_1, "factor of another class", metric="drawn by 0.01", us="drawn by 0.01"),
        Given(b_1, "its growth", metric="drawn by 0.01", us="drawn by 0.0001"),
        Given(v, "hoisting speed", metric="0.1 to 0.8 m/s by 0.05", us="0.4 to 2.6 ft/s by 0.2"),
        Given(v_0, "speed of the table", metric="1 m/s", us="1 ft/s"),
        Given(k, "class", metric="drawn by 1", us="drawn by 1"),
    ),
    steps=(
        Step(phi, a + b * v / v_0, "hoisting factor",
             "Start from the value of the class at creeping speed, and add its growth for the "
             "speed.", metric="", us="", figures=4, tolerance=0.002),
        Step(P, phi * m, "load that the structure must carry", "Multiply the load by the factor.",
             metric="t", us="lb", figures=4, tolerance=0.003),
    ),
    slips=(
        Slip(phi, a_1 + b_1 * v / v_0, "read the row of another class"),
        Slip(phi, a, "took the factor at creeping speed"),
        Slip(phi, a + b, "added the whole growth, whatever the speed"),
        Slip(phi, 1 + b * v / v_0, "started from 1 instead of the value at creeping speed"),
        Slip(P, m, "left the load as it hangs"),
        Slip(phi, a + v / v_0, "added the speed instead of the growth for it"),
    ),
    check=check,
    agreement=2e-3,
    draw=draw,
)  # fmt: skip
