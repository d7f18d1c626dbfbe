"""More parts of line carry more, but each further one carries less than the one before."""

from dataclasses import replace

import numpy as np
from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.standing_crane import crane, stand
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.reeving_sketch import tackle

F, N, E = symbols("F N E")
A, W, k = symbols("A W k")

with as_written():
    ADVANTAGE = E * (1 - E**N) / (1 - E)
    LOSS = 1 - W / (N * F)


def picture(values: Values, _: Shown) -> str:
    """Draw the tackle."""
    return tackle(round(values["N"]))


def check(given: Values) -> float:
    """Hang a load in real and in perfect sheaves, and compare what the same pull carries."""
    parts, pull = (round(given["N"]),), []
    for efficiency in (given["E"], 1.0):
        hoist = replace(crane().machine.hoist, parts=parts, sheave_efficiency=efficiency)
        state = stand(crane(hoist=hoist), load=given["F"] / GRAVITY, angle=0.5).state
        pull.append(float(state.line_pull[0, 0]))
    return float(1.0 - np.divide(pull[1], pull[0]))


FAMILY = Family(
    id="rigging_reeving_loss",
    topic="rigging",
    title="Loss in the reeving",
    text="The permissible pull in the lead line is {F=}. The rope is reeved in {N=} parts of line, "
    "and the efficiency of every sheave is {E=}. Which share of the load that could hang on the "
    "rope without friction is lost in the reeving?",
    assume="The rope runs over as many sheaves as there are parts of line, and has no weight.",
    givens=(
        Given(F, "permissible line pull", metric="30 to 75 kN by 1", us="7000 to 17000 lbf by 250"),
        Given(N, "parts of line", metric="4, 6, 8, 10, 12", us="4, 6, 8, 10, 12"),
        Given(E, "efficiency of a sheave", metric="95, 96, 97, 98 %", us="95, 96, 97, 98 %"),
    ),
    steps=(
        Step(A, ADVANTAGE, "advantage of the tackle",
             "Add up the parts of line: every one pulls less than the one before by a sheave.",
             metric="", us="", marks=2, figures=4, tolerance=0.005),
        Step(W, A * F, "weight that the rope carries", "Multiply by the permissible pull.",
             metric="kN", us="lbf", figures=4, tolerance=0.005),
        Step(k, LOSS, "share lost",
             "Without friction every part would pull like the lead line; take the rest from that.",
             metric="%", us="%", marks=2, tolerance=0.03),
    ),
    slips=(
        Slip(k, 1 - E, "took the loss of one sheave for that of all"),
        Slip(k, N * (1 - E), "took the loss of all sheaves off every part"),
        Slip(k, W / (N * F), "gave the share that is left"),
        Slip(k, N * F / W - 1, "divided by the load that is left"),
        Slip(k, (N - 1) * (1 - E) / 2, "forgot the sheave of the lead line"),
        Slip(k, 1 - E**N, "took the loss in the last part for that of all"),
    ),
    check=check,
    agreement=1e-4,
    picture=picture,
    seen="A rope from the winch over the boom head to the hook block, in N parts of line; it is "
    "pulled with F at the winch, and the weight W hangs from the block.",
)  # fmt: skip
