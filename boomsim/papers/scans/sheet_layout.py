"""Where everything stands on an answer sheet: one plan for the printer and for the reader.

Lengths are millimetres from the upper left corner of the page. A choice is a row of bubbles, a
number a block of columns, each with a decimal point and ten digits, beside a column with a minus
sign and the units that may be meant.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from boomsim.papers.numbers.printed_units import FACTORS, US, Unit
from boomsim.papers.paper import Asked, Question

VERSION = 1
"""Of this plan: a sheet of another one is not read."""

PAGES = {"a4": (210.0, 297.0), "us-letter": (215.9, 279.4)}
"""Width and height by the name of the paper [mm]."""
EDGE, SQUARE = 13.0, 8.0
"""Centre of a corner mark from both edges, and its side [mm]."""
RADIUS = 1.75
"""Of a bubble [mm]."""
ACROSS, DOWN = 4.8, 4.4
"""From column to column and from row to row of a block [mm]."""
COLUMNS, DIGITS = 6, ".0123456789"
NUMBER_OF_CANDIDATE = 6
"""Digits of a candidate's number [1]."""
MOST_UNITS = 5
LEFT, TOP, FOOT = 20.0, 75.0, 16.0
"""Where answers begin, and what stays free below them [mm]."""
BLOCK = (42.5, 59.2)
"""Room of one number [mm]."""
ROW = (42.5, 6.4)
"""Room of one choice [mm]."""
STRIP = (26.0, 20.0)
"""Upper left corner of the strip of black cells [mm]."""
CELL, CELL_SIDE, CELL_ROWS = 3.4, 2.2, 2

LETTER, NUMBER, CANDIDATE = "letter", "number", "candidate"

_US_PARTS = ("ft", "in", "lb", "kip", "psi", "ksi", "mph")


@dataclass(frozen=True, slots=True, kw_only=True)
class Bubble:
    """One bubble.

    Attributes
    ----------
    x, y : float
        Centre [mm]
    says : str
        What it means when it is filled
    """

    x: float
    y: float
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """What is read as one answer.

    Attributes
    ----------
    label : str
        "1a"; "candidate" for the number of the candidate
    kind : str
        "letter", "number" or "candidate"
    columns : tuple of tuple of Bubble
        In each at most one may be filled; of a number the first has the minus sign alone, the
        second the units
    box : tuple of four float
        Left, top, width and height [mm]
    unit : str
        Printed unit of a number
    """

    label: str
    kind: str
    columns: tuple[tuple[Bubble, ...], ...]
    box: tuple[float, float, float, float]
    unit: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPage:
    """One page of an answer sheet.

    Attributes
    ----------
    number : int
        From 1 [1]
    size : tuple of two float
        Width and height [mm]
    fields : tuple of Field
        The candidate's number first: it stands on every page
    """

    number: int
    size: tuple[float, float]
    fields: tuple[Field, ...]

    @property
    def corners(self) -> tuple[tuple[float, float], ...]:
        """Centres of the corner marks, clockwise from the upper left [mm]."""
        return corners_of(self.size)


