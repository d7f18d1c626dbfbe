"""Where every mass of a crane is, on its deflected boom.

Derived in docs/theory.md, section 6.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import CarrierMass, TurningMass
from boomsim.machine.part_names import section_name
from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array


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
    """Find every mass in its place on the deflected boom."""
    machine = boom.machine
    cos, sin = np.cos(state.angle), np.sin(state.angle)

    def placed(along: Array, above: Array) -> tuple[Array, Array]:
        return (
            machine.heel_out + along * cos - above * sin,
            machine.heel_up + along * sin + above * cos,
        )

    centre_out, centre_up = placed(
        *(np.moveaxis(centre, 1, 0) for centre in centres(boom, state=state)),
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
    shares = _side_shares(boom, state)
    out = [*centre_out, head_out, lug_out, *(np.full_like(cos, p.out) for p in fixed)]
    up = [*centre_up, head_up, lug_up, *(np.full_like(cos, p.up) for p in fixed)]
    sideways = [*shares, state.head_left, *(np.zeros_like(cos) for _ in range(1 + len(fixed)))]
    carrier: tuple[CarrierMass, ...] = machine.carrier
    return Masses(
        name=name,
        mass=np.array(
            [
                *machine.boom.section_masses,
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


def centres(boom: Condensed, *, state: State) -> tuple[Array, Array]:
    """Centres of gravity of the sections, along and above the base section.

    Returns
    -------
    ndarray, ndarray, shape (configurations, sections, cells)
        [m]
    """
    along, above = boom.stretch.moved(boom.stretch.centres, strain=state.strain, sin=state.sin)
    return boom.centres @ state.cos + along, boom.centres @ state.sin + above


def _side_shares(boom: Condensed, state: State) -> list[Array]:
    if not np.any(state.rotation_side):
        return [np.zeros_like(state.angle)] * len(boom.machine.boom.sections)
    return list(np.moveaxis(boom.centres @ state.rotation_side, 1, 0))
