"""What the parts of a machine bear under a rule, worked out once."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np

from boomsim.machine.model import Machine, Pad, Section
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.effective_section import EffectiveSection, effective_section
from boomsim.mechanics.sections.patch_loading import crushing_resistance
from boomsim.mechanics.sections.section_properties import Properties, properties
from boomsim.mechanics.sections.shear_buckling_factor import shear_strengths, utilisation_of_forces
from boomsim.rating.rules import Rule


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Strengths:
    """What a machine's parts bear under a rule, one value for each section.

    Attributes
    ----------
    shapes : tuple of Properties
    effective : tuple of EffectiveSection
    stress : ndarray, shape (sections,)
        Yield stress over the rule's factor [Pa]
    shear : tuple of ndarray, shape (plates that can lead, 3)
        Utilisation of the shear strength by a unit of shear force in the luffing plane, of one
        sideways [1/N] and of torque [1/(N m)]
    front_pad, rear_pad, crushing, crushing_outer, lock : ndarray, shape (sections,)
        Largest forces; infinite for the base section [N]
    """

    shapes: tuple[Properties, ...]
    effective: tuple[EffectiveSection, ...]
    stress: Array
    shear: tuple[Array, ...]
    front_pad: Array
    rear_pad: Array
    crushing: Array
    crushing_outer: Array
    lock: Array


@lru_cache(maxsize=64)
def strengths(machine: Machine, *, rule: Rule) -> Strengths:
    """Work out what each section bears."""
    sections, factor = machine.boom.sections, rule.strength.resistance
    joints = list(pairwise(sections))
    return Strengths(
        shapes=tuple(properties(s.profile) for s in sections),
        effective=tuple(_effective(s) for s in sections),
        stress=np.array([s.material.yield_stress / factor for s in sections]),
        shear=tuple(_shear(s, factor=factor) for s in sections),
        front_pad=_of_joints(_pad_strength(inner.front_pad) for _, inner in joints),
        rear_pad=_of_joints(_pad_strength(inner.rear_pad) for _, inner in joints),
        crushing=_of_joints(
            _crushing(inner, pad=inner.front_pad, side="bottom", factor=factor)
            for _, inner in joints
        ),
        crushing_outer=_of_joints(
            _crushing(outer, pad=inner.rear_pad, side="top", factor=factor)
            for outer, inner in joints
        ),
        lock=_of_joints(
            inner.lock.strength / factor if inner.lock else np.inf for _, inner in joints
        ),
    )


def _of_joints(values: Iterable[float]) -> Array:
    """One value for each section: the base section has no joint that it slides in."""
    return np.array([np.inf, *values])


def _effective(section: Section) -> EffectiveSection:
    steel = section.material
    return effective_section(
        properties(section.profile), yield_stress=steel.yield_stress, modulus=steel.modulus
    )


def _shear(section: Section, *, factor: float) -> Array:
    shape, steel = properties(section.profile), section.material
    return utilisation_of_forces(
        shape,
        strengths=shear_strengths(
            shape, yield_stress=steel.yield_stress, factor=factor, modulus=steel.modulus
        ),
    )


def _pad_strength(pad: Pad | None) -> float:
    """Two pads side by side, each over its whole area."""
    return np.inf if pad is None else 2.0 * pad.length * pad.width * pad.pressure


def _crushing(section: Section, *, pad: Pad | None, side: str, factor: float) -> float:
    if pad is None:
        return np.inf
    return crushing_resistance(
        properties(section.profile),
        side=side,
        bearing=pad.length,
        yield_stress=section.material.yield_stress,
        factor=factor,
        modulus=section.material.modulus,
    ).resistance
