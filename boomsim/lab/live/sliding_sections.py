"""Sections that slide: against each other at one length, or all of them to another length.

Scenes in, scenes out, as in :mod:`boomsim.lab.scene.scene_changes`; where a boom locks, only what
locks is found.
"""

from dataclasses import replace
from functools import lru_cache

import numpy as np

from boomsim.lab.scene.scene import Scene, machine_of
from boomsim.lab.scene.scene_changes import move_section
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.strategies import EQUAL_LENGTH, pinned_configurations, range_of_length

TRAVEL = 0.05
"""What a metre of sliding counts against a metre off the place that is wanted: of ways that come
equally near, the one with least sliding is taken [1]."""


def slides(scene: Scene) -> bool:
    """Whether sections can trade places at all: not where the boom system couples them."""
    return BOOM_SYSTEMS[scene.system].path is None and len(scene.extension) > 1


def traded(scene: Scene, *, section: int, fraction: float) -> Scene:
    """Move one section and let others slide the other way, so that the length stays.

    Parameters
    ----------
    section : int
        1 is the largest that moves
    fraction : float
        Wanted share of its stroke [1]

    Returns
    -------
    Scene
        As near to it as this length allows; the same where no other way has it
    """
    boom, wanted = machine_of(scene.machine).boom, min(max(float(fraction), 0.0), 1.0)
    if not slides(scene):
        return scene
    if BOOM_SYSTEMS[scene.system].locks:
        stroke = boom.sections[section].stroke

        def off(ways: Array) -> Array:
            return np.asarray(np.abs(ways[:, section - 1] - wanted) * stroke)

        return _nearest(scene, _of_length(boom, scene), off(_of_length(boom, scene)))
    return _slid(scene, boom, section, wanted)


def ended(scene: Scene, *, section: int, front: float, keeps_length: bool) -> Scene:
    """Put the front end of a section somewhere along the boom.

    Parameters
    ----------
    front : float
        From the heel pin [m]
    keeps_length : bool
        The length stays: what is given to this section is taken from those ahead of it
    """
    boom = machine_of(scene.machine).boom
    now = float(layout(boom, extension=scene.extension).front[0, section])
    stroke = boom.sections[section].stroke
    fraction = scene.extension[section - 1] + (front - now) / stroke
    if not keeps_length or not slides(scene):
        return move_section(scene, section=section, fraction=fraction)
    if BOOM_SYSTEMS[scene.system].locks:
        ways = _of_length(boom, scene)
        return _nearest(scene, ways, np.abs(layout(boom, extension=ways).front[:, section] - front))
    return _slid(scene, boom, section, min(max(fraction, 0.0), 1.0), ahead=True)


def with_length(scene: Scene, *, length: float) -> Scene:
    """Bring the boom to another length, with as little sliding as that takes.

    Parameters
    ----------
    length : float
        Wanted; the nearest that there is [m]
    """
    boom, system = machine_of(scene.machine).boom, BOOM_SYSTEMS[scene.system]
    shortest, longest = range_of_length(boom)
    wanted = min(max(length, shortest), longest)
    if system.locks:
        ways, lengths = _pinned(boom)
        return _nearest(scene, ways, np.abs(lengths - wanted))
    stroke = [section.stroke for section in boom.sections[1:]]
    if system.path is not None:
        return _extended(scene, system.path(stroke, wanted - shortest))
    now = float(layout(boom, extension=scene.extension).boom_length[0])
    # Each gives in proportion to what it has left, so that all arrive together at either end.
    room = longest - now if wanted > now else now - shortest
    share = (wanted - now) / room if room > 0.0 else 0.0
    moved = (f + share * (1.0 - f if share > 0.0 else f) for f in scene.extension)
    return _extended(scene, tuple(round(min(max(f, 0.0), 1.0), 9) for f in moved))


