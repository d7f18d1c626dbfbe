"""Sideways: the moment in the base section at the luffing cylinder's lug is the plain sum over all
that is outboard of it, on the boom as it is bent in both planes."""

import numpy as np
import pytest
from freebody import Floats, curves, gravity, outer_loads, sideways
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from making import is_buildable, one
from random_machines import random_machine, random_state

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import section_forces

few = settings(max_examples=25, deadline=None, derandomize=True)


def solved(seed: int, change: Disturbances) -> tuple[Condensed, State]:
    rng = np.random.default_rng(seed)
    machine = random_machine(rng)
    assume(is_buildable(machine))
    drawn = random_state(machine, rng)
    boom = condense(machine, extension=np.array([drawn.fractions]))
    parts, load, angle = machine.hoist.parts[-1], one(drawn.load), one(drawn.theta)
    state = solve_state(boom, load=load, parts=parts, angle=angle, disturbances=change)
    assume(state.converged.all())
    length = boom.layout.boom_length[0]
    droop = -machine.boom.head.below - state.head_above[0, 0]
    assume(max(abs(droop), abs(state.head_left[0, 0])) < 0.05 * length)
    return boom, state


def outboard(
    boom: Condensed, state: State, change: Disturbances, number: int, place: float
) -> float:
    """Moment of all outboard of a place on a section, bending to the left positive [N m].

    About the normal that the section has there in the luffing plane.
    """
    machine, axes, lefts = boom.machine, curves(boom, state), sideways(boom, state)
    axis, way = axes[number], axes[number].tangent(place)
    here, here_left = axis.at(place) @ way, float(np.interp(place, axis.place, lefts[number]))
    down = gravity(state) * np.cos(change.lean_across)
    to_left = GRAVITY * np.sin(change.lean_across)

    def moment(left: float, back: Floats, point: Floats, y: float) -> float:
        return float(left * (point @ way - here) - back @ way * (y - here_left))

    total = 0.0
    for k in range(number, len(axes)):
        places, section = axes[k].place, machine.boom.sections[k]
        ahead = places >= (place - 1e-9 if k == number else 0.0)
        span = float(np.ptp(places[ahead]))
        point = np.asarray(np.trapezoid(axes[k].point[ahead], places[ahead], axis=0)) / span
        y = float(np.trapezoid(lefts[k][ahead], places[ahead])) / span
        mass = section.mass * span / section.length
        total += moment(mass * to_left, mass * down, point, y)
    load, y = float(state.load[0, 0]), float(state.head_left[0, 0])
    hung, pull = load + machine.boom.head.mass, change.side_pull * GRAVITY * load
    sheave = np.array([state.head_along[0, 0], state.head_above[0, 0]])
    total += moment(hung * to_left + pull, hung * down, sheave, y)
    # The lead line runs to a winch in the luffing plane.
    rope, line = outer_loads(boom, state)[1], float(state.line_pull[0, 0])
    return total + moment(-line * y / float(sheave[0]), rope.vector, rope.point, y)


def close(boom: Condensed, state: State, place: float) -> float:
    """Both planes are bent on their own: what bending in one makes of torsion in the other is left
    out. That is of the square of the turn, and the turn of the head's drop below the axis."""
    turned = float(np.ptp(state.rotation))
    arm = float(state.head_along[0, 0]) - place
    return 2e-4 + 1.5 * turned**2 + turned * boom.machine.boom.head.below / arm


@few
@given(st.integers(0, 10**6), st.floats(0.005, 0.04), st.floats(0.0, 0.03))
def test_the_moment_at_the_lug_is_that_of_all_outboard(seed: int, pull: float, lean: float) -> None:
    change = Disturbances(side_pull=pull, lean_across=lean)
    boom, state = solved(seed, change)
    lug = boom.machine.cylinder.attach_along
    # Of a retracted boom, the inner sections reach back behind the lug.
    assume(boom.layout.tail[0, 1] > lug + 1e-6)
    station = int(boom.stations.at_mouth[0, 0])
    found = float(section_forces(boom, state=state).moment_side[0, station, 0])
    by_hand = outboard(boom, state, change, 0, lug)
    assert found == pytest.approx(by_hand, rel=close(boom, state, lug))


@few
@given(st.integers(0, 10**6), st.floats(0.005, 0.04), st.floats(0.0, 0.03))
def test_front_pads_hold_the_moment_of_all_outboard_about_the_tail(
    seed: int, pull: float, lean: float
) -> None:
    change = Disturbances(side_pull=pull, lean_across=lean)
    boom, state = solved(seed, change)
    forces = section_forces(boom, state=state)
    for number in range(1, len(boom.machine.boom.sections)):
        held = -float(forces.front_pad_side[0, number, 0]) * boom.layout.overlap[0, number]
        by_hand = outboard(boom, state, change, number, 0.0)
        assert held == pytest.approx(
            by_hand, rel=close(boom, state, float(boom.layout.tail[0, number]))
        )
        assert forces.moment_side[0, 9 * number, 0] == pytest.approx(0.0, abs=1e-9 * abs(held))


@few
@given(st.integers(0, 10**6))
def test_a_straight_pull_leaves_the_luffing_plane_alone(seed: int) -> None:
    _, state = solved(seed, Disturbances())
    assert not np.any(state.rotation_side) and not np.any(state.head_left)
