"""Picture of one lift past its rated load."""

from math import isfinite

from matplotlib.figure import Figure

from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.figure_panels import heading
from boomsim.figures.overload.event_bars import draw_event_key, draw_events
from boomsim.figures.overload.operator_feel import draw_feel
from boomsim.figures.overload.righting_moment import draw_fall
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.machine.part_names import foot_name
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.overload.overload_study import Overload
from boomsim.rating.strategies import label
from boomsim.units import show, show_rated

WIDTH, LOWER = 0.19, 0.068
"""Page width, height of the lower two panels [m]."""

WORDS, NUMBERS, ROW = 0.068, 0.036, 0.0050
"""Room for what happens and for its load, distance of the rows [m]."""

HALF = 0.083
"""Width of the left lower panel [m]."""

JUST = 0.95
"""Nearer to the tipping load than this the floats do tell [1]."""


def figure_of_overload(result: Overload, *, units: str = "metric") -> Figure:
    """Draw one lift past its rated load."""
    rows = max(len(result.events), 4)
    kept = "nobody luffs" if result.hold == "angle" else "radius kept"
    events = (rows + 0.5) * ROW
    page = new_page(
        width=WIDTH,
        height=0.053 + events + LOWER,
        title=f"{machine_words(result.setup)}: {_title(result)}",
        subtitle=f"extension {label(result.extension)} %; rated "
        f"{show_rated(result.rated, units)} at {show(result.radius, 'length', units)}; "
        f"{kept}; {setup_words(result.setup, units=units, extension=result.extension)}",
        foot=allowance_words(result.setup.rule, units=units),
    )
    top = page.room[1]
    heading(page, "Order of events as the load is raised", left=0.0, top=top, width=0.17)
    bottom = top - 0.0075 - events
    width = page.room[0] - WORDS - NUMBERS
    draw_events(
        page.axes(left=WORDS, bottom=bottom, width=width, height=events), result, units=units
    )
    key = page.axes(left=0.0, bottom=bottom - 0.0140, width=page.room[0], height=0.005)
    draw_event_key(key, result, width=page.room[0])
    _lower(page, result, units, top=bottom - 0.0175)
    return page.figure


def _title(result: Overload) -> str:
    first = result.first
    if first is None:
        return "nothing breaks and nothing tips"
    what = "tips" if result.warns else "breaks"
    said = f"it {what} first, at {first.multiple:.2f} times the rated load"
    if result.warns:
        return said
    if result.ratio > JUST:
        return f"{said}, just before it tips"
    light = min(one.multiple for one in result.lightens)
    foot = foot_name(result.setup.support)
    return said if isfinite(light) else f"{said}; no {foot} goes light before"


def _lower(page: Page, result: Overload, units: str, *, top: float) -> None:
    feel = result.feel
    heading(
        page,
        f"What could be felt, {direction(feel.slew)}",
        left=0.0,
        top=top,
        width=HALF,
    )
    each, gap = 0.0130, 0.0062
    floor = 0.0085
    axes = [
        page.axes(left=0.010, bottom=floor + k * (each + gap), width=HALF - 0.014, height=each)
        for k in (2, 1, 0)
    ]
    draw_feel(axes, result, units=units)
    left = HALF + 0.008
    width = page.room[0] - left
    if result.fall is None:
        heading(
            page,
            "No load tips it here",
            left=left,
            top=top,
            width=width,
            note="the load hangs inside the tipping lines and holds the crane down",
        )
        return
    heading(
        page,
        "Once it leans: does it come back?",
        left=left,
        top=top,
        width=width,
        note="ring: from a larger lean it does not; load hangs clear",
    )
    ax = page.axes(
        left=left + 0.011, bottom=floor, width=width - 0.032, height=top - 0.0115 - floor
    )
    draw_fall(ax, result.fall, units=units)
