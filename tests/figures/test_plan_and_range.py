"""The plan view and the range diagram show what the call path says, in the right places."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.plan.plan_shape import plan_of
from boomsim.figures.plan.plan_view import draw_plan, edge_of, load_is_out, update_plan, view
from boomsim.figures.range.range_figure import draw_range, update_range
from boomsim.figures.range.range_shape import bands, contour, range_of, usual_extensions
from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.capacity import rate
from boomsim.rating.setup import set_up
from boomsim.units import show

WAY = np.array([0.0, 0.0, 0.45, 0.45])


@pytest.fixture(scope="module", params=[0.0, 0.6, -2.0, np.pi])
def slew(request):
    return request.param


@pytest.fixture(scope="module")
def hung(setup):
    return hung_at(setup, extension=WAY, load=9000.0, radius=10.0)


@pytest.fixture(scope="module")
def seen(hung, slew):
    return plan_of(hung, slew=slew)


def test_the_resultant_is_the_centre_of_all_that_is_drawn(seen):
    mass = np.array([c.mass for c in seen.centres])
    place = np.array([(c.x, c.y) for c in seen.centres])
    # Weighted mean of the drawn centres against moments about the tipping lines.
    assert seen.resultant == pytest.approx(mass @ place / mass.sum(), abs=1e-9)


def test_the_supports_carry_all_of_it(seen):
    weight = GRAVITY * sum(c.mass for c in seen.centres)
    assert seen.reactions.sum() == pytest.approx(weight, rel=1e-9)


def test_the_load_lies_where_the_boom_points_at_its_radius(seen):
    load = next(c for c in seen.centres if c.name == "load")
    assert (load.x, load.y) == pytest.approx(
        (10.0 * np.cos(seen.slew), 10.0 * np.sin(seen.slew)), abs=1e-9
    )


def test_the_path_goes_through_the_resultant_and_is_a_circle(seen):
    middle = seen.path[:-1].mean(axis=0)
    away = np.linalg.norm(seen.path - middle, axis=1)
    assert np.ptp(away) < 1e-9
    assert np.linalg.norm(seen.resultant - middle) == pytest.approx(away[0], abs=1e-9)


def test_the_heavy_line_is_the_one_nearest_to_the_resultant(seen):
    plan = draw_plan(Figure().add_subplot(), seen)
    ends = np.array(plan.near.get_data()).T
    along = (ends[1] - ends[0]) / np.linalg.norm(ends[1] - ends[0])
    offset = seen.resultant - ends[0]
    away = abs(along[0] * offset[1] - along[1] * offset[0])
    assert away == pytest.approx(seen.inside, abs=1e-9)
    assert plan.near.get_linewidth() > 2 * plan.lines.get_linewidth()


def test_each_support_has_its_force_beside_it(seen):
    plan = draw_plan(Figure().add_subplot(), seen)
    for place, force, text in zip(
        seen.setup.support.points, seen.reactions, plan.reactions, strict=True
    ):
        assert text.xy == place
        assert text.get_text() == show(float(force), "force")


def test_groups_of_masses_differ_by_marker(seen):
    plan = draw_plan(Figure().add_subplot(), seen)
    markers = [line.get_marker() for line in plan.centres.values()]
    assert len(set(markers)) == len(markers)


def test_a_load_beyond_the_picture_is_pointed_at_and_not_drawn(seen):
    plan = draw_plan(Figure().add_subplot(), seen)
    drawn = len(plan.centres["load"].get_xdata())
    assert drawn == (0 if load_is_out(seen) else 1)
    assert load_is_out(seen) == (0.97 * edge_of(view(seen), seen.slew) < 10.0)


def test_by_default_the_boom_points_where_least_holds_the_crane_down(hung):
    worst = plan_of(hung)
    others = [plan_of(hung, slew=s).inside for s in hung.setup.slew]
    assert worst.inside == pytest.approx(min(others), abs=1e-9)


def test_an_updated_plan_is_the_same_as_one_drawn_anew(hung):
    plan = draw_plan(Figure().add_subplot(), plan_of(hung, slew=0.0))
    update_plan(plan, plan_of(hung, slew=2.0))
    fresh = draw_plan(Figure().add_subplot(), plan_of(hung, slew=2.0))
    assert plan.resultant.get_data() == fresh.resultant.get_data()
    assert len(plan.ax.get_children()) == len(fresh.ax.get_children())


def test_a_crane_that_tips_has_no_reactions_to_show(setup):
    lost = plan_of(hung_at(setup, extension=WAY, load=30000.0, radius=14.0))
    assert lost.inside < 0.0
    plan = draw_plan(Figure().add_subplot(), lost)
    assert {text.get_text() for text in plan.reactions} == {"tips"}


@pytest.fixture(scope="module")
def reach(setup):
    return range_of(setup)


def test_a_pinned_boom_goes_out_head_side_first_and_a_sequenced_one_base_side_first():
    pinned = load_machine("yard60").boom
    assert usual_extensions(pinned)[1].tolist() == [0, 0, 0, 1]
    truck = load_machine("truck18").boom
    first = usual_extensions(truck)
    assert first[0].tolist() == [0, 0, 0] and first[-1].tolist() == [1, 1, 1]


def test_arcs_carry_the_ratings_of_their_radii(setup, reach):
    known = np.isfinite(reach.capacity)
    assert known.any(axis=1).all()
    places = np.where(reach.radius > 0.0, reach.radius, 1.0)
    rating = rate(setup, extension=reach.extension, radius=places)
    assert np.array_equal(reach.capacity[known], rating.capacity[known])
    assert np.array_equal(reach.tips[known], rating.is_stability[known])


def test_each_stretch_of_an_arc_has_the_line_of_its_family(reach):
    diagram = draw_range(Figure().add_subplot(), reach)
    for row, (breaks, tips) in enumerate(zip(diagram.structural, diagram.stability, strict=True)):
        known = np.isfinite(reach.capacity[row])
        shown = np.isfinite(tips.get_xdata())
        assert np.array_equal(shown, known & reach.tips[row])
        assert np.all(np.isfinite(breaks.get_xdata()) >= (known & ~reach.tips[row]))
        assert breaks.get_linestyle() != tips.get_linestyle()


def test_contours_join_points_of_one_capacity(reach):
    found = bands(reach, unit=1000.0)
    assert len(found) >= 3
    for capacity in found:
        for radius, height in contour(reach, capacity):
            near = [
                np.interp(-radius, -reach.radius[row], reach.capacity[row])
                for row in range(len(reach.length))
                if np.min(np.hypot(reach.radius[row] - radius, reach.height[row] - height)) < 1.0
            ]
            # On one of the arcs next to the point the capacity is that of the contour; arcs are
            # straight between their points here and there.
            assert min(abs(value - capacity) for value in near) < 1e-6 * capacity


def test_ticks_are_round_in_the_unit_shown(reach):
    diagram = draw_range(Figure().add_subplot(), reach, units="us")
    ticks = diagram.ax.xaxis.get_major_locator()()
    feet = np.asarray(ticks) / 0.3048
    assert np.allclose(feet, np.round(feet), atol=1e-9)
    formatter = diagram.ax.xaxis.get_major_formatter()
    assert formatter(10 * 0.3048) == "10"


def test_an_updated_range_is_the_same_as_one_drawn_anew(setup, reach):
    diagram = draw_range(Figure().add_subplot(), reach)
    other = range_of(setup, extension=WAY)
    update_range(diagram, other)
    fresh = draw_range(Figure().add_subplot(), other)
    assert len(diagram.structural) == len(fresh.structural) == 1
    assert len(diagram.ax.get_children()) == len(fresh.ax.get_children())


@pytest.mark.parametrize("name", ["truck18", "bench"])
def test_other_machines_have_a_range_too(name):
    shape = range_of(set_up(load_machine(name)))
    assert np.all(np.diff(shape.length) > 0.0)
    assert np.isfinite(shape.capacity).any()
