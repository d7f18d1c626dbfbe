"""Over the rear a crane may lift more, but the sector ends at the rear jacks."""

import math
from decimal import Decimal

from sympy import atan, symbols

from boomsim.figures.colours_and_lines import QUIET
from boomsim.machine.machine_files import load_machine
from boomsim.papers.check_models.question_charts import (
    LENGTH,
    MASS,
    Piece,
    chart_of_piece,
    number,
    system_with,
)
from boomsim.papers.numbers.amounts import grouped
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Shown, Values
from boomsim.papers.sketches.crane_sketches import plan_view
from boomsim.rating.setup import rear_sector

R, psi, x, y = symbols("R psi x y")

RADII = {METRIC: (13.0, 14.0, 15.0, 16.0, 17.0), US: (43.0, 46.0, 49.0, 52.0, 55.0)}
SUPPORTS = ("half", "full")
ASIDE = {METRIC: ("1.7", "2.5"), US: ("5.58", "8.2")}
"""Ways for the invented boom truck to stand, and how far their rear jacks are aside."""


def support_with(aside: float) -> str:
    """Find the way to stand whose rear jacks are so far aside [m]."""
    supports = {one.name: one for one in load_machine("truck18").supports}
    return min(SUPPORTS, key=lambda name: abs(max(p[1] for p in supports[name].points) - aside))


def capacities(given: Values) -> tuple[Decimal, Decimal, str]:
    """Rate the crane over the rear and all around, as charts print it."""
    system = system_with(given["R"], RADII, of="length")
    foot = float(unit(LENGTH[system]).factor)
    row = min(range(5), key=lambda n: abs(RADII[system][n] * foot - given["R"]))
    rear, around = (
        Piece(machine="truck18", extensions=((1.0, 0.5, 0.0),), radii=tuple(RADII.items()),
              sector=sector, support=support_with(given["y"])) for sector in ("rear", "around")
    )  # fmt: skip
    found = [number(chart_of_piece(one, system), row, 0, system=system) for one in (rear, around)]
    assert found[0] is not None and found[1] is not None
    return found[0], found[1], system


def pose(_: Chance, given: Values) -> Posed | None:
    """Offer the capacity over the rear, and that all around for both ways to stand."""
    edge = math.atan2(given["y"], given["x"])
    inside = given["psi"] < edge
    rear, _around, system = capacities(given)
    foot = float(unit(LENGTH[system]).factor)
    offered = [float(text) * foot for text in ASIDE[system]]
    own = min((0, 1), key=lambda n: abs(offered[n] - given["y"]))
    loads = [rear, *(capacities({**given, "y": aside})[1] for aside in offered)]
    if len(set(loads)) < len(loads):
        return None  # two of them would be right
    texts = [f"{grouped(load, system=system)}\u00a0{MASS[system]}" for load in loads]
    shown = [f"{text}\u00a0{LENGTH[system]}" for text in ASIDE[system]]
    right = 0 if inside else 1 + own
    where = ["over the rear", *(f"all around with the jacks {one} aside" for one in shown)]
    return Posed(
        options=tuple(
            Option(f"{text}, {where[n]}.", right=n == right, slip=_slip(n, right=right, own=own))
            for n, text in enumerate(texts)
        ),
        because="The sector over the rear ends at the lines from the axis of rotation through the "
        "rear jacks, at arctan({y} / {x}) = {edge} from the rear. The boom points {inside} it.",
        words={
            "edge": f"{math.degrees(edge):.1f}°", "inside": "inside" if inside else "outside",
            "rear": texts[0], "around0": texts[1], "around1": texts[2],
            "aside0": shown[0], "aside1": shown[1],
        },
    )  # fmt: skip


def _slip(chosen: int, *, right: int, own: int) -> str:
    """Why someone would take the figure of another sector or of another way to stand."""
    if chosen == 0:
        return "took the sector over the rear for wider than it is"
    if chosen == 1 + own:
        return "took the sector over the rear for narrower than it is"
    other = "read the figure for jacks that are set otherwise"
    return other if right else f"{other}, and took the sector over the rear for too narrow"


def check(given: Values, _: Posed) -> int:
    """Ask the setup where its sector over the rear ends."""
    supports = {one.name: one for one in load_machine("truck18").supports}
    stands = support_with(given["y"])
    return 1 + SUPPORTS.index(stands) if given["psi"] > rear_sector(supports[stands]) else 0


def picture(values: Values, shown: Shown) -> str:
    """Draw the jacks and the boom from above."""
    plan = plan_view(2 * values["x"], width=2 * values["y"], room=30.0)
    head = plan.boom(values["psi"], long=124.0)
    (u, v), (left, low), sketch = plan.centre, plan.half, plan.sketch
    sketch.line((u, v), (u + 100, v), width=0.5, color=QUIET, dash="7 2 1 2")
    sketch.label((u + 104, v - 3), value="rear", anchor="start", color=QUIET, size=8)
    sketch.label((u + 84, v - 14), letter="psi", value=shown("psi"), anchor="start")
    sketch.dimension((u, v + low + 18), (u + left, v + low + 18), letter="x", value=shown("x"))
    sketch.dimension((u - left - 50, v), (u - left - 50, v + low), letter="", of="y")
    sketch.not_to_scale("radius")
    sketch.label((u - left - 50, v + low + 6), letter="y", value=shown("y"))
    sketch.label((head[0] + 6, head[1] - 2), letter="R", value=shown("R"), anchor="start")
    return sketch.svg()


FAMILY = ChoiceFamily(
    id="stability_rear_or_around",
    topic="stability",
    title="Over the rear or all around",
    text="The rear jacks of an invented crane stand {x=} behind the axis of rotation and now {y=} "
    "to either side of it. At a radius of {R} its charts allow {rear} over the rear; all around "
    "they allow {around0} with the jacks {aside0} aside and {around1} with the jacks {aside1} "
    "aside. The boom is slewed by {psi=} from the rear. Which gross load may be lifted there?",
    assume="The sector over the rear ends at the lines through the rear jacks.",
    givens=(
        Given(x, "rear jacks behind the axis", metric="1.3 m", us="4.27 ft"),
        Given(y, "rear jacks to the side", metric="1.7, 2.5 m", us="5.58, 8.2 ft"),
        Given(R, "radius", metric="13, 14, 15, 16, 17 m", us="43, 46, 49, 52, 55 ft"),
        Given(psi, "slew angle", metric="34 to 80 deg by 1", us="34 to 80 deg by 1"),
    ),
    difficulty=2,
    pose=pose,
    check=check,
    where=((psi - atan(y / x)) ** 2 > 0.004, (psi - atan(y / x)) ** 2 < 0.15),
    picture=picture,
    seen="Four jacks from above, the rear ones x behind the axis of rotation and y to its sides; "
    "the boom points to the rear right.",
)  # fmt: skip
