"""The figures and short words of a chart page: numbers, codes of limits, ways to extend."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.chart import Chart
from boomsim.rating.charts.grid import LENGTH_UNIT, MASS_UNIT, printed_decimals
from boomsim.rating.charts.line import line_limit
from boomsim.rating.limits.kind import STABILITY, Limit
from boomsim.units import rounded

NO_LOAD = "–"
"""In a cell that the boom can reach and where no load may hang."""


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
        if steps < 0:
            return ""
        return f"{steps * self.scale:,.{self.decimals}f}" if steps else NO_LOAD

    def radius(self, value: float) -> str:
        """Write a radius [m]."""
        return rounded(value / self.unit, self.row_decimals)

    def boom(self, value: float) -> str:
        """Write a boom length [m]."""
        return rounded(value / self.unit, self.boom_decimals)


def numbers_of(chart: Chart, *, units: str) -> Numbers:
    """Choose units and decimals, the same for all charts of one machine.

    Parameters
    ----------
    chart : Chart
    units : str
        "metric" or "us"

    Returns
    -------
    Numbers
    """
    most = line_limit(chart, parts=chart.setup.machine.hoist.parts[-1]) / MASS_UNIT[units]
    many = most >= (1e3 if units == "metric" else 1e5)
    names = {"metric": ("kg", "t"), "us": ("lb", "1000 lb")}
    scale = chart.step / MASS_UNIT[units] / (1e3 if many else 1.0)
    unit = LENGTH_UNIT[units]
    row_decimals, boom_decimals = printed_decimals(chart.radii, units=units)
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

    Parameters
    ----------
    limit : Limit

    Returns
    -------
    str
        Nothing where the crane tips
    """
    return limit.kind.code + ("" if limit.section is None else str(limit.section))


def tips(limit: Limit) -> bool:
    """Whether the limit is one of stability."""
    return limit.set_by == STABILITY


def way(boom: Boom, extension: Array) -> str:
    """Write a way to extend in few signs: numbers of lock positions, or whole percents.

    Parameters
    ----------
    boom : Boom
    extension : ndarray, shape (moving sections,)
        [1]

    Returns
    -------
    str
        Base side first
    """
    locks = np.array(boom.lock_positions)
    if locks_are_numbered(boom):
        return "".join(str(int(np.argmin(np.abs(locks - f)))) for f in extension)
    return " ".join(percent(f) for f in extension)


def locks_are_numbered(boom: Boom) -> bool:
    """Tell whether one digit names each lock position of a pinned boom."""
    return boom.systems == ("pinned",) and len(boom.lock_positions) <= 10


def lock_words(boom: Boom) -> str:
    """Say what the numbers of lock positions stand for.

    Parameters
    ----------
    boom : Boom

    Returns
    -------
    str
    """
    listed = ", ".join(f"{k} = {100 * p:g} %" for k, p in enumerate(boom.lock_positions))
    return f"digits: lock position of each moving section, base side first: {listed}"


def percent(fraction: float) -> str:
    """Whole percents, halves up: 46.5 % is "47"."""
    return f"{np.floor(100.0 * fraction + 0.5 + 1e-9):.0f}"
