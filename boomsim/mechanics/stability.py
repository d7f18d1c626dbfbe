"""Does the crane turn over: moments of every mass about every tipping line.

A tipping line is a side of the support polygon, given by its outward unit normal n and its
distance d from the axis of rotation: points on it have n.x = d. On ground that leans, masses count
where a plumb line through them meets the plane of the supports.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import CALM, CarrierMass, Disturbances, Support, TurningMass
from boomsim.mechanics.condense import Condensed
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.loads import GRAVITY, wind_pressure
from boomsim.mechanics.state import State


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class TippingLines:
    """Sides of the support polygon, anticlockwise seen from above.

    Attributes
    ----------
    start, end : ndarray, shape (lines, 2)
        Support points that each line joins, carrier axes [m]
    normal : ndarray, shape (lines, 2)
        Outward unit normal [1]
    distance : ndarray, shape (lines,)
        From the axis of rotation [m]
    """

    start: Array
    end: Array
    normal: Array
    distance: Array


def tipping_lines(support: Support) -> TippingLines:
    """Sides of the convex polygon round the supports.

    Parameters
    ----------
    support : Support

    Returns
    -------
    TippingLines
    """
    corners = np.array(_hull(support.points))
    ends = np.roll(corners, -1, axis=0)
    side = ends - corners
    normal = np.stack([side[:, 1], -side[:, 0]], axis=1) / np.hypot(*side.T)[:, None]
    return TippingLines(
        start=corners, end=ends, normal=normal, distance=np.sum(normal * corners, axis=1)
    )


def _hull(points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
    """Convex hull, anticlockwise (Andrew's monotone chain)."""

    def chain(ordered: list[tuple[float, float]]) -> list[tuple[float, float]]:
        kept: list[tuple[float, float]] = []
        for x, y in ordered:
            while len(kept) > 1 and (
                (kept[-1][0] - kept[-2][0]) * (y - kept[-2][1])
                - (kept[-1][1] - kept[-2][1]) * (x - kept[-2][0])
                <= 0.0
            ):
                kept.pop()
            kept.append((x, y))
        return kept[:-1]

    ordered = sorted(set(points))
    return chain(ordered) + chain(ordered[::-1])


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Masses:
    """Every mass of the crane without the load, and where it is.

    Attributes
    ----------
    name : tuple of str
        Turning parts, then carrier parts
    mass : ndarray, shape (parts,)
        [kg]
    out, left, up : ndarray, shape (parts, configurations, cells)
        Position in superstructure axes, for turning parts; NaN for carrier parts [m]
    x, y, z : ndarray, shape (parts,)
        Position in carrier axes, for carrier parts; NaN for turning parts [m]
    turning : int
        How many of the parts turn
    head_out, head_left, head_up : ndarray, shape (configurations, cells)
        Where the load hangs; `head_out` is the radius [m]
    """

    name: tuple[str, ...]
    mass: Array
    out: Array
    left: Array
    up: Array
    x: Array
    y: Array
    z: Array
    turning: int
    head_out: Array
    head_left: Array
    head_up: Array


def masses(boom: Condensed, *, state: State, counterweight: TurningMass) -> Masses:
    """Find every mass in its place on the deflected boom.

    Parameters
    ----------
    boom : Condensed
    state : State
    counterweight : TurningMass

    Returns
    -------
    Masses
    """
    machine = boom.machine
    cos, sin = np.cos(state.angle), np.sin(state.angle)

    def placed(along: Array, above: Array) -> tuple[Array, Array]:
        return (
            machine.heel_out + along * cos - above * sin,
            machine.heel_up + along * sin + above * cos,
        )

    centre_out, centre_up = placed(
        np.moveaxis(boom.centres @ state.cos, 1, 0),
        np.moveaxis(boom.centres @ state.sin, 1, 0),
    )
    head_out, head_up = placed(state.head_along, state.head_above)
    lug_out, lug_up = placed(
        np.full_like(cos, machine.cylinder.attach_along),
        np.full_like(cos, -machine.cylinder.attach_below),
    )
    rod, tube = machine.cylinder.mass / 2, machine.cylinder.mass / 2
    fixed = (
        TurningMass(
            name="cylinder, lower half",
            mass=tube,
            out=machine.cylinder.base_out,
            up=machine.cylinder.base_up,
        ),
        *machine.superstructure,
        counterweight,
    )
    sections = machine.boom.sections
    name = (
        *(section_name(i) for i in range(len(sections))),
        "head",
        "cylinder, upper half",
        *(part.name for part in fixed),
        *(part.name for part in machine.carrier),
    )
    left = (boom.path @ state.rotation_side)[:, 0]
    shares = _side_shares(boom, state)
    out = [*centre_out, head_out, lug_out, *(np.full_like(cos, p.out) for p in fixed)]
    up = [*centre_up, head_up, lug_up, *(np.full_like(cos, p.up) for p in fixed)]
    sideways = [*shares, left, *(np.zeros_like(cos) for _ in range(1 + len(fixed)))]
    carrier: tuple[CarrierMass, ...] = machine.carrier
    return Masses(
        name=name,
        mass=np.array(
            [
                *(s.mass for s in sections),
                machine.boom.head.mass,
                rod,
                *(p.mass for p in fixed),
                *(p.mass for p in carrier),
            ]
        ),
        out=np.array(out),
        left=np.array(sideways),
        up=np.array(up),
        x=np.array([p.x for p in carrier]),
        y=np.array([p.y for p in carrier]),
        z=np.array([p.z for p in carrier]),
        turning=len(out),
        head_out=head_out,
        head_left=state.head_left,
        head_up=head_up,
    )


def section_name(number: int) -> str:
    """What a section is called in every table: the base section is number 0."""
    return "base section" if number == 0 else f"section {number}"


def _side_shares(boom: Condensed, state: State) -> list[Array]:
    if not np.any(state.rotation_side):
        return [np.zeros_like(state.angle)] * len(boom.machine.boom.sections)
    return list(np.moveaxis(boom.centres @ state.rotation_side, 1, 0))


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Overturning:
    """Balance about every tipping line at every slew angle, of one set of cells.

    Shapes (slews, lines, configurations, cells) unless given.

    Attributes
    ----------
    lines : TippingLines
    slew : ndarray, shape (slews,)
        [rad]
    righting : ndarray
        Moment that holds the crane down, without the load [N m]
    lever : ndarray
        Overturning moment for each kilogram of load; negative inside the line [N m/kg]
    tipping_load : ndarray
        Gross load at which the crane tips about the line; infinite where none can [kg]
    """

    lines: TippingLines
    slew: Array
    righting: Array
    lever: Array
    tipping_load: Array

    @property
    def least(self) -> Array:
        """Least tipping load over slew angles and lines, shape (configurations, cells) [kg]."""
        return np.asarray(self.tipping_load.min(axis=(0, 1)))


def overturning(
    boom: Condensed,
    *,
    placed: Masses,
    state: State,
    support: Support,
    slew: Array,
    disturbances: Disturbances = CALM,
) -> Overturning:
    """Righting moment, load lever and tipping load about every line.

    righting = sum of W (d - n.x); lever = g (n.x_load - d); tipping load = righting/lever.

    Parameters
    ----------
    boom : Condensed
    placed : Masses
    state : State
    support : Support
    slew : ndarray, shape (slews,)
        Slew angles to try; 0 over the rear [rad]
    disturbances : Disturbances

    Returns
    -------
    Overturning
    """
    lines = tipping_lines(support)
    slew = np.atleast_1d(np.asarray(slew, dtype=float))
    ahead = _along(lines, np.cos(slew), np.sin(slew))
    across = _along(lines, -np.sin(slew), np.cos(slew))
    turned = np.asarray(placed.mass[: placed.turning])
    plumb_out = placed.out + placed.up * np.tan(disturbances.lean)
    plumb_left = placed.left + placed.up * np.tan(disturbances.lean_across)
    moment_out = np.tensordot(turned, plumb_out, axes=1)
    moment_left = np.tensordot(turned, plumb_left, axes=1)
    carrier = _carrier_moment(placed, lines, slew, disturbances)
    spread = lines.distance[None, :, None, None]
    righting = GRAVITY * (
        placed.mass.sum() * spread
        - ahead * moment_out
        - across * moment_left
        - carrier[:, :, None, None]
    )
    hook_out = placed.head_out + placed.head_up * np.tan(disturbances.lean)
    hook_left = placed.head_left + placed.head_up * np.tan(disturbances.lean_across)
    lever = GRAVITY * (ahead * hook_out + across * hook_left - spread)
    if disturbances != CALM:
        righting, lever = _disturbed(
            boom, placed, state, disturbances, ahead, across, righting, lever
        )
    with np.errstate(divide="ignore", invalid="ignore"):
        tipping = np.where(lever > 0.0, righting / lever, np.inf)
    tipping = np.where(np.isnan(righting) | np.isnan(lever), np.nan, tipping)
    # What already lies over the line without a load has no tipping load to speak of.
    tipping = np.where(righting <= 0.0, 0.0, tipping)
    return Overturning(lines=lines, slew=slew, righting=righting, lever=lever, tipping_load=tipping)


def _along(lines: TippingLines, x: Array, y: Array) -> Array:
    """How far a unit step in a direction goes over each line, shape (slews, lines, 1, 1)."""
    directions = np.stack([x, y], axis=0)
    return np.asarray((lines.normal @ directions).T[:, :, None, None])


def _carrier_moment(
    placed: Masses, lines: TippingLines, slew: Array, disturbances: Disturbances
) -> Array:
    """Sum of m n.x over carrier parts, shape (slews, lines); a lean turns with the boom."""
    mass = placed.mass[placed.turning :]
    tan_out, tan_left = np.tan(disturbances.lean), np.tan(disturbances.lean_across)
    x = placed.x + np.outer(np.cos(slew) * tan_out - np.sin(slew) * tan_left, placed.z)
    y = placed.y + np.outer(np.sin(slew) * tan_out + np.cos(slew) * tan_left, placed.z)
    return np.asarray(
        np.outer(x @ mass, lines.normal[:, 0]) + np.outer(y @ mass, lines.normal[:, 1])
    )


def _disturbed(
    boom: Condensed,
    placed: Masses,
    state: State,
    disturbances: Disturbances,
    ahead: Array,
    across: Array,
    righting: Array,
    lever: Array,
) -> tuple[Array, Array]:
    """Horizontal forces turn the crane over at the height at which they act."""
    pressure = wind_pressure(disturbances.wind_speed)
    sections = boom.machine.boom.sections
    area = boom.stations.area_side if disturbances.wind_across else boom.stations.area_up
    whole = area[:, :: area.shape[1] // len(sections)]
    own = whole - np.append(whole[:, 1:], np.zeros_like(whole[:, :1]), axis=1)
    push = pressure * boom.machine.boom.wind_shape * np.moveaxis(own, 1, 0)
    if not disturbances.wind_across:
        push = push * np.sin(state.angle) ** 2
    wind_moment = np.sum(push * placed.up[: len(sections)], axis=0)
    load_push = pressure * disturbances.load_area * placed.head_up
    pulled = disturbances.side_pull * GRAVITY * placed.head_up
    if disturbances.wind_across:
        return righting - across * wind_moment, lever + across * (load_push + pulled)
    return righting - ahead * wind_moment, lever + ahead * load_push + across * pulled


def backward_share(*, placed: Masses, lines: TippingLines, slew: Array, load: float = 0.0) -> Array:
    """Share of the crane's weight that its boom side carries, least over the slew angles.

    s = 1/2 - e/(2 b) for a resultant e behind the middle of a base 2 b wide, measured in the
    direction of the boom (ASME B30.5 5-1.1.2, from memory: at least 15 %).

    Parameters
    ----------
    placed : Masses
    lines : TippingLines
    slew : ndarray, shape (slews,)
        [rad]
    load : float
        Gross load [kg]

    Returns
    -------
    ndarray, shape (configurations, cells)
        Share [1]
    """
    slew = np.atleast_1d(np.asarray(slew, dtype=float))
    direction = np.stack([np.cos(slew), np.sin(slew)], axis=1)
    reach = lines.start @ direction.T
    front, back = reach.max(axis=0), reach.min(axis=0)
    carrier = placed.mass[placed.turning :]
    carried = direction @ np.stack([placed.x @ carrier, placed.y @ carrier])
    turned = (
        np.tensordot(placed.mass[: placed.turning], placed.out, axes=1) + load * placed.head_out
    )
    centre = (carried[:, None, None] + turned) / (placed.mass.sum() + load)
    share = (centre - back[:, None, None]) / (front - back)[:, None, None]
    return np.asarray(share.min(axis=0))
