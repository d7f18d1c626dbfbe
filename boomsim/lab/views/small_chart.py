"""A small load chart: capacity over radius, and under it the rows of cells with the bold line."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.figures.colours_and_lines import identity
from boomsim.figures.svg_elements import point_list
from boomsim.lab.scene.scene import Look
from boomsim.lab.scene.slider_ranges import nice_step
from boomsim.lab.solve.capacity_curve import BETWEEN, Curve, curve
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.small_chart_cells import cells, near_column
from boomsim.lab.views.stylesheet import type_scale
from boomsim.lab.views.svg_text import Box, circle, line, rect, text, view
from boomsim.rating.strategies import letter
from boomsim.units import Display, display


@dataclass(frozen=True, slots=True, kw_only=True)
class Axes:
    """From radius and load to the picture.

    Attributes
    ----------
    reach : float
        Radius at the right edge [m]
    top : float
        Load at the upper edge [kg]
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


def chart_of(answer: Answer, look: Look) -> Curve:
    """Rate an answer's configuration at radii that are round in the units shown."""
    return curve(answer.setup, answer.scene.extension, display("length", look.units).factor)


def chart_view(answer: Answer, look: Look, box: Box, *, held: tuple[Answer, ...] = ()) -> str:
    """Draw it.

    Parameters
    ----------
    held : tuple of Answer
        Other configurations, drawn thinner

    Returns
    -------
    str
        SVG
    """
    curves = tuple(chart_of(one, look) for one in (answer, *held))
    axes = _axes(curves, answer.scene.load, look, box)
    label, drawn = _still(curves, axes, look.units, box, near_column(curves[0], answer.radius))
    return view("chart", label, [drawn, *_present(answer, axes)])


@lru_cache(maxsize=64)
def _still(
    curves: tuple[Curve, ...], axes: Axes, units: str, box: Box, column: int
) -> tuple[str, str]:
    """What no step of a slider changes while the configuration stays: words, curves, cells."""
    mine, others = curves[0], curves[1:]
    parts = [text(box.x, box.y + 12 * axes.large, "Rated load over radius", "h")]
    parts += _scale(axes)
    for k, other in enumerate(others):
        parts.append(_curve(other, axes, identity(k).colour, letter(k)))
    parts.append(_curve(mine, axes, "", ""))
    parts += cells(
        [("now", mine), *((letter(k), r) for k, r in enumerate(others))],
        axes.x,
        axes.plot,
        mass=axes.mass,
        length=display("length", units),
        large=axes.large,
        framed=column,
    )
    return _label(units, mine), "".join(parts)


def _axes(curves: Sequence[Curve], load: float, look: Look, box: Box) -> Axes:
    large = type_scale(look)
    known = [float(np.nan_to_num(r.capacity).max(initial=0.0)) for r in curves]
    most = max(*known, load, 1e-3)
    below = (19.0 + 18.0 * len(curves)) * large
    return Axes(
        plot=Box(
            x=box.x + 34 * large,
            y=box.y + 22 * large,
            width=box.width - 38 * large,
            height=box.height - 22 * large - below - 4,
        ),
        reach=max(float(r.radius[-1]) for r in curves) * 1.04,
        top=most * 1.06,
        mass=display("mass", look.units, like=most),
        large=large,
    )


def _label(units: str, one: Curve) -> str:
    known = np.flatnonzero(np.isfinite(one.capacity))[::BETWEEN].tolist()
    said = "; ".join(
        f"{say(float(one.radius[k]), 'length', units)} "
        f"{say(float(one.capacity[k]), 'mass', units)} "
        f"({'stability' if one.tips[k] else 'strength or a permissible value'})"
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


def _curve(one: Curve, axes: Axes, colour: str, name: str) -> str:
    """Broken where strength governs, heavy where stability does."""
    known = np.flatnonzero(np.isfinite(one.capacity)).tolist()
    if not known:
        return ""
    radii, capacity = one.radius.tolist(), one.capacity.tolist()
    paint = f' style="stroke:{colour}"' if colour else ""
    parts = []
    for family, run in _runs(known, one.tips.tolist()):
        points = point_list([(axes.x(radii[i]), axes.y(capacity[i])) for i in run], ".1f")
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
