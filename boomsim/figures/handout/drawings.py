"""Drawings for handouts: no title, no caution (the sheet has both), and room to draw in."""

from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle
from matplotlib.ticker import AutoMinorLocator, MaxNLocator

from boomsim.figures.handout.rows import draw_rows
from boomsim.figures.lettering import INCH
from boomsim.figures.page import picture
from boomsim.figures.plan.shape import plan_of
from boomsim.figures.plan.view import draw_plan
from boomsim.figures.scales import display_of, quiet_axes
from boomsim.figures.side.boomshape import bent_boom, straight_boom
from boomsim.figures.side.dimensions import draw_dimensions
from boomsim.figures.side.view import GLYPH_ANGLE, draw_sideview, frame, limits
from boomsim.figures.styles import BODY, FAINT, INK, LOAD, PAPER, SMALL, STEEL, letter, type_of
from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array
from boomsim.rating.response import Response
from boomsim.rating.strategies import label
from boomsim.units import show

WIDTH, TALLEST = 0.178, 0.062
"""What lies between the margins of a sheet; the most that a side view may take of it [m]."""


def bare(height: float, *, width: float = WIDTH) -> Figure:
    """Start a figure with nothing on it.

    Parameters
    ----------
    height, width : float
        [m]

    Returns
    -------
    Figure
    """
    figure = Figure(figsize=(width / INCH, height / INCH), facecolor=PAPER)
    FigureCanvasAgg(figure)
    return figure


def _axes(figure: Figure, *, left: float, bottom: float, width: float, height: float) -> Axes:
    """Place axes on paper, from the lower left corner [m]."""
    wide, high = (float(size) * INCH for size in figure.get_size_inches())
    return figure.add_axes((left / wide, bottom / high, width / wide, height / high))


def figure_of_rows(machine: Machine, *, extension: Array, units: str) -> Figure:
    """Draw sections apart, to be read from the grid.

    Parameters
    ----------
    machine : Machine
    extension : array_like, shape (moving sections,)
        [1]
    units : str
        "metric" or "us"

    Returns
    -------
    Figure
    """
    high = 0.009 * len(machine.boom.sections)
    figure = bare(high + 0.0105)
    ax = _axes(figure, left=0.021, bottom=0.0095, width=WIDTH - 0.023, height=high)
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
    machine : Machine
    extension : ndarray, shape (configurations, moving sections)
        [1]
    radius, capacity : float
        Where the empty axes end [m], [kg]
    units : str
        "metric" or "us"

    Returns
    -------
    Figure
    """
    figure = bare(0.068)
    shapes = [straight_boom(machine, extension=e, angle=GLYPH_ANGLE) for e in extension]
    box = limits(shapes)
    each = 0.066 / len(shapes)
    for row, shape in enumerate(shapes):
        low = 0.066 - (row + 1) * each
        ax = _axes(figure, left=0.002, bottom=low, width=0.072, height=0.76 * each)
        ax.set_anchor("SW")
        frame(draw_sideview(ax, shape, detail=False, thick=1.6), box)
        words = f"{letter(row)}   {label(extension[row])} %"
        ax.set_title(words, loc="left", pad=1.5, **type_of(BODY, bold=True))
    ax = _axes(figure, left=0.091, bottom=0.0095, width=WIDTH - 0.093, height=0.056)
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
    machine : Machine
    extension : ndarray, shape (configurations, moving sections)
        [1]
    names : tuple of str

    Returns
    -------
    Figure
    """
    shapes = [straight_boom(machine, extension=e, angle=GLYPH_ANGLE) for e in extension]
    box = limits(shapes)
    wide = WIDTH / len(shapes)
    high = 0.95 * wide * (box[3] - box[2]) / (box[1] - box[0])
    figure = bare(high + 0.010)
    for k, shape in enumerate(shapes):
        ax = _axes(figure, left=k * wide, bottom=0.0, width=0.95 * wide, height=high)
        ax.set_anchor("SW")
        frame(draw_sideview(ax, shape, detail=False, thick=1.6), box)
        ax.set_title(names[k], loc="left", pad=2.0, linespacing=1.3, **type_of(SMALL, bold=True))
    return figure


