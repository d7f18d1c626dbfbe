"""Variants are equally hard: by effort, and for simulated candidates with named misconceptions."""

import re
from pathlib import Path

import pytest

from boomsim.cli import main
from boomsim.papers.blueprint import Blueprint, make_blueprint
from boomsim.papers.family_registry import families, family_named
from boomsim.papers.family_selection import choose
from boomsim.papers.paper import make_paper
from boomsim.papers.parallel_variants import hardness, mean_marks
from boomsim.papers.problems.family import ChoiceFamily
from boomsim.papers.problems.paper_slots import Slot
from boomsim.papers.simulated_candidates import COUNT, believed, expected, points


def plan(**changes: object) -> Blueprint:
    table = {
        "title": "x", "minutes": 60, "variants": 12, "vary": "families",
        "part": [{"topics": ["statics", "strength", "stability", "geometry"], "questions": 8}],
    }  # fmt: skip
    return make_blueprint(table | changes)


def test_weaker_candidates_have_more_misconceptions() -> None:
    held = [0] * COUNT
    for family in families().values():
        if not isinstance(family, ChoiceFamily):
            shown = believed(family.id, tuple(slip.words for slip in family.slips))
            held = [one + bool(words) for one, words in zip(held, shown, strict=True)]
    third = COUNT // 3
    assert sum(held[:third]) < sum(held[third : 2 * third]) < sum(held[2 * third : 3 * third])


def test_a_quarter_of_the_questions_meets_a_misconception() -> None:
    """Candidate n of 40 shows one in n/80 of the families: 41/160 in the mean.

    Of some 40 families times 40 candidates, 0.26 has a standard error of 0.011; four of them.
    """
    shares = [
        sum(map(bool, believed(one.id, tuple(slip.words for slip in one.slips)))) / COUNT
        for one in families().values()
        if not isinstance(one, ChoiceFamily)
    ]
    assert sum(shares) / len(shares) == pytest.approx(41 / 160, abs=0.045)


def test_a_misconception_costs_the_marks_of_its_own_step() -> None:
    """Three steps of one mark each, errors carried forward: who has any loses one of three."""
    family = family_named("statics_pad_force")
    part = [{"families": [family.id], "questions": 1}]
    paper = make_paper(plan(part=part, variants=1), variant=0)
    having = sum(map(bool, believed(family.id, tuple(slip.words for slip in family.slips))))
    assert mean_marks(paper) == pytest.approx(3 - having / COUNT)
    assert expected(Slot(family=family, form="numeric", guided=True, part=0)) == pytest.approx(
        3 - having / COUNT
    )


def spread(paper_plan: Blueprint) -> tuple[int, float]:
    """Ranges of effort and of expected marks over all variants."""
    chosen = [choose(paper_plan, variant=n) for n in range(paper_plan.variants)]
    efforts = [sum(points(slot.family) for slot in slots) for slots in chosen]
    marks = [sum(map(expected, slots)) for slots in chosen]
    return max(efforts) - min(efforts), max(marks) - min(marks)


def test_variants_of_other_families_are_chosen_to_be_equally_hard(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    plans = [plan(seed=f"{n}") for n in range(4)]
    chosen = [spread(one) for one in plans]
    monkeypatch.setattr("boomsim.papers.family_selection.DRAWS", 1)
    thrown = [spread(one) for one in plans]
    # The first that comes differs more than the best of many: in effort and in marks.
    for way in (0, 1):
        assert sum(one[way] for one in chosen) < 0.6 * sum(one[way] for one in thrown)


def test_variants_of_other_families_do_have_others() -> None:
    chosen = [frozenset(slot.family.id for slot in choose(plan(), variant=n)) for n in range(12)]
    assert all(one != chosen[0] for one in chosen[1:])
    assert len(set(chosen)) > 8


def test_variants_with_other_numbers_take_the_same_effort() -> None:
    papers = [make_paper(plan(vary="numbers", variants=3), variant=n) for n in range(3)]
    found = hardness(papers)
    assert found.effort[0] == found.effort[1]
    assert len(found.means) == 3


def test_many_variants_are_looked_at_evenly_with_both_ends() -> None:
    one = make_paper(plan(vary="numbers", variants=1), variant=0)
    found = hardness([one] * 31)
    assert (found.variants, found.looked_at) == (31, 10)
    assert "10 of 31 variants: a spread of 0.0" in str(found)


def test_the_command_prints_the_spread_and_its_ends_add_up(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "plan.toml").write_text(
        'title = "x"\nminutes = 9\nvariants = 4\nvary = "families"\n'
        '[[part]]\ntopics = ["statics", "charts", "strategy"]\nquestions = 5\nform = "mixed"\n'
    )
    words = ["paper", str(tmp_path / "plan.toml"), "--format", "json", "--out"]
    assert main([*words, str(tmp_path / "out")]) == 0
    told = " ".join(capsys.readouterr().out.split())
    found = re.search(r"earn ([\d.]+) to ([\d.]+) of (\d+) marks .* a spread of ([\d.]+)\.", told)
    assert found
    low, high, most, apart = map(float, found.groups())
    assert low <= high <= most
    assert apart == pytest.approx(high - low, abs=1e-9)
    assert main([*words, str(tmp_path / "one"), "--variants", "1"]) == 0
    assert "spread" not in capsys.readouterr().out
