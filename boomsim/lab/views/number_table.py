"""The numbers a class asks for, and the headline in words."""

import numpy as np

from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.scene_sentences import configuration, headline, percent, remark
from boomsim.lab.views.stylesheet import type_scale
from boomsim.lab.views.svg_text import Box, line, rect, text, view, wrapped
from boomsim.rating.parts_reeved import parts_words
from boomsim.units import show_rated

NONE = "–"


def numbers(answer: Answer, look: Look) -> list[tuple[str, str, str]]:
    """List what a class asks for.

    Returns
    -------
    list of (str, str, str)
        Key for `data-number`, words, value with unit
    """

    def said(value: float, quantity: str) -> str:
        known = answer.solved and np.isfinite(value)
        return say(value, quantity, look.units) if known else NONE

    at = answer.at
    length = float(answer.boom.layout.boom_length[0])
    angle = radius = height = bend = np.nan
    if at is not None:
        angle, radius = float(at.state.angle[0, 0]), float(at.radius[0, 0])
        height, bend = float(at.placed.head_up[0, 0]), float(at.tip_deflection[0, 0])
    capacity = NONE
    if np.isfinite(answer.capacity):
        capacity = show_rated(answer.capacity, look.units)
    small = "length" if abs(bend) >= 1.0 else "small_length"
    return [
        ("load", "hangs on it", say(answer.scene.load, "mass", look.units)),
        ("capacity", "rated here", capacity),
        ("used", "of rated", percent(answer.used) if np.isfinite(answer.used) else NONE),
        ("radius", "radius, load on", said(radius, "length")),
        ("angle", "boom angle", said(angle, "angle")),
        ("length", "boom length", say(length, "boom_length", look.units)),
        ("height", "head height", said(height, "length")),
        ("deflection", "tip deflection", said(bend, small)),
    ]


def numbers_view(answer: Answer, look: Look, box: Box) -> str:
    """Draw the row of numbers with the headline under it.

    Returns
    -------
    str
        SVG
    """
    large = type_scale(look)
    listed = numbers(answer, look)
    if look.projector:
        listed = listed[:6]
    width = box.width / len(listed)
    parts = []
    for k, (key, words, value) in enumerate(listed):
        x = box.x + k * width
        if k:
            parts.append(line(x, box.y + 4, x, box.y + 44 * large, "faint"))
        inset = x + (10 if k else 2)
        parts.append(text(inset, box.y + 14 * large, words, "s"))
        more = f' data-number="{key}"'
        size = "n" if len(value) * 10.5 * large < width - 12 else "h"
        kind = f"{size} load-word" if key == "load" else size
        parts.append(text(inset, box.y + 38 * large, value, kind, more=more))
    y = box.y + 64 * large
    parts.append(_headline(answer, look, box, y, large))
    label = ", ".join(f"{words} {value}" for _, words, value in listed)
    said = f"{configuration(answer)}: {label}. {headline(answer, units=look.units)}"
    return view("numbers", said, parts)


def _headline(answer: Answer, look: Look, box: Box, y: float, large: float) -> str:
    words, more = headline(answer, units=look.units), remark(answer, units=look.units)
    letters = int(box.width / (6.9 * large))
    lines = [*wrapped(words, most=letters)[:2]]
    found = [
        text(box.x + 2, y + 18 * large * k, one, "h", more=' data-part="headline"')
        for k, one in enumerate(lines)
    ]
    if more and len(lines) == 1:
        found.append(rect(box.x + 2, y + 7 * large, 4, 14 * large, "load"))
        found.append(
            text(box.x + 12, y + 18 * large, more, "t load-word", more=' data-part="remark"')
        )
    elif len(lines) == 1:
        words = _setup_words(answer, short=look.projector)
        found.append(text(box.x + 2, y + 18 * large, words, "s"))
    return "".join(found)


def _setup_words(answer: Answer, *, short: bool) -> str:
    setup = answer.setup
    allowed = "" if setup.rule.allowances is None else " with its allowances"
    begun = f"{setup.machine.name} (invented), {configuration(answer)} % out"
    if short:
        stands = f"{setup.support.kind} {setup.support.name}".replace("tyres tyres", "on tyres")
        return f"{begun}; counterweight {setup.counterweight.name}; {stands}"
    return (
        f"{begun}, {answer.scene.system}; counterweight {setup.counterweight.name}; "
        f"{setup.support.kind} {setup.support.name}; "
        f"{parts_words(setup, extension=answer.boom.layout.extension)}; "
        f"rule {setup.rule.name}{allowed}"
    ).replace("tyres tyres", "on tyres")
