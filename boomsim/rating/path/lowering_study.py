"""A load is kept and the boom lowered: the radius grows, and what is rated becomes less.

The boom comes down slowly: nothing swings and nothing is stopped. The hoist follows, so that the
load hangs clear all the way.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.parts_reeved import hanging_mass, reeved, what_hangs
from boomsim.rating.path.path_marks import Marks, Place, loaded_radius, marks_on, place_of
from boomsim.rating.setup import Setup
from boomsim.units import listed, show

DRAWN = 97
"""Radii at which the rated line is worked out."""

STEPS = 9
"""Places on the way that a table shows."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Lowering:
    """One load on its way down and out.

    Attributes
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    length : float
        Boom length [m]
    load : float
        Gross [kg]
    start, end : Place
        Where the boom begins, and its least angle; along the way counts the boom angle [rad]
    marks : Marks
        What is met in between
    empty : EmptyHook
        Where the crane turns over with nothing but hook block, slings and rope
    rating : Rating
        Of this boom, shape (1, radii), from the start or nearer to the end
    """

    setup: Setup
    extension: Array
    length: float
    load: float
    start: Place
    end: Place
    marks: Marks
    empty: EmptyHook
    rating: Rating

    @property
    def is_rated_at_start(self) -> bool:
        """True where the load may hang where the way begins."""
        return self.marks.rated is None or self.marks.rated.place.at < self.start.at

    @property
    def farthest(self) -> Place | None:
        """How far it may be lowered; None where the load is too much from the start."""
        if not self.is_rated_at_start:
            return None
        return self.end if self.marks.rated is None else self.marks.rated.place


def lower(
    setup: Setup,
    *,
    extension: Array,
    load: float,
    angle: float | None = None,
    radius: float | None = None,
) -> Lowering:
    """Lower the boom with a load until it is more than is rated, and on until something happens.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    load : float
        Gross [kg]
    angle, radius : float, optional
        Where the way begins, one of them; default: the greatest boom angle [rad], [m]

    Raises
    ------
    ValueError
        If the load is none, or the boom cannot be where the way begins.
    """
    boom = condense(setup.machine, extension=extension)
    refuse_load(setup, load, length=float(boom.layout.boom_length[0]))
    refuse_too_long(setup, length=boom.layout.boom_length)
    begin = _start(setup, boom, load, angle, radius)

    def at(judged: Setup, angles: Array) -> Response:
        return respond(judged, boom=boom, load=np.array([[load]]), angle=angles[None])

    marks = marks_on(setup, at, start=begin, end=setup.machine.boom.least_angle)
    end = _end(setup, boom, load, begin)
    return Lowering(
        setup=setup,
        extension=boom.layout.extension[0],
        length=float(boom.layout.boom_length[0]),
        load=load,
        start=place_of(at(setup, np.array([begin])), begin),
        end=place_of(at(setup, np.array([end])), end),
        marks=marks,
        empty=empty_hook(setup, extension=extension),
        rating=_rated_line(setup, boom, load, end),
    )


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Steps:
    """Some places on the way, evenly apart in boom angle. Shapes (places,).

    Attributes
    ----------
    angle, radius : ndarray
        With the load on [rad], [m]
    rating : Rating
        Shape (1, places)
    """

    angle: Array
    radius: Array
    rating: Rating


def steps_of(found: Lowering, *, places: int = STEPS) -> Steps:
    """Rate the boom at places from the start of the way to its end."""
    angle = np.linspace(found.start.angle, found.end.angle, places)
    boom, load = found.rating.boom, np.array([[found.load]])
    radius = loaded_radius(found.setup, boom=boom, load=load, angle=angle[None])[0]
    rating = rate(found.setup, extension=found.extension, radius=radius, boom=boom)
    return Steps(angle=angle, radius=radius, rating=rating)


def refuse_load(setup: Setup, load: float, *, length: float) -> None:
    """Refuse what is no gross load: hook block, slings and rope are a part of every one.

    Parameters
    ----------
    load : float
        [kg]
    length : float
        Boom length [m]

    Raises
    ------
    ValueError
        If it is less than what always hangs on the rope, or no load at all.
    """
    steepest = setup.machine.boom.greatest_angle
    least = float(hanging_mass(setup, length=length, angle=steepest)[0, 0])
    if not max(least, 0.0) <= load < 1e7 or load == 0.0:
        named = listed(what_hangs(setup.machine)) or "nothing"
        raise ValueError(
            f"--load: {show(load, 'mass')} is no gross load: {named} are a part of it and weigh "
            f"{show(least, 'mass')} below the steepest boom. Give that or more."
        )


def _start(
    setup: Setup, boom: Condensed, load: float, angle: float | None, radius: float | None
) -> float:
    """Boom angle at which the way begins [rad]."""
    limits = setup.machine.boom
    if angle is None and radius is None:
        angle = limits.greatest_angle
    state = solve_state(
        boom,
        load=np.array([[load]]),
        parts=reeved(setup, length=boom.layout.boom_length),
        angle=None if angle is None else np.array([[angle]]),
        radius=None if radius is None else np.array([[radius]]),
    )
    found = float(state.angle[0, 0])
    if not state.converged[0, 0]:
        raise ValueError(
            f"This boom of {show(boom.layout.boom_length[0], 'boom_length')} cannot hold "
            f"{show(load, 'mass')} where the way would begin. Begin at another radius or angle, or "
            "take less load."
        )
    if not limits.least_angle < found <= limits.greatest_angle + 1e-9:
        raise ValueError(
            f"The way would begin at {show(found, 'angle')}, and this boom goes from "
            f"{show(limits.greatest_angle, 'angle')} down to {show(limits.least_angle, 'angle')}. "
            "Begin in between."
        )
    return min(found, limits.greatest_angle)


def _end(setup: Setup, boom: Condensed, load: float, begin: float) -> float:
    """Least angle at which the boom holds the load at all, however little is left [rad]."""
    angles = np.linspace(begin, setup.machine.boom.least_angle, DRAWN)
    radius = loaded_radius(setup, boom=boom, load=np.array([[load]]), angle=angles[None])[0]
    return float(angles[np.flatnonzero(np.isfinite(radius))[-1]])


def _rated_line(setup: Setup, boom: Condensed, load: float, end: float) -> Rating:
    """Rate the boom at radii from its steepest to the end of the way."""
    ends = np.array([[setup.machine.boom.greatest_angle, end]])
    near, far = loaded_radius(setup, boom=boom, load=np.array([[load]]), angle=ends)[0]
    radii = np.linspace(max(near, 0.5), far, DRAWN)
    return rate(setup, extension=boom.layout.extension, radius=radii, boom=boom)
