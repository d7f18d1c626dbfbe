"""Centres of gravity of what a crane is made of, seen from above."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.setup import Setup

GROUPS = ("boom", "superstructure", "counterweight", "carrier")
"""How masses are summed up for a reader."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Centre:
    """Centre of gravity of a group of masses, seen from above.

    Attributes
    ----------
    mass : float
        [kg]
    x, y : float
        Carrier axes [m]
    """

    name: str
    mass: float
    x: float
    y: float


def centres(at: Response, *, slew: float) -> tuple[Centre, ...]:
    """Find the centres of gravity of the groups, and of the load, at a slew angle.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    slew : float
        [rad]

    Returns
    -------
    tuple of Centre
        In the order of `GROUPS`, then the load; without what has no mass
    """
    placed, cos, sin = at.placed, np.cos(slew), np.sin(slew)
    out, left = placed.out[:, 0, 0], placed.left[:, 0, 0]
    x = np.concatenate([out * cos - left * sin, placed.x])
    y = np.concatenate([out * sin + left * cos, placed.y])
    owner = [_group_at(at, k) for k in range(len(placed.mass))]
    found = []
    for group in GROUPS:
        own = placed.mass * [name == group for name in owner]
        if own.sum() > 0.0:
            found.append(_centre(group, own, x, y))
    head = float(placed.head_out[0, 0]), float(placed.head_left[0, 0])
    load = float(at.state.load[0, 0])
    if load > 0.0:
        place = head[0] * cos - head[1] * sin, head[0] * sin + head[1] * cos
        found.append(Centre(name="load", mass=load, x=float(place[0]), y=float(place[1])))
    return tuple(found)


def _group_at(at: Response, part: int) -> str:
    """Find a part's group by its place in the list: names need not be unique."""
    machine = at.setup.machine
    boom = len(machine.boom.sections) + 2
    if part < boom:
        return "boom"
    if part >= at.placed.turning:
        return "carrier"
    if part == at.placed.turning - 1:
        return "counterweight"
    # The cylinder's lower half stands first among what is fixed to the superstructure.
    return "boom" if part == boom else "superstructure"


def _centre(name: str, mass: Array, x: Array, y: Array) -> Centre:
    total = float(mass.sum())
    return Centre(name=name, mass=total, x=float(mass @ x) / total, y=float(mass @ y) / total)


def hung_at(setup: Setup, *, extension: Array, load: float, radius: float) -> Response:
    """Hang one load, to be looked at from all around.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    load : float
        Gross load [kg]
    radius : float
        [m]

    Raises
    ------
    ValueError
        If the boom does not reach or finds no equilibrium.
    """
    boom = condense(setup.machine, extension=extension)
    at = respond(setup, boom=boom, load=np.array([[load]]), radius=np.array([[radius]]))
    if not at.state.converged[0, 0]:
        raise ValueError(
            f"This boom of {boom.layout.boom_length[0]:.2f} m finds no equilibrium with "
            f"{load:.0f} kg at a radius of {radius:.2f} m. Take less load or another radius."
        )
    return at
