"""Loads that move, each as a load that hangs still and uses the crane as much.

What pulls down only (lifting off, stopping, falling) is the load times a factor. What pulls to the
side or outwards (slewing) is worked out by the one call path with that pull on the boom head; the
equivalent load is the one that, hanging still, uses stability, or strength, as much.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics import moving_loads
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.external_loads import wind_pressure
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.capacity import rate
from boomsim.rating.dynamics.load_sag import Sag, sag_of
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.limit_kind import GIVES_WAY, STABILITY, STRENGTH, TIPS, Limit
from boomsim.rating.load_search import largest_load, load_at_one, most_used, no_margin, rows_of
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.path.lowering_study import refuse_load
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import same_sector

BREATH = 0.1
"""A wind so faint that it does nothing to a boom; it carries the outward pull on the load, as a
wind area of the load that is as large as that takes [m/s]."""

USUAL_SHARE = 0.75
"""Of the rated load, what hangs where no load is given [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Motion:
    """How the load is moved.

    Attributes
    ----------
    speed : float
        Of hoisting and lowering [m/s]
    stop : float
        In which lowering is stopped evenly [s]
    drop : float
        That slack slings let the load fall [m]
    swing, swing_stop : float
        Speed of the boom head while slewing [m/s], and the time in which it is reached or lost [s]
    hoist_class : int
        1 soft to 4 stiff
    hook : float
        Height of the hook above the ground [m]
    """

    speed: float = 0.5
    stop: float = 1.0
    drop: float = 0.05
    swing: float = 1.5
    swing_stop: float = 3.0
    hoist_class: int = 2
    hook: float = 2.0


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Effect:
    """One way to move a load.

    Attributes
    ----------
    key : str
        Stable name, such as "stopped at once"
    factor : float
        On what hangs, straight down [1]
    outwards, sideways : float
        Horizontal pulls at the boom head, over the load's weight [1]
    source : str
        Of the formula, with its status
    equivalent : float
        Load that, hanging still, uses the crane as much [kg]
    by : str or None
        Whose utilisation that is, the one that makes it larger: `STABILITY` or `STRENGTH`; None
        for what pulls straight down, and is the same for both
    share : float
        Equivalent load over the rated one [1]
    tips, breaks : float
        Utilisation without any margin: of what tips the crane, of what gives way first [1]
    part : Limit
        That would give way
    """

    key: str
    factor: float
    outwards: float
    sideways: float
    source: str
    equivalent: float
    by: str | None
    share: float
    tips: float
    breaks: float
    part: Limit


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Dynamics:
    """A load moved in several ways.

    Attributes
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    length, radius, angle : float
        Boom length [m], radius [m] and boom angle [rad] with the still load on
    load, rated : float
        Gross, and what is rated there [kg]
    sag : Sag
        What gives under the still load
    swing_angle, swing_radius : float
        Of the rope while slewing [rad], and how much farther out the load hangs then [m]
    tipping, breaking : float
        Loads that, hanging still, would tip the crane or make something give way, without any
        margin; infinite where none does [kg]
    """

    setup: Setup
    extension: Array
    length: float
    radius: float
    angle: float
    load: float
    rated: float
    motion: Motion
    sag: Sag
    swing_angle: float
    swing_radius: float
    tipping: float
    breaking: float
    effects: tuple[Effect, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    key: str
    factor: float = 1.0
    outwards: float = 0.0
    sideways: float = 0.0
    source: str = ""


def dynamics(
    setup: Setup,
    *,
    extension: Array,
    radius: float,
    load: float | None = None,
    motion: Motion | None = None,
) -> Dynamics:
    """Move a load in several ways.

    Parameters
    ----------
    setup : Setup
        Calm
    extension : ndarray, shape (moving sections,)
        [1]
    radius : float
        With the still load on [m]
    load : float, optional
        Gross; default: three quarters of the rated one [kg]

    Raises
    ------
    ValueError
        If nothing is rated there, or a figure is none.
    """
    moved = motion or Motion()
    _refuse(moved)
    boom = condense(setup.machine, extension=np.atleast_2d(extension))
    refuse_too_long(setup, length=boom.layout.boom_length)
    rated = float(rate(setup, extension=extension, radius=np.array([radius])).capacity[0, 0])
    if not rated > 0.0:
        raise ValueError(
            f"Nothing is rated at a radius of {radius:.2f} m with this boom, so that there is no "
            "load to move. Choose another radius."
        )
    hung = USUAL_SHARE * rated if load is None else load
    refuse_load(setup, hung, length=float(boom.layout.boom_length[0]))
    still = respond(setup, boom=boom, load=np.array([[hung]]), radius=np.array([[radius]]))
    if not still.state.converged[0, 0]:
        raise ValueError(
            f"Under {hung:.0f} kg the boom finds no equilibrium at {radius:.2f} m. Take less load."
        )
    angle = float(still.state.angle[0, 0])
    sag = sag_of(setup, boom=boom, load=hung, angle=angle, hook=moved.hook)
    swung = moving_loads.swung_out(moved.swing, radius=radius, rope=sag.rope_length)
    judge = _Judge(setup, boom, angle, hung, rated)
    return Dynamics(
        setup=setup,
        extension=boom.layout.extension[0],
        length=float(boom.layout.boom_length[0]),
        radius=radius,
        angle=angle,
        load=hung,
        rated=rated,
        motion=moved,
        sag=sag,
        swing_angle=swung,
        swing_radius=sag.rope_length * float(np.sin(swung)),
        tipping=judge.still(TIPS, 1.0),
        breaking=judge.still(GIVES_WAY, 1.0),
        effects=tuple(judge.effect(way) for way in _ways(moved, sag, swung)),
    )


def _refuse(motion: Motion) -> None:
    bounds = (
        ("--speed", motion.speed, 0.0, 5.0, "m/s"),
        ("--stop", motion.stop, 0.05, 60.0, "s"),
        ("--drop", motion.drop, 0.0, 2.0, "m"),
        ("--swing", motion.swing, 0.0, 5.0, "m/s"),
        ("--swing-stop", motion.swing_stop, 0.1, 120.0, "s"),
        ("--hook", motion.hook, 0.0, 500.0, "m"),
    )
    for name, value, least, most, unit in bounds:
        if not least <= value <= most:
            raise ValueError(
                f"{name}: {value:g} is outside {least:g} to {most:g} {unit}. Give a value inside."
            )
    if motion.hoist_class not in (1, 2, 3, 4):
        raise ValueError(
            f"--hoist-class {motion.hoist_class} is not a class. Give 1 for a soft hoist to 4 for "
            "a stiff one."
        )


def _ways(motion: Motion, sag: Sag, swung: float) -> tuple[_Way, ...]:
    speed, give = motion.speed, sag.whole
    return (
        _Way(
            key="lifted off",
            factor=hoisting_factor(speed, hoist_class=motion.hoist_class),
            source="phi2 = phi2min + beta2 v: EN 13001-2 (second-hand)",
        ),
        _Way(
            key="stopped evenly",
            factor=moving_loads.stopped_in(speed, time=motion.stop),
            source="1 + v/(g t): Newton's second law (worked)",
        ),
        _Way(
            key="stopped at once",
            factor=moving_loads.stopped_at_once(speed, sag=give),
            source="1 + v/sqrt(g s), s the sag: strength-of-materials textbooks (from memory)",
        ),
        _Way(
            key="dropped",
            factor=moving_loads.dropped(motion.drop, sag=give),
            source="1 + sqrt(1 + 2 h/s), s the sag: strength-of-materials textbooks (from memory)",
        ),
        _Way(
            key="swung out",
            outwards=moving_loads.outwards(swung),
            source="tan a = w2 (R + L sin a)/g: conical pendulum (worked)",
        ),
        _Way(
            key="slewing stopped",
            sideways=moving_loads.swung_back(motion.swing, time=motion.swing_stop),
            source="2 v/(g t) of the load: pendulum, small angles (worked)",
        ),
    )


def as_disturbances(outwards: float, sideways: float) -> Disturbances:
    """Horizontal pulls of a load on the boom head, as disturbances that make the same.

    Parameters
    ----------
    outwards, sideways : float
        Over the load's weight [1]
    """
    if not outwards:
        return Disturbances(side_pull=sideways)
    area = outwards * GRAVITY / wind_pressure(BREATH)
    return Disturbances(side_pull=sideways, wind_speed=BREATH, load_area=area)


class _Judge:
    """One boom at one angle, without any margin: what loads and pulls use of it."""

    def __init__(
        self, setup: Setup, boom: Condensed, angle: float, load: float, rated: float
    ) -> None:
        self.setup, self.boom, self.load, self.rated = no_margin(setup), boom, load, rated
        self.angle = np.array([[angle]])

    def effect(self, way: _Way) -> Effect:
        pulls = as_disturbances(way.outwards, way.sideways)
        at = self._hung(np.array([[way.factor * self.load]]), pulls)
        tips, breaks = (self._utilisation(at, kind) for kind in (TIPS, GIVES_WAY))
        own = way.factor * self.load
        if pulls == CALM:
            loads = {STABILITY: own, STRENGTH: own}
        else:
            loads = {STABILITY: self.still(TIPS, tips), STRENGTH: self.still(GIVES_WAY, breaks)}
        # The load hangs in any case, however little a pull uses.
        loads = {key: max(value, own) for key, value in loads.items()}
        worse = STABILITY if loads[STABILITY] >= loads[STRENGTH] else STRENGTH
        return Effect(
            key=way.key,
            factor=way.factor,
            outwards=way.outwards,
            sideways=way.sideways,
            source=way.source,
            equivalent=loads[worse],
            by=None if pulls == CALM else worse,
            share=loads[worse] / self.rated,
            tips=tips,
            breaks=breaks,
            part=self._part(at),
        )

    def still(self, kind: str, utilisation: float) -> float:
        """Load that, hanging still, uses limits of a kind so much; infinite where none does."""
        if not utilisation > 0.0:
            return 0.0
        if not np.isfinite(utilisation):
            return float("inf")

        def utilisation_of(load: Array) -> Array:
            at = self._hung(load, CALM)
            return np.asarray(at.utilisation[rows_of(at.limits, kind)] / utilisation)

        first = np.array([[self.load]])
        found = load_at_one(
            utilisation_of,
            low=np.zeros((1, 1)),
            high=np.full((1, 1), largest_load(self.setup)),
            first=first,
            collapse=kind == GIVES_WAY,
        )
        return float(found[0, 0])

    def _hung(self, load: Array, pulls: Disturbances) -> Response:
        setup = same_sector(replace(self.setup, disturbances=pulls))
        return respond(setup, boom=self.boom, load=load, angle=self.angle)

    def _utilisation(self, at: Response, kind: str) -> float:
        utilisation = at.utilisation[rows_of(at.limits, kind)]
        return float(np.where(np.isnan(utilisation), np.inf, utilisation).max())

    def _part(self, at: Response) -> Limit:
        rows = rows_of(at.limits, GIVES_WAY)
        return at.limits[int(most_used(at.utilisation, limits=at.limits, rows=rows)[0, 0])]
