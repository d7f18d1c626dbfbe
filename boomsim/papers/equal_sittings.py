"""Sittings of one blueprint are alike: equal marks and equal difficulty, whatever the seed.

Where a blueprint leaves the marks of a part free, topics take turns, and the marks and difficulties
that come up most often then are those of every sitting: they follow from the blueprint alone.
"""

from collections import Counter
from collections.abc import Iterable
from functools import lru_cache

from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.paper_slots import Slot

SAMPLES = 200
"""Choices looked at to find what comes up most often [1]."""
TRIES = 2000
"""Choices thrown for one sitting before one of the samples is taken [1]."""

_Sums = tuple[int, int]


@lru_cache(maxsize=256)
def alike(
    offers: tuple[Slot, ...], questions: int, path: tuple[str | int, ...]
) -> tuple[Slot, ...]:
    """Choose questions whose marks and difficulty are those of every sitting.

    Parameters
    ----------
    offers : tuple of Slot
        All that a part may choose from
    questions : int
        How many [1]
    path : tuple
        Of the dice: seed and number of the part
    """
    wanted, samples = _usual(offers, questions)
    dice = Chance(*path)
    for _ in range(TRIES):
        chosen = _thrown(offers, questions, dice)
        if sums_of(chosen) == wanted:
            return chosen
    return dice.pick(samples)


@lru_cache(maxsize=256)
def _usual(offers: tuple[Slot, ...], questions: int) -> tuple[_Sums, tuple[tuple[Slot, ...], ...]]:
    """Find the sums that come up most often, the smaller of equals, and choices that have them."""
    dice = Chance("every sitting", questions, *(slot.family.id for slot in offers))
    samples = [_thrown(offers, questions, dice) for _ in range(SAMPLES)]
    counts = Counter(map(sums_of, samples))
    wanted = min(counts, key=lambda sums: (-counts[sums], sums))
    return wanted, tuple(one for one in samples if sums_of(one) == wanted)


def _thrown(offers: tuple[Slot, ...], questions: int, dice: Chance) -> tuple[Slot, ...]:
    """Choose by turns: none a second time before all have been used, and all topics alike."""
    rounds = range(-(-questions // len(offers)))
    return tuple(slot for _ in rounds for slot in by_turns(dice.shuffled(offers)))[:questions]


def by_turns(slots: Iterable[Slot]) -> list[Slot]:
    """Let the topics of a part take turns, so that no one of them has it all."""
    turns: Counter[str] = Counter()
    ranked = []
    for slot in slots:
        ranked.append((turns[slot.family.topic], slot))
        turns[slot.family.topic] += 1
    return [slot for _, slot in sorted(ranked, key=lambda one: one[0])]


def sums_of(slots: Iterable[Slot]) -> _Sums:
    """Add up marks and difficulty.

    Returns
    -------
    int, int
        [1]
    """
    both = [(slot.marks, slot.family.difficulty) for slot in slots]
    return sum(marks for marks, _ in both), sum(difficulty for _, difficulty in both)
