"""Which families go into which variant: exact marks, and equal difficulty for everyone.

All variants of a part have the same number of questions, the same marks and the same sum of
difficulties; with ``vary = "numbers"`` they have the same families too.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from boomsim.papers.blueprint import Blueprint, Part
from boomsim.papers.chance import Chance
from boomsim.papers.errors import BlueprintError
from boomsim.papers.family import AnyFamily, ChoiceFamily
from boomsim.papers.problem import CHOICE, NUMERIC
from boomsim.papers.registry import families

EASY = 2
"""In a mixed paper, questions up to this difficulty are choices."""

_Sum = tuple[int, int, int]  # questions, marks, difficulty


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
    wanted = (len(first), *_totals(first))
    return _reach(offers, wanted, Chance(plan.seed, "choice", number, variant))[wanted]


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
    offers = [one for one in offers if form != NUMERIC or one.form == NUMERIC]
    if not offers:
        raise BlueprintError(
            f"part[{number + 1}]: no family of {', '.join(part.topics + part.families)} can be "
            f"asked in {form} form with difficulty {easiest} to {hardest}. Widen one of these."
        )
    return offers


def _form(family: AnyFamily, wanted: str) -> str:
    """How one family is asked."""
    if isinstance(family, ChoiceFamily) or wanted == CHOICE:
        return CHOICE
    return CHOICE if wanted == "mixed" and family.difficulty <= EASY else NUMERIC


def _first(part: Part, offers: list[Slot], dice: Chance) -> list[Slot]:
    """Choose for the first variant: any families if the marks are free, else ones that add up."""
    if part.marks is None:
        count = -(-part.questions // len(offers))
        rounds = [_by_turns(dice.shuffled(offers)) for _ in range(count)]
        return [slot for one in rounds for slot in one][: part.questions]
    reached = _reach(offers, (part.questions, part.marks, 10**6), dice)
    full = {total: path for total, path in reached.items() if total[0] == part.questions}
    fitting = [path for total, path in full.items() if total[1] == part.marks]
    if not fitting:
        possible = sorted({total[1] for total in full})
        raise BlueprintError(
            f"part[{part.title or 'untitled'}]: {part.questions} questions cannot have exactly "
            f"{part.marks} marks. Possible: {', '.join(map(str, possible)) or 'more marks only'}."
        )
    return dice.pick(fitting)


def _reach(offers: list[Slot], most: _Sum, dice: Chance) -> dict[_Sum, list[Slot]]:
    """Find the sums that families used about equally often can reach, one way to each."""
    limit = -(-most[0] // len(offers)) + (len(offers) > 1)
    reached: dict[_Sum, list[Slot]] = {(0, 0, 0): []}
    for slot in dice.shuffled(offers):
        for total, path in list(reached.items()):
            for times in range(1, limit + 1):
                new = (
                    total[0] + times,
                    total[1] + times * slot.marks,
                    total[2] + times * slot.family.difficulty,
                )
                if all(one <= end for one, end in zip(new, most, strict=True)):
                    reached.setdefault(new, path + [slot] * times)
    return reached


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
