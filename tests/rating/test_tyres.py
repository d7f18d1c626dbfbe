"""On tyres: what a tyre position may carry sets figures, and the boom has a longest length."""

from dataclasses import replace
from functools import lru_cache
from io import StringIO

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.gravity import GRAVITY
from boomsim.lab.scene.scene import Scene
from boomsim.lab.solve.solved_scene import answer
from boomsim.lab.views.scene_sentences import headline
from boomsim.machine.machine_files import load_machine, read_machine
from boomsim.machine.machine_text import machine_to_toml
from boomsim.machine.model import Rigging
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.around.float_loads import slews_of
from boomsim.rating.around.slew_study import around
from boomsim.rating.capacity import rate
from boomsim.rating.charts.chart_book import make_book
from boomsim.rating.charts.chart_tables import write_csv
from boomsim.rating.charts.load_chart import best_chart, stated_chart
from boomsim.rating.charts.reading_sentences import blank_words
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.tyres import TYRES
from boomsim.rating.setup import EVERY_WAY, Setup, set_up
from boomsim.rating.setup_variants import with_sector
from boomsim.rating.strategies import configurations_of

YARD = load_machine("yard60")
WAY, LONG = (0.0, 0.0, 0.45, 0.45), (0.45, 0.45, 0.45, 0.45)
RADII = np.array([5.0, 8.0, 12.0])
STEP = 1.0 - np.cos(np.radians(2.5))
"""Between two slew angles tried, 5 degrees apart, a tyre carries at most this share more [1]."""


@lru_cache
def on_tyres(slew: float | str = "around") -> Setup:
    return set_up(YARD, rigging=Rigging(support="tyres"), slew=slew)


def by_hand(at: Response, slew: float) -> np.ndarray:
    """Loads of equal springs under a rigid carrier, as of the bolts of a plate [N].

    The springs stand alike left and right, so W/n + Mx (x - xm)/sum (x - xm)2 + My y/sum y2.
    """
    placed, load = at.placed, float(at.state.load[0, 0])
    turning, cos, sin = placed.turning, np.cos(slew), np.sin(slew)
    mass = np.append(placed.mass, load)
    out = np.append(placed.out[:, 0, 0], placed.head_out[0, 0])
    x = np.concatenate([out[:turning] * cos, placed.x, out[-1:] * cos])
    y = np.concatenate([out[:turning] * sin, placed.y, out[-1:] * sin])
    weight, points = GRAVITY * mass.sum(), np.array(YARD.supports[2].points)
    from_middle = points - points.mean(axis=0)
    moment = GRAVITY * np.array([mass @ x, mass @ y]) - weight * points.mean(axis=0)
    share = from_middle * moment / np.sum(from_middle**2, axis=0)
    return np.asarray(weight / len(points) + share.sum(axis=1))


def test_at_the_rated_load_the_fullest_tyre_carries_what_is_permitted() -> None:
    setup, boom = on_tyres(), condense(YARD, extension=[WAY])
    rating = rate(setup, extension=WAY, radius=RADII)
    permitted = YARD.supports[2].strength
    assert permitted is not None
    for radius, load in zip(RADII, rating.capacity[0], strict=True):
        at = respond(setup, boom=boom, load=np.array([[load]]), radius=np.array([[radius]]))
        every = np.array([by_hand(at, slew) for slew in np.radians(np.arange(360.0))])
        # None lifts at these loads: the formula holds as it stands.
        assert every.min() > 0.0
        assert permitted * (1 - 1e-6) <= every.max() <= permitted * (1 + STEP)


def test_what_the_tyres_permit_is_a_makers_value_and_says_so() -> None:
    rating = rate(on_tyres(), extension=WAY, radius=RADII)
    assert {rating.limits[g].words for g in rating.governing[0]} == {"the tyres"}
    assert {rating.limits[g].set_by for g in rating.governing[0]} == {"permissible value"}


