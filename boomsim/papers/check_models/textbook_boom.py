"""From the givens of a question to the call path that rates every lift.

A question names a few numbers; the call path wants a whole machine. What the question assumes
away is set so that it has no effect here: a boom too stiff to bend, a rope that does not pull.
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import (
    Boom,
    CarrierMass,
    Head,
    Hoist,
    LuffingCylinder,
    Machine,
    Material,
    Profile,
    Section,
    SlewingRing,
    Support,
    TurningMass,
)  # fmt: skip
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import Forces, section_forces
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.section_properties import properties
from boomsim.mechanics.stability.masses import masses

STIFF = 1e24
"""Young's modulus of a boom that does not bend [Pa]."""
MANY = 100
"""Parts of line: the rope pulls little, and straight to the heel pin, so it bends nothing [1]."""

_EDGE = ((-0.3, -0.4), (0.3, -0.4), (0.3, 0.4), (-0.3, 0.4))
_BOX = Profile(corners=_EDGE, thickness=(0.01,) * 4, kind="box")


def textbook_boom(
    lengths: Sequence[float],
    *,
    strokes: Sequence[float] = (),
    noses: Sequence[float] = (),
    masses: Sequence[float] = (),
    ahead: float = 0.0,
    modulus: Sequence[float] = (),
) -> Boom:
    """Make a boom of which only a few numbers matter.

    Parameters
    ----------
    lengths : sequence of float
        Of all sections, base first [m]
    strokes, noses : sequence of float
        Of the moving sections; default 0 [m]
    masses : sequence of float
        Of all sections; default weightless [kg]
    ahead : float
        Head sheave centre ahead of the last front [m]
    modulus : sequence of float
        Young's modulus of each section; default stiff [Pa]
    """
    count = len(lengths)
    moved = (0.0, *(strokes or (0.0,) * (count - 1)))
    nosed = (0.0, *(noses or (0.0,) * (count - 1)))
    sections = tuple(
        Section(
            profile=_BOX,
            material=Material(
                yield_stress=1e9, modulus=(modulus or (STIFF,) * count)[i], shear_modulus=np.inf,
                axial_modulus=np.inf,
            ),
            length=lengths[i], mass=(masses or (0.0,) * count)[i], stroke=moved[i], nose=nosed[i],
        )
        for i in range(count)
    )  # fmt: skip
    head = Head(ahead=ahead, below=0.0, rope_above=0.0, mass=0.0)
    return Boom(
        sections=sections, head=head, systems=("free",),
        least_angle=-np.pi / 2, greatest_angle=np.pi / 2,
    )  # fmt: skip


def textbook_machine(boom: Boom, *, heel_out: float = 0.0) -> Machine:
    """Put a boom on a machine that matters no further.

    Parameters
    ----------
    heel_out : float
        Heel pin from the axis of rotation [m]
    """
    attach = 0.2 * boom.sections[0].length
    corners = ((3.0, 3.0), (3.0, -3.0), (-3.0, -3.0), (-3.0, 3.0))
    return Machine(
        name="textbook", title="Invented for one question", note="", boom=boom,
        heel_out=heel_out, heel_up=2.0,
        cylinder=LuffingCylinder(
            base_out=heel_out + attach, base_up=0.5, attach_along=attach, attach_below=0.0,
            strength=1e12, mass=0.0,
        ),
        hoist=Hoist(
            winch_out=heel_out, winch_up=2.0, line_pull=1e12, sheave_efficiency=1.0, parts=(MANY,)
        ),
        ring=SlewingRing(moment=1e12, up=1.0),
        carrier=(CarrierMass(name="carrier", mass=1e5, x=0.0, y=0.0, z=1.0),),
        superstructure=(),
        counterweights=(TurningMass(name="none", mass=0.0, out=0.0, up=0.0),),
        supports=(
            Support(name="floats", kind="outriggers", points=corners, stiffness=1e9, area=1.0),
        ),
        hook_block=0.0, slings=0.0,
    )  # fmt: skip


