"""Chart of configurations of one length: capacity over radius, crossovers, and who wins where."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes

from boomsim.figures.capacity_lines import Curve, draw_curve, update_curve
from boomsim.figures.colours_and_lines import Identity, identity
from boomsim.figures.comparison.comparison_marks import mark_crossovers, mark_winners
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.rating.comparison.comparison_study import Comparison
from boomsim.rating.comparison.lead_spans import spans_of, ways_that_matter
from boomsim.units import Display

KEY_FROM, KEY_DEEP = 0.55, 0.33
"""Where the key begins along the radius, how far down it reaches, as shares of the chart [1]."""

MOST_SHOWN = 6
"""So many configurations are named; the others of the same length are thin grey lines."""


def shown_configurations(comparison: Comparison, *, most: int = MOST_SHOWN) -> list[int]:
    """Choose the configurations to name: those that the text tells, the longest leads first.

    Returns
    -------
    list of int
        In the order of the comparison
    """
    count = len(comparison.configurations.extension)
    if count <= most:
        return list(range(count))
    matter = ways_that_matter(comparison)
    if len(matter) <= most:
        return matter
    least = list(dict.fromkeys(comparison.least))
    width = dict.fromkeys(matter, 0.0)
    for span in spans_of(comparison.leads):
        if span.leader is not None:
            width[span.leader] += span.far - span.near
    longest = sorted((way for way in matter if way not in least), key=lambda way: -width[way])
    return sorted([*least, *longest[: most - len(least)]])


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ComparisonChart:
    """Artists of the chart.

    Attributes
    ----------
    curves : dict of int to Curve
        By number of the configuration
    crossings : list of Artist
        Ring, drop line and label of each crossover
    winners : list of Artist
        Bands and letters along the top: who carries most where
    """

    ax: Axes
    units: str
    curves: dict[int, Curve] = field(default_factory=dict)
    crossings: list[Artist] = field(default_factory=list)
    winners: list[Artist] = field(default_factory=list)


def draw_comparison(
    ax: Axes, comparison: Comparison, *, units: str = "metric", shown: list[int] | None = None
) -> ComparisonChart:
    """Draw capacity over radius.

    Parameters
    ----------
    shown : list of int, optional
        Configurations drawn in their own style; default: :func:`shown_configurations`
    """
    chart = ComparisonChart(ax=ax, units=units)
    update_comparison(chart, comparison, shown=shown)
    return chart


def update_comparison(
    chart: ComparisonChart, comparison: Comparison, *, shown: list[int] | None = None
) -> None:
    """Show another comparison; see :func:`draw_comparison`."""
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
    for old in (*chart.crossings, *chart.winners):
        old.remove()
    chart.crossings[:] = mark_crossovers(chart.ax, comparison, x=x, y=y, units=chart.units)
    chart.winners[:] = mark_winners(chart.ax, comparison, looks, x=x)


def looks_of(shown: list[int]) -> dict[int, Identity]:
    """Style of each configuration that is named."""
    return {k: identity(n) for n, k in enumerate(shown)}


def displays_of(comparison: Comparison, units: str) -> tuple[Display, Display]:
    """Units of the two axes.

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
    capacity = comparison.rating.capacity
    known = np.isfinite(capacity).any(axis=0)
    radii = comparison.radii[known] if known.any() else comparison.radii
    left, right = _down(radii.min() / x.factor), radii.max() / x.factor
    # Where nothing may be lifted at all, the axis still needs a length.
    top = float(np.nanmax(capacity, initial=0.0)) or y.factor
    far = capacity[:, comparison.radii / x.factor > left + KEY_FROM * (right - left)]
    # The key stands in the upper right corner: make room where lines run high there.
    high = 1.0 - KEY_DEEP if np.nanmax(far, initial=0.0) > (1.0 - KEY_DEEP) * top else 0.885
    chart.ax.set_xlim(left, right)
    chart.ax.set_ylim(0.0, top / high / y.factor)


def _down(value: float) -> float:
    return max(float(np.floor(value)) - 1.0, 0.0) if value > 2.0 else 0.0
