"""Words for what went wrong, shared by every reader of text."""

import difflib
from collections.abc import Iterable, Sequence


class UnitError(ValueError):
    """A figure that cannot be read: says what, which value, what is needed and the way out."""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Suggest the nearest known word.

    Returns
    -------
    str
        ' Did you mean "…"?' or nothing
    """
    near = difflib.get_close_matches(word[:60], list(known), n=1, cutoff=0.6)
    return f' Did you mean "{near[0]}"?' if near else ""


def quoted(value: object) -> str:
    """Quote a value for a message, but not a page of it."""
    if isinstance(value, int) and abs(value) > 10**40:
        return "a huge integer"
    text = " ".join(str(value).split())
    return f'"{text[:40]}…"' if len(text) > 40 else f'"{text}"'


def listed(words: Sequence[str]) -> str:
    """Write words as in a sentence.

    Returns
    -------
    str
        "1, 2 and 3"
    """
    return " and ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else "".join(words)
