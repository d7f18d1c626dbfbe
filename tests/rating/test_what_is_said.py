"""What is said of a rating: the figures in a sentence are those of the rating, and add up."""

import re
from dataclasses import replace
from decimal import Decimal
from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane, set_up_by_hand

from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.capacity import rate
from boomsim.rating.chart_places import Places
from boomsim.rating.comparison.comparison_sentences import (
    tell_account,
    tell_crossover,
    tell_difference,
)
from boomsim.rating.comparison.comparison_study import compare, demonstration
from boomsim.rating.comparison.difference_account import account, difference
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.limits.limit_sentences import sign
from boomsim.rating.losses.losses_sentences import tell_effect, tell_governing
from boomsim.rating.losses.losses_study import losses
from boomsim.rating.overload.overload_sentences import (
    tell_fall,
    tell_feel,
    tell_lightening,
    tell_verdict,
)
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.units import show, show_rated

OUT = np.array([1.0, 1.0, 1.0])
FAR, NEAR = 22.0, 8.0


@lru_cache
def study(radius: float, hold: str = "angle") -> Overload:
    return overload(set_up_by_hand(invented_crane()), extension=OUT, radius=radius, hold=hold)


def mass(value: float) -> str:
    return show(value, "mass", "metric")


def test_far_out_it_is_said_to_tip_first_and_how_much_longer_strength_would_last() -> None:
    result = study(FAR)
    assert result.tipping is not None
    assert result.failure is not None
    said, light = tell_verdict(result, units="metric")
    assert light == tell_lightening(result)
    assert said.startswith("It tips first")
    assert f"under {mass(result.tipping.load)}" in said
    assert f"Strength would last to {mass(result.failure.load)}" in said
    more = result.failure.load / result.tipping.load
    assert f"{more:.2f} times the tipping load" in said
    alone, _ = tell_verdict(replace(result, failure=None), units="metric")
    assert "Strength" not in alone


def test_near_in_it_is_said_to_break_first_and_what_breaks() -> None:
    result = study(NEAR)
    assert result.tipping is not None
    assert result.failure is not None
    said = " ".join(tell_verdict(result, units="metric"))
    assert said.startswith(f"It breaks first: {result.failure.words}")
    assert f"under {mass(result.failure.load)}, {result.failure.load / result.rated:.2f}" in said
    later = result.tipping.load / result.failure.load
    assert f"tip only under {mass(result.tipping.load)}, {later:.2f} times" in said
    assert later > 1.0
    _, calm, light = tell_verdict(replace(result, tipping=None), units="metric")
    assert calm == "No load tips the crane here."
    assert light == tell_lightening(result)


def test_where_neither_happens_neither_is_said() -> None:
    neither = replace(study(FAR), failure=None, tipping=None)
    assert "nothing breaks and nothing tips" in tell_verdict(neither, units="metric")[0]


def test_what_is_felt_is_told_from_no_load_to_the_end() -> None:
    feel = study(NEAR).feel
    said = tell_feel(study(NEAR), units="metric")
    start, end = (show(float(feel.lightest[k]), "force", "metric") for k in (0, -1))
    share = 100 * float(feel.lightest[-1] / feel.lightest[0])
    assert 1.0 < share < 99.0
    assert f"from {start} without a load to {end} ({share:.0f} %)" in said
    lean = float(np.degrees(feel.lean[-1]))
    assert f"the carrier leans {lean:.2f}° on its floats" in said
    assert f"comes down by {show(float(feel.droop[-1]), 'small_length', 'metric')} and" in said
    near, far = (show(float(feel.radius[k]), "length", "metric") for k in (0, -1))
    assert f"the radius grows from {near} to {far}." in said


