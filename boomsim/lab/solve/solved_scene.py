"""The answer to a scene: one call of the rating's own path, and what the views need from it.

No physics of its own: :func:`boomsim.rating.lift_response.respond` and
:func:`boomsim.rating.capacity.rate` give every number. What is here is only thrift, for a slider
asks twenty times a second: the condensed boom and the capacity curve of a configuration are kept,
and so is what :mod:`boomsim.lab.solve.lifted_ways` finds at a radius.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.lab.solve import nearby_search as near
from boomsim.lab.solve.capacity_curve import condensed, lowest
from boomsim.lab.solve.lifted_ways import Extension, Lifted, beyond_reach, lifted
from boomsim.lab.solve.setup_constants import fixed
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.stability.overturning import Overturning
from boomsim.mechanics.stability.support_reactions import Reactions, support_reactions
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.resultant import resultant, turned
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Standing:
    """How the crane stands at the scene's slew angle.

    Attributes
    ----------
    balance : Overturning
        At this slew angle alone
    weight, x, y : float
        Resultant of crane and load on the ground [N], carrier axes [m]
    reactions : Reactions
        Of the supports, shape (supports, 1)
    """

    balance: Overturning
    weight: float
    x: float
    y: float
    reactions: Reactions


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Answer:
    """What happens in a scene.

    Attributes
    ----------
    at : Response or None
        The lift, in its first cell; without its load where the load finds no equilibrium; None
        where the boom cannot be there even without a load, or the crane would lie on its side
    solved : bool
        False where `at` is not the scene's lift
    trouble : str
        Why there is no such lift; empty if there is
    radius : float
        Loaded radius [m]
    capacity : float
        Rated gross load at this radius; NaN where there is none [kg]
    first : Limit or None
        Limit that sets the rated load at this radius
    empty_hook : EmptyHook
        How far down and out this configuration stands
    lies : bool
        True where the crane would lie on its side with its empty hook: there is no lift
    lift : Lifted or None
        All ways that were asked for, the scene's own first; None where there is no radius to lift
        at
    """

    scene: Scene
    setup: Setup
    boom: Condensed
    at: Response | None
    solved: bool
    trouble: str
    radius: float
    capacity: float
    first: Limit | None
    standing: Standing | None
    empty_hook: EmptyHook
    lies: bool
    lift: Lifted | None

    @property
    def angle(self) -> float:
        """Boom angle that is drawn: as near as it gets where the boom cannot be or stand [rad]."""
        machine = self.setup.machine
        if self.at is not None:
            return float(self.at.state.angle[0, 0])
        if self.lies:
            return min(float(self.empty_hook.angle[0]), machine.boom.greatest_angle)
        reach = machine.heel_out + float(self.boom.layout.boom_length[0])
        far = self.scene.held == "angle" or self.scene.radius > 0.5 * reach
        return machine.boom.least_angle if far else machine.boom.greatest_angle

    @property
    def used(self) -> float:
        """Load on the hook over rated capacity [1]."""
        return self.scene.load / self.capacity if self.capacity > 0.0 else np.nan


@lru_cache(maxsize=96)
def answer(scene: Scene, *, unit: float = 1.0, beside: tuple[Extension, ...] = ()) -> Answer:
    """Answer a scene.

    Parameters
    ----------
    unit : float
        Of the chart's radii [m]
    beside : tuple of Extension
        Other ways to have the boom out, under the same load at the same radius [1]
    """
    setup = setup_of(scene)
    bare = lowest(setup, scene.extension)
    if bare.lies_over(**{scene.held: getattr(scene, scene.held)})[0]:
        return _lying(scene, setup, condensed(setup.machine, scene.extension), bare)
    ways, held = (scene.extension, *beside), None
    radius = scene.radius
    if scene.held == "angle":
        held = _at_angle(setup, scene.extension, scene.angle, scene.load)
        radius = float(held.radius[0, 0])
    found = lifted(setup, ways, unit, radius, scene.load) if radius > 0.0 else None
    at = held if held is not None or found is None else found.at
    return _answered(scene, setup, bare, radius, at, found)


@lru_cache(maxsize=64)
def _at_angle(setup: Setup, extension: Extension, angle: float, load: float) -> Response:
    boom = condensed(setup.machine, extension)
    return respond(setup, boom=boom, load=np.array([[load]]), angle=np.array([[angle]]))


def _answered(
    scene: Scene,
    setup: Setup,
    bare: EmptyHook,
    radius: float,
    at: Response | None,
    found: Lifted | None,
) -> Answer:
    boom = condensed(setup.machine, scene.extension)
    rated = found.rated[0] if found is not None else near.Found(capacity=np.nan, limit=-1)
    solved = at is not None and bool(at.state.converged[0, 0])
    drawn = at if solved else _unloaded(setup, boom, scene)
    return Answer(
        scene=scene,
        setup=setup,
        boom=boom,
        at=drawn,
        solved=solved,
        trouble="" if solved else _trouble(setup, scene),
        radius=radius,
        capacity=rated.capacity,
        first=fixed(setup).limits[rated.limit] if rated.limit >= 0 else None,
        standing=None if drawn is None else standing_of(drawn, slew=scene.slew),
        empty_hook=bare,
        lies=False,
        lift=found,
    )


def _lying(scene: Scene, setup: Setup, boom: Condensed, bare: EmptyHook) -> Answer:
    """Where the crane lies on its side there is no lift to answer with."""
    return Answer(
        scene=scene,
        setup=setup,
        boom=boom,
        at=None,
        solved=False,
        trouble="The crane would lie on its side here with its empty hook.",
        radius=scene.radius if scene.held == "radius" else np.nan,
        capacity=np.nan,
        first=None,
        standing=None,
        empty_hook=bare,
        lies=True,
        lift=None,
    )


def _unloaded(setup: Setup, boom: Condensed, scene: Scene) -> Response | None:
    length, wanted = boom.layout.boom_length, scene.radius
    if scene.held == "radius" and beyond_reach(setup.machine, length=length, radius=wanted)[0]:
        return None
    radius = np.array([[scene.radius]]) if scene.held == "radius" else None
    angle = np.array([[scene.angle]]) if scene.held == "angle" else None
    at = respond(setup, boom=boom, load=np.zeros((1, 1)), radius=radius, angle=angle)
    return at if bool(at.state.converged[0, 0]) else None


def _trouble(setup: Setup, scene: Scene) -> str:
    """Say what :func:`boomsim.rating.lift.lift_study.lift` says of a lift that it refuses."""
    held = {scene.held: getattr(scene, scene.held)}
    try:
        lift(setup, extension=np.array(scene.extension), load=scene.load, **held)
    except ValueError as refusal:
        return str(refusal)
    return "The boom finds no equilibrium here."


@lru_cache(maxsize=4)
def forces_of(at: Response) -> Forces:
    """Forces of a lift as it is given, found once for all views of it."""
    return at.forces


def standing_of(at: Response, *, slew: float) -> Standing:
    """Find how the crane stands with its boom at a slew angle.

    Parameters
    ----------
    at : Response
        Of one cell
    slew : float
        [rad]
    """
    balance = turned(at, slew=np.array([slew]))
    weight, x, y = (values[:, 0, 0] for values in resultant(at, balance=balance))
    return Standing(
        balance=balance,
        weight=float(weight[0]),
        x=float(x[0]),
        y=float(y[0]),
        reactions=support_reactions(at.setup.support, weight=weight, x=x, y=y),
    )
