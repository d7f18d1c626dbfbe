"""Where there is no rating: what is refused, and whether the figures it names are true."""

import re
from dataclasses import replace

import numpy as np
import pytest
from making import invented_crane, set_up_by_hand

from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.charts.rated_cells import chart_cells
from boomsim.rating.comparison.comparison_study import best_of, compare, deflections, demonstration
from boomsim.rating.lift_response import respond
from boomsim.rating.load_search import no_margin
from boomsim.rating.overload.overload_study import overload

OUT = np.array([1.0, 1.0, 1.0])


@pytest.mark.parametrize("radius", [0.0, -1.0, np.nan])
def test_a_radius_is_above_nought(radius: float) -> None:
    with pytest.raises(ValueError, match=r"must be above 0 m"):
        rate(set_up_by_hand(invented_crane()), extension=OUT, radius=np.array([8.0, radius]))


def figures(words: str) -> list[float]:
    return [float(figure) for figure in re.findall(r"(\d+(?:\.\d+)?) m", words)]


@pytest.mark.parametrize("name", ["truck18", "yard60"])
def test_a_chart_out_of_reach_names_the_radii_between_which_there_are_cells(name: str) -> None:
    setup = set_up_by_hand(load_machine(name))
    with pytest.raises(ValueError, match="Give radii from") as refusal:
        chart_cells(setup, radii=np.array([400.0]))
    _, near, far = figures(str(refusal.value))
    # A third of a metre inside there are cells; a metre outside there is none.
    assert far > near + 10.0
    for inside in (max(near, 0.0) + 0.3, far - 0.3):
        assert np.any(chart_cells(setup, radii=np.array([inside])).capacity > 0.0)
    for outside in {near - 1.0, far + 1.0}:
        if outside > 0.0:
            with pytest.raises(ValueError, match="Give radii from"):
                chart_cells(setup, radii=np.array([outside]))


def weak() -> Machine:
    """A crane whose sections yield under their own weight when all are out level."""
    crane = invented_crane()
    sections = tuple(
        replace(s, material=replace(s.material, yield_stress=20e6)) for s in crane.boom.sections
    )
    return replace(crane, boom=replace(crane.boom, sections=sections))


def test_a_boom_that_its_own_weight_uses_up_lifts_nothing_and_says_which_limit() -> None:
    setup = set_up_by_hand(weak())
    rating = rate(setup, extension=OUT, radius=np.array([24.0]))
    assert rating.capacity[0, 0] == 0.0
    with pytest.raises(ValueError, match="is used up without a load") as refusal:
        overload(setup, extension=OUT, radius=24.0)
    assert rating.limits[rating.governing[0, 0]].words in str(refusal.value)


def test_a_boom_that_does_not_reach_says_how_far_it_does() -> None:
    crane = invented_crane()
    with pytest.raises(ValueError, match="There is no rated load") as refusal:
        overload(set_up_by_hand(crane), extension=OUT, radius=60.0)
    asked, length, near, far = figures(str(refusal.value))
    # Heel pin to head sheave, laid down as far and stood up as steep as the machine allows.
    least, greatest = crane.boom.least_angle, crane.boom.greatest_angle
    assert (asked, length) == (60.0, pytest.approx(10.0 + 3 * (7.5 + 0.05) + 0.3, abs=0.006))
    assert near == pytest.approx(max(crane.heel_out + length * np.cos(greatest), 0.0), abs=0.06)
    assert far == pytest.approx(crane.heel_out + length * np.cos(least), abs=0.06)


@pytest.mark.parametrize(("rule", "margin"), [("share", 23 / 12), ("limit-states", 1.34 * 1.1)])
def test_a_rule_keeps_the_boom_its_factor_away_from_its_critical_load(
    rule: str, margin: float
) -> None:
    # 23/12 on the elastic critical load: allowable stress design, AISC 1989, from memory. Limit
    # states, EN 13001: 1.34 on the load and 1.1 on the resistance, from memory.
    setup = set_up_by_hand(invented_crane(), rule=rule)
    boom = condense(setup.machine, extension=OUT[None])
    # A load beside which the boom's own weight, which has a factor of its own, counts little.
    given = {"boom": boom, "load": np.array([[20e3]]), "angle": np.array([[1.3]])}
    row = [limit.name for limit in respond(setup, **given).limits].index("boom buckling")
    kept, bare = (respond(s, **given).utilisation[row, 0, 0] for s in (setup, no_margin(setup)))
    assert bare > 0.0
    assert kept / bare == pytest.approx(margin, rel=3e-2)


@pytest.mark.parametrize(("radius", "shared"), [(9.0, True), (60.0, False)])
def test_deflections_are_compared_where_all_reach_be_it_one_radius(
    radius: float, shared: bool
) -> None:
    machine = load_machine("yard60")
    ways = demonstration(machine.boom)
    found = compare(set_up_by_hand(machine), configurations=ways, radii=np.array([radius]))
    load, where, down = deflections(found)
    assert (where == radius) is shared
    if not shared:
        assert (load, where, down) == (None, None, None)
        return
    assert load == pytest.approx(found.rating.capacity.min() / 2)
    assert down is not None
    assert np.all(down > 0.0)


def test_the_best_is_the_one_that_carries_most_and_none_where_none_does() -> None:
    capacity = np.array([[3.0, 1.0, 2.0, 0.0, np.nan], [1.0, 3.0, np.nan, 0.0, np.nan]])
    assert best_of(capacity).tolist() == [0, 1, 0, -1, -1]
    # Equal but for rounding: the first, so that a chart does not flicker.
    assert best_of(np.array([[1000.0], [1000.0 + 1e-9]])).tolist() == [0]


@pytest.mark.parametrize("moving", [3, 4])
def test_a_demonstration_puts_out_the_lightest_the_two_lightest_or_the_heaviest(
    moving: int,
) -> None:
    boom = load_machine("yard60").boom
    few = replace(boom, sections=boom.sections[: moving + 1])
    half, far = 0.45, 0.9
    inside = [0.0] * (moving - 2)
    assert demonstration(few).extension == pytest.approx(
        np.array([[*inside, 0.0, far], [*inside, half, half], [far, 0.0, *inside]])
    )
