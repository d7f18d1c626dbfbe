"""The one call path: a rigged machine and its cells in, every number of the lifts out."""

from collections.abc import Hashable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.boom.boom_state import SERVICE, Factors, State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import Forces, section_forces
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.masses import Masses, masses
from boomsim.mechanics.stability.overturning import Overturning, overturning
from boomsim.rating.limits.limit_kind import Case, Limit
from boomsim.rating.limits.limit_table import limits_of, utilisations
from boomsim.rating.limits.strengths import Strengths, strengths
from boomsim.rating.parts_reeved import reeved
from boomsim.rating.setup import Setup

VALID_DEFLECTION = 0.05
"""Largest tip deflection over boom length for which the model is meant [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Start:
    """Rotations to start from, shape (configurations, K, cells); None where nothing is known.

    Attributes
    ----------
    rotation : ndarray or None
        Of the lift in still air [rad]
    further, aside : ndarray or None
        What disturbances or allowances turn the boom by besides: much the same at other loads, in
        the luffing plane and sideways [rad]
    """

    rotation: Array | None = None
    further: Array | None = None
    aside: Array | None = None


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Response:
    """What a boom under load does; NaN where it finds no equilibrium.

    Shapes (configurations, cells) unless given.

    Attributes
    ----------
    state : State
        Of the lift as it is given
    strained_forces : Forces
        With the allowances of the rule, without partial factors
    factored_forces : Forces
        With the allowances and the partial factors of the rule
    utilisation : ndarray, shape (limits, configurations, cells)
        How much of each limit is used [1]
    """

    setup: Setup
    boom: Condensed
    state: State
    strained: State
    strained_forces: Forces
    factored: State
    factored_forces: Forces
    placed: Masses
    balance: Overturning
    limits: tuple[Limit, ...]
    utilisation: Array

    @property
    def forces(self) -> Forces:
        """Forces of the lift as it is given, without allowances or factors."""
        if self.strained is self.state:
            return self.strained_forces
        return section_forces(self.boom, state=self.state)

    @property
    def radius(self) -> Array:
        """Loaded radius [m]."""
        return self.placed.head_out

    @property
    def tip_deflection(self) -> Array:
        """Head sheave centre below its place on the unbent boom, across the base section [m]."""
        return -self.boom.machine.boom.head.below - self.state.head_above

    @property
    def in_range(self) -> NDArray[np.bool_]:
        """True where the boom angle is allowed."""
        boom = self.setup.machine.boom
        with np.errstate(invalid="ignore"):
            return (self.state.angle >= boom.least_angle - 1e-9) & (
                self.state.angle <= boom.greatest_angle + 1e-9
            )

    @property
    def is_valid(self) -> NDArray[np.bool_]:
        """True where the tip deflection is inside the range of the model."""
        with np.errstate(invalid="ignore"):
            reach = VALID_DEFLECTION * self.boom.layout.boom_length[:, None]
            return np.abs(self.tip_deflection) <= reach


def bear(setup: Setup) -> Strengths:
    """Strengths of the machine under the rule; worked out once."""
    return strengths(setup.machine, rule=setup.rule)


def respond(
    setup: Setup,
    *,
    boom: Condensed,
    load: Array,
    radius: Array | None = None,
    angle: Array | None = None,
    start: Start | None = None,
) -> Response:
    """Solve and judge every cell.

    With a radius, the boom angle is the one at which the load hangs at that radius on level ground
    in still air; disturbances, allowances and partial factors then act at that angle.

    Parameters
    ----------
    boom : Condensed
        Configurations of the same machine
    load : ndarray, shape (configurations, cells) or broadcastable
        Gross load [kg]
    radius, angle : ndarray
        One of them, shape (configurations, cells) or broadcastable [m] or [rad]
    start : Start, optional
        Where to start from
    """
    given, strength = setup.disturbances, setup.rule.strength
    strains, factors = setup.rule.strains(given), Factors(dead=strength.dead, live=strength.live)
    begin = start or Start()
    parts = reeved(setup, length=boom.layout.boom_length)
    at_ease = solve_state(
        boom, load=load, parts=parts, radius=radius, angle=angle, start=begin.rotation
    )

    further = at_ease.rotation if begin.further is None else at_ease.rotation + begin.further

    def at_the_angle(disturbances: Disturbances, factors: Factors = SERVICE) -> State:
        return solve_state(
            boom,
            load=load,
            parts=parts,
            angle=at_ease.angle,
            disturbances=disturbances,
            factors=factors,
            start=further,
            start_side=begin.aside,
        )

    state = at_ease if given == CALM else at_the_angle(given)
    strained = state if strains == given else at_the_angle(strains)
    factored = strained if factors == SERVICE else at_the_angle(strains, factors)
    forces = section_forces(boom, state=strained)
    factored_forces = forces if factors == SERVICE else section_forces(boom, state=factored)
    case = _case(
        setup,
        boom=boom,
        states=(state, strained, factored),
        forces=(forces, factored_forces),
    )
    return _judged(setup, case=case, utilisation=utilisations(case, kinds=setup.kinds))


def judge_again(response: Response, *, setup: Setup) -> Response:
    """Judge the same bent booms under another counterweight, support, slew or stability rule.

    The boom feels none of them, so that it is not solved again.

    Parameters
    ----------
    setup : Setup
        Bends the boom as the response's own does, see :func:`bends_alike`

    Raises
    ------
    ValueError
        If the boom would bend in another way.
    """
    own = response.setup
    if bends_alike(own) != bends_alike(setup):
        raise ValueError(
            f"{setup!r} puts other loads on the boom than {own!r}: call respond for it instead."
        )
    case = _case(
        setup,
        boom=response.boom,
        states=(response.state, response.strained, response.factored),
        forces=(response.strained_forces, response.factored_forces),
    )
    known = dict(zip(response.limits, response.utilisation, strict=True))
    anew = tuple(kind for kind in setup.kinds if not kind.boom_alone)
    limits = limits_of(setup.machine, kinds=anew)
    known |= dict(zip(limits, utilisations(case, kinds=anew), strict=True))
    order = limits_of(setup.machine, kinds=setup.kinds)
    return _judged(setup, case=case, utilisation=np.stack([known[limit] for limit in order]))


def bends_alike(setup: Setup) -> tuple[Hashable, ...]:
    """What decides how the boom bends and what it bears: equal for set-ups that share states."""
    rule = setup.rule
    return (
        setup.machine,
        setup.parts,
        setup.disturbances,
        rule.strength,
        rule.allowances,
        tuple(kind for kind in setup.kinds if kind.boom_alone),
    )


def _case(
    setup: Setup,
    *,
    boom: Condensed,
    states: tuple[State, State, State],
    forces: tuple[Forces, Forces],
) -> Case:
    """Place every mass and weigh the crane, with the boom bent as in states."""
    state, strained, factored = states
    placed = masses(boom, state=state, counterweight=setup.counterweight)
    return Case(
        boom=boom,
        rule=setup.rule,
        support=setup.support,
        slew=setup.slew,
        bear=bear(setup),
        strains=setup.rule.strains(setup.disturbances),
        service=state,
        strained=strained,
        forces=forces[0],
        factored=factored,
        factored_forces=forces[1],
        placed=placed,
        strained_placed=placed
        if strained is state
        else masses(boom, state=strained, counterweight=setup.counterweight),
        balance=overturning(
            boom,
            placed=placed,
            state=state,
            support=setup.support,
            slew=setup.slew,
            disturbances=setup.disturbances,
        ),
    )


def _judged(setup: Setup, *, case: Case, utilisation: Array) -> Response:
    return Response(
        setup=setup,
        boom=case.boom,
        state=case.service,
        strained=case.strained,
        strained_forces=case.forces,
        factored=case.factored,
        factored_forces=case.factored_forces,
        placed=case.placed,
        balance=case.balance,
        limits=limits_of(setup.machine, kinds=setup.kinds),
        utilisation=utilisation,
    )


__all__ = ["Response", "Start", "bear", "condense", "respond"]
