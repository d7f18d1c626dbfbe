"""A scene: everything that is chosen in the explorer. A look: how it is shown."""

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np

from boomsim.machine.files import load_machine, machine_names
from boomsim.machine.model import CALM, Disturbances, Machine, Rigging
from boomsim.machine.systems import BOOM_SYSTEMS
from boomsim.rating.rules import RULES
from boomsim.rating.setup import SECTORS, Setup, set_up
from boomsim.units import SYSTEMS, did_you_mean

HELD = ("radius", "angle")
"""What stays while the rest moves: the loaded radius, or the boom angle."""

RATED_FOR = (*SECTORS, "here")
"""Slew angles that the rating holds for: all around, over the rear, or the one slewed to."""

FREE = "free"
"""The boom system of a boom whose locks are taken out."""

BESIDE = ("limits", "chart", "moments", "plan")
"""What projector mode shows beside the side view."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """Everything that is chosen.

    Attributes
    ----------
    machine : str
        Built-in name or TOML file
    system : str
        Boom system, or "free"
    extension : tuple of float
        Fraction of each stroke, base side first [1]
    held : str
        "radius" or "angle": which of the next two is meant
    radius, angle : float
        Loaded radius [m], boom angle [rad]
    load : float
        Gross load [kg]
    slew : float
        Where the boom points; 0 over the rear, anticlockwise from above [rad]
    rated_for : str
        "around", "rear" or "here"
    counterweight, support : str or None
        Names among the machine's choices; None is the usual one
    parts : int or None
        Parts of line; None is the usual number
    rule : str
        A name in `boomsim.rating.rules.RULES`
    disturbances : Disturbances
    """

    machine: str = "yard60"
    system: str = "pinned"
    extension: tuple[float, ...] = (0.0, 0.0, 0.465, 0.465)
    held: str = "radius"
    radius: float = 10.0
    angle: float = 1.0
    load: float = 8000.0
    slew: float = 0.0
    rated_for: str = "around"
    counterweight: str | None = None
    support: str | None = None
    parts: int | None = None
    rule: str = "share"
    disturbances: Disturbances = CALM


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How a scene is shown.

    Attributes
    ----------
    units : str
        "metric" or "us"
    exaggeration : float
        What the deflection of the thin line is multiplied by [1]
    projector : bool
        Large type and fewer views
    beside : str
        What projector mode shows beside the side view; one of `BESIDE`
    """

    units: str = "metric"
    exaggeration: float = 10.0
    projector: bool = False
    beside: str = "limits"


def machine_of(name: str) -> Machine:
    """Load a machine once, and again when its file has changed.

    Parameters
    ----------
    name : str
        Built-in name or TOML file

    Returns
    -------
    Machine
    """
    return _machine(name, None if name in machine_names() else _stamp(name))


@lru_cache(maxsize=32)
def _machine(name: str, stamp: int | None) -> Machine:
    return load_machine(name)


def _stamp(name: str) -> int | None:
    path = Path(name)
    return path.stat().st_mtime_ns if path.is_file() else None


def setup_of(scene: Scene) -> Setup:
    """Settle a scene's setup; equal choices give one and the same object.

    Parameters
    ----------
    scene : Scene

    Returns
    -------
    Setup
    """
    slew: float | str = scene.slew if scene.rated_for == "here" else scene.rated_for
    return _setup(
        scene.machine,
        Rigging(counterweight=scene.counterweight, support=scene.support, parts=scene.parts),
        slew,
        scene.rule,
        scene.disturbances,
    )


@lru_cache(maxsize=512)
def _setup(
    machine: str, rigging: Rigging, slew: float | str, rule: str, disturbances: Disturbances
) -> Setup:
    return set_up(
        machine_of(machine), rigging=rigging, slew=slew, rule=rule, disturbances=disturbances
    )


def first_scene(machine: str = "yard60") -> Scene:
    """Where the explorer opens with a machine: its demonstration, half loaded.

    Parameters
    ----------
    machine : str

    Returns
    -------
    Scene
    """
    from boomsim.lab.ranges import rounded
    from boomsim.rating.capacity import rate
    from boomsim.rating.comparison.compare import demonstration

    boom = machine_of(machine).boom
    ways = demonstration(boom)
    middle = len(ways.length) // 2
    extension = tuple(float(f) for f in ways.extension[middle])
    reach = machine_of(machine).heel_out + float(ways.length[middle])
    start = Scene(machine=machine, system=ways.system[middle], extension=extension)
    radius = rounded(0.55 * reach)
    rated = rate(setup_of(start), extension=np.array(extension), radius=np.array([radius]))
    load = 0.6 * float(np.nan_to_num(rated.capacity[0, 0]))
    return replace(start, radius=radius, load=rounded(load))


def as_dict(scene: Scene) -> dict[str, Any]:
    """Write a scene as plain data, without what is left at its usual value.

    Parameters
    ----------
    scene : Scene

    Returns
    -------
    dict
        SI numbers
    """
    kept = {"machine", "system", "extension", "held", scene.held, "load"}
    plain = _changed(scene, kept=kept)
    if scene.disturbances != CALM:
        plain["disturbances"] = _changed(scene.disturbances, kept=set())
    return plain


