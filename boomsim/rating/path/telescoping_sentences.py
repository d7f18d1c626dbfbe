"""Sentences on a boom that is run out with a load: how far, and what comes after."""

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.part_names import section_name
from boomsim.mechanics.geometry import Array
from boomsim.rating.empty_hook.empty_hook_sentences import hanging_words, near_radius
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.rating.path.lowering_sentences import tell_ends
from boomsim.rating.path.telescoping_stages import Stage
from boomsim.rating.path.telescoping_study import Telescoping
from boomsim.rating.strategies import label
from boomsim.units import display, listed, show


def tell_telescoping(found: Telescoping, *, units: str) -> str:
    """Say how far a boom may be run out with a load, and what would happen beyond."""
    load, angle = show(found.load, "mass", units), show(found.angle, "angle", units)
    begun = f"With {load} at {angle}"
    rated = found.marks.rated
    if rated is None:
        where = out_words(found, found.end.at, units=units)
        return f"{begun} this boom is rated all the way out, to {where}."
    if not found.is_moved_at_start:
        why = "more than the push moves" if found.is_held_by_push else "more than is rated already"
        return f"{begun} this boom must not be run out: the load is {why}."
    where = out_words(found, rated.place.at, units=units)
    if found.is_held_by_push:
        return f"{begun} this boom runs out to {where}: there the push is used up."
    begun = f"{begun} this boom is rated out to {where}"
    ends = tell_ends(found.marks, units=units, direction=1.0)
    return f"{begun}: beyond it the load is more than is rated; {ends}."


def begins_words(found: Telescoping, *, units: str) -> str:
    """Write how long the boom is where the way begins, and at which radius the load hangs."""
    length = show(found.length_at(0.0), "boom_length", units)
    return f"{length} of boom, {show(found.start.radius, 'length', units)} radius"


def out_words(found: Telescoping, out: float, *, units: str) -> str:
    """Write how far a boom is out, rounded down.

    Parameters
    ----------
    out : float
        Since the start [m]

    Returns
    -------
    str
        Such as "26.2 m of boom, 12.5 m radius"
    """
    length = found.length_at(out)
    rated = found.marks.rated
    place = found.end if rated is None or out >= found.end.at else rated.place
    boom = display("boom_length", units, like=length).text_down(length)
    return f"{boom} of boom, {near_radius(place.radius, units=units)} radius"


def tell_last_lock(found: Telescoping, *, system: str, units: str) -> str:
    """Say at which locks a pinned boom may be left on this way.

    Returns
    -------
    str
        A sentence; empty for a boom that does not lock, or that may go all the way
    """
    if not BOOM_SYSTEMS[system].locks or found.marks.rated is None:
        return ""
    extension = last_lock(found)
    if extension is None:
        return "It comes to no lock before that."
    length = show(found.length_at(_out_at(found, extension)), "boom_length", units)
    return f"The last locks before that are ({label(extension)}) %, {length} of boom."


def last_lock(found: Telescoping) -> Array | None:
    """Farthest configuration on the way in which every section is at a lock, the start left out.

    Returns
    -------
    ndarray, shape (moving sections,), or None
        [1]
    """
    assert found.marks.rated is not None
    left, last = found.marks.rated.place.at, None
    for stage in found.stages:
        for one in _locked_on(stage, found.setup.machine.boom.lock_positions):
            gone = _travelled(found, stage, one)
            if gone <= left:
                last = one
        left -= stage.travel
    return last


def _locked_on(stage: Stage, locks: tuple[float, ...]) -> list[Array]:
    """Configurations of a stage at locks beyond its start; one section moves."""
    moved = stage.moving[0] - 1
    made = []
    for lock in locks:
        if stage.start[moved] < lock <= stage.end[moved]:
            one = stage.start.copy()
            one[moved] = lock
            made.append(one)
    return made


def _travelled(found: Telescoping, stage: Stage, extension: Array) -> float:
    stroke = np.array([section.stroke for section in found.setup.machine.boom.sections[1:]])
    return float(((extension - stage.start) * stroke).sum())


def _out_at(found: Telescoping, extension: Array) -> float:
    return _travelled(found, found.stages[0], extension)


def tell_empty_out(found: Telescoping, *, units: str) -> str:
    """Say where the crane turns over when the boom is run out with an empty hook at this angle.

    Returns
    -------
    str
        A sentence; empty where it stands all the way
    """
    mark = found.empty_tips
    if mark is None:
        return ""
    boom = found.length_at(mark.place.at)
    length = display("boom_length", units, like=boom).text_down(boom)
    hung = float(hanging_mass(found.setup, length=boom, angle=found.angle)[0, 0])
    begun = hanging_words(found.setup.machine, mass=hung, units=units)
    return (
        f"{begun} the crane turns over at this angle "
        f"from {length} of boom onwards, without any margin."
    )


def stage_words(stage: Stage) -> str:
    """Name what moves on a stage.

    Returns
    -------
    str
        Such as "section 4, from 0 to 100 %"
    """
    names = listed([section_name(number) for number in stage.moving])
    first = stage.moving[0] - 1
    return f"{names}, from {100 * stage.start[first]:.3g} to {100 * stage.end[first]:.3g} %"
