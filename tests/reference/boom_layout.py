"""Where the boom's parts lie before loading, and how hard its rope pulls."""

import math
from dataclasses import dataclass

import numpy as np
from frame import Floats, Point

from boomsim.machine.model import Machine

GRAVITY = 9.80665
"""Standard acceleration of free fall [m/s2]."""


def places(machine: Machine, fractions: tuple[float, ...]) -> tuple[Floats, Floats]:
    """Tail and front of every section from the heel pin.

    Parameters
    ----------
    machine : Machine
    fractions : tuple of float
        How far each moving section is out, base side first [1]

    Returns
    -------
    tails, fronts : ndarray, shape (sections,)
        [m]
    """
    sections = machine.boom.sections
    steps = [sections[0].length]
    steps += [s.nose + s.stroke * f for s, f in zip(sections[1:], fractions, strict=True)]
    fronts = np.cumsum(steps)
    return fronts - np.array([s.length for s in sections]), fronts


def rope_tension(machine: Machine, load: float, parts: int | None = None) -> float:
    """Pull in the lead line, load g / (E (1 - E^N)/(1 - E)) [N].

    Parameters
    ----------
    machine : Machine
    load : float
        Gross load [kg]
    parts : int or None
        Parts of line; None for the usual number

    Returns
    -------
    float
        [N]
    """
    count = machine.hoist.parts[-1] if parts is None else parts
    efficiency = machine.hoist.sheave_efficiency
    return load * GRAVITY / sum(efficiency**k for k in range(1, count + 1))


@dataclass(frozen=True, slots=True, kw_only=True)
class Axis:
    """A section's tail [m] and its axis' angle from x [rad] before loading."""

    tail: Point
    angle: float

    def at(self, along: float, above: float = 0.0) -> Point:
        """Point `along` the axis from the tail and `above` it [m]."""
        cos, sin = math.cos(self.angle), math.sin(self.angle)
        x, y = self.tail
        return x + along * cos - above * sin, y + along * sin + above * cos


def section_axes(tails: Floats, turns: tuple[float, ...]) -> list[Axis]:
    """Each section's tail sits on the outer section's axis, turned by its droop."""
    axes = [Axis(tail=(0.0, 0.0), angle=0.0)]
    for gap, turn in zip(np.diff(tails), turns[1:], strict=True):
        outer = axes[-1]
        axes.append(Axis(tail=outer.at(float(gap)), angle=outer.angle + turn))
    return axes


def from_heel(machine: Machine, out: float, up: float, theta: float) -> Point:
    """A point of the superstructure in the base section's axes [m]."""
    x, y = out - machine.heel_out, up - machine.heel_up
    cos, sin = math.cos(theta), math.sin(theta)
    return x * cos + y * sin, -x * sin + y * cos
