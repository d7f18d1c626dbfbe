"""The moves of a pinned boom as sentences and steps."""

from boomsim.rating.path.pins_study import Move, Sequence
from boomsim.rating.strategies import label
from boomsim.units import show

RULE = (
    "Assumed of this boom: a single telescope cylinder of one stroke moves one section at a time, "
    "with all that is pinned in it, and only while every larger moving section is all the way in. "
    "So the innermost goes out first and comes in last. The load is put down first; what may be "
    "run out with a load, boomsim telescope says."
)
"""How sections are moved, as far as this model knows."""


def tell_pins(found: Sequence, *, units: str) -> str:
    """Say how many moves it takes, and how far the boom comes back in between."""
    ways = f"From ({label(found.start)}) % to ({label(found.end)}) %"
    count = len(found.moves)
    if not count:
        return f"{ways} nothing moves: it is the same."
    begun = f"{ways} takes {count} {'move' if count == 1 else 'moves'}"
    first, last = (show(one, "boom_length", units) for one in (found.lengths[0], found.lengths[-1]))
    if found.comes_back <= 0.0:
        return f"{begun}, from {first} of boom to {last}, and never farther in or out than these."
    short = show(found.shortest, "boom_length", units)
    return f"{begun}: the boom must first come in from {first} to {short}, then go out to {last}."


def tell_move(move: Move) -> str:
    """Say what one move is.

    Returns
    -------
    str
        Such as "unpin section 3, let it out from 0 to 45 % with section 4 in it, pin it"
    """
    way = "let it out" if move.is_out else "take it in"
    said = f"unpin section {move.section}, {way} from {100 * move.start:g} to {100 * move.end:g} %"
    return f"{said}{_with(move.carries)}, pin it"


def _with(carries: tuple[int, ...]) -> str:
    if not carries:
        return ""
    if len(carries) == 1:
        return f" with section {carries[0]} in it"
    return f" with sections {', '.join(map(str, carries[:-1]))} and {carries[-1]} in it"