def lift(
    machine: Machine, *, extension: Sequence[float], load: float | Array, angle: float = 0.0
) -> tuple[Condensed, State, Forces]:
    """Hang a load on the boom and follow the call path.

    Parameters
    ----------
    extension : sequence of float
        Fraction out of each moving section [1]
    load : float or ndarray, shape (cells,)
        Gross load [kg]
    angle : float
        Boom angle [rad]

    Returns
    -------
    Condensed, State, Forces
        Of one configuration, a cell for each load
    """
    boom = condense(machine, extension=np.atleast_2d(extension))
    parts = machine.hoist.parts[-1]
    loads = np.atleast_2d(load)
    state = solve_state(boom, load=loads, parts=parts, angle=np.full(loads.shape, angle))
    return boom, state, section_forces(boom, state=state)


AT_THE_HEEL = 1e-5
"""From the heel pin to a luffing cylinder so near that the boom is as good as clamped [m]."""


def even_boom(length: float, *, weight: float, centre: float) -> Boom:
    """Make a boom of one stiff section by its weight and its centre of gravity.

    Parameters
    ----------
    length : float
        Heel pin to head sheave centre [m]
    weight : float
        [N]
    centre : float
        Centre of gravity from the heel pin, along the boom [m]

    Returns
    -------
    Boom
        An even section twice as long as `centre`, the head where it belongs
    """
    return textbook_boom((2 * centre,), masses=(weight / GRAVITY,), ahead=length - 2 * centre)


def clamped(machine: Machine) -> Machine:
    """Hold the boom so near the heel pin that its foot neither turns nor moves."""
    return replace(machine, cylinder=replace(machine.cylinder, attach_along=AT_THE_HEEL))


def without_rope(machine: Machine) -> Machine:
    """Reeve so many parts of line that the hoist rope's pull along the boom does not show."""
    return replace(machine, hoist=replace(machine.hoist, parts=(50 * MANY,)))


@lru_cache(maxsize=1)
def _second_moment() -> float:
    """I_y of every textbook section [m4]."""
    return properties(_BOX).i_y


def modulus_for(stiffness: float) -> float:
    """Find Young's modulus that gives a textbook section a bending stiffness [Pa].

    Parameters
    ----------
    stiffness : float
        E I in the luffing plane [N m2]
    """
    return stiffness / _second_moment()


def straight_boom(
    length: float, *, heel_out: float, angle: float | None = None, radius: float | None = None
) -> tuple[Condensed, State]:
    """Set a boom of one section that does not bend to an angle, or its head to a radius.

    Parameters
    ----------
    length, heel_out, radius : float
        [m]
    angle : float
        [rad]

    Returns
    -------
    Condensed, State
        Of one cell, without a load
    """
    made = textbook_machine(textbook_boom((length,)), heel_out=heel_out)
    boom = condense(made, extension=np.zeros((1, 0)))
    return boom, solve_state(
        boom,
        load=np.zeros((1, 1)),
        parts=1,
        angle=None if angle is None else np.full((1, 1), angle),
        radius=None if radius is None else np.full((1, 1), radius),
    )


def head_place(boom: Condensed, *, state: State) -> tuple[float, float]:
    """Find the radius and the height above ground of the head sheave centre.

    Parameters
    ----------
    state : State
        Of one cell

    Returns
    -------
    float, float
        [m]
    """
    placed = masses(boom, state=state, counterweight=boom.machine.counterweights[0])
    return float(placed.head_out[0, 0]), float(placed.head_up[0, 0])


def droop_at_mouth(boom: Condensed, *, forces: Forces, section: int = 1) -> float:
    """Find the bending moment of a section at the mouth of the next larger one.

    Parameters
    ----------
    forces : Forces
        Of one cell

    Returns
    -------
    float
        Positive where the boom droops [N m]
    """
    return -float(forces.moment[0, boom.stations.at_mouth[0, section], 0])
