"""Words that figures share: how the crane is set up, and which rule rates it."""

import math
from dataclasses import fields

from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.loads import hoisting_factor
from boomsim.rating.rules import Allowances, Rule
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
            *(disturbance_words(d, units=units) for d in (setup.disturbances,) if d != CALM),
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
    strained = f"yield stress / {strength.resistance:g}{factors}"
    if rule.allowances is None:
        return f"{tips}; {strained}"
    return f"{tips}; {strained}; strength with {allowance_words(rule.allowances)}"


def allowance_words(allowances: Allowances) -> str:
    """Name each allowance with its value and its source.

    Parameters
    ----------
    allowances : Allowances

    Returns
    -------
    str
    """
    has, side = allowances, 100.0 * allowances.side_pull.value
    factor = hoisting_factor(has.hoist_speed.value, hoist_class=int(has.hoist_class.value))
    ahead, across = (math.degrees(one.value) for one in (has.lean, has.lean_across))
    return ", ".join(
        [
            f"side pull {side:g} % ({has.side_pull.source})",
            f"hoisting factor {factor:.2f} ({has.hoist_speed.source} {has.hoist_speed.value:g} m/s,"
            f" {has.hoist_class.source})",
            f"wind {has.wind_speed.value:g} m/s from behind ({has.wind_speed.source})",
            f"load's wind area {1000 * has.load_area.value:g} m2 a tonne ({has.load_area.source})",
            f"{ahead:.1f} deg out of level ahead ({has.lean.source})",
            f"{across:.1f} deg across ({has.lean_across.source})",
        ]
    )


_DISTURBED = {
    "wind_speed": ("wind {}", "speed"),
    "load_area": ("load's wind area {}", "area_per_mass"),
    "side_pull": ("side pull {} of the load", "share"),
    "hoist_speed": ("hoisting at {}", "speed"),
    "hoist_class": ("hoisting class {}", "number"),
    "lean": ("leaning {} towards the boom", "angle"),
    "lean_across": ("leaning {} to its left", "angle"),
}


def disturbance_words(disturbances: Disturbances, *, units: str = "metric") -> str:
    """List what disturbs the lift.

    Parameters
    ----------
    disturbances : Disturbances
    units : str
        "metric" or "us"

    Returns
    -------
    str
        Such as "wind 9.00 m/s from behind"
    """
    named = {f.name for f in fields(Disturbances) if getattr(disturbances, f.name) != f.default}
    words = []
    for name, (phrase, quantity) in _DISTURBED.items():
        if name in named:
            value = getattr(disturbances, name)
            shown = f"{value}" if quantity == "number" else show(value, quantity, units)
            words.append(phrase.format(shown))
    if disturbances.wind_speed:
        words[0] += " across the boom" if disturbances.wind_across else " from behind"
    return ", ".join(words)
