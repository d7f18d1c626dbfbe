"""A load is kept and the boom run out at a kept angle: how far it may go, and what pushes it.

In between two locks a section is judged as if it were held there; what pushes it is judged besides.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.parts_reeved import as_reeved, hanging_mass
from boomsim.rating.path.lowering_study import refuse_load
from boomsim.rating.path.path_marks import (
    Mark,
    Marks,
    Place,
    ResponsesAt,
    loaded_radius,
    marks_on,
    place_of,
)
from boomsim.rating.path.telescope_drive import (
    FRICTION,
    PUSH,
    checked_friction,
    permissible_push,
    with_push,
)
from boomsim.rating.path.telescoping_stages import Stage, run_out
from boomsim.rating.setup import Setup
from boomsim.units import show

ON_A_STAGE = 13
"""Places on each stage at which lines are worked out."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Line:
    """What is rated along the way. Shapes (places,).

    Attributes
    ----------
    out : ndarray
        Metres run out since the start [m]
    length, radius : ndarray
        Of the boom, and of the kept load [m]
    rated : ndarray
        Gross load rated at that radius where it hangs still [kg]
    moved : ndarray
        Gross load that may be run out there: `rated`, or what the push moves, if that is less [kg]
    """

    out: Array
    length: Array
    radius: Array
    rated: Array
    moved: Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Telescoping:
    """One load on its way out.

    Attributes
    ----------
    setup : Setup
        Reeved for the longest boom of the way, and so all the way
    angle : float
        Boom angle, kept [rad]
    load : float
        Gross, kept [kg]
    friction : float
        Of the pads [1]
    start, end : Place
        Along the way counts how far the boom has run out since the start [m]
    marks : Marks
        What is met in between; `rated` may be the push
    empty_tips : Mark or None
        Where the crane tips with nothing but hook block, slings and rope
    """

    setup: Setup
    angle: float
    load: float
    friction: float
    stages: tuple[Stage, ...]
    start: Place
    end: Place
    marks: Marks
    empty_tips: Mark | None
    line: Line

    @property
    def is_moved_at_start(self) -> bool:
        """True where the load may be run out at all."""
        return self.marks.rated is None or self.marks.rated.place.at > 0.0

    @property
    def is_held_by_push(self) -> bool:
        """True where what pushes is not enough, while the load would still be rated."""
        return self.marks.rated is not None and self.marks.rated.limit.name == PUSH

    def extension_at(self, out: float) -> Array:
        """Extension so many metres after the start, shape (moving sections,) [1]."""
        left = out
        for stage in self.stages[:-1]:
            if left <= stage.travel:
                return np.asarray(stage.at(np.array([left]))[0])
            left -= stage.travel
        return np.asarray(self.stages[-1].at(np.array([left]))[0])

    def length_at(self, out: float) -> float:
        """Boom length so many metres after the start [m]."""
        extension = self.extension_at(out)
        return float(layout(self.setup.machine.boom, extension=extension).boom_length[0])


def telescope(
    setup: Setup,
    *,
    extension: Array,
    load: float,
    angle: float,
    friction: float = FRICTION,
    system: str | None = None,
) -> Telescoping:
    """Run the boom out with a load until it is more than may be moved, and on until something ends.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        Where it begins [1]
    load : float
        Gross [kg]
    angle : float
        Boom angle, kept [rad]
    friction : float
        Coefficient of friction of the pads [1]
    system : str, optional
        Boom system; default: the usual one

    Raises
    ------
    ValueError
        If the load, the angle or the friction is none, it is not known what pushes, nothing can be
        run out, or the boom cannot hold the load where it begins.
    """
    stages = run_out(setup.machine.boom, extension=extension, system=system)
    setup = _reeved_for(setup, stages)
    begun = layout(setup.machine.boom, extension=extension).boom_length
    refuse_load(setup, load, length=float(begun[0]))
    checked_friction(friction)
    _refuse_angle(setup, angle)
    permissible_push(setup.machine, rule=setup.rule)
    refuse_too_long(setup, length=begun)
    kept = {"load": load, "angle": angle, "friction": friction}
    empty = _marks(setup, stages, load=None, angle=angle, friction=friction)
    total = sum(stage.travel for stage in stages)
    return Telescoping(
        setup=setup,
        angle=angle,
        load=load,
        friction=friction,
        stages=stages,
        start=_place(setup, stages[0].start, load, angle, 0.0),
        end=_place(setup, stages[-1].end, load, angle, total),
        marks=_marks(setup, stages, **kept),
        empty_tips=empty.tips,
        line=_line(setup, stages, **kept),
    )


