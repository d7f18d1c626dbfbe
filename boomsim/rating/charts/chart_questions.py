"""Questions on a chart book, to be answered before the figures are shown.

A number makes a question: the same book and number always give the same one.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256

import numpy as np

from boomsim.rating.charts.chart_book import Book

MOST_WAYS = 3
"""Ways to extend in one question."""

APART = 1.03
"""The right way lifts so many times what the next one does, or more: 3 % a class can see."""

TRIES = 200
"""Places tried for one question before the book is said to have none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Which of a few ways to extend lifts most at one radius.

    Attributes
    ----------
    number : int
        From 1
    chapter : int
        Of the book: how the crane is set up
    row : int
        Of the book's radii
    ways : tuple of int
        Configurations, in the order in which they are offered
    right : int
        Place among `ways` of the one that lifts most
    """

    number: int
    chapter: int
    row: int
    ways: tuple[int, ...]
    right: int


class _Draw:
    """Whole numbers that follow from a text, the same on every platform."""

    def __init__(self, seed: str) -> None:
        self.seed, self.drawn = seed, 0

    def below(self, count: int) -> int:
        """Draw a number from 0 to below a count."""
        self.drawn += 1
        digest = sha256(f"{self.seed}/{self.drawn}".encode()).digest()
        return int.from_bytes(digest[:8], "big") % count

    def some(self, values: list[int], count: int) -> list[int]:
        """Draw different values, in the order in which they come."""
        left = list(values)
        return [left.pop(self.below(len(left))) for _ in range(min(count, len(left)))]


def questions(book: Book, *, count: int) -> Iterator[Question]:
    """Ask questions on a book.

    Parameters
    ----------
    count : int
        How many at most [1]

    Yields
    ------
    Question
        Numbered from 1; none of a book that holds no two ways to compare
    """
    for number in range(1, count + 1):
        asked = question(book, number)
        if asked is None:
            return
        yield asked


def question(book: Book, number: int) -> Question | None:
    """Ask one question.

    Parameters
    ----------
    number : int
        From 1

    Returns
    -------
    Question or None
        None if no two ways differ enough wherever it was tried
    """
    draw = _Draw(f"{book.machine.name}/{number}")
    for _ in range(TRIES):
        chapter, row = draw.below(len(book.chapters)), draw.below(len(book.radii))
        steps = _steps(book, chapter, row)
        ways = _ways(book, steps, draw)
        offered = sorted((int(steps[way]) for way in ways), reverse=True)
        if len(ways) > 1 and offered[0] >= APART * offered[1]:
            right = max(range(len(ways)), key=lambda k: steps[ways[k]])
            return Question(number=number, chapter=chapter, row=row, ways=tuple(ways), right=right)
    return None


def _steps(book: Book, chapter: int, row: int) -> np.ndarray:
    """Capacities of all ways in one row of a chapter, -1 where blank."""
    chart = book.chapters[chapter].stated
    own = row - int(np.searchsorted(book.radii, chart.radii[0])) if len(chart.radii) else -1
    if not 0 <= own < len(chart.radii):
        return np.full(len(book.configurations.length), -1)
    return np.asarray(chart.steps[own])


def _ways(book: Book, steps: np.ndarray, draw: _Draw) -> list[int]:
    """Choose two or three ways: of one boom length where there are several, else of any."""
    groups = [
        [way for way in choice if steps[way] >= 0] for choice in book.chapters[0].best.choices
    ]
    several = [group for group in groups if len(group) > 1]
    among = several[draw.below(len(several))] if several else [w for g in groups for w in g]
    return draw.some(among, 2 + draw.below(MOST_WAYS - 1))
