"""Past the rated load: what :mod:`boomsim.rating.overload` computes of a lift, told as pictures.

Up to the first end every picture is a solved lift under its own load, without margins, at the boom
angle that the rated load hangs at. A crane that tips is then turned about its tipping line as far
as its load hangs clear, and the moment that pulls it over is computed at every lean. What gives way
is shown at its computed place; how it goes on is drawn.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache, partial
from math import degrees
from typing import Any

import numpy as np

from boomsim.figures.side.bent_axis import Bent, bent
from boomsim.figures.svg_elements import document
from boomsim.lab.live.failing_boom import DROPS, TEARS, Way, fallen, way_of
from boomsim.lab.live.posed_crane import Pose, over_mark, posed_view, sheave_of, side_of
from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.solved_scene import Answer, standing_of
from boomsim.lab.views.number_table import NONE
from boomsim.lab.views.plan_from_above import plan_view
from boomsim.lab.views.side_elevation import frame_of, section_utilisations
from boomsim.lab.views.stylesheet import definitions, type_scale
from boomsim.lab.views.svg_text import Box, Frame, white
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.lift_response import Response
from boomsim.rating.limits.limit_kind import TIPS
from boomsim.rating.load_search import Held, no_margin
from boomsim.rating.overload.overload_sentences import (
    tell_event,
    tell_fall,
    tell_feel,
    tell_multiple,
    tell_verdict,
)
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.overload.tip_over import fall, worst_direction
from boomsim.rating.setup import Setup
from boomsim.units import show, show_rated

UID = "past"

RISING = 21
"""Pictures while the load is raised."""

GROWING = np.linspace(0.0, 1.0, 17)[1:] ** 1.6
"""How far it has gone in each picture from there on: slowly at first, as a thing falls [1]."""

FARTHEST = float(np.radians(60.0))
"""A crane that turns over is followed no farther [rad]."""

HIGH = 0.42
"""The load is drawn so high over the ground, of the head's height: it is to hang clear [1]."""

TEAR = float(np.radians(28.0))
"""So far the superstructure leans that has torn off its ring [rad]."""

PACE = (
    "How fast it happens is not computed: the picture goes slowly, so that the order can be seen."
)
GOES_ON = "Where it gives way is computed; how it goes on from there is drawn."

SIZES = {
    "desk": (Box(x=4.0, y=2.0, width=620.0, height=392.0), Box(x=0, y=0, width=1040, height=396)),
    "phone": (Box(x=0.0, y=0.0, width=420.0, height=286.0), Box(x=0, y=0, width=420, height=286)),
    "wall": (Box(x=4.0, y=2.0, width=626.0, height=436.0), Box(x=0, y=0, width=1040, height=440)),
}
"""Side view and picture, by layout [px]."""


@lru_cache(maxsize=16)
def studied(setup: Setup, extension: tuple[float, ...], radius: float) -> Overload:
    """Study a lift once; see :func:`boomsim.rating.overload.overload_study.overload`."""
    return overload(setup, extension=np.array(extension), radius=radius)


def told_past(now: Answer, look: Look, *, layout: str) -> dict[str, Any]:
    """Tell what happens to a scene as its load is raised.

    Parameters
    ----------
    layout : str
        One of :data:`boomsim.lab.live.live_pictures.LAYOUTS`

    Returns
    -------
    dict
        `trouble`, and no more where nothing may be lifted; `title`; `order`: rows of `words`,
        `load`, `times`, `kind`, and the number of the first picture `from` which it has happened,
        or null; `frames`: rows of what could be felt in each picture, `load`, `times`, `light`,
        `lean`, `radius`, `down` and a `note`; `rising`: how many of them come before the end;
        `rated`: the first under the rated load; `ends`: whether the scene's own load is as large
        as what ends it; `said`: sentences; `foot`: "float" or "tyre"
    """
    try:
        movie = _movie(now, look, layout)
    except ValueError as refusal:
        return {"trouble": str(refusal)}
    result, units = movie.result, look.units
    said = [*tell_verdict(result, units=units), tell_feel(result, units=units)]
    first = result.first
    if first is not None:
        said += [tell_fall(result, units=units)] if first.kind == TIPS else [GOES_ON]
        said.append(PACE)
    return {
        "trouble": "",
        "title": _title(result, units),
        "order": _order(result, movie.loads, units),
        "frames": [moment.felt for moment in movie.moments],
        "rising": len(movie.loads),
        "rated": min(int(np.searchsorted(movie.loads, result.rated)), len(movie.loads) - 1),
        "foot": "tyre" if result.setup.support.kind == "tyres" else "float",
        "ends": bool(first is not None and now.scene.load >= first.load),
        "said": said,
    }


