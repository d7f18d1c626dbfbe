"""What a limit is, and what it is judged from."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from boomsim.machine.model import Disturbances, Machine, Support
from boomsim.machine.part_names import section_name
from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.masses import Masses
from boomsim.mechanics.stability.overturning import Overturning
from boomsim.rating.limits.strengths import Strengths
from boomsim.rating.rules import Rule

STABILITY, STRENGTH, PERMISSIBLE_VALUE = "stability", "strength", "permissible value"
"""What can set a figure: the crane would turn over, a part give way, a maker's value be reached."""

EVERY_SECTION, MOVING_SECTIONS, WHOLE = "every section", "moving sections", "whole"
"""Of what a kind of limit is: one for each section, one for each that moves, or one in all."""

GIVES_WAY, PERMISSIBLE, TIPS = "gives way", "permissible", "tips"
"""Consequence of exceeding a limit without margin: something fails, a maker's value is
passed, the crane turns over."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Case:
    """What limits are judged from: every cell as it is given, with allowances, and with factors.

    Strength limits that a rule's partial factors belong to take the factored state, which bears the
    rule's allowances too; permissible values of a maker (pads, cylinder, ring) take the state with
    allowances and without factors. Stability, the static line pull and the tyres take the lift as
    given.

    Attributes
    ----------
    slew : ndarray, shape (slews,)
        [rad]
    strains : Disturbances
        What acts in the states `strained` and `factored`
    forces, factored_forces : Forces
        Of `strained` and `factored`
    placed, strained_placed : Masses
        Of `service` and `strained`
    """

    boom: Condensed
    rule: Rule
    support: Support
    slew: Array
    bear: Strengths
    strains: Disturbances
    service: State
    strained: State
    forces: Forces
    factored: State
    factored_forces: Forces
    placed: Masses
    strained_placed: Masses
    balance: Overturning

    @property
    def machine(self) -> Machine:
        """The machine whose boom it is."""
        return self.boom.machine


class Components(Protocol):
    """Shares of a utilisation at one station by stress component, in the sum of the limit [1]."""

    def __call__(
        self, forces: Forces, *, station: int, section: int, bear: Strengths
    ) -> dict[str, float]:
        """Take them apart."""
        ...


class Along(Protocol):
    """Utilisation of a limit at every station, shape (configurations, K, cells) [1]."""

    def __call__(self, forces: Forces, *, bear: Strengths, boom: Condensed) -> Array:
        """Judge it."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Ultimate:
    """Where a part with a permissible value really gives way.

    Attributes
    ----------
    times : float
        Of the permissible value [1]
    words : str
        What happens then, such as "the hoist rope parts"
    """

    times: float
    words: str
    source: str = "assumed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """One way to fail.

    Attributes
    ----------
    name : str
        Stable key, such as "stress" or "front pad"
    words : str
        How it reads in a sentence; a section's name follows
    happens : str
        What happens past it, as a clause, where it is not the words that say so
    short : str
        How it reads beside a bar, two words for a limit of sections
    code : str
        How it reads beside a figure on a chart; the section's number follows
    utilisation : callable
        From a :class:`Case` to how much of it is used, shape (configurations, cells), or (sections
        that have it, configurations, cells); one is all of it, NaN is no equilibrium [1]
    of : str
        `EVERY_SECTION`, `MOVING_SECTIONS` or `WHOLE`
    set_by : str
        `STABILITY`, `STRENGTH` or `PERMISSIBLE_VALUE`
    passed : str or None
        `GIVES_WAY`, `PERMISSIBLE` or `TIPS`; None where it is no matter of the load
    along, components : callable or None
        Where along a section it is used, and by what: for limits that have a place
    ultimate : Ultimate or None
        Where what has a permissible value gives way; None where that is not known
    on : str or None
        Kind of support that it is about, such as "tyres"; None for any
    boom_alone : bool
        False where counterweight, support, slew angle or stability rule have a part in it
    """

    name: str
    words: str
    short: str
    code: str
    utilisation: Callable[[Case], Array]
    of: str = WHOLE
    set_by: str = STRENGTH
    happens: str = ""
    passed: str | None = GIVES_WAY
    along: Along | None = None
    components: Components | None = None
    ultimate: Ultimate | None = None
    on: str | None = None
    boom_alone: bool = True

    def is_about(self, support: Support) -> bool:
        """Whether it can be used at all on a support: none is told where it cannot."""
        return self.on in (None, support.kind)


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One thing that can give way: a kind, and the section it belongs to."""

    kind: Kind
    section: int | None

    @property
    def name(self) -> str:
        """Stable key of its kind."""
        return self.kind.name

    @property
    def set_by(self) -> str:
        """What sets a figure that this limit governs."""
        return self.kind.set_by

    @property
    def key(self) -> str:
        """Name with the section's number, unique in a machine."""
        return self.name if self.section is None else f"{self.name} {self.section}"

    @property
    def words(self) -> str:
        """How it reads in a sentence."""
        words = self.kind.words
        return words if self.section is None else f"{words} {section_name(self.section)}"

    def as_data(self) -> dict[str, str | int | None]:
        """What an answer for other programs says of it."""
        return {
            "name": self.name,
            "set_by": self.set_by,
            "section": self.section,
            "words": self.words,
        }


def largest_of_sections(at_stations: Array) -> Array:
    """Largest utilisation in each section.

    Parameters
    ----------
    at_stations : ndarray, shape (configurations, K, cells)
        [1]

    Returns
    -------
    ndarray, shape (sections, configurations, cells)
        [1]
    """
    configurations, stations, cells = at_stations.shape
    sections = stations // PER_SECTION
    by_section = at_stations.reshape(configurations, sections, PER_SECTION, cells)
    return np.moveaxis(by_section.max(axis=2), 1, 0)


def utilisation_of_joints(force: Array, *, strength: Array) -> Array:
    """Utilisation of what each moving section bears at its joint with the outer one.

    Parameters
    ----------
    force : ndarray, shape (configurations, sections, cells)
        [N]
    strength : ndarray, shape (sections,)
        [N]

    Returns
    -------
    ndarray, shape (moving sections, configurations, cells)
        [1]
    """
    return np.moveaxis(np.abs(force[:, 1:]) / strength[1:, None], 1, 0)
