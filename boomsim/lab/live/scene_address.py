"""A scene as the part of a web address after the # sign, and back: a link opens the same scene."""

import json
from dataclasses import fields
from types import GenericAlias
from typing import Any
from urllib.parse import parse_qsl, urlencode

from boomsim.lab.scene.scene import HELD, Look, Scene
from boomsim.lab.scene.scene_check import checked_look
from boomsim.lab.scene.scene_data import as_dict, from_dict
from boomsim.machine.model import Disturbances
from boomsim.units import did_you_mean

MOST_LETTERS = 2000
"""An address that is longer was not written here."""


KEPT = "length"
"""What is kept while dragging, where an address says nothing of it."""


def to_address(scene: Scene, look: Look, *, keep: str = KEPT) -> str:
    """Write a scene, its units and what is kept while something is dragged.

    Parameters
    ----------
    keep : str
        "length", "radius" or "angle"

    Returns
    -------
    str
        Such as "machine=yard60&extension=0,0,0.45,0.45&radius=10"; SI numbers

    Examples
    --------
    >>> to_address(Scene(), Look())[:38]
    'machine=yard60&system=pinned&extension'
    """
    plain = as_dict(scene)
    plain |= plain.pop("disturbances", {})
    if look.units != Look().units:
        plain["units"] = look.units
    if keep != KEPT:
        plain["keep"] = keep
    return urlencode({name: _written(value) for name, value in plain.items()}, safe=",")


def _written(value: Any) -> str:
    if isinstance(value, list):
        return ",".join(f"{one:.12g}" for one in value)
    return value if isinstance(value, str) else json.dumps(value)


def from_address(address: str) -> tuple[Scene, Look, bool]:
    """Read a scene, its units and whether its length is kept, and refuse what they cannot be.

    Parameters
    ----------
    address : str
        As :func:`to_address` writes it

    Raises
    ------
    ValueError
        If a name or a value is not known.
    """
    if len(address) > MOST_LETTERS:
        raise ValueError(
            f"The address has {len(address)} letters after its #, and a scene has at most "
            f"{MOST_LETTERS}. Take a link that this page wrote."
        )
    given = dict(parse_qsl(address, keep_blank_values=True))
    look = checked_look(Look(units=given.pop("units", Look().units)))
    keep = given.pop("keep", KEPT)
    if keep not in (KEPT, *HELD):
        raise ValueError(
            f'The address keeps "{keep}", and only length, radius or angle can be kept. '
            "Take a link that this page wrote."
        )
    own = {name: _read(name, text, _KINDS) for name, text in given.items() if name in _KINDS}
    blown = {name: _read(name, text, _BLOWN) for name, text in given.items() if name in _BLOWN}
    for name in given.keys() - own.keys() - blown.keys():
        hint = did_you_mean(name, [*_KINDS, *_BLOWN]) or " Take a link that this page wrote."
        raise ValueError(f'The address names "{name}", which a scene does not have.{hint}')
    scene = from_dict({**own, **({"disturbances": blown} if blown else {})})
    return scene, look, keep == KEPT


_KINDS = {field.name: field.type for field in fields(Scene) if field.name != "disturbances"}
_BLOWN = {field.name: field.type for field in fields(Disturbances)}


def _read(name: str, text: str, kinds: dict[str, Any]) -> Any:
    """Read a value as its field has it."""
    kind = kinds[name]
    if kind is str or kind == str | None:
        return text
    try:
        if isinstance(kind, GenericAlias):
            return tuple(float(one) for one in text.split(","))
        return json.loads(text)
    except ValueError:
        raise ValueError(
            f'The address gives "{text}" for {name}, which is a number there. Take a link that '
            "this page wrote."
        ) from None
