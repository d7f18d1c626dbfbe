"""Rules: how far a rated load stays from what would happen. Data, shown with every capacity.

Derived in docs/theory.md, section 7.
"""

import math
from dataclasses import dataclass, fields, replace
from typing import Any

from boomsim.machine.model import Disturbances
from boomsim.mechanics.external_loads import hoisting_factor


@dataclass(frozen=True, slots=True, kw_only=True)
class StabilityRule:
    """How a rated load follows from the tipping load T.

    Attributes
    ----------
    kind : str
        "share": P = share T. "test load": P = (T - boom_share F)/load_factor, where F is the
        boom's weight referred to the head
    share_outriggers, share_tyres : float
        For "share" [1]
    load_factor, boom_share : float
        For "test load" [1]
    backward_share : float
        Least share of the crane's weight on its boom side without a load [1]
    """

    kind: str
    share_outriggers: float = 0.85
    share_tyres: float = 0.75
    load_factor: float = 1.25
    boom_share: float = 0.1
    backward_share: float = 0.15
    source: str

    def share(self, support_kind: str) -> float:
        """Share of the tipping load for a kind of support [1]."""
        return self.share_tyres if support_kind == "tyres" else self.share_outriggers


@dataclass(frozen=True, slots=True, kw_only=True)
class StrengthRule:
    """How far stresses stay from yield, and loads from the elastic critical load.

    Attributes
    ----------
    dead, live : float
        Partial factors on the machine's own weight and on the gross load [1]
    resistance : float
        What yield stresses and lock strengths are divided by [1]
    buckling : float
        Least ratio of the elastic critical load to the load, on top of `dead` and `live` [1]
    """

    dead: float = 1.0
    live: float = 1.0
    resistance: float
    buckling: float
    source: str


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A stability rule, a strength rule and the allowances in it, under one name.

    Attributes
    ----------
    allowances : Allowances or None
        None: a lift is judged by what is given and by nothing else
    """

    name: str
    stability: StabilityRule
    strength: StrengthRule
    allowances: Allowances | None = None

    def strains(self, given: Disturbances) -> Disturbances:
        """Say what strength has to bear under given disturbances."""
        return given if self.allowances is None else self.allowances.beside(given)

    def without_allowances(self) -> "Rule":
        """Leave what is not given out, so that a calculation by hand can be compared."""
        return replace(self, allowances=None)


SHARE_OF_TIPPING = StabilityRule(
    kind="share",
    source="85 % of the tipping load on outriggers, 75 % on tyres: ASME B30.5, SAE J1289",
)
TEST_LOAD = StabilityRule(
    kind="test load", source="tipping load at least 1.25 P + 0.1 F: ISO 4305 (from memory)"
)
ALLOWABLE_STRESS = StrengthRule(
    resistance=1.5,
    buckling=1.92,
    source="yield stress over 1.5; elastic critical load over 23/12 as AISC 1989 (from memory)",
)
LIMIT_STATES = StrengthRule(
    dead=1.22,
    live=1.34,
    resistance=1.1,
    buckling=1.1,
    source="EN 13001-2 combination A: own weight x 1.22, load x 1.34, yield / 1.1 (from memory)",
)

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

RULES = {
    rule.name: rule
    for rule in (
        Rule(name=name, stability=stability, strength=strength, allowances=USUAL_ALLOWANCES)
        for name, stability, strength in (
            ("share", SHARE_OF_TIPPING, ALLOWABLE_STRESS),
            ("test-load", TEST_LOAD, ALLOWABLE_STRESS),
            ("limit-states", TEST_LOAD, LIMIT_STATES),
        )
    )
}
"""The rules that a command or a blueprint can name."""
