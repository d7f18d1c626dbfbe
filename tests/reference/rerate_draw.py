"""Cranes, ways to set them up and places on their charts, drawn at random.

A third of the cranes are the built-in ones as they are; the others are altered until any limit may
set a figure: plates thinner, pads, pins, ring, cylinder and winch weaker or stronger, supports and
carrier lopsided, counterweights so heavy that the crane nearly falls over backwards. Some are
masts, whose boom buckles as a whole, and some have thin webs between thick flanges.
"""

from dataclasses import replace

import numpy as np
from making import is_buildable
from random_machines import random_machine
from rerate_cells import RULINGS, Cells

from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import (
    CALM,
    Boom,
    Disturbances,
    Machine,
    Pad,
    Rigging,
    Section,
    Support,
    TelescopeCylinder,
)
from boomsim.mechanics.geometry import layout

BUILT_IN = ("yard60", "truck18", "bench")
PLACES = 10
"""Cells drawn of a crane in one set-up."""

Rng = np.random.Generator


def drawn(seed: int) -> Cells:
    """One crane, set up in one way, and some places on its chart."""
    rng = np.random.default_rng([7, seed])
    name, machine = _crane(rng)
    rigging = Rigging(
        counterweight=str(rng.choice([one.name for one in machine.counterweights])),
        support=str(rng.choice([one.name for one in machine.supports])),
        parts=int(rng.choice(machine.hoist.parts[-4:])),
    )
    moving = len(machine.boom.sections) - 1
    extension = rng.uniform(-0.3, 1.3, (PLACES, moving)).clip(0.0, 1.0).round(3)
    length = layout(machine.boom, extension=extension).boom_length
    angle = rng.uniform(machine.boom.least_angle, machine.boom.greatest_angle, PLACES)
    radius = machine.heel_out + length * np.cos(angle)
    near = 0.1 * length
    sector = ("around", "rear", float(rng.uniform(-np.pi, np.pi)))[int(rng.integers(3))]
    return Cells(
        title=f"{seed}: {name}",
        machine=machine,
        rigging=rigging,
        rule=str(rng.choice(list(RULINGS))),
        allowances=str(rng.choice(["rule", "none"])),
        sector=sector,
        given=_disturbed(rng) if rng.random() < 0.4 else CALM,
        extension=extension,
        radius=np.maximum(radius, near),
    )


def _crane(rng: Rng) -> tuple[str, Machine]:
    if rng.random() < 1 / 3:
        name = str(rng.choice(BUILT_IN))
        return name, load_machine(name)
    if rng.random() < 1 / 3:
        name = str(rng.choice(BUILT_IN))
        return f"{name}, altered", _altered(rng, load_machine(name))
    machine = random_machine(rng, clearance=bool(rng.random() < 0.7))
    while not is_buildable(machine):
        machine = random_machine(rng, clearance=True)
    kind = rng.random()
    if kind < 0.25:
        return "mast", _unlimited(machine, _mast(rng, machine.boom))
    if kind < 0.5:
        return "thin webs", _unlimited(machine, _thin_webbed(rng, machine.boom))
    return "random", _altered(rng, machine)


def _mast(rng: Rng, boom: Boom) -> Boom:
    """Thick plates of a strong and soft steel, that stand steep."""
    sections = []
    for one in boom.sections:
        steel = replace(
            one.material,
            yield_stress=8.0 * one.material.yield_stress,
            modulus=one.material.modulus * float(rng.uniform(0.2, 0.5)),
        )
        strong = _section(one, thin=(1.8, 1.8), pads=(50.0, 50.0), locks=50.0)
        sections.append(replace(strong, material=steel))
    return replace(boom, sections=tuple(sections), least_angle=1.0, greatest_angle=1.45)


def _thin_webbed(rng: Rng, boom: Boom) -> Boom:
    """Thin webs between thick flanges, on short pads that crush them or on long ones."""
    thin, longer = (2.5, float(rng.uniform(0.2, 0.5))), float(rng.choice([0.3, 5.0]))
    return replace(
        boom,
        sections=tuple(
            _section(one, thin=thin, pads=(50.0, 50.0), locks=50.0, longer=longer)
            for one in boom.sections
        ),
    )


def _unlimited(machine: Machine, boom: Boom) -> Machine:
    """A crane of which nothing but the boom gives way."""
    support = machine.supports[0]
    wide = replace(support, points=tuple((3.0 * x, 3.0 * y) for x, y in support.points))
    return replace(
        machine,
        boom=boom,
        ring=replace(machine.ring, moment=50.0 * machine.ring.moment),
        cylinder=replace(machine.cylinder, strength=50.0 * machine.cylinder.strength),
        hoist=replace(machine.hoist, line_pull=50.0 * machine.hoist.line_pull),
        carrier=tuple(replace(one, mass=20.0 * one.mass, x=0.0) for one in machine.carrier),
        supports=(wide,),
    )


