"""Blueprints: read, refused with every fault at once, and turned into balanced variants."""

import tomllib
from collections import Counter
from pathlib import Path

import pytest

from boomsim.papers.blueprint import make_blueprint, read_blueprint
from boomsim.papers.family_selection import choose
from boomsim.papers.paper import make_paper, variant_name
from boomsim.papers.paper_errors import BlueprintError
from boomsim.papers.render.paper_data import key_data
from boomsim.papers.render.paper_notes import notes
from boomsim.papers.simulated_candidates import expected, points

EXERCISES = Path(__file__).parents[2] / "exercises"
PART = {"topics": ["geometry", "statics", "strategy"], "questions": 4}


def plan(**changes: object) -> dict[str, object]:
    return {"title": "A paper", "minutes": 20, "part": [PART]} | changes


@pytest.mark.parametrize("path", sorted(EXERCISES.glob("*.toml")), ids=lambda path: path.stem)
def test_ready_blueprints_can_be_set(path: Path) -> None:
    blueprint = read_blueprint(path)
    for variant in {0, blueprint.variants - 1}:
        paper = make_paper(blueprint, variant=variant)
        assert paper.marks > 0
        assert len(paper.labels) == len(set(paper.labels))


@pytest.mark.parametrize("seed", range(20))
def test_a_worksheet_on_lengths_and_configurations_asks_for_both(seed: int) -> None:
    sheet = tomllib.loads((EXERCISES / "worksheet-boom-length.toml").read_text(encoding="utf-8"))
    paper = make_paper(make_blueprint(sheet | {"seed": f"class {seed}"}, name="sheet"), variant=0)
    asked = {question.problem.family.id for question in paper.questions}
    assert asked == {"geometry_boom_length", "geometry_same_length", "geometry_overlap"}


def test_all_faults_are_named_at_once() -> None:
    wrong = plan(
        titel="x", minutes=0, units="Metric", variants=1.5, difficulty=[3, 1],
        part=[{"topics": ["statcs"], "question": 3}, {"questions": 2}],
    )  # fmt: skip
    with pytest.raises(BlueprintError) as error:
        make_blueprint(wrong, name="wrong.toml")
    said = str(error.value)
    assert said.startswith("wrong.toml has 9 faults:")
    for words in (
        "titel: this key is not known. Did you mean",
        "minutes: ",
        "units: ",
        "variants: ",
        "difficulty: is [3, 1]",
        'part[1].topics: "statcs" is no topic. Did you mean "statics"?',
        "part[1].questions: is missing",
        'part[1].question: this key is not known. Did you mean "questions"?',
        "part[2]: names no topics and no families",
    ):
        assert words in said
    assert "Value error" not in said


