"""Simulated candidates: each has some of the named misconceptions, the same in every variant.

Forty candidates, from one who has hardly any to one who has half of all. What each of them believes
follows from the words of the misconception alone, so that two variants meet the same class. Errors
are carried forward: a misconception costs the marks of its own step, and a choice costs all.
"""

from functools import lru_cache

from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.difficulty import ENDS, points_of
from boomsim.papers.problems.family import AnyFamily, ChoiceFamily, Family
from boomsim.papers.problems.paper_slots import Slot
from boomsim.papers.problems.problem import CHOICE

COUNT = 40
"""Simulated candidates [1]."""
MOST = 0.5
"""Share of all misconceptions that the weakest of them has [1]."""
FINE = 10_000


@lru_cache(maxsize=4096)
def believed(family: str, words: tuple[str, ...]) -> tuple[str, ...]:
    """Find which misconception each candidate shows in a family.

    Parameters
    ----------
    family : str
        Id
    words : tuple of str
        Its misconceptions

    Returns
    -------
    tuple of str
        By candidate; "" where there is none
    """
    return tuple(_shown(candidate, family, words) for candidate in range(COUNT))


def _shown(candidate: int, family: str, words: tuple[str, ...]) -> str:
    """Of those that a candidate has, the one that the candidate is surest of; "" for none."""
    share = MOST * (candidate + 1) / COUNT
    dice = {one: Chance("simulated", candidate, family, one).integer(FINE) / FINE for one in words}
    # Each alone would come up in `share` of the candidates, were there but one in a family.
    least = 1.0 - (1.0 - share) ** (1.0 / max(len(words), 1))
    held = [one for one in words if dice[one] < least]
    return min(held, key=lambda one: dice[one], default="")


@lru_cache(maxsize=512)
def points(family: AnyFamily) -> int:
    """Effort of a family on the finer scale behind its difficulty.

    Returns
    -------
    int
        Of a choice in words the most points of its difficulty [1]
    """
    if isinstance(family, Family):
        return points_of(tuple(step.formula for step in family.steps))
    return (*ENDS, ENDS[-1] + 2)[family.difficulty - 1]


@lru_cache(maxsize=1024)
def expected(slot: Slot) -> float:
    """Mean marks of the simulated candidates, from the family alone.

    Returns
    -------
    float
        [1]
    """
    family = slot.family
    if isinstance(family, ChoiceFamily):  # its misconceptions are known only with its numbers
        return slot.marks * (1.0 - MOST * (COUNT + 1) / (2 * COUNT))
    costs = {
        slip.words: slot.marks if slot.form == CHOICE else _worth(family, str(slip.step))
        for slip in family.slips
    }
    lost = sum(costs.get(words, 0) for words in believed(family.id, tuple(costs)))
    return slot.marks - lost / COUNT


def _worth(family: Family, name: str) -> int:
    """Marks of a step [1]."""
    return next(step.marks for step in family.steps if step.name == name)
