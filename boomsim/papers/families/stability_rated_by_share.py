"""What may be rated of a tipping load: another share on outriggers than on tyres."""

import numpy as np
from sympy import symbols

from boomsim.papers.check_models.standing_crane import crane, line_ahead, stand
from boomsim.papers.numbers.amounts import given
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US
from boomsim.papers.numbers.value_ranges import spread
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Values
from boomsim.rating.limits.tipping import rated_share
from boomsim.rating.rules import SHARE_OF_TIPPING

M, d, R, f, f_1 = symbols("M d R f f_1")
T, P = symbols("T P")

WORDS = {"outriggers": "on outriggers that are fully set", "tyres": "on its tyres"}
RANGES = {
    ("outriggers", METRIC): ("80 to 220 t m by 5", "2.2 to 3.4 m by 0.1", "9 to 20 m by 0.5"),
    ("outriggers", US): ("580000 to 1600000 lb ft by 20000", "7 to 11 ft by 0.5",
                         "30 to 66 ft by 1"),
    ("tyres", METRIC): ("5 to 30 t m by 0.5", "0.9 to 1.3 m by 0.1", "4 to 9 m by 0.5"),
    ("tyres", US): ("36000 to 216000 lb ft by 2000", "3 to 4.5 ft by 0.5", "14 to 30 ft by 1"),
}  # fmt: skip
"""Righting moment, tipping line and radius as the trade has them: tyres stand near the axis, and
hold less (common practice)."""


def draw(chance: Chance, system: str, _: Values) -> Drawn:
    """Choose what the crane stands on, and numbers that go with it."""
    here, there = chance.shuffled(list(WORDS))
    share = SHARE_OF_TIPPING.share
    spreads = [spread(text) for text in RANGES[here, system]]
    numbers = [given(one.number(chance.integer(one.count)), one.unit).value for one in spreads]
    return Drawn(
        values={**dict(zip("MdR", numbers, strict=True)), "f": share(here), "f_1": share(there)},
        words={"stand": WORDS[here]},
    )


def check(values: Values) -> float:
    """Let a crane with this righting moment tip, and ask the rule."""
    mass = values["M"] / values["d"]
    boom = crane(turning=((mass, 0.0),), support=line_ahead(values["d"]))
    tipping = np.array(stand(boom, load=100.0, radius=values["R"]).tipping_load)
    kind = next(kind for kind in WORDS if abs(SHARE_OF_TIPPING.share(kind) - values["f"]) < 1e-6)
    rated = rated_share(
        SHARE_OF_TIPPING, tipping_load=tipping, support_kind=kind, at_head=np.array(0.0)
    )
    return float(rated)


FAMILY = Family(
    id="stability_rated_by_share",
    topic="stability",
    title="Rated load as a share of the tipping load",
    text="A crane stands {stand}. Without a load it is held down by a moment of {M=} about its "
    "tipping line, which is {d=} from the axis of rotation. Which gross load may be rated at a "
    "radius of {R=}?",
    assume="Stability governs; the moment is written as mass times lever arm. Of the tipping load "
    "a share {f:} may be rated: 85 % on outriggers, 75 % on tyres (ASME B30.5).",
    givens=(
        Given(M, "righting moment", metric="drawn in t m by 0.5", us="drawn in lb ft by 2000"),
        Given(d, "tipping line from the axis", metric="drawn in m by 0.1", us="drawn in ft by 0.5"),
        Given(R, "radius", metric="drawn in m by 0.5", us="drawn in ft by 1"),
        Given(f, "share of the tipping load", metric="drawn in % by 1", us="drawn in % by 1"),
        Given(f_1, "the other share", metric="drawn in % by 1", us="drawn in % by 1"),
    ),
    steps=(
        Step(T, M / (R - d), "tipping load",
             "Divide by the lever arm of the load, which counts from the tipping line.",
             metric="t", us="lb"),
        Step(P, f * T, "rated load", "Take the share that goes with what the crane stands on.",
             metric="t", us="lb", rated=True),
    ),
    slips=(
        Slip(P, f_1 * T, "took the share for tyres on outriggers, or the other way round"),
        Slip(P, T, "took the tipping load itself for the rated load"),
        Slip(T, M / R, "divided by the radius instead of the lever arm beyond the tipping line"),
        Slip(P, T / f, "divided by the share"),
        Slip(T, M / (R + d), "added the distance of the tipping line to the radius"),
    ),
    where=(3.5 * d < R,),
    usual=(M / d < 65e3,),  # [kg]: five axles at some 12 t
    check=check,
    draw=draw,
)  # fmt: skip
