"""Small machines for tests, invented: a bare boom that a book would draw, and one whole crane.

A bare boom has no clearances, nothing but the given masses, and a hoist rope reeved so many times
that its pull is a hundred-thousandth of the load: the book's beams have no rope.
"""

import math
from collections.abc import Sequence
from dataclasses import replace
from math import atan2, hypot, pi, radians
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import read_machine
from boomsim.machine.model import (
    Boom,
    CarrierMass,
    Disturbances,
    Head,
    Hoist,
    Lock,
    LuffingCylinder,
    Machine,
    Material,
    Pad,
    Profile,
    Section,
    SlewingRing,
    Support,
    TurningMass,
)
from boomsim.machine.outline import plate_area
from boomsim.machine.shapes.box import box
from boomsim.machine.shapes.folded import folded
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.sections.section_properties import properties
from boomsim.rating.setup import Setup, set_up

Floats = NDArray[np.float64]

NO_ROPE = 100_000
"""Parts of line at which the lead line pulls a hundred-thousandth of the load [1]."""

SQUARE = box(0.2, width=0.2, top=0.005, bottom=0.005, web=0.005)
"""A square box: as stiff sideways as in the luffing plane."""

RIGID = 1e15
"""A bending stiffness that does not bend [N m2]."""

BARE_HEAD = Head(ahead=0.0, below=0.0, rope_above=0.0, mass=0.0)

FOUR_JACKS = Support(
    name="jacks",
    kind="outriggers",
    points=((3.0, 3.0), (-3.0, 3.0), (-3.0, -3.0), (3.0, -3.0)),
    stiffness=5e7,
    area=0.25,
)


def stiff_section(
    length: float,
    *,
    stiffness: float,
    mass: float = 0.0,
    stroke: float = 0.0,
    nose: float = 0.0,
    clearance: float = 0.0,
) -> Section:
    """A section of a wanted bending stiffness, the same in both planes, that only bends.

    Parameters
    ----------
    length : float
        [m]
    stiffness : float
        E I [N m2]
    mass : float
        [kg]
    stroke, nose, clearance : float
        As in `Section` [m]

    Returns
    -------
    Section
    """
    modulus = stiffness / properties(SQUARE).i_y
    material = Material(
        yield_stress=690e6, modulus=modulus, shear_modulus=math.inf, axial_modulus=math.inf
    )
    return Section(
        profile=SQUARE,
        material=material,
        length=length,
        mass=mass,
        stroke=stroke,
        nose=nose,
        clearance=clearance,
    )


def chain(
    lengths: Sequence[float],
    *,
    stiffness: Sequence[float],
    overlap: float = 1e-4,
    line_mass: float = 0.0,
) -> tuple[Section, ...]:
    """Sections end to end, joined over an overlap so short that it bends like one bar.

    Parameters
    ----------
    lengths : sequence of float
        Base side first, between the fronts [m]
    stiffness : sequence of float
        E I of each [N m2]
    overlap : float
        [m]
    line_mass : float
        Mass of the bar [kg/m]

    Returns
    -------
    tuple of Section
    """
    made = [stiff_section(lengths[0], stiffness=stiffness[0], mass=line_mass * lengths[0])]
    for length, bending in zip(lengths[1:], stiffness[1:], strict=True):
        mass = line_mass * length
        made.append(stiff_section(length + overlap, stiffness=bending, mass=mass, nose=length))
    return tuple(made)


def even_bar(
    length: float, *, stiffness: float, pieces: int = 6, line_mass: float = 0.0
) -> tuple[Section, ...]:
    """An even bar cut into pieces, so that the stations lie close enough for a published figure.

    Parameters
    ----------
    length : float
        [m]
    stiffness : float
        E I [N m2]
    pieces : int
    line_mass : float
        [kg/m]

    Returns
    -------
    tuple of Section
    """
    return chain([length / pieces] * pieces, stiffness=[stiffness] * pieces, line_mass=line_mass)


