"""Chart of configurations of one length: capacity over radius, crossovers, and who wins where."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle
from matplotlib.text import Annotation, Text

from boomsim.figures.curves import Curve, draw_curve, update_curve
from boomsim.figures.lettering import INCH, text_width
from boomsim.figures.scales import display_of, quiet_axes
from boomsim.figures.styles import (
    FAINT,
    FAMILIES,
    INK,
    PAPER,
    SMALL,
    Identity,
    identity,
    ink_on,
    letter,
    type_of,
)
from boomsim.rating.compare import Comparison
from boomsim.units import Display, show

MOST_SHOWN = 5
"""So many configurations are named; the others of the same length are thin grey lines."""

STRIP = (0.965, 1.015)
"""The band of winners, as a share of the chart's height [1]."""


def shown_configurations(comparison: Comparison, *, most: int = MOST_SHOWN) -> list[int]:
    """Choose the configurations to name: the winners, then those that lie furthest below.

    Parameters
    ----------
    comparison : Comparison
    most : int

    Returns
    -------
    list of int
        In the order of the comparison
    """
    count = len(comparison.configurations.extension)
    if count <= most:
        return list(range(count))
    winners = [int(k) for k in np.unique(comparison.best[comparison.best >= 0])]
    wins = np.bincount(comparison.best[comparison.best >= 0], minlength=count)
    winners.sort(key=lambda k: -wins[k])
    chosen = winners[: most - 1]
    capacity = np.nan_to_num(comparison.rating.capacity)
    whole = capacity / np.maximum(capacity.max(axis=0), 1.0)
    rest = sorted((k for k in range(count) if k not in chosen), key=lambda k: whole[k].sum())
    # The poorest, and from there evenly up to the best that never wins.
    room = most - len(chosen)
    places = np.unique(np.linspace(0, len(rest) - 1, max(room, 1)).round().astype(int))[:room]
    return sorted([*chosen, *(rest[int(p)] for p in places)])


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ComparisonChart:
    """Artists of the chart.

    Attributes
    ----------
    ax : Axes
    units : str
        "metric" or "us"
    curves : dict of int to Curve
        By number of the configuration
    crossings : list
        Ring, label and drop line of each crossover
    winners : list
        Bands and letters along the top: who carries most where
    """

    ax: Axes
    units: str
    curves: dict[int, Curve] = field(default_factory=dict)
    crossings: list[Line2D | Annotation] = field(default_factory=list)
    winners: list[Rectangle | Text] = field(default_factory=list)


def draw_comparison(
    ax: Axes, comparison: Comparison, *, units: str = "metric", shown: list[int] | None = None
) -> ComparisonChart:
    """Draw capacity over radius.

    Parameters
    ----------
    ax : Axes
    comparison : Comparison
    units : str
        "metric" or "us"
    shown : list of int, optional
        Configurations drawn in their own style; default: :func:`shown_configurations`

    Returns
    -------
    ComparisonChart
    """
    chart = ComparisonChart(ax=ax, units=units)
    update_comparison(chart, comparison, shown=shown)
    return chart


def update_comparison(
    chart: ComparisonChart, comparison: Comparison, *, shown: list[int] | None = None
) -> None:
    """Show another comparison; see :func:`draw_comparison`.

    Parameters
    ----------
    chart : ComparisonChart
    comparison : Comparison
    shown : list of int, optional
    """
    shown = shown_configurations(comparison) if shown is None else shown
    x, y = displays_of(comparison, chart.units)
    looks = looks_of(shown)
    if list(chart.curves) != list(range(len(comparison.configurations.extension))) or any(
        curve.marks.get_visible() != (k in looks) for k, curve in chart.curves.items()
    ):
        _new_curves(chart, comparison, looks, x, y)
    for k, curve in chart.curves.items():
        update_curve(curve, comparison.rating, k, x=x.factor, y=y.factor)
    _frame(chart, comparison, x, y)
    _mark_crossovers(chart, comparison, x, y)
    _mark_winners(chart, comparison, looks, x, y)


