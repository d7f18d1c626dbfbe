"""Three sentences on one boom built light and stout, to be spoken in a class."""

from boomsim.rating.builds.builds_leads import Stretch
from boomsim.rating.builds.builds_study import Build, Builds, overloaded
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.limits.limit_sentences import SETTERS
from boomsim.rating.overload.overload_study import Overload
from boomsim.units import listed, show


def builds_in_short(found: Builds, *, at: tuple[float, ...], units: str) -> list[str]:
    """Answer in three sentences: who leads, what sets the figures, and what comes first past them.

    Parameters
    ----------
    at : tuple of float
        Radii at which each build is overloaded [m]
    """
    if not found.leads:
        return ["There is no radius at which all of these builds are rated and one carries a load."]
    past = [
        tell_overloads(found, overloaded(found, radius=radius), radius=radius, units=units)
        for radius in at
    ]
    return [tell_leads(found, units=units), tell_setting(found, units=units), *past]


def tell_leads(found: Builds, *, units: str) -> str:
    """Say which build carries most close in, and which far out."""
    first, last = found.leads[0], found.leads[-1]
    if len(found.leads) == 1:
        return f"Everywhere, {_span(first, units)}, {_leader(found, first)}."
    said = (
        f"Close in, {_span(first, units)}, {_leader(found, first)}; far out, "
        f"{_span(last, units)}, {_leader(found, last)}"
    )
    between = [f"{_span(one, units)} {_leader(found, one)}" for one in found.leads[1:-1]]
    return f"{said}; in between, {listed(between)}." if between else f"{said}."


def _span(one: Stretch, units: str) -> str:
    return f"from {show(one.near, 'length', units)} to {show(one.far, 'length', units)}"


def _leader(found: Builds, one: Stretch) -> str:
    names = [found.builds[int(number)].name for number in one.what]
    if len(names) == len(found.builds):
        return "all carry the same"
    if len(names) > 1:
        return f"{listed(names)} carry the same, and most"
    return f"the boom with {names[0]} carries most"


def tell_setting(found: Builds, *, units: str) -> str:
    """Say from which radius stability sets the figure in each build, and what does nearer in."""
    told = [f"with {build.name} {_where(build, units)}" for build in found.builds if build.sets]
    return f"Stability sets the figure: {'; '.join(told)}."


def stability_from(build: Build) -> float | None:
    """Radius from which outwards stability sets all of a build's figures.

    Returns
    -------
    float or None
        None where something else sets the outermost [m]
    """
    last = build.sets[-1] if build.sets else None
    return last.near if last is not None and last.what == STABILITY else None


def _where(build: Build, units: str) -> str:
    stable = [one for one in build.sets if one.what == STABILITY]
    others = " or ".join(_others(build))
    if not stable:
        return f"nowhere, but {others} everywhere"
    if not others:
        return "everywhere"
    if stable == [build.sets[-1]]:
        return f"from {show(stable[0].near, 'length', units)} outwards, and {others} nearer in"
    return f"{listed([_span(one, units) for one in stable])}, and {others} elsewhere"


def _others(build: Build) -> list[str]:
    """What else sets its figures, each once, in the order of the radii."""
    kinds = [str(one.what) for one in build.sets if one.what != STABILITY]
    return [SETTERS[kind] for kind in dict.fromkeys(kinds)]


def tell_overloads(
    found: Builds, past: tuple[Overload | None, ...], *, radius: float, units: str
) -> str:
    """Say what comes first when each build is loaded past its own rated load.

    Parameters
    ----------
    past : tuple of (Overload or None)
        Of the builds
    radius : float
        Where their rated loads hang [m]
    """
    where = f"Overloaded at {show(radius, 'length', units)}"
    ends = [one.first for one in past if one is not None and one.warns and one.is_valid]
    times = sorted(first.multiple for first in ends if first is not None)
    if len(times) == len(past):
        return f"{where}, the crane tips first in every build, {_times(times[0], times[-1])}."
    told = [
        f"with {build.name} {ending(one)}" for build, one in zip(found.builds, past, strict=True)
    ]
    return f"{where}: {'; '.join(told)}."


def _times(least: float, most: float) -> str:
    low, high = f"{least:.2f}", f"{most:.2f}"
    return f"at {low if low == high else f'{low} to {high}'} times its rated load"


def ending(past: Overload | None) -> str:
    """Say what ends an overload, and at which multiple of the rated load."""
    if past is None:
        return "there is no rated load"
    first = past.first
    if first is None:
        return "nothing breaks and nothing tips within the loads tried"
    said = "the crane tips first" if past.warns else "something breaks first"
    said = f"{said}, {_times(first.multiple, first.multiple)}"
    said += "" if past.warns else f" ({first.words})"
    return said if past.is_valid else f"{said} (it bends beyond the model: a sketch)"
