"""The three sentences of a comparison: each is read again, and what it says is rated anew."""

import re
from dataclasses import replace
from decimal import Decimal
from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane

from boomsim.machine.machine_files import load_machine, machine_names
from boomsim.machine.model import Rigging
from boomsim.rating.capacity import rate
from boomsim.rating.comparison.comparison_in_short import in_short
from boomsim.rating.comparison.comparison_study import Comparison, compare, demonstration
from boomsim.rating.comparison.difference_account import account
from boomsim.rating.comparison.lead_spans import FEW, most_at, ways_that_matter
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import configurations_of, letter, range_of_length
from boomsim.units import show_rated

TOLD = 0.051
"""A radius is told to 0.1 m, which may be off by half of it, and a hair [m]."""

LEVEL = 1e-5
"""The solver is good to some 1e-6; who leads anywhere here leads by more than this [1]."""


def names(found: Comparison) -> list[str]:
    return [letter(way) for way in range(len(found.configurations.extension))]


def spoken(found: Comparison, radius: float, units: str = "metric") -> list[str]:
    return in_short(found, names=names(found), radius=radius, units=units)


@lru_cache(maxsize=1000)
def capacity(found: Comparison, radius: float) -> np.ndarray:
    rated = rate(found.setup, extension=found.configurations.extension, radius=np.array([radius]))
    return np.nan_to_num(rated.capacity[:, 0])


def leader(found: Comparison, radius: float) -> str | None:
    """Letter of the way that carries most at a radius; None if several do."""
    order = np.sort(capacity(found, radius))[::-1]
    if len(order) > 1 and order[1] >= order[0] * (1.0 - LEVEL):
        return None
    return letter(int(capacity(found, radius).argmax()))


@pytest.fixture(scope="module", params=machine_names())
def usual(request) -> Comparison:
    """All ways to the length of the demonstration, of each machine."""
    machine = load_machine(request.param)
    return compare(set_up(machine), length=float(demonstration(machine.boom).length[0]))


@pytest.fixture(scope="module")
def crane() -> Setup:
    return set_up(load_machine("yard60"))


@pytest.fixture(scope="module")
def many(crane) -> list[Comparison]:
    shortest, longest = range_of_length(crane.machine.boom)
    stroke = max(section.stroke for section in crane.machine.boom.sections)
    # One, two and three sections out by a whole stroke: many ways to each.
    return [
        compare(crane, length=shortest + k * stroke)
        for k in (1, 2, 3)
        if shortest + k * stroke < longest
    ]


def metres(text: str) -> float:
    return float(text.replace(",", ""))


def check_where(found: Comparison, sentence: str, slack: float) -> None:
    """Whoever is said to carry most from here to there does so at both ends and between."""
    said = re.search(r"from ([\d.]+) m to ([\d.]+) m, (nobody|[A-Z]\d*)", sentence)
    assert said is not None, sentence
    near, far = metres(said.group(1)) + slack, metres(said.group(2)) - slack
    who = None if said.group(3) == "nobody" else said.group(3)
    assert near < far
    for radius in np.linspace(near, far, 7):
        assert leader(found, float(radius)) == who, radius


def check_between(found: Comparison, sentence: str, slack: float) -> int:
    """Whoever takes over from a radius on is in the lead just beyond it, and not just before."""
    between = sentence.partition("in between, ")[2]
    for who, where in re.findall(r"(nobody|[A-Z]\d*)(?: leads)? from ([\d.]+) m", between):
        expected = None if who == "nobody" else who
        # Below 10 m a radius is told to 0.01 m, and a short lead must be hit.
        off = min(slack, 3 * TOLD / 10) if len(where.partition(".")[2]) == 2 else slack
        assert leader(found, metres(where) + off) == expected, (who, where)
        assert leader(found, metres(where) - off) != expected, (who, where)
    return len(between)


@pytest.mark.slow
def test_who_is_said_to_lead_close_in_and_far_out_leads_there(usual) -> None:
    slack = TOLD if usual.radii[-1] > 5.0 else TOLD / 10
    close, far, _ = spoken(usual, float(usual.radii[0]))
    check_where(usual, close, slack)
    if "Nowhere" not in far:
        check_where(usual, far, slack)
        check_between(usual, far, slack)
    else:
        assert len({leader(usual, float(r)) for r in usual.radii} - {None}) <= 1