def looks_of(shown: list[int]) -> dict[int, Identity]:
    """Style of each configuration that is named.

    Parameters
    ----------
    shown : list of int

    Returns
    -------
    dict of int to Identity
    """
    return {k: identity(n) for n, k in enumerate(shown)}


def displays_of(comparison: Comparison, units: str) -> tuple[Display, Display]:
    """Units of the two axes.

    Parameters
    ----------
    comparison : Comparison
    units : str
        "metric" or "us"

    Returns
    -------
    Display, Display
        Of radius and of capacity
    """
    return (
        display_of("length", units, comparison.radii),
        display_of("mass", units, comparison.rating.capacity),
    )


def _new_curves(
    chart: ComparisonChart,
    comparison: Comparison,
    looks: dict[int, Identity],
    x: Display,
    y: Display,
) -> None:
    for curve in chart.curves.values():
        for artist in curve.artists:
            artist.remove()
    chart.curves.clear()
    for k in range(len(comparison.configurations.extension)):
        chart.curves[k] = draw_curve(
            chart.ax,
            comparison.rating,
            k,
            look=looks.get(k, identity(0)),
            x=x.factor,
            y=y.factor,
            quiet=k not in looks,
            slim=len(looks) > 3,
        )


def _frame(chart: ComparisonChart, comparison: Comparison, x: Display, y: Display) -> None:
    quiet_axes(
        chart.ax,
        x=f"radius with the load on, {x.symbol}",
        y=f"rated capacity, gross, {y.symbol}",
    )
    known = np.isfinite(comparison.rating.capacity).any(axis=0)
    radii = comparison.radii[known] if known.any() else comparison.radii
    top = float(np.nanmax(comparison.rating.capacity)) if known.any() else 1.0
    chart.ax.set_xlim(_down(radii.min() / x.factor), radii.max() / x.factor)
    chart.ax.set_ylim(0.0, 1.13 * top / y.factor)


def _down(value: float) -> float:
    return max(float(np.floor(value)) - 1.0, 0.0) if value > 2.0 else 0.0


def _mark_crossovers(
    chart: ComparisonChart, comparison: Comparison, x: Display, y: Display
) -> None:
    for old in chart.crossings:
        old.remove()
    chart.crossings.clear()
    for crossing in comparison.crossovers:
        at = crossing.radius / x.factor, crossing.capacity / y.factor
        ring = Line2D(
            [at[0]],
            [at[1]],
            linestyle="none",
            marker="o",
            markersize=8.5,
            zorder=4.0,
            markerfacecolor="none",
            markeredgecolor=INK,
            markeredgewidth=0.9,
        )
        drop = Line2D(
            [at[0], at[0]], [0.0, at[1]], color=INK, linewidth=0.6, linestyle=":", zorder=1.8
        )
        chart.ax.add_line(ring)
        chart.ax.add_line(drop)
        words = (
            f"{show(crossing.radius, 'length', chart.units)}\n"
            f"{show(crossing.capacity, 'mass', chart.units)}"
        )
        note = chart.ax.annotate(
            words,
            at,
            (7.0, 7.0),
            textcoords="offset points",
            ha="left",
            va="bottom",
            linespacing=1.15,
            zorder=4.5,
            **type_of(SMALL),
        )
        note.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8, "alpha": 0.85})
        chart.crossings.extend([ring, drop, note])


