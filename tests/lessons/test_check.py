"""The self-check: right, a known slip, wrong, refused; and it never runs what it is given."""

import pytest

from boomsim.lessons.lesson_order import LESSONS, lesson_named
from boomsim.lessons.self_check import Check, told_apart
from boomsim.units import QUANTITIES, SYSTEMS, display

CASES = [(lesson, units) for lesson in LESSONS for units in SYSTEMS]
case = pytest.mark.parametrize(
    ("lesson", "units"), CASES, ids=[f"{lesson.number}-{units}" for lesson, units in CASES]
)


def written(check, value):
    """The figure as somebody with enough digits would write it."""
    shown = display(check.quantity, check.units, like=value)
    return f"{value / shown.factor:.7g} {shown.unit}"


@case
def test_the_right_answer_is_right_within_the_tolerance_and_not_beyond_it(lesson, units):
    check = lesson.check(units)
    assert check(written(check, check.answer)).right
    for share in (0.95, -0.95):
        assert check(written(check, check.answer * (1 + share * check.tolerance))).right
    for share in (1.2, -1.2):
        assert not check(written(check, check.answer * (1 + share * check.tolerance))).right


@case
def test_the_answer_as_it_is_printed_is_right(lesson, units):
    check = lesson.check(units)
    assert check(check.exact.replace(",", "")).right


@case
def test_every_named_slip_is_recognised(lesson, units):
    check = lesson.check(units)
    assert len(check.slips) >= 3
    for words, value in check.slips.items():
        verdict = check(written(check, value))
        assert (verdict.kind, verdict.slip) == ("slip", words)
        assert words in verdict.words


@case
def test_an_answer_in_the_other_system_of_units_is_as_good(lesson, units):
    check = lesson.check(units)
    other = lesson.check("us" if units == "metric" else "metric")
    assert check(written(other, check.answer)).right


@case
def test_the_question_says_what_is_asked_and_the_working_leads_to_it(lesson, units):
    check = lesson.check(units)
    assert check.question.endswith("?")
    assert check.exact in repr(check.show_working())
    assert check.exact not in check.question


@pytest.fixture
def check():
    return Check(
        answer=11230.0, quantity="mass", question="How heavy?", slips={"forgot the hook": 11680.0}
    )


@pytest.mark.parametrize(
    ("answer", "kind"),
    [
        ("11.2 t", "right"),
        ("24800 lb", "right"),
        ("11.68 t", "slip"),
        ("9 t", "wrong"),
        ("11.2 kg", "wrong"),
        ("11.2", "refused"),
        ("11,2 t", "refused"),
        ("11.2 m", "refused"),
        ("much", "refused"),
        ("", "empty"),
        ("   ", "empty"),
        (11.2, "refused"),
        (None, "refused"),
        (["11.2 t"], "refused"),
    ],
)
def test_each_kind_of_answer_gets_its_own_kind_of_reply(check, answer, kind):
    verdict = check(answer)
    assert verdict.kind == kind
    assert verdict.words.endswith((".", "?"))
    assert verdict.right == (kind == "right")


def test_a_number_without_a_unit_is_told_how_to_write_it(check):
    words = check("11.2").words
    assert "has no unit" in words
    assert '"5 t"' in words


def test_a_share_without_a_percent_sign_is_refused_for_it_may_mean_two_things():
    check = Check(answer=0.25, quantity="share", slips={})
    assert check("0.25").kind == "refused"
    assert check("25").kind == "refused"
    assert "percent sign" in check("25").words
    assert check("25 %").right


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        ("11.23 kg", "a thousand times too small"),
        ("11230 t", "a thousand times too large"),
        ("112.3 t", "decimal point"),
        ("-11.23 t", "sign"),
        ("110.13 t", "force"),
        ("20 t", "too much"),
        ("2 t", "too little"),
    ],
)
def test_slips_that_can_happen_anywhere_are_told_from_their_size(check, answer, words):
    assert words in check(answer).words


@pytest.mark.parametrize(
    "attack",
    [
        "__import__('os').system('touch /tmp/run') t",
        "open('x','w') kg",
        "1 t if True else 2 t",
        "(11.2) t",
        "11.2*1 t",
        "{answer} t",
        "11.2 t; 3",
        "9" * 5000 + " t",
        "11.2 t" + "\n" * 50 + "x",
    ],
)
def test_what_is_typed_is_read_and_never_run(check, attack, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert check(attack).kind == "refused"
    assert list(tmp_path.iterdir()) == []


def test_a_check_that_would_blame_the_wrong_thing_is_refused():
    with pytest.raises(ValueError, match="cannot be told from"):
        Check(answer=100.0, quantity="mass", slips={"near": 101.0})
    with pytest.raises(ValueError, match="cannot be told from"):
        Check(answer=100.0, quantity="mass", slips={"one": 200.0, "other": 202.0})
    for answer in (0.0, float("nan"), float("inf")):
        with pytest.raises(ValueError, match="other than"):
            Check(answer=answer, quantity="mass")


def test_slips_found_by_a_rule_keep_the_first_of_those_that_agree():
    kept = told_apart({"a": 101.0, "b": 150.0, "c": 151.0, "d": 200.0}, answer=100.0)
    assert kept == {"b": 150.0, "d": 200.0}


def test_a_check_shows_its_question_as_text_and_as_html_with_nothing_run_there(check):
    assert "How heavy?" in repr(check)
    sly = Check(answer=1.0, quantity="mass", question="<script>alert(1)</script>?")
    assert "<script>" not in sly._repr_html_()
    assert "<b>" not in sly("<b>")._repr_html_().replace('<b style="', "")


def test_lessons_are_found_by_number_and_by_name():
    assert lesson_named("2") is lesson_named("02") is lesson_named("same-length")
    with pytest.raises(ValueError, match=r"There is no lesson '99'.*02 same-length"):
        lesson_named("99")
    with pytest.raises(ValueError, match='Did you mean "same-length"'):
        lesson_named("same-lenght")


def test_every_quantity_of_a_check_is_known():
    assert all(lesson.check("metric").quantity in QUANTITIES for lesson in LESSONS)


def test_an_empty_answer_gets_the_question_again():
    check = lesson_named("02").check("metric")
    assert check.question in repr(check(""))
    assert "Write your answer" in repr(check(""))


def test_a_verdict_keeps_the_question_for_whoever_tries_again():
    check = Check(question="How heavy is it?", answer=11230.0, quantity="mass")
    for answer in ("12 t", "11.23 t", "heavy"):
        assert "How heavy is it?" in check(answer)._repr_html_()
    assert check("")._repr_html_().count("How heavy is it?") == 1
