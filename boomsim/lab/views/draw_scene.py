"""From a scene to a picture: a pure function that gives one SVG string.

Equal arguments give equal strings. Every size is fixed by the look alone, so a page never jumps.
"""

from boomsim.caution import CAUTION
from boomsim.figures.svg_elements import document
from boomsim.lab.scene.scene import Look, Scene
from boomsim.lab.solve.solved_scene import Answer, answer
from boomsim.lab.views.limit_bars import limits_view
from boomsim.lab.views.moment_view import moments_view
from boomsim.lab.views.number_table import numbers_view
from boomsim.lab.views.plan_from_above import plan_view
from boomsim.lab.views.side_elevation import side_view
from boomsim.lab.views.small_chart import chart_view
from boomsim.lab.views.stylesheet import definitions, type_scale
from boomsim.lab.views.svg_text import Box, text, white, wrapped
from boomsim.units import display, markup_in_words

WIDTH, HEIGHT = 1040.0, 724.0
"""Of every picture [px]."""


def draw(
    scene: Scene, *, look: Look | None = None, held: tuple[Scene, ...] = (), uid: str = "boomsim"
) -> str:
    """Draw a scene.

    Parameters
    ----------
    held : tuple of Scene
        Their capacity curves are drawn beside the scene's own
    uid : str
        Prefix of class names and patterns

    Returns
    -------
    str
        An SVG element

    Examples
    --------
    >>> draw(Scene()).startswith("<svg")
    True
    """
    look = look or Look()
    unit = display("length", look.units).factor
    return picture(
        answer(scene, unit=unit),
        look,
        held=tuple(answer(one, unit=unit) for one in held),
        uid=uid,
    )


def picture(found: Answer, look: Look, *, held: tuple[Answer, ...] = (), uid: str) -> str:
    """Draw an answer; see :func:`draw`.

    Returns
    -------
    str
        SVG
    """
    views = _projector(found, look, held, uid) if look.projector else _desk(found, look, held, uid)
    scene = found.scene
    return document(
        definitions(type_scale(look), uid),
        white(WIDTH, HEIGHT),
        markup_in_words("".join(views), look.units),
        _caution(look),
        class_=uid,
        viewBox=f"0 0 {WIDTH:g} {HEIGHT:g}",
        width=f"{WIDTH:g}",
        height=f"{HEIGHT:g}",
        role="group",
        aria_label="Explorer",
        data_machine=found.setup.machine.name,
        data_load=f"{scene.load:g}",
        data_radius=f"{found.radius:.4f}",
        data_capacity=f"{found.capacity:.3f}",
        data_extension=" ".join(f"{f:g}" for f in scene.extension),
    )


def _desk(found: Answer, look: Look, held: tuple[Answer, ...], uid: str) -> list[str]:
    return [
        numbers_view(found, look, Box(x=8, y=4, width=1024, height=90)),
        side_view(found, look, Box(x=8, y=98, width=612, height=386), uid=uid),
        limits_view(found, look, Box(x=640, y=100, width=392, height=384)),
        moments_view(found, look, Box(x=8, y=498, width=372, height=190)),
        chart_view(found, look, Box(x=398, y=498, width=372, height=190), held=held),
        plan_view(found, look, Box(x=788, y=498, width=244, height=190)),
    ]


def _projector(found: Answer, look: Look, held: tuple[Answer, ...], uid: str) -> list[str]:
    beside = Box(x=648, y=150, width=384, height=536)
    drawn = {
        "limits": lambda: limits_view(found, look, beside),
        "chart": lambda: chart_view(found, look, beside, held=held),
        "moments": lambda: moments_view(found, look, beside),
        "plan": lambda: plan_view(found, look, beside),
    }
    return [
        numbers_view(found, look, Box(x=8, y=4, width=1024, height=140)),
        side_view(found, look, Box(x=8, y=150, width=620, height=536), uid=uid),
        drawn[look.beside](),
    ]


def _caution(look: Look) -> str:
    lines = wrapped(CAUTION, most=170)
    return "".join(
        text(8, HEIGHT - 18 + 13 * k, one, "caution", more=' style="font-size:11px"')
        for k, one in enumerate(lines)
    )