def _changed(value: Any, *, kept: set[str]) -> dict[str, Any]:
    """Fields that are not at their usual value, and those that are kept in any case."""
    found = {}
    for field in fields(value):
        now = getattr(value, field.name)
        if field.name in kept or now != field.default:
            found[field.name] = list(now) if isinstance(now, tuple) else now
    return found


def from_dict(plain: dict[str, Any]) -> Scene:
    """Read a scene from plain data and refuse what it cannot be.

    Parameters
    ----------
    plain : dict
        As :func:`as_dict` writes it

    Returns
    -------
    Scene

    Raises
    ------
    ValueError
        If a name or a value is not known.
    """
    given = _known(plain, Scene)
    if "extension" in given:
        given["extension"] = tuple(float(f) for f in given["extension"])
    if "disturbances" in given:
        given["disturbances"] = Disturbances(**_known(given["disturbances"], Disturbances))
    return checked(Scene(**given))


def _known(plain: dict[str, Any], kind: type) -> dict[str, Any]:
    names = [field.name for field in fields(kind)]
    for name in plain:
        if name not in names:
            raise ValueError(f'A scene has no "{name}".{did_you_mean(str(name), names)}')
    return dict(plain)


def checked(scene: Scene) -> Scene:
    """Refuse a scene that names what is not there.

    Parameters
    ----------
    scene : Scene

    Returns
    -------
    Scene
        The same, a pinned boom's sections exactly at their lock positions

    Raises
    ------
    ValueError
        If a name or a number is not one that the machine has.
    """
    boom = machine_of(scene.machine).boom
    _among("held", scene.held, HELD)
    _among("rated_for", scene.rated_for, RATED_FOR)
    _among("rule", scene.rule, tuple(RULES))
    _among("system", scene.system, (*boom.systems, FREE))
    if len(scene.extension) != len(boom.sections) - 1:
        raise ValueError(
            f"The scene's extension has {len(scene.extension)} fractions and {scene.machine} has "
            f"{len(boom.sections) - 1} moving sections. Give one for each, base side first."
        )
    if not all(0.0 <= fraction <= 1.0 for fraction in scene.extension):
        raise ValueError(f"The scene's extension {scene.extension} is not between 0 and 1.")
    _in_bounds(scene, _BOUNDS)
    _in_bounds(scene.disturbances, _MOST_DISTURBED)
    setup_of(scene)
    return _at_locks(scene) if BOOM_SYSTEMS[scene.system].locks else scene


_BOUNDS = {"radius": (1e-3, 1e4), "angle": (-0.5, 1.6), "load": (0.0, 1e7), "slew": (-7.0, 7.0)}
"""Bounds of a scene's numbers, SI: outside them is a slip of the pen."""

_MOST_DISTURBED = {
    "wind_speed": (0.0, 60.0),
    "load_area": (0.0, 0.1),
    "side_pull": (0.0, 0.3),
    "hoist_speed": (0.0, 3.0),
    "hoist_class": (1, 4),
    "lean": (-0.18, 0.18),
    "lean_across": (-0.18, 0.18),
}


def _in_bounds(given: Any, bounds: Mapping[str, tuple[float, float]]) -> None:
    for name, (least, most) in bounds.items():
        value = getattr(given, name)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise ValueError(f"A scene's {name} is a number (SI), not {value!r}.")
        if not least <= value <= most:
            span = f"{least:g} and {most:g}"
            raise ValueError(f"A scene's {name} of {value:g} is not between {span}.")


def _at_locks(scene: Scene) -> Scene:
    """Bring what a person wrote (0.465) to the lock position that the machine has."""
    locks = machine_of(scene.machine).boom.lock_positions
    found = tuple(min(locks, key=lambda p: abs(p - f)) for f in scene.extension)
    off = [k for k, f in enumerate(scene.extension) if abs(found[k] - f) > 0.01]
    if off:
        offered = ", ".join(f"{100 * p:g}" for p in locks)
        raise ValueError(
            f"Section {off[0] + 1} of {scene.machine} cannot lock at "
            f"{100 * scene.extension[off[0]]:g} %. It locks at {offered} %; the system "
            f'"{FREE}" holds it anywhere.'
        )
    return replace(scene, extension=found)


def checked_look(look: Look) -> Look:
    """Refuse a look that names what is not there.

    Parameters
    ----------
    look : Look

    Returns
    -------
    Look
        The same
    """
    _among("units", look.units, SYSTEMS)
    _among("beside", look.beside, BESIDE)
    if not 1.0 <= look.exaggeration <= 100.0:
        raise ValueError(f"An exaggeration of {look.exaggeration:g} is not between 1 and 100.")
    return look


def _among(what: str, name: str, known: tuple[str, ...]) -> None:
    if name not in known:
        offered = ", ".join(known)
        raise ValueError(
            f'A scene\'s {what} cannot be "{name}".{did_you_mean(str(name), known)} '
            f"Choose one of: {offered}."
        )
