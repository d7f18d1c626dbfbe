"""Drawings for handouts: no title, no caution (the sheet has both), and room to draw in."""

from matplotlib.figure import Figure
from matplotlib.ticker import AutoMinorLocator, MaxNLocator

from boomsim.figures.colours_and_lines import BODY, FAINT, SMALL, type_of
from boomsim.figures.handout.bare_drawing import TALLEST, WIDTH, axes_on, bare
from boomsim.figures.handout.sections_apart import draw_rows
from boomsim.figures.plan.plan_shape import plan_of
from boomsim.figures.plan.plan_view import draw_plan
from boomsim.figures.side.boom_shape import bent_boom, straight_boom
from boomsim.figures.side.dimension_lines import draw_dimensions
from boomsim.figures.side.side_view import GLYPH_ANGLE, draw_sideview, frame, limits
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response
from boomsim.rating.strategies import label, letter
from boomsim.units import show


def figure_of_rows(machine: Machine, *, extension: Array, units: str) -> Figure:
    """Draw sections apart, to be read from the grid.

    Parameters
    ----------
    extension : array_like, shape (moving sections,)
        [1]
    """
    high = 0.009 * len(machine.boom.sections)
    figure = bare(high + 0.0105)
    ax = axes_on(figure, left=0.021, bottom=0.0095, width=WIDTH - 0.023, height=high)
    draw_rows(ax, machine.boom, extension=extension, units=units, numbers=False)
    ax.xaxis.set_minor_locator(AutoMinorLocator(5))
    ax.grid(visible=True, axis="x", which="minor", color=FAINT, linewidth=0.25)
    return figure


def figure_of_ways(
    machine: Machine, *, extension: Array, radius: float, capacity: float, units: str
) -> Figure:
    """Draw configurations from the side, and empty axes for their capacities.

    Parameters
    ----------
    extension : ndarray, shape (configurations, moving sections)
        [1]
    radius, capacity : float
        Where the empty axes end [m], [kg]
    """
    figure = bare(0.068)
    shapes = [straight_boom(machine, extension=e, angle=GLYPH_ANGLE) for e in extension]
    box = limits(shapes)
    each = 0.066 / len(shapes)
    for row, shape in enumerate(shapes):
        low = 0.066 - (row + 1) * each
        ax = axes_on(figure, left=0.002, bottom=low, width=0.072, height=0.76 * each)
        ax.set_anchor("SW")
        frame(draw_sideview(ax, shape, detail=False, thick=1.6), box)
        words = f"{letter(row)}   {label(extension[row])} %"
        ax.set_title(words, loc="left", pad=1.5, **type_of(BODY, bold=True))
    ax = axes_on(figure, left=0.091, bottom=0.0095, width=WIDTH - 0.093, height=0.056)
    x, y = display_of("length", units, [radius]), display_of("mass", units, [capacity])
    quiet_axes(ax, x=f"radius, {x.symbol}", y=f"rated gross load, {y.symbol}")
    ax.set_xlim(0.0, radius / x.factor)
    ax.set_ylim(0.0, capacity / y.factor)
    for axis in (ax.xaxis, ax.yaxis):
        axis.set_major_locator(MaxNLocator(nbins=9, steps=[1, 2, 5, 10]))
        axis.set_minor_locator(AutoMinorLocator(2))
    ax.grid(visible=True, which="minor", color=FAINT, linewidth=0.25)
    return figure


def figure_of_columns(machine: Machine, *, extension: Array, names: tuple[str, ...]) -> Figure:
    """Draw booms from the side in a row, each under its name.

    Parameters
    ----------
    extension : ndarray, shape (configurations, moving sections)
        [1]
    """
    shapes = [straight_boom(machine, extension=e, angle=GLYPH_ANGLE) for e in extension]
    box = limits(shapes)
    wide = WIDTH / len(shapes)
    high = 0.95 * wide * (box[3] - box[2]) / (box[1] - box[0])
    figure = bare(high + 0.010)
    for k, shape in enumerate(shapes):
        ax = axes_on(figure, left=k * wide, bottom=0.0, width=0.95 * wide, height=high)
        ax.set_anchor("SW")
        frame(draw_sideview(ax, shape, detail=False, thick=1.6), box)
        ax.set_title(names[k], loc="left", pad=2.0, linespacing=1.3, **type_of(SMALL, bold=True))
    return figure


def figure_of_plan_bare(at: Response, *, slew: float, units: str) -> Figure:
    """Draw a crane from above with its tipping lines.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    slew : float
        [rad]
    """
    figure = bare(0.072)
    ax = axes_on(figure, left=0.0, bottom=0.0, width=WIDTH, height=0.072)
    draw_plan(ax, plan_of(at, slew=slew), units=units)
    return figure


def figure_of_lifts(
    responses: list[Response], *, units: str, names: tuple[str, ...] = ()
) -> Figure:
    """Draw cranes from the side to one scale: each with its name, or a single one with dimensions.

    Parameters
    ----------
    responses : list of Response
        Of one machine, each of one configuration and one cell
    names : tuple of str
        Of each; without, there is one and it gets its dimensions
    """
    shapes = [bent_boom(at) for at in responses]
    box = limits(shapes, dimensions=not names)
    wide = (WIDTH - 0.004) / len(shapes)
    high = min(wide * (box[3] - box[2]) / (box[1] - box[0]), TALLEST if names else 1.2 * TALLEST)
    figure = bare(high + 0.006)
    for k, (at, shape) in enumerate(zip(responses, shapes, strict=True)):
        ax = axes_on(figure, left=k * wide, bottom=0.0, width=wide - 0.003, height=high)
        view = draw_sideview(
            ax, shape, counterweight=at.setup.counterweight, support=at.setup.support
        )
        if not names:
            draw_dimensions(
                ax, shape, radius=float(at.radius[0, 0]), angle=float(at.state.angle[0, 0]),
                bend=float(at.tip_deflection[0, 0]), units=units,
            )  # fmt: skip
        else:
            words = _loaded(at, names[k], units)
            ax.set_title(words, loc="left", pad=2.0, **type_of(BODY, bold=True))
        frame(view, box)
    return figure


def _loaded(at: Response, name: str, units: str) -> str:
    load, radius = show(float(at.state.load[0, 0]), "mass", units), float(at.radius[0, 0])
    return f"{name}: {load} at {show(radius, 'length', units)}"
