"""Overturning by hand: every mass and every push taken one by one about each tipping line.

On ground that leans, a mass counts where its plumb line meets the plane of the supports; a
horizontal push turns the crane over by its height. Loops over plain numbers, no arrays.
"""

from dataclasses import replace
from math import cos, sin, tan

import numpy as np
import pytest
from making import invented_crane
from rerate_masses import axis_lines

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM, Disturbances, Section
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.external_loads import wind_pressure
from boomsim.mechanics.sections.section_properties import properties
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.resultant import resultant
from boomsim.rating.setup import EVERY_WAY, set_up

LOAD = 3000.0
SLEWS = np.array([0.0, 0.4, 1.9, -0.7, -2.6])
PUSHED = (
    Disturbances(lean=0.02),
    Disturbances(lean_across=0.015),
    Disturbances(lean=-0.01, lean_across=0.02),
    Disturbances(side_pull=0.03),
    Disturbances(side_pull=0.03, lean=0.01, lean_across=-0.02),
)
BLOWN = (
    Disturbances(wind_speed=12.0, load_area=1e-3),
    Disturbances(wind_speed=12.0, load_area=1e-3, wind_across=True),
    Disturbances(wind_speed=9.0, load_area=2e-3, wind_across=True, side_pull=0.02, lean=0.01),
    Disturbances(wind_speed=9.0, load_area=2e-3, side_pull=0.02, lean_across=0.01),
)


def lopsided(change: Disturbances) -> Response:
    """A crane whose carrier and supports are alike on no two sides, far out and loaded."""
    crane = invented_crane()
    chassis = replace(crane.carrier[0], x=-0.8, y=0.3)
    points = ((3.0, 2.6), (-3.3, 3.1), (-3.6, -2.8), (2.7, -3.2))
    stand = replace(crane.supports[0], points=points)
    machine = replace(crane, carrier=(chassis, *crane.carrier[1:]), supports=(stand,))
    setup = replace(set_up(machine, disturbances=change), slew=SLEWS)
    boom = condense(machine, extension=np.array([[1.0, 0.5, 0.2]]))
    return respond(setup, boom=boom, load=np.array([[LOAD]]), angle=np.array([[0.8]]))


def over(at: Response, slew: float, line: int, out: float, left: float) -> float:
    """How far a point of the superstructure lies beyond a tipping line [m]."""
    lines = at.balance.lines
    x, y = out * cos(slew) - left * sin(slew), out * sin(slew) + left * cos(slew)
    return float(lines.normal[line] @ [x, y] - lines.distance[line])


def by_hand(at: Response, slew: float, line: int) -> tuple[float, float]:
    """Righting moment without the load [N m], and lever of the load [N m/kg]."""
    change, placed, balance = at.setup.disturbances, at.placed, at.balance
    ahead, across = tan(change.lean), tan(change.lean_across)
    righting = 0.0
    for k in range(placed.turning):
        up = float(placed.up[k, 0, 0])
        out, left = float(placed.out[k, 0, 0]) + up * ahead, float(placed.left[k, 0, 0])
        righting -= placed.mass[k] * GRAVITY * over(at, slew, line, out, left + up * across)
    for k, mass in enumerate(placed.mass[placed.turning :]):
        # Downhill is where the boom points, so it turns with the boom.
        moved = over(at, slew, line, float(placed.z[k]) * ahead, float(placed.z[k]) * across)
        still = float(balance.lines.normal[line] @ [placed.x[k], placed.y[k]])
        righting -= mass * GRAVITY * (moved + still)
    for k, section in enumerate(at.setup.machine.boom.sections):
        push = blown(at, slew, line) * shown(at, section, k) * middle(at, k)
        righting -= push * at.setup.machine.boom.wind_shape
    up = float(placed.head_up[0, 0])
    out, left = float(placed.head_out[0, 0]) + up * ahead, float(placed.head_left[0, 0])
    # A pull to the left of s times the load's weight, at the height of the head.
    lever = GRAVITY * over(at, slew, line, out, left + up * (across + change.side_pull))
    return righting, lever + blown(at, slew, line) * change.load_area * up


