"""Picture of one lift from above, with a key."""

from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from boomsim.figures.colours_and_lines import INK, QUIET, SMALL, type_of
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.plan.plan_shape import PlanShape, plan_of
from boomsim.figures.plan.plan_view import Plan, draw_plan, load_is_out, view
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.lift_response import Response
from boomsim.units import show

WIDTH, SIDE, KEY_HEIGHT = 0.19, 0.118, 0.075
"""Page width, most of it that is drawn on, height of the key [m]."""


def figure_of_plan(at: Response, *, slew: float | None = None, units: str = "metric") -> Figure:
    """Picture of one lift seen from above.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    slew : float, optional
        Default: where least holds the crane down [rad]
    """
    shape = plan_of(at, slew=slew)
    box = view(shape)
    high = min(SIDE * (box[3] - box[2]) / (box[1] - box[0]), SIDE)
    load = show(shape.load, "mass", units)
    where = show(shape.radius, "length", units)
    page = new_page(
        width=WIDTH,
        height=max(high, KEY_HEIGHT) + 0.022,
        title=f"{machine_words(at.setup)} from above: {load} at {where}, {direction(shape.slew)}",
        subtitle=setup_words(at.setup, units=units, extension=at.boom.layout.extension),
        foot=allowance_words(at.setup.rule, units=units),
    )
    ax = page.axes(left=0.0, bottom=0.0, width=SIDE, height=page.room[1])
    plan = draw_plan(ax, shape, units=units)
    _draw_key(page, plan, shape, units)
    return page.figure


def _draw_key(page: Page, plan: Plan, shape: PlanShape, units: str) -> None:
    """Say what each mark and line is, with the masses."""
    rows: list[tuple[Line2D, str]] = [
        (plan.centres[c.name], f"{c.name}, {show(c.mass, 'mass', units)}") for c in shape.centres
    ]
    if load_is_out(shape) and shape.load > 0.0:
        away = show(shape.radius, "length", units)
        rows[-1] = (rows[-1][0], f"{rows[-1][1]}, out of the picture\nat {away}")
    whole = show(sum(c.mass for c in shape.centres), "mass", units)
    rows += [
        (plan.resultant, f"where all of it bears, {whole}"),
        (plan.path, "path of that point all around,\nwith the load"),
        (plan.bare_path, "the same with an empty hook"),
        (plan.lines, "tipping lines"),
        (plan.near, "tipping line that is nearest"),
    ]
    key = page.axes(
        left=SIDE + 0.004, bottom=0.0, width=page.room[0] - SIDE - 0.004, height=page.room[1]
    )
    key.set_axis_off()
    key.set_xlim(0.0, page.room[0] - SIDE - 0.004)
    key.set_ylim(0.0, page.room[1])
    y = page.room[1] - 0.006
    for line, words in rows:
        x = [0.004] if line.get_linestyle() == "None" else [0.001, 0.007]
        sample = Line2D(x, [y] * len(x))
        sample.update_from(line)
        sample.set_transform(key.transData)
        key.add_artist(sample)
        key.text(0.010, y, words, ha="left", va="center", linespacing=1.2, **type_of(SMALL))
        if line is plan.resultant:
            cross = Line2D(x, [y], marker="+", markersize=8.5, color=INK, linestyle="none")
            cross.set_zorder(9.0)
            key.add_artist(cross)
        y -= 0.0055 + 0.0028 * words.count("\n")
    text = "forces beside the supports: what each carries"
    key.text(0.001, y - 0.002, text, ha="left", va="center", **type_of(SMALL, colour=QUIET))
