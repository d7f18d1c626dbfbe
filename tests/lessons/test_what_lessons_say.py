"""What the lessons say in words, held against the call path.

Each lesson's text makes claims without numbers. These tests are the numbers: if a machine is
changed so that a claim fails, the lesson must be rewritten.
"""

import numpy as np
import pytest

from boomsim.lab.lessons.bench import WAYS, bench, shifts, tips_at
from boomsim.lab.lessons.breaks import FAR as BREAKS_FAR
from boomsim.lab.lessons.breaks import NEAR as BREAKS_NEAR
from boomsim.lab.lessons.breaks import past_rated
from boomsim.lab.lessons.chart import lesson_chart
from boomsim.lab.lessons.half import FAR as HALF_FAR
from boomsim.lab.lessons.half import half_bent, half_compared
from boomsim.lab.lessons.losses import lost
from boomsim.lab.lessons.measure import combined
from boomsim.lab.lessons.net import NET_RADIUS, net_reading
from boomsim.lab.lessons.same_length import FAR, NEAR, best_at, column, ways
from boomsim.lab.lessons.strong import close_lifts, lever, pad_forces
from boomsim.lab.lessons.turns_over import over
from boomsim.machine.files import load_machine
from boomsim.machine.model import Rigging
from boomsim.mechanics.geometry import layout
from boomsim.mechanics.loads import GRAVITY
from boomsim.mechanics.profile import properties
from boomsim.rating.builds.study import compare_builds, overloaded
from boomsim.rating.builds.telling import stability_from
from boomsim.rating.capacity import rate
from boomsim.rating.charts.boldline import crossings
from boomsim.rating.comparison.compare import demonstration
from boomsim.rating.limits.kind import STRENGTH
from boomsim.rating.response import respond
from boomsim.rating.setup import set_up

BOOM = load_machine("yard60").boom


def test_01_a_section_that_moves_changes_its_own_overlap_only():
    before = layout(BOOM, extension=[0.2, 0.2, 0.2, 0.2]).overlap[0]
    for k in range(4):
        out = [0.2] * 4
        out[k] = 0.7
        changed = np.flatnonzero(np.abs(layout(BOOM, extension=out).overlap[0] - before) > 1e-12)
        assert list(changed) == [k + 1]


def test_01_sections_are_numbered_from_the_heaviest_to_the_lightest():
    masses = [section.mass for section in BOOM.sections]
    assert masses == sorted(masses, reverse=True)


@pytest.fixture(scope="module")
def compared():
    return ways()[1]


def test_02_close_in_the_heavy_section_out_leads_and_something_would_break(compared):
    assert best_at(compared, NEAR) == "C"
    assert not compared.rating.is_stability[:, column(compared, NEAR)].any()


def test_02_far_out_the_light_section_out_leads_and_the_crane_would_tip(compared):
    assert best_at(compared, FAR) == "A"
    assert compared.rating.is_stability[:, column(compared, FAR)].all()


def test_02_the_lead_changes_twice_and_each_way_leads_somewhere(compared):
    assert len(compared.crossovers) == 2
    assert set(compared.best[compared.best >= 0]) == {0, 1, 2}


@pytest.fixture(scope="module")
def half():
    return half_compared()


def test_03_all_at_half_bends_least(half):
    down = half_bent(*half).tip_deflection[:, 0]
    assert np.argmin(down) == 0
    assert np.argmax(down) == 1


def test_03_close_in_all_at_half_carries_more_than_light_half_out_far_out_less(half):
    capacity = half[1].rating.capacity
    near, far = column(half[1], 8.0), column(half[1], HALF_FAR)
    assert capacity[0, near] > capacity[1, near]
    assert capacity[1, far] > 1.05 * capacity[0, far]
    assert half[1].rating.is_stability[:, far].all()


def test_03_the_tip_hangs_down_without_a_load_and_then_goes_down_evenly(half):
    setup, found = half
    loads = (0.0, 2000.0, 4000.0, 6000.0)
    down = np.array(
        [
            respond(
                setup, boom=found.rating.boom, load=np.array([[load]]), radius=np.array([[16.0]])
            ).tip_deflection[:, 0]
            for load in loads
        ]
    )
    steps = np.diff(down, axis=0)
    assert (down[0] > 0.05).all()
    # "Nearly the same": second order and play make up to a fifth.
    assert (np.abs(steps / steps.mean(axis=0) - 1.0) < 0.2).all()
    assert np.argmax(steps.mean(axis=0)) == 1


