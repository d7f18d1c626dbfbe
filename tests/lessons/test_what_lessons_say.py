"""What the lessons say in words, held against the call path.

Each lesson's text makes claims without numbers. These tests are the numbers: if a machine is
changed so that a claim fails, the lesson must be rewritten.
"""

import re
from itertools import pairwise

import numpy as np
import pytest

from boomsim.gravity import GRAVITY
from boomsim.lessons.lesson_02_same_length import ASKED, FAR, NEAR, best_at, column, ways
from boomsim.lessons.lesson_03_why_not_half import FAR as HALF_FAR
from boomsim.lessons.lesson_03_why_not_half import NEAR as HALF_NEAR
from boomsim.lessons.lesson_03_why_not_half import half_bent, half_compared
from boomsim.lessons.lesson_04_strong_close_in import close_lifts, lever, pad_forces
from boomsim.lessons.lesson_05_turns_over import DIRECTIONS, RADIUS, half_out, over
from boomsim.lessons.lesson_06_reading_a_chart import (
    ASKED_LENGTH,
    ASKED_RADIUS,
    LENGTH,
    few_ways,
    lesson_chart,
)
from boomsim.lessons.lesson_06_reading_a_chart import RADIUS as RADIUS_READ
from boomsim.lessons.lesson_07_breaks_or_tips import FAR as BREAKS_FAR
from boomsim.lessons.lesson_07_breaks_or_tips import NEAR as BREAKS_NEAR
from boomsim.lessons.lesson_07_breaks_or_tips import past_rated
from boomsim.lessons.lesson_08_gross_to_net import NET_PARTS, NET_RADIUS, net_reading
from boomsim.lessons.lesson_09_what_eats_capacity import NEAR as NEAR_LOST
from boomsim.lessons.lesson_09_what_eats_capacity import lost
from boomsim.lessons.lesson_order import lesson_named
from boomsim.lessons.measured_mean import combined
from boomsim.lessons.shown.lesson_08_shown import SHOWN as SHOWN_NET
from boomsim.lessons.shown.lesson_09_shown import SHOWN as SHOWN_LOST
from boomsim.lessons.tabletop_prediction import WAYS, bench, shifts, tips_at
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.mechanics.geometry import layout
from boomsim.mechanics.sections.section_properties import properties
from boomsim.rating.builds.builds_sentences import stability_from
from boomsim.rating.builds.builds_study import compare_builds, overloaded
from boomsim.rating.capacity import rate
from boomsim.rating.chart_places import Places
from boomsim.rating.charts.bold_line import crossings
from boomsim.rating.charts.reading_sentences import tell_reading
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.comparison.difference_account import account
from boomsim.rating.empty_hook.empty_hook_study import empty_hook
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import STRENGTH
from boomsim.rating.losses.capacity_effects import Amounts
from boomsim.rating.losses.losses_study import losses
from boomsim.rating.overload.overload_study import overload
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of_length
from boomsim.units import parse
from tests.reeving_by_hand import parts_by_hand

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


def test_02_close_in_the_heavy_section_out_leads_and_stability_sets_no_figure(compared):
    assert best_at(compared, NEAR) == "C"
    close_in = [compared.rating.limit(way, column(compared, NEAR)) for way in range(3)]
    assert [limit.set_by for limit in close_in] == ["strength", "strength", "permissible value"]
    assert close_in[2].name == "slewing ring"


def test_02_far_out_the_light_section_out_leads_and_stability_sets_every_figure(compared):
    assert best_at(compared, FAR) == "A"
    assert compared.rating.is_stability[:, column(compared, FAR)].all()


def test_02_the_lead_changes_twice_and_each_way_leads_somewhere(compared):
    assert len(compared.crossovers) == 2
    assert set(compared.best[compared.best >= 0]) == {0, 1, 2}


@pytest.fixture(scope="module")
def half():
    return half_compared()


def test_02_who_carries_the_drawn_curves_on_finds_both_answers(compared):
    # Straight on from the two rows of the handout that are nearest to the radius asked for.
    for radius, rows in ((NEAR, (8.0, 7.0)), (FAR, (12.0, ASKED))):
        a, b = (compared.rating.capacity[:, column(compared, row)] for row in rows)
        onwards = b + (b - a) * (radius - rows[1]) / (rows[1] - rows[0])
        assert "ABC"[np.argmax(onwards)] == best_at(compared, radius)


def test_03_all_at_half_bends_least(half):
    down = half_bent(*half).tip_deflection[:, 0]
    assert np.argmin(down) == 0
    assert np.argmax(down) == 1


