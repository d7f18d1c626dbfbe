"""Allowances: what strength carries at a rated load without its being given, part of a rule.

Derived in docs/theory.md, section 7.
"""

import math
from dataclasses import dataclass, fields
from typing import Any

from boomsim.machine.model import Disturbances
from boomsim.mechanics.hoisting_factor import hoisting_factor


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowance:
    """One disturbance that a rated load bears already: how much of it, and who says so.

    Attributes
    ----------
    value : float
        [SI unit of the disturbance]
    """

    value: float
    source: str = "assumed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowances:
    """What strength and makers' permissible values bear at a rated load without its being given.

    The static line pull knows none of it, and stability none: its margin is for that.

    Attributes
    ----------
    side_pull : Allowance
        Share of the load [1]
    hoist_speed, hoist_class : Allowance
        Steady hoisting speed [m/s] and class [1], which make the hoisting factor
    wind_speed, load_area : Allowance
        From behind [m/s], on so much of the load [m2/kg]
    lean, lean_across : Allowance
        Out of level, ahead and to the left [rad]
    """

    side_pull: Allowance
    hoist_speed: Allowance
    hoist_class: Allowance
    wind_speed: Allowance
    load_area: Allowance
    lean: Allowance
    lean_across: Allowance

    def acting(self) -> Disturbances:
        """Say what acts where nothing is given."""
        given = {one.name: getattr(self, one.name).value for one in fields(self)}
        return Disturbances(**{**given, "hoist_class": int(given["hoist_class"])})

    def beside(self, given: Disturbances) -> Disturbances:
        """Take, for each quantity, the larger of the allowance and what is given.

        What acts across acts to one side, whichever that is: the boom is as strong to the other. A
        wind given across the boom comes beside the allowance for one from behind.
        """
        own = self.acting()
        across = given.wind_across
        return Disturbances(
            wind_speed=own.wind_speed if across else max(own.wind_speed, given.wind_speed),
            wind_beside=given.wind_speed if across else 0.0,
            load_area=max(own.load_area, given.load_area),
            side_pull=max(own.side_pull, given.side_pull),
            lean=max(own.lean, given.lean),
            lean_across=max(own.lean_across, abs(given.lean_across)),
            **max((_hoisting(own), _hoisting(given)), key=_factor),
        )


def _hoisting(change: Disturbances) -> dict[str, Any]:
    return {"hoist_speed": change.hoist_speed, "hoist_class": change.hoist_class}


def _factor(hoisting: dict[str, Any]) -> float:
    return hoisting_factor(hoisting["hoist_speed"], hoist_class=hoisting["hoist_class"])


USUAL_ALLOWANCES = Allowances(
    side_pull=Allowance(value=0.02, source="SAE J1063 side load, from memory"),
    hoist_speed=Allowance(value=0.3),
    hoist_class=Allowance(value=1, source="HC1 of EN 13001-2, from memory"),
    wind_speed=Allowance(value=9.0),
    load_area=Allowance(value=1.2e-3, source="EN 13000, from memory"),
    lean=Allowance(value=math.radians(0.5)),
    lean_across=Allowance(value=math.radians(0.5)),
)
"""In the practice of the trade; where no source is named, assumed."""