def bare_machine(
    sections: tuple[Section, ...],
    *,
    head: Head = BARE_HEAD,
    lug: float = 1e-5,
    support: Support = FOUR_JACKS,
    carrier: tuple[CarrierMass, ...] = (),
    turning: tuple[TurningMass, ...] = (),
) -> Machine:
    """A boom on its heel pin, with nothing else that weighs.

    Parameters
    ----------
    sections : tuple of Section
    head : Head
    lug : float
        Cylinder's upper pin along the boom; at the heel pin the boom is as good as clamped [m]
    support : Support
    carrier, turning : tuples
        Masses, if any

    Returns
    -------
    Machine
        Heel pin on the axis of rotation, 2 m up
    """
    return Machine(
        name="bare",
        title="Bare boom",
        note="Invented.",
        boom=Boom(
            sections=sections,
            head=head,
            systems=("free",),
            least_angle=radians(-5.0),
            greatest_angle=radians(95.0),
            wind_shape=1.0,
        ),
        heel_out=0.0,
        heel_up=2.0,
        cylinder=LuffingCylinder(
            base_out=1.0, base_up=0.5, attach_along=lug, attach_below=0.0, strength=1e12, mass=0.0
        ),
        hoist=Hoist(
            winch_out=0.0, winch_up=2.0, line_pull=1e9, sheave_efficiency=1.0, parts=(NO_ROPE,)
        ),
        ring=SlewingRing(moment=1e12, up=1.0),
        carrier=carrier,
        superstructure=turning,
        counterweights=(TurningMass(name="none", mass=0.0, out=0.0, up=0.0),),
        supports=(support,),
        hook_block=0.0,
        slings=0.0,
    )


def bare_boom(sections: tuple[Section, ...], **other: float | Head) -> Condensed:
    """A bare machine's boom with nothing extended, condensed; `other` as in `bare_machine`."""
    machine = bare_machine(sections, **other)  # type: ignore[arg-type]
    return condense(machine, extension=np.zeros((1, len(sections) - 1)))


def kilograms(force: float) -> Floats:
    """The load of one cell that weighs so many newtons, shape (1, 1) [kg]."""
    return np.array([[force / GRAVITY]])


def one(value: float) -> Floats:
    """A value for one cell, shape (1, 1)."""
    return np.array([[float(value)]])


def loaded(boom: Condensed, *, across: float, along: float) -> State:
    """A bare boom with a dead load at the head, given by its parts in axes of the base section.

    A vertical load W on a boom at an angle a has W cos a across and W sin a along.

    Parameters
    ----------
    boom : Condensed
    across, along : float
        Downwards across the unbent boom, and pressing along it [N]

    Returns
    -------
    State
        In the luffing plane
    """
    angle = one(atan2(along, across))
    return solve_state(boom, load=kilograms(hypot(across, along)), parts=NO_ROPE, angle=angle)


def pulled_sideways(boom: Condensed, *, across: float, along: float) -> State:
    """A bare boom that stands upright, carries a load and is pulled to its left at the head.

    Parameters
    ----------
    boom : Condensed
    across, along : float
        Pull to the left, and weight of the load [N]

    Returns
    -------
    State
        Straight in the luffing plane, bent sideways
    """
    return solve_state(
        boom,
        load=kilograms(along),
        parts=NO_ROPE,
        angle=one(pi / 2),
        disturbances=Disturbances(side_pull=across / along),
    )


def is_buildable(machine: Machine) -> bool:
    """Whether even the innermost section is a box one would build: 0.1 m wide or more."""
    across = [z for z, _ in machine.boom.sections[-1].profile.corners]
    return max(across) - min(across) >= 0.1


def set_up_by_hand(machine: Machine, **choices: object) -> Setup:
    """Set a crane up as a calculation by hand does: what is given acts, and no allowance."""
    return set_up(machine, allowances="none", **choices)  # type: ignore[arg-type]


def invented_crane() -> Machine:
    """A whole crane with everything on: three moving sections, symmetric right and left.

    Returns
    -------
    Machine
        Stability governs at far radii, structure at near ones
    """
    sizes = ((0.85, 0.70, 0.008), (0.75, 0.61, 0.007), (0.65, 0.52, 0.006), (0.55, 0.43, 0.005))
    profiles = [box(h, width=w, top=t, bottom=1.2 * t, web=t) for h, w, t in sizes]
    return Machine(
        name="crane",
        title="Invented crane",
        note="Invented.",
        boom=Boom(
            sections=tuple(_section(number, profile) for number, profile in enumerate(profiles)),
            head=Head(ahead=0.3, below=0.25, rope_above=0.4, mass=300.0),
            systems=("free",),
            least_angle=radians(2.0),
            greatest_angle=radians(80.0),
        ),
        heel_out=-1.2,
        heel_up=2.5,
        cylinder=LuffingCylinder(
            base_out=0.3,
            base_up=1.4,
            attach_along=4.2,
            attach_below=0.5,
            strength=2.5e6,
            mass=800.0,
        ),
        hoist=Hoist(
            winch_out=-2.3,
            winch_up=3.0,
            line_pull=55e3,
            sheave_efficiency=0.98,
            parts=tuple(range(1, 11)),
        ),
        ring=SlewingRing(moment=3e6, up=1.3),
        carrier=(
            CarrierMass(name="chassis", mass=17e3, x=-1.0, y=0.0, z=0.9),
            CarrierMass(name="outrigger beams", mass=3e3, x=0.0, y=0.0, z=0.8),
        ),
        superstructure=(TurningMass(name="platform", mass=7e3, out=-0.9, up=1.9),),
        counterweights=(TurningMass(name="usual", mass=9e3, out=-3.0, up=1.8),),
        supports=(
            Support(
                name="full",
                kind="outriggers",
                points=((3.0, 3.0), (-3.3, 3.0), (-3.3, -3.0), (3.0, -3.0)),
                stiffness=6e7,
                area=0.25,
            ),
        ),
        hook_block=350.0,
        slings=50.0,
    )


