"""Every section is in equilibrium as a free body, worked out anew in `freebody` from what the
mechanics returned: over random machines and states inside the range of the model."""

import numpy as np
import pytest
from freebody import (
    Force,
    at_heel,
    curves,
    cylinder_arm,
    free_body,
    outer_loads,
    weights,
)
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from making import is_buildable, one
from random_machines import random_machine, random_state

from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import Forces, section_forces

few = settings(max_examples=25, deadline=None, derandomize=True)
seeds = st.integers(0, 10**6)


def solved(seed: int, clearance: bool) -> tuple[Condensed, State, Forces]:
    rng = np.random.default_rng(seed)
    machine = random_machine(rng, clearance=clearance)
    assume(is_buildable(machine))
    drawn = random_state(machine, rng)
    boom = condense(machine, extension=np.array([drawn.fractions]))
    state = solve_state(
        boom, load=one(drawn.load), parts=machine.hoist.parts[-1], angle=one(drawn.theta)
    )
    assert state.converged.all()
    droop = -machine.boom.head.below - state.head_above[0, 0]
    assume(abs(droop) < 0.05 * boom.layout.boom_length[0])
    return boom, state, section_forces(boom, state=state)


def turns(state: State, first: int, last: int) -> float:
    """How far the axis turns over some sections [rad]."""
    return float(np.ptp(state.rotation[0, 9 * first : 9 * (last + 1), 0]))


def strained(state: State) -> float:
    """Largest strain of the axis [1]."""
    return float(np.abs(state.strain).max())


def resultant(acting: list[Force]) -> tuple[float, float]:
    """Length of the sum of all forces, and the sum of their lengths [N]."""
    total = np.sum([force.vector for force in acting], axis=0)
    return float(np.hypot(*total)), float(sum(np.hypot(*force.vector) for force in acting))


@few
@given(seeds, st.booleans())
def test_forces_on_every_moving_section_add_up_to_nothing(seed: int, clearance: bool) -> None:
    boom, state, forces = solved(seed, clearance)
    for number in range(1, len(boom.machine.boom.sections)):
        left, scale = resultant(free_body(boom, state, forces, number))
        # The reactions are found from these sums; 5e-6 is the series for sine and cosine.
        assert left < 5e-6 * scale


@pytest.mark.slow
@few
@given(seeds, st.booleans())
def test_moments_on_every_moving_section_add_up_to_nothing(seed: int, clearance: bool) -> None:
    boom, state, forces = solved(seed, clearance)
    axes = curves(boom, state)
    last = len(axes) - 1
    for number in range(1, last + 1):
        about = axes[number].at(0.0)
        moments = [f.moment(about) for f in free_body(boom, state, forces, number)]
        # A pad's lever arm is taken along the bent axis, not across the chord: some part of the
        # square of the turn, 1e-3 where the axis turns by 0.08 rad.
        # A section has one strain, which stands for its own at each place, and that of the base
        # section between section 1's tail and the lug lengthens no overlap: a part of the strain.
        turned = turns(state, number, min(number + 1, last))
        allowed = 1e-5 + 0.2 * turned**2 + 0.3 * strained(state)
        assert abs(sum(moments)) < allowed * sum(map(abs, moments))


@few
@given(seeds, st.booleans())
def test_the_cylinder_holds_the_moment_of_all_that_hangs_on_the_boom(
    seed: int, clearance: bool
) -> None:
    boom, state, forces = solved(seed, clearance)
    arm = cylinder_arm(boom.machine, float(state.angle[0, 0]))
    held = float(forces.cylinder[0, 0]) * arm
    # Nine stations to a section; the square of what the axis turns between them.
    turned = turns(state, 0, len(boom.machine.boom.sections) - 1)
    assert held == pytest.approx(-at_heel(boom, state), rel=1e-5 + 0.005 * turned**2)


@few
@given(seeds, st.booleans())
def test_the_moment_at_every_mouth_is_that_of_all_outboard(seed: int, clearance: bool) -> None:
    # Ahead of a mouth a section carries all that is outboard; so its moment there is a plain sum.
    boom, state, forces = solved(seed, clearance)
    axes, sections = curves(boom, state), boom.machine.boom.sections
    loads, hung = outer_loads(boom, state), weights(boom, state)
    for number in range(1, len(sections)):
        stations = boom.stations.position[0, number]
        inside = boom.stations.beyond[0, 9 * number : 9 * number + 9, 0] > 0
        mouth = int(np.flatnonzero(stations >= boom.layout.overlap[0, number] - 1e-9)[0])
        if not inside[mouth]:
            continue  # the inner section reaches back behind this mouth
        place = float(stations[mouth])
        about = axes[number].at(place)
        share = 1.0 - place / sections[number].length
        ahead = axes[number].place >= place
        centre = np.array(
            [
                np.trapezoid(axes[number].point[ahead, k], axes[number].place[ahead])
                / np.ptp(axes[number].place[ahead])
                for k in (0, 1)
            ]
        )
        own = Force(vector=share * hung[number].vector, point=centre)
        by_hand = sum(f.moment(about) for f in (own, *hung[number + 1 :], *loads))
        found = float(forces.moment[0, 9 * number + mouth, 0])
        turned = turns(state, number, len(sections) - 1)
        assert found == pytest.approx(by_hand, rel=1e-4 + 0.1 * turned**2)


@few
@given(seeds, st.booleans())
def test_both_pads_touch(seed: int, clearance: bool) -> None:
    # The inner axis passes the outer section's mouth as far off as the play lets it.
    boom, state, _ = solved(seed, clearance)
    axes = curves(boom, state)
    for number in range(1, len(axes)):
        mouth = float(boom.layout.overlap[0, number])
        outer_front = axes[number - 1].at(float(axes[number - 1].place[-1]))
        off = (axes[number].at(mouth) - outer_front) @ axes[number].normal(mouth)
        play = boom.machine.boom.sections[number].clearance
        turned = turns(state, number - 1, number)
        # The mean rotation of both is the same; their sines differ by its third power. Where
        # stretch moves the mouth on the section, its rotation there has changed by some of that.
        slid = 0.2 * strained(state) * mouth * turned
        assert abs(off) < play * (1 + turned**2) + 0.2 * mouth * turned**3 + slid + 1e-7
