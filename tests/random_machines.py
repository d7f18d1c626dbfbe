"""Invented machines and states drawn at random, for comparing two ways to compute the same.

Sizes run from a small lorry's boom to a large crane's. Proportions are common practice, no source.
"""

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from boomsim.machine.model import (
    Boom,
    CarrierMass,
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

Floats = NDArray[np.float64]
GRAVITY = 9.80665


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """One state of a machine.

    Attributes
    ----------
    fractions : tuple of float
        How far each moving section is out, base side first [1]
    theta : float
        Boom angle [rad]
    load : float
        Gross load [kg]
    """

    fractions: tuple[float, ...]
    theta: float
    load: float


def random_machine(
    rng: np.random.Generator, sections: int | None = None, clearance: bool = False
) -> Machine:
    """Invent a machine.

    Parameters
    ----------
    rng : numpy.random.Generator
    sections : int or None
        Number of sections, base section included; None draws 2 to 6 [1]
    clearance : bool
        Whether the pads have play

    Returns
    -------
    Machine
    """
    count = int(rng.integers(2, 7)) if sections is None else sections
    size = rng.uniform(0.4, 1.0)
    boom = _boom(rng, size, count, clearance)
    while not _has_room(boom):
        boom = _boom(rng, size, count, clearance)
    heel_out, heel_up = -rng.uniform(0.5, 2.0) * size, 1.0 + rng.uniform(0.5, 2.0) * size
    mass = 45e3 * size**2
    return Machine(
        name="random",
        title="Random machine",
        note="Invented by a random generator.",
        boom=boom,
        heel_out=heel_out,
        heel_up=heel_up,
        cylinder=_cylinder(rng, size, boom, heel_out, heel_up),
        hoist=_hoist(rng, size, heel_out, heel_up),
        ring=SlewingRing(moment=6e6 * size**3, up=1.5),
        carrier=(CarrierMass(name="carrier", mass=0.6 * mass, x=-1.0, y=0.0, z=1.0),),
        superstructure=(TurningMass(name="cab", mass=0.2 * mass, out=-0.5, up=2.0),),
        counterweights=(TurningMass(name="usual", mass=0.3 * mass, out=-3.5 * size, up=2.0),),
        supports=(_outriggers(size),),
        hook_block=300 * size,
        slings=50 * size,
    )


def random_state(machine: Machine, rng: np.random.Generator) -> State:
    """Draw a configuration, an angle and a load that bends the boom visibly.

    The load is sized by a cantilever formula for a tip deflection between 0.5 % and 5 % of the
    boom length; whoever solves the state checks that it came out so.

    Parameters
    ----------
    machine : Machine
    rng : numpy.random.Generator

    Returns
    -------
    State
    """
    for _ in range(1000):
        state = _draw_state(machine, rng)
        if 50 < state.load < _strongest(machine, state.fractions, state.theta):
            return state
    raise RuntimeError("No state of this machine bends visibly before it breaks.")


def _draw_state(machine: Machine, rng: np.random.Generator) -> State:
    """A state that may be out of range."""
    draws = rng.uniform(-0.2, 1.2, len(machine.boom.sections) - 1).clip(0, 1)
    fractions = tuple(float(round(value, 3)) for value in draws)
    theta = float(rng.uniform(machine.boom.least_angle, machine.boom.greatest_angle))
    share = math.exp(rng.uniform(math.log(0.005), math.log(0.05)))
    load = _load_for(machine, fractions, theta, share)
    return State(fractions=fractions, theta=theta, load=load)


def _strongest(machine: Machine, fractions: tuple[float, ...], theta: float) -> float:
    """Load that would make some section yield at the outer mouth, by the cantilever formula [kg].

    Also no more than half the load at which the boom would buckle.
    """
    length = boom_length(machine, fractions)
    x, bending, _ = _spread(machine, fractions, length)
    material = machine.boom.sections[0].material
    height = np.linspace(_height(machine, 0), _height(machine, -1), x.size)
    moment = bending / material.modulus * material.yield_stress / (height / 2)
    bent = np.min(moment / (length - x + 0.01)) / GRAVITY / math.cos(theta)
    soft = float(np.sum((length - x) ** 2 / bending) * (x[1] - x[0]))
    thrust = math.sin(theta) + 1 / machine.hoist.parts[-1]
    return float(min(bent, 0.5 * length / soft * math.pi**2 / 12 / GRAVITY / thrust))


def _height(machine: Machine, section: int) -> float:
    """Height of a section's profile [m]."""
    return float(np.ptp([y for _, y in machine.boom.sections[section].profile.corners]))


def boom_length(machine: Machine, fractions: tuple[float, ...]) -> float:
    """Heel pin to head sheave along the axis [m]."""
    sections = machine.boom.sections
    out = [s.nose + s.stroke * f for s, f in zip(sections[1:], fractions, strict=True)]
    return sections[0].length + sum(out) + machine.boom.head.ahead


def _load_for(machine: Machine, fractions: tuple[float, ...], theta: float, share: float) -> float:
    """Load whose cantilever deflection, made larger by thrust, is a share of the length [kg]."""
    length = boom_length(machine, fractions)
    x, bending, line = _spread(machine, fractions, length)
    arm = length - x
    step = x[1] - x[0]
    soft = float(np.sum(arm**2 / bending) * step)
    weight = GRAVITY * math.cos(theta) * np.cumsum((line * step)[::-1])[::-1]
    own = float(np.sum(np.cumsum(weight[::-1] * step)[::-1] * arm / bending) * step)
    own += machine.boom.head.mass * GRAVITY * math.cos(theta) * soft
    critical = length / soft * math.pi**2 / 12 / GRAVITY
    wanted = share * length
    pull = GRAVITY * math.cos(theta) * soft
    thrust = math.sin(theta) + 1 / machine.hoist.parts[-1]
    return float((wanted - own) / (pull + wanted * thrust / critical))


def _spread(
    machine: Machine, fractions: tuple[float, ...], length: float
) -> tuple[Floats, Floats, Floats]:
    """Places from cylinder to head [m], the outer section's EI there [N m2], mass [kg/m]."""
    x = np.linspace(machine.cylinder.attach_along, length, 200)
    bending, line, front = np.zeros(200), np.zeros(200), 0.0
    sections = machine.boom.sections
    for section, fraction in zip(sections, (0.0, *fractions), strict=True):
        front += section.nose + section.stroke * fraction if front else section.length
        inside = (x <= front) & (x >= front - section.length)
        line[inside] += section.mass / section.length
        bending[(bending == 0) & (x <= front)] = section.material.modulus * _rough(section.profile)
    bending[bending == 0] = bending[bending > 0][-1]
    return x, bending, line


def without_shear(machine: Machine) -> Machine:
    """The machine of sections that bend and do not shear, as Euler and Bernoulli take them."""
    sections = tuple(
        replace(s, material=replace(s.material, shear_modulus=math.inf))
        for s in machine.boom.sections
    )
    return replace(machine, boom=replace(machine.boom, sections=sections))


def _rough(profile: Profile) -> float:
    """Second moment of area of a box as high and wide as the profile [m4]."""
    z, y = (np.ptp(column) for column in zip(*profile.corners, strict=True))
    t = sum(profile.thickness) / len(profile.thickness)
    return float(t * y**3 / 6 + t * z * y**2 / 2)


def _has_room(boom: Boom) -> bool:
    """Whether the innermost section is still a box, and not a lump of plates."""
    profile = boom.sections[-1].profile
    width = float(np.ptp([z for z, _ in profile.corners]))
    return width > 12 * max(profile.thickness)


def _boom(rng: np.random.Generator, size: float, count: int, clearance: bool) -> Boom:
    """Sections that nest, each shorter and lighter than the one around it."""
    material = Material(yield_stress=float(rng.choice([460e6, 690e6, 960e6])))
    height, shape = size * rng.uniform(0.6, 1.1), rng.uniform(0.65, 0.95)
    length, thickness = size * rng.uniform(8.0, 13.0), size * rng.uniform(0.008, 0.014)
    polygon = bool(rng.random() < 0.5)
    profile = _profile(height, shape * height, thickness, polygon)
    base = Section(
        profile=profile, material=material, length=length, mass=_mass(rng, profile, length)
    )
    sections = [base]
    for _ in range(count - 1):
        play = float(rng.uniform(0.001, 0.005)) if clearance else 0.0
        inner = _inner(rng, sections[-1], polygon, size, play)
        sections.append(inner)
    head = Head(
        ahead=size * rng.uniform(0.2, 0.8),
        below=size * rng.uniform(0.1, 0.6),
        rope_above=size * rng.uniform(0.2, 0.7),
        mass=600 * size**2 * rng.uniform(0.5, 1.5),
    )
    return Boom(
        sections=tuple(sections),
        head=head,
        systems=("free",),
        least_angle=math.radians(5),
        greatest_angle=math.radians(78),
    )


def _inner(
    rng: np.random.Generator, outer: Section, polygon: bool, size: float, play: float
) -> Section:
    """A section that fits into the outer one."""
    z, y = zip(*outer.profile.corners, strict=True)
    height, width = max(y) - min(y), max(z) - min(z)
    thickness = max(outer.profile.thickness) / 1.2 * rng.uniform(0.82, 0.97)
    gap = outer.profile.thickness[0] + thickness + size * rng.uniform(0.01, 0.03)
    profile = _profile(height - 2 * gap, width - 2 * gap, thickness, polygon)
    nose = size * rng.uniform(0.1, 0.4)
    length = outer.length + nose - size * rng.uniform(0.2, 0.6)
    overlap = length * rng.uniform(0.12, 0.3)
    return Section(
        profile=profile,
        material=outer.material,
        length=length,
        mass=_mass(rng, profile, length),
        stroke=length - nose - overlap,
        nose=nose,
        least_overlap=0.95 * overlap,
        clearance=play,
        front_pad=Pad(length=0.25 * size, width=0.3 * width, pressure=30e6),
        rear_pad=Pad(length=0.2 * size, width=0.25 * width, pressure=30e6),
        lock=Lock(strength=3e6 * size**2),
    )


def _profile(height: float, width: float, thickness: float, polygon: bool) -> Profile:
    """A box, or a box with its lower corners cut off and thicker plates below."""
    h, w, t = height / 2, width / 2, thickness
    if not polygon:
        corners = ((-w, -h), (w, -h), (w, h), (-w, h))
        return Profile(corners=corners, thickness=(1.2 * t, t, 1.2 * t, t), kind="box")
    below = ((-w, -h / 2), (-w / 2, -h), (w / 2, -h), (w, -h / 2))
    plates = (1.2 * t, 1.2 * t, 1.2 * t, t, t, t)
    return Profile(corners=(*below, (w, h), (-w, h)), thickness=plates)


def _mass(rng: np.random.Generator, profile: Profile, length: float) -> float:
    """Mass of the plates with some tenth more for pads, collars and pins [kg]."""
    around = zip(profile.corners, profile.corners[1:] + profile.corners[:1], strict=True)
    area = sum(t * math.dist(a, b) for (a, b), t in zip(around, profile.thickness, strict=True))
    return float(7850 * area * length * rng.uniform(1.1, 1.4))


def _cylinder(
    rng: np.random.Generator, size: float, boom: Boom, heel_out: float, heel_up: float
) -> LuffingCylinder:
    """A cylinder that keeps a good lever about the heel pin at every angle."""
    angles = np.linspace(boom.least_angle, boom.greatest_angle, 50)
    while True:
        cylinder = LuffingCylinder(
            base_out=heel_out + size * rng.uniform(1.2, 3.0),
            base_up=heel_up - size * rng.uniform(0.6, 1.5),
            attach_along=boom.sections[0].length * rng.uniform(0.35, 0.6),
            attach_below=size * rng.uniform(0.2, 0.7),
            strength=3e6 * size**2,
            mass=900 * size**2,
        )
        if _lever(cylinder, heel_out, heel_up, angles).min() > 0.8 * size:
            return cylinder


def _lever(cylinder: LuffingCylinder, heel_out: float, heel_up: float, theta: Floats) -> Floats:
    """Distance of the cylinder's line from the heel pin, positive where pushing raises [m]."""
    a, b = cylinder.attach_along, cylinder.attach_below
    x = a * np.cos(theta) + b * np.sin(theta)
    y = a * np.sin(theta) - b * np.cos(theta)
    u, v = cylinder.base_out - heel_out, cylinder.base_up - heel_up
    return np.asarray((u * y - v * x) / np.hypot(x - u, y - v))


def _hoist(rng: np.random.Generator, size: float, heel_out: float, heel_up: float) -> Hoist:
    """A winch behind the heel pin."""
    return Hoist(
        winch_out=heel_out - size * rng.uniform(0.3, 1.5),
        winch_up=heel_up + size * rng.uniform(0.0, 0.6),
        line_pull=90e3 * size,
        sheave_efficiency=float(rng.choice([1.0, 0.98, 0.96])),
        parts=tuple(range(1, int(rng.integers(3, 11)))),
    )


def _outriggers(size: float) -> Support:
    """Four jacks."""
    a, b = 3.8 * size, 3.5 * size
    return Support(
        name="outriggers out",
        kind="outriggers",
        points=((a, b), (a, -b), (-a, -b), (-a, b)),
        stiffness=2e7,
        area=0.25,
    )


def without_stretch(machine: Machine) -> Machine:
    """The same machine of a steel that does not stretch.

    Parameters
    ----------
    machine : Machine

    Returns
    -------
    Machine
    """
    sections = tuple(
        replace(s, material=replace(s.material, axial_modulus=math.inf))
        for s in machine.boom.sections
    )
    return replace(machine, boom=replace(machine.boom, sections=sections))
