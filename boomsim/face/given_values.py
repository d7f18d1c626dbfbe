"""What is given to a study, read: text with units or plain SI numbers.

A refusal names what was given as the commands do, ``--radius``;
:mod:`boomsim.face.offered_names` writes it as an argument for whoever calls from Python.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from numbers import Real
from typing import TYPE_CHECKING, TypeAlias, cast, overload

if TYPE_CHECKING:
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array

Given: TypeAlias = str | float
"""A figure: text with its unit, such as "18.7 m", or a number [SI]."""

Several: TypeAlias = "Given | Sequence[Given] | Array"
"""One figure or several: text parted by commas, or a sequence."""

Extension: TypeAlias = "str | Sequence[float] | Array"
"""Of each moving section, base side first: text in percent, "0,0,45,45", or fractions [1]."""

SNAP = 0.01
"""An extension this near to a lock position means that position [1]."""


@overload
def figure(value: Given, quantity: str, *, what: str) -> float: ...
@overload
def figure(value: Given | None, quantity: str, *, what: str) -> float | None: ...
def figure(value: Given | None, quantity: str, *, what: str) -> float | None:
    """Read one figure.

    Parameters
    ----------
    value : str, number or None
        Text with its unit; or a number in SI
    quantity : str
        A key of :data:`boomsim.units.QUANTITIES`
    what : str
        Name of the figure, put before a refusal

    Returns
    -------
    float or None
        None for none [SI unit of the quantity]
    """
    return None if value is None else _one(value, quantity, what=what)


def _one(value: object, quantity: str, *, what: str) -> float:
    """Read a figure that must be there."""
    from boomsim.units import parse

    if isinstance(value, str | bool) or not isinstance(value, Real):
        return parse(value, quantity, what=what)
    number = float(value)
    return number if math.isfinite(number) else parse(str(number), quantity, what=what)


def figures(value: Several, quantity: str, *, what: str) -> Array:
    """Read one figure or several ("6 m, 8 m, 10 m").

    Returns
    -------
    ndarray, shape (figures,)
        [SI unit of the quantity]
    """
    import numpy as np

    parts = _parted(value) if isinstance(value, str) else value
    listed = [parts] if isinstance(parts, Real) else list(cast("Sequence[Given]", parts))
    if not listed:
        raise ValueError(f"{what}: the list is empty. Give at least one.")
    return np.array([_one(value, quantity, what=what) for value in listed])


def _parted(text: str) -> list[str]:
    """Part a list of figures; "6,5 m" stays whole, and who reads figures asks for its comma."""
    parts: list[str] = []
    for part in text.split(","):
        if parts and parts[-1].strip().isdecimal() and part[:1].isdecimal():
            parts[-1] += f",{part}"
        else:
            parts.append(part)
    return [part.strip() for part in parts]


def radii(value: Several | None, *, what: str = "--radius") -> Array | None:
    """Read one radius or several, or none.

    Returns
    -------
    ndarray, shape (radii,), or None
        [m]
    """
    return None if value is None else figures(value, "length", what=what)


def extension(value: Extension, machine: Machine, *, what: str = "--extension") -> Array:
    """Read a way to extend, base side first.

    A pinned boom takes the lock position within a hundredth of the stroke.

    Parameters
    ----------
    value : str or sequence of float
        Percent as text, such as "0, 0, 45, 45", or fractions of each stroke [1]
    what : str
        What it is called in a refusal

    Returns
    -------
    ndarray, shape (moving sections,)
        Fractions [1]
    """
    if isinstance(value, str):
        fractions = _percent(value, machine, what)
    else:
        fractions = _fractions(value, machine, what)
    return _locked(fractions, machine, what) if machine.boom.systems == ("pinned",) else fractions


def extensions(value: Extension | Sequence[Extension], machine: Machine) -> Array:
    """Read one way to extend, or a list of ways.

    Returns
    -------
    ndarray, shape (ways, moving sections)
        Fractions [1]
    """
    import numpy as np

    one = isinstance(value, str) or all(isinstance(part, Real) for part in value)
    ways = [value] if one else value
    return np.array([extension(way, machine) for way in ways])  # type: ignore[arg-type]


def _percent(text: str, machine: Machine, what: str) -> Array:
    import numpy as np

    fields = [field.strip().removesuffix("%").strip() for field in text.split(",")]
    moving = len(machine.boom.sections) - 1
    try:
        fractions = np.array([float(field) for field in fields]) / 100.0
    except ValueError:
        raise ValueError(
            f"{what}: {text!r} is not a list of percentages. Write one for each of the "
            f"{moving} moving sections, base side first, as '{', '.join(['0'] * moving)}'."
        ) from None
    if len(fractions) != moving or not np.all((fractions >= 0.0) & (fractions <= 1.0)):
        raise ValueError(
            f"{what}: {text!r} needs {moving} percentages from 0 to 100, one for each moving "
            f"section, base side first, as '{', '.join(['0'] * moving)}'."
        )
    # A boom that locks nowhere so near to all in would take them for that.
    pinned = machine.boom.systems == ("pinned",)
    if pinned and 0.0 < fractions.max() <= SNAP and "%" not in text:
        percent = ",".join(f"{1e4 * fraction:g}" for fraction in fractions)
        raise ValueError(
            f"{what}: {text!r} looks like fractions, and a number here is a percentage. Write "
            f"{percent} for these fractions, or {text.replace(',', '%,')}% for so few percent."
        )
    return fractions


def _fractions(value: Sequence[float] | Array, machine: Machine, what: str) -> Array:
    import numpy as np

    from boomsim.units import quoted

    moving = len(machine.boom.sections) - 1
    try:
        fractions = np.array(value, dtype=float)
    except (TypeError, ValueError):
        fractions = np.array([np.nan])
    if fractions.shape != (moving,) or not np.all((fractions >= 0.0) & (fractions <= 1.0)):
        zeros = ", ".join(["0"] * moving)
        raise ValueError(
            f"{what}: {quoted(str(value))} needs {moving} fractions from 0 to 1, one for each "
            f"moving section, base side first, as ({zeros}); or text in percent, as '{zeros}'."
        )
    return fractions


def _locked(fractions: Array, machine: Machine, what: str) -> Array:
    import numpy as np

    locks = np.array(machine.boom.lock_positions)
    nearest = locks[np.abs(fractions[:, None] - locks).argmin(axis=1)]
    off = np.flatnonzero(np.abs(nearest - fractions) > SNAP)
    if len(off):
        offered = ", ".join(f"{100 * p:g}" for p in locks)
        raise ValueError(
            f"{what}: section {off[0] + 1} cannot lock at {100 * fractions[off[0]]:g} %. This "
            f"pinned boom locks at {offered} %. Choose one of these."
        )
    return np.asarray(nearest)
