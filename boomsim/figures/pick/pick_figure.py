"""The picture of `pick`: the checks in their order, and the crane from above."""

from dataclasses import replace

import numpy as np
from matplotlib.figure import Figure

from boomsim.figures.figure_page import new_page
from boomsim.figures.figure_panels import heading
from boomsim.figures.pick.check_bars import draw_ladder
from boomsim.figures.plan.plan_shape import plan_of
from boomsim.figures.plan.plan_view import draw_plan
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.pick.pick_sentences import tell_verdict
from boomsim.rating.pick.pick_study import Pick
from boomsim.rating.strategies import label
from boomsim.units import show

WIDTH, HEIGHT = 0.19, 0.118
LADDER, PLAN = 0.104, 0.074
"""Sizes on paper [m]."""


def figure_of_pick(found: Pick, *, units: str = "metric") -> Figure:
    """Draw the picture of `pick`."""
    inside, asked = found.found, found.asked
    load, where = show(asked.load, "mass", units), show(asked.radius, "length", units)
    length = show(float(inside.boom.layout.boom_length[0]), "boom_length", units)
    way = label(inside.boom.layout.extension[0])
    page = new_page(
        width=WIDTH,
        height=HEIGHT,
        title=tell_verdict(found, units=units),
        subtitle=f"{load} measured at {where}; {machine_words(found.setup)}: {length} of boom, "
        f"({way}) %; "
        + setup_words(found.setup, units=units, extension=inside.boom.layout.extension),
        foot=allowance_words(found.setup.rule, units=units),
    )
    top = page.room[1]
    heading(page, "The checks, in their order", left=0.0, top=top, width=LADDER)
    ax = page.axes(left=0.0, bottom=0.0, width=LADDER, height=top - 0.006)
    draw_ladder(ax, found.checks, width=LADDER, units=units)
    at = _worst(found)
    if at is None:
        return page.figure
    shape = plan_of(at)
    left = page.room[0] - PLAN
    heading(
        page,
        f"From above, {direction(shape.slew)}",
        left=left,
        top=top,
        width=PLAN,
        note="where a float presses most on the swing: forces of the floats",
    )
    draw_plan(page.axes(left=left, bottom=0.0, width=PLAN, height=top - 0.009), shape, units=units)
    return page.figure


def _worst(found: Pick) -> Response | None:
    """The lift at the slew angle of the swing at which a float presses most."""
    inside = found.found
    if inside.ground is None:
        return None
    pressure = np.nan_to_num(inside.ground.pressure, nan=np.inf)
    turn = int(np.argmax(pressure.max(axis=0)))
    there = replace(inside.setup, slew=inside.ground.loads.slew[turn : turn + 1])
    return respond(
        there,
        boom=inside.boom,
        load=np.array([[inside.gross]]),
        angle=np.array([[inside.angle]]),
    )
