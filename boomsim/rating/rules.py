"""Rules: how far a rated load stays from what would happen. Data, shown with every capacity.

Derived in docs/theory.md, section 7.
"""

from dataclasses import dataclass, replace

from boomsim.machine.model import Disturbances
from boomsim.rating.allowances import USUAL_ALLOWANCES, Allowances


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