def test_03_close_in_all_at_half_carries_most_and_far_out_light_half_out(half):
    capacity = half[1].rating.capacity
    assert np.argmax(capacity[:, column(half[1], HALF_NEAR)]) == 0
    assert np.argmax(capacity[:, column(half[1], HALF_FAR)]) == 1


def test_03_far_out_stability_sets_a_and_c_and_would_allow_b_a_little_more_than_strength(half):
    setup, found = half
    far = column(found, HALF_FAR)
    by = [found.rating.limit(way, far).set_by for way in range(3)]
    assert by == ["stability", "strength", "stability"]
    light = account(setup, extension=found.configurations.extension[1], radius=HALF_FAR)
    assert light.capacity < light.stability < 1.05 * light.capacity


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


def test_03_who_carries_the_drawn_curves_on_finds_who_leads_far_out(half):
    # Straight on from the two last rows of the handout.
    a, b = (half[1].rating.capacity[:, column(half[1], row)] for row in (18.0, 20.0))
    onwards = b + (b - a) * (HALF_FAR - 20.0) / 2.0
    assert np.argmax(b) == 0
    assert np.argmax(onwards) == np.argmax(half[1].rating.capacity[:, column(half[1], HALF_FAR)])


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


def test_04_the_light_section_must_carry_nearly_as_much_in_a_as_the_heavy_one_in_c(close):
    light, heavy = close[0].sections[4].moment_max, close[2].sections[1].moment_max
    assert 0.9 * heavy < light < heavy


def test_04_light_at_first_and_hardly_used_close_in_means_strong(close):
    worst = [max(u.utilisation for u in one.limits if u.limit.section is not None) for one in close]
    assert worst == sorted(worst, reverse=True)


@pytest.fixture(scope="module")
def directions():
    return {name: over(name) for name in ("front", "side", "rear")}


def test_05_least_over_the_front_most_over_the_rear_and_stability_sets_all_three(directions):
    ranked = [directions[name].account for name in ("front", "side", "rear")]
    assert all(a.capacity < 0.96 * b.capacity for a, b in pairwise(ranked))
    assert [one.limit.set_by for one in ranked] == ["stability"] * 3


def test_05_over_the_front_the_arm_is_shortest_and_all_but_the_carrier_hold_best(directions):
    front, rear = directions["front"], directions["rear"]
    assert front.account.lever == min(one.account.lever for one in directions.values())
    more = {group: rear.holds[group] - front.holds[group] for group in rear.holds}
    assert {group for group in more if more[group] > 0.0} == {"carrier"}
    assert front.holds["boom"] == max(one.holds["boom"] for one in directions.values()) < 0.0
    assert front.holds["counterweight"] == max(
        one.holds["counterweight"] for one in directions.values()
    )
    assert sum(more.values()) > 0.0
    assert rear.holds["carrier"] > 2.0 * front.holds["carrier"]


def test_05_the_heavy_end_lies_beyond_the_front_line(directions):
    assert directions["front"].account.parts["cab, engine and front axle"] < 0.0


def test_05_on_the_yard_crane_the_side_is_best_and_the_rear_least():
    machine = load_machine("yard60")
    rated = [
        rate(set_up(machine, slew=slew), extension=[0, 0, 0, 0.9], radius=np.array([RADIUS]))
        for slew in (0.0, np.pi, np.pi / 2)
    ]
    loads = [float(one.capacity[0, 0]) for one in rated]
    assert loads == sorted(loads)


def off_the_middle(machine):
    """How far the carrier's weight lies from the middle of its outriggers [m]."""
    mass = sum(part.mass for part in machine.carrier)
    centre = sum(part.mass * part.x for part in machine.carrier) / mass
    ends = [x for x, _ in machine.supports[0].points]
    return abs(centre - (min(ends) + max(ends)) / 2.0)


def test_05_the_yard_cranes_weight_lies_nearer_the_middle_of_its_outriggers():
    yard, truck = (off_the_middle(load_machine(name)) for name in ("yard60", "truck18"))
    assert yard < 0.8 * truck


def test_05_the_moments_of_the_sheet_make_the_tipping_load_of_the_account(directions):
    for one in directions.values():
        tipping = sum(one.holds.values()) / (GRAVITY * one.account.lever)
        assert 0.85 * tipping == pytest.approx(one.account.stability, rel=1e-9)


