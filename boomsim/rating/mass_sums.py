"""Masses in one unit, so written that a reader who adds them up gets the sum that is written."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import floor

from boomsim.units import Display, display

SMALL = 0.01
"""A part that makes less than this share of the largest part goes with all else [1]."""

REST = "all else"


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """One unit and its last digit, for all masses of one answer."""

    unit: Display

    @property
    def step(self) -> float:
        """What the last digit counts [kg]."""
        return float(self.unit.factor * 10.0**-self.unit.digits)

    def down(self, mass: float) -> int:
        """Whole steps in a rated load, which is never overstated [1]."""
        return round(float(self.unit.number_down(mass).replace(",", "")) * 10.0**self.unit.digits)

    def nearest(self, mass: float) -> int:
        """Whole steps in what is no rated load [1]."""
        return round(float(self.unit.number(mass).replace(",", "")) * 10.0**self.unit.digits)

    def below(self, capacity: float, takes: float) -> int:
        """Whole steps from a rated load up to what stability allows, both as they are told [1]."""
        return self.down(capacity + takes) - self.down(capacity)

    def text(self, steps: int) -> str:
        """Write so many steps, with the unit."""
        return self.unit.text(steps * self.step)

    def number(self, steps: int) -> str:
        """Write so many steps without their unit."""
        return self.unit.number(steps * self.step)

    def signed(self, steps: int) -> str:
        """Write a gain or a cost, with the unit."""
        return f"{'-' if steps < 0 else '+'}{self.text(abs(steps))}"


def scale_of(largest: float, units: str) -> Scale:
    """Choose the unit of an answer by its largest mass.

    Parameters
    ----------
    largest : float
        [kg]
    units : str
        "metric" or "us"
    """
    return Scale(unit=display("mass", units, like=largest))


def in_steps(parts: Mapping[str, float], *, total: int, scale: Scale) -> dict[str, int]:
    """Write parts in whole steps that add up to a total that is given.

    Parameters
    ----------
    parts : mapping of str to float
        [kg]
    total : int
        Within a step of their sum [1]
    scale : Scale

    Returns
    -------
    dict of str to int
        Each within a step of what it is; in the same order [1]
    """
    exact = {name: part / scale.step for name, part in parts.items()}
    shown = {name: floor(value) for name, value in exact.items()}
    most_lost = sorted(exact, key=lambda name: shown[name] - exact[name])
    for name in most_lost[: max(total - sum(shown.values()), 0)]:
        shown[name] += 1
    return shown


def with_rest(parts: Mapping[str, float]) -> dict[str, float]:
    """Sum up what is small beside the largest part.

    Parameters
    ----------
    parts : mapping of str to float
        [kg]

    Returns
    -------
    dict of str to float
        The large ones and `REST`, which may be nought [kg]
    """
    least = SMALL * max((abs(part) for part in parts.values()), default=0.0)
    kept = {name: part for name, part in parts.items() if abs(part) > least}
    return {**kept, REST: sum(parts.values()) - sum(kept.values())}
