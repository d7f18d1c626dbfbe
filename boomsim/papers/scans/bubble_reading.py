"""From the darkness of bubbles to an answer, or to the reason why there is none.

What is neither clearly filled nor clearly empty is never guessed: the answer is left to a person.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from boomsim.papers.scans.sheet_finding import Found, Grey
from boomsim.papers.scans.sheet_layout import (
    CANDIDATE,
    CELL_SIDE,
    LETTER,
    RADIUS,
    Field,
    SheetPage,
)  # fmt: skip
from boomsim.papers.scans.sheet_strip import places, read_cells

FILLED, EMPTY = 0.52, 0.2
"""Share of a bubble that is dark: at least so much is a mark, at most so much is none [1]."""
PALE, DARK = 0.18, 0.5
"""Darkness that does not count, and that counts fully, against the black of the corners [1]."""

_STEPS = np.linspace(-1.0, 1.0, 9)
_DX, _DY = (one.ravel() for one in np.meshgrid(_STEPS, _STEPS))
_DISC = np.stack([_DX, _DY])[:, np.hypot(_DX, _DY) <= 1.0]
"""Points of a disc of radius 1."""
INSIDE = 0.74
"""Radius that is looked at, against that of a bubble: its line is left out [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What one field says.

    Attributes
    ----------
    label : str
        "1a"
    text : str
        As a candidate would have typed it; "" if blank
    doubt : str
        Why a person has to look at it; "" if it is certain
    """

    label: str
    text: str
    doubt: str = ""


def strip_in(found: Found) -> tuple[str, int]:
    """Read the strip of a page.

    Returns
    -------
    (str, int)
        Check code and page; ("", 0) if it cannot be read for certain
    """
    cells = _dark(found, np.array(places()), CELL_SIDE / 2)
    if np.any((cells > 0.3) & (cells < 0.6)):
        return "", 0
    return read_cells([bool(one > 0.5) for one in cells])


def answers_in(found: Found, page: SheetPage, *, sign: str) -> list[Answer]:
    """Read all fields of a page.

    Parameters
    ----------
    sign : str
        Decimal sign that is written: "." or ","

    Returns
    -------
    list of Answer
        The candidate's number first
    """
    bubbles = [b for field in page.fields for column in field.columns for b in column]
    dark = _dark(found, np.array([(b.x, b.y) for b in bubbles]), RADIUS)
    of = {id(one): float(share) for one, share in zip(bubbles, dark, strict=True)}
    return [_answer(field, of, sign) for field in page.fields]


def _dark(found: Found, centres: NDArray[np.float64], radius: float) -> Grey:
    """Share of each disc that is dark [1]."""
    dx, dy = _DISC * radius * INSIDE
    points = found.at(centres[:, :1] + dx, centres[:, 1:] + dy)
    shares = np.clip((points - PALE) / (DARK - PALE), 0.0, 1.0).mean(axis=1)
    return np.asarray(shares, dtype=np.float32)


def _answer(field: Field, dark: dict[int, float], sign: str) -> Answer:
    """Read one field."""
    said, doubts = [], []
    for place, column in enumerate(field.columns, start=1):
        marked = [one.says for one in column if dark[id(one)] >= FILLED]
        unsure = [one.says for one in column if EMPTY < dark[id(one)] < FILLED]
        said.append(marked[0] if marked else "")
        if len(marked) > 1:
            doubts.append(f"{' and '.join(marked)} are filled{_where(field, place)}")
        if unsure:
            verb = "is" if len(unsure) == 1 else "are"
            doubts.append(f"{' and '.join(unsure)} {verb} not clearly filled{_where(field, place)}")
    text, doubt = _TEXTS[field.kind](said, field) if field.kind in _TEXTS else _number(said, sign)
    return Answer(label=field.label, text=text, doubt="; ".join(doubts) or doubt)


def _where(field: Field, place: int) -> str:
    """Name the column of a block."""
    if field.kind == LETTER:
        return ""
    columns = place if field.kind == CANDIDATE else place - 2
    return f" in column {columns}" if columns > 0 else ""


def _letter(said: list[str], _: Field) -> tuple[str, str]:
    return said[0], ""


def _candidate(said: list[str], _: Field) -> tuple[str, str]:
    """Digits from the left without a gap."""
    text = "".join(said)
    if not text:
        return "", "no number of a candidate is filled in"
    return text, "" if not any(said[len(text) :]) else "a column between two digits is empty"


_TEXTS = {LETTER: _letter, CANDIDATE: _candidate}


def _number(said: list[str], sign: str) -> tuple[str, str]:
    """Sign, digits and unit, as they would be typed."""
    minus, unit, *digits = said
    text = "".join(digits)
    if not text:
        alone = minus or unit
        return "", "there is a sign or a unit and no number" if alone else ""
    whole = f"{minus}{text.replace('.', sign)} {unit}".strip()
    filled = [place for place, one in enumerate(digits) if one]
    if filled[-1] - filled[0] + 1 > len(filled):
        return whole, "a column between two digits is empty"
    if text.count(".") > 1:
        return whole, "there are two decimal points"
    if not text.strip("."):
        return whole, "there is a decimal point and no digit"
    return whole, ""
