"""A comparison works out each thing once: what it says, hands out and draws shares one boom."""

import pytest

import boomsim as bs
from boomsim.mechanics.boom import boom_state
from boomsim.mechanics.boom import condense as condensing


@pytest.fixture()
def counted(monkeypatch):
    """Configurations condensed, and calls of the solver, by whoever asks for them."""
    count = {"condensed": 0, "solved": 0}
    stations_of, solve = condensing.stations_of, boom_state.solve

    def condensed(machine, *, cuts):
        count["condensed"] += len(cuts.length)
        return stations_of(machine, cuts=cuts)

    def solved(lifts, **start):
        count["solved"] += 1
        return solve(lifts, **start)

    monkeypatch.setattr(condensing, "stations_of", condensed)
    monkeypatch.setattr(boom_state, "solve", solved)
    return count


def test_a_comparison_condenses_each_configuration_once(counted):
    found = bs.compare(radii="6 m, 8 m, 12 m, 16 m")
    found.text(), found.to_dict(), found.plot()
    assert counted["condensed"] == len(found.study.configurations.extension) == 3


def test_what_is_said_is_not_solved_again_to_be_handed_out(counted):
    found = bs.compare(radii="6 m, 8 m, 12 m, 16 m")
    found.text()
    said = counted["solved"]
    found.to_dict()
    assert counted["solved"] == said


def test_a_radius_of_the_table_is_explained_without_rating_it_again(counted):
    """Of each way that is accounted for its state is solved, at ease and with the allowances."""
    found = bs.compare(radii="6 m, 8 m, 12 m, 16 m")
    rated = counted["solved"]
    found.explain("12 m")
    assert counted["solved"] - rated <= 2 * 3


def test_a_radius_beside_the_table_is_explained_as_one_of_the_table_is():
    beside, among = bs.compare(radii="6 m, 12 m"), bs.compare(radii="6 m, 11 m, 12 m")
    assert beside.explain("11 m") == among.explain("11 m")