def past_picture(now: Answer, look: Look, *, layout: str, number: int) -> str:
    """Draw one picture of them.

    Parameters
    ----------
    number : int
        Among the frames of :func:`told_past`; the last stands for all beyond

    Returns
    -------
    str
        SVG
    """
    movie = _movie(now, look, layout)
    return movie.moments[min(max(number, 0), len(movie.moments) - 1)].drawn()


@lru_cache(maxsize=4)
def _movie(now: Answer, look: Look, layout: str) -> "_Movie":
    if not np.isfinite(now.radius) or not now.radius > 0.0:
        raise ValueError("There is no lift here to raise the load of.")
    return _Movie(studied(now.setup, now.scene.extension, now.radius), now, look, layout)


def _title(result: Overload, units: str) -> str:
    radius, rated = show(result.radius, "length", units), show_rated(result.rated, units)
    return f"The load is raised past the {rated} that are rated at {radius}; nobody luffs"


def _order(result: Overload, loads: Array, units: str) -> list[dict[str, Any]]:
    """Events in the order of their loads; the picture from which each has happened."""
    found = []
    for event in result.events:
        reached = np.flatnonzero(loads >= event.load * (1.0 - 1e-6))
        ends = result.first is not None and event.load >= result.first.load * (1.0 - 1e-9)
        after = len(loads) if event is result.first else None
        found.append(
            {
                "words": tell_event(event),
                "load": show(event.load, "mass", units),
                "times": tell_multiple(event.multiple),
                "kind": event.kind,
                "from": after if ends else int(reached[0]) if len(reached) else None,
            }
        )
    return found


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Moment:
    """One picture, drawn when it is asked for, and what could be felt then."""

    felt: dict[str, str]
    drawn: Callable[[], str]


