"""A report's text as HTML: what is counted or listed stands on lines of its own."""

from boomsim.reports.html_of_text import html_of


def test_a_list_stays_a_list_and_wrapped_lines_stay_one_line():
    page = html_of("1. Radius. It grows by\n0.20 m.\n2. Way out.\n\nMistakes:\n- one\n- another")
    assert page == (
        "<p>1. Radius. It grows by 0.20 m.<br>2. Way out.</p>\n"
        "<p>Mistakes:<br>- one<br>- another</p>"
    )
