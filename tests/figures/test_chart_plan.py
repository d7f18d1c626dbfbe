"""The plan at the head of a chart: the crane as it stands, the rear marked, the sector shaded."""

import numpy as np
import pytest
from matplotlib.path import Path

from boomsim.figures.charts.chart_head_plan import AXIS, plan_marks
from boomsim.figures.charts.page_marks import Fill, Words
from boomsim.figures.colours_and_lines import FAINT, INK, LOAD
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.rating.setup import rear_sector, set_up

LEFT, TOP, WIDTH, HEIGHT = 30.0, 9.0, 22.0, 12.6

STANDS = [
    (name, support.name)
    for name in ("yard60", "truck18", "bench")
    for support in load_machine(name).supports
]


def setup(name, support, slew):
    return set_up(load_machine(name), slew=slew, rigging=Rigging(support=support))


def marks(of):
    return list(plan_marks(of, left=LEFT, top=TOP, width=WIDTH, height=HEIGHT))


def fills(made, colour):
    return [np.array(m.points) for m in made if isinstance(m, Fill) and m.colour == colour]


def axis(made):
    (dot,) = fills(made, LOAD)
    return dot.mean(axis=0)


def shaded(made, slew, *, far):
    """Whether the place at a slew angle from the axis of rotation is shaded."""
    # Up on paper is less on a page; the rear is to the right.
    place = axis(made) + far * np.array([np.cos(slew), -np.sin(slew)])
    (shade,) = fills(made, FAINT)
    return bool(Path(shade).contains_point(place))


@pytest.mark.parametrize(("name", "support"), STANDS)
def test_over_the_rear_only_slew_angles_of_the_rear_sector_are_shaded(name, support):
    of = setup(name, support, "rear")
    made, half = marks(of), rear_sector(of.support)
    for slew in np.linspace(-np.pi, np.pi, 73) + 0.01:
        assert shaded(made, slew, far=2.0 * AXIS) == (abs(slew) < half)


@pytest.mark.parametrize(("name", "support"), STANDS)
def test_all_around_is_shaded_all_around(name, support):
    made = marks(setup(name, support, "around"))
    assert all(shaded(made, slew, far=2.0 * AXIS) for slew in np.linspace(-np.pi, np.pi, 73))


@pytest.mark.parametrize("degrees", [0.0, 35.0, 90.0, -120.0, 175.0])
def test_one_slew_angle_is_shaded_where_the_plan_of_a_lift_would_draw_its_boom(degrees):
    slew = np.radians(degrees)
    made = marks(setup("yard60", "full", slew))
    assert shaded(made, slew, far=2.0 * AXIS)
    assert not shaded(made, slew + 0.1, far=2.0 * AXIS)
    assert not shaded(made, slew - 0.1, far=2.0 * AXIS)


@pytest.mark.parametrize(("name", "support"), STANDS)
def test_every_support_stands_where_it_is_set_and_inside_the_plan(name, support):
    of = setup(name, support, "rear")
    made = marks(of)
    pads = np.array([points.mean(axis=0) for points in fills(made, INK)])
    wanted = np.array(of.support.points)
    assert len(pads) == len(wanted)
    away = (pads - axis(made)) * [1.0, -1.0]
    scale = np.abs(away).max() / np.abs(wanted).max()
    assert away == pytest.approx(scale * wanted, abs=1e-6)
    places = np.concatenate([m.points for m in made if not isinstance(m, Words)])
    assert places.min(axis=0) == pytest.approx([LEFT, TOP])
    assert places.max(axis=0) == pytest.approx([LEFT + WIDTH, TOP + HEIGHT])


@pytest.mark.parametrize(("name", "support"), STANDS)
def test_the_rear_is_marked_behind_the_carrier(name, support):
    made = marks(setup(name, support, "around"))
    (word,) = [m for m in made if isinstance(m, Words)]
    assert word.text == "rear" and word.x > axis(made)[0]
    assert word.x < LEFT + WIDTH
