"""The boom at both ends of a way: two side views in a column, to one scale."""

from collections.abc import Sequence

from boomsim.figures.figure_page import Page
from boomsim.figures.figure_panels import heading
from boomsim.figures.side.boom_shape import BoomShape
from boomsim.figures.side.side_view import draw_sideview, frame, limits
from boomsim.rating.setup import Setup

SIDE, BETWEEN = 0.052, 0.006
"""Width of the column at the right of a page; between its two pictures [m]."""


def draw_start_and_end(
    page: Page, shapes: list[BoomShape], told: Sequence[tuple[str, str]], *, setup: Setup
) -> None:
    """Draw them.

    Parameters
    ----------
    told : sequence of (str, str)
        Heading and note of each
    """
    box = limits(shapes)
    top, left = page.room[1], page.room[0] - SIDE
    high = (top - BETWEEN) / 2.0
    for row, (shape, (what, note)) in enumerate(zip(shapes, told, strict=True)):
        edge = top - row * (high + BETWEEN)
        heading(page, what, left=left, top=edge, width=SIDE, note=note)
        ax = page.axes(left=left, bottom=edge - high, width=SIDE, height=high - 0.0085)
        artists = draw_sideview(
            ax, shape, counterweight=setup.counterweight, support=setup.support, detail=False
        )
        frame(artists, box)
