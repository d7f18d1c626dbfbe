"""A scene as plain data, and back."""

from dataclasses import fields
from typing import Any

from boomsim.lab.scene.scene import Scene
from boomsim.lab.scene.scene_check import checked
from boomsim.machine.model import CALM, Disturbances
from boomsim.units import did_you_mean


def as_dict(scene: Scene) -> dict[str, Any]:
    """Write a scene as plain data, without what is left at its usual value.

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
            hint = did_you_mean(str(name), names) or f" It has {', '.join(names)}."
            raise ValueError(f'A scene has no "{name}".{hint}')
    return dict(plain)
