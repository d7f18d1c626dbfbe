"""Every limit of a lift and how much of it is used; one is all of it."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine, Pad, Section
from boomsim.mechanics.condense import PER_SECTION, Condensed
from boomsim.mechanics.crushing import crushing_resistance
from boomsim.mechanics.forces import Forces
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.loads import GRAVITY
from boomsim.mechanics.plates import EffectiveSection, effective_section, plate_use
from boomsim.mechanics.profile import Properties, properties
from boomsim.mechanics.stability import Masses, Overturning, backward_share, section_name
from boomsim.mechanics.state import State
from boomsim.mechanics.sway import critical_ratio
from boomsim.rating.rules import Rule, StabilityRule
from boomsim.rating.setup import Setup

STRUCTURAL, STABILITY = "structural", "stability"


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One thing that can give way.

    Attributes
    ----------
    name : str
        Stable key, such as "stress" or "front pad"
    family : str
        "structural" or "stability"
    section : int or None
        The section it belongs to
    words : str
        How it reads in a sentence
    """

    name: str
    family: str
    section: int | None
    words: str

    @property
    def key(self) -> str:
        """Name with the section's number, unique in a machine."""
        return self.name if self.section is None else f"{self.name} {self.section}"


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Strengths:
    """What a machine's parts bear under a rule, one value for each section.

    Attributes
    ----------
    shapes : tuple of Properties
    effective : tuple of EffectiveSection
    stress : ndarray, shape (sections,)
        Yield stress over the rule's factor [Pa]
    front_pad, rear_pad, crushing, crushing_outer, lock : ndarray, shape (sections,)
        Largest forces; infinite for the base section [N]
    """

    shapes: tuple[Properties, ...]
    effective: tuple[EffectiveSection, ...]
    stress: Array
    front_pad: Array
    rear_pad: Array
    crushing: Array
    crushing_outer: Array
    lock: Array


def strengths(machine: Machine, *, rule: Rule) -> Strengths:
    """Work out what each section bears.

    Parameters
    ----------
    machine : Machine
    rule : Rule

    Returns
    -------
    Strengths
    """
    sections, factor = machine.boom.sections, rule.strength.resistance
    shapes = tuple(properties(s.profile) for s in sections)
    none = [np.inf]

    def crushed(section: Section, shape: Properties, pad: Pad | None, side: str) -> float:
        if pad is None:
            return np.inf
        made = crushing_resistance(
            shape,
            side=side,
            bearing=pad.length,
            yield_stress=section.material.yield_stress,
            factor=factor,
            modulus=section.material.modulus,
        )
        return made.resistance

    inner = list(zip(sections[1:], shapes[1:], strict=True))
    return Strengths(
        shapes=shapes,
        effective=tuple(
            effective_section(
                shape, yield_stress=s.material.yield_stress, modulus=s.material.modulus
            )
            for s, shape in zip(sections, shapes, strict=True)
        ),
        stress=np.array([s.material.yield_stress / factor for s in sections]),
        front_pad=np.array(none + [_pad_strength(s.front_pad) for s in sections[1:]]),
        rear_pad=np.array(none + [_pad_strength(s.rear_pad) for s in sections[1:]]),
        crushing=np.array(none + [crushed(s, shape, s.front_pad, "bottom") for s, shape in inner]),
        crushing_outer=np.array(
            none
            + [
                crushed(sections[i - 1], shapes[i - 1], sections[i].rear_pad, "top")
                for i in range(1, len(sections))
            ]
        ),
        lock=np.array(
            none + [s.lock.strength / factor if s.lock else np.inf for s in sections[1:]]
        ),
    )


def _pad_strength(pad: Pad | None) -> float:
    return np.inf if pad is None else 2.0 * pad.length * pad.width * pad.pressure


