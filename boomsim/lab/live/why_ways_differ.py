"""Why one way carries more than another here, told when there is time for it."""

from typing import Any

import numpy as np

from boomsim.figures.colours_and_lines import identity
from boomsim.figures.svg_elements import point_list
from boomsim.lab.live.ways_side_by_side import Ways
from boomsim.lab.solve.capacity_curve import curve
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.held_scenes import account_at, difference_rows, written
from boomsim.lab.views.svg_text import Box, circle, line, text
from boomsim.rating.comparison.comparison_in_short import in_short_at
from boomsim.rating.comparison.difference_account import difference
from boomsim.rating.strategies import letter
from boomsim.units import display, show

STRIP = Box(x=0.0, y=0.0, width=420.0, height=150.0)
"""Of the difference over radius [px]."""


def told_reasons(found: Ways | None, now: Answer, *, units: str) -> dict[str, Any]:
    """Tell who carries most, by how much more than who carries least, and why.

    Returns
    -------
    dict
        `sentence`; `pair` and `parts`: what each part of the boom makes of the difference, rows of
        words, kilograms, figure and kind, the last their sum; `strip`, SVG of the difference over
        radius
    """
    if found is None or len(found.ways) < 2:
        return {"sentence": "", "pair": "", "parts": [], "strip": ""}
    names = [letter(k) for k in range(len(found.ways))]
    sentence = in_short_at(
        found.setup,
        extension=found.extension,
        boom=found.boom,
        names=names,
        radius=found.radius,
        units=units,
    )
    pair, parts = _parts(found, names, units)
    return {
        "sentence": sentence,
        "pair": pair,
        "parts": parts,
        "strip": _strip(found, now, units),
    }


def _parts(found: Ways, names: list[str], units: str) -> tuple[str, list[list[Any]]]:
    carried = np.nan_to_num(found.capacity)
    reach = [k for k in range(len(carried)) if carried[k] > 0.0]
    if len(reach) < 2:
        return "", []
    best, least = max(reach, key=lambda k: carried[k]), min(reach, key=lambda k: carried[k])
    if best == least:
        return "", []
    sides = [account_at(found.setup, found.ways[k][0], found.radius) for k in (best, least)]
    if sides[0] is None or sides[1] is None:
        return "", []
    apart = difference(sides[0], sides[1], radius=found.radius)
    rows = difference_rows(apart, [names[best], names[least]])
    figures = written(apart, rows, units)
    listed = [[w, float(f"{kg:.5g}"), s, k] for (w, kg, k), s in zip(rows, figures, strict=True)]
    return f"{names[best]} less {names[least]}, part by part", listed


def _strip(found: Ways, now: Answer, units: str) -> str:
    """How far each way lies under the one that carries most, radius by radius."""
    unit = display("length", units).factor
    curves = [curve(found.setup, extension, unit) for extension, _ in found.ways]
    far = max(float(one.radius[-1]) for one in curves)
    near = min(float(one.radius[0]) for one in curves)
    if not far > near:
        return ""
    radii = np.linspace(near, far, 121)
    # A way that does not reach, or carries nothing there, has no line there.
    tried = np.array(
        [np.interp(radii, c.radius, c.capacity, left=np.nan, right=np.nan) for c in curves]
    )
    if not np.isfinite(tried).any():
        return ""
    most = np.where(np.isnan(tried), -np.inf, tried).max(axis=0)
    share = np.where(most > 0.0, tried / np.where(most > 0.0, most, 1.0) - 1.0, np.nan)
    low = float(np.nanmin(share)) if np.isfinite(share).any() else 0.0
    low = min(low, -0.02)
    left, right, top, bottom = 52.0, STRIP.width - 10.0, 22.0, STRIP.height - 24.0

    def x(radius: float) -> float:
        return left + (right - left) * (radius - near) / (far - near)

    def y(value: float) -> float:
        return top + (bottom - top) * value / low

    parts = [
        line(left, top, right, top, "ink"),
        text(left - 6, top + 4, "most", "s e"),
        text(left - 6, bottom + 4, f"{100 * low:.0f} %", "s e num"),
        text(left, bottom + 19, show(near, "length", units), "s num"),
        text(right, bottom + 19, show(far, "length", units), "s e num"),
        text(left, 11, "how far each lies under the one that carries most", "s"),
    ]
    for k, row in enumerate(share):
        for run in _runs(np.isfinite(row)):
            points = point_list([(x(float(radii[i])), y(float(row[i]))) for i in run], ".1f")
            paint = identity(k).colour
            parts.append(
                f'<polyline points="{points}" style="fill:none;stroke:{paint};stroke-width:'
                f'{3.2 if k == found.present else 2.2}" data-way="{letter(k)}"/>'
            )
    if near <= now.radius <= far:
        parts.append(line(x(now.radius), top - 4, x(now.radius), bottom + 6, "thin"))
        for k, value in enumerate(found.capacity):
            if np.isfinite(value) and float(np.nanmax(found.capacity)) > 0.0:
                down = float(value / np.nanmax(found.capacity) - 1.0)
                if down >= low:
                    more = f' style="fill:{identity(k).colour}"'
                    parts.append(circle(x(now.radius), y(down), 4.0, "", more=more))
    return "".join(parts)


def _runs(known: np.ndarray) -> list[list[int]]:
    runs: list[list[int]] = []
    for i in np.flatnonzero(known).tolist():
        if runs and runs[-1][-1] == i - 1:
            runs[-1].append(i)
        else:
            runs.append([i])
    return runs
