"""The picture of `compare --plates`: capacity of each build, and where its bold line lies."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from boomsim.figures.builds.builds_bars import draw_bars, draw_ends
from boomsim.figures.capacity_lines import Curve, draw_curve
from boomsim.figures.colours_and_lines import BODY, SMALL, identity, type_of
from boomsim.figures.comparison.comparison_marks import draw_key
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.figure_panels import name_marker
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.unit_axes import display_of, quiet_axes, spread_out
from boomsim.rating.builds.builds_study import Builds, overloaded
from boomsim.rating.strategies import label
from boomsim.units import Display, show

WIDTH, HEIGHT = 0.19, 0.125
LEFT, BOTTOM, CHART_WIDTH, COLUMN = 0.0135, 0.0105, 0.125, 0.1415
BAR, BETWEEN = 0.0075, 0.014
"""Places and sizes on paper; each build's bar is so high [m]."""

KEY_ROOM = 1.3
"""The key stands above the lines, not on them: the axis reaches so far past the most [1]."""


def figure_of_builds(found: Builds, *, at: tuple[float, ...], units: str = "metric") -> Figure:
    """Draw the picture of `compare --plates`.

    Parameters
    ----------
    at : tuple of float
        Radii at which it is marked what comes first when each is overloaded [m]
    """
    bars = BAR * len(found.builds)
    length = show(found.length, "boom_length", units)
    page = new_page(
        width=WIDTH,
        height=HEIGHT + bars + BETWEEN,
        title=f"{machine_words(found.setup)}: {length} of boom, "
        f"({label(found.extension)}) %, built light and stout",
        subtitle=setup_words(found.setup, units=units, extension=found.extension),
        foot=allowance_words(found.setup.rule, units=units),
    )
    x = display_of("length", units, found.radii)
    bottom = BOTTOM + bars + BETWEEN
    ax = page.axes(left=LEFT, bottom=bottom, width=CHART_WIDTH, height=page.room[1] - bottom)
    draw_builds(ax, found, units=units)
    draw_key(ax, crossovers=False)
    strip = page.axes(left=LEFT, bottom=BOTTOM, width=CHART_WIDTH, height=bars)
    draw_bars(strip, found, x=x)
    for radius in at:
        draw_ends(strip, overloaded(found, radius=radius), radius=radius, x=x)
    strip.set_xlim(ax.get_xlim())
    _name_all(page, ax, found, units)
    return page.figure


def draw_builds(ax: Axes, found: Builds, *, units: str = "metric") -> list[Curve]:
    """Draw capacity over radius, a line for each build.

    Returns
    -------
    list of Curve
        In the order of the builds
    """
    x, y = (
        display_of("length", units, found.radii),
        display_of("mass", units, found.capacity),
    )
    quiet_axes(ax, x="", y=f"rated capacity, gross, {y.symbol}")
    known = np.isfinite(found.capacity).any(axis=0)
    radii = found.radii[known] if known.any() else found.radii
    most = float(np.nanmax(found.capacity, initial=0.0)) or y.factor
    ax.set_xlim(max(float(radii.min()) / x.factor - 1.0, 0.0), float(radii.max()) / x.factor)
    ax.set_ylim(0.0, KEY_ROOM * most / y.factor)
    return [
        draw_curve(ax, build.rating, 0, look=identity(number), x=x.factor, y=y.factor)
        for number, build in enumerate(found.builds)
    ]


def _name_all(page: Page, ax: Axes, found: Builds, units: str) -> None:
    """Name each build at the end of its line, with what its boom weighs."""
    y = display_of("mass", units, found.capacity)
    ends = [_end(page, ax, found.capacity[k], y) for k in range(len(found.builds))]
    places = spread_out(ends, least=0.0105, low=BOTTOM + 0.03, high=page.room[1] - 0.012)
    for number, (build, up) in enumerate(zip(found.builds, places, strict=True)):
        across, high = (page.left + COLUMN) / page.width, (page.bottom + up) / page.height
        beside = {"x": across + 0.0015 / page.width, "y": high + 0.0015 / page.height}
        name_marker(page, identity(number), **beside)
        left = across + 0.0045 / page.width
        page.figure.text(left, high, build.name, va="bottom", **type_of(BODY, bold=True))
        weighs = f"boom of {show(build.boom_mass, 'mass', units)}"
        page.figure.text(left, high - 0.001 / page.height, weighs, va="top", **type_of(SMALL))


def _end(page: Page, ax: Axes, capacity: np.ndarray, y: Display) -> float:
    """Height on paper at which a line ends, from the bottom of the room [m]."""
    known = capacity[np.isfinite(capacity)]
    value = known[-1] / y.factor if len(known) else 0.0
    place = ax.transData.transform((0.0, value))
    up = page.figure.transFigure.inverted().transform(place)[1]
    return float(up * page.height - page.bottom)
