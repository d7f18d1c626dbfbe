"""Shear force and bending moment of one section: what the one adds up to, the other has changed by.

Between two cuts only what is spread along the section acts on it, so that M(end) - M(start) is the
shear force summed between them, in both planes and whatever the pads do.
"""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from making import is_buildable, one
from random_machines import random_machine, random_state, without_stretch

from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import Forces, section_forces
from boomsim.mechanics.boom.stations import NODES, SEGMENTS
from boomsim.mechanics.geometry import Array


def drawn(seed: int, change: Disturbances, stretches: bool) -> tuple[Condensed, State, Forces]:
    rng = np.random.default_rng(seed)
    machine = random_machine(rng)
    assume(is_buildable(machine))
    machine = machine if stretches else without_stretch(machine)
    wanted = random_state(machine, rng)
    boom = condense(machine, extension=np.array([wanted.fractions]))
    state = solve_state(
        boom,
        load=one(wanted.load),
        parts=machine.hoist.parts[-1],
        angle=one(wanted.theta),
        disturbances=change,
    )
    assume(state.converged.all())
    return boom, state, section_forces(boom, state=state)


def by_segment(boom: Condensed, values: Array) -> Array:
    """Values at stations as (sections, segments, start middle end)."""
    return values[0, :, 0].reshape(len(boom.machine.boom.sections), SEGMENTS, NODES)


@settings(max_examples=25)
@given(st.integers(0, 10**6), st.floats(0.0, 0.04), st.floats(0.0, 15.0), st.booleans())
def test_what_shear_adds_up_to_the_moment_has_changed_by(
    seed: int, pull: float, wind: float, stretches: bool
) -> None:
    change = Disturbances(side_pull=pull, wind_speed=wind, wind_across=True)
    boom, state, forces = drawn(seed, change, stretches)
    strained = float(np.abs(state.strain).max())
    place = boom.stations.position[0].reshape(-1, SEGMENTS, NODES)
    length = place[..., 2] - place[..., 0]
    for bending, across, longer in (
        (forces.moment, forces.shear, strained),
        (forces.moment_side, forces.shear_side, 0.0),
    ):
        moment, shear = by_segment(boom, bending), by_segment(boom, across)
        added = length * (shear[..., 0] + 4.0 * shear[..., 1] + shear[..., 2]) / 6.0
        changed = moment[..., 2] - moment[..., 0]
        # Simpson's rule on both sides: rounding only; and arms that have become longer by a strain.
        allowed = (1e-9 + 2.0 * longer) * max(np.abs(moment).max(), 1.0)
        assert -added == pytest.approx(changed, abs=allowed)
