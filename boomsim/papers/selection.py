"""Which families go into which variant: exact marks, and equal difficulty for everyone.

All variants of a part have the same number of questions, the same marks and the same sum of
difficulties; with ``vary = "numbers"`` they have the same families too.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from boomsim.papers.blueprint import Blueprint, Part
from boomsim.papers.errors import BlueprintError
from boomsim.papers.numbers.chance import Chance
from boomsim.papers.problems.effort import HARDEST
from boomsim.papers.problems.family import AnyFamily, ChoiceFamily
from boomsim.papers.problems.problem import CHOICE, NUMERIC
from boomsim.papers.registry import families
from boomsim.papers.sums import Worth, draw, reachable, weighted

EASY = 2
"""In a mixed paper, questions up to this difficulty are choices."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """One place in a paper: a family, and how it is asked.

    Attributes
    ----------
    family : Family or ChoiceFamily
    form : str
        "numeric" or "choice"
    guided : bool
    part : int
        Number of the part, from 0 [1]
    """

    family: AnyFamily
    form: str
    guided: bool
    part: int

    @property
    def marks(self) -> int:
        """What the question is worth [1]."""
        whole = self.form == NUMERIC or isinstance(self.family, ChoiceFamily)
        return self.family.marks if whole else (self.family.marks + 1) // 2


def choose(plan: Blueprint, *, variant: int) -> tuple[Slot, ...]:
    """Choose the questions of one variant, in their order.

    Parameters
    ----------
    plan : Blueprint
    variant : int
        From 0 [1]

    Returns
    -------
    tuple of Slot
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
    first = _first(part, offers, Chance(plan.seed, "choice", number))
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
    offers = [one for one in offers if form != NUMERIC or one.form == NUMERIC]
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


def _form(family: AnyFamily, wanted: str) -> str:
    """How one family is asked."""
    if isinstance(family, ChoiceFamily) or wanted == CHOICE:
        return CHOICE
    return CHOICE if wanted == "mixed" and family.difficulty <= EASY else NUMERIC


def _first(part: Part, offers: list[Slot], dice: Chance) -> list[Slot]:
    """Choose for the first variant: any families if the marks are free, else ones that add up."""
    if part.marks is None:
        rounds = [_by_turns(dice.shuffled(offers)) for _ in range(_times(part, offers))]
        return [slot for one in rounds for slot in one][: part.questions]
    most = (part.questions, part.marks, HARDEST * part.questions)
    worths, times = _worths(offers), _times(part, offers)
    for often in (times, times + 1):
        ways = reachable(worths, most, times=often)[part.questions]
        if ways[part.marks].any():
            difficulty = weighted(list(ways[part.marks]), dice)
            chosen = draw(worths, (part.questions, part.marks, difficulty), dice, times=often)
            return [offers[place] for place in chosen]
    possible = [str(marks) for marks, one in enumerate(ways) if one.any()]
    raise BlueprintError(
        f"part[{part.title or 'untitled'}]: {part.questions} questions cannot have exactly "
        f"{part.marks} marks. Possible: {', '.join(possible) or 'more marks only'}."
    )


def _other(part: Part, offers: list[Slot], first: list[Slot], dice: Chance) -> list[Slot]:
    """Choose others that have the same sums as the first variant's."""
    wanted, worths = (len(first), *_totals(first)), _worths(offers)
    often = next(
        times
        for times in range(_times(part, offers), part.questions + 1)
        if reachable(worths, wanted, times=times)[wanted]
    )
    return [offers[place] for place in draw(worths, wanted, dice, times=often)]


def _worths(offers: list[Slot]) -> list[Worth]:
    """Return marks and difficulty of each."""
    return [(slot.marks, slot.family.difficulty) for slot in offers]


def _times(part: Part, offers: list[Slot]) -> int:
    """How often a family has to be used at least, if all are used about equally often."""
    return -(-part.questions // len(offers))


def _by_turns(slots: Iterable[Slot]) -> list[Slot]:
    """Let the topics of a part take turns, so that no one of them has it all."""
    turns: Counter[str] = Counter()
    ranked = []
    for slot in slots:
        ranked.append((turns[slot.family.topic], slot))
        turns[slot.family.topic] += 1
    return [slot for _, slot in sorted(ranked, key=lambda one: one[0])]


def _rising(slots: list[Slot]) -> list[Slot]:
    """Easier questions first."""
    return sorted(slots, key=lambda slot: (slot.family.difficulty, slot.family.id))


def _totals(slots: list[Slot]) -> tuple[int, int]:
    """Return marks and difficulty of some questions [1]."""
    return sum(slot.marks for slot in slots), sum(slot.family.difficulty for slot in slots)