def limits_of(machine: Machine) -> tuple[Limit, ...]:
    """All limits of a machine, in the order of :func:`uses`.

    Parameters
    ----------
    machine : Machine

    Returns
    -------
    tuple of Limit
    """
    count = len(machine.boom.sections)
    every, moving = range(count), range(1, count)
    found = [
        *(_of_section("stress", i, "yield in") for i in every),
        *(_of_section("plate buckling", i, "plate buckling in") for i in every),
        *(_of_section("front pad", i, "pressure of the front pad on") for i in moving),
        *(_of_section("rear pad", i, "pressure of the rear pad of") for i in moving),
        *(_of_section("web crushing", i, "web crushing at the pads of") for i in moving),
        *(_of_section("lock", i, "the lock of") for i in moving),
    ]
    whole = {
        "boom buckling": "buckling of the whole boom",
        "luffing cylinder": "the luffing cylinder",
        "line pull": "the line pull",
        "slewing ring": "the slewing ring",
    }
    found += [Limit(name=n, family=STRUCTURAL, section=None, words=w) for n, w in whole.items()]
    found.append(Limit(name="tipping", family=STABILITY, section=None, words="tipping over"))
    found.append(
        Limit(name="backward", family=STABILITY, section=None, words="tipping over backwards")
    )
    return tuple(found)


def _of_section(name: str, number: int, words: str) -> Limit:
    return Limit(
        name=name, family=STRUCTURAL, section=number, words=f"{words} {section_name(number)}"
    )


def uses(
    boom: Condensed,
    *,
    setup: Setup,
    bear: Strengths,
    service: State,
    forces: Forces,
    factored: State,
    factored_forces: Forces,
    placed: Masses,
    balance: Overturning,
) -> Array:
    """How much of every limit is used.

    Strength limits that a rule's partial factors belong to take the factored state; permissible
    values of a maker (pads, cylinder, line, ring) take the state without factors.

    Parameters
    ----------
    boom : Condensed
    setup : Setup
    bear : Strengths
    service, factored : State
    forces, factored_forces : Forces
    placed : Masses
    balance : Overturning

    Returns
    -------
    ndarray, shape (limits, configurations, cells)
        In the order of :func:`limits_of`; NaN where there is no equilibrium [1]
    """
    machine = setup.machine
    sections = len(machine.boom.sections)
    of_pads = np.abs(forces.front_pad[:, 1:]), np.abs(forces.rear_pad[:, 1:])
    hard = np.abs(factored_forces.front_pad[:, 1:]), np.abs(factored_forces.rear_pad[:, 1:])
    crushed = np.maximum(hard[0] / bear.crushing[1:, None], hard[1] / bear.crushing_outer[1:, None])
    turning = GRAVITY * (
        np.tensordot(placed.mass[: placed.turning], placed.out, axes=1)
        + service.load * placed.head_out
    )
    critical = critical_ratio(boom, state=factored, forces=factored_forces)
    rows = [
        *_rows(stress_use(factored_forces, bear=bear), sections),
        *_rows(buckling_use(factored_forces, bear=bear), sections),
        *np.moveaxis(of_pads[0] / bear.front_pad[1:, None], 1, 0),
        *np.moveaxis(of_pads[1] / bear.rear_pad[1:, None], 1, 0),
        *np.moveaxis(crushed, 1, 0),
        *np.moveaxis(np.abs(factored_forces.lock[:, 1:]) / bear.lock[1:, None], 1, 0),
        critical * setup.rule.strength.buckling,
        np.abs(forces.cylinder) / machine.cylinder.strength,
        service.line_pull / machine.hoist.line_pull + 0.0 * service.angle,
        np.abs(turning) / machine.ring.moment,
        tipping_use(setup, load=service.load, balance=balance, placed=placed),
        _backward_use(setup, placed=placed, balance=balance),
    ]
    return np.stack(rows)


def _rows(at_stations: Array, sections: int) -> Array:
    configurations, _, cells = at_stations.shape
    by_section = at_stations.reshape(configurations, sections, PER_SECTION, cells)
    return np.moveaxis(by_section.max(axis=2), 1, 0)


def _each(values: list[float] | Array) -> Array:
    """One value for each section, spread over its stations, shape (K, 1)."""
    return np.repeat(np.asarray(values, dtype=float), PER_SECTION)[:, None]


