"""The usual chart: one way to extend in each column, by a rule, and a bold line of one stair."""

import json
from functools import lru_cache

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.rating.charts.bold_line import bold_edges, paths
from boomsim.rating.charts.chart_configurations import one_way_for_each_length, one_way_words
from boomsim.rating.charts.load_chart import stated_chart
from boomsim.rating.setup import SECTORS, set_up
from boomsim.rating.strategies import EQUAL_LENGTH, range_of_length

MACHINES = ("yard60", "truck18", "bench")

SET_UPS = [
    (name, sector, weight.name)
    for name in ("yard60", "truck18")
    for sector in SECTORS
    for weight in load_machine(name).counterweights
]
"""Of the two cranes on their outriggers, all out; the tabletop tips in most of its cells."""


@lru_cache
def chart(name, sector="around", counterweight=None):
    machine = load_machine(name)
    setup = set_up(machine, slew=sector, rigging=Rigging(counterweight=counterweight))
    return stated_chart(setup, configurations=one_way_for_each_length(machine.boom))


@pytest.mark.parametrize(("name", "sector", "counterweight"), SET_UPS)
def test_in_every_column_what_stability_sets_lies_below_what_it_does_not(
    name, sector, counterweight
):
    of = chart(name, sector, counterweight)
    for c in range(len(of.length)):
        stability = ~of.structural[of.rated[:, c], c]
        # Once true it stays true on the way down; and both kinds are there.
        assert not stability[0] and stability[-1]
        assert np.all(np.diff(stability.astype(int)) >= 0)


@pytest.mark.parametrize(("name", "sector", "counterweight"), SET_UPS)
def test_the_bold_line_is_one_line(name, sector, counterweight):
    of = chart(name, sector, counterweight)
    (line,) = paths(bold_edges(of))
    # It comes in at the left and leaves at the right: no island anywhere.
    assert {line[0][1], line[-1][1]} == {0, len(of.length)}


def lowest_rows(of):
    """Last row of each column in which stability does not set the figure."""
    return np.array([np.flatnonzero(of.structural[:, c])[-1] for c in range(len(of.length))])


@pytest.mark.parametrize("name", ["yard60", "truck18"])
@pytest.mark.parametrize("sector", SECTORS)
def test_as_the_crane_usually_stands_every_step_of_the_line_goes_down(name, sector):
    assert np.all(np.diff(lowest_rows(chart(name, sector))) >= 0)


@pytest.mark.parametrize(("name", "sector", "counterweight"), SET_UPS)
def test_with_any_counterweight_no_step_goes_up_by_more_than_one_row(name, sector, counterweight):
    # One row is what a chart of whole metres can err by: two neighbours that differ by a
    # millimetre may stand a row apart.
    assert np.all(np.diff(lowest_rows(chart(name, sector, counterweight))) >= -1)


@pytest.mark.parametrize("name", MACHINES)
def test_ways_lead_from_all_in_to_all_out_and_each_is_longer_than_the_one_before(name):
    boom = load_machine(name).boom
    ways = one_way_for_each_length(boom)
    assert ways.extension[0].tolist() == [0.0] * (len(boom.sections) - 1)
    assert ways.extension[-1].tolist() == [1.0] * (len(boom.sections) - 1)
    assert ways.length[[0, -1]] == pytest.approx(range_of_length(boom))
    assert np.all(np.diff(ways.length) > EQUAL_LENGTH)
    # No section comes back in on the way out.
    assert np.all(np.diff(ways.extension, axis=0) >= 0.0)


def test_a_boom_that_locks_moves_one_section_at_a_time_and_never_two_positions_apart():
    boom = load_machine("yard60").boom
    extension = one_way_for_each_length(boom).extension
    place = np.array([[boom.lock_positions.index(f) for f in row] for row in extension])
    assert np.all(np.abs(np.diff(place, axis=0)).sum(axis=1) == 1)
    assert np.all(np.ptp(place, axis=1) <= 1)
    # The largest leads.
    assert np.all(np.diff(place, axis=1) <= 0)
    assert "the largest first" in one_way_words(boom)


@pytest.mark.parametrize("system", ["synchronised", "sequenced"])
def test_coupled_sections_go_the_way_of_their_system(system):
    boom = load_machine("truck18").boom
    ways = one_way_for_each_length(boom, system=system)
    assert set(ways.system) == {system}
    stroke = [s.stroke for s in boom.sections[1:]]
    for row, length in zip(ways.extension, ways.length, strict=True):
        out = float(length - ways.length[0])
        assert row.tolist() == pytest.approx(BOOM_SYSTEMS[system].path(stroke, out))
    assert BOOM_SYSTEMS[system].words in one_way_words(boom, system=system)


def columns(capsys, *options):
    assert main(["chart", "yard60", "--json", *options]) == 0
    return json.loads(capsys.readouterr().out)["columns"]


@pytest.mark.slow
def test_the_command_charts_these_ways_unless_it_is_asked_for_others(capsys):
    usual, best = columns(capsys), columns(capsys, "--best")
    wanted = one_way_for_each_length(load_machine("yard60").boom).extension.tolist()
    assert [column["extensions"] for column in usual] == [[row] for row in wanted]
    assert sum(len(column["extensions"]) for column in best) == 256


@pytest.mark.slow
def test_the_command_says_by_which_rule_its_columns_were_chosen(capsys):
    boom = load_machine("yard60").boom
    assert main(["chart", "yard60"]) == 0
    assert one_way_words(boom) in " ".join(capsys.readouterr().out.split())
    assert main(["chart", "yard60", "--best"]) == 0
    assert one_way_words(boom) not in " ".join(capsys.readouterr().out.split())
