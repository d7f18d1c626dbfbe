"""Questions on a chart book: each has one right answer, by the rating, and its number makes it."""

from functools import lru_cache

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine
from boomsim.rating.capacity import rate
from boomsim.rating.charts.chart_book import every_setup, make_book
from boomsim.rating.charts.chart_questions import APART, MOST_WAYS, questions
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of

COUNT = 40


@lru_cache
def book(name):
    machine = load_machine(name)
    weights = [machine.counterweights[0].name]
    return make_book(
        every_setup(
            machine,
            rules=["share"],
            supports=[machine.supports[0].name],
            counterweights=weights,
        )
    )


@lru_cache
def asked(name):
    return tuple(questions(book(name), count=COUNT))


@pytest.mark.slow
@pytest.mark.parametrize("name", ["yard60", "truck18", "bench"])
def test_the_right_way_lifts_most_by_a_rating_of_its_own_and_by_3_percent_or_more(name):
    made = book(name)
    assert len(asked(name)) == COUNT
    for one in asked(name):
        rating = rate(
            made.chapters[one.chapter].setup,
            extension=made.configurations.extension[list(one.ways)],
            radius=made.radii[[one.row]],
        )
        capacity = rating.capacity[:, 0]
        assert int(np.argmax(capacity)) == one.right
        steps = np.floor(capacity / made.step * (1.0 + 1e-12))
        first, second = sorted(steps, reverse=True)[:2]
        assert first >= APART * second


@pytest.mark.parametrize(
    "name", [pytest.param("yard60", marks=pytest.mark.slow), "truck18", "bench"]
)
def test_two_or_three_different_ways_of_one_length_are_offered(name):
    made = book(name)
    for one in asked(name):
        assert 2 <= len(set(one.ways)) == len(one.ways) <= MOST_WAYS
        # Ways of one column are of one length to 0.10 m, each to its neighbour.
        assert np.ptp(made.configurations.length[list(one.ways)]) < 0.2


@pytest.mark.parametrize("name", ["yard60", "truck18", "bench"])
def test_no_place_among_the_ways_and_no_set_up_is_always_right(name):
    places = [one.right for one in asked(name)]
    assert {0, 1} <= set(places)
    assert max(map(places.count, set(places))) < 0.8 * COUNT
    assert {one.chapter for one in asked(name)} == set(range(len(book(name).chapters)))


def test_both_what_stability_sets_and_what_it_does_not_comes_up():
    made = book("yard60")
    sets = set()
    for one in asked("yard60"):
        chart = made.chapters[one.chapter].stated
        row = chart.radii.tolist().index(made.radii[one.row])
        sets.add(chart.limit(row, one.ways[one.right]).set_by)
    assert {"stability", "strength"} <= sets


def test_a_number_makes_the_question_however_many_are_asked():
    few = tuple(questions(book("truck18"), count=5))
    assert few == asked("truck18")[:5]
    assert [one.number for one in few] == [1, 2, 3, 4, 5]
    assert len({(one.chapter, one.row, one.ways) for one in asked("truck18")}) > COUNT // 2


def test_a_book_of_a_single_way_asks_nothing():
    machine = load_machine("truck18")
    one = configurations_of(machine.boom, extension=np.zeros((1, 3)))
    assert not list(questions(make_book([set_up(machine)], configurations=one), count=3))


def test_ways_of_different_lengths_are_compared_where_no_length_has_two():
    machine = load_machine("truck18")
    some = configurations_of(
        machine.boom, extension=np.array([[0.0, 0.0, 0.0], [0.5, 0.5, 0.5], [1.0, 1.0, 1.0]])
    )
    made = tuple(questions(make_book([set_up(machine)], configurations=some), count=3))
    assert len(made) == 3
    assert all(len(set(one.ways)) == len(one.ways) > 1 for one in made)
