"""What happens past the rated load, in sentences."""

from math import degrees, isfinite

from boomsim.machine.part_names import foot_name
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.limits.limit_kind import PERMISSIBLE, TIPS
from boomsim.rating.load_search import FLOAT
from boomsim.rating.overload.float_lightening import Lightening
from boomsim.rating.overload.overload_events import Event
from boomsim.rating.overload.overload_study import Overload
from boomsim.rating.setup import Setup
from boomsim.units import show, show_rated

MOST_LEAN = 10.0
"""A lean on the sinking of floats or tyres is not told any larger [deg]."""


def tell_event(event: Event) -> str:
    """Say what happens, without the load."""
    if event.kind == PERMISSIBLE:
        return f"{event.words}: permissible value passed"
    if event.kind in (TIPS, FLOAT) and event.slew is not None:
        return f"{event.words}, {direction(event.slew)}"
    return event.words


def tell_ultimates(result: Overload) -> str:
    """Say at which multiples of their permissible values parts give way, and that it is assumed.

    Returns
    -------
    str
        Empty where no such part is judged
    """
    return ultimates_of(result.setup)


def ultimates_of(setup: Setup) -> str:
    """Say it for all lifts of a setup.

    Returns
    -------
    str
        Empty where no such part is judged
    """
    ends = [kind.ultimate for kind in setup.kinds if kind.ultimate is not None]
    told = [f"{end.words} at {end.times:g} times its own ({end.source})" for end in ends]
    return f"Makers' permissible values are not the end: {_listed(told)}." if told else ""


def tell_kept(result: Overload) -> str:
    """Say what is kept while the load is raised: the beginning of a sentence."""
    if result.hold == "radius":
        return "The radius is kept"
    if result.setup.machine.cylinder.bore is None:
        return "The boom angle is kept"
    return "Nobody luffs, and the boom gives way on its luffing cylinder's oil,"


def tell_multiple(multiple: float) -> str:
    """Write a multiple of the rated load: "1.17 x rated"."""
    return f"{multiple:.2f} × rated"


def tell_verdict(result: Overload, *, units: str) -> list[str]:
    """Would it have warned: what ends it, and what could be felt before.

    Returns
    -------
    list of str
        Sentences
    """

    def mass(value: float) -> str:
        return show(value, "mass", units)

    failure, tipping = result.failure, result.tipping
    if failure is None and tipping is None:
        return ["Within the loads tried nothing breaks and nothing tips."]
    if tipping is not None and result.warns:
        said = (
            f"It tips first: {tipping.words}, {direction(tipping.slew or 0.0)}, under "
            f"{mass(tipping.load)}, {tell_multiple(tipping.multiple)}."
        )
        if failure is not None:
            said += (
                f" Strength would last to {mass(failure.load)} ({failure.words}), "
                f"{result.ratio:.2f} times the tipping load."
            )
        return [said, tell_lightening(result)]
    assert failure is not None
    said = (
        f"It breaks first: {failure.words}, under {mass(failure.load)}, "
        f"{tell_multiple(failure.multiple)}."
    )
    if tipping is None:
        return [said, "No load tips the crane here.", tell_lightening(result)]
    return [
        f"{said} The crane would tip only under {mass(tipping.load)}, {1 / result.ratio:.2f} times "
        "that load: whoever waits to feel it tip waits too long.",
        tell_lightening(result),
    ]


NEVER = "never"

PAIRS = (
    ("over the {} left corner", "over the {} right corner", "over either {} corner"),
    ("over the left side", "over the right side", "over either side"),
)
"""Directions that mirror each other, and one word for both."""


def tell_lightening(result: Overload) -> str:
    """Say in which directions a float goes light before it ends, and when; and where none does.

    Returns
    -------
    str
        "Before that a float goes light over either front corner at 1.24 times the rated load; over
        the front none does."
    """
    shown = _paired({one.where: _shown(one) for one in result.lightens})
    light = {where: when for where, when in shown.items() if when != NEVER}
    heavy = [where for where, when in shown.items() if when == NEVER]
    if not light:
        where = "in any direction" if result.setup.sector == "all around" else _listed(heavy)
        return f"Before that no {_foot(result)} goes light {where}."
    told = [
        f"{_listed([where for where, own in light.items() if own == when])} {when}"
        for when in dict.fromkeys(map(_shown, sorted(result.lightens, key=_load)))
        if when != NEVER
    ]
    rest = f"; {_listed(heavy)} none does" if heavy else ""
    return f"Before that a {_foot(result)} goes light {', '.join(told)}{rest}."


