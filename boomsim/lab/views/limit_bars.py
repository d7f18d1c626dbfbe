"""How much of every limit is used: a bar for each, by section and for the whole crane."""

from heapq import nsmallest
from math import isfinite

import numpy as np

from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.scene_sentences import percent
from boomsim.lab.views.stylesheet import level
from boomsim.lab.views.svg_text import Box, rect, text, view
from boomsim.machine.part_names import section_name
from boomsim.rating.limits.limit_kind import WHOLE, Kind, Limit
from boomsim.rating.limits.limit_sentences import what_happens


def limits_view(answer: Answer, look: Look, box: Box) -> str:
    """Draw it.

    Returns
    -------
    str
        SVG
    """
    limits = fixed(answer.setup).limits
    utilisations = np.full(len(limits), np.nan)
    if answer.at is not None and answer.solved:
        utilisations = answer.at.utilisation[:, 0, 0]
    found = dict(zip(fixed(answer.setup).keys, utilisations.tolist(), strict=True))
    parts = _grid(answer, box, found) if not look.projector else []
    parts += _whole(answer, look, box, found)
    return view("limits", _label(answer, limits, found), parts)


def _label(answer: Answer, limits: tuple[Limit, ...], found: dict[str, float]) -> str:
    keyed = zip(fixed(answer.setup).keys, limits, strict=True)
    order = nsmallest(6, keyed, key=lambda one: -_known(found[one[0]]))
    said = "; ".join(f"{limit.words} {percent(found[key])}" for key, limit in order)
    first = f" The rated load is set by: {what_happens(answer.first)}." if answer.first else ""
    return f"Utilisation of every limit, the greatest first: {said}.{first}"


def _known(utilisation: float) -> float:
    return utilisation if utilisation == utilisation else -1.0


def _grid(answer: Answer, box: Box, found: dict[str, float]) -> list[str]:
    sections = len(answer.setup.machine.boom.sections)
    name = 78.0
    kinds = _of_sections(answer)
    wide = (box.width - name) / len(kinds)
    parts = [text(box.x, box.y + 12, "Utilisation of every limit", "h")]
    for k, kind in enumerate(kinds):
        x = box.x + name + (k + 0.5) * wide - 2
        above, _, below = kind.short.partition(" ")
        parts.append(text(x, box.y + 32, above, "xs m"))
        parts.append(text(x, box.y + 44, below, "xs m"))
    high = _row(sections)
    for i in range(sections):
        y = box.y + 50 + i * high
        parts.append(text(box.x, y + high / 2 + 3, section_name(i), "t"))
        for k, kind in enumerate(kinds):
            key = f"{kind.name} {i}"
            utilisation = found.get(key)
            if utilisation is not None:
                cell = Box(x=box.x + name + k * wide, y=y + 2, width=wide - 5, height=high - 6)
                parts += _bar(cell, utilisation, key, answer)
                bold = _said(utilisation, key, answer)[1]
                middle = cell.x + cell.width / 2, cell.y + cell.height / 2 + 4.2
                parts.append(text(*middle, percent(utilisation), f"s num halo solid m{bold}"))
    return parts


def _of_sections(answer: Answer) -> list[Kind]:
    return [kind for kind in answer.setup.kinds if kind.of != WHOLE]


def _row(sections: int) -> float:
    return min(32.0, 165.0 / sections)


def _whole(answer: Answer, look: Look, box: Box, found: dict[str, float]) -> list[str]:
    support = answer.setup.support
    kinds = [k for k in answer.setup.kinds if k.of == WHOLE and k.is_about(support)]
    rows = [(kind.name, kind.short, found[kind.name]) for kind in kinds]
    if look.projector:
        return _large(answer, box, [*_largest(answer, found), *rows])
    sections = len(answer.setup.machine.boom.sections)
    top, parts = box.y + 50 + sections * _row(sections) + 12, []
    high = min((box.bottom - top) / len(rows), 30.0)
    for k, (key, words, utilisation) in enumerate(rows):
        y = top + k * high
        cell = Box(x=box.x + 138, y=y + 2, width=box.width - 216, height=high - 6)
        parts.append(text(box.x, y + high / 2 + 4, words, "t"))
        parts += _bar(cell, utilisation, key, answer)
        said, bold = _said(utilisation, key, answer)
        parts.append(text(cell.right + 8, cell.y + cell.height / 2 + 4.2, said, f"t num{bold}"))
    return parts


def _large(answer: Answer, box: Box, rows: list[tuple[str, str, float]]) -> list[str]:
    """For a projector: words over a bar as wide as the box."""
    high, parts = box.height / len(rows), []
    for k, (key, words, utilisation) in enumerate(rows):
        y = box.y + k * high
        said, bold = _said(utilisation, key, answer)
        parts.append(text(box.x, y + 17, words, "t" + bold))
        parts.append(text(box.right - 4, y + 17, said, f"t e num{bold}"))
        cell = Box(x=box.x, y=y + 24, width=box.width - 4, height=max(high - 32, 6.0))
        parts += _bar(cell, utilisation, key, answer)
    return parts


def _said(utilisation: float, key: str, answer: Answer) -> tuple[str, str]:
    first = answer.first is not None and answer.first.key == key
    return percent(utilisation) + (" first" if first else ""), " b" if first else ""


def _largest(answer: Answer, found: dict[str, float]) -> list[tuple[str, str, float]]:
    """Of each section the limit that is used most."""
    rows, kinds = [], _of_sections(answer)
    for i in range(len(answer.setup.machine.boom.sections)):
        known = {kind: found[f"{kind.name} {i}"] for kind in kinds if f"{kind.name} {i}" in found}
        kind = max(known, key=lambda one: _known(known[one]))
        rows.append((f"{kind.name} {i}", f"{section_name(i)}: {kind.short}", known[kind]))
    return rows


def _bar(cell: Box, utilisation: float, key: str, answer: Answer) -> list[str]:
    """Draw a trough, filled so far; the one that sets the rated load has a heavy frame."""
    known = utilisation if isfinite(utilisation) else (1.0 if utilisation > 0 else 0.0)
    tips = known <= 1.0 and key in fixed(answer.setup).of_stability
    more = f' data-limit="{key}" data-utilisation="{utilisation:.4f}"'
    width = cell.width * min(max(known, 0.0), 1.0)
    fill = "tips" if tips else level(known)
    parts = [
        rect(cell.x, cell.y, cell.width, cell.height, "trough"),
        rect(cell.x, cell.y, width, cell.height, fill, more=more),
    ]
    if answer.first is not None and answer.first.key == key:
        more = ' data-part="first"'
        parts.append(
            rect(cell.x - 1, cell.y - 1, cell.width + 2, cell.height + 2, "first", more=more)
        )
    return parts
