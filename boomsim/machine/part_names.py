"""What the parts of a machine are called."""

from collections import Counter
from itertools import pairwise

from boomsim.machine.model import Support

SAME_AXLE = 0.1
"""Tyres no farther apart along the carrier are on one axle [m]."""

ALONG = {2: ("front", "rear"), 3: ("front", "middle", "rear")}
"""Jacks of one side, by how many there are."""


def section_name(number: int) -> str:
    """What a section is called in every table: the base section is number 0."""
    return "base section" if number == 0 else f"section {number}"


def support_names(support: Support) -> tuple[str, ...]:
    """What jacks and tyres are called: "front left" by corners, "axle 1 left" from the front.

    Returns
    -------
    tuple of str
        In the order of the support's points; no two are alike
    """
    name = _tyres if support.kind == "tyres" else _jacks
    return _apart(name(support.points))


def foot_name(support: Support) -> str:
    """What a crane stands on, one of them: "float" or "tyre"."""
    return "tyre" if support.kind == "tyres" else "float"


def _side(y: float) -> str:
    return "right" if y > 0.0 else "left" if y < 0.0 else "middle"


def _jacks(points: tuple[tuple[float, float], ...]) -> list[str]:
    middle = (min(x for x, _ in points) + max(x for x, _ in points)) / 2
    names = []
    for x, y in points:
        side = sorted(other for other, across in points if _side(across) == _side(y))
        words = ALONG.get(len(side))
        alone = "front " * (x < middle) + "rear " * (x > middle)
        names.append(f"{words[side.index(x)]} {_side(y)}" if words else f"{alone}{_side(y)}")
    return names


def _tyres(points: tuple[tuple[float, float], ...]) -> list[str]:
    along = sorted({x for x, _ in points})
    number = dict.fromkeys(along, 1)
    for ahead, behind in pairwise(along):
        number[behind] = number[ahead] + (behind - ahead > SAME_AXLE)
    return [f"axle {number[x]} {_side(y)}" for x, y in points]


def _apart(names: list[str]) -> tuple[str, ...]:
    """Number those that would be called alike, such as twin tyres."""
    count, seen, made = Counter(names), Counter[str](), []
    for name in names:
        seen[name] += 1
        made.append(f"{name} {seen[name]}" if count[name] > 1 else name)
    return tuple(made)
