"""What pushes the sections out weighs too, and a share of it goes out with section 1."""

from dataclasses import replace

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine, read_machine
from boomsim.machine.machine_text import machine_to_toml
from boomsim.machine.model import TelescopeCylinder
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.rating.capacity import rate
from boomsim.rating.setup import set_up

CYLINDER = TelescopeCylinder(mass=900.0, moving_share=0.6)
OUT = np.array([[1.0, 0.0, 0.0, 0.0]])


def with_cylinder(share: float = 0.6):
    machine = load_machine("yard60")
    cylinder = TelescopeCylinder(mass=900.0, moving_share=share)
    return replace(machine, boom=replace(machine.boom, telescope_cylinder=cylinder))


def bare():
    machine = load_machine("yard60")
    return replace(machine, boom=replace(machine.boom, telescope_cylinder=None))


def test_its_mass_is_shared_between_the_base_section_and_section_1():
    # By hand: 40 % of 900 kg stay, 60 % go: 360 kg and 540 kg more.
    more = np.subtract(with_cylinder().boom.section_masses, bare().boom.section_masses)
    assert more == pytest.approx([360.0, 540.0, 0.0, 0.0, 0.0])


def test_the_moment_about_the_heel_pin_is_that_of_two_even_masses():
    # By hand: each part's centre is the middle of its section: m g (front + tail)/2, level boom.
    moments = []
    for machine in (with_cylinder(), bare()):
        boom = condense(machine, extension=OUT)
        state = solve_state(boom, load=np.array([[0.0]]), parts=1, angle=np.array([[0.0]]))
        placed = masses(boom, state=state, counterweight=machine.counterweights[0])
        sections = len(machine.boom.sections)
        arms = placed.out[:sections, 0, 0] - machine.heel_out
        moments.append(float(placed.mass[:sections] @ arms))
        layout = boom.layout
    middle = (layout.front[0] + layout.tail[0]) / 2
    by_hand = 360.0 * middle[0] + 540.0 * middle[1]
    # The bent axis is shorter seen from above: 1 % covers a deflection of some 5 % of the length,
    # and the other sections' weight moves with it.
    assert moments[0] - moments[1] == pytest.approx(by_hand, rel=0.01)


def test_the_more_of_it_goes_out_the_less_is_left_far_out():
    capacity = [
        rate(set_up(with_cylinder(share)), extension=OUT, radius=np.array([16.0])).capacity[0, 0]
        for share in (0.0, 0.5, 1.0)
    ]
    assert capacity[0] > capacity[1] > capacity[2]


def test_a_file_with_a_telescope_cylinder_reads_back_as_the_same_machine():
    machine = with_cylinder()
    assert read_machine(machine_to_toml(machine), "mine.toml") == machine
