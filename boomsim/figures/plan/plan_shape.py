"""What a plan view shows, as numbers: one lift seen from above.

Carrier axes: x to the rear, to the right on paper; y to the crane's right, up on paper; slew angles
run anticlockwise from the rear.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.figures.side.carrier_shape import pieces
from boomsim.machine.footprint import axles, half_width
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.section_properties import properties
from boomsim.mechanics.stability.tipping_lines import TippingLines
from boomsim.rating.around.centres_of_gravity import Centre, centres
from boomsim.rating.around.float_loads import FloatLoads, float_loads
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.overload.tip_over import worst_direction
from boomsim.rating.setup import Setup, rear_sector

ALL_AROUND = np.radians(np.linspace(-180.0, 180.0, 121))
"""Slew angles of the resultant's path [rad]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class PlanShape:
    """One lift seen from above.

    Attributes
    ----------
    slew : float
        Where the boom points [rad]
    radius, load : float
        [m], [kg]
    near : int
        The line with the least moment left, about which the crane would tip
    rear : float
        The over-rear sector is between minus and plus this slew angle [rad]
    centres : tuple of Centre
        Centres of gravity of the groups of masses, and the load
    resultant : ndarray, shape (2,)
        Where crane and load bear on the ground [m]
    path, bare_path : ndarray, shape (slews, 2)
        The resultant all around, with the load and with an empty hook [m]
    inside : float
        Distance of the resultant from the tipping line, negative once past it [m]
    reactions : ndarray, shape (supports,)
        NaN where the crane tips [N]
    """

    setup: Setup
    slew: float
    radius: float
    load: float
    lines: TippingLines
    near: int
    rear: float
    centres: tuple[Centre, ...]
    resultant: Array
    path: Array
    bare_path: Array
    inside: float
    reactions: Array


def plan_of(at: Response, *, slew: float | None = None) -> PlanShape:
    """Look at a lift from above.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    slew : float, optional
        Default: where least holds the crane down, of the setup's slew angles [rad]
    """
    turn, near = worst_direction(at)
    if slew is None:
        slew = float(at.balance.slew[turn])
    setup, lines = at.setup, at.balance.lines
    here = float_loads(at, slew=np.array([slew]))
    bare = respond(setup, boom=at.boom, load=np.zeros((1, 1)), angle=at.state.angle)
    resultant = _points(here)[0]
    left = lines.distance - lines.normal @ resultant
    near = int(np.argmin(left))
    return PlanShape(
        setup=setup,
        slew=slew,
        radius=float(at.radius[0, 0]),
        load=float(at.state.load[0, 0]),
        lines=lines,
        near=near,
        rear=rear_sector(setup.support),
        centres=centres(at, slew=slew),
        resultant=resultant,
        path=_points(float_loads(at, slew=ALL_AROUND)),
        bare_path=_points(float_loads(bare, slew=ALL_AROUND)),
        inside=float(left[near]),
        reactions=here.reactions.force[:, 0, 0, 0],
    )


def _points(loads: FloatLoads) -> Array:
    return np.stack([loads.x[:, 0, 0], loads.y[:, 0, 0]], axis=1)


def turned_by(points: Array, slew: float) -> Array:
    """Turn points of the superstructure (out, left) into carrier axes.

    Parameters
    ----------
    points : ndarray, shape (points, 2)
        [m]
    slew : float
        [rad]

    Returns
    -------
    ndarray, shape (points, 2)
        (x, y) [m]
    """
    cos, sin = np.cos(slew), np.sin(slew)
    return np.asarray(points @ np.array([[cos, sin], [-sin, cos]]))


def _rectangle(left: float, right: float, half: float) -> Array:
    return np.array([[left, -half], [right, -half], [right, half], [left, half]])


def ground_shapes(setup: Setup) -> dict[str, list[Array]]:
    """Outlines of what stays: chassis, cab, tyres, outrigger beams and floats.

    Returns
    -------
    dict of str to list of ndarray
        (x, y) of each outline [m]
    """
    machine, half = setup.machine, half_width(setup.machine)
    side = {piece.name: piece.corners for piece in pieces(machine)}
    chassis = side["chassis"]
    found = {"chassis": [_rectangle(chassis[:, 0].min(), chassis[:, 0].max(), half)]}
    if "driver's cab" in side:
        cab = side["driver's cab"]
        found["cab"] = [_rectangle(cab[:, 0].min(), cab[:, 0].max(), half)]
    places, radius = axles(machine)
    found["tyre"] = [
        _rectangle(x - radius, x + radius, 0.13 * half) + np.array([0.0, sign * 0.87 * half])
        for x in places
        for sign in (-1.0, 1.0)
    ]
    points, pad = setup.support.points, np.sqrt(setup.support.area) / 2
    found["float"] = [_rectangle(x - pad, x + pad, pad) + np.array([0.0, y]) for x, y in points]
    if setup.support.kind == "outriggers":
        found["beam"] = [_beam(x, y, half) for x, y in points]
    return found


def _beam(x: float, y: float, half: float) -> Array:
    low, high = sorted((np.sign(y) * half, y))
    return np.array([[x, low], [x, high]])


def turning_shapes(setup: Setup, *, head: float) -> dict[str, Array]:
    """Outlines of what turns, boom over the rear: platform, counterweight and boom.

    Parameters
    ----------
    head : float
        How far the boom's head is out [m]

    Returns
    -------
    dict of str to ndarray
        (out, left) of each outline [m]
    """
    machine = setup.machine
    side = {p.name: p.corners for p in pieces(machine, counterweight=setup.counterweight)}
    platform = side["platform"]
    half = 0.8 * half_width(machine)
    found = {"platform": _rectangle(platform[:, 0].min(), platform[:, 0].max(), 0.7 * half)}
    if "counterweight" in side:
        block = side["counterweight"]
        found["counterweight"] = _rectangle(block[:, 0].min(), block[:, 0].max(), half)
    wide = properties(machine.boom.sections[0].profile).outer_width / 2
    thin = properties(machine.boom.sections[-1].profile).outer_width / 2
    heel = machine.heel_out
    found["boom"] = np.array([[heel, -wide], [head, -thin], [head, thin], [heel, wide]])
    return found
