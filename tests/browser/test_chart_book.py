"""The page of a book in a real browser: it asks first, draws the bold line and fits a phone."""

from functools import lru_cache

import numpy as np
import pytest

from boomsim.figures.charts.book.book_html import book_html
from boomsim.figures.charts.cell_text import numbers_of
from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.bold_line import bold_edges
from boomsim.rating.charts.chart_book import every_setup, make_book
from boomsim.rating.charts.chart_questions import questions
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.strategies import label

pytestmark = pytest.mark.browser


@lru_cache
def book():
    return make_book(every_setup(load_machine("truck18"), rules=["share"], supports=["full"]))


@pytest.fixture
def page(browser, tmp_path):
    file = tmp_path / "book.html"
    file.write_text(book_html(book()), encoding="utf-8")
    tab = browser.new_page(viewport={"width": 1360, "height": 900})
    faults = []
    tab.on("pageerror", lambda error: faults.append(str(error)))
    tab.on("request", lambda request: faults.append(request.url) if tab.url != "about:blank"
           and request.url != tab.url else None)  # fmt: skip
    tab.goto(file.as_uri())
    tab.wait_for_selector("#chart td.on")
    yield tab
    tab.close()
    assert not faults


def question(number):
    return list(questions(book(), count=number))[-1]


def go_to(page, number):
    page.fill("#number", str(number))
    page.dispatch_event("#number", "change")


def cell(one, way):
    """Figure and what sets it, as the page writes them."""
    chart = book().chapters[one.chapter].stated
    row = chart.radii.tolist().index(book().radii[one.row])
    numbers = numbers_of(book().chapters[0].best, units="metric")
    return numbers.capacity(int(chart.steps[row, way])), what_sets(chart.limit(row, way))


@pytest.mark.parametrize("number", [1, 7, 23])
def test_a_question_states_its_set_up_its_radius_and_its_ways_and_no_figure(page, number):
    go_to(page, number)
    one = question(number)
    said = page.inner_text("#question")
    assert book().chapters[one.chapter].setup.sector in said
    assert f"radius of {book().radii[one.row]:g} m" in said
    shown = page.locator("#ways label").all_inner_texts()
    assert len(shown) == len(one.ways)
    for text, way in zip(shown, one.ways, strict=True):
        assert f"{label(book().configurations.extension[way])} %" in text
        assert cell(one, way)[0] not in text
    assert not page.is_visible("#answer")
    assert page.is_disabled("#look")


@pytest.mark.parametrize("number", [2, 7, 23])
@pytest.mark.parametrize("right", [True, False])
def test_after_a_choice_the_figures_and_what_sets_them_are_shown(page, number, right):
    go_to(page, number)
    one = question(number)
    pick = one.right if right else (one.right + 1) % len(one.ways)
    page.locator("#ways input").nth(pick).check()
    page.click("#look")
    verdict = page.inner_text("#verdict")
    best = one.ways[one.right]
    assert verdict.startswith("Right:" if right else "No:")
    assert f"{label(book().configurations.extension[best])} % lifts most" in verdict
    assert cell(one, best)[0] in verdict
    rows = page.eval_on_selector_all(
        "#figures tbody tr",
        "rows => rows.map(row => [...row.cells].map(cell => cell.textContent))",
    )
    assert [(figure, why) for _, figure, why in rows] == [cell(one, way) for way in one.ways]
    assert f"{int(right)} of 1 right so far" in page.inner_text("#score")


def test_an_answer_that_was_shown_cannot_be_changed(page):
    go_to(page, 2)
    page.locator("#ways input").first.check()
    page.click("#look")
    assert page.locator("#ways input:disabled").count() == page.locator("#ways input").count()
    assert page.is_disabled("#look")


