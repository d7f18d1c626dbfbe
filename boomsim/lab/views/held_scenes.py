"""Held scenes side by side, and what each part of the boom makes of their difference."""

from functools import lru_cache

import numpy as np

from boomsim.caution import CAUTION
from boomsim.figures.colours_and_lines import identity, ink_on
from boomsim.figures.svg_elements import document
from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.scene_sentences import configuration
from boomsim.lab.views.side_elevation import side_view
from boomsim.lab.views.stylesheet import definitions, type_scale
from boomsim.lab.views.svg_text import Box, line, rect, text, view, white, wrapped
from boomsim.rating.comparison.difference_account import Account, Difference, account, difference
from boomsim.rating.limits.limit_sentences import what_happens
from boomsim.rating.mass_sums import in_steps, scale_of
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import letter
from boomsim.units import show_rated

WIDTH, HEIGHT = 1040.0, 312.0
WORTH_SAYING, MOST_PARTS = 1e-3, 7
"""Parts of a difference that make less of it than this share of the capacity are summed up [1]."""

NOW = -1
"""Stands for the scene of the sliders among the held ones."""


@lru_cache(maxsize=512)
def account_at(setup: Setup, extension: tuple[float, ...], radius: float) -> Account | None:
    """Account for one capacity, once.

    Parameters
    ----------
    extension : tuple of float
        [1]
    radius : float
        [m]
    """
    if not radius > 0.0:
        return None
    return account(setup, extension=np.array(extension), radius=radius)


def apart(first: Answer, second: Answer) -> Difference | None:
    """Difference of two rated capacities, part by part.

    Returns
    -------
    Difference or None
        None where one of them has no capacity
    """
    sides = [account_at(one.setup, one.scene.extension, one.radius) for one in (first, second)]
    if sides[0] is None or sides[1] is None:
        return None
    return difference(sides[0], sides[1], radius=first.radius)


def held_picture(
    live: Answer, held: tuple[Answer, ...], look: Look, *, pair: tuple[int, int], uid: str
) -> str:
    """Draw up to three held scenes beside one another, and one difference.

    Parameters
    ----------
    pair : (int, int)
        Which two to explain; `NOW` is the live scene

    Returns
    -------
    str
        An SVG element
    """
    parts = []
    for k, one in enumerate(held[:3]):
        box = Box(x=8 + 230 * k, y=6, width=216, height=276)
        parts += _column(one, live, look, box, k, uid)
    why = Box(x=8 + 230 * 3, y=6, width=WIDTH - 16 - 230 * 3, height=276)
    parts += _why(live, held, look, why, pair)
    caution = "".join(
        text(8, HEIGHT - 8, one, "caution", more=' style="font-size:11px"')
        for one in wrapped(CAUTION, most=400)
    )
    return document(
        definitions(1.0, uid),
        white(WIDTH, HEIGHT),
        *parts,
        caution,
        class_=uid,
        viewBox=f"0 0 {WIDTH:g} {HEIGHT:g}",
        width=f"{WIDTH:g}",
        height=f"{HEIGHT:g}",
        role="group",
        aria_label="Held scenes",
        data_held=len(held),
    )


def _column(one: Answer, live: Answer, look: Look, box: Box, number: int, uid: str) -> list[str]:
    colour = identity(number).colour
    parts = [
        rect(box.x, box.y, 22, 22, "", more=f' style="fill:{colour}"'),
        text(box.x + 11, box.y + 16, letter(number), "h m", more=f' style="fill:{ink_on(colour)}"'),
        text(box.x + 30, box.y + 16, configuration(one), "h"),
    ]
    pict = Box(x=box.x, y=box.y + 28, width=box.width, height=158)
    plain = Look(units=look.units)
    parts.append(side_view(one, plain, pict, uid=f"{uid}-{number}", small=True))
    y = pict.bottom + 20
    known = np.isfinite(one.capacity)
    carries = f"carries {show_rated(one.capacity, look.units)}" if known else "no capacity here"
    parts.append(text(box.x, y, carries, "h num", more=f' data-held-capacity="{one.capacity:.3f}"'))
    by = f"set by: {what_happens(one.first)}" if one.first else one.trouble
    for k, words in enumerate(wrapped(by, most=36)[:2]):
        parts.append(text(box.x, y + 17 + 14 * k, words, "s"))
    if known and np.isfinite(live.capacity):
        more = one.capacity - live.capacity
        sign = "+" if more >= 0 else "−"
        said = f"{sign}{say(abs(more), 'mass', look.units)} against now"
        same = abs(more) < 1e-4 * live.capacity
        parts.append(text(box.x, y + 49, "the same as now" if same else said, "t num"))
    parts.append(text(box.x, y + 64, _state(one, look), "s num"))
    return parts