def _times(rng: Rng, least: float, most: float) -> float:
    return float(np.exp(rng.uniform(np.log(least), np.log(most))))


def _altered(rng: Rng, machine: Machine) -> Machine:
    ring, cylinder, hoist = machine.ring, machine.cylinder, machine.hoist
    mass = sum(one.mass for one in (*machine.carrier, *machine.superstructure))
    heavier = _times(rng, 0.6, 6.0) if rng.random() < 0.5 else 1.0
    return replace(
        machine,
        boom=_boom(rng, machine.boom),
        ring=replace(ring, moment=ring.moment * _times(rng, 0.4, 3.0)),
        cylinder=replace(cylinder, strength=cylinder.strength * _times(rng, 0.4, 3.0)),
        hoist=replace(hoist, line_pull=hoist.line_pull * _times(rng, 0.5, 3.0)),
        carrier=tuple(
            replace(one, y=one.y + 0.03 * abs(one.x) * rng.normal()) for one in machine.carrier
        ),
        counterweights=tuple(
            replace(one, mass=one.mass * heavier) for one in machine.counterweights
        ),
        supports=tuple(_support(rng, one, mass=mass) for one in machine.supports),
    )


def _support(rng: Rng, support: Support, *, mass: float) -> Support:
    """Supports set unevenly, and now and then tyres, which may bear little and any boom."""
    if support.kind == "tyres" or rng.random() < 0.3:
        bears = mass * 9.81 / len(support.points) * _times(rng, 1.2, 6.0)
        strength = bears if rng.random() < 0.7 else None
        support = replace(support, kind="tyres", strength=strength, longest_boom=None)
    if rng.random() < 0.5:
        return support
    points = tuple((x * rng.uniform(0.75, 1.0), y * rng.uniform(0.75, 1.0))
                   for x, y in support.points)  # fmt: skip
    return replace(support, points=points)


def _boom(rng: Rng, boom: Boom) -> Boom:
    thin = (1.0, 1.0)
    if rng.random() < 0.6:
        thin = (float(rng.uniform(0.35, 1.0)), float(rng.uniform(0.35, 1.0)))
    pads = _times(rng, 0.1, 4.0), _times(rng, 0.1, 4.0)
    locks = _times(rng, 0.3, 4.0)
    cylinder = boom.telescope_cylinder
    if rng.random() < 0.3:
        mass = 0.5 * boom.sections[0].mass
        cylinder = TelescopeCylinder(mass=mass, moving_share=float(rng.uniform(0.2, 0.8)))
    sections = tuple(_section(one, thin=thin, pads=pads, locks=locks) for one in boom.sections)
    return replace(boom, sections=sections, telescope_cylinder=cylinder)


Pair = tuple[float, float]


def _section(
    section: Section, *, thin: Pair, pads: Pair, locks: float, longer: float = 1.0
) -> Section:
    """Thinner plates that lie and that stand, other pads and another lock; the masses stay."""
    corners = np.array(section.profile.corners)
    ways = np.abs(np.roll(corners, -1, axis=0) - corners)
    lies, stands = thin
    shares = np.where(ways[:, 1] > ways[:, 0], stands, lies)
    thickness = tuple(float(t) for t in shares * section.profile.thickness)

    def pad(one: Pad | None, times: float) -> Pad | None:
        if one is None:
            return None
        return replace(one, pressure=one.pressure * times, length=one.length * longer)

    lock = section.lock
    return replace(
        section,
        profile=replace(section.profile, thickness=thickness),
        front_pad=pad(section.front_pad, pads[0]),
        rear_pad=pad(section.rear_pad, pads[1]),
        lock=None if lock is None else replace(lock, strength=lock.strength * locks),
    )


def _disturbed(rng: Rng) -> Disturbances:
    """Some of all that can be given."""

    def sometimes(value: float) -> float:
        return float(value) if rng.random() < 0.5 else 0.0

    return Disturbances(
        wind_speed=sometimes(rng.uniform(2.0, 14.0)),
        wind_across=bool(rng.random() < 0.5),
        load_area=sometimes(rng.uniform(5e-4, 2e-3)),
        side_pull=sometimes(rng.uniform(0.005, 0.04)),
        hoist_speed=sometimes(rng.uniform(0.05, 0.6)),
        hoist_class=int(rng.integers(1, 5)),
        lean=sometimes(rng.uniform(-0.02, 0.02)),
        lean_across=sometimes(rng.uniform(-0.02, 0.02)),
    )
