"""Which families go into which variant: exact marks, and equal difficulty for everyone.

All variants of a part, in every sitting, have the same number of questions, the same marks and the
same sum of difficulties; with ``vary = "numbers"`` they have the same families too. With
``vary = "families"`` others are taken whose points of effort and whose marks for simulated
candidates are near the first variant's.
"""

import math

from boomsim.papers.blueprint import Blueprint, Part
from boomsim.papers.equal_sittings import alike, sums_of
from boomsim.papers.exact_sums import Worth, draw, reachable
from boomsim.papers.family_registry import families
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.paper_errors import BlueprintError
from boomsim.papers.problems.difficulty import HARDEST
from boomsim.papers.problems.family import AnyFamily, ChoiceFamily, Family
from boomsim.papers.problems.paper_slots import Slot
from boomsim.papers.problems.problem import CHOICE, NUMERIC
from boomsim.papers.simulated_candidates import expected, points

DRAWS = 24
"""Sets of other questions drawn for a variant [1]."""
ALIKE = 2.0
"""The first set that is so near to the first variant's is taken, else the nearest of all [1]."""
EASY = 2
"""In a mixed paper, questions up to this difficulty are choices."""


def choose(plan: Blueprint, *, variant: int) -> tuple[Slot, ...]:
    """Choose the questions of one variant, in their order.

    Parameters
    ----------
    plan : Blueprint
    variant : int
        From 0 [1]
    """
    chosen: list[Slot] = []
    for number, part in enumerate(plan.part):
        slots = _part(plan, part, number, variant)
        dice = Chance(plan.seed, "order", number, variant)
        chosen += dice.shuffled(slots) if plan.order == "shuffled" else _rising(slots)
    return tuple(chosen)


def _part(plan: Blueprint, part: Part, number: int, variant: int) -> list[Slot]:
    """Choose the questions of one part."""
    offers = _offers(plan, part, number)
    first = _first(part, offers, (plan.seed, "choice", number))
    if plan.vary == "numbers" or variant == 0:
        return first
    return _other(part, offers, first, Chance(plan.seed, "choice", number, variant))


def _offers(plan: Blueprint, part: Part, number: int) -> list[Slot]:
    """All families a part may choose from."""
    form, guided = part.form or plan.form, plan.guided if part.guided is None else part.guided
    easiest, hardest = plan.difficulty
    offers = [
        Slot(family=one, form=_form(one, form), guided=guided, part=number)
        for one in families().values()
        if (one.topic in part.topics and easiest <= one.difficulty <= hardest)
        or one.id in part.families
    ]
    _refuse_words(part, form, number)
    offers = [one for one in offers if form not in (NUMERIC, CHOICE) or one.form == form]
    if not offers:
        raise BlueprintError(
            f"part[{number + 1}]: no family of {', '.join(part.topics + part.families)} can be "
            f"asked in {form} form with difficulty {easiest} to {hardest}. Widen one of these."
        )
    return offers


def _refuse_words(part: Part, form: str, number: int) -> None:
    """Refuse a family that is named and could not be asked; one of a topic is just not chosen."""
    named = [one for one in part.families if isinstance(families()[one], ChoiceFamily)]
    if form == NUMERIC and named:
        raise BlueprintError(
            f"part[{number + 1}].families: {', '.join(named)} can only be answered by a choice, "
            'and the form is "numeric". Write form = "mixed" or form = "choice" in this part.'
        )
    named = [one for one in part.families if _is_by_check(families()[one])]
    if form == CHOICE and named:
        raise BlueprintError(
            f"part[{number + 1}].families: {', '.join(named)} is marked check by check, and the "
            'form is "choice". Write form = "mixed" or form = "numeric" in this part.'
        )


def _is_by_check(family: AnyFamily) -> bool:
    """Whether a family cannot be answered by one choice."""
    return isinstance(family, Family) and family.by_check


def _form(family: AnyFamily, wanted: str) -> str:
    """How one family is asked."""
    if _is_by_check(family):
        return NUMERIC
    if isinstance(family, ChoiceFamily) or wanted == CHOICE:
        return CHOICE
    return CHOICE if wanted == "mixed" and family.difficulty <= EASY else NUMERIC


def _first(part: Part, offers: list[Slot], path: tuple[str | int, ...]) -> list[Slot]:
    """Choose for the first variant what adds up to the marks and difficulty of every sitting."""
    if part.marks is None:
        return list(alike(tuple(offers), part.questions, path))
    most = (part.questions, part.marks, HARDEST * part.questions)
    worths, times = _worths(offers), _times(part, offers)
    for often in (times, times + 1):
        ways = reachable(worths, most, times=often)[part.questions]
        if ways[part.marks].any():
            difficulty = int(ways[part.marks].argmax())  # in most ways; the same in every sitting
            wanted = (part.questions, part.marks, difficulty)
            chosen = draw(worths, wanted, Chance(*path), times=often)
            return [offers[place] for place in chosen]
    possible = [str(marks) for marks, one in enumerate(ways) if one.any()]
    raise BlueprintError(
        f"part[{part.title or 'untitled'}]: {part.questions} questions cannot have exactly "
        f"{part.marks} marks. Possible: {', '.join(possible) or 'more marks only'}."
    )


def _other(part: Part, offers: list[Slot], first: list[Slot], dice: Chance) -> list[Slot]:
    """Choose others that have the same sums as the first variant's."""
    wanted, worths = (len(first), *sums_of(first)), _worths(offers)
    often = next(
        times
        for times in range(_times(part, offers), part.questions + 1)
        if reachable(worths, wanted, times=times)[wanted]
    )
    best, least = first, math.inf
    for n in range(DRAWS):
        thrown = [offers[place] for place in draw(worths, wanted, dice.child(n), times=often)]
        unlike = _unlike(thrown, first)
        if set(thrown) != set(first) and unlike < least:
            best, least = thrown, unlike
        if least <= ALIKE:
            break
    return best


def _unlike(slots: list[Slot], first: list[Slot]) -> float:
    """How far questions are from being as hard: points of effort, and tenths of a mark."""
    effort = sum(points(one.family) for one in slots) - sum(points(one.family) for one in first)
    earned = sum(map(expected, slots)) - sum(map(expected, first))
    return abs(effort) + 10.0 * abs(earned)


def _worths(offers: list[Slot]) -> list[Worth]:
    """Return marks and difficulty of each."""
    return [(slot.marks, slot.family.difficulty) for slot in offers]


def _times(part: Part, offers: list[Slot]) -> int:
    """How often a family has to be used at least, if all are used about equally often."""
    return -(-part.questions // len(offers))


def _rising(slots: list[Slot]) -> list[Slot]:
    """Easier questions first."""
    return sorted(slots, key=lambda slot: (slot.family.difficulty, slot.family.id))
