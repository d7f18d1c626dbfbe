"""The picture of `dynamics`: each way to move a load, as the load it counts as."""

from matplotlib.figure import Figure

from boomsim.figures.dynamics.equivalent_bars import draw_equivalents
from boomsim.figures.figure_page import new_page
from boomsim.figures.setup_words import allowance_words, boom_words
from boomsim.rating.dynamics.dynamics_sentences import tell_sag, tell_worst
from boomsim.rating.dynamics.dynamics_study import Dynamics

WIDTH, HEIGHT = 0.19, 0.112
LEFT, BOTTOM = 0.062, 0.0095
"""Places and sizes on paper; the names of the bars stand left of them [m]."""


def figure_of_dynamics(found: Dynamics, *, units: str = "metric") -> Figure:
    """Draw the picture of `dynamics`."""
    boom = boom_words(found.setup, extension=found.extension, length=found.length, units=units)
    page = new_page(
        width=WIDTH,
        height=HEIGHT,
        title=tell_worst(found, units=units),
        subtitle=f"{boom}. {tell_sag(found, units=units)}",
        foot=allowance_words(found.setup.rule, units=units),
    )
    ax = page.axes(
        left=LEFT, bottom=BOTTOM, width=page.room[0] - LEFT, height=page.room[1] - BOTTOM
    )
    draw_equivalents(ax, found, units=units)
    return page.figure