def _section(number: int, profile: Profile) -> Section:
    """One section of the invented crane; the inner ones are lighter and of stronger steel."""
    length = 10.0 - 0.2 * number
    strong = Material(yield_stress=690e6 if number < 2 else 960e6)
    mass = 1.3 * strong.density * properties(profile).area * length
    base = Section(profile=profile, material=strong, length=length, mass=mass)
    if number == 0:
        return base
    pad = Pad(length=0.3, width=0.12, pressure=30e6)
    return replace(
        base,
        stroke=7.5,
        nose=0.05,
        least_overlap=1.3,
        clearance=0.002,
        front_pad=pad,
        rear_pad=pad,
        lock=Lock(strength=(1.5e6 - 0.2e6 * number)),
    )


LARGER_PLATES = (
    (0.014, 0.012, 0.009),
    (0.012, 0.011, 0.008),
    (0.011, 0.010, 0.0075),
    (0.011, 0.010, 0.0075),
    (0.0125, 0.0125, 0.0085),
    (0.0125, 0.0125, 0.008),
)
"""Top, bottom and web of each section of the larger crane, base first [m]."""


def pinned_at_46_5_and_93() -> Machine:
    """An invented crane of five sections with pins at 46.5 and 93 %, for figures worked by hand."""
    path = Path(__file__).parent / "data" / "pinned_at_46.5_and_93.toml"
    return read_machine(path.read_text(encoding="utf-8"), path.name)


def larger_crane() -> Machine:
    """An invented crane of a larger class: about 42 ft of boom and five strokes of 32 ft."""
    foot, yard = 0.3048, pinned_at_46_5_and_93()
    sections = []
    for i, (top, bottom, web) in enumerate(LARGER_PLATES):
        outer = yard.boom.sections[min(i, 4)]
        height, width = 1.45 - 0.115 * i, 1.15 - 0.095 * i
        profile = folded(
            height,
            width=width,
            top=top,
            bottom=bottom,
            web=web,
            flat=0.4 * width,
            fold=0.28 * height,
        )
        length = (41.0 - 0.5 * i) * foot
        section = replace(
            outer,
            profile=profile,
            material=yard.boom.sections[-1].material,
            length=length,
            mass=1.22 * 7850.0 * plate_area(profile) * length,
        )
        if i:
            pad = Pad(length=0.5, width=0.25, pressure=30e6)
            lock = Lock(strength=4e6)
            section = replace(
                section, stroke=32.0 * foot, nose=0.0, front_pad=pad, rear_pad=pad, lock=lock
            )
        sections.append(section)
    head = replace(yard.boom.head, ahead=1.0 * foot)
    boom = replace(yard.boom, sections=tuple(sections), head=head)
    heavier = 1.7
    return replace(
        yard,
        boom=replace(boom, lock_positions=(0.0, 0.465, 0.93, 0.98)),
        cylinder=replace(yard.cylinder, strength=7e6, attach_along=5.2, attach_below=0.75),
        ring=replace(yard.ring, moment=8e6),
        hoist=replace(yard.hoist, line_pull=120e3),
        carrier=tuple(replace(p, mass=heavier * p.mass) for p in yard.carrier),
        superstructure=tuple(replace(p, mass=heavier * p.mass) for p in yard.superstructure),
        counterweights=(replace(yard.counterweights[0], mass=35e3, out=-4.2),),
        supports=tuple(
            replace(s, points=tuple((1.2 * x, 1.15 * y) for x, y in s.points))
            for s in yard.supports
        ),
    )
