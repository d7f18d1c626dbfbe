"""One lift in full: a single cell of the call path, laid out for a reader."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate
from boomsim.rating.comparison.difference_account import mass_by_part, righting_by_part
from boomsim.rating.empty_hook.empty_hook_sentences import under_hook_words
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.lift.lift_parts import (
    Margin,
    SectionForces,
    SupportLoad,
    Utilisation,
    _margin,
    _section,
    _supports,
    fullest_turn,
)
from boomsim.rating.lift_response import VALID_DEFLECTION, Response, respond
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.longest_boom import tell_longest, too_long
from boomsim.rating.overload.tip_over import worst_direction
from boomsim.rating.parts_reeved import hanging_mass, reeved
from boomsim.rating.setup import Setup
from boomsim.units import outside


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Lift:
    """One lift; SI, angles in rad, loads in kg.

    Attributes
    ----------
    setup : Setup
    response : Response
        The cell itself
    extension : ndarray, shape (moving sections,)
    load, boom_length, boom_angle, radius, head_height, tip_deflection, side_deflection : float
    cylinder_push, line_pull : float
    parts : int
        Parts of line reeved [1]
    falls : float
        Mass of the rope between head and hook, with the hook on the ground [kg]
    in_angle_range, is_valid : bool
    sections : tuple of SectionForces
    limits : tuple of Utilisation
    governing : Limit
        Most used by this load
    capacity : float
        Rated gross load at this radius; NaN out of reach or of the angle range [kg]
    capacity_governing : Limit or None
    tipping_load : float
        With this load's boom position; infinite where no load can tip the crane [kg]
    margins : tuple of Margin
    holds, mass : dict of str to float
        What holds the crane down about the tipping line that governs, part by part [N m], [kg]
    supports : tuple of SupportLoad
    supports_slew : float
        Slew angle at which they carry that: on tyres with a permissible load the one at which some
        tyre carries most, otherwise the one that governs stability [rad]
    empty_hook : EmptyHook
        How far down and out this configuration stands without a load
    lies_over : bool
        True where the boom is beyond that: the crane lies on its side with the empty hook
    notes : tuple of str
        What a reader must know besides
    """

    setup: Setup
    response: Response
    extension: Array
    load: float
    boom_length: float
    boom_angle: float
    radius: float
    head_height: float
    tip_deflection: float
    side_deflection: float
    cylinder_push: float
    line_pull: float
    parts: int
    falls: float
    in_angle_range: bool
    is_valid: bool
    sections: tuple[SectionForces, ...]
    limits: tuple[Utilisation, ...]
    governing: Limit
    capacity: float
    capacity_governing: Limit | None
    tipping_load: float
    margins: tuple[Margin, ...]
    holds: dict[str, float]
    mass: dict[str, float]
    supports: tuple[SupportLoad, ...]
    supports_slew: float
    empty_hook: EmptyHook
    lies_over: bool
    notes: tuple[str, ...]


def lift(
    setup: Setup,
    *,
    extension: Array,
    load: float,
    radius: float | None = None,
    angle: float | None = None,
) -> Lift:
    """Work out one lift.

    Parameters
    ----------
    setup : Setup
    extension : ndarray, shape (moving sections,)
        [1]
    load : float
        Gross load [kg]
    radius, angle : float
        One of them [m] or [rad]

    Raises
    ------
    ValueError
        If a figure is no number in its range, the boom does not reach, or there is no equilibrium.
    """
    _refuse(load, radius, angle)
    boom = condense(setup.machine, extension=extension)
    at = respond(
        setup,
        boom=boom,
        load=np.array([[load]]),
        radius=None if radius is None else np.array([[radius]]),
        angle=None if angle is None else np.array([[angle]]),
    )
    if not at.state.converged[0, 0]:
        raise ValueError(_no_equilibrium(setup, boom.layout.boom_length[0], load, radius))
    calm_radius = float(at.radius[0, 0]) if radius is None else radius
    if not calm_radius > 0.0:
        greatest = np.degrees(setup.machine.boom.greatest_angle)
        raise ValueError(
            f"At a boom angle of {np.degrees(float(at.state.angle[0, 0])):.1f} deg the load would "
            f"hang behind the axis of rotation. The boom of this machine is raised to "
            f"{greatest:.0f} deg at most."
        )
    rating = rate(setup, extension=extension, radius=np.array([calm_radius]))
    rated = np.isfinite(rating.capacity[0, 0])
    utilisations = tuple(
        Utilisation(limit=limit, utilisation=float(utilisation))
        for limit, utilisation in zip(at.limits, at.utilisation[:, 0, 0], strict=True)
        if limit.kind.is_about(setup.support)
    )
    turn, line = _worst(at)
    facing = fullest_turn(at) if setup.support.strength is not None else turn
    length = boom.layout.boom_length
    parts = int(reeved(setup, length=length)[0])
    hung = float(hanging_mass(setup, length=length, angle=at.state.angle)[0, 0])
    bare = empty_hook(setup, extension=extension)
    lies = bool(bare.lies_over(radius=radius, angle=angle)[0])
    return Lift(
        setup=setup,
        response=at,
        extension=boom.layout.extension[0],
        load=load,
        boom_length=float(length[0]),
        boom_angle=float(at.state.angle[0, 0]),
        radius=float(at.radius[0, 0]),
        head_height=float(at.placed.head_up[0, 0]),
        tip_deflection=float(at.tip_deflection[0, 0]),
        side_deflection=float(at.state.head_left[0, 0]),
        cylinder_push=float(at.forces.cylinder[0, 0]),
        line_pull=float(at.state.line_pull[0, 0]),
        parts=parts,
        falls=hung - setup.machine.hook_block - setup.machine.slings,
        in_angle_range=bool(at.in_range[0, 0]),
        is_valid=bool(at.is_valid[0, 0]),
        sections=tuple(_section(at, i) for i in range(len(setup.machine.boom.sections))),
        limits=utilisations,
        governing=max(utilisations, key=lambda u: u.utilisation).limit,
        capacity=float(rating.capacity[0, 0]),
        capacity_governing=rating.limits[rating.governing[0, 0]] if rated else None,
        tipping_load=float(at.balance.least[0, 0]),
        margins=tuple(_margin(at, k) for k in range(len(at.balance.lines.distance))),
        holds=righting_by_part(at, turn=turn, line=line),
        mass=mass_by_part(at),
        supports=_supports(at, facing),
        supports_slew=float(at.balance.slew[facing]),
        empty_hook=bare,
        lies_over=lies,
        notes=(*_notes(at, float(rating.capacity[0, 0]), lies, hung),),
    )


def _refuse(load: float, radius: float | None, angle: float | None) -> None:
    if not 0.0 <= load < 1e7:
        raise ValueError(f"The load: {outside(load, 0.0, 1e7, 'mass')}. Give one inside.")
    if (radius is None) == (angle is None):
        raise ValueError("Give either the radius or the boom angle, and not both.")
    if radius is not None and not 0.0 < radius < 1e4:
        raise ValueError(
            f"The radius: {outside(radius, 0.0, 1e4, 'length')}. Give it from the axis of rotation."
        )
    if angle is not None and not -0.5 <= angle <= 1.6:
        raise ValueError(
            f"A boom angle of {np.degrees(angle):.0f} deg is out of bounds. Give 0 to 85 deg."
        )


def _no_equilibrium(setup: Setup, length: float, load: float, radius: float | None) -> str:
    farthest = setup.machine.heel_out + length
    if radius is not None and radius > farthest:
        return (
            f"The boom is {length:.2f} m long and cannot put its head at a radius of "
            f"{radius:.2f} m; it reaches {farthest:.2f} m. Extend it or choose a smaller radius."
        )
    return (
        f"The boom finds no equilibrium under {load:.0f} kg: it buckles, or its head cannot be "
        "where you want it. Take less load, a shorter boom or another radius."
    )


def _worst(at: Response) -> tuple[int, int]:
    """Slew angle and tipping line that govern stability, as indices."""
    least = at.balance.tipping_load[:, :, 0, 0]
    if not 0.0 < least.min() < np.inf:
        # Several lines may be past tipping, or none be reached: the moment left tells them apart.
        return worst_direction(at)
    turn, line = np.unravel_index(np.argmin(least), least.shape)
    return int(turn), int(line)


def _notes(at: Response, rated: float, lies: bool, hung: float) -> list[str]:
    notes = []
    if not at.is_valid[0, 0]:
        share = 100 * at.tip_deflection[0, 0] / at.boom.layout.boom_length[0]
        notes.append(
            f"The tip deflects by {share:.1f} % of the boom length; the model is meant for up to "
            f"{100 * VALID_DEFLECTION:.0f} %. Take these numbers as a sketch."
        )
    if not at.in_range[0, 0]:
        boom = at.setup.machine.boom
        notes.append(
            f"The boom angle is outside the machine's range of "
            f"{np.degrees(boom.least_angle):.0f} to {np.degrees(boom.greatest_angle):.0f} deg."
        )
    if lies:
        notes.append("Here the crane would lie on its side with its empty hook.")
        return notes
    if too_long(at.setup, length=at.boom.layout.boom_length)[0]:
        longest = tell_longest(at.setup)
        notes.append(f"{longest[0].upper()}{longest[1:]}: nothing is rated with this one.")
    elif np.isnan(rated):
        notes.append("There is no rated capacity here.")
    elif rated < hung:
        why = under_hook_words(at.setup.machine)
        notes.append(f"{why[0].upper()}{why[1:]}: nothing may be lifted.")
    worst = max(zip(at.utilisation[:, 0, 0], at.limits, strict=True), key=lambda pair: pair[0])
    if worst[0] == np.inf:
        notes.append(f"Beyond the rated load: {worst[1].words} is past all bounds.")
    elif worst[0] > 1.0:
        notes.append(f"Beyond the rated load: {worst[1].words} is at {100 * worst[0]:.0f} %.")
    return notes
