"""The finite-element boom is in balance, fine enough, and agrees between two libraries.

Source: The finite-element models, checked themselves. Status: reference program.
"""

import math
from dataclasses import replace

import fe_opensees
import fe_pynite
import numpy as np
import pytest
from boom_frame import BoomFrame, boom_frame
from boom_layout import GRAVITY, places, rope_tension
from boom_states import boom_answer, solve_boom
from frame import FrameSolution, NoSolution
from random_machines import State, boom_length, random_machine, random_state, without_shear

from boomsim.machine.model import Machine


def test_rope_tension_follows_the_tackle_formula() -> None:
    """E (1 - E^N)/(1 - E) is 3.236 for E 0.917, N 4.

    Pipeline Rules of Thumb Handbook, rigging: the printed value of its formula.
    Status: read.
    """
    machine = random_machine(np.random.default_rng(1))
    machine = replace(machine, hoist=replace(machine.hoist, sheave_efficiency=0.917))
    assert 1000 * GRAVITY / rope_tension(machine, 1000.0, 4) == pytest.approx(3.236, rel=2e-4)


def states(seeds: range, clearance: bool = False) -> list[tuple[Machine, State]]:
    """Random machines, each in a random state."""
    found = []
    for seed in seeds:
        rng = np.random.default_rng(seed)
        machine = random_machine(rng, clearance=clearance)
        found.append((machine, random_state(machine, rng)))
    return found


@pytest.mark.parametrize("seed", range(6))
def test_finer_elements_change_nothing_that_matters(seed: int) -> None:
    """Tolerance 0.02 %: a fifth of the least that boomsim is held to."""
    machine, state = states(range(seed, seed + 1))[0]
    coarse, fine = (
        solve_boom(machine, state.fractions, state.theta, state.load, elements=n) for n in (12, 24)
    )
    assert coarse.tip_deflection == pytest.approx(fine.tip_deflection, rel=2e-4)
    assert coarse.front_pads == pytest.approx(fine.front_pads, rel=2e-4)
    for one, other in zip(coarse.sections, fine.sections, strict=True):
        assert one.largest_moment == pytest.approx(other.largest_moment, rel=2e-4)


@pytest.mark.parametrize("seed", range(6))
def test_the_moment_at_each_mouth_balances_all_that_lies_ahead(seed: int) -> None:
    """Weights, load and rope taken by hand on the deflected shape. Tolerance 0.01 %: solver.

    Status: worked.
    """
    machine, state = states(range(seed, seed + 1), clearance=True)[0]
    boom = boom_frame(machine, state.fractions, state.theta, state.load)
    solution = fe_opensees.solve_frame(boom.frame)
    answer = boom_answer(machine, state.theta, boom, solution)
    tails, fronts = places(machine, state.fractions)
    for i in range(1, len(tails)):
        moment = moment_ahead(boom, solution, i, boom.lines[i].near(fronts[i - 1] - tails[i]))
        assert answer.sections[i].moment_at(fronts[i - 1] - tails[i]) == pytest.approx(
            moment, rel=1e-4
        )


def moment_ahead(boom: BoomFrame, solution: FrameSolution, section: int, pivot: int) -> float:
    """Moment about a node of loads on nodes ahead of it, tension on top positive [N m].

    Of the sections further out and of this section's part in front of the pivot, with the force
    at the next section's tail where that reaches back behind the pivot.
    """
    frame = boom.frame
    moved = np.array(frame.nodes) + solution.displacements[:, :2]
    total = 0.0
    beams = [n for line in boom.lines[section + 1 :] for n in line.beams]
    own = boom.lines[section]
    at = next(n for n in own.beams if frame.beams[n].first == pivot)
    for number in [*range(at, own.beams[-1] + 1), *beams]:
        beam = frame.beams[number]
        (x1, y1), (x2, y2) = frame.nodes[beam.first], frame.nodes[beam.last]
        weight = np.array(beam.load) * math.hypot(x2 - x1, y2 - y1)
        middle = (moved[beam.first] + moved[beam.last]) / 2
        total -= _cross(middle - moved[pivot], weight)
    total -= _cross(moved[boom.head] - moved[pivot], np.array(frame.forces[boom.head][:2]))
    if section + 1 < len(boom.lines):
        hinge = boom.frame.hinges[section][0]
        if frame.nodes[hinge][0] < frame.nodes[pivot][0]:
            held = solution.ends[boom.lines[section + 1].beams[0], :2]
            total -= _cross(moved[hinge] - moved[pivot], held)
    rope = frame.bars[boom.rope]
    way = moved[rope.last] - moved[rope.first]
    return total - _cross(moved[rope.first] - moved[pivot], rope.tension * way / np.hypot(*way))


