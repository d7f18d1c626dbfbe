"""The order of checks: none may rest on a figure that is not there yet."""

from collections.abc import Sequence

from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.family import ChoiceFamily, Option, Posed, Values

ACTIONS = {
    "weigh": ("find out what load, hook block and slings weigh", ()),
    "radius": ("measure the radius at both ends and on the way, and keep the largest", ()),
    "column": ("find the column of way out, outriggers and sector", ()),
    "capacity": ("read the rated capacity in the row of the next larger radius",
                 ("radius", "column")),
    "gross": ("add hook block and slings to the load", ("weigh",)),
    "compare": ("compare the gross load with the rated capacity", ("gross", "capacity")),
    "float": ("find the largest float load with the gross load at that radius",
              ("gross", "radius")),
    "ground": ("compare the pressure under the mats with what the ground bears", ("float",)),
}  # fmt: skip
"""What a crew does, and what must have been done before: the order of the call path."""

SLIPS = {
    ("radius", "capacity"): "read the chart before the radius was measured",
    ("column", "capacity"): "read the chart before its column was known",
    ("weigh", "gross"): "added weights before they were known",
    ("gross", "compare"): "compared before the gross load was there",
    ("capacity", "compare"): "compared before the chart was read",
    ("gross", "float"): "took a float load before the gross load was there",
    ("radius", "float"): "took a float load before the radius was measured",
    ("float", "ground"): "judged the ground before the float load was known",
}
LETTERS = "PQRSTUVW"
OFFERED = 4


def before(order: Sequence[str]) -> list[tuple[str, str]]:
    """Find what is done before that on which it rests.

    Parameters
    ----------
    order : sequence of str
        Actions

    Returns
    -------
    list of (str, str)
        What is needed, and what needs it
    """
    return [
        (need, action)
        for place, action in enumerate(order)
        for need in ACTIONS[action][1]
        if need in order[place:]
    ]


def _sorted_at_random(chance: Chance) -> list[str]:
    """Put all actions into an order that is possible, each step a fresh throw."""
    order: list[str] = []
    while len(order) < len(ACTIONS):
        ready = [
            one for one, (_, needs) in ACTIONS.items()
            if one not in order and all(need in order for need in needs)
        ]  # fmt: skip
        order.append(chance.pick(ready))
    return order


def _spoilt(order: Sequence[str], fault: tuple[str, str]) -> list[str] | None:
    """Put what is needed right behind what needs it; None if that spoils more than one thing."""
    need, action = fault
    rest = [one for one in order if one != need]
    place = rest.index(action) + 1
    changed = [*rest[:place], need, *rest[place:]]
    return changed if before(changed) == [fault] else None


def pose(chance: Chance, given: Values) -> Posed | None:
    """Offer one order that is possible among others with one fault each."""
    names = dict(zip(chance.shuffled(list(ACTIONS)), LETTERS, strict=True))
    right = _sorted_at_random(chance)
    spoilt: dict[tuple[str, str], list[str]] = {}
    for fault in chance.shuffled(list(SLIPS)):
        changed = _spoilt(_sorted_at_random(chance), fault)
        if changed and changed not in spoilt.values():
            spoilt[fault] = changed
    if len(spoilt) < OFFERED - 1:
        return None
    wrong = [Option(_written(order, names), slip=SLIPS[fault]) for fault, order in spoilt.items()][
        : OFFERED - 1
    ]
    options = chance.shuffled([Option(_written(right, names), right=True), *wrong])
    said = "; ".join(f"{letter}: {ACTIONS[name][0]}" for name, letter in _by_letter(names))
    return Posed(
        options=options,
        because="{why}. Every other order does something before a figure is there on which it "
        "rests.",
        words={"actions": said, "why": _why(right, names)},
    )


def _by_letter(names: dict[str, str]) -> list[tuple[str, str]]:
    """Actions in the order of their letters."""
    return sorted(names.items(), key=lambda one: one[1])


def _written(order: Sequence[str], names: dict[str, str]) -> str:
    """Write an order in letters."""
    return ", ".join(names[one] for one in order)


def _why(right: Sequence[str], names: dict[str, str]) -> str:
    """Say what rests on what, in the order of the right option."""
    rests = (
        f"{names[one]} rests on {' and '.join(names[need] for need in ACTIONS[one][1])}"
        for one in right
        if ACTIONS[one][1]
    )
    text = "; ".join(rests)
    return text[:1].upper() + text[1:]


def check(given: Values, posed: Posed) -> int:
    """Do the actions of each option one by one, and see whether what each needs is there."""
    said = dict(part.split(": ", 1) for part in posed.words["actions"].split("; "))
    named = {letter: next(n for n, (w, _) in ACTIONS.items() if w == words)
             for letter, words in said.items()}  # fmt: skip
    possible = []
    for place, option in enumerate(posed.options):
        done: set[str] = set()
        for letter in option.text.split(", "):
            if not set(ACTIONS[named[letter]][1]) <= done:
                break
            done.add(named[letter])
        if len(done) == len(ACTIONS):
            possible.append(place)
    return possible[0] if len(possible) == 1 else -1


FAMILY = ChoiceFamily(
    id="decisions_order_of_checks",
    topic="decisions",
    title="Order of checks",
    text="Before a pick a crew does the following. {actions}. In which of these orders is every "
    "figure there when it is needed?",
    assume="Nothing is done twice, and nobody guesses a figure that has not been found yet.",
    givens=(),
    difficulty=3,
    marks=2,
    pose=pose,
    check=check,
)
