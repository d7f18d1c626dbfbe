"""Past the rated load: what happens, in which order, and what an operator could feel of it.

The boom is set so that the *rated* load hangs at the wanted radius. Then the load is raised from
zero, and nobody luffs while it fails: the radius grows with the deflection, and as the boom sinks
on its luffing cylinder's oil. (Or the radius is kept, for comparison with a chart.) Loads of later
events are those of a crane that has come through the earlier ones: the model stays elastic, it does
not break.

Derived in docs/theory.md, section 10.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.around.float_loads import float_loads, slews_of
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.lift_response import Response
from boomsim.rating.limits.limit_kind import GIVES_WAY, TIPS, Limit
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.overload.failure_loads import ends_of
from boomsim.rating.overload.float_lightening import Lightening, lightenings
from boomsim.rating.overload.overload_events import Event, Raised
from boomsim.rating.overload.tip_over import Fall, fall
from boomsim.rating.setup import Setup
from boomsim.rating.sinking_on_oil import Trapped

HOLDS = ("angle", "radius")
"""What is kept while the load grows."""

GRID = 129
"""Loads at which curves are drawn and events are looked for."""

FELT = 41
"""Loads at which it is told what an operator could feel."""

BEYOND = 1.15
"""How far past the later of failure and tipping the load is raised [1]."""

FARTHEST = 3.0
"""Curves end at this many times the load that ends it, however far off the other is [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Feel:
    """What an operator could feel in the direction in which the crane would tip, until it ends.

    Shapes (loads,).

    Attributes
    ----------
    slew : float
        [rad]
    load : ndarray
        From nothing to the earlier of failure and tipping [kg]
    lightest : ndarray
        Reaction of the lightest float [N]
    lean : ndarray
        Of the carrier from the sinking of its floats, towards the boom, from where it stood without
        a load [rad]
    radius : ndarray
        [m]
    droop : ndarray
        How far the head has come down since the hook was empty [m]
    by_oil : float
        How much of the radius's growth is the oil of the luffing cylinder that gives way [m]
    carried : ndarray
        How much farther out the lean would carry the head if the boom leant with the carrier; not
        in `radius`, for the boom's angle to the horizontal is held [m]
    """

    slew: float
    load: Array
    lightest: Array
    lean: Array
    radius: Array
    droop: Array
    by_oil: float
    carried: Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Overload:
    """One lift taken past its rated load.

    Attributes
    ----------
    setup : Setup
        As it was rated
    boom : Condensed
    extension : ndarray, shape (moving sections,)
    radius : float
        Where the rated load hangs [m]
    hold : str
        "angle" or "radius"
    rated : float
        [kg]
    governing : Limit
        Of the rated load
    angle : float
        Boom angle at the rated load [rad]
    events : tuple of Event
        In the order of their loads
    failure, tipping : Event or None
        First that gives way, and the crane tipping; None where no load does it
    load : ndarray, shape (loads,)
        For curves [kg]
    limits : tuple of Limit
    utilisation : ndarray, shape (limits, loads)
        Without any margin [1]
    lightens : tuple of Lightening
        In which directions a float goes light before it ends, and in which none does
    feel : Feel
    fall : Fall or None
        None where no load tips the crane
    is_valid : bool
        False where the boom bends beyond the range of the model before the first of the two
    """

    setup: Setup
    boom: Condensed
    extension: Array
    radius: float
    hold: str
    rated: float
    governing: Limit
    angle: float
    events: tuple[Event, ...]
    failure: Event | None
    tipping: Event | None
    load: Array
    limits: tuple[Limit, ...]
    utilisation: Array
    lightens: tuple[Lightening, ...]
    feel: Feel
    fall: Fall | None
    is_valid: bool

    @property
    def ratio(self) -> float:
        """Load of the first failure over the tipping load; infinite where nothing breaks [1]."""
        if self.failure is None:
            return float("inf")
        return self.failure.load / self.tipping.load if self.tipping else 0.0

    @property
    def warns(self) -> bool:
        """True where the crane tips before anything breaks."""
        return self.ratio > 1.0

    @property
    def first(self) -> Event | None:
        """What ends it: the earlier of failure and tipping."""
        return self.tipping if self.warns else self.failure

    def angle_under(self, event: Event) -> float:
        """Boom angle under the load of an event, sunk on the cylinder's oil [rad]."""
        held, load = np.array([[self.angle]]), np.array([[event.load]])
        oil = Trapped(self.setup, boom=self.boom, load=np.array([[self.rated]]), angle=held)
        return float(oil.under(load)[0, 0])


def overload(setup: Setup, *, extension: Array, radius: float, hold: str = "angle") -> Overload:
    """Raise the load from zero past the rated one until the crane has broken and has tipped.

    Parameters
    ----------
    setup : Setup
    extension : ndarray, shape (moving sections,)
        [1]
    radius : float
        With the rated load on [m]
    hold : str
        Keep the boom "angle" (default) or the loaded "radius"

    Raises
    ------
    ValueError
        If `hold` is neither, or nothing may be lifted there.
    """
    if hold not in HOLDS:
        raise ValueError(f"{hold!r} cannot be held while the load grows. Hold angle or radius.")
    refuse_too_long(setup, length=layout(setup.machine.boom, extension=extension).boom_length)
    rating = rate(setup, extension=extension, radius=np.array([radius]))
    rated = float(rating.capacity[0, 0])
    if not rated > 0.0:
        raise ValueError(nothing_to_lift(rating, radius))
    raised = Raised(setup, rating, hold)
    ends = ends_of(
        setup,
        boom=rating.boom,
        rated=rating.capacity,
        held=raised.held,
        near=rating.tipping_load,
        hold=hold,
    )
    met = float(ends.failure[0, 0]), float(ends.tipping[0, 0])
    known = [rated, *(load for load in met if np.isfinite(load))]
    at = raised.hung(np.linspace(0.0, BEYOND * max(known), GRID)[None])
    events = raised.events(at, float_loads(at, slew=slews_of(setup)))
    failure, tipping = _first(events, GIVES_WAY), _first(events, TIPS)
    shown = raised.hung(np.linspace(0.0, BEYOND * _last_shown(rated, known[1:]), GRID)[None])
    turn, line = raised.direction(rated if tipping is None else tipping.load)
    until = min(known[1:], default=rated)
    return Overload(
        setup=setup,
        boom=rating.boom,
        extension=rating.boom.layout.extension[0],
        radius=radius,
        hold=hold,
        rated=rated,
        governing=rating.limits[rating.governing[0, 0]],
        angle=float(rating.angle[0, 0]),
        events=events,
        failure=failure,
        tipping=tipping,
        load=shown.state.load[0],
        limits=shown.limits,
        utilisation=shown.utilisation[:, 0],
        lightens=lightenings(raised, until=until),
        feel=_feel(raised, until=until, slew=float(setup.slew[turn])),
        fall=None if tipping is None else _fall(raised, tipping.load, turn, line),
        is_valid=_is_valid(shown, failure, tipping),
    )


def nothing_to_lift(rating: Rating, radius: float) -> str:
    """Say why a cell has no rated load, and what to do.

    Parameters
    ----------
    rating : Rating
        Of one cell
    radius : float
        [m]
    """
    machine, length = rating.setup.machine, float(rating.boom.layout.boom_length[0])
    near = machine.heel_out + length * np.cos(machine.boom.greatest_angle)
    far = machine.heel_out + length * np.cos(machine.boom.least_angle)
    reach = f"this boom of {length:.2f} m reaches from about {max(near, 0.0):.1f} m to {far:.1f} m"
    if rating.capacity[0, 0] == 0.0:
        limit = rating.limits[rating.governing[0, 0]]
        return (
            f"At a radius of {radius:.2f} m nothing may be lifted: {limit.words} is used up "
            f"without a load. Choose a smaller radius; {reach}."
        )
    return f"There is no rated load at a radius of {radius:.2f} m: {reach}. Choose one inside."


def _first(events: tuple[Event, ...], kind: str) -> Event | None:
    return next((event for event in events if event.kind == kind), None)


def _feel(raised: Raised, *, until: float, slew: float) -> Feel:
    # A hair short of tipping: at the very load the floats' reactions are no longer defined.
    load = np.linspace(0.0, until * (1.0 - 1e-6), FELT)
    at = raised.hung(load[None])
    loads = float_loads(at, slew=np.array([slew]))
    lean, up, out = loads.lean[0, 0], at.placed.head_up[0], at.placed.head_out[0]
    leant = lean - lean[0]
    return Feel(
        slew=slew,
        load=load,
        lightest=loads.lightest[0, 0],
        lean=leant,
        radius=at.radius[0],
        droop=up[0] - up,
        by_oil=_by_oil(at),
        # About the ground under the axis of rotation.
        carried=up * np.sin(leant) - out * (1.0 - np.cos(leant)),
    )


def _by_oil(at: Response) -> float:
    """Radius under the last load, less what it were at the boom angle of the first [m]."""
    machine, angle = at.setup.machine, at.state.angle[0]
    out = float(at.radius[0, -1]) - machine.heel_out
    up = float(at.placed.head_up[0, -1]) - machine.heel_up
    back = float(angle[0] - angle[-1])
    return out - float(out * np.cos(back) - up * np.sin(back))


def _fall(raised: Raised, tipping: float, turn: int, line: int) -> Fall:
    """Curves for the rated load, halfway to tipping, tipping, and a tenth more."""
    middle = (raised.rated + tipping) / 2
    load = np.array([[raised.rated, middle, tipping, 1.1 * tipping]])
    if not raised.rated < tipping:
        load = tipping * np.array([[0.5, 0.75, 1.0, 1.1]])
    return fall(raised.hung(load), turn=turn, line=line)


def _last_shown(rated: float, ends: list[float]) -> float:
    """Both ends, unless the later one is so far off that nothing could be read before it."""
    if not ends:
        return rated
    return max(rated, min(max(ends), FARTHEST * min(ends)))


def _is_valid(at: Response, failure: Event | None, tipping: Event | None) -> bool:
    ends = [event.load for event in (failure, tipping) if event]
    before = at.state.load[0] <= min(ends, default=0.0)
    return bool(np.all(at.is_valid[0][before]))