def test_the_lean_from_which_it_comes_back_is_the_balance_of_what_stands_high() -> None:
    result = study(FAR)
    assert result.fall is not None
    said = tell_fall(result, units="metric")
    lean = float(np.degrees(result.fall.no_return[0]))
    assert f"With {show_rated(result.rated)} hanging clear" in said
    assert f"less than {lean:.1f}°" in said
    assert "nothing to come back from" in tell_fall(replace(result, fall=None), units="metric")


@pytest.mark.parametrize("pair", [(0, 1), (0, 2), (2, 1)])
@pytest.mark.parametrize("radius", [4.0, 9.0, 16.0])
def test_the_masses_in_the_sentences_of_a_difference_add_up(
    pair: tuple[int, int], radius: float
) -> None:
    machine = load_machine("yard60")
    setup, ways = set_up_by_hand(machine), demonstration(machine.boom).extension
    first, second = (account(setup, extension=ways[k], radius=radius) for k in pair)
    assert first is not None
    assert second is not None
    apart = difference(first, second, radius=radius)
    verdict, *reasons = tell_difference("one", "other", apart, units="metric")
    told = re.search(r"carries ([\d,.]+) t (more|less) than", verdict)
    assert told is not None
    assert told.group(2) == ("more" if first.capacity >= second.capacity else "less")
    total = Decimal(told.group(1)) * (1 if told.group(2) == "more" else -1)
    # The difference of the rated loads as they are written, rounded down.
    one, other = (Decimal(show_rated(a.capacity).removesuffix(" t")) for a in (first, second))
    assert total == one - other
    parts, _, whole = reasons[0].partition("; in all ")
    shares = [Decimal(part) for part in re.findall(r"([+-][\d.]+) t", parts)]
    by_part = sum(shares)
    assert not whole or by_part == Decimal(whole.removesuffix(" t."))
    # Each is rounded up or down to 0.01 t, and so is what they are told to make together.
    assert float(by_part) == pytest.approx(sum(apart.by_part.values()) / 1000, abs=0.02)
    held = Decimal(0)
    if reasons[1:]:
        taken = re.search(r"one is held ([\d.]+) t and other ([\d.]+) t below", reasons[1])
        assert taken is not None
        held = Decimal(taken.group(2)) - Decimal(taken.group(1))
        assert reasons[1].endswith(f"{held:+.2f} t.")
        for said, one_of in zip(taken.groups(), (first, second), strict=True):
            assert float(said) == pytest.approx(one_of.structure_takes / 1000, abs=0.01)
    # What is told apart is all there is.
    assert by_part + held == total


def test_a_crossover_names_who_leads_before_and_after_it() -> None:
    machine = load_machine("yard60")
    found = compare(set_up_by_hand(machine), configurations=demonstration(machine.boom))
    for crossover in found.crossovers:
        said = tell_crossover(found, crossover, units="metric")
        near, far = crossover.radius - 0.5, crossover.radius + 0.5
        rating = rate(found.setup, extension=found.configurations.extension, radius=[near, far])
        lead = np.argmax(np.nan_to_num(rating.capacity), axis=0)
        percent = [
            "/".join(f"{100 * f:.4g}" for f in found.configurations.extension[k]) for k in lead
        ]
        names = re.search(r"m \((.*?)\) carries more, beyond it \((.*?)\)", said)
        assert names is not None
        assert [re.sub(r"[^\d.]+", "/", name).strip("/") for name in names.groups()] == percent
        assert said.endswith(f"there both carry {show_rated(crossover.capacity)}.")


def test_an_account_says_what_comes_first_and_by_how_much() -> None:
    setup = set_up_by_hand(invented_crane())
    near = account(setup, extension=OUT, radius=NEAR)
    assert near is not None
    assert near.gave_way is not None
    said = tell_account("all out", near, units="metric")
    assert said.startswith(f"all out carries {show_rated(near.capacity)}; strength sets this")
    assert f": {near.limit.words}, " in said
    # The difference of the two as they are written, each rounded down.
    allows, carries = (
        Decimal(show_rated(one).removesuffix(" t")) for one in (near.stability, near.capacity)
    )
    assert f" {allows - carries} t below what stability allows" in said
    # Shares of the use add up to all of it, each rounded to a percent.
    shares = [
        int(s) for s in re.findall(r"(\d+) %", said.split(" is made up of ")[1].split(";")[0])
    ]
    assert sum(shares) == pytest.approx(100, abs=len(shares))
    far = account(setup, extension=OUT, radius=FAR)
    assert far is not None
    assert tell_account("all out", far, units="metric").endswith("stability sets this figure.")


