"""The checks before a pick, in the order in which an operator makes them."""

from collections.abc import Callable
from dataclasses import dataclass
from math import sqrt

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array
from boomsim.rating.around.float_loads import GroundLoads
from boomsim.rating.charts.chart_reading import Reading, read_chart
from boomsim.rating.charts.hoist_line import line_limit, parts_of_column
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.lift_response import Response
from boomsim.rating.pick.pick_asked import Asked, leaves_rear
from boomsim.rating.setup import Setup

WITHIN, BEYOND, UNKNOWN, NOTED = "within", "not within", "not looked at", "worked out"
"""What a check comes to; `NOTED` of one that only settles what the others are held against."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Found:
    """What the checks are made of.

    Attributes
    ----------
    setup : Setup
        Of the chart that is read
    legal : ndarray or None
        Other ways out of the same length; None where this is none of the boom's [1]
    angle : float
        Boom angle at which the empty hook was measured; the load is lifted at it [rad]
    radius : float
        With the load on at that angle; NaN where the boom finds no equilibrium [m]
    gross : float
        Load with all that is deducted [kg]
    chart : Chart
        Of this way out alone
    reading : Reading or None
        None where the chart has no row
    at : Response
        With the load on
    ground : GroundLoads or None
        Through the swing; None where the boom finds no equilibrium
    """

    setup: Setup
    asked: Asked
    boom: Condensed
    legal: Array | None
    angle: float
    radius: float
    gross: float
    chart: Chart
    reading: Reading | None
    at: Response
    ground: GroundLoads | None

    @property
    def growth(self) -> float:
        """By how much the radius grows as the load comes on [m]."""
        return self.radius - self.asked.radius

    @property
    def turns_over(self) -> bool:
        """True where the supports hold nothing somewhere on the swing, without any margin."""
        return self.ground is None or bool(np.any(self.ground.loads.reactions.tipped))

    @property
    def pressure(self) -> float:
        """Largest on the ground, through the swing; NaN where the crane turns over [Pa]."""
        if self.ground is None or self.turns_over:
            return float("nan")
        return float(self.ground.pressure.max())

    @property
    def wind_limit(self) -> float:
        """Gusts up to which the chart holds for this load; zero without allowances [m/s]."""
        allowed = self.setup.rule.allowances
        if allowed is None:
            return 0.0
        return permitted_wind(
            allowed.wind_speed.value,
            area=self.asked.load_area or 0.0,
            area_in_chart=allowed.load_area.value,
        )

    @property
    def level_limit(self) -> float:
        """How far out of level the chart holds; zero without allowances [rad]."""
        allowed = self.setup.rule.allowances
        return 0.0 if allowed is None else min(allowed.lean.value, allowed.lean_across.value)


def permitted_wind(speed: float, *, area: float, area_in_chart: float) -> float:
    """Gusts in which a load shows the wind no more force than the chart has in it [m/s].

    v = v_chart sqrt(a_chart/a) for a larger area of each kilogram, for the force goes with a v2; a
    smaller area does not raise what the chart says.

    Parameters
    ----------
    speed : float
        Of the chart [m/s]
    area, area_in_chart : float
        Wind area of each kilogram of load, with its shape coefficient [m2/kg]

    Notes
    -----
    EN 13000 and the trade's manuals (from memory): v = v_chart sqrt(1.2 m2/t m/A_w).

    Examples
    --------
    >>> permitted_wind(9.0, area=4.8e-3, area_in_chart=1.2e-3)
    4.5
    """
    return speed * sqrt(area_in_chart / area) if area > area_in_chart else speed


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One check.

    Attributes
    ----------
    key : str
        Stable name, such as "ground"
    title : str
        As it is named before a class
    state : str
        `WITHIN`, `BEYOND`, `UNKNOWN` or `NOTED`
    quantity : str or None
        What is measured, a key of :data:`boomsim.units.QUANTITIES`
    found, limit : float or None
        What was found and what it is held against [SI unit of the quantity]
    """

    key: str
    title: str
    state: str
    quantity: str | None = None
    found: float | None = None
    limit: float | None = None

    @property
    def utilisation(self) -> float | None:
        """Found over limit; None where one of them is no number above zero [1]."""
        if self.found is None or self.limit is None or not self.limit > 0.0:
            return None
        return self.found / self.limit