class _Movie:
    """Pictures of one lift past its rated load."""

    def __init__(self, result: Overload, now: Answer, look: Look, layout: str) -> None:
        self.result, self.now = result, now
        self.look = replace(look, projector=layout == "wall")
        self.layout, (self.box, self.whole) = layout, SIZES[layout]
        self.frame: Frame = frame_of(now, self.box, small=False, large=type_scale(self.look))
        self.real, self.slew = no_margin(result.setup), result.feel.slew
        self.kept = Held(
            self.real,
            boom=result.boom,
            rated=np.array([[result.rated]]),
            held=np.array([[result.angle]]),
            hold="angle",
        )
        self.step = (len(result.feel.load) - 1) // (RISING - 1)
        self.loads = result.feel.load[:: self.step]
        self.last = self.hung(float(self.loads[-1]))
        self.about = self._about()
        high = self._shape(self.last).sheave[1]
        self.rope = float(high) * (1.0 - HIGH) - side_of(float(self.loads[-1]))
        self.moments = [*self._rising(), *self._ending()]

    def hung(self, load: float) -> Response:
        return self.kept.hung(np.array([[load]]))

    def _shape(self, at: Response) -> Bent:
        return bent(at.boom, angle=float(at.state.angle[0, 0]), rotation=at.state.rotation[0, :, 0])

    def _about(self) -> float:
        """How far out under the boom the tipping line lies [m]."""
        lines = tipping_lines(self.real.support)
        line = worst_direction(self.last)[1] if self.result.fall is None else self.result.fall.line
        way = np.array([np.cos(self.slew), np.sin(self.slew)])
        toward = float(lines.normal[line] @ way)
        return float(lines.distance[line]) / toward if toward > 0.2 else self.now.radius / 3.0

    def _answer(self, at: Response) -> Answer:
        load = float(at.state.load[0, 0])
        return replace(
            self.now,
            scene=replace(self.now.scene, load=load, slew=self.slew),
            setup=self.real,
            at=at,
            solved=True,
            radius=float(at.radius[0, 0]),
            standing=standing_of(at, slew=self.slew),
        )

    def _picture(self, answer: Answer, pose: Pose, words: str) -> str:
        drawn = posed_view(
            answer,
            pose,
            self.frame,
            self.box,
            uid=UID,
            words=words,
            utilisations=section_utilisations(answer),
        )
        views = [drawn, *over_mark(pose, self.frame)]
        if self.layout != "phone":
            views.append(plan_view(answer, self.look, Box(x=650, y=8, width=380, height=300)))
        whole = self.whole
        return document(
            definitions(type_scale(self.look), UID),
            white(whole.width, whole.height),
            *views,
            class_=UID,
            role="group",
            aria_label="Past the rated load",
            viewBox=f"0 0 {whole.width:g} {whole.height:g}",
        )

    def _rising(self) -> list[_Moment]:
        """One picture for each load, each a lift that is solved."""
        felt = [self._felt(number * self.step) for number in range(len(self.loads))]
        return [
            _Moment(felt=one, drawn=partial(self._lifted, load, one))
            for load, one in zip(self.loads.tolist(), felt, strict=True)
        ]

    def _lifted(self, load: float, felt: dict[str, str]) -> str:
        at = self.hung(load)
        words = f"The crane under {felt['load']}, {felt['times']}."
        return self._picture(self._answer(at), self._pose(self._shape(at)), words)

    def _felt(self, k: int) -> dict[str, str]:
        feel, units = self.result.feel, self.look.units
        load = float(feel.load[k])
        return {
            "load": show(load, "mass", units),
            "times": tell_multiple(load / self.result.rated),
            "light": self._light(float(feel.lightest[k])),
            "lean": f"{degrees(float(feel.lean[k])):.2f}°",
            "radius": show(float(feel.radius[k]), "length", units),
            "down": show(float(feel.droop[k]), "length", units),
        }

    def _light(self, force: float) -> str:
        """As the study says it: what is left of a float before it lifts is nothing to be felt."""
        start = float(self.result.feel.lightest[0])
        return show(force, "force", self.look.units) if force > 0.005 * start else "nothing"

    def _pose(self, shape: Bent, **more: float) -> Pose:
        return Pose(shape=shape, slew=self.slew, about=self.about, rope=self.rope, **more)

    def _ending(self) -> list[_Moment]:
        """From the end on: until the load is on the ground."""
        first = self.result.first
        if first is None:
            return []
        if first.kind == TIPS:
            return self._tipping(first.load)
        assert first.limit is not None
        return self._breaking(way_of(first.limit, self.last), first.words)

    def _tipping(self, load: float) -> list[_Moment]:
        answer, shape, most = self._answer(self.last), self._shape(self.last), FARTHEST
        for lean in np.linspace(0.0, FARTHEST, 241).tolist():
            if self._low(self._pose(shape, lean=lean)) <= 0.0:
                most = lean
                break
        turn, line = worst_direction(self.last)
        leans = most * GROWING
        # A hair past its tipping load: at that load itself it stands on a point.
        pulls = fall(self.hung(load * (1.0 + 1e-6)), turn=turn, line=line, lean=leans).moment[0]
        found = []
        for lean, moment in zip(leans.tolist(), pulls.tolist(), strict=True):
            leant = f"{degrees(lean):.0f}°"
            felt = {**self._end(), "lean": leant, "note": self._pulled(moment)}
            pose, words = self._pose(shape, lean=lean), f"The crane leans {leant}, going over."
            found.append(_Moment(felt=felt, drawn=partial(self._picture, answer, pose, words)))
        return found

    def _pulled(self, moment: float) -> str:
        pull, where = show(abs(moment), "moment", self.look.units), direction(self.slew)
        where = f" {where}" if where.startswith("over") else f", {where}"
        if moment < 0.0:
            return f"It tips{where}: {pull} pull it farther, and it does not come back."
        return f"It tips{where}: {pull} still hold it."

    def _low(self, pose: Pose) -> float:
        """How far the load's underside is over the ground [m]."""
        side = side_of(float(self.loads[-1]))
        return float(sheave_of(pose)[1]) - pose.rope - pose.parted - side

    def _breaking(self, way: Way, what: str) -> list[_Moment]:
        answer, clear = self._answer(self.last), self._low(self._pose(self._shape(self.last)))
        words, found = f"{what[0].upper()}{what[1:]}; the carrier is still standing.", []
        felt = {**self._end(), "note": words}
        for share in GROWING.tolist():
            pose = self._pose(
                fallen(way, self.last, share),
                torn=TEAR * share if way.how == TEARS else 0.0,
                parted=clear * share if way.how == DROPS else 0.0,
            )
            found.append(_Moment(felt=felt, drawn=partial(self._picture, answer, pose, words)))
            if self._low(pose) <= 0.0:
                break
        return found

    def _end(self) -> dict[str, str]:
        """What is felt no longer has no figure: nobody computes a crane that is falling."""
        felt = self._felt(len(self.result.feel.load) - 1)
        return {**felt, "light": NONE, "radius": NONE, "down": NONE}
