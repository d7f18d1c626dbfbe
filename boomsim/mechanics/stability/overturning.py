"""Does the crane turn over: moments of every mass about every tipping line.

On ground that leans, masses count where a plumb line through them meets the plane of the supports.

Derived in docs/theory.md, section 6.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM, Disturbances, Support
from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.external_loads import wind_pressure
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.masses import Masses
from boomsim.mechanics.stability.tipping_lines import TippingLines, tipping_lines

ON_THE_LINE = 1e-6
"""A load no farther beyond a tipping line hangs on it: a radius is solved no more closely [m]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Overturning:
    """Balance about every tipping line at every slew angle, of one set of cells.

    Shapes (slews, lines, configurations, cells) unless given.

    Attributes
    ----------
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
    slew : ndarray, shape (slews,)
        Slew angles to try; 0 over the rear [rad]
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
        tipping = np.where(lever > ON_THE_LINE * GRAVITY, righting / lever, np.inf)
    tipping = np.where(np.isnan(righting) | np.isnan(lever), np.nan, tipping)
    # What already lies over the line without a load has no tipping load to speak of.
    tipping = np.where(righting <= 0.0, 0.0, tipping)
    return Overturning(lines=lines, slew=slew, righting=righting, lever=lever, tipping_load=tipping)


def zero_moment_point(balance: Overturning, *, weight: Array, load: Array) -> tuple[Array, Array]:
    """Where the resultant of crane, load and whatever pushes them meets the ground.

    About every tipping line, weight (d - n.r) = righting - load lever; the lines' normals n span
    the plane, so their equations give r.

    Parameters
    ----------
    weight : ndarray, shape (configurations, cells)
        Of crane and load [N]
    load : ndarray, shape (configurations, cells)
        [kg]

    Returns
    -------
    x, y : ndarray, shape (slews, configurations, cells)
        Carrier axes [m]
    """
    inside = (balance.righting - load * balance.lever) / weight
    reach = balance.lines.distance[None, :, None, None] - inside
    x, y = np.einsum("kl,slcr->kscr", np.linalg.pinv(balance.lines.normal), reach)
    return x, y


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
    push, height = wind_on_sections(
        boom, state=state, pressure=pressure, across=disturbances.wind_across
    )
    wind_moment = np.sum(push * height, axis=0)
    load_push = pressure * disturbances.load_area * placed.head_up
    pulled = disturbances.side_pull * GRAVITY * placed.head_up
    if disturbances.wind_across:
        return righting - across * wind_moment, lever + across * (load_push + pulled)
    return righting - ahead * wind_moment, lever + ahead * load_push + across * pulled


def wind_on_sections(
    boom: Condensed, *, state: State, pressure: float, across: bool
) -> tuple[Array, Array]:
    """Horizontal push of the wind on what each section shows beyond the outer one's mouth.

    Parameters
    ----------
    state : State
        Of the same boom
    pressure : float
        [Pa]
    across : bool
        Across the boom, or from behind: then only the level part of it pushes outwards

    Returns
    -------
    push : ndarray, shape (sections, configurations, 1 or cells)
        [N]
    height : ndarray, shape (sections, configurations, cells)
        Above the ground, of the middle of what is shown [m]
    """
    area = boom.stations.area_side if across else boom.stations.area_up
    whole = area[:, :: area.shape[1] // len(boom.machine.boom.sections)]
    own = whole - np.append(whole[:, 1:], np.zeros_like(whole[:, :1]), axis=1)
    push = pressure * boom.machine.boom.wind_shape * np.moveaxis(own, 1, 0)
    sin = np.sin(state.angle)
    moved = boom.stretch.moved(boom.stretch.shown, strain=state.strain, sin=state.sin)
    along, above = (
        np.moveaxis(boom.shown @ way + own, 1, 0)
        for way, own in zip((state.cos, state.sin), moved, strict=True)
    )
    height = boom.machine.heel_up + along * sin + above * np.cos(state.angle)
    return np.asarray(push if across else push * sin**2), height


def backward_share(*, placed: Masses, lines: TippingLines, slew: Array, load: float = 0.0) -> Array:
    """Share of the crane's weight that its boom side carries, least over the slew angles.

    s = 1/2 - e/(2 b) for a resultant e behind the middle of a base 2 b wide, measured in the
    direction of the boom (ASME B30.5 5-1.1.2, from memory: at least 15 %).

    Parameters
    ----------
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