def read_own_column(
    chart: Chart, *, radius: float, asked: Asked, units: str, like: Reading | None = None
) -> Reading | None:
    """Read the first column of a chart for a pick; None where there is no row for the radius.

    Parameters
    ----------
    radius : float
        [m]
    units : str
        In which the chart is printed
    like : Reading, optional
        Whose parts of line and deductions are taken (default: those of the cell itself)
    """
    if not chart.radii[0] <= radius <= chart.radii[-1]:
        return None
    return read_chart(
        chart,
        radius=radius,
        extension=chart.configurations.extension[0],
        load=asked.load,
        stowed_jib=asked.jib,
        parts=None if like is None else like.parts,
        deductions=None if like is None else like.deductions,
        units=units,
    )


def checks_of(found: Found) -> tuple[Check, ...]:
    """Make every check, whatever the ones before it say."""
    return tuple(make(found) for make in ORDER)


def _held(key: str, title: str, quantity: str, found: float | None, limit: float | None) -> Check:
    """Hold a figure against its limit; what is no number is not within."""
    state = UNKNOWN
    if found is not None and limit is not None:
        state = WITHIN if found <= limit * (1.0 + 1e-9) else BEYOND
    return Check(key=key, title=title, state=state, quantity=quantity, found=found, limit=limit)


def _radius(found: Found) -> Check:
    farthest = float(found.chart.radii[-1])
    on_chart = found.reading is not None
    return Check(
        key="radius",
        title="radius",
        state=WITHIN if on_chart else BEYOND,
        quantity="length",
        found=found.radius,
        limit=farthest,
    )


def _way_out(found: Found) -> Check:
    state = BEYOND if found.legal is None else WITHIN
    return Check(key="way out", title="way out", state=state)


def _sector(found: Found) -> Check:
    rear = found.setup.sector == "over the rear"
    state = BEYOND if rear and leaves_rear(found.setup, found.asked) else WITHIN
    return Check(key="sector", title="sector", state=state)


def _supports(found: Found) -> Check:
    state = BEYOND if found.turns_over else WITHIN
    return Check(key="supports", title=found.setup.support.kind, state=state)


def _ground(found: Found) -> Check:
    held = _held("ground", "ground", "pressure", found.pressure, found.asked.bearing)
    if found.turns_over:
        return Check(key="ground", title="ground", state=BEYOND, quantity="pressure",
                     limit=found.asked.bearing)  # fmt: skip
    return held


def _deductions(found: Found) -> Check:
    return Check(key="deductions", title="gross load", state=NOTED, quantity="mass",
                 found=found.gross)  # fmt: skip


def _wind(found: Found) -> Check:
    asked = found.asked
    known = asked.wind is not None and asked.load_area is not None
    limit = found.wind_limit if asked.load_area is not None else None
    check = _held("wind", "wind", "speed", asked.wind if known else None, limit)
    return check if known else Check(key="wind", title="wind", state=UNKNOWN, quantity="speed",
                                     found=asked.wind, limit=limit)  # fmt: skip


def _level(found: Found) -> Check:
    return _held("level", "level", "angle", found.asked.level, found.level_limit)


def _chart(found: Found) -> Check:
    # A blank cell holds nothing, and so does a radius without a row.
    cell = 0.0 if found.reading is None else found.reading.cell
    return _held("chart", "chart", "mass", found.gross, cell)


def _rope(found: Found) -> Check:
    limit = line_limit(found.chart, parts=parts_of_column(found.chart, column=0))
    return _held("rope", "parts of line", "mass", found.gross, limit)


def _block(found: Found) -> Check:
    hung = found.asked.load + found.setup.machine.slings
    return _held("block", "hook block", "mass", hung, found.asked.block)


ORDER: tuple[Callable[[Found], Check], ...] = (
    _radius,
    _way_out,
    _sector,
    _supports,
    _ground,
    _deductions,
    _wind,
    _level,
    _chart,
    _rope,
    _block,
)
"""In which the checks are made."""
