"""The picture of `indicator`: what it shows and what is, condition by condition."""

from matplotlib.figure import Figure

from boomsim.figures.figure_page import new_page
from boomsim.figures.indicator.shown_and_true import draw_key, draw_shown_and_true
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.rating.indicator.indicator_sentences import tell_worst
from boomsim.rating.indicator.indicator_study import Indicated
from boomsim.rating.strategies import label
from boomsim.units import show

WIDTH, HEIGHT = 0.19, 0.118
LEFT, BOTTOM, KEY = 0.068, 0.0095, 0.0045
"""Places and sizes on paper; the conditions' names stand left of the axes [m]."""


def figure_of_indicator(found: Indicated, *, units: str = "metric") -> Figure:
    """Draw the picture of `indicator`."""
    load, radius = show(found.load, "mass", units), show(found.radius, "length", units)
    length = show(found.length, "boom_length", units)
    page = new_page(
        width=WIDTH,
        height=HEIGHT,
        title=tell_worst(found, units=units),
        subtitle=f"{load} at {radius}; told: {machine_words(found.setup)}, {length} of boom, "
        f"({label(found.extension)}) %; "
        + setup_words(found.setup, units=units, extension=found.extension),
        foot=allowance_words(found.setup.rule, units=units),
    )
    wide, top = page.room[0] - LEFT, page.room[1]
    draw_key(page.axes(left=LEFT, bottom=top - KEY, width=wide, height=KEY))
    ax = page.axes(left=LEFT, bottom=BOTTOM, width=wide, height=top - KEY - BOTTOM)
    draw_shown_and_true(ax, found, units=units)
    return page.figure