@pytest.mark.slow
def test_with_many_ways_every_change_of_the_lead_is_told_where_it_is(many) -> None:
    told = 0
    for found in many:
        close, far, _ = spoken(found, float(found.radii[len(found.radii) // 2]))
        check_where(found, close, TOLD)
        check_where(found, far, TOLD)
        told += check_between(found, far, TOLD) > 0
    assert told == len(many)


def check_kilograms(found: Comparison, radius: float) -> str:
    """What is told at one radius is what is rated; a sum that is told adds up."""
    sentence = spoken(found, radius)[-1]
    rated = np.sort(capacity(found, radius)[capacity(found, radius) > 0.0])
    said = re.search(
        r"carries ([\d,.]+) (t|kg) and [A-Z]\d*(?: \([\d., ]*\))? ([\d,.]+) (t|kg), "
        r"([\d,.]+) (t|kg) less",
        sentence,
    )
    assert said is not None, sentence
    most, least, less = (Decimal(said.group(k).replace(",", "")) for k in (1, 3, 5))
    assert len({said.group(k) for k in (2, 4, 6)}) == 1, "one unit in one sum"
    assert f"{most} {said.group(2)}" == show_rated(rated[-1]).replace(",", "")
    per_unit = 1000.0 if said.group(4) == "t" else 1.0
    # Rounded down to a hundredth of the unit.
    assert float(least) <= rated[0] / per_unit < float(least) + 0.0101
    assert most - least == less
    check_sum(sentence)
    return sentence


def check_sum(sentence: str) -> None:
    worth = re.search(r"worth ([\d. +-]+(?:for all else )?)= ([\d.]+) ", sentence)
    if worth is not None:
        terms = worth.group(1).replace("for all else", "").replace(" ", "")
        assert sum(Decimal(term) for term in re.findall(r"[+-]?[\d.]+", terms)) == Decimal(
            worth.group(2)
        )


def shared(found: Comparison) -> list[float]:
    return [float(r) for r in found.radii[(found.rating.capacity > 0.0).all(axis=0)]]


@pytest.mark.slow
def test_the_kilograms_are_those_that_are_rated_and_add_up(usual, many) -> None:
    for found in (usual, *many):
        radii = shared(found)
        for radius in (radii[len(radii) // 4], radii[-1]):
            if leader(found, radius) is not None:
                check_kilograms(found, radius)


def test_the_sections_that_are_said_to_be_kept_in_lie_nearer_to_the_heel(many) -> None:
    seen = 0
    for found in many:
        sentence = spoken(found, shared(found)[-1])[-1]
        said = re.search(r"([A-Z]\d*) keeps sections? ([\d, and]+) further in", sentence)
        pair = re.search(r"At [\d.]+ m ([A-Z]\d*).* and ([A-Z]\d*)", sentence)
        assert said is not None, sentence
        assert pair is not None
        assert pair.group(1) == said.group(1)
        strokes = np.array([s.stroke for s in found.setup.machine.boom.sections[1:]])
        best, least = (names(found).index(pair.group(k)) for k in (1, 2))
        out = np.cumsum(found.configurations.extension * strokes, axis=1)
        nearer = np.flatnonzero(out[best] < out[least] - 1e-6) + 1
        assert [int(n) for n in re.findall(r"\d+", said.group(2))] == nearer.tolist()
        seen += 1
    assert seen == len(many)


def test_where_strength_sets_the_smaller_figure_it_is_told_which_and_by_how_much(many) -> None:
    found = many[0]
    radius = shared(found)[len(shared(found)) // 4]
    sentence = spoken(found, radius)[-1]
    poorest = int(capacity(found, radius).argmin())
    one = account(found.setup, extension=found.configurations.extension[poorest], radius=radius)
    assert one is not None
    assert one.limit.set_by == "strength"
    below = f"{one.structure_takes / 1000:.2f} t below what stability allows"
    assert (
        f"for {letter(poorest)} strength sets this figure: {one.limit.words}, {below}" in sentence
    )


def test_a_tie_that_the_rope_makes_says_so_and_what_it_carries(crane) -> None:
    found = compare(
        set_up(crane.machine, rigging=Rigging(parts=1)),
        configurations=demonstration(crane.machine.boom),
    )
    close, *_ = spoken(found, shared(found)[0])
    assert "nobody leads, for " in close
    assert f" the same {show_rated(float(np.nanmax(found.rating.capacity)))}; a maker's" in close
    assert close.endswith("sets this figure: the line pull.")
    at = spoken(found, shared(found)[0])[-1]
    assert "all that reach carry the same" in at
    assert at.endswith("sets this figure: the line pull.")


def test_the_same_way_twice_makes_no_difference_anywhere(crane) -> None:
    twice = np.array([[0.0, 0.0, 0.0, 1.0]] * 2)
    found = compare(crane, configurations=configurations_of(crane.machine.boom, extension=twice))
    close, far, _ = spoken(found, shared(found)[-1])
    assert close.startswith("Everywhere, from ")
    assert "nobody leads, for all carry the same" in close
    assert far.startswith("So it makes no difference")


def test_one_way_alone_is_not_said_to_lead(crane) -> None:
    alone = np.array([[0.0, 0.0, 0.0, 1.0]])
    found = compare(crane, configurations=configurations_of(crane.machine.boom, extension=alone))
    only, at = spoken(found, shared(found)[-1])
    assert only.startswith("There is only one way, A (")
    near, far = (float(m) for m in re.findall(r"([\d.]+) m", only))
    for inside, outside in ((near + TOLD, near - TOLD), (far - TOLD, far + TOLD)):
        assert capacity(found, inside)[0] > 0.0
        assert capacity(found, outside)[0] == 0.0
    assert show_rated(float(capacity(found, shared(found)[-1])[0])) in at
    assert at.endswith("; stability sets this figure.")


def test_one_radius_is_enough_for_all_three(crane) -> None:
    found = compare(crane, configurations=demonstration(crane.machine.boom), radii=np.array([9.0]))
    full = compare(crane, configurations=demonstration(crane.machine.boom))
    assert spoken(found, 9.0) == spoken(full, 9.0)


def test_where_nobody_carries_anything_the_sentences_say_so() -> None:
    crane = invented_crane()
    feeble = tuple(
        replace(s, material=replace(s.material, yield_stress=1e6)) for s in crane.boom.sections
    )
    weak = replace(crane, boom=replace(crane.boom, sections=feeble))
    ways = configurations_of(weak.boom, extension=np.array([[1.0, 1.0, 1.0], [1.0, 1.0, 0.9]]))
    found = compare(set_up(weak), configurations=ways)
    assert found.leads == ()
    assert spoken(found, 10.0) == ["None of them carries anything at any radius."]


def test_out_of_reach_the_third_sentence_says_that_nobody_carries_anything(usual) -> None:
    assert spoken(usual, 90.0)[-1] == "At 90.0 m none of them carries anything."


def test_in_us_units_the_sentences_hold_no_metric_ones(usual) -> None:
    said = " ".join(spoken(usual, shared(usual)[-1], units="us"))
    assert " lb" in said
    assert " ft" in said
    assert not re.search(r"\d (m|t|kg)\b", said)


@pytest.mark.slow
def test_what_is_shown_is_who_leads_and_the_two_that_carry_least(many) -> None:
    for found in many:
        shown = ways_that_matter(found)
        radii = np.array(shared(found))
        lead = {leader(found, float(radius)) for radius in radii} - {None}
        assert lead <= {letter(way) for way in shown}
        assert int(capacity(found, radii[-1]).argmin()) in shown
        assert set(found.least) <= set(shown)
        others = {way for way in shown if way not in found.least}
        if len(names(found)) > FEW:
            assert others <= {one.leader for one in found.leads}
            assert len(shown) < len(names(found))
        else:
            assert shown == list(range(len(names(found))))


def test_a_tie_is_told_where_two_carry_the_same(many) -> None:
    for found in many:
        for most, column in zip(most_at(found), found.rating.capacity.T, strict=True):
            carried = np.nan_to_num(column)
            count = np.count_nonzero(carried >= carried.max() * (1.0 - LEVEL))
            assert len(most) == (count if carried.max() > 0.0 else 0)