@pytest.fixture(scope="module")
def close():
    return close_lifts()[1]


def test_04_nested_sections_carry_hardly_any_of_the_moment(close):
    light, _, heavy = close
    most = max(section.moment_max for section in light.sections)
    assert max(light.sections[k].moment_max for k in (1, 2)) < 0.05 * most
    most = max(section.moment_max for section in heavy.sections)
    assert max(heavy.sections[k].moment_max for k in (2, 3)) < 0.05 * most


def test_04_the_short_overlap_of_the_light_section_makes_its_pads_press_hardest(close):
    pads = [one.sections[k].front_pad for one, k in zip(close, (4, 3, 1), strict=True)]
    overlaps = [
        one.response.boom.layout.overlap[0, k] for one, k in zip(close, (4, 3, 1), strict=True)
    ]
    assert np.argmax(pads) == np.argmin(overlaps) == 0
    assert np.argmin(pads) == np.argmax(overlaps) == 1


def test_04_the_larger_sections_have_the_larger_moduli():
    moduli = [properties(section.profile).modulus_bottom for section in BOOM.sections]
    assert moduli == sorted(moduli, reverse=True)


def test_04_the_pads_of_the_self_check_are_those_of_the_lever_law():
    # F (a + c)/c and F a/c, by hand; the call path is asked for the answer.
    a, c = lever()
    front, rear = pad_forces(overhang=a, overlap=c, force=100e3)
    assert front == pytest.approx(100e3 * (a + c) / c, rel=1e-6)
    assert rear == pytest.approx(100e3 * a / c, rel=1e-6)


def test_04_light_at_first_and_hardly_used_close_in_means_strong(close):
    worst = [max(u.use for u in one.limits if u.limit.section is not None) for one in close]
    assert worst == sorted(worst, reverse=True)


@pytest.fixture(scope="module")
def directions():
    return {name: over(name) for name in ("front", "side", "rear")}


def test_05_least_over_the_front_most_over_the_rear(directions):
    rated = [directions[name].account.capacity for name in ("front", "side", "rear")]
    assert rated == sorted(rated)


def test_05_most_of_what_differs_is_the_carrier(directions):
    front, rear = directions["front"].holds, directions["rear"].holds
    apart = {group: abs(rear[group] - front[group]) for group in front}
    assert apart["carrier"] > 0.8 * sum(apart.values())


def test_05_the_moments_of_the_sheet_make_the_tipping_load_of_the_account(directions):
    for one in directions.values():
        tipping = sum(one.holds.values()) / (GRAVITY * one.account.lever)
        assert 0.85 * tipping == pytest.approx(one.account.stability, rel=1e-9)


def test_05_half_out_outriggers_cost_dearly_and_on_tyres_nothing_is_left():
    machine = load_machine("yard60")
    out, radius = demonstration(machine.boom).extension[1], np.array([12.0])
    rated = [
        rate(set_up(machine, rigging=Rigging(support=name)), extension=out, radius=radius)
        for name in ("full", "half")
    ]
    assert rated[1].capacity[0, 0] < 0.85 * rated[0].capacity[0, 0]
    bare = Rigging(support="tyres", counterweight="none")
    worst = set_up(machine, rigging=bare, slew=np.pi / 2)
    left = rate(worst, extension=[1, 1, 1, 1], radius=np.array([10.0, 30.0])).capacity[0]
    assert left[1] == 0.0
    assert left[1] < left[0]


def test_06_the_bold_line_is_crossed_once_in_each_column_and_it_breaks_above_it():
    chart = lesson_chart("metric")
    assert list(crossings(chart)) == [1] * len(chart.length)
    for column_number in range(len(chart.length)):
        rows = np.flatnonzero(chart.rated[:, column_number])
        assert chart.structural[rows[0], column_number]
        assert not chart.structural[rows[-1], column_number]


def test_06_over_the_rear_more_cells_break_first():
    around, rear = lesson_chart("metric"), lesson_chart("metric", slew="rear")
    assert rear.structural.sum() > around.structural.sum()


def test_07_close_in_it_breaks_and_far_out_it_tips():
    near, far = past_rated(BREAKS_NEAR), past_rated(BREAKS_FAR)
    assert not near.warns
    assert far.warns
    assert near.failure.load < 0.9 * near.tipping.load
    assert far.tipping.load < 0.9 * far.failure.load


