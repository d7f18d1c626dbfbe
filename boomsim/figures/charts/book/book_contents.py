"""The contents of a chart book: on which page each way to set the crane up begins."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from boomsim.figures.charts.book.book_lines import LARGE, text_lines
from boomsim.figures.charts.chart_head import facts_of
from boomsim.figures.charts.chart_sizes_and_tints import BODY, MARGIN, TITLE
from boomsim.figures.charts.page_marks import POINT, Jump, Mark, Place, Stroke, Words, rule
from boomsim.figures.charts.typeface import broken
from boomsim.figures.colours_and_lines import FAINT, QUIET
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A chapter of the contents: how the crane is set up, and its first page, from 0."""

    setup: Setup
    page: int


def contents_marks(size: Place, entries: Sequence[Entry]) -> Iterator[Mark]:
    """Draw a matrix: standing and counterweight down, rule and sector across.

    Parameters
    ----------
    size : (float, float)
        Width and height of the page [mm]
    """
    yield Words(MARGIN, MARGIN + 6.0, "Contents", LARGE + 4.0, bold=True)
    yield Words(MARGIN, MARGIN + 11.5, "Page on which the charts begin", BODY, colour=QUIET)
    downs = list(dict.fromkeys(_down(e.setup) for e in entries))
    acrosses = list(dict.fromkeys(_across(e.setup) for e in entries))
    left, top = MARGIN + 62.0, MARGIN + 30.0
    column = min((size[0] - MARGIN - left) / max(len(acrosses), 1), 34.0)
    row = min(9.0, (size[1] - top - 30.0) / max(len(downs), 1))
    yield from _heads(downs, acrosses, left=left, top=top, column=column, row=row)
    for entry in entries:
        r, c = downs.index(_down(entry.setup)), acrosses.index(_across(entry.setup))
        x, y = left + c * column, top + r * row
        base = y + 0.5 * row + 0.34 * TITLE * POINT
        yield Words(x + column / 2, base, str(entry.page + 1), TITLE, align="center", bold=True)
        yield Jump(x, y, column, row, entry.page)
    base = top + len(downs) * row + 10.0
    beyond = (
        "Each begins with the best way to extend for each boom length; the charts of all stated "
        "ways follow."
    )
    yield from text_lines(broken(beyond, width=size[0] - 2 * MARGIN, size=BODY), MARGIN, base, BODY)


def _down(setup: Setup) -> tuple[str, str]:
    facts = dict(facts_of(setup))
    return facts["standing on"], f"counterweight {facts['counterweight']}"


def _across(setup: Setup) -> tuple[str, str]:
    return setup.rule.name, setup.sector


def _heads(
    downs: list[tuple[str, str]],
    acrosses: list[tuple[str, str]],
    *,
    left: float,
    top: float,
    column: float,
    row: float,
) -> Iterator[Mark]:
    right = left + column * len(acrosses)
    for c, (rule_name, sector) in enumerate(acrosses):
        x, middle = left + c * column, left + (c + 0.5) * column
        if c == 0 or acrosses[c - 1][0] != rule_name:
            yield Words(
                left + c * column + 1.0, top - 8.0, f"rule: {rule_name}", BODY, colour=QUIET
            )
            yield Stroke(
                points=[(x, top - 11.5), (x, top + row * len(downs))], width=0.3, colour=FAINT
            )
        yield Words(middle, top - 2.5, sector, BODY, align="center")
    for r, (stands, weight) in enumerate(downs):
        base = top + (r + 0.5) * row + 0.34 * BODY * POINT
        fresh = r == 0 or downs[r - 1][0] != stands
        yield rule(
            MARGIN, top + r * row, right - MARGIN, width=0.6 if fresh else 0.25,
            colour=QUIET if fresh else FAINT,
        )  # fmt: skip
        if fresh:
            yield Words(MARGIN, base, stands, BODY, bold=True)
        yield Words(MARGIN + 29.0, base, weight, BODY)
    yield rule(MARGIN, top + len(downs) * row, right - MARGIN, width=0.6, colour=QUIET)