def test_stronger_tyres_lift_more_until_something_else_sets_the_figure() -> None:
    lifted = []
    for strength in (90e3, 108e3, 150e3, 1e9, None):
        tyres = replace(YARD.supports[2], strength=strength)
        setup = set_up(replace(YARD, supports=(tyres,)), slew=0.0)
        rating = rate(setup, extension=WAY, radius=[6.0])
        lifted.append(float(rating.capacity[0, 0]))
        assert (rating.limit(0, 0).kind is TYRES) == (strength in (90e3, 108e3, 150e3))
    assert lifted[:4] == sorted(lifted[:4]) and lifted[2] < lifted[3]
    assert lifted[3] == pytest.approx(lifted[4], rel=2e-6)


def test_on_outriggers_the_tyres_set_nothing_and_are_not_told() -> None:
    found = lift(set_up(YARD), extension=WAY, load=5e3, radius=10.0)
    assert "tyres" not in {one.limit.name for one in found.limits}
    found = lift(on_tyres(), extension=WAY, load=5e3, radius=8.0)
    assert "tyres" in {one.limit.name for one in found.limits}


def test_a_lift_tells_the_supports_where_a_tyre_carries_most() -> None:
    found = lift(on_tyres(), extension=WAY, load=5e3, radius=8.0)
    most = max(support.force for support in found.supports)
    utilisation = next(one.utilisation for one in found.limits if one.limit.kind is TYRES)
    assert most / YARD.supports[2].strength == pytest.approx(utilisation, rel=1e-9)
    assert by_hand(found.response, found.supports_slew).max() == pytest.approx(most, rel=1e-9)


@pytest.mark.parametrize("slew", [0.0, 33.0, 90.0, 137.0, -90.0])
def test_a_slew_angle_on_tyres_rates_as_if_it_were_asked_for_alone(slew: float) -> None:
    turn = np.radians(slew)
    found = around(on_tyres(), extension=WAY, radius=RADII, slew=np.array([turn]))
    alone = rate(with_sector(on_tyres(), slew=float(turn)), extension=WAY, radius=RADII)
    # Both are good to some 1e-6 of themselves.
    assert found.capacity[0] == pytest.approx(alone.capacity[0], rel=4e-6)
    assert found.limit(0, 0) == alone.limit(0, 0)


def test_every_degree_is_among_the_slew_angles_on_tyres() -> None:
    tried = slews_of(on_tyres())
    assert set(np.round(EVERY_WAY, 9)) - {round(-np.pi, 9)} <= set(np.round(tried, 9))


def test_all_around_is_the_least_of_the_slew_angles_on_tyres() -> None:
    rated = rate(on_tyres(), extension=WAY, radius=RADII).capacity[0]
    every = slews_of(on_tyres())
    coarse = around(on_tyres(), extension=WAY, radius=RADII, slew=every[::9])
    assert np.all(coarse.capacity >= rated * (1.0 - 4e-6))
    # From the least of these to its neighbours on both sides, at every degree.
    for least in sorted(set(coarse.capacity.argmin(axis=0))):
        near = every[max(9 * least - 9, 0) : 9 * least + 10]
        some = coarse.capacity.argmin(axis=0) == least
        fine = around(on_tyres(), extension=WAY, radius=RADII[some], slew=near)
        assert fine.capacity.min(axis=0) == pytest.approx(rated[some], rel=4e-6)


@pytest.mark.slow
@pytest.mark.long
def test_at_no_degree_the_tyres_bear_less_than_all_around() -> None:
    found = around(on_tyres(), extension=WAY, radius=RADII)
    rated = rate(on_tyres(), extension=WAY, radius=RADII).capacity[0]
    assert found.capacity.min(axis=0) == pytest.approx(rated, rel=4e-6)


# --- the longest boom ------------------------------------------------------------------------


def test_beyond_the_longest_boom_nothing_is_rated() -> None:
    rating = rate(on_tyres(), extension=[WAY, LONG], radius=RADII)
    assert np.all(rating.capacity[0] > 0.0)
    assert np.all(np.isnan(rating.capacity[1])) and np.all(rating.governing[1] == -1)


def test_a_lift_with_too_long_a_boom_says_so() -> None:
    found = lift(on_tyres(), extension=LONG, load=5e3, radius=8.0)
    assert np.isnan(found.capacity)
    assert any("On tyres the boom may be at most 20.0 m long" in note for note in found.notes)


