"""What a class did with each question: facility, discrimination, and every wrong way by thirds.

A question is told by its family, and by its place among those of the same family, so that variants
with shuffled questions are counted together.
"""

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from boomsim.papers.board.class_thirds import LOWER, UPPER, thirds
from boomsim.papers.family_registry import family_named
from boomsim.papers.marking.class_figures import NAN, discrimination
from boomsim.papers.marking.mark_class import CandidateMark, Marked
from boomsim.papers.marking.mark_question import BLANK, REFUSED, QuestionMark

FULL, OTHER, EMPTY, UNREAD = (
    "all marks", "marks lost in no known way", "left blank", "could not be read",
)  # fmt: skip
Counts = tuple[int, int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to answer a question, and how many of the lower, middle and upper third took it.

    Attributes
    ----------
    words : str
        A slip, a wrong choice by its misconception, or one of four ways that any question has
    counts : tuple of int
        Lower, middle and upper third [1]
    is_slip : bool
        Whether it is a named misconception
    """

    words: str
    counts: Counts
    is_slip: bool

    @property
    def count(self) -> int:
        """All candidates who took it [1]."""
        return sum(self.counts)

    @property
    def draws_the_best(self) -> bool:
        """Whether more of the upper third than of the lower took this wrong way."""
        return self.is_slip and self.counts[UPPER] > self.counts[LOWER]


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One question over a class.

    Attributes
    ----------
    key : str
        Family, with a number from the second of the same family on
    numbers : str
        Number in the papers; "" where variants number it differently
    most, count : int
        Marks, and candidates who had it [1]
    facility : float
        Mean share of its marks [1]
    discrimination : float
        Correlation with the rest of the paper; NaN where it cannot be told [1]
    """

    key: str
    numbers: str
    title: str
    topic: str
    most: int
    count: int
    facility: float
    discrimination: float
    ways: tuple[Way, ...]

    @property
    def name(self) -> str:
        """Number, or what tells it where numbers differ."""
        return self.numbers or self.key


@dataclass(frozen=True, slots=True, kw_only=True)
class _Seen:
    """One question of one candidate."""

    mark: QuestionMark
    third: int
    rest: float
    offered: tuple[str, ...]


def items(marked: Marked) -> tuple[Item, ...]:
    """Look at every question of a marked class.

    Returns
    -------
    tuple of Item
        In the order in which the first candidate meets them
    """
    places = thirds([one.marks / one.most for one in marked.candidates])
    offers = {name: _offers(marked, name) for name in {one.variant for one in marked.candidates}}
    seen: dict[str, list[_Seen]] = {}
    for one, third in zip(marked.candidates, places, strict=True):
        for key, mark in keyed(one.questions):
            offered = offers[one.variant][mark.number]
            rest = _rest(one, mark)
            seen.setdefault(key, []).append(
                _Seen(mark=mark, third=third, rest=rest, offered=offered)
            )
    return tuple(_item(key, found) for key, found in seen.items())


def keyed(questions: Sequence[QuestionMark]) -> Iterator[tuple[str, QuestionMark]]:
    """Tell the questions of a paper by family, and by place among those of one family."""
    times: Counter[str] = Counter()
    for mark in questions:
        times[mark.family] += 1
        again = times[mark.family]
        yield mark.family if again == 1 else f"{mark.family} {again}", mark


def same_paper(candidates: Sequence[CandidateMark]) -> list[list[float]] | None:
    """Marks by candidate and question, where all have the same questions.

    Returns
    -------
    list of list of float, or None
        None where variants have other families
    """
    tables = [{key: float(mark.marks) for key, mark in keyed(one.questions)} for one in candidates]
    if any(table.keys() != tables[0].keys() for table in tables):
        return None
    return [[table[key] for key in tables[0]] for table in tables]


def _offers(marked: Marked, variant: str) -> dict[int, tuple[str, ...]]:
    """Misconceptions behind the wrong choices of each question of a variant."""
    entries = next(one.questions for one in marked.key.variants if one.variant == variant)
    return {one.number: tuple(filter(None, one.choices.values())) for one in entries}


def _rest(one: CandidateMark, mark: QuestionMark) -> float:
    """Share of all other marks; NaN where there are none [1]."""
    others = one.most - mark.most
    return (one.marks - mark.marks) / others if others else NAN


def _item(key: str, found: Sequence[_Seen]) -> Item:
    """Figures of one question."""
    first = found[0].mark
    shares = [one.mark.marks / one.mark.most for one in found]
    numbers = {one.mark.number for one in found}
    return Item(
        key=key, numbers=str(first.number) if len(numbers) == 1 else "", title=first.title,
        topic=family_named(first.family).topic, most=first.most, count=len(found),
        facility=math.fsum(shares) / len(shares),
        discrimination=discrimination(shares, [one.rest for one in found]),
        ways=tuple(_ways(found)),
    )  # fmt: skip


def _ways(found: Sequence[_Seen]) -> Iterator[Way]:
    """All ways in which the class answered, the usual ones first, then slips by frequency."""
    usual: dict[str, list[int]] = {words: [0, 0, 0] for words in (FULL, OTHER, EMPTY, UNREAD)}
    slips: dict[str, list[int]] = {}
    for one in found:
        slips.update((words, [0, 0, 0]) for words in one.offered if words not in slips)
        for words in one.mark.slips:
            slips.setdefault(words, [0, 0, 0])
        for words in dict.fromkeys(one.mark.slips):
            slips[words][one.third] += 1
        if not one.mark.slips:
            usual[_without_slip(one.mark)][one.third] += 1
    yield _way(FULL, usual, slip=False)
    for words in sorted(slips, key=lambda one: (-sum(slips[one]), one)):
        yield _way(words, slips, slip=True)
    yield from (_way(words, usual, slip=False) for words in (OTHER, EMPTY, UNREAD))


def _way(words: str, counts: Mapping[str, list[int]], *, slip: bool) -> Way:
    """Make a way of its counts."""
    lower, middle, upper = counts[words]
    return Way(words=words, counts=(lower, middle, upper), is_slip=slip)


def _without_slip(mark: QuestionMark) -> str:
    """How a question without a named slip was answered."""
    kinds = {part.status for part in mark.parts}
    if REFUSED in kinds:
        return UNREAD
    if mark.marks == mark.most:
        return FULL
    return EMPTY if kinds == {BLANK} else OTHER