def test_beyond_the_rated_load_a_lift_names_the_limit_that_is_used_most() -> None:
    setup = set_up_by_hand(invented_crane())
    light, heavy = (lift(setup, extension=OUT, radius=NEAR, load=m) for m in (2000.0, 30000.0))
    worst = max(heavy.limits, key=lambda one: one.utilisation)
    assert worst.utilisation > 1.0
    assert f"{worst.limit.words} is at {100 * worst.utilisation:.0f} %" in " ".join(heavy.notes)
    assert not any("Beyond the rated load" in note for note in light.notes)


def test_a_margin_is_what_the_load_turns_over_what_holds_it() -> None:
    setup = set_up_by_hand(invented_crane())
    load = 4000.0
    found = lift(setup, extension=OUT, radius=FAR, load=load)
    lines = tipping_lines(setup.support)
    for margin, normal, distance in zip(found.margins, lines.normal, lines.distance, strict=True):
        hook = FAR * np.array([np.cos(margin.slew), np.sin(margin.slew)])
        beyond = load * GRAVITY * max(float(normal @ hook - distance), 0.0)
        # The radius is held to a thousandth of a millimetre.
        assert margin.overturning == pytest.approx(beyond, rel=1e-6)
        assert margin.overturning_ratio == pytest.approx(margin.overturning / margin.righting)
    assert max(m.overturning_ratio for m in found.margins) == pytest.approx(
        load / found.tipping_load
    )


def test_a_letter_marks_what_governs_a_cell() -> None:
    rating = rate(
        set_up_by_hand(invented_crane()), extension=OUT, radius=np.array([NEAR, FAR, 60.0])
    )
    signs = [sign(rating.limit(0, cell)) for cell in range(3)]
    assert signs[1:] == ["", ""]
    assert signs[0] in ("*", "†")
    # The first of the limits, yield in the base section, breaks like any other.
    first = replace(rating, governing=np.zeros_like(rating.governing))
    assert sign(first.limit(0, 0)) in ("*", "†")


def test_an_effect_is_told_with_its_amount() -> None:
    places = Places(extension=OUT[None], radius=np.array([FAR]))
    found = losses(set_up_by_hand(invented_crane()), places=places)
    said = {effect.name: tell_effect(effect, units="metric") for effect in found.effects}
    # One degree, ten metres a second, one metre: what a study takes where nothing is asked.
    for name, amount in (("lean", 1.0), ("wind", 10.0), ("farther", 1.0)):
        assert float(re.findall(r"[\d.]+", said[name])[-1]) == amount
    whole = next(effect for effect in found.effects if effect.amount is None)
    assert said[whole.name] == whole.words
    none, some = tell_governing(None), tell_governing(found.governing[0])
    assert (none, some) == ("out of reach", "stability")


@pytest.mark.parametrize("load", [-1.0, np.nan, 1e7])
def test_a_load_that_is_none_is_refused(load: float) -> None:
    with pytest.raises(ValueError, match=r"The load: .* is outside 0 "):
        lift(set_up_by_hand(invented_crane()), extension=OUT, load=load, radius=NEAR)


@pytest.mark.parametrize("held", [{}, {"radius": 8.0, "angle": 1.0}])
def test_a_lift_is_held_at_a_radius_or_at_an_angle(held: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="either the radius or the boom angle"):
        lift(set_up_by_hand(invented_crane()), extension=OUT, load=1000.0, **held)
