"""What the game answers to a choice: who carries it, by how much, and why."""

from dataclasses import dataclass
from functools import cache

import numpy as np

from boomsim.game.stated_pick import BEST, NONE, Pick
from boomsim.mechanics.geometry import layout
from boomsim.rating.comparison.comparison_reasons import further_in, tell_pair
from boomsim.rating.comparison.difference_account import accounts, difference
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.mass_sums import Scale, scale_of
from boomsim.rating.parts_reeved import what_hangs
from boomsim.rating.strategies import label, letter
from boomsim.units import all_in_words, in_words, listed, show


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What is said after a choice.

    Attributes
    ----------
    first : str
        Whether it was right, in a sentence
    ways : tuple of str
        What each way carries, how far that is from the load, and what sets it
    why : str
        What makes the difference
    """

    chosen: str
    points: int
    first: str
    ways: tuple[str, ...]
    why: str


def ask(pick: Pick, *, units: str) -> str:
    """State a pick."""
    scale = _scale(pick, units)
    named = listed(what_hangs(pick.setup.machine))
    with_it = f"{named} in it, " if named else ""
    asked = (
        f"The boom is {show(pick.length, 'boom_length', units)} long. Gross load: "
        f"{scale.text(round(pick.load / scale.step))}, {with_it}"
        f"at a radius of {show(pick.radius, 'length', units)}. "
        "Which way out carries it, with most to spare?"
    )
    return in_words(asked, units)


def judge(pick: Pick, chosen: str, *, units: str) -> Verdict:
    """Answer a choice.

    Parameters
    ----------
    chosen : str
        One of the letters of the pick
    """
    said = Verdict(
        chosen=chosen,
        points=pick.points(chosen),
        first=_first(pick, chosen),
        ways=tuple(_way(pick, way, units) for way in range(len(pick.capacity))),
        why=_why(pick, chosen, units),
    )
    return all_in_words(said, units)


def _scale(pick: Pick, units: str) -> Scale:
    """One unit for all masses of a pick."""
    return scale_of(max(pick.load, float(pick.capacity.max())), units)


def _first(pick: Pick, chosen: str) -> str:
    points, best = pick.points(chosen), listed(pick.right)
    if chosen == NONE:
        if points:
            return "Right: none of them carries it."
        able = [letter(int(way)) for way in np.flatnonzero(pick.carries)]
        return f"No: {listed(able)} {'carry' if len(able) > 1 else 'carries'} it."
    if points == BEST:
        others = [one for one in pick.right if one != chosen]
        same = f"; {listed(others)} just as much" if others else ""
        return f"Right: {chosen} carries it, and carries most{same}."
    if points:
        return f"{chosen} carries it, but {best} has more to spare."
    if pick.right == (NONE,):
        return "No: none of them carries it."
    return f"No: {chosen} does not carry it. {best} does, with most to spare."


def _way(pick: Pick, way: int, units: str) -> str:
    """Write "A: 8.20 t, 0.30 t short; stability sets this figure"."""
    scale = _scale(pick, units)
    carried, load = scale.down(float(pick.capacity[way])), round(pick.load / scale.step)
    apart = f"{scale.text(abs(carried - load))} {'to spare' if carried >= load else 'short'}"
    return f"{letter(way)}: {scale.text(carried)}, {apart}; {what_sets(pick.limits[way])}"


def _why(pick: Pick, chosen: str, units: str) -> str:
    """Hold the best against what was chosen; where that is as good, against the one with least."""
    best, least = pick.best, int(np.argmin(pick.capacity))
    chosen_way = pick.letters.index(chosen)
    if chosen in pick.right or chosen == NONE or chosen_way == best:
        return _pair(pick, best, least, units)
    return _pair(pick, best, chosen_way, units)


@cache
def _pair(pick: Pick, best: int, other: int, units: str) -> str:
    ends = pick.extension[[best, other]]
    one, two = accounts(pick.setup, extension=ends, radius=pick.radius)
    assert one is not None and two is not None, "a pick has only ways that carry something"
    front = layout(pick.setup.machine.boom, extension=ends).front
    letters = letter(best), letter(other)
    said = tell_pair(
        difference(one, two, radius=pick.radius),
        names=letters,
        letters=letters,
        kept=further_in(front),
        units=units,
    )
    return f"{said}."


def options(pick: Pick) -> list[tuple[str, str]]:
    """Letters that may be chosen, each with what it stands for."""
    ways = [(letter(k), label(row)) for k, row in enumerate(pick.extension)]
    return [*ways, (NONE, "none of them")]