def test_05_half_out_outriggers_cost_dearly_over_the_side_only():
    machine = load_machine("truck18")
    left = {
        name: [
            rate(
                set_up(machine, slew=slew, rigging=Rigging(support=support)),
                extension=half_out(),
                radius=np.array([RADIUS]),
            ).capacity[0, 0]
            for support in ("half", "full")
        ]
        for name, slew in DIRECTIONS.items()
    }
    assert left["side"][0] < 0.6 * left["side"][1]
    for name in ("front", "rear"):
        assert left[name][0] == pytest.approx(left[name][1], rel=1e-6)


def test_05_half_out_the_empty_hook_turns_the_crane_over_as_the_boom_comes_down():
    bare = Rigging(support="half", counterweight="none")
    worst = set_up(load_machine("truck18"), rigging=bare, slew=np.pi / 2)
    left = rate(worst, extension=[1, 1, 1], radius=np.array([10.0, 18.0, 26.0])).capacity[0]
    assert left[0] > left[1] > left[2] == 0.0
    alone = empty_hook(worst, extension=np.ones(3))
    assert alone.stands.all()
    assert 18.0 < alone.radius[0] < 26.0


def test_06_stability_sets_the_figures_below_the_bold_line_and_none_above_it():
    chart = lesson_chart("metric")
    times = list(crossings(chart))
    assert set(times) == {0, 1}
    for column_number, crossed in enumerate(times):
        rows = np.flatnonzero(chart.rated[:, column_number])
        assert chart.structural[rows[0], column_number]
        assert chart.structural[rows[-1], column_number] == (crossed == 0)


def test_06_without_the_counterweight_the_bold_line_moves_up_and_crosses_every_column():
    usual, bare = lesson_chart("metric"), lesson_chart("metric", counterweight="none")
    assert list(crossings(bare)) == [1] * len(bare.length)
    moved = usual.structural.sum(axis=0) - bare.structural.sum(axis=0)
    assert (moved > 0).all()


@pytest.mark.parametrize("length", [LENGTH, ASKED_LENGTH, 43.5])
def test_06_it_asks_for_booms_only_that_the_machine_can_have(length):
    found = configurations_of_length(BOOM, length=length)
    assert found.length == pytest.approx(length, abs=0.005)


@pytest.mark.parametrize(
    ("radius", "length"), [(RADIUS_READ, LENGTH), (ASKED_RADIUS, ASKED_LENGTH)]
)
def test_06_what_it_asks_for_is_neither_a_row_nor_a_column(radius, length):
    for units in ("metric", "us"):
        chart = lesson_chart(units)
        assert np.abs(chart.radii - radius).min() > 0.05
        assert np.abs(chart.length - length).min() > 0.5


def test_06_the_smaller_of_two_figures_is_not_always_the_longer_booms():
    chart = lesson_chart("metric")
    both = chart.rated[:, :-1] & chart.rated[:, 1:]
    longer = chart.capacity[:, 1:] > chart.capacity[:, :-1]
    assert (both & longer).any()
    assert (both & ~longer).any()


def test_07_close_in_it_breaks_with_every_float_down_and_far_out_it_tips():
    near, far = past_rated(BREAKS_NEAR), past_rated(BREAKS_FAR)
    assert near.failure.load < 0.9 * near.tipping.load
    assert far.tipping.load < 0.9 * far.failure.load
    # No float, at any slew angle, comes to nothing before the boom gives way.
    assert all(one.load == np.inf for one in near.lightens)
    assert min(e.load for e in near.events if e.kind == "float") > near.failure.load


BUILT_NEAR = 6.0
"""Where the lesson looks at the builds, beside the far place [m]."""


@pytest.fixture(scope="module")
def old_and_new():
    setup = set_up(load_machine("yard60"))
    return compare_builds(
        setup, factors=(0.8, 1.0, 1.3), extension=demonstration(BOOM).extension[0]
    )


def first_ends(builds, radius):
    """Whether the light crane, the crane as it is and the stout one tip first at a radius."""
    return [one.warns for one in overloaded(builds, radius=radius)]


@pytest.mark.slow
def test_07_the_stout_crane_tips_first_at_both_places_and_breaks_only_close_beside_it(old_and_new):
    assert first_ends(old_and_new, BUILT_NEAR)[-1]
    assert first_ends(old_and_new, BREAKS_FAR)[-1]
    # So does every place farther out than the near one; the load 3 m from the axis hangs just
    # outside the jacks, which stand 2.9 m to either side.
    assert all(first_ends(old_and_new, radius)[-1] for radius in (7.0, 9.0, 12.0, 14.0))
    assert not first_ends(old_and_new, 3.0)[-1]


def test_07_the_light_crane_breaks_first_where_the_crane_as_it_is_tips(old_and_new):
    assert first_ends(old_and_new, BUILT_NEAR)[:2] == [False, False]
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


