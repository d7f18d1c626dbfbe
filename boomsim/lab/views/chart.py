"""A small load chart: capacity over radius, and under it the rows of cells with the bold line."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from boomsim.figures.styles import identity, letter
from boomsim.lab.answer import Answer, chart
from boomsim.lab.ink import type_scale
from boomsim.lab.ranges import nice_step
from boomsim.lab.scene import Look
from boomsim.lab.svg import Box, circle, line, rect, text, view
from boomsim.lab.views.chart_cells import cells
from boomsim.rating.capacity import Rating
from boomsim.units import Display, display, show


@dataclass(frozen=True, slots=True, kw_only=True)
class Axes:
    """From radius and load to the picture.

    Attributes
    ----------
    plot : Box
    reach : float
        Radius at the right edge [m]
    top : float
        Load at the upper edge [kg]
    mass : Display
    large : float
        Type scale [1]
    """

    plot: Box
    reach: float
    top: float
    mass: Display
    large: float

    def x(self, radius: float) -> float:
        """Place of a radius [px]."""
        return self.plot.x + self.plot.width * radius / self.reach

    def y(self, load: float) -> float:
        """Place of a load [px]."""
        return self.plot.bottom - self.plot.height * load / self.top


def chart_of(answer: Answer, look: Look) -> Rating:
    """Rate an answer's configuration at radii that are round in the units shown.

    Parameters
    ----------
    answer : Answer
    look : Look

    Returns
    -------
    Rating
    """
    return chart(answer.setup, answer.scene.extension, display("length", look.units).factor)


def chart_view(answer: Answer, look: Look, box: Box, *, held: tuple[Answer, ...] = ()) -> str:
    """Draw it.

    Parameters
    ----------
    answer : Answer
    look : Look
    box : Box
    held : tuple of Answer
        Other configurations, drawn thinner

    Returns
    -------
    str
        SVG
    """
    mine, others = chart_of(answer, look), [chart_of(one, look) for one in held]
    axes = _axes(answer, look, box, [mine, *others])
    parts = [text(box.x, box.y + 12 * axes.large, "Rated load over radius", "h")]
    parts += _scale(axes)
    for k, other in enumerate(others):
        parts.append(_curve(other, axes, identity(k).colour, letter(k)))
    parts.append(_curve(mine, axes, "", ""))
    parts += _present(answer, axes)
    named = [("now", mine), *((letter(k), r) for k, r in enumerate(others))]
    parts += cells(
        named,
        axes.x,
        axes.plot,
        mass=axes.mass,
        length=display("length", look.units),
        large=axes.large,
        present=answer.radius,
    )
    return view("chart", _label(look, mine), parts)


def _axes(answer: Answer, look: Look, box: Box, ratings: Sequence[Rating]) -> Axes:
    large = type_scale(look)
    known = [float(np.nan_to_num(r.capacity).max(initial=0.0)) for r in ratings]
    most = max(*known, answer.scene.load, 1e-3)
    below = (19.0 + 18.0 * len(ratings)) * large
    return Axes(
        plot=Box(
            x=box.x + 34 * large,
            y=box.y + 22 * large,
            width=box.width - 38 * large,
            height=box.height - 22 * large - below - 4,
        ),
        reach=max(float(r.radius[0, -1]) for r in ratings) * 1.04,
        top=most * 1.06,
        mass=display("mass", look.units, like=most),
        large=large,
    )


def _label(look: Look, rating: Rating) -> str:
    known = np.flatnonzero(np.isfinite(rating.capacity[0]))[::4].tolist()
    said = "; ".join(
        f"{show(float(rating.radius[0, k]), 'length', look.units)} "
        f"{show(float(rating.capacity[0, k]), 'mass', look.units)} "
        f"({'tips' if rating.is_stability[0, k] else 'breaks'} first)"
        for k in known
    )
    return f"Rated load over radius of the present configuration: {said}."


def _scale(axes: Axes) -> list[str]:
    plot, large = axes.plot, axes.large
    step = nice_step(axes.top / axes.mass.factor, most=4)
    parts = [line(plot.x, plot.bottom, plot.right, plot.bottom, "ink")]
    for k in range(1, int(axes.top / axes.mass.factor / step) + 1):
        y = axes.y(k * step * axes.mass.factor)
        parts.append(line(plot.x, y, plot.right, y, "faint"))
        parts.append(text(plot.x - 5, y + 4, f"{k * step:,g}", "s e num"))
    parts.append(text(plot.x + 4, plot.y + 6 * large, axes.mass.symbol, "s"))
    return parts


def _curve(rating: Rating, axes: Axes, colour: str, name: str) -> str:
    """Broken where strength governs, heavy where stability does."""
    known = np.flatnonzero(np.isfinite(rating.capacity[0])).tolist()
    if not known:
        return ""
    radii, capacity = rating.radius[0].tolist(), rating.capacity[0].tolist()
    paint = f' style="stroke:{colour}"' if colour else ""
    parts = []
    for family, run in _runs(known, rating.is_stability[0].tolist()):
        points = " ".join(f"{axes.x(radii[i]):.1f},{axes.y(capacity[i]):.1f}" for i in run)
        parts.append(f'<polyline class="curve-{family}" points="{points}"{paint}/>')
    if name:
        x, y = axes.x(radii[known[0]]) - 4, axes.y(capacity[known[0]]) + 4
        parts.append(text(x, y, name, "s b halo e", more=f' style="fill:{colour}"'))
    return "".join(parts)


def _runs(known: list[int], tips: list[bool]) -> list[tuple[str, list[int]]]:
    """Stretches of one family, each up to the first point of the next."""
    runs: list[tuple[str, list[int]]] = []
    for i in known:
        family = "stability" if tips[i] else "structural"
        if runs:
            runs[-1][1].append(i)
        if not runs or runs[-1][0] != family:
            runs.append((family, [i]))
    return runs


def _present(answer: Answer, axes: Axes) -> list[str]:
    radius, plot = answer.radius, axes.plot
    if not np.isfinite(radius) or axes.x(radius) > plot.right + 2:
        return []
    x = axes.x(radius)
    parts = [line(x, plot.y, x, plot.bottom, "thin")]
    if np.isfinite(answer.capacity):
        y = axes.y(answer.capacity)
        parts.append(circle(x, y, 4.5, "paper", more=' data-part="capacity"'))
    if answer.solved:
        y = axes.y(answer.scene.load)
        parts.append(rect(x - 4, y - 4, 8, 8, "load", more=' data-part="present"'))
    return parts
