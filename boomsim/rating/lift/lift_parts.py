"""The parts of one lift: forces of its sections, utilisations, margins, supports."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Support
from boomsim.machine.part_names import section_name, support_names
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.support_reactions import ground_pressure, support_reactions
from boomsim.mechanics.stability.tipping_lines import TippingLines
from boomsim.rating.lift_response import Response
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.limits.tyres import tyre_forces
from boomsim.rating.resultant import resultant, turned


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionForces:
    """Largest forces of one section, as magnitudes.

    Attributes
    ----------
    name : str
    moment_max, moment_side_max : float
        Bending in the luffing plane and sideways [N m]
    axial_max : float
        [N]
    front_pad, rear_pad, lock : float or None
        At the outer section's mouth and at this section's tail, up or down; None for the base [N]
    """

    name: str
    moment_max: float
    moment_side_max: float
    axial_max: float
    front_pad: float | None
    rear_pad: float | None
    lock: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Utilisation:
    """How much of a limit is used [1]."""

    limit: Limit
    utilisation: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Margin:
    """Balance about one tipping line at the slew angle that is worst for it.

    Attributes
    ----------
    name : str
        The two supports that it joins
    slew : float
        [rad]
    righting, overturning : float
        Moments without the load and of the load; a load inside the line turns nothing over [N m]
    overturning_ratio : float
        overturning/righting; one means that the crane tips [1]
    """

    name: str
    slew: float
    righting: float
    overturning: float
    overturning_ratio: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SupportLoad:
    """Of one support, at one slew angle.

    Attributes
    ----------
    name : str
        "front left", or of a tyre "axle 1 left"
    x, y : float
        Carrier axes [m]
    force : float
        NaN where the crane tips [N]
    lifted : bool
    ground_pressure : float
        [Pa]
    """

    name: str
    x: float
    y: float
    force: float
    lifted: bool
    ground_pressure: float


def _section(at: Response, number: int) -> SectionForces:
    own = slice(number * PER_SECTION, (number + 1) * PER_SECTION)
    forces, moving = at.forces, number > 0

    def joint(values: Array) -> float | None:
        return float(values[0, number, 0]) if moving else None

    return SectionForces(
        name=section_name(number),
        moment_max=float(np.abs(forces.moment[0, own, 0]).max()),
        moment_side_max=float(np.abs(forces.moment_side[0, own, 0]).max()),
        axial_max=float(np.abs(forces.axial[0, own, 0]).max()),
        front_pad=joint(forces.front_pad),
        rear_pad=joint(forces.rear_pad),
        lock=joint(forces.lock),
    )


def _margin(at: Response, line: int) -> Margin:
    balance, load = at.balance, float(at.state.load[0, 0])
    righting = balance.righting[:, line, 0, 0]
    lever = balance.lever[:, line, 0, 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        used = np.where(righting > 0.0, np.maximum(load * lever, 0.0) / righting, np.inf)
    turn = int(np.argmax(used + 1e-12 * lever))
    return Margin(
        name=_line_name(at.setup.support, balance.lines, line),
        slew=float(balance.slew[turn]),
        righting=float(righting[turn]),
        overturning=float(max(load * lever[turn], 0.0)),
        overturning_ratio=float(used[turn]),
    )


def _line_name(support: Support, lines: TippingLines, line: int) -> str:
    """Name a tipping line by the two supports that it joins."""
    names = dict(zip(support.points, support_names(support), strict=True))
    ends = (lines.start[line], lines.end[line])
    return " to ".join(names[float(end[0]), float(end[1])] for end in ends)


def fullest_turn(at: Response) -> int:
    """Slew angle at which some tyre carries most, as an index.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    """
    load, support = at.state.load, at.setup.support
    force = tyre_forces(support, placed=at.placed, balance=at.balance, load=load)
    return int(np.argmax(force[:, :, 0, 0].max(axis=0)))


def _supports(at: Response, turn: int) -> tuple[SupportLoad, ...]:
    support = at.setup.support
    here = turned(at, slew=at.balance.slew[turn : turn + 1])
    weight, x, y = resultant(at, balance=here)
    found = support_reactions(support, weight=weight[:, 0, 0], x=x[:, 0, 0], y=y[:, 0, 0])
    return tuple(
        SupportLoad(
            name=name,
            x=point[0],
            y=point[1],
            force=float(force),
            lifted=bool(up),
            ground_pressure=float(ground_pressure(force, area=support.area)),
        )
        for name, point, force, up in zip(
            support_names(support),
            support.points,
            found.force[:, 0],
            found.lifted[:, 0],
            strict=True,
        )
    )
