"""Picture of one lift: the crane to scale, with its dimensions."""

from matplotlib.figure import Figure

from boomsim.figures.figure_page import MARGIN, new_page
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.side.boom_shape import bent_boom
from boomsim.figures.side.dimension_lines import draw_dimensions
from boomsim.figures.side.side_view import draw_sideview, frame, limits
from boomsim.rating.lift_response import Response
from boomsim.rating.strategies import label

WIDTH, HIGHEST = 0.19, 0.19
"""Of the picture [m]."""


def figure_of_lift(
    response: Response,
    *,
    configuration: int = 0,
    cell: int = 0,
    units: str = "metric",
    exaggeration: float = 1.0,
) -> Figure:
    """Draw one lift.

    Parameters
    ----------
    configuration, cell : int
        Which of its states
    exaggeration : float
        Multiplies the deflection [1]
    """
    setup = response.setup
    shape = bent_boom(response, configuration=configuration, cell=cell, exaggeration=exaggeration)
    out = response.boom.layout.extension[configuration]
    box = limits([shape], dimensions=True)
    wide = (WIDTH - 2 * MARGIN) / (box[1] - box[0]) * (box[3] - box[2])
    page = new_page(
        width=WIDTH,
        height=min(max(wide + 0.022, 0.08), HIGHEST),
        title=f"{machine_words(setup)} with {label(out)} % out",
        subtitle=setup_words(setup, units=units, extension=out),
        foot=allowance_words(setup.rule, units=units),
    )
    ax = page.axes(left=0.0, bottom=0.0, width=page.room[0], height=page.room[1])
    artists = draw_sideview(ax, shape, counterweight=setup.counterweight, support=setup.support)
    draw_dimensions(
        ax,
        shape,
        radius=float(response.radius[configuration, cell]),
        angle=float(response.state.angle[configuration, cell]),
        bend=float(response.tip_deflection[configuration, cell]),
        units=units,
    )
    frame(artists, box)
    return page.figure
