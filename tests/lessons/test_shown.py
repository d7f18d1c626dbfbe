"""What cells show: tables, pictures, panels and sliders."""

import pytest
from matplotlib.figure import Figure

from boomsim.caution import CAUTION
from boomsim.lessons.lesson_display import MARKS, Panel, percent, picture, table, tell
from boomsim.lessons.lesson_sliders import Slides


def test_a_table_is_aligned_text_and_escaped_html():
    made = table("what | mass", ("<hook>", "450 kg"), ("slings", "9 kg"))
    assert repr(made).splitlines() == ["what      mass", "<hook>  450 kg", "slings    9 kg"]
    assert "&lt;hook&gt;" in made._repr_html_()


def test_prose_stands_to_the_left():
    made = table("a | b", ("x", "four words stand here"), ("y", "one"))
    assert repr(made).splitlines()[2] == "y  one"


def test_a_table_with_a_capacity_says_the_caution():
    assert CAUTION in repr(table("a | b", (1, 2), capacity=True))
    assert CAUTION not in repr(table("a | b", (1, 2)))


def test_a_row_that_does_not_fit_is_refused():
    with pytest.raises(ValueError, match="3 fields and the table has 2 headings"):
        table("a | b", (1, 2, 3))


def test_a_picture_has_its_words_for_those_who_cannot_see_it():
    made = picture(Figure(figsize=(1, 1)), 'A "crane" & its load')
    assert "crane" in repr(made)
    assert 'alt="A &quot;crane&quot; &amp; its load"' in made._repr_html_()
    assert "data:image/svg+xml;base64," in made._repr_html_()


def test_every_kind_of_panel_says_in_words_what_its_colour_says():
    heads = [head for head, _ in MARKS.values() if head]
    assert Panel(words=("text",), mark="right")._repr_html_().count("Right") == 1
    assert len(heads) == len(MARKS) - 1


def test_percents_are_whole_and_never_minus_nought():
    assert [percent(x) for x in (0.284, -0.001, 1.0, 0.995)] == ["28 %", "0 %", "100 %", "100 %"]


def test_a_slider_moves_what_is_shown():
    slides = Slides(lambda angle: f"<{angle}>", angle=(0, 80, 10, 20))
    assert slides.shown == "&lt;20&gt;"
    slides.move(angle=30)
    assert (slides.shown, slides.values) == ("&lt;30&gt;", {"angle": 30})


def test_an_error_behind_a_slider_is_shown_and_kept():
    slides = Slides(lambda angle: 1 / (angle - 40), angle=(0, 80, 10, 20))
    slides.move(angle=40)
    assert "ZeroDivisionError" in slides.troubles[0]
    assert "ZeroDivisionError" in slides.box.children[-2].value
    slides.move(angle=50)
    assert slides.box.children[-2].value == ""
    assert len(slides.troubles) == 1


def test_a_refusal_behind_a_slider_teaches_and_is_no_trouble():
    def view(radius):
        raise ValueError(f"The boom does not reach {radius} m.")

    slides = Slides(view, radius=(1, 9, 1))
    assert "does not reach 1 m" in slides.box.children[-2].value
    assert slides.troubles == ()


def test_trying_all_moves_every_slider_from_end_to_end_and_back():
    seen = []
    slides = Slides(lambda a, b: seen.append((a, b)), a=(0, 8, 1, 3), b=(0.0, 1.0, 0.1))
    slides.try_all()
    assert {0, 8} <= {a for a, _ in seen}
    assert {0.0, 1.0} <= {b for _, b in seen}
    assert slides.values == {"a": 3, "b": 0.0}


def test_sliders_have_a_name_and_a_class_of_their_own():
    slides = Slides(lambda slew_in_degrees: "", slew_in_degrees=(-180, 180, 15))
    slider = slides.box.children[0]
    assert slider.description == "slew in degrees"
    assert "lesson-slider-slew-in-degrees" in slider._dom_classes


def test_long_sentences_are_broken_between_words_and_keep_their_indent(capsys):
    tell("two words\n  and some more words", width=12)
    assert capsys.readouterr().out == "two words\n  and some\n  more words\n"
