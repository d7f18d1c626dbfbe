"""The answer to a scene: one call of the rating's own path, and what the views need from it.

No physics of its own: :func:`boomsim.rating.lift_response.respond` and
:func:`boomsim.rating.capacity.rate` give every number. What is here is only thrift, for a slider
asks twenty times a second: the condensed boom and the capacity curve of a configuration are kept,
and loads about the curve's capacity are tried in the same call as the load on the hook.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.lab.solve import nearby_search as near
from boomsim.lab.solve.capacity_curve import Curve, condensed, curve, lowest
from boomsim.lab.solve.setup_constants import fixed
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.stability.overturning import Overturning
from boomsim.mechanics.stability.support_reactions import Reactions, support_reactions
from boomsim.rating.capacity import rate
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


@lru_cache(maxsize=256)
def answer(scene: Scene, *, unit: float = 1.0) -> Answer:
    """Answer a scene.

    Parameters
    ----------
    unit : float
        Of the chart's radii [m]
    """
    setup = setup_of(scene)
    boom = condensed(setup.machine, scene.extension)
    bare = lowest(setup, scene.extension)
    if bare.lies_over(**{scene.held: getattr(scene, scene.held)})[0]:
        return _lying(scene, setup, boom, bare)
    known = curve(setup, scene.extension, unit)
    if scene.held == "radius":
        radius = scene.radius
        at, tried = _together(setup, boom, scene, known)
    else:
        at = respond(
            setup, boom=boom, load=np.array([[scene.load]]), angle=np.array([[scene.angle]])
        )
        radius = float(at.radius[0, 0])
        tried = _about(setup, boom, radius, known)
    capacity, first = _capacity(setup, scene, radius, tried)
    solved = bool(at.state.converged[0, 0])
    drawn = at if solved else _unloaded(setup, boom, scene)
    return Answer(
        scene=scene,
        setup=setup,
        boom=boom,
        at=drawn,
        solved=solved,
        trouble="" if solved else _trouble(setup, scene),
        radius=radius,
        capacity=capacity,
        first=first,
        standing=None if drawn is None else standing_of(drawn, slew=scene.slew),
        empty_hook=bare,
        lies=False,
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
    )


def _together(
    setup: Setup, boom: Condensed, scene: Scene, known: Curve
) -> tuple[Response, near.Found | None]:
    """Try the load on the hook and loads about the capacity, at one held radius."""
    guess = _guess(setup, known, scene.radius)
    loads = np.append(scene.load, near.TRIALS * guess if guess > 0.0 else [])
    at = respond(setup, boom=boom, load=loads[None], radius=np.array([[scene.radius]]))
    return at, near.crossings(at, first=1)[0] if guess > 0.0 else None


def _about(setup: Setup, boom: Condensed, radius: float, known: Curve) -> near.Found | None:
    """Try loads about the capacity alone, at the radius that a held angle has led to."""
    guess = _guess(setup, known, radius)
    if not guess > 0.0:
        return None
    loads = near.TRIALS[None] * guess
    return near.crossings(
        respond(setup, boom=boom, load=loads, radius=np.array([[radius]])), first=0
    )[0]


def _guess(setup: Setup, known: Curve, radius: float) -> float:
    if not near.goes(setup):
        return np.nan
    return float(near.guesses(known.radius, known.capacity, np.array([radius]))[0])


def _capacity(
    setup: Setup, scene: Scene, radius: float, found: near.Found | None
) -> tuple[float, Limit | None]:
    if not np.isfinite(radius) or not radius > 0.0:
        return np.nan, None
    if found is not None:
        limits = fixed(setup).limits
        return found.capacity, limits[found.limit] if found.limit >= 0 else None
    rated = rate(setup, extension=np.array(scene.extension), radius=np.array([radius]))
    governing = int(rated.governing[0, 0])
    return float(rated.capacity[0, 0]), rated.limits[governing] if governing >= 0 else None


def _unloaded(setup: Setup, boom: Condensed, scene: Scene) -> Response | None:
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