def _state(one: Answer, look: Look) -> str:
    at = one.at
    if at is None or not one.solved:
        return ""
    bend = say(float(at.tip_deflection[0, 0]), "small_length", look.units)
    radius = say(float(at.radius[0, 0]), "length", look.units)
    return f"at {radius} with {say(one.scene.load, 'mass', look.units)}: bends {bend}"


def _why(
    live: Answer, held: tuple[Answer, ...], look: Look, box: Box, pair: tuple[int, int]
) -> list[str]:
    first, second = (live if k == NOW else held[k] for k in pair)
    names = ["now" if k == NOW else letter(k) for k in pair]
    found = apart(first, second)
    title = text(box.x, box.y + 16, f"Why {names[0]} and {names[1]} differ", "h")
    if found is None:
        return [title, text(box.x, box.y + 36, "One of them has no rated capacity here.", "s")]
    rows = difference_rows(found, names)
    parts = [title, *_bars(rows, written(found, rows, look.units), box, type_scale(Look()))]
    if not found.by_part:
        parts.append(
            text(box.x, box.bottom, "No load can tip the crane here: strength decides.", "s")
        )
    figures = written(found, rows, look.units)
    label = "; ".join(f"{row[0]} {said}" for row, said in zip(rows, figures, strict=True))
    return [view("difference", f"{names[0]} less {names[1]}, part by part: {label}.", parts)]


def difference_rows(found: Difference, names: list[str]) -> list[tuple[str, float, str]]:
    """Rows of a difference: words, kilograms and a class; the last is the sum of the others.

    Parameters
    ----------
    names : list of str
        Of the two

    Returns
    -------
    list of (str, float, str)
        Small shares are summed up as "the rest" [kg]
    """
    worth = WORTH_SAYING * max(found.first.capacity, found.second.capacity)
    rows = [(n, v, "tips") for n, v in found.by_part.items() if abs(v) >= worth]
    listed = rows[:MOST_PARTS]
    rest = sum(found.by_part.values()) - sum(v for _, v, _ in listed)
    if abs(rest) >= 0.2 * worth > 0.0:
        listed.append(("the rest", rest, "tips"))
    for name, taken in zip(names, found.by_structure, strict=True):
        if abs(taken) >= 0.2 * worth > 0.0:
            words = f"{name} held back" if found.by_part else f"{name} bears"
            listed.append((words, taken, "full"))
    return [*listed, (f"{names[0]} less {names[1]}", found.total, "solid")]


def written(found: Difference, rows: list[tuple[str, float, str]], units: str) -> list[str]:
    """Write the figures of a difference in one unit, so that they add up to the last of them.

    Parameters
    ----------
    rows : list of (str, float, str)
        From :func:`difference_rows` [kg]

    Returns
    -------
    list of str
        The last is the difference of the rated loads as they are written
    """
    scale = scale_of(max(found.first.capacity, found.second.capacity), units)
    total = scale.down(found.first.capacity) - scale.down(found.second.capacity)
    parts = in_steps({words: kg for words, kg, _ in rows[:-1]}, total=total, scale=scale)
    return [scale.signed(steps).replace("-", "−") for steps in (*parts.values(), total)]


def _bars(
    rows: list[tuple[str, float, str]], figures: list[str], box: Box, large: float
) -> list[str]:
    top, high = box.y + 30, min((box.height - 34) / len(rows), 24.0)
    name, figure = 112.0, 66.0
    span = box.width - name - figure
    values = [0.0, *(value for _, value, _ in rows)]
    low, most = min(values), max(values)
    scale = span / max(most - low, 1e-9)
    zero = box.x + name - low * scale
    parts = [line(zero, top, zero, top + high * len(rows), "thin")]
    for k, (words, value, kind) in enumerate(rows):
        y, last = top + k * high, k == len(rows) - 1
        bold = " b" if last else ""
        left, width = zero + min(value, 0.0) * scale, abs(value) * scale
        more = f' data-part-name="{words}" data-kg="{value:.3f}"'
        parts.append(text(box.x, y + high / 2 + 4, words, f"s solid{bold}"))
        parts.append(rect(left, y + 3, max(width, 0.8), high - 6, kind, more=more))
        parts.append(text(box.right, y + high / 2 + 4, figures[k], f"s e num solid{bold}"))
        if last:
            parts.append(line(box.x, y, box.right, y, "ink"))
    return parts
