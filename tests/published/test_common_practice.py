"""Facts of the trade: common practice, no source.

Lengths of a boom that is retracted about 42 ft long and has five strokes of about 32 ft each; a
stability-limited rated load is 85 % of the tipping load, so 120 % of it is past tipping.

Source: Facts of the trade. Status: common practice.
"""

from dataclasses import replace

import numpy as np
import pytest
from making import (
    BARE_HEAD,
    RIGID,
    bare_machine,
    invented_crane,
    larger_crane,
    set_up_by_hand,
    stiff_section,
)

from boomsim.machine.boom_systems import one_after_another
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Boom, Rigging
from boomsim.mechanics.geometry import layout
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import (
    label,
    pinned_configurations,
    range_of_length,
)

FOOT = 0.3048


def five_strokes() -> Boom:
    base = stiff_section(41.0 * FOOT, stiffness=RIGID)
    moving = stiff_section(38.0 * FOOT, stiffness=RIGID, stroke=32.0 * FOOT, nose=0.0)
    boom = bare_machine((base, *[moving] * 5), head=replace(BARE_HEAD, ahead=1.0 * FOOT)).boom
    return replace(boom, lock_positions=(0.0, 0.5, 0.93, 0.98))


def feet(extension: tuple[float, ...]) -> float:
    return float(layout(five_strokes(), extension=extension).boom_length[0]) / FOOT


def test_one_section_at_93_percent_makes_about_72_feet() -> None:
    # 71.9 ft; "about 42" and "about 32" leave half a percent.
    assert feet((0.0, 0.0, 0.0, 0.0, 0.0)) == pytest.approx(42.0)
    for out in range(5):
        extension = tuple(0.93 * (k == out) for k in range(5))
        assert feet(extension) == pytest.approx(71.9, rel=5e-3)


def test_three_at_half_and_two_at_98_percent_make_151_to_156_feet() -> None:
    for extension in ((0.5, 0.5, 0.5, 0.98, 0.98), (0.98, 0.98, 0.5, 0.5, 0.5)):
        assert 151.0 < feet(extension) < 156.0


def test_pins_reach_the_same_length_in_many_ways() -> None:
    boom = five_strokes()
    every = pinned_configurations(boom)
    assert len(every) == 4**5
    lengths = layout(boom, extension=every).boom_length / FOOT
    same = every[np.abs(lengths - feet((0.5, 0.5, 0.5, 0.98, 0.98))) < 0.01]
    # Which two of five are far out: 5 over 2 is ten ways.
    assert len(same) == 10


def test_a_configuration_is_written_base_side_first() -> None:
    assert label(np.array([0.0, 0.0, 0.465, 0.465])) == "0, 0, 46.5, 46.5"


def test_sequenced_sections_go_out_one_after_another() -> None:
    stroke = (8.0, 8.0, 4.0)
    assert one_after_another(stroke, 0.0) == (0.0, 0.0, 0.0)
    assert one_after_another(stroke, 12.0) == (1.0, 0.5, 0.0)
    assert one_after_another(stroke, 20.0) == (1.0, 1.0, 1.0)


def test_the_longest_boom_has_all_sections_out() -> None:
    shortest, longest = range_of_length(five_strokes())
    assert shortest / FOOT == pytest.approx(42.0)
    assert longest / FOOT == pytest.approx(42.0 + 5 * 32.0)


def test_120_percent_of_a_stability_limited_load_is_past_tipping() -> None:
    # 0.85 x 1.2 = 1.02.
    setup = set_up_by_hand(invented_crane())
    rating = rate(setup, extension=np.array([[1.0, 1.0, 1.0]]), radius=np.array([22.0]))
    assert rating.is_stability.all()
    over = respond(setup, boom=rating.boom, load=1.2 * rating.capacity, radius=rating.radius)
    # A heavier load bends the boom a little more, so that its weight is nearer: 0.1 %.
    assert 1.2 * rating.capacity / over.balance.least == pytest.approx(1.02, rel=2e-3)
    under = respond(setup, boom=rating.boom, load=1.17 * rating.capacity, radius=rating.radius)
    assert np.all(1.17 * rating.capacity < under.balance.least)


def test_at_41_8_ft_one_section_far_out_carries_more_than_two_at_half() -> None:
    # 71.9 ft of boom at a radius of 41.8 ft, on an invented crane with these five strokes.
    setup = set_up_by_hand(larger_crane())
    one, two = (0.0, 0.0, 0.0, 0.0, 0.93), (0.0, 0.0, 0.0, 0.465, 0.465)
    rating = rate(setup, extension=np.array([one, two]), radius=np.array([41.8 * FOOT]))
    # "About 42" and "about 32" leave half a percent.
    assert rating.boom.layout.boom_length / FOOT == pytest.approx(71.9, rel=5e-3)
    assert rating.capacity[0, 0] > rating.capacity[1, 0]


def test_the_heavy_section_out_with_the_rest_nested_is_strongest_close_in() -> None:
    setup = set_up_by_hand(larger_crane())
    light, heavy = (0.0, 0.0, 0.0, 0.0, 0.93), (0.93, 0.0, 0.0, 0.0, 0.0)
    rating = rate(setup, extension=np.array([light, heavy]), radius=np.array([20.0 * FOOT]))
    assert rating.capacity[1, 0] > rating.capacity[0, 0]
    assert not rating.is_stability[0, 0]


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_on_tyres_a_quarter_or_less_of_the_outrigger_figure_is_lifted(name: str) -> None:
    # At 5 m over the rear, boom retracted. Source: Facts of the trade. Status: from memory.
    machine = load_machine(name)
    retracted = np.zeros(len(machine.boom.sections) - 1)
    outriggers, tyres = (
        rate(
            set_up(machine, rigging=Rigging(support=support), slew="rear"),
            extension=retracted,
            radius=[5.0],
        ).capacity[0, 0]
        for support in ("full", "tyres")
    )
    assert 0.0 < tyres <= outriggers / 4
