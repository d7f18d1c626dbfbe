"""What lesson 03 shows: how far the tips go down, and why B carries more far out."""

import numpy as np

from boomsim.figures.difference.difference_figure import figure_of_difference
from boomsim.figures.side.side_figure import figure_of_lift
from boomsim.lessons.lesson_03_why_not_half import AT, FAR, LOAD, half_bent, half_compared
from boomsim.lessons.lesson_display import Panel, Picture, Table, picture, table
from boomsim.lessons.lesson_sliders import Slides, measured
from boomsim.lessons.shown.shown_parts import Shown, Stack
from boomsim.rating.comparison.difference_account import account, difference
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.lift_response import Response, respond
from boomsim.units import show

FAR_TOO_MUCH = 20_000.0
"""What is hung on B to hear what the model says about itself [kg]."""

DRAWN = 10.0
"""So many times is a bend drawn [1]."""


def tips(units: str) -> Table:
    """List how far the tips go down under one load."""
    setup, found = half_compared()
    down = half_bent(setup, found).tip_deflection[:, 0]
    rows = [(way, show(float(down[k]), "length", units)) for k, way in enumerate("ABC")]
    return table("way | tip goes down by", *rows)


def steadier(units: str) -> Picture:
    """Draw why B carries more than A far out."""
    setup, found = half_compared()
    out = found.configurations.extension
    a, b = (account(setup, extension=out[i], radius=FAR) for i in (0, 1))
    assert a is not None and b is not None
    figure = figure_of_difference(
        difference(b, a, radius=FAR), setup=setup, extensions=(out[1], out[0]),
        letters=("B", "A"), units=units,
    )  # fmt: skip
    return picture(figure, "Why B carries more than A far out, section by section.")


def far_too_much(units: str) -> Panel:
    """Hang far too much on B and give what the model says about itself."""
    setup, found = half_compared()
    out = found.configurations.extension[1]
    return Panel(words=tuple(lift(setup, extension=out, load=FAR_TOO_MUCH, radius=AT).notes))


def bent_by(load: float) -> Response:
    """Bend the three ways under a load at the same radius.

    Parameters
    ----------
    load : float
        Gross [kg]
    """
    setup, found = half_compared()
    boom = found.rating.boom
    return respond(setup, boom=boom, load=np.array([[load]]), radius=np.array([[AT]]))


def live(units: str) -> Slides:
    """Make the load heavier and look at the boom that bends most."""

    def view(load: float) -> Stack:
        at = bent_by(load)
        down = [show(float(d), "length", units) for d in at.tip_deflection[:, 0]]
        hung = show(load, "mass", units) if load else "no load"
        figure = figure_of_lift(at, configuration=1, units=units, exaggeration=DRAWN)
        return Stack(
            table("load | A goes down by | B | C", (hung, *down)),
            picture(figure, f"B under {hung}, its bend drawn ten times."),
        )

    marks = {"t": (0.0, 6.0, 0.5, LOAD / 1000.0), "lb": (0, 13_000, 500, 6500)}
    return Slides(view, load=measured("load", "mass", units, **marks))


SHOWN = Shown(
    views={
        "how far the tips go down": tips,
        "why B carries more": steadier,
        "far too much": far_too_much,
    },
    live=live,
)
