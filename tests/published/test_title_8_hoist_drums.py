"""California Code of Regulations, title 8, section 4929: hoist drums of boom-type mobile cranes.

(c) The drum has rope enough for the reeving within the range of boom lengths, radii and lifts; (1)
no less than 2 full wraps stay on it when the hook is at its extreme low position; (d) the pitch
diameter of its first layer is at least 18 times the rope's diameter.

Source: California title 8, section 4929. Status: read.
"""

from math import pi, sqrt

import numpy as np
import pytest
from reeving_by_hand import rope_by_hand

from boomsim.machine.machine_files import load_machine
from boomsim.rating.reeving.reeving_study import reeve
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of_length, range_of_length

WRAPS, PITCH = 2, 18.0

ROPES = ((12.7, 0.46), (15.875, 0.72), (19.05, 1.04))
"""Diameters of ropes of six strands with a steel core [mm], and what a foot weighs [lb/ft]."""

POUND_PER_FOOT = 0.45359237 / 0.3048


def rope_diameter(mass: float) -> float:
    """Of a rope by its mass, which grows with the square [mm]."""
    each = [pounds * POUND_PER_FOOT / diameter**2 for diameter, pounds in ROPES]
    assert max(each) < 1.03 * min(each)
    return sqrt(mass / min(each))


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_the_drum_keeps_its_wraps_with_every_boom_length_and_the_hook_on_the_ground(
    name: str,
) -> None:
    """At the boom angle that takes most rope. Nothing is rounded, so there is no tolerance."""
    setup = set_up(load_machine(name))
    hoist, boom = setup.machine.hoist, setup.machine.boom
    assert hoist.rope_length is not None and hoist.drum_diameter is not None
    least = WRAPS * pi * hoist.drum_diameter
    for length in np.linspace(*range_of_length(boom), 9):
        ways = configurations_of_length(boom, length=float(length), tolerance=1.0).extension[:1]
        found = reeve(setup, extension=ways)
        steepest = boom.greatest_angle
        needs = rope_by_hand(setup.machine, parts=found.parts, length=found.length, angle=steepest)
        out = needs - 3 * pi * hoist.drum_diameter
        assert hoist.rope_length - out >= least
        assert found.rope.left is not None
        assert found.rope.left >= least
        assert found.rope.kept >= least


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_the_drum_is_eighteen_ropes_wide(name: str) -> None:
    """Source: California title 8, section 4929 (d). Status: read; what ropes weigh: second-hand."""
    hoist = load_machine(name).hoist
    assert hoist.drum_diameter is not None
    assert 1e3 * hoist.drum_diameter >= PITCH * rope_diameter(hoist.rope_mass)