@pytest.mark.parametrize(
    "command",
    [
        ["compare", "yard60", "--length", "25.9 m"],
        ["chart", "yard60", "--length", "25.9 m"],
        ["range", "yard60", "--extension", "45,45,45,45"],
        ["around", "yard60", "--extension", "45,45,45,45"],
        ["overload", "yard60", "--extension", "45,45,45,45", "--radius", "8 m"],
        ["losses", "yard60", "--extension", "45,45,45,45", "--radius", "8 m"],
    ],
    ids=lambda command: command[0],
)
def test_commands_refuse_too_long_a_boom_in_one_line(command, capsys) -> None:
    assert main([*command, "--support", "tyres"]) == 2
    told = capsys.readouterr()
    assert not told.out and told.err.count("\n") == 1
    assert "On tyres the boom may be at most 20.0 m long, and this one is 25.90 m long" in told.err


@pytest.mark.slow
def test_a_chart_on_tyres_ends_at_the_longest_boom_and_says_why() -> None:
    chart = best_chart(on_tyres("rear"))
    assert chart.length.max() <= 20.0 < best_chart(set_up(YARD, slew="rear")).length.max()
    assert "On tyres the boom may be at most 20.0 m long." in blank_words(chart, units="metric")
    ways = configurations_of(YARD.boom, extension=np.array([WAY, LONG]))
    with pytest.raises(ValueError, match=r"at most 20\.0 m long"):
        stated_chart(on_tyres("rear"), configurations=ways)


def test_a_book_keeps_its_columns_and_blanks_those_that_are_too_long() -> None:
    ways = configurations_of(YARD.boom, extension=np.array([WAY, LONG]))
    book = make_book([set_up(YARD), on_tyres()], configurations=ways, radii=RADII)
    free, short = (chapter.stated for chapter in book.chapters)
    assert free.rated.all()
    assert short.rated[:, 0].all() and not short.rated[:, 1].any()
    assert {short.reason(r, 1).key for r in range(len(RADII))} == {"too long on tyres"}
    text = StringIO()
    write_csv([short], text, units="metric")
    assert "45, 45, 45, 45" not in text.getvalue()


def test_the_explorer_agrees_with_the_rating_on_tyres() -> None:
    # The first answers leave a curve behind that later ones would begin from.
    scene = Scene(machine="yard60", extension=WAY, held="radius", radius=6.0, load=1e3)
    answer(scene)
    for radius in (3.0, 4.0, 6.0, 9.0):
        for slew in (0.0, 0.4):
            there = replace(scene, support="tyres", radius=radius, slew=slew)
            found = answer(there)
            rated = rate(found.setup, extension=WAY, radius=[radius]).capacity[0, 0]
            assert found.capacity == pytest.approx(float(rated), rel=2e-6)
    found = answer(replace(scene, support="tyres", extension=LONG))
    assert np.isnan(found.capacity)
    assert headline(found, units="metric") == (
        "No rated capacity: on tyres the boom may be at most 20.0 m long."
    )


# --- machine files ----------------------------------------------------------------------------


def test_a_machine_with_tyres_is_written_and_read_back() -> None:
    again = read_machine(machine_to_toml(YARD), "again.toml")
    assert again.supports[2] == YARD.supports[2]


@pytest.mark.parametrize(
    ("written", "instead", "said"),
    [
        ('strength = "108 kN"', 'strength = "108"', r"supports\[2\]\.strength"),
        ('longest_boom = "20 m"', 'longest_boom = "11 m"', r"longest_boom: The boom is 11\.5\d* m"),
        (
            'area = "0.25 m2"\n\n[[supports]]\nname = "tyres"',
            'area = "0.25 m2"\nstrength = "9 kN"\n\n[[supports]]\nname = "tyres"',
            r'supports\[1\]\.strength: This is for a support of kind "tyres"',
        ),
    ],
)
def test_a_wrong_entry_about_tyres_is_named(written: str, instead: str, said: str) -> None:
    from boomsim.machine.file_faults import MachineFileError
    from boomsim.machine.machine_files import builtin_text

    text = builtin_text("yard60")
    assert text.count(written) == 1
    with pytest.raises(MachineFileError, match=said):
        read_machine(text.replace(written, instead), "mine.toml")