def winning_ranges(comparison: Comparison) -> list[tuple[int, float, float]]:
    """Who carries most from which radius to which.

    Parameters
    ----------
    comparison : Comparison

    Returns
    -------
    list of (int, float, float)
        Configuration, first radius, last radius [m]
    """
    best, radii = comparison.best, comparison.radii
    found: list[tuple[int, float, float]] = []
    exact = {
        (c.before, c.after, int(np.searchsorted(radii, c.radius))): c.radius
        for c in comparison.crossovers
    }
    start = 0
    for i in range(1, len(best) + 1):
        if i < len(best) and best[i] == best[start]:
            continue
        if best[start] >= 0:
            found.append((int(best[start]), float(radii[start]), float(radii[i - 1])))
        start = i
    for n in range(len(found) - 1):
        (one, near, last), (two, first, far) = found[n], found[n + 1]
        place = int(np.searchsorted(radii, first))
        met = exact.get((one, two, place), (last + first) / 2)
        found[n], found[n + 1] = (one, near, met), (two, met, far)
    return found


def _mark_winners(
    chart: ComparisonChart,
    comparison: Comparison,
    looks: dict[int, Identity],
    x: Display,
    y: Display,
) -> None:
    """Fill the strip along the top of the chart, one block for each winner."""
    for old in chart.winners:
        old.remove()
    chart.winners.clear()
    across = chart.ax.get_xaxis_transform()
    for who, near, far in winning_ranges(comparison):
        colour = looks[who].colour if who in looks else FAINT
        block = Rectangle(
            (near / x.factor, STRIP[0]),
            (far - near) / x.factor,
            STRIP[1] - STRIP[0],
            transform=across,
            facecolor=colour,
            edgecolor=PAPER,
            linewidth=0.8,
            clip_on=False,
            zorder=3.0,
        )
        chart.ax.add_artist(block)
        chart.winners.append(block)
        if who in looks:
            words = _fitting(chart.ax, who, (far - near) / x.factor)
            name = chart.ax.text(
                (near + far) / 2 / x.factor,
                sum(STRIP) / 2 - 0.002,
                words,
                transform=across,
                ha="center",
                va="center",
                zorder=4.0,
                **type_of(SMALL, colour=ink_on(colour), bold=True),
            )
            chart.winners.append(name)


def _fitting(ax: Axes, who: int, width: float) -> str:
    """As many words as the block is wide."""
    left, right = ax.get_xlim()
    room = width / (right - left) * ax.bbox.width / ax.figure.dpi * INCH
    for words in (f"{letter(who)} carries most", letter(who)):
        if text_width(words, size=SMALL, bold=True) < 0.94 * room:
            return words
    return ""


def draw_key(ax: Axes, *, crossovers: bool = True, others: int = 0) -> list[Line2D | Text]:
    """Write the key of line styles in the chart's upper right corner, where no curve runs.

    Parameters
    ----------
    ax : Axes
    crossovers : bool
        Whether there are any
    others : int
        How many configurations are thin grey lines [1]

    Returns
    -------
    list of Line2D or Text
    """
    rows: list[tuple[Line2D, str]] = []
    for style in FAMILIES.values():
        rows.append((_sample(linestyle=style.line, linewidth=style.width, color=INK), style.words))
    if crossovers:
        ring = _sample(linestyle="none", marker="o", markersize=7.0, markerfacecolor="none")
        rows.append((ring, "crossover: radius and capacity"))
    if others:
        words = f"{others} other{'s' if others > 1 else ''} of this length"
        rows.append((_sample(linewidth=1.0, color=FAINT), words))
    made: list[Line2D | Text] = []
    for n, (line, words) in enumerate(rows):
        y = 0.91 - 0.06 * n
        ring_place = [0.585] if line.get_marker() == "o" else [0.56, 0.61]
        line.set_data(ring_place, [y] * len(ring_place))
        line.set_transform(ax.transAxes)
        ax.add_line(line)
        text = ax.text(
            0.63, y, words, transform=ax.transAxes, ha="left", va="center", **type_of(SMALL)
        )
        text.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 1.0})
        made += [line, text]
    return made


def _sample(**look: object) -> Line2D:
    return Line2D([], [], **{"color": INK, "zorder": 2.5, **look})  # type: ignore[arg-type]
