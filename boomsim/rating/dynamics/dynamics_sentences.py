"""Loads that move, in sentences for a class."""

from math import ceil, degrees

from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.dynamics.dynamics_study import Dynamics, Effect
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.mass_sums import Scale, in_steps
from boomsim.rating.parts_reeved import parts_said
from boomsim.units import display, show, show_rated

NAMES = {
    "lifted off": "lifted off the ground",
    "stopped evenly": "lowered and stopped evenly",
    "stopped at once": "lowered and stopped at once",
    "dropped": "fallen into slack slings",
    "swung out": "swung out as the boom slews",
    "slewing stopped": "slewing stopped",
}
"""What is done with the load."""


def name_of(effect: Effect) -> str:
    """Name what is done with the load."""
    return NAMES[effect.key]


def cause_of(effect: Effect, found: Dynamics, *, units: str) -> str:
    """Say how it is done: speed, time or height.

    Returns
    -------
    str
        Without a full stop
    """
    moved = found.motion
    speed, swing = show(moved.speed, "speed", units), show(moved.swing, "speed", units)
    if effect.key == "lifted off":
        return f"at {speed}, hoisting class {moved.hoist_class}"
    if effect.key == "stopped evenly":
        return f"from {speed} in {show(moved.stop, 'time', units)}"
    if effect.key == "stopped at once":
        return f"from {speed}, as when a slack rope comes taut"
    if effect.key == "dropped":
        return f"by {show(moved.drop, 'small_length', units)}"
    if effect.key == "swung out":
        out = show(found.swing_radius, "length", units)
        return f"the head goes {swing}: rope {degrees(found.swing_angle):.1f}° out, load {out} out"
    pull = show(effect.sideways, "share", units)
    return f"from {swing} in {show(moved.swing_stop, 'time', units)}: {pull} of it across the boom"


def tell_effect(effect: Effect, found: Dynamics, *, units: str) -> str:
    """Say as how much the load counts, and how near that is to tipping and to breaking.

    Returns
    -------
    str
        Two sentences
    """
    name = name_of(effect)
    like = show(effect.equivalent, "mass", units)
    whose = ""
    if effect.by is not None:
        whose = " for stability" if effect.by == STABILITY else " for strength"
    return (
        f"{name[0].upper()}{name[1:]} ({cause_of(effect, found, units=units)}), it counts{whose} "
        f"as {like} hanging still, {percent(effect.share)} of the rated load. "
        f"{tell_ends(effect)}"
    )


def tell_ends(effect: Effect) -> str:
    """Say what share of tipping and of breaking it takes, without any margin."""
    tips, breaks = effect.tips, effect.breaks
    if tips < 1.0 and breaks < 1.0:
        return (
            f"Without any margin: {percent(tips)} of tipping, {percent(breaks)} of what gives way "
            f"({effect.part.words})."
        )
    ends = []
    if tips >= 1.0:
        ends.append("tip the crane")
    if breaks >= 1.0:
        ends.append(f"break something ({effect.part.words})")
    return f"As much, kept up, would {' and '.join(ends)}, without any margin."


def tell_worst(found: Dynamics, *, units: str) -> str:
    """Say what the load counts as at worst."""
    worst = max(found.effects, key=lambda effect: effect.equivalent)
    return (
        f"{show_rated(found.load, units)} at {show(found.radius, 'length', units)}, "
        f"{percent(found.load / found.rated)} of the rated load: {name_of(worst)} it counts as "
        f"{show(worst.equivalent, 'mass', units)} hanging still, {percent(worst.share)} of it."
    )


def tell_sag(found: Dynamics, *, units: str) -> str:
    """Say what gives under the load, and why that matters."""
    sag = found.sag
    scale = Scale(unit=display("small_length", units, like=sag.whole))
    whole = round(sag.whole / scale.step)
    parts = {"boom": sag.boom, "floats": sag.floats, "rope": sag.rope}
    steps = in_steps(parts, total=whole, scale=scale)
    listed = ", ".join(f"{name} {scale.text(step)}" for name, step in steps.items())
    return (
        f"Hanging still the load lowers itself by {scale.text(whole)}: {listed}. "
        "What gives little is hit hard."
    )


def tell_rope(found: Dynamics, *, units: str) -> str:
    """Say what of the hoist rope gives: its parts, their length and the lead line."""
    sag = found.sag
    falls, lead = (show(length, "length", units) for length in (sag.rope_length, sag.lead))
    return (
        f"The hoist rope hangs in {parts_said(sag.parts)} of {falls} and a lead line of {lead}; "
        "its cross-section is assumed from what makes it part, and its modulus is assumed."
    )


def tell_in_rating(found: Dynamics) -> str:
    """Say how much of this a rated load has in it already."""
    allowed = found.setup.rule.allowances
    if allowed is None:
        return "The rated load has none of this in it but its margin."
    factor = hoisting_factor(allowed.hoist_speed.value, hoist_class=int(allowed.hoist_class.value))
    pull = 100.0 * allowed.side_pull.value
    return (
        f"Of this the rated load's strength has the load times {factor:.2f} and {pull:g} % of side "
        "pull in it; stability has its margin only."
    )


def percent(share: float) -> str:
    """Write a share that must not read as less, rounded up."""
    return f"{ceil(100.0 * share - 1e-6):,d} %"
