"""What a problem family is: one small file that declares givens, steps and likely slips.

A family is written once, in letters; everything a paper prints follows from it: numbers in
metric or US customary units, the worked solution, the marking key, the wrong choices, the hints.
See :mod:`boomsim.papers.families.statics_pad_force` for one to copy.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from sympy import Expr, Symbol, evaluate
from sympy.core.relational import Relational

from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, Unit, unit
from boomsim.papers.numbers.value_ranges import Spread, spread
from boomsim.papers.problems.difficulty import effort_of, letters_of

TOPICS = (
    "geometry", "weights", "statics", "strength", "deflection",
    "stability", "charts", "strategy", "rigging", "disturbances", "decisions",
)  # fmt: skip
"""What papers can be about, in the order of a course."""

Values = Mapping[str, float]
"""SI values by letter."""


def as_written() -> evaluate:
    """Keep formulas as they are typed, where sympy would multiply out 2 (a + c).

    Returns
    -------
    context manager
        ``with as_written(): area = 2 * (a + c) * t``
    """
    return evaluate(False)


@dataclass(frozen=True, slots=True, eq=False)
class Given:
    """One number the candidate is told, or reads from a picture or table.

    Attributes
    ----------
    words : str
        What it is: "overhang of the section"
    metric, us : str
        Its values, see :func:`boomsim.papers.numbers.value_ranges.spread`
    """

    letter: Symbol
    words: str
    metric: str = field(kw_only=True)
    us: str = field(kw_only=True)

    @property
    def name(self) -> str:
        """The letter as text."""
        return str(self.letter.name)

    def spread(self, system: str) -> Spread:
        """Values it may take in one unit system."""
        return spread(self.metric if system == METRIC else self.us)


@dataclass(frozen=True, slots=True, eq=False)
class Step:
    """One line of the worked solution, and one part of the question.

    Attributes
    ----------
    letter : Symbol
        What it finds
    formula : Expr
        In letters of givens and of earlier steps
    words : str
        What is found: "moment at the mouth"
    does : str
        What the candidate does, as a sentence; also the hint
    metric, us : str
        Units in which the result is asked and printed
    marks : int
        [1]
    figures : int
        Significant figures printed [1]
    tolerance : float
        Relative difference that always counts as right, for other sensible ways and constants; the
        rounding that the paper asks for is added, see
        :mod:`boomsim.papers.problems.tolerance_bands` [1]
    nearest : tuple of (str, str)
        Where the answer is a figure of a chart, or a sum of such: its step in metric and US units
    rated : bool
        Whether it is a rated load, which is never rounded up
    whole : bool
        Whether it is a small whole number by its nature, such as the number of a check: it is right
        or wrong, and a slip may happen to lead to it
    """

    letter: Symbol
    formula: Expr
    words: str
    does: str
    metric: str = field(kw_only=True)
    us: str = field(kw_only=True)
    marks: int = field(default=1, kw_only=True)
    figures: int = field(default=3, kw_only=True)
    tolerance: float = field(default=0.01, kw_only=True)
    nearest: tuple[str, str] = field(default=("", ""), kw_only=True)
    rated: bool = field(default=False, kw_only=True)
    whole: bool = field(default=False, kw_only=True)

    @property
    def name(self) -> str:
        """The letter as text."""
        return str(self.letter.name)

    def unit(self, system: str) -> Unit:
        """Return unit of the result in one unit system."""
        return unit(self.metric if system == METRIC else self.us)

    def by(self, system: str) -> Decimal | None:
        """Step of a chart to which the result is asked and printed [unit of the result]."""
        text = self.nearest[system != METRIC]
        return Decimal(text) if text else None

    @property
    def is_reading(self) -> bool:
        """Whether it only takes a value over, from a chart or a picture."""
        return bool(self.formula.is_Symbol)

    @property
    def needs(self) -> frozenset[str]:
        """Letters in its formula."""
        return letters_of(self.formula)


@dataclass(frozen=True, slots=True, eq=False)
class Slip:
    """A known misconception: what a candidate writes instead of one step's formula.

    Attributes
    ----------
    step : Symbol
        The step that goes wrong; later steps follow from it
    formula : Expr
        What is computed instead
    words : str
        As an examiner would say it: "forgot the section's own weight"
    safer : bool
        Whether it may lead to the safe side of the answer, and is wrong all the same; see `safe`
        of :class:`Family`
    """

    step: Symbol
    formula: Expr
    words: str
    safer: bool = field(default=False, kw_only=True)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Table:
    """A table that belongs to the question: texts by row, the first row is the head."""

    rows: tuple[tuple[str, ...], ...]
    caption: str = ""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Drawn:
    """What a family's `draw` function supplies.

    Attributes
    ----------
    values : mapping of str to float
        By the letter of a given declared "drawn in … by …" [SI]
    words : mapping of str to str
        Texts for ``{name}`` in the wording
    """

    values: Values = field(default_factory=dict)
    words: Mapping[str, str] = field(default_factory=dict)
    table: Table | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Family:
    """A problem whose answer is a number.

    Attributes
    ----------
    id, topic, title : str
        `topic` is one of `TOPICS`
    text : str
        The question; ``{a}`` is the value of a, ``{a=}`` is "a = 3.30 m"
    assume : str
        The simplification a candidate may assume, as a full sentence
    steps : tuple of Step
        The last one is the answer
    slips : tuple of Slip
        At least three, for the wrong choices
    check : callable
        Answer by the call path [SI] from the givens [SI]
    agreement : float
        Largest relative difference from the call path that the simplification explains [1]
    where : tuple of relations
        What must hold between letters for a sensible problem; else it is drawn again
    usual : tuple of relations
        What the trade keeps to besides, asked of drawn numbers and not of a published example's
    picture : callable or None
        SVG text of a problem, see :mod:`boomsim.papers.sketches.sketch_svg`
    seen : str
        What the picture shows, in words, for those who do not see it
    draw : callable or None
        Supplies values from the call path: ``draw(chance, system, values) -> Drawn``
    safe : str
        "less" or "more" where an answer on that side of the right one would be safe as well: then
        every slip that leads there must say so; "" where safety is not what is asked
    by_check : bool
        Whether every step is a check with marks of its own: then all of them are always asked for,
        whatever the form of the paper, and a step need not lead to the last one
    """

    id: str
    topic: str
    title: str
    text: str
    assume: str
    givens: tuple[Given, ...]
    steps: tuple[Step, ...]
    slips: tuple[Slip, ...]
    check: Callable[[Values], float]
    agreement: float = 1e-6
    where: tuple[Relational, ...] = ()
    usual: tuple[Relational, ...] = ()
    picture: "Picture | None" = None
    seen: str = ""
    draw: "Callable[[Chance, str, Values], Drawn] | None" = None
    safe: str = ""
    by_check: bool = False

    @property
    def marks(self) -> int:
        """Sum over the steps [1]."""
        return sum(step.marks for step in self.steps)

    @property
    def difficulty(self) -> int:
        """From 1 to 5, see :func:`boomsim.papers.problems.difficulty.effort_of`."""
        return effort_of(tuple(step.formula for step in self.steps))


@dataclass(frozen=True, slots=True, eq=False)
class Option:
    """One choice in words.

    Attributes
    ----------
    text : str
        With ``{a}`` as in the question
    slip : str
        Why someone would choose it although it is wrong
    """

    text: str
    right: bool = field(default=False, kw_only=True)
    slip: str = field(default="", kw_only=True)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Posed:
    """One choice question's options, in the order written, and the reason for the right one."""

    options: tuple[Option, ...]
    because: str
    words: Mapping[str, str] = field(default_factory=dict)
    table: Table | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ChoiceFamily:
    """A problem whose answer is a choice among sentences or configurations.

    Attributes
    ----------
    id, topic, title, text, assume, givens, where, picture, seen :
        As in :class:`Family`
    difficulty : int
        1 recall, 2 compare two, 3 weigh two effects, 4 three, 5 more [1]
    marks : int
        [1]
    pose : callable
        ``pose(chance, values) -> Posed`` with exactly one right option, each of them at times;
        None if these values make no clear question
    check : callable
        Index of the right option by the call path, from the givens [SI] and the options
    """

    id: str
    topic: str
    title: str
    text: str
    assume: str
    givens: tuple[Given, ...]
    difficulty: int
    marks: int = 1
    pose: Callable[[Chance, Values], Posed | None]
    check: "Callable[[Values, Posed], int]"
    where: tuple[Relational, ...] = ()
    picture: "Picture | None" = None
    seen: str = ""


AnyFamily = Family | ChoiceFamily
Shown = Callable[[str], str]
"""Printed amount by letter: ``shown("a") -> "3.30 m"``."""
Picture = Callable[[Values, Shown], str]
"""Draws a problem: ``picture(values, shown) -> SVG``."""
