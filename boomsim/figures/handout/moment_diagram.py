"""Bending moment along the boom, section by section: what hands over to what in each overlap."""

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from boomsim.figures.colours_and_lines import BODY, PAPER, SMALL, identity, type_of
from boomsim.figures.figure_page import new_page
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response
from boomsim.rating.strategies import label, letter
from boomsim.units import show

WIDTH, PANEL, GAP, FOOT, HEAD = 0.19, 0.037, 0.006, 0.0095, 0.030
"""Page width, height of a panel with its heading, of the heading, of the axis below, and roughly of
all that stands above and below the panels [m]."""


def draw_moments(
    ax: Axes, at: Response, *, configuration: int = 0, top: float | None = None,
    units: str = "metric",
) -> list[Line2D]:  # fmt: skip
    """Draw how much each section is bent, downwards counted as positive.

    Parameters
    ----------
    at : Response
        Of one cell
    top : float, optional
        Largest moment that the axis shows; default: a little beyond the largest there is [N m]

    Returns
    -------
    list of Line2D
        One for each section, base section first
    """
    count = len(at.boom.machine.boom.sections)
    bending = -at.forces.moment[configuration, :, 0]
    top = 1.12 * float(bending.max()) if top is None else top
    x_unit = display_of("length", units, at.boom.layout.boom_length)
    y_unit = display_of("moment", units, [top])
    quiet_axes(ax, x=f"along the boom from the heel pin, {x_unit.symbol}", y="", grid="both")
    ax.set_ylabel(f"bending moment, {y_unit.symbol}", **type_of(BODY))
    lines = []
    for k in range(count):
        where, moment = _section(at, configuration, k, bending)
        look = identity(k)
        (line,) = ax.plot(
            where / x_unit.factor, moment / y_unit.factor, color=look.colour, linewidth=1.6,
            marker=look.marker, markersize=3.2, markerfacecolor=PAPER, zorder=3.0 + k,
        )  # fmt: skip
        ax.fill_between(
            where / x_unit.factor, moment / y_unit.factor, color=look.colour, alpha=0.10, zorder=2.0
        )
        lines.append(line)
    ax.set_xlim(0.0, 1.02 * float(at.boom.layout.boom_length.max()) / x_unit.factor)
    ax.set_ylim(min(0.0, 1.1 * float(bending.min()) / y_unit.factor), top / y_unit.factor)
    return lines


def _section(at: Response, configuration: int, number: int, bending: Array) -> tuple[Array, Array]:
    """Places along the boom and moments there of one section, without repeated places."""
    own = slice(number * PER_SECTION, (number + 1) * PER_SECTION)
    tail = at.boom.layout.tail[configuration, number]
    where = tail + at.boom.stations.position[configuration].reshape(-1)[own]
    return where, bending[own]


def figure_of_moments(at: Response, *, units: str = "metric") -> Figure:
    """Picture of the bending moments of several configurations, one below the other.

    Parameters
    ----------
    at : Response
        Of one cell: the same load at the same radius
    """
    count = len(at.boom.layout.extension)
    load, radius = (float(v[0, 0]) for v in (at.state.load, at.radius))
    where = f"{show(load, 'mass', units)} at {show(radius, 'length', units)}"
    page = new_page(
        width=WIDTH,
        height=HEAD + count * PANEL,
        title=f"{machine_words(at.setup)}: which section is bent how much by {where}",
        subtitle=setup_words(at.setup, units=units, extension=at.boom.layout.extension),
        foot=allowance_words(at.setup.rule, units=units),
    )
    top = 1.12 * float((-at.forces.moment).max())
    wide, high = page.room[0] - 0.0165, (page.room[1] - FOOT) / count
    for row in range(count):
        bottom = FOOT + (count - 1 - row) * high
        ax = page.axes(left=0.0145, bottom=bottom, width=wide, height=high - GAP)
        lines = draw_moments(ax, at, configuration=row, top=top, units=units)
        _caption(ax, at, row)
        if row + 1 < count:
            ax.set_xlabel("")
            ax.tick_params(labelbottom=False)
        if row == 0:
            _key(ax, lines)
    return page.figure


def _caption(ax: Axes, at: Response, row: int) -> None:
    words = f"{letter(row)}   {label(at.boom.layout.extension[row])} %"
    ax.set_title(words, loc="left", pad=3.0, **type_of(BODY, bold=True))


def _key(ax: Axes, lines: list[Line2D]) -> None:
    names = ["base section", *(f"section {k}" for k in range(1, len(lines)))]
    key = ax.legend(
        lines, names, loc="upper right", frameon=True, borderpad=0.4, labelspacing=0.25,
        handlelength=2.2, prop={"size": SMALL, "family": type_of()["fontfamily"]},
    )  # fmt: skip
    key.get_frame().set_linewidth(0.0)