def stress_use(forces: Forces, *, bear: Strengths) -> Array:
    """Largest von Mises stress at the corners of the gross section over the allowed stress.

    Normal stress of axial force and both moments; shear of the webs and of torsion, which is
    nowhere larger than here, is taken at the corner too.

    Parameters
    ----------
    forces : Forces
    bear : Strengths

    Returns
    -------
    ndarray, shape (configurations, K, cells)
        [1]
    """
    shapes = bear.shapes
    axial = forces.axial * _each([1.0 / p.area for p in shapes])
    top = np.abs(axial - forces.moment * _each([1.0 / p.modulus_top for p in shapes]))
    bottom = np.abs(axial + forces.moment * _each([1.0 / p.modulus_bottom for p in shapes]))
    normal = np.maximum(top, bottom)
    shear = np.abs(forces.shear) * _each([1.0 / p.shear_area_y for p in shapes])
    if np.any(forces.moment_side):
        normal = normal + np.abs(forces.moment_side) * _each(
            [1.0 / min(p.modulus_left, p.modulus_right) for p in shapes]
        )
        shear = shear + np.abs(forces.torsion) * _each(
            [1.0 / (2.0 * p.enclosed_area * min(w.thickness for w in p.plates)) for p in shapes]
        )
    return np.sqrt(normal * normal + 3.0 * shear * shear) * _each(1.0 / bear.stress)


def buckling_use(forces: Forces, *, bear: Strengths) -> Array:
    """Use of the effective sections that plate buckling leaves, EN 1993-1-5 eq. (4.15).

    Parameters
    ----------
    forces : Forces
    bear : Strengths

    Returns
    -------
    ndarray, shape (configurations, K, cells)
        [1]
    """
    used = np.empty_like(forces.moment)
    for i, section in enumerate(bear.effective):
        own = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        used[:, own] = plate_use(
            section,
            axial=forces.axial[:, own],
            moment_y=forces.moment[:, own],
            moment_z=forces.moment_side[:, own],
            strength=float(bear.stress[i]),
        ).total
    return used


def tipping_use(setup: Setup, *, load: Array, balance: Overturning, placed: Masses) -> Array:
    """Use of the stability rule in the least favourable direction.

    Parameters
    ----------
    setup : Setup
    load : ndarray
        Gross load [kg]
    balance : Overturning
    placed : Masses

    Returns
    -------
    ndarray, shape (configurations, cells)
        Infinite where the crane tips without a load [1]
    """
    rule, tipping = setup.rule.stability, balance.least
    if rule.kind == "share":
        wanted = load / rule.share(setup.support.kind)
    else:
        wanted = rule.load_factor * load + rule.boom_share * boom_at_head(setup, placed=placed)
    with np.errstate(divide="ignore", invalid="ignore"):
        used = wanted / tipping
    return np.where(tipping <= 0.0, np.inf, used)


def rated_share(
    rule: StabilityRule, *, tipping_load: Array, support_kind: str, at_head: Array
) -> Array:
    """Rated load that a stability rule allows for a tipping load.

    Parameters
    ----------
    rule : StabilityRule
    tipping_load : ndarray
        T [kg]
    support_kind : str
        "outriggers" or "tyres"
    at_head : ndarray
        F, the boom's weight referred to the head [kg]

    Returns
    -------
    ndarray
        P [kg]
    """
    if rule.kind == "share":
        return rule.share(support_kind) * tipping_load
    return (tipping_load - rule.boom_share * at_head) / rule.load_factor


def boom_at_head(setup: Setup, *, placed: Masses) -> Array:
    """F of ISO 4305: the boom's mass that, at the head, has the same moment about the heel pin.

    Parameters
    ----------
    setup : Setup
    placed : Masses

    Returns
    -------
    ndarray, shape (configurations, cells)
        [kg]
    """
    machine = setup.machine
    parts = len(machine.boom.sections) + 1
    arms = placed.out[:parts] - machine.heel_out
    reach = placed.head_out - machine.heel_out
    return np.asarray(np.tensordot(placed.mass[:parts], arms, axes=1) / np.maximum(reach, 0.1))


def _backward_use(setup: Setup, *, placed: Masses, balance: Overturning) -> Array:
    share = backward_share(placed=placed, lines=balance.lines, slew=setup.slew)
    least = setup.rule.stability.backward_share
    with np.errstate(divide="ignore"):
        return np.where(share > 0.0, least / share, np.inf) + 0.0 * placed.head_out
