"""Words that figures share: how the crane is set up, and which rule rates it."""

from dataclasses import fields

from boomsim.machine.model import CALM, Disturbances
from boomsim.rating.rules import Rule
from boomsim.rating.setup import Setup
from boomsim.units import show


def machine_words(setup: Setup) -> str:
    """Name a machine and say that it is invented.

    Parameters
    ----------
    setup : Setup

    Returns
    -------
    str
    """
    return f"{setup.machine.name} (invented)"


def setup_words(setup: Setup, *, units: str = "metric") -> str:
    """Say what a rating holds for: sector, counterweight, supports, parts of line, rule.

    Parameters
    ----------
    setup : Setup
    units : str
        "metric" or "us"

    Returns
    -------
    str
    """
    weight = setup.counterweight
    return "; ".join(
        [
            setup.sector,
            f"counterweight {show(weight.mass, 'mass', units) if weight.mass > 0 else 'none'}",
            f"{setup.support.kind} {setup.support.name}".replace("tyres tyres", "on tyres"),
            f"{setup.parts} parts of line" if setup.parts > 1 else "1 part of line",
            rule_words(setup.rule, support_kind=setup.support.kind),
            *([disturbance_words(setup.disturbances)] if setup.disturbances != CALM else []),
        ]
    )


def rule_words(rule: Rule, *, support_kind: str) -> str:
    """Say how far a rated load stays from tipping and from yield.

    Parameters
    ----------
    rule : Rule
    support_kind : str
        "outriggers" or "tyres"

    Returns
    -------
    str
    """
    stability, strength = rule.stability, rule.strength
    if stability.kind == "share":
        tips = f"{100 * stability.share(support_kind):.0f} % of the tipping load"
    else:
        tips = f"tipping load at least {stability.load_factor:g} P + {stability.boom_share:g} F"
    factors = ""
    if strength.dead != 1.0 or strength.live != 1.0:
        factors = f" under {strength.dead:g} x own weight and {strength.live:g} x load"
    return f"{tips}; yield stress / {strength.resistance:g}{factors}"


def disturbance_words(disturbances: Disturbances) -> str:
    """List what disturbs the lift, in the words of the data.

    Parameters
    ----------
    disturbances : Disturbances

    Returns
    -------
    str
    """
    named = [f for f in fields(Disturbances) if getattr(disturbances, f.name) != f.default]
    words = [f"{f.name.replace('_', ' ')} {getattr(disturbances, f.name):g}" for f in named]
    return "disturbed: " + ", ".join(words)
