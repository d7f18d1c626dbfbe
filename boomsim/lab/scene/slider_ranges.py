"""How far each slider goes and in which steps, in the units that are shown."""

from dataclasses import dataclass, replace
from math import ceil, floor, isfinite, log10

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine
from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.rating.strategies import range_of_length
from boomsim.units import Display, display

STEPS = 500
"""A slider has some so many steps: fine enough to aim, few enough for the arrow keys."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """Of one slider.

    Attributes
    ----------
    shown : Display
        Unit and digits
    least, most, step : float
        In that unit
    """

    shown: Display
    least: float
    most: float
    step: float

    @property
    def digits(self) -> int:
        """Decimal places that tell two steps apart."""
        return max(0, -floor(log10(self.step) + 1e-9))

    def with_value(self, value: float) -> "Range":
        """The range, long enough to hold a value [SI]."""
        steps = (value / self.shown.factor - self.least) / self.step
        if not isfinite(steps):
            return self
        least = self.least + min(floor(steps + 1e-9), 0) * self.step
        most = max(self.most, self.least + ceil(steps - 1e-9) * self.step)
        return replace(self, least=round(least, 9), most=round(most, 9))

    def to_shown(self, value: float) -> float:
        """From SI to the slider's nearest step, inside its range."""
        steps = round((value / self.shown.factor - self.least) / self.step)
        nearest = round(self.least + steps * self.step, self.digits + 1)
        return min(max(nearest, self.least), self.most)

    def to_si(self, value: float) -> float:
        """From a slider's value to SI, without the noise of the last digits."""
        return float(f"{value * self.shown.factor:.12g}")


def rounded(value: float, *, figures: int = 2) -> float:
    """Round to so many figures, for a start that reads well.

    Parameters
    ----------
    value : float
        Any unit
    figures : int
        [1]

    Returns
    -------
    float
        The same unit
    """
    return float(f"{value:.{figures}g}")


def nice_step(span: float, *, most: int) -> float:
    """Step of 1, 2 or 5 times a power of ten that parts a span into at most so many pieces.

    Parameters
    ----------
    span : float
        Any unit
    most : int
        [1]

    Returns
    -------
    float
        The same unit
    """
    least = span / most
    power = 10.0 ** floor(log10(least))
    return next(power * k for k in (1.0, 2.0, 5.0, 10.0) if power * k >= least * (1.0 - 1e-9))


BEYOND = 0.1
"""A radius slider goes so far past what the boom reaches, so that the end is met [1]."""


def radius_range(machine: Machine, *, length: float, units: str) -> Range:
    """Radii that a boom reaches, and a little on either side.

    Parameters
    ----------
    length : float
        Of the boom as it is out [m]
    """
    boom, heel = machine.boom, machine.heel_out
    longest = heel + range_of_length(boom)[1]
    shown = display("length", units, like=longest)
    # One step for all lengths of a machine, so that an arrow key always moves as far.
    step = nice_step(longest / shown.factor, most=STEPS)
    near, far = (heel + length * float(np.cos(a)) for a in (boom.greatest_angle, boom.least_angle))
    room = BEYOND * (far - near)
    least = max(_up((near - room) / shown.factor, step), step)
    return Range(shown=shown, least=least, most=_up((far + room) / shown.factor, step), step=step)


def angle_range(machine: Machine, *, units: str) -> Range:
    """Boom angles that the machine allows."""
    boom = machine.boom
    return Range(
        shown=display("angle", units),
        least=round(float(np.degrees(boom.least_angle)), 6),
        most=round(float(np.degrees(boom.greatest_angle)), 6),
        step=0.1,
    )


def load_range(machine: Machine, *, units: str) -> Range:
    """Gross loads up to what the rope holds with all its parts."""
    most_parts, hoist = max(machine.hoist.parts), machine.hoist
    advantage = tackle_advantage(most_parts, sheave_efficiency=hoist.sheave_efficiency)
    heaviest = hoist.line_pull * advantage / GRAVITY
    shown = display("mass", units, like=heaviest)
    step = nice_step(heaviest / shown.factor, most=2 * STEPS)
    return Range(shown=shown, least=0.0, most=_up(heaviest / shown.factor, step), step=step)


def slew_range(*, units: str) -> Range:
    """All around, with the rear in the middle."""
    return Range(shown=display("angle", units), least=-180.0, most=180.0, step=1.0)


def _up(value: float, step: float) -> float:
    return round(step * ceil(value / step - 1e-9), 9)
