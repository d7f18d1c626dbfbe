"""The explorer's views put together for a desk and for a phone; nothing is drawn here."""

from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.draw_scene import picture
from boomsim.lab.views.limit_bars import limits_view
from boomsim.lab.views.moment_view import moments_view
from boomsim.lab.views.plan_from_above import plan_view
from boomsim.lab.views.side_elevation import side_view
from boomsim.lab.views.small_chart import chart_view
from boomsim.lab.views.stylesheet import definitions, type_scale
from boomsim.lab.views.svg_text import Box

UID = "live"
"""Prefix of class names and patterns on the page."""

LAYOUTS = ("desk", "phone")

STAGE = Box(x=0.0, y=0.0, width=420.0, height=286.0)
"""Side view on a phone: half of its screen, so that a slider is seen beside it [px]."""

BELOW = Box(x=0.0, y=0.0, width=420.0, height=960.0)
"""What a phone shows farther down [px]."""


def pictures(found: Answer, look: Look, *, layout: str) -> dict[str, str]:
    """Draw an answer.

    Parameters
    ----------
    found : Answer
    look : Look
    layout : str
        One of `LAYOUTS`

    Returns
    -------
    dict of str to str
        SVG: "stage", which stays in sight, and "below", empty on a desk
    """
    if layout == "desk":
        return {"stage": picture(found, look, uid=UID), "below": ""}
    side = side_view(found, look, STAGE, uid=UID, keyed=False)
    return {
        "stage": _framed(STAGE, look, [side]),
        "below": _framed(BELOW, look, _rest(found, look)),
    }


def _rest(found: Answer, look: Look) -> list[str]:
    return [
        limits_view(found, look, Box(x=6, y=4, width=408, height=384)),
        chart_view(found, look, Box(x=6, y=404, width=408, height=190), held=()),
        moments_view(found, look, Box(x=6, y=610, width=400, height=150)),
        plan_view(found, look, Box(x=6, y=772, width=408, height=186)),
    ]


def _framed(box: Box, look: Look, views: list[str]) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{UID}" role="group" aria-label="Explorer" '
        f'viewBox="0 0 {box.width:g} {box.height:g}">{definitions(type_scale(look), UID)}'
        f'<rect width="{box.width:g}" height="{box.height:g}" fill="#ffffff"/>'
        f"{''.join(views)}</svg>"
    )