def blown(at: Response, slew: float, line: int) -> float:
    """Pressure of the wind, and how much of it pushes square over a tipping line [Pa]."""
    change, normal = at.setup.disturbances, at.balance.lines.normal[line]
    ahead, left = [cos(slew), sin(slew)], [-sin(slew), cos(slew)]
    way = float(normal @ (left if change.wind_across else ahead))
    return float(wind_pressure(change.wind_speed)) * way


def shown(at: Response, section: Section, number: int) -> float:
    """Area of a section beyond the mouth around it, from its side, or under the boom's angle."""
    shape, length = properties(section.profile), section.length
    length -= float(at.boom.layout.overlap[0, number])
    if at.setup.disturbances.wind_across:
        return length * shape.outer_height
    # Only what blows square on a tilted plate presses, and only its level part pushes outwards.
    return length * shape.outer_width * sin(float(at.state.angle[0, 0])) ** 2


def middle(at: Response, number: int) -> float:
    """Height above the ground of the middle of what a section shows [m]."""
    line, angle = axis_lines(at.boom, at.state, 0)[number], float(at.state.angle[0, 0])
    along, above, _ = line.mean(line.mouth)
    return at.setup.machine.heel_up + along * sin(angle) + above * cos(angle)


@pytest.mark.parametrize("change", PUSHED + BLOWN, ids=range(len(PUSHED + BLOWN)))
def test_moments_about_every_line_are_those_of_all_masses_one_by_one(change: Disturbances) -> None:
    at = lopsided(change)
    whole = float(np.abs(at.balance.righting).max())
    for turn, slew in enumerate(SLEWS):
        for line in range(len(at.balance.lines.distance)):
            righting, lever = by_hand(at, float(slew), line)
            # The same sums in another order: rounding only.
            assert at.balance.righting[turn, line, 0, 0] == pytest.approx(
                righting, abs=1e-9 * whole
            )
            assert at.balance.lever[turn, line, 0, 0] == pytest.approx(lever, abs=1e-8)


@pytest.mark.parametrize("change", [CALM, *PUSHED], ids=range(len(PUSHED) + 1))
def test_the_resultant_lies_as_far_inside_a_line_as_the_moments_say(change: Disturbances) -> None:
    # Weight times its distance inside the line is what is left of the righting moment.
    at = lopsided(change)
    weight, x, y = (one[:, 0, 0] for one in resultant(at, balance=at.balance))
    lines = at.balance.lines
    beyond = np.outer(x, lines.normal[:, 0]) + np.outer(y, lines.normal[:, 1]) - lines.distance
    left = (at.balance.righting - LOAD * at.balance.lever)[:, :, 0, 0]
    assert weight == pytest.approx(GRAVITY * (at.placed.mass.sum() + LOAD))
    # The same sums in another order: rounding only.
    assert -weight[:, None] * beyond == pytest.approx(left, abs=1e-9 * np.abs(left).max())


@pytest.mark.parametrize("out", [0.0, 0.5, 1.0])
def test_a_load_over_the_tipping_line_itself_tips_nothing(out: float) -> None:
    # Jacks 3 m to the right: at 3 m the load has no lever, whatever rounding makes of it.
    crane = invented_crane()
    setup = set_up(crane, slew=np.pi / 2)
    boom = condense(crane, extension=np.array([[out] * 3]))
    radius = np.array([[3.0, 3.01, 2.99]])
    load = np.full_like(radius, LOAD)
    on, beyond, inside = respond(setup, boom=boom, load=load, radius=radius).balance.least[0]
    assert np.isinf([on, inside]).all()
    # A centimetre of lever: the righting moment in kilograms and metres, a hundred times.
    assert 1e5 < beyond < 1e8


def test_slew_angles_to_try_go_once_round_in_even_steps() -> None:
    turns = np.sort(np.mod(EVERY_WAY, 2.0 * np.pi))
    assert np.diff(turns) == pytest.approx(turns[1] - turns[0])
    assert len(turns) * (turns[1] - turns[0]) == pytest.approx(2.0 * np.pi)