def test_07_far_out_a_float_lifts_below_the_rated_load():
    far = past_rated(BREAKS_FAR)
    lifted = [event for event in far.events if event.kind == "float"]
    assert lifted[0].load < far.rated


def test_07_a_metre_farther_out_the_light_section_breaks_and_the_heavy_one_tips():
    setup, rows = set_up(load_machine("yard60")), demonstration(BOOM).extension
    light, heavy = (overload(setup, extension=rows[k], radius=BREAKS_NEAR + 1.0) for k in (0, 2))
    assert light.failure.load < 0.9 * light.tipping.load
    assert heavy.tipping.load < 0.9 * heavy.failure.load


def test_07_strength_keeps_a_larger_margin_than_stability():
    near, far = past_rated(BREAKS_NEAR), past_rated(BREAKS_FAR)
    assert (near.governing.set_by, far.governing.set_by) == ("strength", "stability")
    assert near.failure.multiple > 1.25 * far.tipping.multiple


def tips_first(chart, row, column_number):
    """Whether the crane tips before anything breaks, in one cell of the lesson's chart."""
    out, radius = few_ways().extension[column_number], float(chart.radii[row])
    return overload(chart.setup, extension=out, radius=radius).warns


@pytest.mark.slow
def test_07_below_the_bold_line_it_nowhere_breaks_first():
    chart = lesson_chart("metric")
    below = np.argwhere(chart.rated & ~chart.structural)
    assert len(below) > 10
    assert all(tips_first(chart, *cell) for cell in below)


@pytest.mark.slow
def test_07_for_several_rows_above_the_bold_line_it_still_tips_first():
    chart, column_number = lesson_chart("metric"), 2
    above = np.flatnonzero(chart.structural[:, column_number])
    tips = [tips_first(chart, row, column_number) for row in above]
    assert not tips[0]
    assert tips == sorted(tips)
    assert sum(tips) >= 3


def test_08_parts_of_line_help_only_while_the_rope_governs():
    """Beyond that each part more takes its own fall off the net load."""
    readings = [net_reading("metric", radius=NET_RADIUS, parts=p) for p in range(1, 12)]
    governed = [reading.rope_governs for reading in readings]
    assert governed == sorted(governed, reverse=True)
    assert 0 < sum(governed) < 11
    free = [reading for reading in readings if not reading.rope_governs]
    machine, fixed = free[0].chart.setup.machine, free[0].chart.setup.machine.hook_block
    falls = [one.gross - one.net - fixed - machine.slings for one in free]
    assert falls == pytest.approx([falls[0] / free[0].parts * one.parts for one in free])
    assert falls == sorted(falls)


def test_08_the_rope_reaches_for_no_twelfth_part_with_this_boom():
    with pytest.raises(ValueError, match="Choose 11 or fewer"):
        net_reading("metric", radius=NET_RADIUS, parts=12)
    length = net_reading("metric", radius=NET_RADIUS, parts=1).column_length
    assert parts_by_hand(load_machine("yard60"), length=length, most=12) == 11


@pytest.mark.parametrize("units", ["metric", "us"])
def test_08_the_charts_reading_is_rounded_and_never_leaves_more_than_the_steps_below_it(units):
    reading = net_reading(units, radius=NET_RADIUS, parts=NET_PARTS)
    *_, told = tell_reading(reading, units=units)
    left = parse(re.search("that leaves (.*) for the load", told)[1].replace(",", ""), "mass")
    by_hand = reading.gross - sum(one.mass for one in reading.deductions)
    assert left <= by_hand + 1e-9
    # Three deductions and what is left, each rounded to ten of the unit.
    assert by_hand - left < parse({"metric": "40 kg", "us": "40 lb"}[units], "mass")


@pytest.mark.parametrize("units", ["metric", "us"])
def test_08_the_pick_is_asked_with_a_load_that_only_what_hangs_besides_makes_too_much(units):
    """Else whoever forgets hook block, slings and falls is right by chance."""
    asked = SHOWN_NET.exercises["may I make this pick"](units)
    cell, load = (
        parse(said.replace(",", ""), "mass")
        for said in re.search(
            "says (.*) gross, and the load weighs (.*?)\\. ", asked.guess.question
        ).groups()
    )
    found = asked.study().study.found
    assert load < cell < found.gross
    assert [truth.answer for truth in asked.guess.truths] == ["no"]


