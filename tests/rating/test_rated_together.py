"""Set-ups whose booms bend alike are rated together: each as if it were rated alone."""

from dataclasses import replace

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine
from boomsim.rating.capacity import CLOSE, rate, rate_each
from boomsim.rating.charts.book_cells import cells_of_book
from boomsim.rating.charts.chart_book import every_setup
from boomsim.rating.charts.chart_configurations import every_configuration
from boomsim.rating.charts.rated_cells import rate_cells
from boomsim.rating.lift_response import bends_alike, judge_again, respond
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import Configurations

MACHINES = ("yard60", "truck18")


def few(machine, *, every: int) -> Configurations:
    ways = every_configuration(machine.boom)
    rows = np.arange(0, len(ways.length), every)
    systems = tuple(ways.system[k] for k in rows)
    return replace(ways, extension=ways.extension[rows], length=ways.length[rows], system=systems)


@pytest.mark.parametrize("name", [pytest.param("yard60", marks=pytest.mark.slow), "truck18"])
def test_a_set_up_is_rated_among_others_as_it_is_alone(name):
    machine = load_machine(name)
    setups = [s for s in every_setup(machine) if s.rule.name != "limit-states"]
    extension = few(machine, every=12).extension
    # From below the shortest radius to beyond the longest, edges of the reach among them.
    radii = np.arange(1.0, 44.0, 2.0)
    together = rate_each(setups, extension=extension, radius=radii)
    for setup, among in zip(setups, together, strict=True):
        alone = rate(setup, extension=extension, radius=radii)
        said = repr(setup)
        assert np.array_equal(among.governing, alone.governing), said
        assert np.array_equal(np.isnan(among.capacity), np.isnan(alone.capacity)), said
        assert np.array_equal(among.valid, alone.valid), said
        # Both searches end where the largest utilisation is one, each within CLOSE of it.
        np.testing.assert_allclose(
            np.nanmax(among.utilisation, axis=0, initial=0.0, where=among.capacity > 0.0),
            np.nanmax(alone.utilisation, axis=0, initial=0.0, where=alone.capacity > 0.0),
            atol=2 * CLOSE,
            err_msg=said,
        )
        rated = alone.capacity > 0.0
        np.testing.assert_allclose(
            among.utilisation[:, rated], alone.utilisation[:, rated], atol=10 * CLOSE, err_msg=said
        )


def test_a_bent_boom_is_judged_again_as_if_it_were_bent_anew():
    machine = load_machine("yard60")
    one, other = set_up(machine), set_up(machine, slew="rear", rule="test-load")
    other = replace(other, counterweight=machine.counterweights[-1], support=machine.supports[-1])
    ways = few(machine, every=40)
    boom = rate(one, extension=ways.extension, radius=[8.0]).boom
    load, radius = np.full((len(ways.length), 1), 900.0), np.array([8.0])
    again = judge_again(respond(one, boom=boom, load=load, radius=radius), setup=other)
    anew = respond(other, boom=boom, load=load, radius=radius)
    np.testing.assert_array_equal(again.utilisation, anew.utilisation)
    np.testing.assert_array_equal(again.balance.least, anew.balance.least)
    assert again.limits == anew.limits
    assert again.setup is other


def test_a_boom_that_would_bend_in_another_way_is_not_judged_again():
    machine = load_machine("yard60")
    one, other = set_up(machine), set_up(machine, rule="limit-states")
    assert bends_alike(one) != bends_alike(other)
    ways = few(machine, every=100)
    boom = rate(one, extension=ways.extension, radius=[8.0]).boom
    at = respond(one, boom=boom, load=np.full((len(ways.length), 1), 900.0), radius=np.array([8.0]))
    with pytest.raises(ValueError, match=r"rule limit-states.*other loads on the boom"):
        judge_again(at, setup=other)


@pytest.mark.slow
def test_processes_that_share_a_book_find_what_one_finds():
    machine = load_machine("truck18")
    setups, ways, radii = every_setup(machine), few(machine, every=1), np.arange(2.0, 20.0, 3.0)
    told: list[tuple[int, int]] = []
    alone = cells_of_book(setups, configurations=ways, radii=radii)
    shared = cells_of_book(
        setups,
        configurations=ways,
        radii=radii,
        processes=2,
        progress=lambda done, of: told.append((done, of)),
    )
    for one, other in zip(alone, shared, strict=True):
        np.testing.assert_array_equal(one.capacity, other.capacity)
        np.testing.assert_array_equal(one.governing, other.governing)
        np.testing.assert_array_equal(one.empty_hook.radius, other.empty_hook.radius)
        assert one.setup is other.setup
    assert told == [(done, len(told) - 1) for done in range(len(told))]
    # One set-up of the book, rated as the chart of that set-up is.
    chart = rate_cells(setups[3], configurations=ways, radii=radii)
    np.testing.assert_array_equal(chart.governing, shared[3].governing)
    np.testing.assert_allclose(chart.capacity, shared[3].capacity, rtol=1e-4)
