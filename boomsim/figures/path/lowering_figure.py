"""The picture of `lower`: what is rated over the radius, the load's line, the crane twice."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from boomsim.figures.capacity_lines import Curve, draw_curve
from boomsim.figures.colours_and_lines import identity
from boomsim.figures.comparison.comparison_marks import draw_key
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.path.load_line import draw_way
from boomsim.figures.path.start_and_end import draw_start_and_end
from boomsim.figures.setup_words import allowance_words, boom_words
from boomsim.figures.side.boom_shape import bent_boom
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.path.lowering_sentences import limit_words, place_words, tell_lowering
from boomsim.rating.path.lowering_study import Lowering
from boomsim.rating.path.path_marks import Place

WIDTH, HEIGHT = 0.19, 0.135
LEFT, BOTTOM, CHART_WIDTH = 0.0135, 0.0105, 0.112
"""Places and sizes on paper [m]."""

ROOM = 1.35
"""The axis reaches so far past the most, for the key and the words [1]."""


def figure_of_lowering(found: Lowering, *, units: str = "metric") -> Figure:
    """Draw the picture of `lower`."""
    page = new_page(
        width=WIDTH,
        height=HEIGHT,
        title=tell_lowering(found, units=units),
        subtitle=boom_words(
            found.setup, extension=found.extension, length=found.length, units=units
        ),
        foot=allowance_words(found.setup.rule, units=units),
    )
    ax = page.axes(left=LEFT, bottom=BOTTOM, width=CHART_WIDTH, height=page.room[1] - BOTTOM)
    draw_lowering(ax, found, units=units)
    draw_key(ax, crossovers=False)
    _two_views(page, found, units)
    return page.figure


def draw_lowering(ax: Axes, found: Lowering, *, units: str = "metric") -> Curve:
    """Draw rated capacity over radius, and the load on its way out.

    Returns
    -------
    Curve
        Of the rated capacity
    """
    rating = found.rating
    x = display_of("length", units, rating.radius[0])
    y = display_of("mass", units, rating.capacity[0])
    quiet_axes(ax, x=f"radius with the load on, {x.symbol}", y=f"gross load, {y.symbol}")
    most = max(float(np.nanmax(rating.capacity, initial=0.0)), found.load)
    ax.set_xlim(0.0, 1.02 * float(rating.radius.max()) / x.factor)
    ax.set_ylim(0.0, ROOM * most / y.factor)
    curve = draw_curve(ax, rating, 0, look=identity(0), x=x.factor, y=y.factor)
    draw_way(
        ax, load=found.load, start=found.start.radius, end=found.end.radius, marks=found.marks,
        direction=-1.0, x=x, y=y, units=units,
    )  # fmt: skip
    return curve


def _two_views(page: Page, found: Lowering, units: str) -> None:
    """Draw the crane where the way begins, and where it must end."""
    ends = found.farthest in (None, found.end)
    last = found.farthest or found.end
    words = "where the way ends" if ends else "the farthest it is rated"
    shapes = [bent_boom(_at(found, place)) for place in (found.start, last)]
    notes = [
        place_words(found.start, units=units),
        (place_words if ends else limit_words)(last, units=units),
    ]
    told = list(zip(("where it begins", words), notes, strict=True))
    draw_start_and_end(page, shapes, told, setup=found.setup)


def _at(found: Lowering, place: Place) -> Response:
    return respond(
        found.setup,
        boom=found.rating.boom,
        load=np.array([[found.load]]),
        angle=np.array([[place.angle]]),
    )
