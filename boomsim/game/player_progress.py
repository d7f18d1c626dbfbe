"""What somebody has played so far, in a file of their own; nothing of it leaves the machine."""

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from boomsim.files.file_errors import FileError
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.files.whole_files import write_whole
from boomsim.game.stated_pick import BEST, Pick
from boomsim.rating.limits.limit_sentences import SETTERS

KIND = "progress in the game"
"""What the file says it is."""

MOST_BYTES = 2**20
MOST_PLAYED = 5000
"""More picks than these are not kept: the oldest go [1]."""

WHERE = {what: f"where {words} sets the best figure" for what, words in SETTERS.items()}
"""What a pick was about."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """One pick that was answered.

    Attributes
    ----------
    seed, number : int
        Which pick it was
    set_by : str
        What sets the best figure: a key of `WHERE`
    """

    machine: str
    seed: int
    number: int
    chosen: str
    points: int
    set_by: str


def played(pick: Pick, *, seed: int, number: int, chosen: str) -> Played:
    """Note an answer."""
    return Played(
        machine=pick.setup.machine.name,
        seed=seed,
        number=number,
        chosen=chosen,
        points=pick.points(chosen),
        set_by=pick.limits[pick.best].set_by,
    )


def read_progress(path: Path) -> list[Played]:
    """Read what was played before.

    Parameters
    ----------
    path : Path
        May be missing: then nothing was

    Raises
    ------
    FileError
        If there is another file of that name
    """
    if not path.exists():
        return []
    try:
        kept = json.loads(text_of(read_bytes(path, most=MOST_BYTES), name=str(path)))
        if kept["kind"] != KIND:
            raise KeyError
        return [_checked(one) for one in kept["played"]]
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        raise FileError(
            f"{path} is no progress that a game has kept, and it is left as it is. Give the name "
            "of a file that is not there yet, or of one that a game has written."
        ) from None


def _checked(one: dict[str, Any]) -> Played:
    if any(type(one[name]) is not kind for name, kind in Played.__annotations__.items()):
        raise TypeError
    if one["set_by"] not in WHERE or not 0 <= one["points"] <= BEST:
        raise ValueError
    return Played(**one)


def write_progress(path: Path, every: Sequence[Played]) -> Path:
    """Keep what was played."""
    kept = {"kind": KIND, "played": [asdict(one) for one in every[-MOST_PLAYED:]]}
    return write_whole(path, (json.dumps(kept, indent=1) + "\n").encode())


def tell_progress(every: Sequence[Played]) -> str:
    """Say how it goes, by what the picks were about.

    Returns
    -------
    str
        A sentence or two
    """
    parts, shares = [], {}
    for set_by, words in WHERE.items():
        of = [one.points for one in every if one.set_by == set_by]
        if of:
            shares[words] = sum(of) / (BEST * len(of))
            parts.append(f"{words} {sum(of)} of {BEST * len(of)}")
    total = sum(one.points for one in every)
    said = f"So far {total} of {BEST * len(every)} points: {', '.join(parts)}."
    if len(shares) < 2 or min(shares.values()) == max(shares.values()):
        return said
    return f"{said} Hardest for you: {min(shares, key=shares.__getitem__)}."
