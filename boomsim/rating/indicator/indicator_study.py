"""What an indicator shows beside what is: one lift under conditions that it does not see.

What is: the load over what the call path rates, with everything in it, at the radius that a chart
counts (level, still air). What it shows: its load over what its chart holds for what it was told,
at its radius. A load that swings out counts as the still load that uses the crane as much.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.machine.model import CALM
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.capacity import rate
from boomsim.rating.dynamics.dynamics_study import (
    Dynamics,
    Motion,
    as_disturbances,
    dynamics,
)
from boomsim.rating.indicator.indicator_conditions import Amounts, Condition, conditions
from boomsim.rating.indicator.indicator_formula import Sensors, Shown, measure, shown
from boomsim.rating.lift_response import respond
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.parts_reeved import as_reeved, hanging_mass
from boomsim.rating.path.lowering_study import refuse_load
from boomsim.rating.setup import Setup

USUAL_SHARE = 0.9
"""Of the rated load, what hangs where no load is given [1]."""

CLOSE = 0.03
"""So near to the truth an indicator counts as seeing a condition [1]."""

RIGHT, LESS, MORE = "about right", "shows too little", "shows too much"
"""How what it shows stands to what is; the second is the dangerous one."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Row:
    """One condition.

    Attributes
    ----------
    condition : Condition
    sensors : Sensors
    shown : Shown
    rated : float
        What is rated as the crane is, at the radius of the lift; zero where nothing is [kg]
    utilisation : float
        What hangs over it; infinite where nothing is rated [1]
    shown_utilisation : float
        What it shows over what its chart holds at its radius; NaN where that is blank [1]
    """

    condition: Condition
    sensors: Sensors
    shown: Shown
    rated: float
    utilisation: float
    shown_utilisation: float

    @property
    def verdict(self) -> str:
        """`RIGHT`, `LESS` or `MORE`."""
        if abs(self.shown_utilisation - self.utilisation) <= CLOSE:
            return RIGHT
        return MORE if self.shown_utilisation > self.utilisation else LESS


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Indicated:
    """One lift under all conditions.

    Attributes
    ----------
    setup : Setup
        As it was told
    extension : ndarray, shape (moving sections,)
        As it was told [1]
    length, radius, load, rated : float
        Boom length and radius [m], gross load and what is rated as told [kg]
    amounts : Amounts
    swing_angle : float
        Of the rope while the load swings out [rad]
    rows : tuple of Row
    """

    setup: Setup
    extension: Array
    length: float
    radius: float
    load: float
    rated: float
    amounts: Amounts
    swing_angle: float
    rows: tuple[Row, ...]


def indicate(
    setup: Setup,
    *,
    extension: Array,
    radius: float,
    load: float | None = None,
    amounts: Amounts | None = None,
) -> Indicated:
    """Set what an indicator shows beside what is.

    Parameters
    ----------
    setup : Setup
        As the indicator was told: calm
    extension : ndarray, shape (moving sections,)
        As it was told [1]
    radius : float
        With the load on, level and in still air [m]
    load : float, optional
        Gross; default: nine tenths of the rated one [kg]
    amounts : Amounts, optional

    Raises
    ------
    ValueError
        If nothing is rated there, the load is none, or an amount is.
    """
    much = amounts or Amounts()
    _refuse(much)
    boom = condense(setup.machine, extension=np.atleast_2d(extension))
    refuse_too_long(setup, length=boom.layout.boom_length)
    length = float(boom.layout.boom_length[0])
    setup = as_reeved(setup, length=length)
    rated = _rated(setup, extension, radius)
    if not rated > 0.0:
        raise ValueError(
            f"Nothing is rated at a radius of {radius:.2f} m with this boom, so that an indicator "
            "has no chart there. Choose another radius."
        )
    hung = USUAL_SHARE * rated if load is None else load
    refuse_load(setup, hung, length=length)
    steepest = setup.machine.boom.greatest_angle
    if not hung > float(hanging_mass(setup, length=length, angle=steepest)[0, 0]) * 1.01:
        raise ValueError(
            f"A load of {hung:.0f} kg is no more than the empty hook. Hang more on it."
        )
    swung = dynamics(
        setup,
        extension=extension,
        radius=radius,
        load=hung,
        motion=Motion(swing=much.swing),
    )
    rows = tuple(
        _row(one, radius, hung, swung.swing_angle, _swung_utilisation(swung))
        for one in conditions(setup, extension=boom.layout.extension[0], radius=radius,
                              amounts=much)
    )  # fmt: skip
    return Indicated(
        setup=setup,
        extension=boom.layout.extension[0],
        length=float(boom.layout.boom_length[0]),
        radius=radius,
        load=hung,
        rated=rated,
        amounts=much,
        swing_angle=swung.swing_angle,
        rows=rows,
    )


def _refuse(amounts: Amounts) -> None:
    bounds = (
        ("side-pull", amounts.side_pull, 0.0, 0.3, "of the load"),
        ("lean", amounts.lean, 0.0, 0.18, "rad, some ten degrees"),
        ("wind", amounts.wind, 0.0, 60.0, "m/s"),
        ("load-area", amounts.load_area, 0.0, 0.1, "m2 for each kilogram"),
        ("swing", amounts.swing, 0.0, 5.0, "m/s"),
    )
    for name, value, least, most, unit in bounds:
        if not least <= value <= most:
            raise ValueError(
                f"--{name}: {value:g} is outside {least:g} to {most:g} {unit}. Give a value inside."
            )


def _swung_utilisation(swung: Dynamics) -> float:
    return next(one.share for one in swung.effects if one.key == "swung out")


def _empty(setup: Setup, extension: Array, angle: float) -> float:
    """What hangs on the empty hook [kg]."""
    length = layout(setup.machine.boom, extension=extension).boom_length
    return float(hanging_mass(setup, length=length, angle=angle)[0, 0])


def _rated(setup: Setup, extension: Array, radius: float) -> float:
    if not radius > 0.0:
        return 0.0
    capacity = rate(setup, extension=extension, radius=np.array([radius])).capacity[0, 0]
    return float(np.nan_to_num(capacity))


def _row(
    condition: Condition, radius: float, load: float, swing: float, swung_utilisation: float
) -> Row:
    actual, told = condition.actual, condition.entered
    boom = condense(actual.machine, extension=condition.extension[None])
    hung = np.array([[load]])
    # The boom stands where the load hangs at the radius on level ground in still air.
    level = respond(
        replace(actual, disturbances=CALM), boom=boom, load=hung, radius=np.array([[radius]])
    )
    pulled = actual
    if condition.swung:
        pulls = as_disturbances(float(np.tan(swing)), 0.0)
        pulled = replace(actual, disturbances=pulls, rule=actual.rule.without_allowances())
    at = respond(pulled, boom=boom, load=hung, angle=level.state.angle)
    sensors = measure(at)
    made = shown(
        told,
        extension=condition.told,
        sensors=sensors,
        teach=load / 2.0 + _empty(told, condition.told, sensors.angle),
        bends=condition.bends,
    )
    rated = _rated(actual, condition.extension, radius)
    chart = _rated(told, condition.told, made.radius)
    utilisation = load / rated if rated > 0.0 else float("inf")
    return Row(
        condition=condition,
        sensors=sensors,
        shown=made,
        rated=rated,
        utilisation=swung_utilisation if condition.swung else utilisation,
        shown_utilisation=made.load / chart if chart > 0.0 else float("nan"),
    )