@pytest.fixture(scope="module")
def old_and_new():
    setup = set_up(load_machine("yard60"))
    return compare_builds(
        setup, factors=(0.8, 1.0, 1.3), extension=demonstration(BOOM).extension[0]
    )


def first_ends(builds, radius):
    """Whether the light crane, the crane as it is and the stout one tip first at a radius."""
    return [one.warns for one in overloaded(builds, radius=radius)]


def test_07_the_stout_crane_tips_first_at_both_places_and_breaks_only_close_beside_it(old_and_new):
    assert first_ends(old_and_new, BREAKS_NEAR)[-1]
    assert first_ends(old_and_new, BREAKS_FAR)[-1]
    # So does every place farther out than the near one; the load 3 m from the axis hangs just
    # outside the jacks, which stand 2.9 m to either side.
    assert all(first_ends(old_and_new, radius)[-1] for radius in (7.0, 9.0, 12.0, 14.0))
    assert not first_ends(old_and_new, 3.0)[-1]


def test_07_the_light_crane_breaks_first_where_the_crane_as_it_is_tips(old_and_new):
    assert first_ends(old_and_new, BREAKS_NEAR)[:2] == [False, False]
    assert first_ends(old_and_new, 8.0)[:2] == [False, True]


def test_07_strength_sets_every_figure_of_the_light_crane_and_the_bold_line_moves_in_on_the_stout(
    old_and_new,
):
    light, usual, stout = old_and_new.builds
    assert {stretch.what for stretch in light.sets} == {STRENGTH}
    assert stability_from(stout) < stability_from(usual)
    masses = [build.boom_mass for build in old_and_new.builds]
    assert masses == sorted(masses)


def test_07_far_out_the_stout_crane_carries_less_than_the_crane_as_it_is(old_and_new):
    _, usual, stout = old_and_new.capacity
    far = np.isfinite(usual) & (old_and_new.radii >= 12.0)
    assert far.sum() >= 5
    assert (stout[far] < usual[far]).all()


def test_07_a_float_that_lifts_is_no_warning():
    far = past_rated(BREAKS_FAR)
    lifted = [event for event in far.events if event.kind == "float"]
    assert lifted[0].load < far.rated


def test_08_parts_of_line_help_only_while_the_rope_governs():
    readings = [net_reading("metric", radius=NET_RADIUS, parts=p) for p in range(1, 13)]
    governed = [reading.rope_governs for reading in readings]
    assert governed == sorted(governed, reverse=True)
    assert 0 < sum(governed) < 12
    nets = [reading.net for reading in readings if not reading.rope_governs]
    assert len(set(nets)) == 1


def test_08_twice_the_parts_carry_not_quite_twice_the_load():
    carried = {
        p: net_reading("metric", radius=NET_RADIUS, parts=p).line_limit for p in (1, 2, 4, 8)
    }
    for parts in (1, 2, 4):
        assert 1.8 * carried[parts] < carried[2 * parts] < 2.0 * carried[parts]


def test_09_a_side_pull_costs_where_strength_governs_and_nothing_where_tipping_does():
    found = lost()
    names = [taker.name for taker in found.takers]
    close, far = found.share[names.index("side pull")]
    assert found.governing[0].set_by != "stability"
    assert found.governing[1].set_by == "stability"
    assert close > 0.02
    assert abs(far) < 0.005


def test_09_several_at_once_cost_more_than_any_one_of_them():
    found = lost()
    share = {taker.name: found.share[k] for k, taker in enumerate(found.takers)}
    for name in ("lean", "side pull", "wind", "hoisting"):
        assert (share["together"] > share[name]).all()


def test_10_the_light_tube_out_takes_most_and_the_feet_shift_most():
    loads = {way: tips_at(bench(), way) for way in WAYS}
    assert loads["A"] > loads["B"] > loads["C"]
    parts = shifts(bench(), "B")
    assert max(parts, key=lambda words: abs(parts[words])) == "feet 2 mm wider"


def test_10_a_class_can_tell_the_ways_apart():
    # A to C are apart by more than five of what each prediction is unsure of.
    between = tips_at(bench(), "A") - tips_at(bench(), "C")
    assert between > 5.0 * combined(shifts(bench(), "B"))
