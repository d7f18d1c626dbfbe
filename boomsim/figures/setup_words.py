"""Words that figures share: how the crane is set up, and which rule rates it."""

from dataclasses import fields

from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.allowances import Allowance
from boomsim.rating.parts_reeved import parts_words
from boomsim.rating.rules import Rule
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import label
from boomsim.units import show


def machine_words(setup: Setup) -> str:
    """Name a machine and say that it is invented."""
    return f"{setup.machine.name} (invented)"


def boom_words(setup: Setup, *, extension: Array, length: float, units: str) -> str:
    """Name one boom of a machine, and what its rating holds for.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    length : float
        Of the boom [m]
    """
    return (
        f"{machine_words(setup)}: {show(length, 'boom_length', units)} of boom, "
        f"({label(extension)}) %; {setup_words(setup, units=units, extension=extension)}"
    )


def setup_words(setup: Setup, *, units: str = "metric", extension: Array | None = None) -> str:
    """Say what a rating holds for: sector, counterweight, supports, parts of line, rule.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,) or (configurations, moving sections), optional
        Of the booms that it holds for; default: any [1]
    """
    weight = setup.counterweight
    return "; ".join(
        [
            setup.sector,
            f"counterweight {show(weight.mass, 'mass', units) if weight.mass > 0 else 'none'}",
            f"{setup.support.kind} {setup.support.name}".replace("tyres tyres", "on tyres"),
            parts_words(setup, extension=extension),
            rule_words(setup.rule, support_kind=setup.support.kind),
            *(disturbance_words(d, units=units) for d in (setup.disturbances,) if d != CALM),
        ]
    )


def rule_words(rule: Rule, *, support_kind: str) -> str:
    """Say how far a rated load stays from tipping and from yield.

    Parameters
    ----------
    support_kind : str
        "outriggers" or "tyres"
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
    allowed = "" if rule.allowances is None else ", with allowances"
    return f"{tips}; {strained}{allowed}"


def allowance_words(rule: Rule, *, units: str = "metric") -> str:
    """Name each allowance in a rated load with its value and its source.

    Returns
    -------
    str
        A sentence; empty where the rule has no allowances
    """
    if rule.allowances is None:
        return ""
    has = rule.allowances
    factor = hoisting_factor(has.hoist_speed.value, hoist_class=int(has.hoist_class.value))
    parts = [
        _allowed("side pull {} of the load", has.side_pull, "share", units),
        _allowed("hoisting at {}", has.hoist_speed, "speed", units)
        + f", class {has.hoist_class.value:g} ({has.hoist_class.source}): load x {factor:.2f}",
        _allowed("wind {} from behind", has.wind_speed, "speed", units),
        _allowed("load's wind area {}", has.load_area, "area_per_mass", units),
        _allowed("out of level {} ahead", has.lean, "angle", units),
        _allowed("{} across", has.lean_across, "angle", units),
    ]
    return f"Allowances that strength carries on top of the load: {'; '.join(parts)}."


def _allowed(phrase: str, one: Allowance, quantity: str, units: str) -> str:
    return f"{phrase.format(show(one.value, quantity, units))} ({one.source})"


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
