"""The pull in the lead line: every sheave takes its part."""

from dataclasses import replace

from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.standing_crane import crane, stand
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.reeving_sketch import tackle

W, N, E = symbols("W N E")
A, F = symbols("A F")

with as_written():
    ADVANTAGE = E * (1 - E**N) / (1 - E)
    FIXED_END = (1 - E**N) / (1 - E)


def picture(values: Values, _: Shown) -> str:
    """Draw the tackle."""
    return tackle(round(values["N"]))


def check(given: Values) -> float:
    """Reeve the rope on the call path, hang the load on it and read the lead line."""
    parts = (round(given["N"]),)
    hoist = replace(crane().machine.hoist, parts=parts, sheave_efficiency=given["E"])
    state = stand(crane(hoist=hoist), load=given["W"] / GRAVITY, angle=0.5).state
    return float(state.line_pull[0, 0])


FAMILY = Family(
    id="rigging_lead_line_pull",
    topic="rigging",
    title="Pull in the lead line",
    text="A load, hook block included, weighs {W=}. It hangs in {N=} parts of line; the efficiency "
    "of every sheave is {E=}. How hard does the lead line pull on the winch while it hoists?",
    assume="The rope runs over as many sheaves as there are parts of line, the last of them at the "
    "boom head, and has no weight.",
    givens=(
        Given(W, "weight with the hook block", metric="60 to 300 kN by 5",
              us="14000 to 68000 lbf by 1000"),
        Given(N, "parts of line", metric="3, 4, 5, 6, 7, 8", us="3, 4, 5, 6, 7, 8"),
        Given(E, "efficiency of a sheave", metric="94, 95, 96, 97 %", us="94, 95, 96, 97 %"),
    ),
    steps=(
        Step(A, ADVANTAGE, "advantage of the tackle",
             "Add up the parts: the first carries the pull of the lead line times the efficiency, "
             "and every further one again so much less.", metric="", us="", marks=2,
             tolerance=0.005),
        Step(F, W / A, "pull in the lead line", "Divide the weight by the advantage.",
             metric="kN", us="lbf"),
    ),
    slips=(
        Slip(F, W / N, "forgot the friction of the sheaves"),
        Slip(A, FIXED_END, "forgot the sheave at the boom head"),
        Slip(A, N * E**N, "took the loss of all sheaves off every part"),
        Slip(F, W * A / N**2, "turned the friction round, as if it helped"),
        Slip(F, W / (A + 1), "counted one part too many"),
        Slip(F, W / (A - 1), "counted one part too few"),
        Slip(F, W, "took the lead line to carry the whole load"),
    ),
    usual=(F < 9e4,),  # [N]
    check=check,
    picture=picture,
    seen="A rope from the winch over the boom head to the hook block, in N parts of line; it is "
    "pulled with F at the winch, and the weight W hangs from the block.",
)  # fmt: skip
