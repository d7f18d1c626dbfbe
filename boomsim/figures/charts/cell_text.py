"""The figures and short words of a chart page: numbers, codes of limits, ways to extend."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.hoist_line import line_limit
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.charts.rows_and_rounding import LENGTH_UNIT, MASS_UNIT, printed_decimals
from boomsim.rating.empty_hook.empty_hook_sentences import steep_angle
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.parts_reeved import reeved
from boomsim.units import rounded, rounded_down


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbers:
    """How the numbers of a chart are written.

    Attributes
    ----------
    mass, length : str
        Units in words
    scale : float
        What one step is worth in the unit of mass [1]
    decimals, row_decimals, boom_decimals : int
        Of capacities, of radii and of boom lengths
    unit : float
        Of length [m]
    """

    mass: str
    length: str
    scale: float
    decimals: int
    row_decimals: int
    boom_decimals: int
    unit: float

    @property
    def step(self) -> str:
        """What capacities are rounded down to, with its unit."""
        if self.mass == "1000 lb":
            return f"{1000 * self.scale:g} lb"
        return f"{self.scale:.{self.decimals}f} {self.mass}"

    def capacity(self, steps: int) -> str:
        """Write a capacity; nothing for a blank cell."""
        return "" if steps < 0 else f"{steps * self.scale:,.{self.decimals}f}"

    def radius(self, value: float) -> str:
        """Write a radius [m]."""
        return rounded(value / self.unit, self.row_decimals)

    def boom(self, value: float) -> str:
        """Write a boom length [m]."""
        return rounded(value / self.unit, self.boom_decimals)

    def radius_down(self, value: float) -> str:
        """Write a radius from which on something must not be, never more than it is [m]."""
        return rounded_down(value / self.unit, self.boom_decimals)


def numbers_of(chart: Chart, *, units: str) -> Numbers:
    """Choose units and decimals, the same for all charts of one machine."""
    most = line_limit(chart, parts=chart.setup.machine.hoist.parts[-1]) / MASS_UNIT[units]
    many = most >= (1e3 if units == "metric" else 1e5)
    names = {"metric": ("kg", "t"), "us": ("lb", "1000 lb")}
    scale = chart.step / MASS_UNIT[units] / (1e3 if many else 1.0)
    unit = LENGTH_UNIT[units]
    row_decimals, boom_decimals = printed_decimals(chart.radii, length=chart.length, units=units)
    return Numbers(
        mass=names[units][many],
        length={"metric": "m", "us": "ft"}[units],
        scale=scale,
        decimals=_decimals(np.array([scale])),
        row_decimals=row_decimals,
        boom_decimals=boom_decimals,
        unit=unit,
    )


def _decimals(values: Array, *, most: int = 4) -> int:
    """Fewest decimals that write all values without rounding."""
    for decimals in range(most):
        shifted = values * 10.0**decimals
        if np.all(np.abs(shifted - np.round(shifted)) < 1e-6):
            return decimals
    return most


def code(limit: Limit) -> str:
    """Shorten a limit to a letter and the number of its section.

    Returns
    -------
    str
        Nothing where the crane tips
    """
    return limit.kind.code + ("" if limit.section is None else str(limit.section))


def tips(limit: Limit) -> bool:
    """Whether the limit is one of stability."""
    return limit.set_by == STABILITY


def percents(extension: Array) -> str:
    """Write a way to extend as whole percents, base side first.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    """
    return ", ".join(percent(float(f)) for f in extension) + " %"


def lock_words(boom: Boom) -> str:
    """Say at which shares of their strokes sections lock; nothing where they stop anywhere."""
    if not any(BOOM_SYSTEMS[name].locks for name in boom.systems):
        return ""
    *most, last = [f"{100 * p:g}" for p in boom.lock_positions]
    return f"sections lock at {', '.join(most)} and {last} % of their strokes"


def percent(fraction: float) -> str:
    """Whole percents, halves up: 46.5 % is "47"."""
    return f"{np.floor(100.0 * fraction + 0.5 + 1e-9):.0f}"


FOOT = ("never below", "nor beyond")
"""Names of the lines at the foot of a chart: boom angle, radius."""

REEVED = "parts of line"
"""Name of the line at the foot of a chart where the boom length decides on the reeving."""

NOWHERE = "×"
"""At the foot of a column whose boom the crane cannot stand with, however steep."""


def foot_lines(chart: Chart, numbers: Numbers) -> list[tuple[str, list[str]]]:
    """Write what each column's boom is reeved in, and how low and far out it may come when empty.

    Returns
    -------
    list of (str, list of str)
        Names of the lines, with a text for each column. Parts of line where the machine says how
        long its rope is. Boom angles and radii, empty where the crane never turns over: no such
        lines where it does in no column, nor under best ways, each of which has its own angle
    """
    lines = []
    if chart.setup.machine.hoist.rope_length is not None:
        lines.append((REEVED, [str(n) for n in reeved(chart.setup, length=chart.length)]))
    ways = [] if chart.is_best else [choice[0] for choice in chart.choices]
    if np.any(chart.empty_hook.turns_over[ways]):
        rows = [_at_foot(chart.empty_hook, way, numbers) for way in ways]
        lines += [
            (name, list(line)) for name, line in zip(FOOT, zip(*rows, strict=True), strict=True)
        ]
    return lines


def _at_foot(found: EmptyHook, way: int, numbers: Numbers) -> tuple[str, str]:
    if not found.turns_over[way]:
        return "", ""
    if not found.stands[way]:
        return NOWHERE, NOWHERE
    return steep_angle(float(found.angle[way])), numbers.radius_down(float(found.radius[way]))


def lowest_angle(chart: Chart, configuration: int) -> str:
    """Write how low the boom of a way that is used may come with its empty hook.

    Returns
    -------
    str
        Nothing where the crane never turns over
    """
    if not chart.empty_hook.turns_over[configuration]:
        return ""
    return steep_angle(float(chart.empty_hook.angle[configuration]))


def foot_words(chart: Chart) -> str:
    """Say what is told at the foot about the empty hook; nothing where nothing is."""
    ways = np.unique(chart.used[chart.used >= 0]) if chart.is_best else np.ravel(chart.choices)
    if not np.any(chart.empty_hook.turns_over[ways]):
        return ""
    told = "an angle behind a way: never lower its boom below it"
    if not chart.is_best:
        told = f"{FOOT[0]}, {FOOT[1]}: boom angle and radius of each column"
    return (
        f"{told}; there the crane turns over with its empty hook, about the least tipping line and "
        "without any margin"
    )
