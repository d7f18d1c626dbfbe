"""The steps from one capacity to the other add up, and are drawn as long as they are."""

import itertools

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.difference.difference_figure import draw_difference, figure_of_difference
from boomsim.figures.difference.difference_steps import steps_of
from boomsim.units import show


def test_the_steps_lead_from_the_second_capacity_to_the_first(why, setup):
    *steps, whole = steps_of(why, setup=setup)
    assert steps[0].value == why.second.capacity
    for before, after in itertools.pairwise(steps):
        assert after.start == before.end
    # A sum of a dozen numbers of up to 1e5 kg: rounding only.
    assert steps[-1].end == pytest.approx(why.first.capacity, abs=1e-6)
    assert (whole.start, whole.end) == (0.0, why.first.capacity)
    between = sum(step.value for step in steps[1:])
    assert between == pytest.approx(why.total, abs=1e-6)


def test_each_shifted_section_is_named_with_its_mass(why, setup):
    if not why.by_part:
        pytest.skip("no load tips the crane here")
    words = [step.words for step in steps_of(why, setup=setup) if step.kind == "weight"]
    for i in (1, 2, 3):
        # With what of the telescope cylinder goes out with it.
        mass = show(setup.machine.boom.section_masses[i], "mass")
        assert any(w.startswith(f"section {i}, {mass}") for w in words)


def test_the_light_section_out_has_the_heavy_ones_nearer(why, setup):
    if not why.by_part:
        pytest.skip("no load tips the crane here")
    words = {s.words.split(",")[0]: s for s in steps_of(why, setup=setup)}
    if (why.first.line, why.first.slew) != (why.second.line, why.second.slew):
        pytest.skip("they would turn over different lines")
    for i in (1, 2, 3):
        assert words[f"section {i}"].words.endswith("nearer")
        assert words[f"section {i}"].value > 0.0


def test_bars_are_as_long_as_the_steps(why, setup):
    steps = steps_of(why, setup=setup)
    artists = draw_difference(Figure().add_subplot(), steps)
    for step, bar in zip(steps, artists.bars, strict=True):
        assert 1000.0 * bar.get_width() == pytest.approx(abs(step.value), abs=1e-6)
        assert 1000.0 * bar.get_x() == pytest.approx(min(step.start, step.end), abs=1e-6)


def test_gains_and_costs_differ_by_sign_and_strength_by_hatch(why, setup):
    steps = steps_of(why, setup=setup)
    artists = draw_difference(Figure().add_subplot(), steps)
    for step, bar, number in zip(steps, artists.bars, artists.numbers, strict=True):
        assert bool(bar.get_hatch()) == (step.kind == "strength")
        sign = "" if step.kind == "rated" else "+" if step.value >= 0 else "\u2212"
        assert number.get_text().startswith(sign)


def test_an_axis_that_does_not_start_at_zero_says_so(why, setup):
    artists = draw_difference(Figure().add_subplot(), steps_of(why, setup=setup))
    start = artists.ax.get_xlim()[0]
    assert ("axis starts at" in artists.ax.get_xlabel()) == (start > 0.0)


def test_the_title_says_how_much_and_where(why, setup):
    ways = (np.array([0, 0, 0, 0.9]), np.array([0.9, 0, 0, 0]))
    title = figure_of_difference(why, setup=setup, extensions=ways).texts[0].get_text()
    assert show(abs(why.total), "mass") in title
    assert ("more" if why.total >= 0 else "less") in title
    assert show(why.radius, "length") in title
