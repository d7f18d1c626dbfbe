"""Chart pages: head with how the crane is set up, the grid, the key, the caution."""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from boomsim.caution import CAUTION
from boomsim.figures.charts.cell_text import Numbers, foot_lines, numbers_of
from boomsim.figures.charts.cells_and_bold_line import grid_marks
from boomsim.figures.charts.chart_columns import foot_marks
from boomsim.figures.charts.chart_head import head_marks
from boomsim.figures.charts.chart_key import key_height, key_lines, key_marks
from boomsim.figures.charts.chart_layout import Grid, figure_size
from boomsim.figures.charts.chart_sizes_and_tints import (
    BODY,
    FULL,
    LABEL,
    LINE,
    MARGIN,
    NARROWEST,
    TALLEST,
    TINY,
    WIDEST,
    Look,
)
from boomsim.figures.charts.configuration_bars import most_ways, ways_marks
from boomsim.figures.charts.page_marks import POINT, Mark, Sheet, Words, paper_size, rule
from boomsim.figures.charts.typeface import broken
from boomsim.figures.colours_and_lines import FAINT, QUIET
from boomsim.figures.setup_words import allowance_words
from boomsim.rating.charts.load_chart import Chart, some_columns
from boomsim.rating.overload.overload_map import OverloadMap, overload_map
from boomsim.rating.overload.overload_sentences import ultimates_of
from boomsim.rating.strategies import EQUAL_LENGTH
from boomsim.units import all_in_words, in_words

ONE_WAY = "One way to extend for each boom length"
"""Title of a chart whose ways were chosen by a rule."""


def chart_sheets(
    chart: Chart,
    *,
    units: str = "metric",
    paper: str = "a4",
    look: Look = FULL,
    title: str = "",
    rule: str = "",
    first_page: int = 1,
) -> list[Sheet]:
    """Lay out a chart, on as many pages as its columns need.

    Parameters
    ----------
    paper : str
        "a4" or "letter"
    title : str
        Default: says what the columns are
    rule : str
        By which the ways to extend were chosen
    first_page : int
        Number of the first page
    """
    numbers = numbers_of(chart, units=units)
    pieces = columns_on_pages(chart, paper=paper)
    shares = f" – part {{}} of {len(pieces)}" if len(pieces) > 1 else ""
    words = title or (ONE_WAY if rule else what_columns_are(chart, numbers))
    return [
        _sheet(
            some_columns(chart, piece),
            numbers,
            units=units,
            paper=paper,
            look=look,
            title=words + shares.format(k + 1),
            rule=rule,
            page=first_page + k,
        )
        for k, piece in enumerate(pieces)
    ]


def what_columns_are(chart: Chart, numbers: Numbers) -> str:
    """Say what a chart's columns are."""
    if chart.is_best:
        return "The best way to extend, for each boom length"
    if len(chart.length) > 1 and np.ptp(chart.length) < EQUAL_LENGTH:
        length = f"{numbers.boom(float(chart.length[0]))} {numbers.length}"
        return f"{len(chart.length)} ways to extend to one boom length, {length}"
    return "Stated ways to extend"