def _refuse_angle(setup: Setup, angle: float) -> None:
    boom = setup.machine.boom
    if not boom.least_angle - 1e-9 <= angle <= boom.greatest_angle + 1e-9:
        raise ValueError(
            f"--angle: {show(angle, 'angle')} is outside this boom's range. Give "
            f"{show(boom.least_angle, 'angle')} to {show(boom.greatest_angle, 'angle')}."
        )


def _place(setup: Setup, extension: Array, load: float, angle: float, at: float) -> Place:
    boom = condense(setup.machine, extension=extension)
    response = respond(setup, boom=boom, load=np.array([[load]]), angle=np.array([[angle]]))
    if at == 0.0 and not response.state.converged[0, 0]:
        raise ValueError(
            f"This boom cannot hold {show(load, 'mass')} where the way would begin. Begin at "
            "another angle, or take less load."
        )
    return place_of(response, at)


def _marks(
    setup: Setup, stages: tuple[Stage, ...], *, load: float | None, angle: float, friction: float
) -> Marks:
    """Find what is met first on the whole way, stage by stage; without a load, the empty hook."""
    found: dict[str, Mark | None] = {"rated": None, "fails": None, "tips": None}
    before = 0.0
    for stage in stages:
        judged = with_push(setup, moving=stage.moving, friction=friction)
        met = marks_on(judged, _along(stage, load, angle), start=0.0, end=stage.travel)
        for name, known in found.items():
            mark = getattr(met, name)
            if known is None and mark is not None:
                place = replace(mark.place, at=before + mark.place.at)
                found[name] = replace(mark, place=place)
        before += stage.travel
    return Marks(**found)


def _reeved_for(setup: Setup, stages: tuple[Stage, ...]) -> Setup:
    """Reeve for the end of the way: nobody changes the reeving while a load hangs."""
    longest = layout(setup.machine.boom, extension=stages[-1].end).boom_length
    return as_reeved(setup, length=float(longest[0]))


def _along(stage: Stage, load: float | None, angle: float) -> ResponsesAt:
    """Cells of one stage, one configuration each; condensed once for the same places."""
    known: dict[bytes, Condensed] = {}

    def at_places(judged: Setup, at: Array) -> Response:
        if (key := at.tobytes()) not in known:
            known[key] = condense(judged.machine, extension=stage.at(at))
        boom, held = known[key], np.array([[angle]])
        hung = np.array([[load]])
        if load is None:
            hung = hanging_mass(judged, length=boom.layout.boom_length, angle=held)
        return respond(judged, boom=boom, load=hung, angle=held)

    return at_places


def _line(
    setup: Setup, stages: tuple[Stage, ...], *, load: float, angle: float, friction: float
) -> Line:
    parts, before = [], 0.0
    for stage in stages:
        out = np.linspace(0.0, stage.travel, ON_A_STAGE)
        extension = stage.at(out)
        boom = condense(setup.machine, extension=extension)
        radius = loaded_radius(setup, boom=boom, load=np.array([[load]]), angle=np.array([[angle]]))
        hangs, moves = _rated(setup, stage, extension, boom, radius, friction)
        parts.append((before + out, boom.layout.boom_length, radius[:, 0], hangs, moves))
        before += stage.travel
    out, length, radius, rated, moved = (np.concatenate(one) for one in zip(*parts, strict=True))
    return Line(out=out, length=length, radius=radius, rated=rated, moved=moved)


def _rated(
    setup: Setup, stage: Stage, extension: Array, boom: Condensed, radius: Array, friction: float
) -> tuple[Array, Array]:
    """Loads that may hang and that may be moved, at radii that may be lost already [kg]."""
    held = np.where(radius > 0.0, radius, 1e6)
    judged = with_push(setup, moving=stage.moving, friction=friction)
    hangs, moves = (
        rate(one, extension=extension, radius=held, boom=boom).capacity[:, 0]
        for one in (setup, judged)
    )
    return hangs, moves


def with_load_of(found: Telescoping, extension: Array) -> Response:
    """Hang the kept load on the boom in one configuration.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]

    Returns
    -------
    Response
        Of one cell
    """
    return respond(
        found.setup,
        boom=condense(found.setup.machine, extension=extension),
        load=np.array([[found.load]]),
        angle=np.array([[found.angle]]),
    )
