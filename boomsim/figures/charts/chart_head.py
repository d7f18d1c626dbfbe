"""The head of a chart page: which machine, how it is set up, and where its boom may point."""

from collections.abc import Iterator
from dataclasses import dataclass

from boomsim.figures.charts.cell_text import Numbers
from boomsim.figures.charts.chart_head_plan import plan_marks
from boomsim.figures.charts.chart_sizes_and_tints import BODY, MARGIN, SMALL, TITLE
from boomsim.figures.charts.page_marks import POINT, Mark, Words, rule
from boomsim.figures.charts.typeface import broken, width_of
from boomsim.figures.colours_and_lines import LOAD, QUIET
from boomsim.figures.setup_words import disturbance_words, rule_words
from boomsim.machine.model import CALM
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.parts_reeved import parts_words
from boomsim.rating.setup import Setup

NAME = 17.0
"""Size of the machine's name [pt]."""

PLAN, PLAN_HEIGHT = 22.0, 12.6
"""Width and height of the plan of crane and sector [mm]."""

RULE_WIDTH = 50.0
"""Widest of the facts: the rule [mm]."""

BETWEEN = 4.5
"""Facts [mm]."""


def head_marks(
    chart: Chart, numbers: Numbers, *, title: str, note: str, width: float
) -> tuple[list[Mark], float]:
    """Draw the head of a page.

    Parameters
    ----------
    width : float
        Of the page [mm]

    Returns
    -------
    marks : list of Mark
    bottom : float
        Where the head ends [mm]
    """
    setup, top = chart.setup, MARGIN
    after = MARGIN + width_of(setup.machine.name, size=NAME, bold=True) + 2.2
    invented = "an invented crane" + (f" – {note}" if note else "")
    gross = f"Rated gross load in {numbers.mass}, rounded down to {numbers.step}"
    marks: list[Mark] = [
        Words(MARGIN, top + 4.4, setup.machine.name, NAME, bold=True),
        Words(after, top + 4.4, invented, BODY + 1.0, colour=LOAD if note else QUIET),
        Words(MARGIN, top + 9.2, title, TITLE, bold=True),
        Words(MARGIN, top + 13.0, gross, BODY, colour=QUIET),
        *plan_marks(setup, left=width - MARGIN - PLAN, top=top, width=PLAN, height=PLAN_HEIGHT),
    ]
    facts = _columns(setup)
    wide = sum(one.width for one in facts) + BETWEEN * (len(facts) - 1)
    named = MARGIN + max(
        width_of(title, size=TITLE, bold=True),
        after - MARGIN + width_of(invented, size=BODY + 1.0),
        width_of(gross, size=BODY),
    )
    left = width - MARGIN - PLAN - BETWEEN - wide
    if left > named + BETWEEN:
        return [*marks, *_facts(facts, left=left, top=top)], top + 14.5
    return [*marks, *_facts(facts, left=MARGIN, top=top + 16.5)], top + 28.0


def facts_of(setup: Setup) -> list[tuple[str, str]]:
    """List what a chart holds for, as (name, value)."""
    support = setup.support
    stands = f"outriggers {support.name}" if support.kind == "outriggers" else support.name
    facts = [
        ("sector", setup.sector),
        ("counterweight", setup.counterweight.name),
        ("standing on", stands),
        ("parts of line", parts_words(setup).partition(" part")[0]),
        (f"rule: {setup.rule.name}", rule_words(setup.rule, support_kind=support.kind)),
    ]
    if setup.disturbances != CALM:
        facts.append(("disturbed", disturbance_words(setup.disturbances).partition(": ")[2]))
    return facts


@dataclass(frozen=True, slots=True, kw_only=True)
class _Column:
    """A fact with its value broken into lines, and its width [mm]."""

    name: str
    lines: list[str]
    width: float


def _columns(setup: Setup) -> list[_Column]:
    found = []
    for name, value in facts_of(setup):
        lines = broken(value, width=RULE_WIDTH, size=BODY, bold=True)
        wide = max(width_of(line, size=BODY, bold=True) for line in lines)
        found.append(_Column(name=name, lines=lines, width=max(wide, width_of(name, size=SMALL))))
    return found


def _facts(columns: list[_Column], *, left: float, top: float) -> Iterator[Mark]:
    """Set facts side by side."""
    x = left
    for one in columns:
        yield rule(x, top + 0.4, one.width, width=0.5, colour=QUIET)
        yield Words(x, top + 3.3, one.name, SMALL, colour=QUIET)
        for k, line in enumerate(one.lines):
            yield Words(x, top + 6.9 + 1.3 * k * BODY * POINT, line, BODY, bold=True)
        x += one.width + BETWEEN