def columns_on_pages(chart: Chart, *, paper: str) -> list[np.ndarray]:
    """Part columns evenly over pages."""
    width, _ = paper_size(paper, lying=True)
    most = int((width - 2 * (MARGIN + LABEL)) / NARROWEST)
    count = len(chart.length)
    return np.array_split(np.arange(count), -(-count // most))


def _sheet(
    chart: Chart,
    numbers: Numbers,
    *,
    units: str,
    paper: str,
    look: Look,
    title: str,
    rule: str,
    page: int,
) -> Sheet:
    raised = overload_map(chart) if look.second_line else None
    upright, lying = (
        _Page(
            chart,
            numbers,
            units=units,
            look=look,
            title=title,
            rule=rule,
            raised=raised,
            size=paper_size(paper, lying=way),
        )
        for way in (False, True)
    )
    made = lying if lying.grid.size > upright.grid.size else upright
    name = f"{chart.setup.machine.name}, {chart.setup.sector}: {title}"
    marks = all_in_words(tuple(made.marks(page)), units)
    return Sheet(width=made.width, height=made.height, marks=marks, title=in_words(name, units))


class _Page:
    """A chart fitted to a paper."""

    def __init__(
        self,
        chart: Chart,
        numbers: Numbers,
        *,
        units: str,
        look: Look,
        title: str,
        rule: str,
        raised: OverloadMap | None,
        size: tuple[float, float],
    ) -> None:
        self.width, self.height = size
        inside = self.width - 2 * MARGIN
        self.head, self.top = head_marks(
            chart, numbers, title=title, note=look.note, width=self.width
        )
        self.key = key_lines(chart, units=units, look=look, width=inside, rule=rule, raised=raised)
        assumed = "" if raised is None else ultimates_of(chart.setup)
        self.caution = [
            line
            for said in (allowance_words(chart.setup.rule, units=units), assumed, CAUTION)
            for line in broken(said, width=inside - 12.0, size=TINY)
            if line
        ]
        self.ways = most_ways(chart) if chart.is_best else 0
        self.lowest = len(foot_lines(chart, numbers))
        self.foot = self.height - MARGIN - len(self.caution) * LINE * TINY * POINT
        room = self.foot - 2.0 - key_height(self.key) - self.top
        fitted = _fitted(chart, numbers, look, top=self.top, width=self.width, room=room)
        self.grid = replace(fitted, raised=raised)

    def marks(self, page: int) -> Iterator[Mark]:
        """Draw everything."""
        yield from self.head
        yield from grid_marks(self.grid)
        end = self.grid.bottom
        if self.lowest:
            yield from _lowest(self.grid)
            end += WAYS_GAP + self.lowest * WAY * self.grid.row
        if self.ways:
            yield from _ways(self.grid, top=end + WAYS_GAP)
            end += WAYS_GAP + self.ways * BARS * self.grid.row
        yield from key_marks(self.key, top=end + KEY_GAP)
        yield from self._foot(page)

    def _foot(self, page: int) -> Iterator[Mark]:
        yield rule(MARGIN, self.foot - 0.6, self.width - 2 * MARGIN, width=0.3, colour=FAINT)
        for k, line in enumerate(self.caution):
            base = self.foot + (k + 0.95) * LINE * TINY * POINT
            yield Words(MARGIN, base, line, TINY, colour=QUIET)
        base = self.foot + 0.95 * LINE * TINY * POINT
        right = self.width - MARGIN
        yield Words(right, base, str(page), BODY, align="right", colour=QUIET)


def _fitted(
    chart: Chart, numbers: Numbers, look: Look, *, top: float, width: float, room: float
) -> Grid:
    """Make cells as large as the page allows."""
    rows, columns = chart.rated.shape
    column = min((width - 2 * (MARGIN + LABEL)) / columns, WIDEST)
    ways = most_ways(chart) if chart.is_best else 0
    sections = 0 if chart.is_best else len(chart.setup.machine.boom.sections) - 1
    # Rows of figures, the lines at the foot, the list of ways and the heads share the height.
    lowest = len(foot_lines(chart, numbers))
    shares = rows + BARS * ways + WAY * lowest + HEAD_ROWS + SECTION_ROW * sections
    gaps = KEY_GAP + WAYS_GAP * ((ways > 0) + (lowest > 0))
    row = min((room - gaps) / shares, TALLEST)
    head = (HEAD_ROWS + SECTION_ROW * sections) * row
    return Grid(
        chart=chart,
        numbers=numbers,
        look=look,
        left=MARGIN + LABEL,
        top=top + head,
        column=column,
        row=row,
        head=head,
        size=figure_size(chart, numbers, column=column, row=row),
    )


WAY, BARS, HEAD_ROWS, SECTION_ROW = 0.78, 1.0, 2.0, 0.72
"""Heights of a line at the foot, the bars of a way in the list, column heads, a section [rows]."""

WAYS_GAP, KEY_GAP = 1.6, 2.2
"""White above the list of ways and above the key [mm]."""


def _lowest(grid: Grid) -> Iterator[Mark]:
    top = grid.bottom + WAYS_GAP
    yield rule(grid.left, top - 0.4, grid.right - grid.left, width=0.4, colour=QUIET)
    yield from foot_marks(grid, top=top, row=WAY * grid.row)


def _ways(grid: Grid, *, top: float) -> Iterator[Mark]:
    yield rule(grid.left, top - 0.4, grid.right - grid.left, width=0.4, colour=QUIET)
    yield from ways_marks(grid, top=top, row=BARS * grid.row)