def _cross(arm: np.ndarray, force: np.ndarray) -> float:
    """Moment of a force, anticlockwise."""
    return float(arm[0] * force[1] - arm[1] * force[0])


@pytest.mark.parametrize("seed", range(6))
def test_the_cylinder_holds_the_moment_about_the_heel_pin(seed: int) -> None:
    """Push times lever is the moment of all loads on the deflected boom about the heel pin.

    Tolerance 0.01 %: solver. Status: worked.
    """
    machine, state = states(range(seed, seed + 1))[0]
    boom = boom_frame(machine, state.fractions, state.theta, state.load)
    solution = fe_opensees.solve_frame(boom.frame)
    frame, moved = boom.frame, np.array(boom.frame.nodes) + solution.displacements[:, :2]
    bar = frame.bars[boom.cylinder]
    way = moved[bar.last] - moved[bar.first]
    lever = _cross(moved[bar.last], way / np.hypot(*way))
    wanted = moment_ahead(boom, solution, 0, boom.lines[0].tail)
    wanted -= _cross(moved[bar.last], np.array(frame.forces[bar.last][:2]))
    assert -solution.bars[boom.cylinder] * lever == pytest.approx(wanted, rel=1e-4)


@pytest.mark.parametrize("seed", range(6))
def test_the_boom_angle_is_that_of_the_loaded_base_section(seed: int) -> None:
    """The radius follows from head place and angle, the cylinder's pins stay where they are.

    Status: worked.
    """
    machine, state = states(range(seed, seed + 1))[0]
    found = solve_boom(machine, state.fractions, state.theta, state.load)
    x, y = found.head
    assert found.tip_deflection == pytest.approx(y + machine.boom.head.below)
    along = machine.heel_out + x * math.cos(state.theta) - y * math.sin(state.theta)
    assert found.radius == pytest.approx(along)


def test_play_in_the_pads_lets_the_head_sink_by_the_angle_it_allows() -> None:
    """Clearance over overlap, times the distance from the inner tail to the head.

    Tolerance 3 %: the extra sinking itself bends the boom a little more. Status: worked.
    """
    rng = np.random.default_rng(3)
    machine = random_machine(rng, sections=2)
    sections = machine.boom.sections
    loose_section = replace(sections[1], clearance=0.005)
    loose = replace(machine, boom=replace(machine.boom, sections=(sections[0], loose_section)))
    tight_tip, loose_tip = (
        solve_boom(one, (0.9,), 0.5, 2000.0).tip_deflection for one in (machine, loose)
    )
    tails, fronts = places(machine, (0.9,))
    turn = 0.005 / (fronts[0] - tails[1])
    reach = boom_length(machine, (0.9,)) - tails[1]
    assert tight_tip - loose_tip == pytest.approx(turn * reach, rel=0.03)


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(4))
def test_the_two_libraries_agree_on_random_booms(seed: int) -> None:
    """Tolerance 0.3 % on moments, 1 % on deflection: P-delta takes rotations as small."""
    machine, state = states(range(seed + 1, seed + 2))[0]
    machine = without_shear(machine)  # of which the other knows nothing
    one = solve_boom(machine, state.fractions, state.theta, state.load)
    other = solve_boom(
        machine, state.fractions, state.theta, state.load, elements=2, solver=fe_pynite.solve_frame
    )
    assert other.tip_deflection == pytest.approx(one.tip_deflection, rel=1e-2)
    assert other.cylinder == pytest.approx(one.cylinder, rel=3e-3)
    for a, b in zip(one.sections, other.sections, strict=True):
        assert b.largest_moment == pytest.approx(a.largest_moment, rel=3e-3)


def test_a_boom_beyond_buckling_has_no_answer() -> None:
    """Four times its elastic critical load, upright: no number may come back that looks usual."""
    machine = random_machine(np.random.default_rng(1))
    out = (1.0,) * (len(machine.boom.sections) - 1)
    try:
        found = solve_boom(machine, out, 1.3, 4e6)
    except (NoSolution, RuntimeError):
        return
    assert abs(found.tip_deflection) > 0.2 * boom_length(machine, out)
