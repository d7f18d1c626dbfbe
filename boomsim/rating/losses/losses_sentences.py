"""What eats capacity, in words."""

from dataclasses import replace

from boomsim.rating.around.slew_directions import direction
from boomsim.rating.limits.limit_kind import PERMISSIBLE_VALUE, STABILITY, STRENGTH, Limit
from boomsim.rating.limits.limit_sentences import WHAT_SETS, what_sets
from boomsim.rating.limits.line_pull import LINE_PULL
from boomsim.rating.limits.tyres import TYRES
from boomsim.rating.losses.losses_reasons import BEYOND, NOTHING, WITHIN, Reason
from boomsim.rating.losses.losses_study import Effect, Losses
from boomsim.units import display, show, show_rated

SUBJECTS = {
    "lean": "the ground's slope ahead",
    "lean across": "the ground's slope across",
    "side pull": "a side pull",
    "wind": "wind from behind",
    "wind across": "wind across",
    "hoisting": "picking up fast",
    "counterweight": "the counterweight",
    "outrigger": "a short outrigger",
    "soft ground": "soft ground",
    "farther": "a larger radius",
    "together": "all this at once",
}
"""Each effect in the middle of a sentence, by its name."""

TOUCHED = {
    STABILITY: "stability",
    STRENGTH: "strength",
    PERMISSIBLE_VALUE: "makers' permissible values",
}
"""What an effect can touch."""


def tell_effect(effect: Effect, *, units: str) -> str:
    """Name an effect with its amount: "downhill ahead 1.0°"."""
    if effect.amount is None or effect.quantity is None:
        return effect.words
    return f"{effect.words} {show(effect.amount, effect.quantity, units)}"


def tell_governing(limit: Limit | None) -> str:
    """Say what a place is rated by."""
    if limit is None:
        return "out of reach"
    return "stability" if limit.set_by == STABILITY else limit.words


def tell_loss(effect: Effect, place: int, *, units: str) -> str:
    """Say what an effect takes at a place: "-261 kg (4.7 %)", "nothing", "all of it"."""
    limit, share = effect.governing[place], float(effect.share[place])
    if limit is None:
        return "all of it (nothing rated)"
    reason = effect.why[place]
    if reason is not None:
        return WITHIN if reason.allowed else "nothing"
    sign = "-" if share > 0.0 else "+"
    said = f"{sign}{_mass(abs(float(effect.loss[place])), units)} ({100 * abs(share):.1f} %)"
    # Stability, the static line pull and the tyres take a lift as it is given: no allowance.
    strained = limit.set_by != STABILITY and limit.kind not in (LINE_PULL, TYRES)
    return f"{said}, {BEYOND}" if strained and effect.allowance == BEYOND else said


def _mass(loss: float, units: str) -> str:
    """Write a loss; on a tabletop to the gram, so that what is something does not read as 0.00."""
    scale = display("mass", units, like=loss)
    small = loss < 0.1 * scale.factor and scale.digits == 2
    return (replace(scale, digits=3) if small else scale).text(loss)


def tell_reason(effect: Effect, place: int) -> str:
    """Say why an effect takes nothing at a place; empty where it takes something."""
    reason = effect.why[place]
    if reason is None or reason.allowed:
        return ""
    subject, sets = SUBJECTS[effect.name], WHAT_SETS[reason.limit.set_by]
    if effect.name == "hoisting" and reason.limit.set_by == STABILITY:
        return (
            f"{sets}, and {subject} reaches it only by bending the boom, which takes less than "
            f"{100 * NOTHING:g} % here"
        )
    if reason.elsewhere and reason.slew is not None:
        return (
            f"{sets}, {direction(reason.slew)}, and {subject} takes nothing from it there; at "
            "other slew angles it does"
        )
    if not reason.touches:
        return f"{what_sets(reason.limit)}, and {subject} affects nothing here"
    if reason.limit.set_by in reason.touches:
        return f"{what_sets(reason.limit)}, which {subject} does not affect"
    return f"{sets}; {subject} affects {_listed(reason)} only"


def _listed(reason: Reason) -> str:
    return " and ".join(TOUCHED[family] for family in reason.touches)


def lettered_reasons(found: Losses) -> dict[str, str]:
    """Give each reason for a nothing a letter.

    Returns
    -------
    dict of str to str
        Letter by reason, in the order in which a reader comes to them
    """
    places = range(len(found.capacity))
    told = [tell_reason(effect, place) for effect in found.effects for place in places]
    reasons = list(dict.fromkeys(reason for reason in told if reason))
    # Past z, aa: so many reasons are not to be expected, and no error.
    return {why: chr(ord("a") + n % 26) * (1 + n // 26) for n, why in enumerate(reasons)}


def tell_lettered(effect: Effect, place: int, *, notes: dict[str, str], units: str) -> str:
    """Say what an effect takes at a place, with the letter of the reason where it takes nothing.

    Parameters
    ----------
    notes : dict of str to str
        Of :func:`lettered_reasons`
    """
    said, why = tell_loss(effect, place, units=units), tell_reason(effect, place)
    return f"{said} ({notes[why]})" if why else said


def tell_corners(found: Losses, *, units: str) -> str:
    """Say where an outrigger set short is counted, and against which rated loads.

    Returns
    -------
    str
        Empty where no outrigger can be short
    """
    said = []
    for effect in found.effects:
        if effect.slew is None:
            continue
        said += [
            f"at {show(float(radius), 'length', units)} {corner} short, boom "
            f"{direction(float(slew))}, {show_rated(float(before), units)} before"
            for radius, corner, slew, before in zip(
                found.places.radius, effect.corners, effect.slew, effect.before, strict=True
            )
        ]
    if not said:
        return ""
    return (
        "A short outrigger is counted with the boom square to a tipping line that runs to it, "
        f"whatever the sector, against the rated load in that direction: {'; '.join(said)}."
    )
