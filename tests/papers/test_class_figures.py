"""Facility and discrimination, against a class worked by hand."""

import math

import pytest
from matplotlib.figure import Figure

from boomsim.papers.marking.class_figures import class_figures, correlation
from boomsim.papers.marking.class_plot import class_png, draw_class
from boomsim.papers.marking.mark_question import PartMark, QuestionMark


def question(number: int, marks: int, slip: str = "", family: str = "") -> QuestionMark:
    part = PartMark(
        label=str(number), letter="M", given="1", status="right", marks=marks, most=4, slip=slip
    )
    return QuestionMark(number=number, family=family or f"f{number}", title="T", parts=(part,))


def paper(*marks: int, slip: str = "") -> list[QuestionMark]:
    return [question(number, one, slip) for number, one in enumerate(marks, start=1)]


# Four candidates, three questions of four marks each.
FORGOT = "forgot it"
CLASS = [paper(4, 4, 0), paper(4, 2, 4, slip=FORGOT), paper(2, 2, 4), paper(0, 0, 4, slip=FORGOT)]


def test_facility_is_the_mean_share() -> None:
    made = class_figures(CLASS)
    # (4+4+2+0)/16, (4+2+2+0)/16, (0+4+4+4)/16
    assert [one.facility for one in made] == [0.625, 0.5, 0.75]
    assert [one.count for one in made] == [4, 4, 4]


def test_discrimination_is_the_correlation_with_the_rest() -> None:
    made = class_figures(CLASS)
    # Question 3: marks 0 4 4 4, rest 8 6 4 0. Off the means 3 and 4.5:
    # -3 1 1 1 and 3.5 1.5 -0.5 -4.5; sum of products -10.5+1.5-0.5-4.5 = -14,
    # squares 12 and 12.25+2.25+0.25+20.25 = 35; -14/sqrt(420) = -0.68313
    assert made[2].discrimination == pytest.approx(-14 / math.sqrt(420))
    # Question 1: marks 4 4 2 0, rest 4 6 6 4. Off 2.5 and 5: 1.5 1.5 -.5 -2.5 and -1 1 1 -1:
    # -1.5+1.5-0.5+2.5 = 2; squares 2.25+2.25+.25+6.25 = 11 and 4; 2/sqrt(44)
    assert made[0].discrimination == pytest.approx(2 / math.sqrt(44))


def test_slips_are_counted_once_a_candidate() -> None:
    assert class_figures(CLASS)[0].slips == (("forgot it", 2),)


def test_what_does_not_vary_discriminates_nothing() -> None:
    made = class_figures([paper(4, 1), paper(4, 3)])
    assert math.isnan(made[0].discrimination)
    assert math.isnan(correlation([1.0], [2.0]))


def test_variants_with_other_families_are_told_apart() -> None:
    made = class_figures([[question(1, 4, family="a")], [question(1, 0, family="b")]])
    assert [(one.name, one.facility) for one in made] == [("a", 1.0), ("b", 0.0)]


def test_every_question_stands_at_its_place_in_the_plot() -> None:
    ax = Figure().add_subplot()
    labels = draw_class(ax, class_figures(CLASS))
    assert [label.get_text() for label in labels] == ["1", "2", "3"]
    assert labels[2].get_position() == pytest.approx((0.75, -0.68313), abs=1e-5)


def test_questions_on_one_another_in_the_plot_are_both_named() -> None:
    # The second and the third question earn the same marks from everybody.
    ax = Figure().add_subplot()
    twins = [paper(a, b, b) for a, b in ((4, 0), (2, 4), (3, 1), (0, 3))]
    labels = draw_class(ax, class_figures(twins))
    assert [label.get_text() for label in labels] == ["1", "2, 3"]


def test_the_picture_is_the_same_every_time() -> None:
    figures = class_figures(CLASS)
    assert class_png(figures) == class_png(figures)
