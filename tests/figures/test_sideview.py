"""The side view is to scale and shows where the sections lie."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.side.boom_shape import bent_boom, outline, straight_boom
from boomsim.figures.side.side_view import draw_sideview, frame, limits, update_sideview
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import layout
from boomsim.mechanics.sections.section_properties import properties
from boomsim.rating.lift_response import respond

WAY = np.array([0.45, 0.0, 0.9, 0.45])


def new_axes():
    return Figure().add_subplot()


@pytest.mark.parametrize("configuration", [0, 1, 2])
@pytest.mark.parametrize("cell", [0, 1])
def test_the_load_hangs_where_the_solved_boom_has_its_head(lift, configuration, cell):
    shape = bent_boom(lift, configuration=configuration, cell=cell)
    # Both sum the same parabolas; the picture draws no stretch, a few ten-thousandths of a boom.
    stretch = 1e-4 * lift.boom.layout.boom_length[configuration]
    assert shape.sheave[0] == pytest.approx(lift.radius[configuration, cell], abs=stretch)
    assert shape.sheave[1] == pytest.approx(lift.placed.head_up[configuration, cell], abs=stretch)


def test_each_tail_lies_on_the_axis_of_the_section_outside_it(lift):
    shape = bent_boom(lift, configuration=1, cell=1)
    for i in range(1, len(shape.axis)):
        outer, tail = shape.axis[i - 1], shape.axis[i][0]
        offset = np.linalg.norm(outer - tail, axis=1).min()
        assert offset == pytest.approx(0.0, abs=1e-9)


def test_a_flat_boom_shows_fronts_tails_and_overlaps_where_the_layout_has_them(setup):
    machine = setup.machine
    shape = straight_boom(machine, extension=WAY, angle=0.0)
    artists = draw_sideview(new_axes(), shape)
    places = layout(machine.boom, extension=WAY)
    for i, drawn in enumerate(artists.hidden.get_segments(), start=1):
        along = drawn[:, 0] - machine.heel_out
        assert along.min() == pytest.approx(places.tail[0, i])
        assert along.max() == pytest.approx(places.front[0, i - 1])
    for i, drawn in enumerate(artists.visible.get_segments()):
        along = drawn[:, 0] - machine.heel_out
        assert along.max() == pytest.approx(places.front[0, i])
        assert along.min() == pytest.approx(places.front[0, i - 1] if i else 0.0)


def test_sections_are_as_high_as_their_profiles(setup):
    shape = straight_boom(setup.machine, extension=WAY, angle=0.3)
    for i, section in enumerate(setup.machine.boom.sections):
        drawn = outline(shape, i)
        across = drawn @ np.array([-np.sin(0.3), np.cos(0.3)])
        high = properties(section.profile).outer_height
        assert np.ptp(across) == pytest.approx(high, rel=1e-9)


def test_lengths_up_and_across_have_one_scale(lift):
    artists = draw_sideview(new_axes(), bent_boom(lift))
    assert artists.ax.get_aspect() == 1.0


def test_an_exaggerated_deflection_is_that_many_times_as_large(lift):
    once, thrice = (bent_boom(lift, configuration=1, exaggeration=k) for k in (1.0, 3.0))
    unbent = bent_boom(lift, configuration=1, exaggeration=0.0)
    bend = once.sheave - unbent.sheave
    assert np.linalg.norm(bend) > 0.01
    assert thrice.sheave - unbent.sheave == pytest.approx(3.0 * bend, rel=1e-9)


def test_an_updated_view_is_the_same_as_one_drawn_anew(lift):
    shapes = [bent_boom(lift, configuration=k, cell=c) for k, c in ((0, 0), (2, 1))]
    moved = draw_sideview(new_axes(), shapes[0])
    update_sideview(moved, shapes[1])
    fresh = draw_sideview(new_axes(), shapes[1])
    for name in ("visible", "hidden", "mouths"):
        pairs = zip(
            getattr(moved, name).get_segments(), getattr(fresh, name).get_segments(), strict=True
        )
        assert all(np.array_equal(a, b) for a, b in pairs)
    assert np.array_equal(moved.load.get_xy(), fresh.load.get_xy())
    assert len(moved.ax.get_children()) == len(fresh.ax.get_children())


def test_a_heavier_counterweight_is_drawn_larger(setup):
    shape = straight_boom(setup.machine, extension=WAY, angle=0.2)
    artists = draw_sideview(new_axes(), shape)
    areas = []
    for weight in sorted(setup.machine.counterweights, key=lambda w: w.mass):
        update_sideview(artists, shape, counterweight=weight)
        areas.append(len(artists.crane.get_paths()) if not weight.mass else area(artists.crane))
    assert areas[1:] == sorted(areas[1:])
    assert areas[1] < areas[-1]


def area(crane):
    x, y = crane.get_paths()[-1].vertices[:-1].T
    return abs(np.dot(x, np.roll(y, 1)) - np.dot(y, np.roll(x, 1))) / 2


def test_a_small_view_holds_every_boom_it_is_compared_with(setup):
    ways = ([0, 0, 0, 0], [1, 1, 1, 1], [0, 0.45, 0, 0])
    shapes = [straight_boom(setup.machine, extension=np.array(w), angle=0.17) for w in ways]
    artists = draw_sideview(new_axes(), shapes[0], detail=False)
    frame(artists, limits(shapes))
    (left, right), (low, high) = artists.ax.get_xlim(), artists.ax.get_ylim()
    for shape in shapes:
        points = np.concatenate([*shape.axis, [shape.sheave]])
        assert left < points[:, 0].min() and points[:, 0].max() < right
        assert low < points[:, 1].min() and points[:, 1].max() < high


def test_a_boom_without_equilibrium_has_no_shape(setup):
    boom = condense(setup.machine, extension=np.ones((1, 4)))
    lost = respond(setup, boom=boom, load=np.array([[5e5]]), radius=np.array([[30.0]]))
    assert not lost.state.converged[0, 0]
    with pytest.raises(ValueError, match="no equilibrium"):
        bent_boom(lost)
