"""Whether a scene, or a look, names only what there is."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from boomsim.lab.scene.scene import BESIDE, FREE, HELD, RATED_FOR, Look, Scene, machine_of, setup_of
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.plate_thickness import LEAST, MOST
from boomsim.rating.rules import RULES
from boomsim.rating.setup import ALLOWANCES
from boomsim.units import SYSTEMS, did_you_mean


def checked(scene: Scene) -> Scene:
    """Refuse a scene that names what is not there.

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
    _among("allowances", scene.allowances, ALLOWANCES)
    _among("system", scene.system, (*boom.systems, FREE))
    if len(scene.extension) != len(boom.sections) - 1:
        raise ValueError(
            f"The scene's extension has {len(scene.extension)} fractions and {scene.machine} has "
            f"{len(boom.sections) - 1} moving sections. Give one for each, base side first."
        )
    if not all(0.0 <= fraction <= 1.0 for fraction in scene.extension):
        raise ValueError(
            f"The scene's extension {scene.extension} is not between 0 and 1. Give the fraction of "
            "each stroke that is out."
        )
    _in_bounds(scene, _BOUNDS)
    _in_bounds(scene.disturbances, _MOST_DISTURBED)
    setup_of(scene)
    return _at_locks(scene) if BOOM_SYSTEMS[scene.system].locks else scene


_BOUNDS = {
    "plates": (LEAST, MOST),
    "radius": (1e-3, 1e4),
    "angle": (-0.5, 1.6),
    "load": (0.0, 1e7),
    "slew": (-7.0, 7.0),
}
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
            raise ValueError(f"A scene's {name} is a number (SI), not {value!r}. Give one.")
        if not least <= value <= most:
            raise ValueError(
                f"A scene's {name} of {value:g} (SI) is not between {least:g} and {most:g}. Give "
                "one that is."
            )


def _at_locks(scene: Scene) -> Scene:
    """Bring what a person wrote (0.45) to the lock position that the machine has."""
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
    """Refuse a look that names what is not there."""
    _among("units", look.units, SYSTEMS)
    _among("beside", look.beside, BESIDE)
    if not 1.0 <= look.exaggeration <= 100.0:
        raise ValueError(
            f"An exaggeration of {look.exaggeration:g} is not between 1 and 100. Give 1 for the "
            "deflection as it is."
        )
    return look


def _among(what: str, name: str, known: tuple[str, ...]) -> None:
    if name not in known:
        offered = ", ".join(known)
        raise ValueError(
            f'A scene\'s {what} cannot be "{name}".{did_you_mean(str(name), known)} '
            f"Choose one of: {offered}."
        )
