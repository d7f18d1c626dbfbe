"""A report's text as HTML: what is counted or listed stands on lines of its own."""

import re

import pytest

from boomsim.lessons.lesson_display import table as lesson_table
from boomsim.reports.html_of_text import html_of
from boomsim.reports.text_tables import table


def test_a_list_stays_a_list_and_wrapped_lines_stay_one_line():
    page = html_of("1. Radius. It grows by\n0.20 m.\n2. Way out.\n\nMistakes:\n- one\n- another")
    assert page == (
        "<p>1. Radius. It grows by 0.20\u00a0m.<br>2. Way out.</p>\n"
        "<p>Mistakes:<br>- one<br>- another</p>"
    )


FIELDS = ("3.50 m", "-49.5 kN m", "12,300 lb", "19.7 ft", "1.0°", "22.53 t*", "2.30 m to 13.4 m d")
"""As a column holds them, and the first column above all."""


@pytest.mark.parametrize("field", FIELDS)
@pytest.mark.parametrize("laid_out", ["a report's", "a lesson's"])
def test_in_a_table_no_line_may_begin_with_a_unit(field, laid_out):
    """A browser breaks a line at any plain blank of a cell that does not forbid it."""
    words = f"side pull and radius longer by {field}"
    if laid_out == "a report's":
        page = html_of(table(["radius", "way"], [[field, field], [words, "A"]]))
    else:
        page = lesson_table("radius | way", (field, field), (words, "A"))._repr_html_()
    cells = re.findall(r'<t[dh][^>]*style="([^"]*)"[^>]*>([^<]*)', page)
    holding = [(style, text) for style, text in cells if field[:3] in text]
    assert len(holding) == 3
    for style, text in holding:
        if "white-space:nowrap" not in style:
            assert not re.search(r"\d (?=(m|kN|lb|ft|t)\b)", text), text
