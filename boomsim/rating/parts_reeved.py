"""How a crane that is set up is reeved with each boom, and what always hangs on its rope."""

from dataclasses import replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array, angle_at_radius, layout
from boomsim.mechanics.rope_reach import falls_mass, parts_reeved
from boomsim.mechanics.rope_tackle import tackle_advantages
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import range_of_length
from boomsim.units import show


def reeved(setup: Setup, *, length: ArrayLike) -> NDArray[np.int_]:
    """Parts of line of each boom: those of the setup, or as many as the drum's rope reaches for.

    Parameters
    ----------
    length : array_like, shape (configurations,)
        Boom length [m]

    Returns
    -------
    ndarray of int, shape (configurations,)
        [1]
    """
    return parts_reeved(setup.machine, length=length, most=setup.parts)


def line_capacity(setup: Setup, *, length: ArrayLike) -> Array:
    """Gross load that the rope carries at the permissible line pull.

    Parameters
    ----------
    length : array_like, shape (configurations,)
        Boom length [m]

    Returns
    -------
    ndarray, shape (configurations,)
        line pull x advantage of the tackle / g [kg]
    """
    hoist, parts = setup.machine.hoist, reeved(setup, length=length)
    advantage = tackle_advantages(parts, sheave_efficiency=hoist.sheave_efficiency)
    return np.asarray(hoist.line_pull * advantage / GRAVITY)


def what_hangs(machine: Machine) -> tuple[str, ...]:
    """Name what always hangs on the rope of a machine, and the rope itself."""
    listed = (
        ("hook block", machine.hook_block),
        ("slings", machine.slings),
        ("rope", machine.hoist.rope_mass),
    )
    return tuple(name for name, mass in listed if mass > 0.0)


def hanging_mass(setup: Setup, *, length: ArrayLike, angle: ArrayLike) -> Array:
    """Mass of all that hangs on an empty hook: hook block, slings and the falls of the rope.

    Parameters
    ----------
    length : array_like, shape (configurations,)
        Boom length [m]
    angle : array_like, shape (configurations, cells) or broadcastable
        Boom angle [rad]

    Returns
    -------
    ndarray, shape (configurations, cells)
        The rope with the hook on the ground, where most of it is out [kg]
    """
    machine, lengths = setup.machine, np.atleast_1d(np.asarray(length, dtype=float))
    parts = reeved(setup, length=lengths)
    falls = falls_mass(machine, parts=parts[:, None], length=lengths[:, None], angle=angle)
    return np.asarray(machine.hook_block + machine.slings + falls)


def falls_at_radius(setup: Setup, *, length: ArrayLike, radius: ArrayLike) -> Array:
    """Mass of the falls where the straight boom's head is at a radius.

    Parameters
    ----------
    length : array_like, shape (configurations,)
        Boom length [m]
    radius : array_like, shape (configurations, cells) or broadcastable
        [m]

    Returns
    -------
    ndarray, shape (configurations, cells)
        Beyond the boom's reach that of its lowest or steepest [kg]
    """
    machine, lengths = setup.machine, np.atleast_1d(np.asarray(length, dtype=float))[:, None]
    boom, reach = machine.boom, np.asarray(radius, dtype=float) - machine.heel_out
    angle = np.asarray(
        angle_at_radius(reach=reach, along=lengths, above=np.array(-boom.head.below))
    )
    beyond = np.where(reach > lengths, boom.least_angle, boom.greatest_angle)
    angle = np.where(np.isfinite(angle), angle, beyond)
    parts = reeved(setup, length=lengths[:, 0])[:, None]
    angle = np.clip(angle, boom.least_angle, boom.greatest_angle)
    return falls_mass(machine, parts=parts, length=lengths, angle=angle)


def hanging_at(setup: Setup, *, extension: Array, radius: float) -> float:
    """Mass of all that hangs on an empty hook where the straight boom's head is at a radius [kg].

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    radius : float
        [m]
    """
    machine = setup.machine
    length = layout(machine.boom, extension=extension).boom_length
    falls = falls_at_radius(setup, length=length, radius=np.array([[radius]]))
    return float(machine.hook_block + machine.slings + falls[0, 0])


def as_reeved(setup: Setup, *, length: float) -> Setup:
    """Keep the reeving of one boom, whatever is done with it.

    Parameters
    ----------
    length : float
        Boom length [m]
    """
    return replace(setup, parts=int(reeved(setup, length=[length])[0]))


def parts_said(parts: int) -> str:
    """Write a number of parts of line."""
    return f"{parts} {'part' if parts == 1 else 'parts'} of line"


def parts_words(setup: Setup, *, extension: Array | None = None) -> str:
    """Say how many parts of line a boom is reeved in, or booms of any length.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,) or (configurations, moving sections), optional
        Without it any boom length that may be rated counts [1]

    Returns
    -------
    str
        "8 parts of line"; "4 to 12 parts of line" where the rope reaches for fewer on a longer boom
    """
    boom, longest = setup.machine.boom, setup.support.longest_boom
    lengths: ArrayLike = range_of_length(boom)
    if extension is not None:
        lengths = layout(boom, extension=extension).boom_length
    elif longest is not None:
        lengths = np.minimum(lengths, longest)
    parts = np.unique(reeved(setup, length=lengths))
    few, most = int(parts[0]), int(parts[-1])
    said = f"{few}" if few == most else f"{few} to {most}"
    return f"{said} {'part' if most == 1 else 'parts'} of line"


def tell_fewer_parts(setup: Setup, *, length: float, units: str) -> list[str]:
    """Say where the rope on the drum reaches for fewer parts than were wanted.

    Parameters
    ----------
    length : float
        Boom length [m]

    Returns
    -------
    list of str
        A sentence, or nothing
    """
    parts, rope = int(reeved(setup, length=[length])[0]), setup.machine.hoist.rope_length
    if parts == setup.parts or rope is None:
        return []
    whole, long = show(rope, "length", units), show(length, "boom_length", units)
    return [
        f"The boom is reeved in {parts_said(parts)}: the {whole} of rope on the drum reach for no "
        f"more with {long} of boom, if the hook is to come down to the ground."
    ]
