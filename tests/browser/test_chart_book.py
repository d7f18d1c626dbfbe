"""The page of a book in a real browser: it searches, draws the bold line and fits a phone."""

from functools import lru_cache

import numpy as np
import pytest

from boomsim.figures.charts.book.html import book_html
from boomsim.figures.charts.text import numbers_of
from boomsim.machine.files import load_machine
from boomsim.rating.charts.boldline import bold_edges
from boomsim.rating.charts.book import every_setup, make_book, which_carry

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


def ask(page, **values):
    for name, value in values.items():
        page.fill(f"#{name}", str(value))


def test_the_search_answers_as_the_book_does(page):
    ask(page, radius=9.3, load=1.8, taken=0.2)
    wanted = [f for f in which_carry(book(), radius=9.3, gross=2000.0) if f.chapter == 0]
    assert f"{len(wanted)} of {len(book().configurations.length)} ways" in page.inner_text(
        "#answer"
    )
    shown = page.eval_on_selector_all(
        "#found tbody tr", "rows => rows.map(row => Number(row.cells[2].textContent))"
    )
    assert shown == [f.capacity / 1000.0 for f in wanted][: len(shown)]


def test_another_sector_is_another_chart(page):
    ask(page, radius=9, load=1, taken=0)
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


@pytest.mark.parametrize("value", ["", "far", "-3"])
def test_what_is_no_radius_is_refused_beside_its_field(page, value):
    ask(page, radius=value)
    assert page.get_attribute("#radius", "aria-invalid") == "true"
    assert "Give a radius" in page.inner_text("#answer")


def test_beyond_the_book_it_says_so(page):
    ask(page, radius=400)
    assert "allows nothing beyond" in page.inner_text("#answer")


def test_a_phone_scrolls_the_tables_and_not_the_page(page):
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    tall = page.eval_on_selector_all(
        "select, input:not([type=checkbox])",
        "all => all.map(e => e.getBoundingClientRect().height)",
    )
    assert np.min(tall) >= 28.0
