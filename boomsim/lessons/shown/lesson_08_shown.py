"""What lesson 08 shows: from gross to net, what each part of line is good for, a whole pick."""

import boomsim as bs
from boomsim.face.pick_result import Picked
from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_06_reading_a_chart import lesson_chart
from boomsim.lessons.lesson_08_gross_to_net import NET_PARTS, NET_RADIUS, net_reading
from boomsim.lessons.lesson_display import Panel, Table, picture, table
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.printed_figures import length_of, lengths_of
from boomsim.lessons.shown.shown_parts import Exercise, Shown, Stack
from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.rating.charts.chart_reading import Reading, read_chart
from boomsim.rating.charts.reading_sentences import tell_reading
from boomsim.rating.pick.pick_checks import WITHIN
from boomsim.units import all_in_words, parse, show

OUT, MEASURED = "0,0,0,90", 9.4
"""Way out of the lesson [%], and a radius measured with the hook empty [m]."""

STOWED, TOO_MUCH, TOO_MANY = 600.0, 26_000.0, 12
"""A stowed jib's deduction and a load [kg], parts of line that the rope does not reach for [1]."""


def _reading(units: str) -> Reading:
    return net_reading(units, radius=NET_RADIUS, parts=NET_PARTS)


def the_reading(units: str) -> Panel:
    """Say how the chart is read."""
    return Panel(words=tuple(tell_reading(_reading(units), units=units)))


def gross_to_net(units: str) -> Table:
    """Go from gross to net step by step."""
    one = _reading(units)
    rows = [("cell of the chart", one.cell), ("rope in these parts", one.line_limit)]
    rows += [("gross: the smaller", one.gross)]
    rows += [(f"less {d.name}", d.mass) for d in one.deductions]
    rows += [("net: the load itself", one.net)]
    shown = [(words, show(float(mass), "mass", units)) for words, mass in rows]
    return table("step | mass", *shown, capacity=True)


def twice_the_parts(units: str) -> Table:
    """Double the parts of line again and again."""
    hoist = lesson_chart(units).setup.machine.hoist
    rows = []
    for parts in (1, 2, 4, 8):
        gain = tackle_advantage(parts, sheave_efficiency=hoist.sheave_efficiency)
        one = net_reading(units, radius=NET_RADIUS, parts=parts)
        rows.append((parts, f"{gain:.2f}", show(float(one.line_limit), "mass", units)))
    return table("parts of line | pulls like | rope carries", *rows, capacity=True)


def stowed_jib(units: str) -> Panel:
    """Hang a jib on the side of the boom."""
    chart = lesson_chart(units)
    one = read_chart(
        chart, radius=NET_RADIUS, length=float(chart.length[2]), parts=NET_PARTS,
        stowed_jib=STOWED,
    )  # fmt: skip
    return Panel(words=(list(tell_reading(one, units=units))[-1],))


def too_much(units: str) -> Panel:
    """Ask for more load than there is, and for more parts."""
    chart = lesson_chart(units)
    length = float(chart.length[2])
    heavy = read_chart(chart, radius=NET_RADIUS, length=length, parts=NET_PARTS, load=TOO_MUCH)
    said = list(tell_reading(heavy, units=units))[-1]
    try:
        read_chart(chart, radius=NET_RADIUS, length=length, parts=TOO_MANY)
    except ValueError as refused:
        return Panel(words=(said, lengths_of(str(refused), units)))
    raise AssertionError("The rope reached for twelve parts.")


def live(units: str) -> Slides:
    """Reeve more and fewer parts."""
    most = bs.reeving("yard60", extension=OUT, radius=NET_RADIUS).study.parts

    def view(parts_of_line: int) -> Stack:
        one = net_reading(units, radius=NET_RADIUS, parts=parts_of_line)
        found = bs.reeving("yard60", extension=OUT, radius=NET_RADIUS, parts=parts_of_line)
        by = "rope" if one.rope_governs else "chart"
        rows = (parts_of_line, show(float(one.net), "mass", units), by)
        parts = "1 part" if parts_of_line == 1 else f"{parts_of_line} parts"
        return Stack(
            all_in_words(table("parts | net load | governed by", rows, capacity=True), units),
            picture(found.plot(units), f"The rope in {parts} of line."),
        )

    return Slides(view, parts_of_line=(1, most, 1, NET_PARTS))


HEAVY = {"metric": parse("15.3 t", "mass"), "us": parse("33000 lb", "mass")}
"""Less than the cell of the chart, and with what else hangs more than it; charts have other rows in
each system of units [kg]."""


def may_i(units: str) -> Exercise:
    """Ask whether a pick is within every check that was made."""
    heavy = show(HEAVY[units], "mass", units).replace(",", "")
    measured = length_of(MEASURED, units)

    def found() -> Picked:
        return bs.pick("yard60", extension=OUT, radius=measured, load=heavy, units=units)

    reading = found().study.found.reading
    assert reading is not None
    cell = reading.cell

    def truths() -> tuple[Truth]:
        (chart,) = (one for one in found().study.checks if one.key == "chart")
        return (
            Truth(
                what="within the chart",
                answer="yes" if chart.state == WITHIN else "no",
                slips={
                    "took the load for all that hangs: block, slings and falls count too": "yes"
                },
            ),
        )

    return Exercise(
        guess=Guess(
            question=(
                "May I make this pick? The lightest section is 90 % out, all others are in; the "
                f"radius was measured as {length_of(MEASURED, units)} with the hook empty. The "
                f"row that counts says {show(float(cell), 'mass', units)} gross, and the load "
                f"weighs {show(HEAVY[units], 'mass', units)}. Is it within the chart? (yes or no)"
            ),
            parts=1,
            answers=truths,
            units=units,
        ),
        call=f'bs.pick("yard60", extension="{OUT}", radius="{measured}", load="{heavy}")',
        study=found,
        units=units,
    )


SHOWN = Shown(
    views={
        "the reading": the_reading,
        "from gross to net": gross_to_net,
        "twice the parts": twice_the_parts,
        "a stowed jib": stowed_jib,
        "more than there is": too_much,
    },
    live=live,
    exercises={"may I make this pick": may_i},
)
