"""The words of a question, cut into text and mathematics.

``{a}`` stands for the amount of a, ``{a=}`` for "a = 3.30 m" with the letter set as mathematics,
``{a:}`` for the letter alone, and any other name for a text that the family drew.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from boomsim.papers.language.formula_markup import PLAIN, Dialect
from boomsim.papers.language.formula_printing import letter
from boomsim.papers.paper_errors import FamilyError

_PLACE = re.compile(r"\{([A-Za-z]\w*)([=:]?)\}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Text, or one letter of mathematics.

    Attributes
    ----------
    letter : str
        "" for text
    """

    text: str = ""
    letter: str = ""

    def written(self, dialect: Dialect, escape: Callable[[str], str], wrap: str) -> str:
        """Write the piece; `wrap` has %s where the mathematics goes."""
        return wrap % letter(self.letter, dialect) if self.letter else escape(self.text)


def in_plain(parts: Iterable[Piece]) -> str:
    """Write text and letters as one line of plain text."""
    return "".join(one.written(PLAIN, str, "%s") for one in parts)


def pieces(
    text: str, *, shown: Callable[[str], str], letters: frozenset[str], words: Mapping[str, str]
) -> tuple[Piece, ...]:
    """Fill in a text.

    Parameters
    ----------
    shown : callable
        Printed amount by letter
    letters : frozenset of str
        Letters that have an amount
    words : mapping of str to str
    """
    done: list[Piece] = []
    for plain, name, how in _cut(text):
        done.append(Piece(text=_unbroken(plain)))
        if name and name not in letters and name not in words:
            raise FamilyError(
                f'The wording has "{{{name}}}", but no given, step or word has that name.'
            )
        done += _filled(name, how, shown, words) if name else []
    return tuple(piece for piece in done if piece.text or piece.letter)


def names_in(text: str) -> frozenset[str]:
    """Names that a text has places for."""
    return frozenset(name for _, name, _ in _cut(text) if name)


def letters_in(text: str) -> frozenset[str]:
    """Letters that a text shows: ``{a=}`` and ``{a:}``, but not ``{a}``."""
    return frozenset(name for _, name, how in _cut(text) if how)


def _unbroken(text: str) -> str:
    """Keep a percent sign with its number."""
    return text.replace(" %", "\u00a0%")


def _filled(
    name: str, how: str, shown: Callable[[str], str], words: Mapping[str, str]
) -> list[Piece]:
    """Fill one place."""
    if name in words:
        return [Piece(text=_unbroken(words[name]))]
    if not how:
        return [Piece(text=shown(name))]
    return [Piece(letter=name)] + [Piece(text=f"\u00a0=\u00a0{shown(name)}")] * (how == "=")


@lru_cache(maxsize=2048)
def _cut(text: str) -> tuple[tuple[str, str, str], ...]:
    """Cut a text into (plain text, name, how) triples; the last one has no name."""
    parts = _PLACE.split(text)
    if any("{" in plain or "}" in plain for plain in parts[::3]):
        raise FamilyError(
            f'A brace in "{text[:60]}" belongs to no place like {{a}}, {{a=}} or {{a:}}.'
        )
    parts += ["", ""]
    return tuple(zip(parts[::3], parts[1::3], parts[2::3], strict=True))