def figure_of_joint(*, overhang: float, overlap: float, force: float, units: str) -> Figure:
    """Draw two sections and the pads between them, with a force at the head.

    Parameters
    ----------
    overhang, overlap : float
        Of the inner section [m]
    force : float
        Across the boom, at the head [N]
    units : str
        "metric" or "us"

    Returns
    -------
    Figure
    """
    figure = bare(0.036)
    ax = _axes(figure, left=0.0, bottom=0.0, width=WIDTH, height=0.036)
    ax.set_axis_off()
    whole = overhang + overlap
    ax.set_xlim(-0.35 * whole, 1.1 * whole)
    ax.set_ylim(-1.9, 1.9)
    for x, wide, high, colour in (
        (-0.3 * whole, 0.3 * whole + overlap, 0.75, STEEL), (0.0, whole, 0.48, PAPER)
    ):  # fmt: skip
        ax.add_patch(
            Rectangle((x, -high), wide, 2.0 * high, facecolor=colour, edgecolor=INK, linewidth=1.0)
        )
    pad = 0.02 * whole
    for x, y in ((0.0, 0.48), (overlap - pad, -0.75)):
        ax.add_patch(Rectangle((x, y), pad, 0.27, facecolor=INK, linewidth=0.0))
    arrow = {"arrowstyle": "-|>", "color": LOAD, "linewidth": 1.8, "mutation_scale": 12}
    ax.annotate("", (whole, -1.6), (whole, -0.48), arrowprops=arrow)
    ax.text(
        whole * 0.98, -1.1, f"force across the boom, {show(force, 'force', units)}",
        ha="right", va="center", **type_of(BODY, colour=LOAD),
    )  # fmt: skip
    for start, end, words in (
        (0.0, overlap, f"overlap {show(overlap, 'length', units)}"),
        (overlap, whole, f"overhang {show(overhang, 'length', units)}"),
    ):
        _measure(ax, start, end, 1.25, words)
    ax.text(-0.01 * whole, 0.95, "rear pad", ha="right", va="center", **type_of(BODY))
    ax.text(overlap, -1.15, "front pad", ha="center", va="center", **type_of(BODY))
    return figure


def _measure(ax: Axes, start: float, end: float, y: float, words: str) -> None:
    both = {"arrowstyle": "<|-|>", "color": INK, "linewidth": 0.7, "shrinkA": 0.0, "shrinkB": 0.0}
    ax.annotate("", (end, y), (start, y), arrowprops=both)
    ax.text((start + end) / 2, y + 0.18, words, ha="center", va="bottom", **type_of(BODY))


def figure_of_plan_bare(at: Response, *, slew: float, units: str) -> Figure:
    """Draw a crane from above with its tipping lines.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    slew : float
        [rad]
    units : str
        "metric" or "us"

    Returns
    -------
    Figure
    """
    figure = bare(0.072)
    ax = _axes(figure, left=0.0, bottom=0.0, width=WIDTH, height=0.072)
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
    units : str
        "metric" or "us"
    names : tuple of str
        Of each; without, there is one and it gets its dimensions

    Returns
    -------
    Figure
    """
    shapes = [bent_boom(at) for at in responses]
    box = limits(shapes, dimensions=not names)
    wide = (WIDTH - 0.004) / len(shapes)
    high = min(wide * (box[3] - box[2]) / (box[1] - box[0]), TALLEST if names else 1.2 * TALLEST)
    figure = bare(high + 0.006)
    for k, (at, shape) in enumerate(zip(responses, shapes, strict=True)):
        ax = _axes(figure, left=k * wide, bottom=0.0, width=wide - 0.003, height=high)
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


def svg_of(figure: Figure) -> str:
    """Write a figure as SVG text: the same text for the same figure.

    Parameters
    ----------
    figure : Figure

    Returns
    -------
    str
    """
    return picture(figure, kind="svg").decode()
