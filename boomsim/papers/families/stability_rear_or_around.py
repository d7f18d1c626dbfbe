"""Over the rear a crane may lift more, but the sector ends at the rear jacks."""

import math
from decimal import Decimal

from sympy import atan, symbols

from boomsim.machine.files import load_machine
from boomsim.papers.callpath.charts import LENGTH, MASS, Piece, chart_of_piece, number, system_with
from boomsim.papers.numbers.amounts import grouped
from boomsim.papers.numbers.chance import Chance
from boomsim.papers.numbers.measures import METRIC, US, unit
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Shown, Values
from boomsim.papers.sketches.stand import plan_view
from boomsim.rating.setup import rear_sector

R, psi, x, y = symbols("R psi x y")

RADII = {METRIC: (13.0, 14.0, 15.0, 16.0, 17.0), US: (43.0, 46.0, 49.0, 52.0, 55.0)}
SUPPORTS = ("half", "full")
"""Ways for the invented boom truck to stand; their rear jacks are 1.7 m and 2.5 m aside."""


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


def pose(_: Chance, given: Values) -> Posed:
    """Offer both capacities, one between them, and none."""
    rear, around, system = capacities(given)
    edge = math.atan2(given["y"], given["x"])
    inside = given["psi"] < edge
    rear_text, around_text, between = (
        f"{grouped(load, system=system)}\u00a0{MASS[system]}"
        for load in (rear, around, ((rear + around) / 2).quantize(rear))
    )
    return Posed(
        options=(
            Option(f"{rear_text}, for the boom points between the rear jacks.", right=inside,
                   slip="took the sector over the rear for wider than it is"),
            Option(f"{around_text}, for the boom does not point between the rear jacks.",
                   right=not inside,
                   slip="took the sector over the rear for narrower than it is"),
            Option(f"{between}, for the boom points to neither the rear nor the side.",
                   slip="interpolated between two sectors, which no chart allows"),
            Option("Nothing, for the chart does not name this slew angle.",
                   slip="did not know that a sector covers all slew angles inside it"),
        ),
        because="The sector over the rear ends at the lines from the axis of rotation through the "
        "rear jacks, at arctan({y} / {x}) = {edge} from the rear. The boom points {where} it.",
        words={
            "rear": rear_text, "around": around_text,
            "edge": f"{math.degrees(edge):.1f}°",
            "where": "inside" if inside else "outside",
        },
    )  # fmt: skip


def check(given: Values, _: Posed) -> int:
    """Ask the setup where its sector over the rear ends."""
    supports = {one.name: one for one in load_machine("truck18").supports}
    return int(given["psi"] > rear_sector(supports[support_with(given["y"])]))


def picture(values: Values, shown: Shown) -> str:
    """Draw the jacks and the boom from above."""
    plan = plan_view(2 * values["x"], width=2 * values["y"], room=30.0)
    head = plan.boom(values["psi"], long=124.0)
    (u, v), (left, low), sketch = plan.centre, plan.half, plan.sketch
    sketch.line((u, v), (u + 100, v), width=0.5, color="#6b7078", dash="7 2 1 2")
    sketch.label((u + 104, v - 3), value="rear", anchor="start", color="#6b7078", size=8)
    sketch.label((u + 84, v - 14), letter="psi", value=shown("psi"), anchor="start")
    sketch.dimension((u, v + low + 18), (u + left, v + low + 18), letter="x", value=shown("x"))
    sketch.dimension((u - left - 50, v), (u - left - 50, v + low), letter="", value="")
    sketch.label((u - left - 50, v + low + 6), letter="y", value=shown("y"))
    sketch.label((head[0] + 6, head[1] - 2), letter="R", value=shown("R"), anchor="start")
    return sketch.svg()


FAMILY = ChoiceFamily(
    id="stability_rear_or_around",
    topic="stability",
    title="Over the rear or all around",
    text="The rear jacks of an invented crane stand {x=} behind the axis of rotation and {y=} to "
    "either side of it. At a radius of {R} its charts allow {rear} over the rear and {around} all "
    "around. The boom is slewed by {psi=} from the rear. Which gross load may be lifted there?",
    assume="The charts are those for the outriggers as they are set.",
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
