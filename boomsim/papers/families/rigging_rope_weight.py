"""What the falls of the rope weigh, and what is left of a gross load for the load itself."""

from dataclasses import replace

from sympy import pi, symbols

from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.rope_reach import falls_mass
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.reeving_sketch import tackle

G, m_b, N, H, mu = symbols("G m_b N H mu")
m_r, P = symbols("m_r P")


def picture(values: Values, _: Shown) -> str:
    """Draw the tackle."""
    return tackle(round(values["N"]), weight="P", pull="S")


def check(given: Values) -> float:
    """Stand the boom upright, its head so high, and take what hangs from it off the gross load."""
    machine = load_machine("yard60")
    machine = replace(machine, hoist=replace(machine.hoist, rope_mass=given["mu"]))
    length = given["H"] - machine.heel_up
    parts, upright = round(given["N"]), float(pi / 2)
    falls = falls_mass(machine, parts=parts, length=length, angle=upright)
    return given["G"] - given["m_b"] - float(falls)


FAMILY = Family(
    id="rigging_rope_weight",
    topic="rigging",
    title="What the rope takes off",
    text="The chart allows {G=} gross. Hook block and slings weigh {m_b=} together. The head "
    "sheaves are {H=} above the ground, the rope is reeved in {N=} parts of line and weighs {mu=}. "
    "How heavy may the load itself be that is lifted from the ground?",
    assume="The falls are counted from the head to the ground; the lead line is left out.",
    givens=(
        Given(G, "gross load", metric="4 to 14 t by 0.1", us="9000 to 30000 lb by 200"),
        Given(m_b, "hook block and slings", metric="0.3 to 0.7 t by 0.05",
              us="700 to 1500 lb by 50"),
        Given(N, "parts of line", metric="4, 5, 6, 7, 8, 10", us="4, 5, 6, 7, 8, 10"),
        Given(H, "height of the head", metric="18 to 44 m by 0.5", us="60 to 144 ft by 1"),
        Given(mu, "weight of the rope by its length", metric="0.8 to 1.9 kg/m by 0.1",
              us="0.5 to 1.3 lb/ft by 0.05"),
    ),
    steps=(
        Step(m_r, N * H * mu, "weight of the falls",
             "Every part of line is as long as the head is high: parts times height times weight "
             "by the length.", metric="t", us="lb"),
        Step(P, G - m_b - m_r, "heaviest net load",
             "All that hangs below the head counts as load: take off hook block, slings and rope.",
             metric="t", us="lb"),
    ),
    slips=(
        Slip(P, G - m_b, "forgot that the rope weighs"),
        Slip(m_r, H * mu, "counted one fall only"),
        Slip(m_r, (N + 1) * H * mu, "counted the lead line as a part of line", safer=True),
        Slip(m_r, 2 * N * H * mu, "counted each part of line up and down", safer=True),
        Slip(P, G - 2 * (m_b + m_r), "took the deductions off twice", safer=True),
        Slip(P, G - m_r, "forgot hook block and slings"),
        Slip(P, G + m_b + m_r, "added the deductions"),
        Slip(P, G, "took the gross load for the net load"),
    ),
    check=check,
    picture=picture,
    seen="A rope from the winch over the boom head to the hook block, in N parts of line; the load "
    "P hangs from the block, and the winch pulls with S.",
    where=(N * H * mu < 0.12 * G, N * H * mu > 0.015 * G),
    safe="less",
)  # fmt: skip