@pytest.mark.parametrize("content", [b"title = ", b"\xff\xfe\x00", b"title = 'x'\n" * 2])
def test_a_file_that_is_no_toml_is_refused_by_name(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "mine.toml"
    path.write_bytes(content)
    with pytest.raises(BlueprintError, match=r"mine\.toml"):
        read_blueprint(path)


def test_a_missing_file_is_refused(tmp_path: Path) -> None:
    with pytest.raises(BlueprintError, match="cannot be read"):
        read_blueprint(tmp_path / "none.toml")


def test_changes_replace_what_the_file_says() -> None:
    path = EXERCISES / "quiz-10-minutes.toml"
    changed = read_blueprint(path, units="us", variants=7, seed=5)
    assert (changed.units, changed.variants, changed.seed) == ("us", 7, "5")
    assert read_blueprint(path, units=None).units == "metric"


def test_marks_are_met_exactly() -> None:
    part = PART | {"marks": 9}
    assert make_paper(make_blueprint(plan(part=[part])), variant=0).marks == 9


def test_marks_that_cannot_be_met_name_those_that_can() -> None:
    part = {"families": ["statics_pad_force"], "questions": 2, "marks": 7}  # two threes are six
    with pytest.raises(BlueprintError, match="Possible: 6"):
        make_paper(make_blueprint(plan(part=[part])), variant=0)


def test_a_named_family_is_never_left_out_in_silence() -> None:
    part = {"families": ["statics_pad_force", "strategy_own_weight"], "questions": 2}
    with pytest.raises(BlueprintError, match=r"part\[1\].*strategy_own_weight.*mixed"):
        make_paper(make_blueprint(plan(form="numeric", part=[part])), variant=0)
    paper = make_paper(make_blueprint(plan(form="mixed", part=[part])), variant=0)
    assert sorted(q.problem.family.id for q in paper.questions) == part["families"]


@pytest.mark.parametrize(
    ("marking", "kept", "lost"),
    [
        ({}, "keeps the marks of the other steps that it rests on", "a wrong answer earns nothing"),
        ({"method": "none"}, "a wrong answer earns nothing", "keeps the marks"),
        ({"rounding": "free"}, "loses nothing", "further than asked loses one mark"),
        ({"factor": "all"}, "9.81 or 12) is wrong", "only once in a question"),
    ],
)
def test_the_marking_policy_is_printed_on_the_paper(
    marking: dict[str, str], kept: str, lost: str
) -> None:
    part = {"families": ["statics_pad_force"], "questions": 1}
    paper = make_paper(make_blueprint(plan(guided=False, part=[part], marking=marking)), variant=0)
    for kind in ("paper", "marking"):
        said = " ".join(notes(paper, kind=kind))
        assert kept in said
        assert lost not in said
    assert key_data([paper])["marking"] == paper.plan.marking.model_dump()


def test_a_policy_of_answers_alone_is_not_printed_where_every_step_is_asked_for() -> None:
    part = {"families": ["statics_pad_force"], "questions": 1}
    paper = make_paper(make_blueprint(plan(part=[part])), variant=0)
    assert "Where only the answer" not in " ".join(notes(paper, kind="paper"))


def test_an_unknown_policy_is_refused_with_what_is_known() -> None:
    with pytest.raises(BlueprintError, match="'known slip' or 'none'"):
        make_blueprint(plan(marking={"method": "all"}))
    with pytest.raises(BlueprintError, match="Did you mean"):
        make_blueprint(plan(marking={"roundig": "free"}))


@pytest.mark.parametrize("path", sorted(EXERCISES.glob("*.toml")), ids=lambda path: path.stem)
def test_every_sitting_has_equal_marks_and_equal_difficulty(path: Path) -> None:
    sums, chosen = set(), set()
    for seed in range(25):
        slots = choose(read_blueprint(path, seed=f"sitting {seed}"), variant=0)
        sums.add((sum(s.marks for s in slots), sum(s.family.difficulty for s in slots)))
        chosen.add(frozenset(slot.family.id for slot in slots))
    assert len(sums) == 1
    free = any(part.topics for part in read_blueprint(path).part)
    assert len(chosen) > 1 or not free  # and yet they are other questions


def test_a_hundred_sittings_of_the_theory_paper_are_one_as_long_as_the_other() -> None:
    """Marks once ranged from 27 to 44 in the same two hours.

    Marks and difficulty are equal. Points of effort and what simulated candidates earn are not held
    equal, which would leave so few choices that questions could be told before the sitting: they
    stay within a tenth of their middle, where the marks of old lay a quarter beside it.
    """
    path = EXERCISES / "theory-paper.toml"
    sums, efforts, earned, asked = set(), [], [], Counter()
    for seed in range(100):
        sitting = read_blueprint(path, seed=f"{seed}")
        slots = choose(sitting, variant=0)
        worths = [(slot.marks, slot.family.difficulty) for slot in slots]
        sums.add((sitting.minutes, len(slots), *map(sum, zip(*worths, strict=True))))
        efforts.append(sum(points(slot.family) for slot in slots))
        earned.append(sum(map(expected, slots)))
        asked.update(slot.family.id for slot in slots)
    assert len(sums) == 1
    for found in (efforts, earned):
        middle = sorted(found)[50]
        assert 0.9 * middle < min(found) <= max(found) < 1.1 * middle
    assert max(asked.values()) < 100  # no question is in every sitting
    ((_, _, marks, _),) = sums
    said = (EXERCISES.parent / "docs" / "examiner.md").read_text(encoding="utf-8")
    assert f"always has {marks} marks, and takes {min(efforts)} to {max(efforts)} points" in said


def test_sittings_with_marks_of_their_own_have_equal_difficulty_too() -> None:
    part = {"topics": ["statics", "stability", "geometry"], "questions": 4, "marks": 12}
    sums = set()
    for seed in range(25):
        slots = choose(make_blueprint(plan(seed=f"{seed}", part=[part])), variant=0)
        sums.add((sum(s.marks for s in slots), sum(s.family.difficulty for s in slots)))
    assert len(sums) == 1
    assert {marks for marks, _ in sums} == {12}


def test_variants_have_equal_marks_and_equal_difficulty() -> None:
    blueprint = make_blueprint(plan(vary="families", variants=30, order="shuffled"))
    sums = set()
    for variant in range(30):
        slots = choose(blueprint, variant=variant)
        sums.add((len(slots), sum(s.marks for s in slots), sum(s.family.difficulty for s in slots)))
    assert len(sums) == 1


def test_variants_of_numbers_have_the_same_families_and_other_numbers() -> None:
    blueprint = make_blueprint(plan(variants=2))
    one, other = (make_paper(blueprint, variant=variant) for variant in (0, 1))
    assert [q.problem.family.id for q in one.questions] == [
        q.problem.family.id for q in other.questions
    ]
    assert [q.problem.values for q in one.questions] != [q.problem.values for q in other.questions]


def test_the_topics_of_a_part_take_turns() -> None:
    topics = ["geometry", "statics", "deflection"]
    part = {"topics": topics, "questions": 6}
    for seed in "abcde":
        slots = choose(make_blueprint(plan(form="numeric", seed=seed, part=[part])), variant=0)
        counts = Counter(slot.family.topic for slot in slots)
        assert counts == dict.fromkeys(topics, 2)


def test_easier_questions_come_first() -> None:
    slots = choose(make_blueprint(plan()), variant=0)
    efforts = [slot.family.difficulty for slot in slots]
    assert efforts == sorted(efforts)


def test_a_numeric_part_has_no_choice_family() -> None:
    slots = choose(make_blueprint(plan(form="numeric")), variant=0)
    assert {slot.form for slot in slots} == {"numeric"}


def test_a_part_that_nothing_fits_says_what_to_widen() -> None:
    part = {"topics": ["weights"], "questions": 1}  # a centre of gravity is never difficulty 1
    with pytest.raises(BlueprintError, match="Widen"):
        choose(make_blueprint(plan(difficulty=[1, 1], part=[part])), variant=0)


def test_names_of_variants_sort_as_numbers_do() -> None:
    names = [variant_name(number, count=120) for number in range(120)]
    assert names == sorted(names)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("minutes = 0", "minutes: is 0 and needs to be 1 or more"),
        ("minutes = 900", "minutes: is 900 and needs to be 600 or less"),
        ("minutes = 1.5", "minutes: is 1.5 and needs a whole number"),
        ('units = "metrisch"', "units: is 'metrisch' and needs to be 'metric' or 'us'"),
        ('guided = "yes"', "guided: is 'yes' and needs true or false"),
        ("subtitle = 7", "subtitle: is 7 and needs text in quotation marks"),
        ('instructions = "x"', "instructions: is 'x' and needs a list in square brackets"),
        ("difficulty = [1]", "difficulty: needs 2 or more of them, and has 1"),
        ("part = [1]", "part[1]: is 1 and needs a table with keys of its own"),
    ],
)
def test_a_fault_says_the_value_and_what_is_needed_in_words_of_ours(line: str, said: str) -> None:
    table: dict[str, object] = {"title": "x", "minutes": 5, "part": []}
    with pytest.raises(BlueprintError) as refused:
        make_blueprint(table | tomllib.loads(line))
    assert said in str(refused.value)
    assert "Input should" not in str(refused.value)