def test_the_chart_then_shows_the_set_up_and_the_radius_of_the_question(page):
    number, one = next(
        (n, q) for n, q in enumerate(questions(book(), count=40), start=1) if q.chapter != 0
    )
    go_to(page, number)
    assert page.locator("#chart tr.asked").count() == 0
    page.locator("#ways input").first.check()
    page.click("#look")
    assert page.input_value("#sector") == book().chapters[one.chapter].setup.sector
    marked = page.locator("#chart tr.asked")
    assert marked.count() == 1
    assert marked.locator("th").inner_text() == f"{book().radii[one.row]:g}"
    heads = page.locator("#chart thead th").count() - 1
    group = next(c for c in book().chapters[0].best.choices if one.ways[0] in c)
    assert heads == len(group)


def test_a_number_is_the_same_question_for_everyone_and_stands_in_the_address(page):
    go_to(page, 7)
    first = page.inner_text("#question"), page.locator("#ways label").all_inner_texts()
    go_to(page, 8)
    assert page.inner_text("#question") != first[0]
    page.evaluate("location.hash = '#question=7'")
    page.wait_for_function("document.getElementById('number').value === '7'")
    assert (page.inner_text("#question"), page.locator("#ways label").all_inner_texts()) == first


def test_another_question_is_the_next_and_after_the_last_comes_the_first(page):
    go_to(page, 59)
    page.click("#next")
    assert page.input_value("#number") == "60"
    page.click("#next")
    assert page.input_value("#number") == "1"


@pytest.mark.parametrize(("typed", "number"), [("", "1"), ("-3", "1"), ("400", "60")])
def test_a_number_that_is_none_leads_to_the_nearest_question(page, typed, number):
    go_to(page, typed)
    assert page.input_value("#number") == number
    assert page.locator("#ways label").count() >= 2


def test_no_search_for_a_way_that_suffices_is_left(page):
    # A page that lists all ways which carry a load at a radius would be a tool for planning.
    assert page.locator("input:not([type=radio]):not([type=checkbox])").count() == 1
    assert page.locator("#figures tr").count() == 0
    said = page.inner_text("main").lower()
    for word in ("net load", "deduction", "reach a radius with"):
        assert word not in said


def test_another_sector_is_another_chart(page):
    before = page.inner_text("#chart")
    page.select_option("#sector", label="over the rear")
    assert page.inner_text("#chart") != before


def test_the_figures_and_the_bold_line_are_those_of_the_chart(page):
    chart = book().chapters[0].best
    numbers = numbers_of(chart, units="metric")
    shown = page.eval_on_selector_all(
        "#chart tbody tr",
        "rows => rows.map(row => [...row.cells].slice(1).map(cell => "
        "[...cell.childNodes].filter(n => n.nodeType === 3).map(n => n.textContent).join('')))",
    )
    wanted = [[numbers.capacity(int(s)) for s in row] for row in chart.steps]
    assert shown == wanted
    heavy = (
        page.locator("#chart td.lineright").count() + page.locator("#chart td.linebelow").count()
    )
    assert heavy == len(bold_edges(chart))


def test_the_class_switches_take_line_and_shading_away(page):
    assert page.get_attribute("#chart", "class").split() == ["tint", "line"]
    page.uncheck("#line")
    page.uncheck("#tint")
    page.uncheck("#codes")
    assert page.get_attribute("#chart", "class").split() == []
    assert page.locator("#chart td small").count() == 0


def test_arrow_keys_move_through_the_cells_and_each_is_told(page):
    page.locator("#chart td.on").first.click()
    first = page.inner_text("#cell")
    page.keyboard.press("ArrowDown")
    second = page.inner_text("#cell")
    assert first != second
    assert "sets this figure" in second


def test_a_phone_scrolls_the_tables_and_not_the_page(page):
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    tall = page.eval_on_selector_all(
        "select, input:not([type=checkbox]):not([type=radio]), label.way-choice",
        "all => all.map(e => e.getBoundingClientRect().height)",
    )
    assert np.min(tall) >= 28.0
