"""The explorer's views put together for a desk, a phone and a wall; nothing is drawn here."""

from dataclasses import dataclass, replace
from typing import Any

from boomsim.figures.svg_elements import document
from boomsim.lab.live.ghost_booms import ghosts
from boomsim.lab.live.ways_side_by_side import Ways
from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.limit_bars import limits_view
from boomsim.lab.views.moment_view import moments_view
from boomsim.lab.views.plan_from_above import plan_view
from boomsim.lab.views.side_elevation import frame_of, side_view
from boomsim.lab.views.small_chart import chart_view
from boomsim.lab.views.stylesheet import definitions, type_scale
from boomsim.lab.views.svg_text import Box, Frame, between, white

UID = "live"
"""Prefix of class names and patterns on the page."""

LAYOUTS = ("desk", "phone", "wall")

GHOST = ".live .ghost{fill:none;stroke-width:1.7;stroke-linejoin:round}"
"""Outlines of other ways."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """Where the views of a layout lie.

    Attributes
    ----------
    stage, side, below : Box
        Of the picture that stays in sight, of the side view in it, and of what comes after it [px]
    """

    stage: Box
    side: Box
    below: Box


PLANS = {
    "desk": Plan(
        stage=Box(x=0.0, y=0.0, width=1040.0, height=396.0),
        side=Box(x=4.0, y=2.0, width=620.0, height=392.0),
        below=Box(x=0.0, y=0.0, width=1040.0, height=206.0),
    ),
    # Half of a phone's screen, so that a slider is seen beside it.
    "phone": Plan(
        stage=Box(x=0.0, y=0.0, width=420.0, height=286.0),
        side=Box(x=0.0, y=0.0, width=420.0, height=286.0),
        below=Box(x=0.0, y=0.0, width=420.0, height=960.0),
    ),
    "wall": Plan(
        stage=Box(x=0.0, y=0.0, width=1040.0, height=440.0),
        side=Box(x=4.0, y=2.0, width=626.0, height=436.0),
        below=Box(x=0.0, y=0.0, width=0.0, height=0.0),
    ),
}
"""By layout."""


def stage_frame(found: Answer, look: Look, *, layout: str) -> Frame:
    """Where metres lie in the side view.

    Parameters
    ----------
    layout : str
        One of `LAYOUTS`
    """
    large = type_scale(_look(look, layout))
    return frame_of(found, PLANS[layout].side, small=False, large=large)


def pictures(
    found: Answer,
    ways: Ways | None,
    look: Look,
    *,
    layout: str,
    frame: Frame,
    held: list[dict[str, Any]],
) -> dict[str, Any]:
    """Draw what of an answer stays in sight.

    Parameters
    ----------
    ways : Ways or None
        Whose outlines are laid over it
    layout : str
        One of `LAYOUTS`
    frame : Frame
        Of the side view, as :func:`stage_frame` gives it, or as it was when a drag began
    held : list of dict
        Grips, from :func:`boomsim.lab.live.drag_grips.grips`

    Returns
    -------
    dict
        "stage", SVG of what stays in sight; "size" of it and "frame" of its side view, x, y and
        scale
    """
    plan, look = PLANS[layout], _look(look, layout)
    side = side_view(found, look, plan.side, uid=UID, keyed=layout == "desk", frame=frame)
    leaders = [between(one["place"], one["foot"], "thin") for one in held if "foot" in one]
    views = [side, ghosts(ways, found, frame, large=type_scale(look)), *leaders]
    if layout == "desk":
        views.append(limits_view(found, look, Box(x=640, y=4, width=392, height=388)))
    if layout == "wall":
        views.append(limits_view(found, look, Box(x=648, y=4, width=384, height=432)))
    return {
        "stage": _framed(plan.stage, look, views, "The lift"),
        "size": [plan.stage.width, plan.stage.height],
        "frame": [round(frame.x, 3), round(frame.y, 3), round(frame.scale, 5)],
    }


def picture_below(found: Answer, look: Look, *, layout: str) -> str:
    """Draw what comes after the stage.

    Parameters
    ----------
    layout : str
        One of `LAYOUTS`

    Returns
    -------
    str
        SVG; empty on a wall
    """
    look = _look(look, layout)
    views = _below(found, look, layout)
    return _framed(PLANS[layout].below, look, views, "More of the lift") if views else ""


def _look(look: Look, layout: str) -> Look:
    return replace(look, projector=layout == "wall")


def _below(found: Answer, look: Look, layout: str) -> list[str]:
    if layout == "desk":
        return [
            moments_view(found, look, Box(x=8, y=6, width=372, height=190)),
            chart_view(found, look, Box(x=398, y=6, width=372, height=190)),
            plan_view(found, look, Box(x=788, y=6, width=244, height=190)),
        ]
    if layout == "wall":
        return []
    return [
        limits_view(found, look, Box(x=6, y=4, width=408, height=384)),
        chart_view(found, look, Box(x=6, y=404, width=408, height=190)),
        moments_view(found, look, Box(x=6, y=610, width=400, height=150)),
        plan_view(found, look, Box(x=6, y=772, width=408, height=186)),
    ]


def _framed(box: Box, look: Look, views: list[str], label: str) -> str:
    return document(
        definitions(type_scale(look), UID),
        f"<style>{GHOST}</style>",
        white(box.width, box.height),
        *views,
        class_=UID,
        role="group",
        aria_label=label,
        viewBox=f"0 0 {box.width:g} {box.height:g}",
    )
