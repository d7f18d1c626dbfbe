"""Rating by test loads: heavy booms get less than a fixed share of the tipping load."""

import numpy as np
from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.papers.check_models.textbook_boom import even_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values, as_written
from boomsim.rating.limits.tipping import boom_at_head, rated_share
from boomsim.rating.rules import TEST_LOAD

T, G, a, L = symbols("T G a L")
F, P, k = symbols("F P k")

with as_written():
    RATED = (T - 0.1 * F) / 1.25
    WITHOUT, WHOLE, ADDED = T / 1.25, (T - F) / 1.25, (T + 0.1 * F) / 1.25


def check(given: Values) -> float:
    """Refer an even boom to its head, and ask the rule."""
    machine = textbook_machine(even_boom(given["L"], weight=given["G"], centre=given["a"]))
    boom = condense(machine, extension=np.zeros((1, 0)))
    state = solve_state(boom, load=np.zeros((1, 1)), parts=1, angle=np.full((1, 1), 0.5))
    placed = masses(boom, state=state, counterweight=machine.counterweights[0])
    rated = rated_share(
        TEST_LOAD, tipping_load=np.array(given["T"] / GRAVITY), support_kind="outriggers",
        at_head=boom_at_head(machine, placed=placed),
    )  # fmt: skip
    return float(rated[0, 0]) * GRAVITY / given["T"]


FAMILY = Family(
    id="stability_rated_by_test_load",
    topic="stability",
    title="Rated load by test load",
    text="At some radius a crane tips at {T=}. Its boom weighs {G=} and is {L=} long from foot to "
    "head; the boom's centre of gravity is {a=} from the foot. What share of the tipping load may "
    "be rated by test load?",
    assume="The crane must bear a test load of 1.25 times the rated load and a tenth of the boom's "
    "weight referred to the head (ISO 4305).",
    givens=(
        Given(T, "tipping load", metric="50 to 200 kN by 2", us="11000 to 45000 lbf by 500"),
        Given(G, "weight of the boom", metric="40 to 110 kN by 2", us="9000 to 25000 lbf by 500"),
        Given(L, "foot to head", metric="14 to 32 m by 0.5", us="46 to 105 ft by 1"),
        Given(a, "foot to centre of gravity", metric="6 to 14 m by 0.5", us="20 to 46 ft by 1"),
    ),
    steps=(
        Step(F, G * a / L, "boom's weight referred to the head",
             "At the head, this weight has the same moment about the foot as the whole boom.",
             metric="kN", us="lbf", figures=4),
        Step(P, RATED, "rated load",
             "The test load must not be more than the tipping load: solve 1.25 times the rated "
             "load plus a tenth of that weight for the rated load.",
             metric="kN", us="lbf", marks=2, figures=4, rated=True),
        Step(k, P / T, "share of the tipping load",
             "Divide by the tipping load: it is always less than 80 %.",
             metric="%", us="%", figures=3, tolerance=0.004),
    ),
    slips=(
        Slip(F, G, "put the whole boom at its head"),
        Slip(F, G * L / a, "turned the lever ratio over"),
        Slip(P, WITHOUT, "forgot the boom"),
        Slip(P, WHOLE, "took off all of the boom's referred weight instead of a tenth"),
        Slip(P, 0.85 * T, "took the fixed share of 85 %, which is another rule"),
        Slip(P, ADDED, "added the boom's part instead of taking it off"),
    ),
    where=(a > 0.38 * L, a < 0.48 * L, F < 0.8 * T),
    check=check,
)  # fmt: skip
