"""One problem with its numbers: drawn from its seed, solved, checked by the call path.

Givens are rounded first and then solved. A draw that gives an absurd answer, or choices that
nobody could tell apart, is thrown away and drawn again, a bounded number of times.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from boomsim.papers.errors import FamilyError
from boomsim.papers.language.wording import Piece, pieces
from boomsim.papers.numbers.amounts import Amount, given, read_amount, result
from boomsim.papers.numbers.chance import Chance
from boomsim.papers.numbers.measures import METRIC
from boomsim.papers.problems.family import (
    AnyFamily,
    ChoiceFamily,
    Drawn,
    Family,
    Posed,
    Slip,
    Table,
)
from boomsim.papers.problems.solving import close, holds, solve

NUMERIC, CHOICE = "numeric", "choice"
CHOICES = 4
TRIES = 200
APART = 3.0
"""Two choices differ by at least so many tolerances of the answer."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Choice:
    """One choice as printed.

    Attributes
    ----------
    letter : str
        "A", "B", …
    text : tuple of Piece
    right : bool
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
    system : str
        "metric" or "us"
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
    table : Table or None
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
        draw = self.family.picture
        return draw(self.values, self.shown) if draw else ""

    def shown(self, name: str) -> str:
        """Return printed amount of a letter."""
        amount = self.givens.get(name) or self.results[name]
        return amount.text(system=self.system)

    def pieces(self, text: str) -> tuple[Piece, ...]:
        """Fill the numbers into a text."""
        known = frozenset(self.letters)
        return pieces(text, shown=self.shown, letters=known, words=self.words)


def make_problem(
    family: AnyFamily, *, seed: str, system: str = METRIC, form: str = NUMERIC
) -> Problem:
    """Draw a problem.

    Parameters
    ----------
    family : Family or ChoiceFamily
    seed : str
    system : str
        "metric" or "us"
    form : str
        "numeric" or "choice"; a :class:`ChoiceFamily` is always a choice

    Returns
    -------
    Problem

    Raises
    ------
    FamilyError
        When no sensible draw is found, or the call path contradicts the answer
    """
    dice = Chance(seed, family.id, system)
    for attempt in range(TRIES):
        problem = _attempt(family, dice.child(attempt), seed=seed, system=system, form=form)
        if problem is not None:
            return problem
    raise FamilyError(
        f'Family "{family.id}", seed "{seed}": no sensible {form} problem in {TRIES} draws. '
        "Widen its values, loosen its `where`, or give it slips that lead to other answers."
    )


def problem_with(
    family: Family, *, givens: Mapping[str, str], system: str = METRIC, form: str = NUMERIC
) -> Problem:
    """Pose a problem with chosen numbers, such as those of a published example.

    Parameters
    ----------
    family : Family
    givens : mapping of str to str
        By letter: ``{"F": "5.30 kN"}``
    system : str
    form : str

    Returns
    -------
    Problem

    Raises
    ------
    FamilyError
        If the numbers make no sensible problem, or the call path contradicts the answer
    """
    amounts = {name: read_amount(text) for name, text in givens.items()}
    problem = Problem(family=family, system=system, form=form, seed="chosen", givens=amounts)
    solved = _solved(problem, family, Chance("chosen", family.id))
    if solved is None:
        raise FamilyError(f'Family "{family.id}": these givens make no sensible problem.')
    return solved


def _attempt(
    family: AnyFamily, dice: Chance, *, seed: str, system: str, form: str
) -> Problem | None:
    """Draw once; None if the draw is no good."""
    givens, drawn = draw_givens(family, dice, system=system)
    if len(givens) < len(family.givens):
        return None
    problem = Problem(
        family=family, system=system, form=form, seed=seed,
        givens=givens, words=drawn.words, table=drawn.table,
    )  # fmt: skip
    if isinstance(family, ChoiceFamily):
        return _posed(problem, family, dice)
    return _solved(problem, family, dice)


def draw_givens(family: AnyFamily, dice: Chance, *, system: str) -> tuple[dict[str, Amount], Drawn]:
    """Throw the dice for all givens, and let the family supply what comes from the call path.

    Parameters
    ----------
    family : Family or ChoiceFamily
    dice : Chance
    system : str

    Returns
    -------
    dict of str to Amount, Drawn
        A value that the family could not supply (NaN: an empty cell of a chart) is left out
    """
    spreads = {one.name: one.spread(system) for one in family.givens}
    givens = {
        name: given(values.number(dice.integer(values.count)), values.unit)
        for name, values in spreads.items()
        if values.count
    }
    drawn = Drawn()
    if isinstance(family, Family) and family.draw:
        drawn = family.draw(dice, system, {name: one.value for name, one in givens.items()})
    late = {
        name: given(spreads[name].nearest(value), spreads[name].unit)
        for name, value in drawn.values.items()
        if math.isfinite(value)
    }
    known = givens | late
    return {name: known[name] for name in spreads if name in known}, drawn


def _solved(problem: Problem, family: Family, dice: Chance) -> Problem | None:
    """Solve a numeric family; None if an answer is absurd."""
    values = solve(family, problem.values)
    if not all(values[step.name] > 0 for step in family.steps) or not holds(family, values):
        return None
    results = {
        step.name: result(values[step.name], step.unit(problem.system), figures=step.figures)
        for step in family.steps
    }
    _confirm(family, problem.values, values[family.steps[-1].name], problem.seed)
    solved = replace(problem, results=results)
    if problem.form != CHOICE:
        return solved
    choices = _choices(solved, family, dice)
    return replace(solved, choices=choices) if choices else None


def _confirm(family: Family, givens: Mapping[str, float], answer: float, seed: str) -> None:
    """Hold the answer against the call path."""
    other = family.check(givens)
    if not close(answer, other, tolerance=family.agreement):
        raise FamilyError(
            f'Family "{family.id}", seed "{seed}": the steps give {answer:.6g} and the call path '
            f"{other:.6g} [SI], further apart than the stated {family.agreement:.2g}. "
            "Correct the formula or the check, or state the simplification with a wider agreement."
        )


def _choices(problem: Problem, family: Family, dice: Chance) -> tuple[Choice, ...]:
    """Mix the answer with what known slips lead to; () if too few stand apart."""
    last = family.steps[-1]
    kept: list[tuple[Amount, Slip | None]] = [(problem.results[last.name], None)]
    for slip in dice.shuffled(family.slips):
        value = solve(family, problem.values, slip=slip)[last.name]
        if value > 0 and len(kept) < CHOICES:
            wrong = result(value, last.unit(problem.system), figures=last.figures)
            if all(_are_apart(wrong, one, last.tolerance) for one, _ in kept):
                kept.append((wrong, slip))
    if len(kept) < CHOICES:
        return ()
    return tuple(
        Choice(letter="ABCDEF"[place], text=(Piece(text=amount.text(system=problem.system)),),
               right=slip is None, slip=slip.words if slip else "")
        for place, (amount, slip) in enumerate(dice.shuffled(kept))
    )  # fmt: skip


def _are_apart(one: Amount, other: Amount, tolerance: float) -> bool:
    """Whether two choices can be told apart as they are printed."""
    return not close(float(one.number), float(other.number), tolerance=APART * tolerance)


def _posed(problem: Problem, family: ChoiceFamily, dice: Chance) -> Problem | None:
    """Pose a choice family; None if its numbers are not sensible."""
    if not holds(family, problem.values):
        return None
    posed = family.pose(dice, problem.values)
    problem = replace(problem, form=CHOICE, words=posed.words, table=posed.table)
    _confirm_choice(family, problem, posed)
    choices = tuple(
        Choice(
            letter="ABCDEF"[place],
            text=problem.pieces(one.text),
            right=one.right,
            slip="" if one.right else one.slip,
        )
        for place, one in enumerate(dice.shuffled(posed.options))
    )
    return replace(problem, choices=choices, because=posed.because)


def _confirm_choice(family: ChoiceFamily, problem: Problem, posed: Posed) -> None:
    """Hold the right option against the call path."""
    right = [place for place, option in enumerate(posed.options) if option.right]
    found = family.check(problem.values, posed)
    if right != [found]:
        raise FamilyError(
            f'Family "{family.id}", seed "{problem.seed}": option {right} is marked right, but the '
            f"call path says option {found}. Correct `pose` or `check`."
        )