def corners_of(size: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    """Find the centres of the corner marks, clockwise from the upper left.

    Parameters
    ----------
    size : tuple of two float
        Of the page [mm]

    Returns
    -------
    tuple of (float, float)
        [mm]
    """
    width, height = size
    return (
        (EDGE, EDGE), (width - EDGE, EDGE), (width - EDGE, height - EDGE), (EDGE, height - EDGE),
    )  # fmt: skip


def paper_name(units: str) -> str:
    """Name the paper on which a unit system prints.

    Returns
    -------
    str
        "a4" or "us-letter"
    """
    return "us-letter" if units == US else "a4"


def sheet_pages(questions: Sequence[Question], *, units: str) -> tuple[SheetPage, ...]:
    """Lay out the answer sheet of one variant.

    Returns
    -------
    tuple of SheetPage
        Choices first, then numbers, each in the order of the paper
    """
    size = PAGES[paper_name(units)]
    places = _Places(size)
    found: dict[int, list[Field]] = {}
    for one in questions:
        if one.is_choice:
            page, x, y = places.next(ROW)
            found.setdefault(page, []).append(_choice(one, x, y))
    places.new_line()
    for one in questions:
        for asked in one.asked:
            page, x, y = places.next(BLOCK)
            found.setdefault(page, []).append(_number(asked, x, y, units))
    return tuple(
        SheetPage(number=page + 1, size=size, fields=(_candidate(size), *fields))
        for page, fields in found.items()
    )


class _Places:
    """Fills a page line by line, and the next one when it is full."""

    def __init__(self, size: tuple[float, float]) -> None:
        self.size = size
        self.page, self.x, self.y, self.height = 0, LEFT, TOP, 0.0

    def next(self, room: tuple[float, float]) -> tuple[int, float, float]:
        """Page and upper left corner of the next room."""
        width, height = room
        if self.x + width > self.size[0] - LEFT + 1e-6:
            self.new_line()
        if self.y + height > self.size[1] - FOOT:
            self.page, self.x, self.y, self.height = self.page + 1, LEFT, TOP, 0.0
        at = (self.page, self.x, self.y)
        self.x, self.height = self.x + width, max(self.height, height)
        return at

    def new_line(self) -> None:
        """Go on below what has been placed."""
        self.x, self.y, self.height = LEFT, self.y + self.height, 0.0


def _choice(one: Question, x: float, y: float) -> Field:
    """Row of letters behind the number of the question."""
    letters = [choice.letter for choice in one.problem.choices]
    row = tuple(
        Bubble(x=x + 11.0 + 6.4 * place, y=y + ROW[1] / 2, says=letter)
        for place, letter in enumerate(letters)
    )
    return Field(
        label=str(one.number), kind=LETTER, columns=(row,), box=(x, y, ROW[0] - 2.0, ROW[1])
    )


def _number(asked: Asked, x: float, y: float, units: str) -> Field:
    """Block of one number."""
    unit = asked.step.unit(asked.system)
    top = y + 11.8
    aside = x + 2.2
    names = units_of(unit, units=units)
    minus = (Bubble(x=aside, y=top, says="-"),)
    named = tuple(
        Bubble(x=aside, y=top + DOWN * (2 + 1.9 * place), says=name)
        for place, name in enumerate(names)
    )
    digits = _digits(x + 13.4, top, COLUMNS, DIGITS)
    return Field(
        label=asked.label, kind=NUMBER, columns=(minus, named, *digits),
        box=(x, y, BLOCK[0] - 1.5, BLOCK[1] - 0.8), unit=unit.name,
    )  # fmt: skip


def _candidate(size: tuple[float, float]) -> Field:
    """Block of the candidate's number, in the upper right corner."""
    left, top = size[0] - 56.0, 29.5
    columns = _digits(left, top, NUMBER_OF_CANDIDATE, DIGITS[1:])
    width = ACROSS * NUMBER_OF_CANDIDATE
    return Field(
        label=CANDIDATE, kind=CANDIDATE, columns=columns,
        box=(left - ACROSS / 2, top - 8.5, width, 8.5 + DOWN * 10),
    )  # fmt: skip


def _digits(x: float, y: float, count: int, signs: str) -> tuple[tuple[Bubble, ...], ...]:
    """Columns of bubbles."""
    return tuple(
        tuple(
            Bubble(x=x + ACROSS * column, y=y + DOWN * row, says=sign)
            for row, sign in enumerate(signs)
        )
        for column in range(count)
    )


def units_of(unit: Unit, *, units: str) -> tuple[str, ...]:
    """List the units that a sheet offers: the printed one first, then others of its system.

    Parameters
    ----------
    unit : Unit
        Printed beside the answer line

    Returns
    -------
    tuple of str
        At most `MOST_UNITS`; none where only one is possible
    """
    others = [name for name in FACTORS[unit.si] if name and name != unit.name]
    same = [name for name in others if _is_us(name) == (units == US)]
    names = (unit.name, *same)[:MOST_UNITS] if unit.name else ()
    return names if len(names) > 1 else ()


def _is_us(name: str) -> bool:
    """Whether a unit is of the US customary ones."""
    words = name.replace("/", "*").replace("^", "*").split("*")
    return any(word.startswith(part) for word in words for part in _US_PARTS)
