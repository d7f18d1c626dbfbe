"""How fast errors fall as the pieces of a boom, its load, or the reference's elements get smaller.

A rule of integration is known by its order: the parabolas through three stations (Simpson's rule)
leave an error of the fourth power of their length; the elastica departs from the theory of small
deflections with the square of the load, by 4/35 (P L2/EI)2 at first; a beam element that is
straight within itself leaves an error of the second power of its length.

Source: Orders of convergence. Status: worked.
"""

import inspect
from math import pi, sqrt, tan

import numpy as np
import pytest
from boom_states import solve_boom
from making import NO_ROPE, SQUARE, bare_boom, chain, kilograms, loaded, one, pulled_sideways
from random_machines import random_machine, random_state
from verification.record import Record

from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.external_loads import AIR_FACTOR
from boomsim.mechanics.sections.section_properties import properties

LENGTH, STIFFNESS = 20.0, 40e6
CRITICAL = pi**2 * STIFFNESS / (4 * LENGTH**2)
RATIO = 0.5
THRUST = RATIO * CRITICAL
SMALL = 1e-6 * CRITICAL
U = pi / 2 * sqrt(RATIO)
# Timoshenko and Gere, 1.11: a load at the tip, and one spread evenly.
TIP = 3 * (tan(U) - U) / U**3
EVEN = 8 / U**4 * (1 + U * tan(U) - U**2 / 2 - 1 / np.cos(U))
PIECES = (2, 3, 4)
"""Finer ones come near to where the iteration stops, a millionth."""
USED = inspect.signature(solve_boom).parameters["elements"].default


def bar(pieces: int) -> Condensed:
    """An even bar; joints of a micrometre, so that they do not show.

    The innermost section is cut in its middle, and so two pieces long.
    """
    lengths = [LENGTH / pieces] * (pieces - 2) + [2 * LENGTH / pieces]
    return bare_boom(chain(lengths, stiffness=[STIFFNESS] * len(lengths), overlap=1e-6))


def droop(pieces: int) -> float:
    state = loaded(bar(pieces), across=SMALL, along=THRUST)
    return float(-state.head_above[0, 0]) / (SMALL * LENGTH**3 / (3 * STIFFNESS)) / TIP


def sway(pieces: int) -> float:
    state = pulled_sideways(bar(pieces), across=SMALL, along=THRUST)
    return float(state.head_left[0, 0]) / (SMALL * LENGTH**3 / (3 * STIFFNESS)) / TIP


def lean_in_wind(pieces: int) -> float:
    push = SMALL / LENGTH
    speed = (push / (AIR_FACTOR * properties(SQUARE).outer_height)) ** 0.5
    state = solve_state(
        bar(pieces),
        load=kilograms(THRUST),
        parts=NO_ROPE,
        angle=one(pi / 2),
        disturbances=Disturbances(wind_speed=speed, wind_across=True),
    )
    return float(state.head_left[0, 0]) / (push * LENGTH**4 / (8 * STIFFNESS)) / EVEN


def order(sizes: np.ndarray, errors: np.ndarray) -> float:
    """Slope of the straight line through the errors over the sizes, both as logarithms."""
    return float(np.polyfit(np.log(sizes), np.log(np.abs(errors)), 1)[0])


CASES = {
    "droop, tip load": droop,
    "sway, side pull": sway,
    "sway, wind": lean_in_wind,
}


@pytest.mark.parametrize("name", CASES)
def test_shorter_pieces_bring_the_closed_form_with_the_fourth_power(
    name: str, verification: Record
) -> None:
    sizes = 1.0 / np.array(PIECES)
    errors = np.array([CASES[name](n) - 1.0 for n in PIECES])
    slope = order(sizes, errors)
    verification.add_study(
        "convergence", f"stations: {name}", sizes=sizes.tolist(), errors=errors.tolist(),
        slope=slope, expected=4.0, size="piece over bar, in length",
        against="closed form, thrust at P/Pcr 0.5",
    )  # fmt: skip
    # The coarsest piece is not yet small; a wrong rule of integration is off by one.
    assert slope == pytest.approx(4.0, abs=0.2)


def test_small_loads_bring_the_theory_of_small_deflections_with_the_square(
    verification: Record,
) -> None:
    sizes, boom = np.array([0.08, 0.16, 0.32]), bar(8)
    forces = sizes * STIFFNESS / LENGTH**2
    droops = np.array([-loaded(boom, across=f, along=0.0).head_above[0, 0] for f in forces])
    errors = droops / (forces * LENGTH**3 / (3 * STIFFNESS)) - 1.0
    slope = order(sizes, errors)
    verification.add_study(
        "convergence", "large rotations: droop, level bar", sizes=sizes.tolist(),
        errors=errors.tolist(), slope=slope, expected=2.0, size="P L²/EI",
        against="P L³/(3 EI)",
    )  # fmt: skip
    # The largest load is not yet small; another power would be off by one.
    assert slope == pytest.approx(2.0, abs=0.2)
    # The next term of the series is a fourth power: a thousandth of the first at 0.08.
    assert errors[0] / sizes[0] ** 2 == pytest.approx(-4 / 35, rel=0.02)


@pytest.mark.parametrize("seed", [69, 113, 199])
def test_more_elements_bring_the_reference_to_rest_with_the_square(
    seed: int, verification: Record
) -> None:
    # Of the random states the worst in pads, in moment and deflection, and in stretch.
    rng = np.random.default_rng(seed)
    machine = random_machine(rng)
    state = random_state(machine, rng)
    counts = (3, 6, 12, 24, 48)
    tips = np.array(
        [
            solve_boom(machine, state.fractions, state.theta, state.load, elements=n).tip_deflection
            for n in counts
        ]
    )
    # Each step of the refinement is three times what is still missing after it.
    settled = tips[-1] + (tips[-1] - tips[-2]) / 3
    sizes, errors = 1.0 / np.array(counts[:-1]), tips[:-1] / settled - 1.0
    slope = order(sizes, errors)
    verification.add_study(
        "convergence", f"reference program: elements, state {seed}", sizes=sizes.tolist(),
        errors=errors.tolist(), slope=slope, expected=2.0,
        size="element over span, in length",
        against=f"the same program, extrapolated; {USED} elements are used for the comparison",
    )  # fmt: skip
    # The coarsest element is not yet small; another power would be off by one.
    assert slope == pytest.approx(2.0, abs=0.2)
    # A sixth of what a deflection is held to.
    assert abs(errors[counts.index(USED)]) < 2e-3 / 6
