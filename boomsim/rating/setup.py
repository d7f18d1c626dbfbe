"""How the crane is set up for a question: every choice made, nothing left to guess."""

from dataclasses import dataclass
from difflib import get_close_matches
from typing import Protocol, TypeVar

import numpy as np

from boomsim.machine.model import (
    CALM,
    Disturbances,
    Machine,
    Rigging,
    Support,
    TurningMass,
)
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.limits.limit_kind import Kind
from boomsim.rating.limits.limit_table import KINDS
from boomsim.rating.rules import RULES, Rule
from boomsim.units import is_named

SECTORS = ("around", "rear")
"""All around the crane (the least of all slew angles), and over the rear only."""

ALLOWANCES = ("rule", "none")
"""Strength bears the rule's allowances, or a lift is judged by what is given and nothing else."""

DEFAULT_ALLOWANCES = "rule"


class _Named(Protocol):
    @property
    def name(self) -> str: ...


_N = TypeVar("_N", bound=_Named)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True, repr=False)
class Setup:
    """A machine, rigged.

    Attributes
    ----------
    parts : int
        Most parts of line to reeve; longer booms have those that the rope on the drum reaches for,
        see :func:`boomsim.rating.parts_reeved.reeved` [1]
    slew : ndarray, shape (slews,)
        Slew angles that the rating must hold for; the least favourable counts [rad]
    sector : str
        What `slew` stands for, in words
    kinds : tuple of Kind
        Of limits, all that the lift is judged by
    """

    machine: Machine
    counterweight: TurningMass
    support: Support
    parts: int
    slew: Array
    sector: str
    rule: Rule
    disturbances: Disturbances = CALM
    kinds: tuple[Kind, ...] = KINDS

    def __repr__(self) -> str:
        return (
            f"<boomsim setup: {self.machine.name}, {self.sector}, counterweight "
            f"{self.counterweight.name}, support {self.support.name}, up to {self.parts} parts of "
            f"line, rule {self.rule.name}>"
        )


def set_up(
    machine: Machine,
    *,
    rigging: Rigging | None = None,
    slew: float | str = "around",
    rule: str = "share",
    disturbances: Disturbances = CALM,
    allowances: str = DEFAULT_ALLOWANCES,
) -> Setup:
    """Settle every choice.

    Parameters
    ----------
    rigging : Rigging, optional
        Default: the machine's usual counterweight, supports and parts of line
    slew : float or str
        A slew angle [rad], or a sector: "around" or "rear"
    rule : str
        A name in `boomsim.rating.rules.RULES`
    allowances : str
        "rule": strength bears the rule's allowances; "none": what is given and nothing else

    Raises
    ------
    ValueError
        If a name is not among the machine's choices.
    """
    rigging = rigging or Rigging()
    parts = machine.hoist.parts[-1] if rigging.parts is None else rigging.parts
    if parts not in machine.hoist.parts:
        offered = ", ".join(str(p) for p in machine.hoist.parts)
        raise ValueError(f"{parts} parts of line cannot be reeved here. Choose one of {offered}.")
    support = _choose(machine.supports, rigging.support, "support")
    if rule not in RULES:
        raise ValueError(_unknown("rule", rule, list(RULES)))
    if allowances not in ALLOWANCES:
        raise ValueError(_unknown("choice of allowances", allowances, list(ALLOWANCES)))
    chosen = RULES[rule]
    turned = _pushes_across(disturbances) or support.strength is not None
    angles, words = _slew_angles(support, slew, turned=turned)
    return Setup(
        machine=machine,
        counterweight=_choose(machine.counterweights, rigging.counterweight, "counterweight"),
        support=support,
        parts=parts,
        slew=angles,
        sector=words,
        rule=chosen if allowances == "rule" else chosen.without_allowances(),
        disturbances=disturbances,
    )


def _choose(choices: tuple[_N, ...], name: str | None, what: str) -> _N:
    if name is None:
        return choices[0]
    for choice in choices:
        if is_named(choice.name, name):
            return choice
    raise ValueError(_unknown(what, name, [c.name for c in choices]))


def _unknown(what: str, name: str, known: list[str]) -> str:
    near = get_close_matches(name, known, n=1)
    hint = f" Did you mean {near[0]!r}?" if near else ""
    return f"There is no {what} {name!r}.{hint} Choose one of: {', '.join(map(repr, known))}."


EVERY_WAY = np.radians(np.arange(-180.0, 180.0, 1.0))
"""Slew angles to try where the worst is not square to a tipping line, as with something that pushes
across the boom, or where tyres are judged: those under a corner carry most [rad]."""


def _pushes_across(disturbances: Disturbances) -> bool:
    """Something acts across the boom: a line is then worst off at a slew angle not square to it."""
    wind = disturbances.wind_speed > 0.0 and disturbances.wind_across
    return bool(wind or disturbances.side_pull or disturbances.lean_across)


def _slew_angles(support: Support, slew: float | str, *, turned: bool) -> tuple[Array, str]:
    if not isinstance(slew, str):
        if not np.isfinite(slew):
            raise ValueError(
                f"A slew angle of {slew} is no angle. Give it in degrees, as '90 deg'."
            )
        return np.array([slew]), f"slewed to {np.degrees(slew):.0f}°"
    if slew not in SECTORS:
        raise ValueError(
            f"{_unknown('sector', slew, list(SECTORS))} Or give a slew angle: 0 deg is over the "
            "rear, 90 deg over the right side, -90 deg over the left side, 180 deg over the front."
        )
    square = _square(support)
    if turned:
        square = np.concatenate([square, EVERY_WAY, _over_tyres(support)])
    if slew == "around":
        return square, "all around"
    edge = rear_sector(support)
    inside = square[np.abs(square) < edge]
    return np.concatenate([[-edge, 0.0, edge], inside[inside != 0.0]]), "over the rear"


def _over_tyres(support: Support) -> Array:
    """Slew angles at which the boom points over a tyre that has a permissible load [rad]."""
    x, y = np.array(support.points).T
    return np.arctan2(y, x) if support.strength is not None else np.zeros(0)


def _square(support: Support) -> Array:
    """Slew angles square to every tipping line, outwards, then inwards where that is another one.

    A load tips the crane over a line that the boom points square at; without one it is nearest to
    falling backwards over a line that the boom points square away from.
    """
    normal = tipping_lines(support).normal
    outwards, inwards = (np.arctan2(way[:, 1], way[:, 0]) for way in (normal, -normal))
    apart = np.abs(np.exp(1j * inwards[:, None]) - np.exp(1j * outwards))
    return np.concatenate([outwards, inwards[apart.min(axis=1) > 1e-9]])


def rear_sector(support: Support) -> float:
    """Half the angle between the lines from the axis of rotation through the rear jack centres.

    Returns
    -------
    float
        The over-rear sector is between minus and plus this slew angle [rad]
    """
    points = np.array(support.points)
    rear = points[points[:, 0] > points[:, 0].max() - 1e-6]
    return float(np.min(np.abs(np.arctan2(rear[:, 1], rear[:, 0]))))
