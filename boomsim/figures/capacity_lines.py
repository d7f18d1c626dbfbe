"""Capacity over radius as lines: which family of limits governs is told by the line itself."""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D

from boomsim.figures.colours_and_lines import FAINT, FAMILIES, PAPER, Identity
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating

MARK_EVERY, MARKS = 4, 4
"""A marker at every so many radii tells whose line it is; about so many on a line of many radii."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Curve:
    """One configuration's capacity over radius, in display units.

    Attributes
    ----------
    structural, stability : Line2D
        Where that family governs
    marks : Line2D
        Identity of the configuration
    turns : Line2D
        Bars across the line where the family that governs changes
    """

    structural: Line2D
    stability: Line2D
    marks: Line2D
    turns: Line2D

    @property
    def artists(self) -> tuple[Line2D, ...]:
        """All lines."""
        return self.structural, self.stability, self.marks, self.turns


def draw_curve(
    ax: Axes,
    rating: Rating,
    row: int,
    *,
    look: Identity,
    x: float,
    y: float,
    quiet: bool = False,
    slim: bool = False,
) -> Curve:
    """Draw one configuration's capacity.

    Parameters
    ----------
    ax : Axes
    rating : Rating
    row : int
        Which configuration
    look : Identity
    x, y : float
        Metres and kilograms for one unit of each axis [m], [kg]
    quiet : bool
        For a line among many: thin, grey, without markers
    slim : bool
        For one of several that lie close
    """
    colour = FAINT if quiet else look.colour
    weight = 0.5 if quiet else 0.75 if slim else 1.0

    def line(family: str) -> Line2D:
        style = FAMILIES[family]
        made = Line2D(
            [],
            [],
            color=colour,
            linestyle=style.line,
            linewidth=style.width * weight,
            solid_capstyle="round",
            zorder=2.0 if quiet else 3.0,
            label=family,
        )
        ax.add_line(made)
        return made

    marks = Line2D(
        [],
        [],
        linestyle="none",
        marker=look.marker,
        markersize=4.2,
        markerfacecolor=PAPER,
        markeredgecolor=colour,
        markeredgewidth=1.0,
        zorder=3.5,
        visible=not quiet,
        clip_on=False,
    )
    turns = Line2D(
        [],
        [],
        linestyle="none",
        marker="|",
        markersize=9.0,
        markeredgecolor=colour,
        markeredgewidth=1.2,
        zorder=3.2,
        visible=not quiet,
    )
    ax.add_line(marks)
    ax.add_line(turns)
    curve = Curve(
        structural=line("structural"), stability=line("stability"), marks=marks, turns=turns
    )
    update_curve(curve, rating, row, x=x, y=y)
    return curve


def update_curve(curve: Curve, rating: Rating, row: int, *, x: float, y: float) -> None:
    """Show another rating; see :func:`draw_curve`.

    Parameters
    ----------
    curve : Curve
    rating : Rating
    row : int
    x, y : float
        [m], [kg]
    """
    radius, capacity, tips, turns = with_turns(rating, row)
    for line, own in ((curve.structural, ~tips), (curve.stability, tips)):
        line.set_data(radius / x, np.where(_both_sides(own, turns), capacity, np.nan) / y)
    known = np.flatnonzero(np.isfinite(rating.capacity[row]))
    # Not all at the same radii, so that the markers of near lines stay apart.
    every = max(MARK_EVERY, len(known) // MARKS)
    marked = known[(row * 3 * every // MARK_EVERY) % every :: every]
    curve.marks.set_data(rating.radius[row, marked] / x, rating.capacity[row, marked] / y)
    curve.turns.set_data(radius[turns] / x, capacity[turns] / y)


def _both_sides(own: np.ndarray, turns: np.ndarray) -> np.ndarray:
    """Let a point where the family changes belong to both lines."""
    return np.asarray(own | turns)


def with_turns(rating: Rating, row: int) -> tuple[Array, Array, np.ndarray, np.ndarray]:
    """Capacity over radius with a point put in wherever the governing family changes.

    There the largest utilisation of a structural limit equals that of a stability limit; between
    two rated radii both are taken as straight.

    Parameters
    ----------
    rating : Rating
    row : int
        Which configuration

    Returns
    -------
    radius, capacity : ndarray, shape (points,)
        [m], [kg]
    tips : ndarray of bool
        True where stability governs
    turns : ndarray of bool
        True at the points put in
    """
    radius, capacity = rating.radius[row], rating.capacity[row]
    tips = rating.is_stability[row]
    ahead = _margin(rating, row)
    known = np.isfinite(capacity)
    change = np.flatnonzero((tips[:-1] != tips[1:]) & known[:-1] & known[1:])
    share = ahead[change] / (ahead[change] - ahead[change + 1])
    share = np.where(np.isfinite(share), np.clip(share, 0.0, 1.0), 0.5)

    def between(values: Array) -> Array:
        return values[change] + share * (values[change + 1] - values[change])

    return (
        np.insert(radius, change + 1, between(radius)),
        np.insert(capacity, change + 1, between(capacity)),
        np.insert(tips, change + 1, tips[change]),
        np.insert(np.zeros_like(tips), change + 1, True),
    )


def _margin(rating: Rating, row: int) -> Array:
    """Largest use of a stability limit less that of a structural one, at the rated load [1]."""
    of_tipping = np.array([limit.set_by == "stability" for limit in rating.limits])
    utilisation = rating.utilisation[:, row]
    return np.asarray(utilisation[of_tipping].max(axis=0) - utilisation[~of_tipping].max(axis=0))