def _foot(result: Overload) -> str:
    return foot_name(result.setup.support)


def _load(one: Lightening) -> float:
    return one.load


def _shown(one: Lightening) -> str:
    if not isfinite(one.load):
        return NEVER
    return f"at {one.multiple:.2f} times the rated load" if one.load > 0.0 else "without any load"


def _paired(shown: dict[str, str]) -> dict[str, str]:
    """Say left and right together where the same is true of both."""
    for row in ("front", "middle", "rear"):
        for left, right, both in PAIRS:
            pair = left.format(row), right.format(row)
            if pair[0] in shown and shown[pair[0]] == shown.get(pair[1]):
                shown = {both.format(row): shown[pair[0]]} | shown
                del shown[pair[0]], shown[pair[1]]
    return shown


def _listed(words: list[str]) -> str:
    return " and ".join([", ".join(words[:-1]), words[-1]] if words[1:] else words)


def tell_feel(result: Overload, *, units: str) -> str:
    """Say what an operator could feel just before the end."""
    feel = result.feel
    start, end = float(feel.lightest[0]), float(feel.lightest[-1])
    left = f"{show(end, 'force', units)} ({100 * end / start:.0f} %)" if start > 0.0 else "nothing"
    if not end > 0.005 * start:
        left = "nothing"
    lean = degrees(float(feel.lean[-1]))
    # On tyres, in the moment of tipping, small angles are no longer small.
    leans = f"{lean:.2f}°" if lean < MOST_LEAN else f"more than {MOST_LEAN:.0f}°"
    feet = f"{_foot(result)}s"
    return (
        f"Felt until then, {direction(feel.slew)}: the lightest {_foot(result)} goes from "
        f"{show(start, 'force', units)} without a load to {left}, the "
        f"carrier leans {leans} on its {feet}, the head comes down by "
        f"{show(float(feel.droop[-1]), 'small_length', units)} and the radius grows from "
        f"{show(float(feel.radius[0]), 'length', units)} to "
        f"{show(float(feel.radius[-1]), 'length', units)}{_of_oil(result, units=units)}."
        f"{_not_counted(result, lean, units)}"
    )


def _not_counted(result: Overload, lean: float, units: str) -> str:
    """Say what the lean itself would do; the study holds the boom's angle to the horizontal."""
    carried = float(result.feel.carried[-1])
    if result.hold != "angle" or not carried > 0.0:
        return ""
    size = "small_length" if carried < 1.0 else "length"
    much = f"{show(carried, size, units)} farther out" if lean < MOST_LEAN else "far out"
    return (
        " That the boom leans with the carrier is not counted: it would carry the head "
        f"{much}, so in truth the end comes sooner."
    )


TOLD_OF_OIL = 0.01
"""What the oil adds to a radius is told from here on [m]."""


def _of_oil(result: Overload, *, units: str) -> str:
    by_oil = result.feel.by_oil
    if not by_oil > TOLD_OF_OIL:
        return ""
    return f", {show(by_oil, 'length', units)} of it as the luffing cylinder's oil gives way"


def tell_fall(result: Overload, *, units: str) -> str:
    """Say how far it may lean and come back."""
    if result.fall is None:
        return "No load tips the crane here, so there is nothing to come back from."
    fall = result.fall
    load, lean = show_rated(float(fall.load[0]), units), degrees(float(fall.no_return[0]))
    return (
        f"With {load} hanging clear the crane comes back from a lean of less than {lean:.1f}° "
        f"about its tipping line and goes over from more; under the tipping load it goes over from "
        f"any. Leaning makes it worse: what stands high moves out, and the load with it."
    )
