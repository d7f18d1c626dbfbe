"""Readings, their mean and their uncertainty; checked by hand and by the standard library."""

import statistics

import pytest

from boomsim.lessons.measured_mean import apart, combined, mean_of, verdict
from boomsim.lessons.tabletop_prediction import (
    WAYS,
    bench,
    rehearsal,
    shifts,
    small_mass,
    tips_at,
    variations,
)


def test_one_two_three_have_the_mean_two_and_the_spread_one():
    found = mean_of(["1 kg", "2 kg", "3 kg"])
    assert (found.mean, found.spread, found.count) == (2.0, 1.0, 3)
    # By hand: 1/sqrt(3).
    assert found.uncertainty == pytest.approx(0.57735, abs=1e-5)


def test_mean_and_spread_agree_with_the_standard_library():
    texts = ["1.46 kg", "3.28 lb", "1490 g", "1.5 kg"]
    values = [1.46, 3.28 * 0.45359237, 1.49, 1.5]
    found = mean_of(texts)
    assert found.mean == pytest.approx(statistics.mean(values), rel=1e-12)
    assert found.spread == pytest.approx(statistics.stdev(values), rel=1e-9)


@pytest.mark.parametrize(
    ("texts", "words"),
    [
        (["1 kg"], "at least two"),
        ([], "at least two"),
        (["1 kg", "2"], "reading 2.*no unit"),
        (["1 m", "2 kg"], "reading 1.*not a mass"),
    ],
)
def test_readings_that_say_nothing_are_refused(texts, words):
    with pytest.raises(ValueError, match=words):
        mean_of(texts)


def test_uncertainties_add_as_squares():
    assert combined({"a": 3.0, "b": -4.0}) == 5.0
    assert apart(10.0, 20.0, uncertainties=(3.0, 4.0)) == 2.0


def test_the_verdict_changes_at_two_and_at_three():
    assert [verdict(x) for x in (0.0, 1.9, 2.1, 3.1)] == [
        "agree", "agree", "may agree", "do not agree",
    ]  # fmt: skip


def test_rehearsed_readings_are_steady_and_near_the_model():
    assert rehearsal("A") == rehearsal("A")
    assert rehearsal("A") != rehearsal("A", seed=2)
    # Drawn 10 g off with a spread of 20 g: the mean of six is within 50 g of the model.
    assert mean_of(rehearsal("A")).mean == pytest.approx(tips_at(bench(), "A"), abs=0.05)


def test_each_variation_changes_one_input_in_the_way_it_says():
    usual = bench()
    made = variations(usual)
    weight = made["counterweight 10 g heavier"].counterweights[0]
    assert weight.mass - usual.counterweights[0].mass == pytest.approx(0.010)
    wide = made["feet 2 mm wider"].supports[0].points
    before = usual.supports[0].points
    moved = [abs(a[1]) - abs(b[1]) for a, b in zip(wide, before, strict=True)]
    assert moved == pytest.approx([0.002] * 4)


@pytest.mark.parametrize("way", WAYS)
def test_shifts_have_the_sign_that_statics_gives_them(way):
    found = shifts(bench(), way)
    signs = {words: shift > 0 for words, shift in found.items()}
    assert signs == {
        "counterweight 10 g heavier": True,
        "counterweight 2 mm nearer": False,
        "feet 2 mm wider": True,
        "base plate 20 g heavier": True,
        "each tube 5 g heavier": False,
        "radius 2 mm farther": False,
    }


def test_a_heavier_counterweight_shifts_by_its_own_lever():
    # Moment about the feet's line over the load's lever: 0.010 (0.15 + 0.17)/(0.80 - 0.15) kg.
    assert shifts(bench(), "B")["counterweight 10 g heavier"] == pytest.approx(0.004923, abs=1e-6)


def test_small_masses_are_written_small():
    assert (small_mass(0.0041), small_mass(-0.0061)) == ("4.1 g", "-6.1 g")
    assert small_mass(0.028349523125, "us") == "1 oz"


def test_a_way_that_is_none_is_refused():
    with pytest.raises(ValueError, match="There is no way 'D'"):
        tips_at(bench(), "D")
