"""Lesson 08: from gross to net."""

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE
from boomsim.lessons.lesson_06_reading_a_chart import lesson_chart
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.self_check import Check, told_apart
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.charts.chart_reading import Reading, read_chart
from boomsim.rating.charts.misreadings import misreadings
from boomsim.units import show

NET_RADIUS, NET_PARTS = 6.4, 6
"""Radius and parts of line of the guess [m], [1]."""

CHECK_RADIUS, CHECK_PARTS = 9.4, 2
"""Those of the self-check [m], [1]."""

COLUMN = 2
"""Of the chart: its third boom length [1]."""

SHEET_PARTS = (2, 4, NET_PARTS, 8, 11)
"""Parts of line on the handout; the last is the most that the rope reaches for [1]."""

TOLERANCE = 0.004
"""Of the self-check: less than the slings make [1]."""


def net_reading(units: str, *, radius: float, parts: int) -> Reading:
    """Read the lesson's chart at the boom length of its third column, with the usual deductions.

    Parameters
    ----------
    radius : float
        [m]
    parts : int
        Parts of line reeved
    """
    chart = lesson_chart(units)
    return read_chart(chart, radius=radius, length=float(chart.length[COLUMN]), parts=parts)


def _rig(reading: Reading, units: str) -> str:
    hung = ", ".join(f"{d.name} {show(d.mass, 'mass', units)}" for d in reading.deductions)
    return (
        f"The chart's cell says {show(reading.cell, 'mass', units)} gross. The rope is reeved in "
        f"{reading.parts} parts, which carry {show(reading.line_limit, 'mass', units)}. "
        f"Below the head hang besides the load: {hung}."
    )


def _net_guess(units: str) -> Guess:
    reading = net_reading(units, radius=NET_RADIUS, parts=NET_PARTS)
    return Guess(
        question=f"{_rig(reading, units)} How heavy may the load itself be?",
        parts=1,
        answers=lambda: _net_truths(reading),
        units=units,
    )


def _net_truths(reading: Reading) -> tuple[Truth]:
    wrong = {
        **_wrong(reading),
        "took what the rope carries, which is more than the chart allows": reading.line_limit,
    }
    slips = told_apart(wrong, answer=reading.net, tolerance=TOLERANCE)
    return (
        Truth(
            what="net load", answer=reading.net, quantity="mass", near=TOLERANCE,
            slips=dict(slips),
        ),
    )  # fmt: skip


def _wrong(reading: Reading) -> dict[str, float]:
    """Net loads of those who slip on the way from gross to net [kg]."""
    mine = ("deductions", "deduct", "rope", "net load")
    return {m.words: float(m.net) for m in misreadings(reading) if any(w in m.words for w in mine)}


def _net_check(units: str) -> Check:
    reading = net_reading(units, radius=CHECK_RADIUS, parts=CHECK_PARTS)
    return Check(
        question=f"{_rig(reading, units)} How heavy may the load itself be?",
        answer=reading.net,
        quantity="mass",
        slips=told_apart(
            {**_wrong(reading), "took the cell and neither rope nor deductions": reading.cell},
            answer=reading.net, tolerance=TOLERANCE,
        ),
        working=(
            f"The smaller of cell and rope is {show(reading.gross, 'mass', units)}; take off "
            f"{show(reading.deducted, 'mass', units)}."
        ),
        tolerance=TOLERANCE,
        units=units,
    )  # fmt: skip


def _net_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_lifts

    reading = net_reading(units, radius=NET_RADIUS, parts=NET_PARTS)
    setup, out = reading.chart.setup, reading.extension
    assert out is not None
    at = hung_at(setup, extension=out, load=reading.gross, radius=reading.row_radius)
    rows: list[tuple[str | Blank, ...]] = []
    for parts in SHEET_PARTS:
        one = net_reading(units, radius=NET_RADIUS, parts=parts)
        falls = sum(d.mass for d in one.deductions if "rope" in d.name)
        rows.append((
            str(parts), show(one.line_limit, "mass", units), show(one.cell, "mass", units),
            show(falls, "mass", units),
            Blank(text=show(one.gross, "mass", units)), Blank(text=show(one.net, "mass", units)),
        ))  # fmt: skip
    fixed = [d for d in reading.deductions if "rope" not in d.name]
    hung = ", ".join(f"{d.name} {show(d.mass, 'mass', units)}" for d in fixed)
    boom = show(reading.column_length, "boom_length", units)
    return Sheet(
        given=f"The invented crane yard60 with {boom} of boom, for which its rope reaches in "
        f"{SHEET_PARTS[-1]} parts at most. Deductions: {hung}, and the falls of the rope, counted "
        "from the head to the ground.",
        figure=lambda: figure_of_lifts([at], units=units, names=("all that hangs",)),
        seen="The crane from the side with its load.",
        head=(
            "parts of line", "rope carries", "cell of the chart", "falls weigh", "gross", "net load"
        ),
        rows=tuple(rows),
        task="Fill in gross (the smaller of rope and cell) and net (gross - deductions).",
        why="Why do more parts of line not always mean more load?",
        because=(
            "From some number of parts on the rope carries more than the chart's cell allows: then "
            "the boom or the balance of the crane governs. More rope then only weighs more, which "
            "comes off the net load, and makes hoisting slower. And the rope on the drum must "
            "reach: the longer the boom, the fewer parts."
        ),
    )  # fmt: skip


NET = Lesson(
    number="08",
    name="gross-to-net",
    title="From gross to net: how heavy may the load itself be?",
    able=(
        "tell gross load from net load and name the deductions",
        "find what the rope carries in so many parts of line, and whether that governs",
        "say how many parts of line a lift needs at least, and why a long boom has few",
    ),
    machine=MACHINE,
    guess=_net_guess,
    check=_net_check,
    sheet=_net_sheet,
)