def test_08_twice_the_parts_carry_not_quite_twice_the_load():
    carried = {
        p: net_reading("metric", radius=NET_RADIUS, parts=p).line_limit for p in (1, 2, 4, 8)
    }
    for parts in (1, 2, 4):
        assert 1.8 * carried[parts] < carried[2 * parts] < 2.0 * carried[parts]


@pytest.fixture(scope="module")
def taken():
    """Share that each effect takes, close in and far out."""
    return {effect.name: lost().share[k] for k, effect in enumerate(lost().effects)}


def test_09_close_in_strength_sets_the_figure_and_far_out_stability():
    assert [limit.set_by for limit in lost().governing] == ["strength", "stability"]


def test_09_a_side_pull_beyond_the_allowance_costs_close_in_and_nothing_far_out(taken):
    close_in, far_out = taken["side pull"]
    assert close_in > 0.05
    assert abs(far_out) < 0.005
    light = lost().places.extension[0]
    at = Places(extension=light[None], radius=np.array([NEAR_LOST]))
    within = losses(lost().setup, places=at, amounts=Amounts(side_pull=0.02))
    share = {effect.name: within.share[k, 0] for k, effect in enumerate(within.effects)}
    assert abs(share["side pull"]) < 1e-6


def test_09_a_counterweight_short_costs_much_far_out_and_nothing_close_in(taken):
    close_in, far_out = taken["counterweight"]
    assert abs(close_in) < 1e-6
    assert far_out > 0.1


def test_09_the_high_head_moves_farther_and_the_lean_still_costs_more_far_out(taken):
    light = lost().places.extension[0]
    high, low = (
        lift(lost().setup, extension=light, load=5000.0, radius=r).head_height for r in (6.0, 16.0)
    )
    assert high > 1.5 * low
    assert taken["lean"][1] > 1.5 * taken["lean"][0]


@pytest.mark.parametrize("units", ["metric", "us"])
def test_09_the_summary_agrees_with_the_table_as_it_is_printed(units):
    """Whole percents, as an apprentice reads them."""
    shown = {
        row[0]: [int(field.removesuffix(" %")) for field in row[1:]]
        for row in SHOWN_LOST.views["in numbers"](units).rows
    }

    def read(words):
        (found,) = [taken for name, taken in shown.items() if name.startswith(words)]
        return found

    (near, far), (near_across, far_across) = read("downhill ahead"), read("downhill across")
    assert near < far
    assert near_across > near
    assert far_across == 0
    assert read("side pull")[0] == max(
        taken[0] for name, taken in shown.items() if " once" not in name
    )
    assert read("side pull")[1] == read("picking up fast")[1] == 0
    assert read("counterweight short")[0] == 0 < 10 < read("counterweight short")[1]
    together = ("downhill ahead", "side pull", "wind from behind", "picking up fast")
    for place in (0, 1):
        assert read("downhill, side pull")[place] > max(read(words)[place] for words in together)


@pytest.mark.slow
def test_09_twice_the_lean_takes_nearly_twice_far_out_and_nearly_three_times_close_in():
    one, two = (
        losses(lost().setup, places=lost().places, amounts=Amounts(lean=np.radians(degrees))).share[
            0
        ]
        for degrees in (1.0, 2.0)
    )
    close_in, far_out = two / one
    assert 2.7 < close_in < 3.0
    assert 1.8 < far_out < 2.0
    assert lost().setup.rule.allowances.lean.value == pytest.approx(np.radians(0.5))


def test_09_four_at_once_cost_more_than_any_one_of_them(taken):
    for name in ("lean", "side pull", "wind", "hoisting"):
        assert (taken["together"] > taken[name]).all()


def test_10_the_light_tube_out_takes_most_and_the_feet_shift_most():
    loads = {way: tips_at(bench(), way) for way in WAYS}
    assert loads["A"] > loads["B"] > loads["C"]
    parts = shifts(bench(), "B")
    assert max(parts, key=lambda words: abs(parts[words])) == "feet 2 mm wider"


def test_10_a_class_can_tell_the_ways_apart():
    # A to C are apart by more than five of what each prediction is unsure of.
    between = tips_at(bench(), "A") - tips_at(bench(), "C")
    assert between > 5.0 * combined(shifts(bench(), "B"))


def test_03_the_question_and_the_sheet_name_the_pins_that_the_boom_locks_at():
    outs = {float(out) for row in half_compared()[1].configurations.extension for out in row}
    asked = lesson_named("03").guess("metric").question
    named = {float(found) / 100.0 for found in re.findall(r"([0-9.]+) %", asked)}
    assert named == outs - {0.0}
    assert outs <= set(BOOM.lock_positions)
