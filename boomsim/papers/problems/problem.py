"""One problem with its numbers: drawn from its seed, solved, checked by the call path.

Givens are rounded first and then solved. A draw that gives an absurd answer, or choices that
nobody could tell apart, is thrown away and drawn again, a bounded number of times.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from boomsim.papers.language.question_words import Piece, pieces
from boomsim.papers.numbers.amounts import Amount
from boomsim.papers.problems.family import (
    AnyFamily,
    ChoiceFamily,
    Table,
)
from boomsim.units import all_in_words

NUMERIC, CHOICE = "numeric", "choice"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Choice:
    """One choice as printed.

    Attributes
    ----------
    letter : str
        "A", "B", …
    slip : str
        What someone who chooses it has probably done; "" for the right one
    """

    letter: str
    text: tuple[Piece, ...]
    right: bool
    slip: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Problem:
    """A family with numbers.

    Attributes
    ----------
    family : Family or ChoiceFamily
    form : str
        "numeric" or "choice"
    seed : str
        Gives the same problem again
    givens, results : mapping of str to Amount
        By letter; results of a :class:`ChoiceFamily` are empty
    choices : tuple of Choice
        Empty in numeric form
    because : str
        Why the right choice is right; "" where the steps say it
    words : mapping of str to str
    """

    family: AnyFamily
    system: str
    form: str
    seed: str
    givens: Mapping[str, Amount]
    results: Mapping[str, Amount] = field(default_factory=dict)
    choices: tuple[Choice, ...] = ()
    because: str = ""
    words: Mapping[str, str] = field(default_factory=dict)
    table: Table | None = None

    @property
    def values(self) -> dict[str, float]:
        """SI values of the givens by letter."""
        return {name: amount.value for name, amount in self.givens.items()}

    @property
    def letters(self) -> tuple[str, ...]:
        """Givens, then steps: the order in which formulas are written."""
        return (*self.givens, *self.results)

    @property
    def marks(self) -> int:
        """All marks; a choice is worth half of the steps' marks, rounded up [1]."""
        if isinstance(self.family, ChoiceFamily) or self.form == NUMERIC:
            return self.family.marks
        return math.ceil(self.family.marks / 2)

    @property
    def right(self) -> str:
        """Letter of the right choice; "" in numeric form."""
        return next((choice.letter for choice in self.choices if choice.right), "")

    @property
    def picture(self) -> str:
        """SVG text, or ""."""
        return _drawn(self)

    def shown(self, name: str) -> str:
        """Return printed amount of a letter."""
        amount = self.givens.get(name) or self.results[name]
        return amount.text(system=self.system)

    def pieces(self, text: str) -> tuple[Piece, ...]:
        """Fill the numbers into a text."""
        known = frozenset(self.letters)
        words = all_in_words(dict(self.words), self.system)
        said = all_in_words(text, self.system)
        return pieces(said, shown=self.shown, letters=known, words=words)


@lru_cache(maxsize=64)  # pages ask for it, and for its size
def _drawn(problem: Problem) -> str:
    """Draw the picture of a problem."""
    draw = problem.family.picture
    return all_in_words(draw(problem.values, problem.shown), problem.system) if draw else ""
