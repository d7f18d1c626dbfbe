"""A range diagram of a crane that its own boom turns over."""

from dataclasses import replace

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.range import range_figure as pictures
from boomsim.figures.range.range_figure import draw_range, figure_of_range
from boomsim.figures.range.range_shape import RangeShape, range_of
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.rating.setup import Setup, set_up
from tests.making import invented_crane

EVERY_SECTION_OUT = np.ones((1, 3))


@pytest.fixture(scope="module")
def light() -> Setup:
    """A crane on a light carrier, without its counterweight: its whole boom turns it over."""
    machine = invented_crane()
    carrier = tuple(replace(part, mass=0.6 * part.mass) for part in machine.carrier)
    setup = set_up(replace(machine, carrier=carrier))
    return replace(setup, counterweight=replace(setup.counterweight, mass=0.0))


@pytest.fixture(scope="module")
def shape(light: Setup) -> RangeShape:
    found = range_of(light, extension=np.stack([np.zeros(3), np.ones(3)]))
    assert found.empty_hook.turns_over.tolist() == [False, True]
    return found


def lowest_drawn(line: object) -> float:
    """Least height to which a line of the picture comes [m]."""
    y = np.where(np.isfinite(line.get_xdata()), line.get_ydata(), np.nan)  # type: ignore[attr-defined]
    return float(np.nanmin(y)) if np.isfinite(y).any() else np.inf


def test_no_arc_is_drawn_below_the_boom_angle_at_which_the_crane_turns_over(
    shape: RangeShape,
) -> None:
    diagram = draw_range(Figure().add_subplot(), shape)
    end = shape.place(1, float(shape.empty_hook.angle[1]))
    assert [tuple(cross.get_xydata()[0]) for cross in diagram.ends] == [end]
    bare = [line for line in diagram.others if getattr(line, "get_xydata", None) is not None]
    bare = [line for line in bare if len(line.get_xdata()) == len(shape.angle)]
    assert len(bare) == len(shape.length)
    for line in (diagram.structural[1], diagram.stability[1], bare[1]):
        assert lowest_drawn(line) >= end[1]
    # The short boom, which never turns the crane over, is drawn down to its least angle.
    assert lowest_drawn(bare[0]) == pytest.approx(np.min(shape.height[0]))


def test_nothing_less_than_hook_block_and_slings_is_rated(shape: RangeShape) -> None:
    known = np.isfinite(shape.capacity)
    hung = hanging_mass(shape.setup, length=shape.length, angle=shape.angle[None])
    assert np.all(shape.capacity[known] >= hung[known])
    assert np.all(shape.stands[known])
    assert np.array_equal(known, shape.governing >= 0)


def test_the_crane_that_is_drawn_stands(light: Setup, monkeypatch: pytest.MonkeyPatch) -> None:
    drawn: list[float] = []
    usual = pictures.straight_boom

    def watched(*args: object, angle: float, **more: object) -> object:
        drawn.append(angle)
        return usual(*args, angle=angle, **more)

    monkeypatch.setattr(pictures, "straight_boom", watched)
    figure_of_range(light, extension=EVERY_SECTION_OUT)
    least = float(range_of(light, extension=EVERY_SECTION_OUT).empty_hook.angle[0])
    assert drawn[0] > least > pictures.CRANE_ANGLE, "it would lie on its side at the usual angle"


def test_a_crane_that_stands_at_no_boom_angle_is_not_drawn(
    light: Setup, monkeypatch: pytest.MonkeyPatch
) -> None:
    featherweight = replace(
        light.machine,
        carrier=tuple(replace(part, mass=1.0) for part in light.machine.carrier),
        superstructure=tuple(replace(part, mass=1.0) for part in light.machine.superstructure),
        boom=replace(light.machine.boom, greatest_angle=0.6),
    )
    monkeypatch.delattr(pictures, "straight_boom")
    setup = replace(light, machine=featherweight)
    figure_of_range(setup, extension=EVERY_SECTION_OUT)
    assert not range_of(setup, extension=EVERY_SECTION_OUT).stands.any()
