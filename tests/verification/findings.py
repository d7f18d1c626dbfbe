"""What single numbers do not tell: random states against finite elements, and convergence."""

from typing import Any

import numpy as np
from verification.record import Record
from verification.text import Lines, number, percent, table

NAMES = {
    "moment": "section moment at each mouth, over the largest",
    "front_pad": "front-pad force, over the largest pad force",
    "rear_pad": "rear-pad force, over the largest pad force",
    "deflection": "tip deflection",
    "front_pad_side": "front-pad force sideways, over the largest",
    "sway": "sway of the head",
}
INTRODUCTION = (
    "Machines, configurations, angles and loads are drawn at random and solved twice: by boomsim,"
    " and by a corotational finite-element model that is built from the machine's data alone."
    " Sections bend, shear and stretch in both."
)
PICTURE_WORDS = (
    "Each mark is a state; above the line it misses the promise, in red with its number."
    " Deviations below 0.0001 % are drawn there."
)


def misses(study: dict[str, Any]) -> Lines:
    """What a study of random states misses of what it is held to."""
    lines = []
    for name, promise in study["promises"].items():
        values = np.array(study["found"][name])
        order = [k for k in np.argsort(-values) if values[k] >= promise]
        if order:
            seeds = ", ".join(f"number {study['seeds'][k]} ({percent(values[k])})" for k in order)
            lines.append(
                f"- Finite elements, {study['title']}: {NAMES[name]} misses {percent(promise)} in"
                f" {len(order)} of {len(values)} states: {seeds}."
            )
    return lines


def deviations(record: Record, *, picture: bool) -> Lines:
    """Random machines and states against finite-element programs."""
    studies = record.of_kind("deviations")
    if not studies:
        return []
    head = ["states", "quantity", "held to", "within", "median", "95 of 100", "worst"]
    rows = [line for study in studies for line in _quantities(study)]
    drawn = [_drawn(study) for study in studies]
    shown = _image("deviations", "Deviation of each random state over its bending", picture)
    return [
        "## Random machines against finite elements",
        "",
        INTRODUCTION,
        "",
        *drawn,
        "",
        *shown,
        *([PICTURE_WORDS, ""] if picture else []),
        *table(head, rows, right=2),
    ]


def _drawn(study: dict[str, Any]) -> str:
    about = f"; {study['about']}" if study.get("about") else ""
    return f"- {study['title']}: {study['drawn']} drawn, {len(study['seeds'])} counted{about}"


def _quantities(study: dict[str, Any]) -> list[list[str]]:
    made = []
    for name, promise in study["promises"].items():
        values = np.array(study["found"][name])
        within = f"{number(int((values < promise).sum()))} of {len(values)}"
        shown = [float(np.median(values)), float(np.percentile(values, 95)), float(values.max())]
        held = percent(promise) + ("" if study.get("promised", True) else " (no promise)")
        made.append([study["title"], NAMES[name], held, within, *map(percent, shown)])
    return made


def convergence(record: Record, *, picture: bool) -> Lines:
    """How fast errors fall."""
    studies = record.of_kind("convergence")
    if not studies:
        return []
    head = ["study", "against", "size", "errors, coarse to fine", "slope", "expected"]
    return [
        "## Convergence",
        "",
        "A slope is that of the error over the size, both as logarithms: the order of the rule."
        " The reference program is refined too, for its own error is part of the comparison"
        " above.",
        "",
        *_image("convergence", "Error over size, with lines of the expected slope", picture),
        *table(head, map(_convergence, studies), right=4),
    ]


def _convergence(study: dict[str, Any]) -> list[str]:
    pairs = sorted(zip(study["sizes"], study["errors"], strict=True), reverse=True)
    errors = "; ".join(f"{percent(abs(error))} at {size:.3g}" for size, error in pairs)
    slopes = [f"{study['slope']:.2f}", f"{study['expected']:.0f}"]
    return [study["title"], study["against"], study["size"], errors, *slopes]


def _image(name: str, words: str, drawn: bool) -> Lines:
    return [f"![{words}](verification-{name}.svg)", ""] if drawn else []
