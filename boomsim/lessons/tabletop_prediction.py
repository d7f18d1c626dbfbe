"""The tabletop boom: the load at which it tips, and what that prediction hangs on."""

import math
import random
from dataclasses import replace
from functools import lru_cache

import numpy as np

from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass, Machine, Section, Support, TurningMass
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.setup import set_up
from boomsim.units import parse

MACHINE = "bench"
WAYS = {"A": (0.0, 1.0), "B": (0.5, 0.5), "C": (1.0, 0.0)}
"""One boom length in three ways [1]."""

RADIUS, SIDE = 0.80, math.pi / 2
"""Where the bottle hangs, over the side [m], [rad]."""

BOTTLE = 0.5
"""A load for pictures [kg]."""

SMALL = {"metric": "g", "us": "oz"}
"""Units of small masses."""


def bench() -> Machine:
    """Load the tabletop boom."""
    return load_machine(MACHINE)


@lru_cache(maxsize=64)
def tips_at(machine: Machine, way: str, *, farther: float = 0.0) -> float:
    """Load at which the tabletop crane tips, boom over the side [kg].

    Parameters
    ----------
    way : str
        A key of `WAYS`
    farther : float
        Added to the radius [m]

    Raises
    ------
    ValueError
        If there is no such way
    """
    if way not in WAYS:
        raise ValueError(f"There is no way {way!r}. Choose one of {', '.join(WAYS)}.")
    out = np.array(WAYS[way])
    setup = set_up(machine, slew=SIDE)
    return lift(setup, extension=out, load=BOTTLE, radius=RADIUS + farther).tipping_load


def shifts(machine: Machine, way: str) -> dict[str, float]:
    """Find what each input's standard uncertainty shifts the predicted tipping load by.

    Parameters
    ----------
    way : str
        A key of `WAYS`

    Returns
    -------
    dict of str to float
        [kg]
    """
    usual = tips_at(machine, way)
    found = {words: tips_at(made, way) - usual for words, made in variations(machine).items()}
    found["radius 2 mm farther"] = tips_at(machine, way, farther=0.002) - usual
    return found


def variations(machine: Machine) -> dict[str, Machine]:
    """Change one input of the machine at a time, by its standard uncertainty."""
    boom, weight = machine.boom, machine.counterweights[0]
    return {
        "counterweight 10 g heavier": _weighted(machine, replace(weight, mass=weight.mass + 0.010)),
        "counterweight 2 mm nearer": _weighted(machine, replace(weight, out=weight.out + 0.002)),
        "feet 2 mm wider": replace(
            machine, supports=tuple(_wider(s, 0.002) for s in machine.supports)
        ),
        "base plate 20 g heavier": replace(
            machine, carrier=tuple(_heavier(m, 0.020) for m in machine.carrier)
        ),
        "each tube 5 g heavier": replace(
            machine,
            boom=replace(boom, sections=tuple(_tube(s, 0.005) for s in boom.sections)),
        ),
    }


def _weighted(machine: Machine, usual: TurningMass) -> Machine:
    return replace(machine, counterweights=(usual, *machine.counterweights[1:]))


def _wider(support: Support, by: float) -> Support:
    points = tuple((x, y + math.copysign(by, y)) for x, y in support.points)
    return replace(support, points=points)


def _heavier(part: CarrierMass, by: float) -> CarrierMass:
    return replace(part, mass=part.mass + by)


def _tube(section: Section, by: float) -> Section:
    return replace(section, mass=section.mass + by)


def rehearsal(way: str, *, units: str = "metric", count: int = 6, seed: int = 1) -> list[str]:
    """Invent readings, to rehearse with before anything is built. They are no measurement.

    Parameters
    ----------
    way : str
        A key of `WAYS`
    seed : int
        Same seed, same readings
    """
    chance = random.Random(f"{way} {seed}")
    usual = tips_at(bench(), way)
    return [reading_text(usual + chance.gauss(0.01, 0.02), units) for _ in range(count)]


def small_mass(value: float, units: str = "metric") -> str:
    """Write a small mass with its sign.

    Parameters
    ----------
    value : float
        [kg]
    units : str
        "metric" (grams) or "us" (ounces)
    """
    unit = SMALL[units]
    return f"{value / parse(f'1 {unit}', 'mass'):.3g} {unit}"


def reading_text(value: float, units: str) -> str:
    """Write a reading of a kitchen scale.

    Parameters
    ----------
    value : float
        [kg]
    """
    unit = "kg" if units == "metric" else "lb"
    return f"{value / parse(f'1 {unit}', 'mass'):.2f} {unit}"