def next_length(scene: Scene, *, way: int, step: float) -> Scene:
    """Make the boom longer or shorter by a step, or by as little as its locks allow.

    Parameters
    ----------
    way : int
        1 longer, -1 shorter
    step : float
        [m]
    """
    boom = machine_of(scene.machine).boom
    now = float(layout(boom, extension=scene.extension).boom_length[0])
    wanted = now + way * step
    if BOOM_SYSTEMS[scene.system].locks:
        other = _pinned(boom)[1]
        ahead = way * (other - now) > max(step - EQUAL_LENGTH, EQUAL_LENGTH)
        if not ahead.any():
            return scene
        wanted = float(other[ahead][np.argmin(np.abs(other[ahead] - now))])
    return with_length(scene, length=wanted)


def next_end(scene: Scene, *, section: int, way: int, share: float, keeps_length: bool) -> Scene:
    """Put the front end of a section a step farther out or in.

    Parameters
    ----------
    way : int
        1 out, -1 in
    share : float
        Of its stroke, where nothing locks [1]

    Returns
    -------
    Scene
        The same where it goes no farther
    """
    boom = machine_of(scene.machine).boom
    fraction = scene.extension[section - 1]
    if not BOOM_SYSTEMS[scene.system].locks:
        now = float(layout(boom, extension=scene.extension).front[0, section])
        front = now + way * share * boom.sections[section].stroke
        return ended(scene, section=section, front=front, keeps_length=keeps_length)
    if not keeps_length:
        ahead = [p for p in boom.lock_positions if way * (p - fraction) > 1e-9]
        nearest = min(ahead, key=lambda p: abs(p - fraction), default=fraction)
        return move_section(scene, section=section, fraction=nearest)
    ways = _of_length(boom, scene)
    fronts = layout(boom, extension=ways).front[:, section]
    now = float(layout(boom, extension=scene.extension).front[0, section])
    ahead_of = way * (fronts - now) > EQUAL_LENGTH
    if not ahead_of.any():
        return scene
    return _nearest(scene, ways[ahead_of], np.abs(fronts[ahead_of] - now))


@lru_cache(maxsize=16)
def _pinned(boom: Boom) -> tuple[Array, Array]:
    ways = pinned_configurations(boom)
    return ways, layout(boom, extension=ways).boom_length


def _of_length(boom: Boom, scene: Scene) -> Array:
    """All combinations of locks that are as long as the boom is."""
    ways, lengths = _pinned(boom)
    now = float(layout(boom, extension=scene.extension).boom_length[0])
    return np.asarray(ways[np.abs(lengths - now) <= EQUAL_LENGTH])


def _nearest(scene: Scene, ways: Array, off: Array) -> Scene:
    stroke = np.array([s.stroke for s in machine_of(scene.machine).boom.sections[1:]])
    slid = np.abs(ways - np.array(scene.extension)) @ stroke
    best = ways[int(np.argmin(off + TRAVEL * slid))]
    return _extended(scene, tuple(float(f) for f in best))


def _extended(scene: Scene, extension: tuple[float, ...]) -> Scene:
    return replace(scene, extension=extension)


def _slid(scene: Scene, boom: Boom, section: int, wanted: float, *, ahead: bool = False) -> Scene:
    """Give to one section what others can take: the one ahead first, then the others in turn."""
    stroke = [s.stroke for s in boom.sections[1:]]
    out = list(scene.extension)
    others = list(range(section, len(out)))
    if not ahead:
        others += list(reversed(range(section - 1)))
    left = (wanted - out[section - 1]) * stroke[section - 1]
    given = 0.0
    for k in others:
        room = out[k] * stroke[k] if left > 0.0 else (out[k] - 1.0) * stroke[k]
        part = min(left - given, room) if left > 0.0 else max(left - given, room)
        out[k] -= part / stroke[k]
        given += part
    out[section - 1] += given / stroke[section - 1]
    return _extended(scene, tuple(round(min(max(f, 0.0), 1.0), 9) for f in out))
