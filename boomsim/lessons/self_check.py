"""A self-check: takes an answer with its unit and says what a wrong one probably got wrong."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from boomsim.gravity import GRAVITY
from boomsim.lessons.lesson_display import Panel
from boomsim.units import UnitError, display, parse, quantity_named, quoted, show

USUAL = 0.02
"""Answers may differ by this share: the last digit of what was read off [1]."""

UNIT_SLIPS = (
    (1000.0, "the digits are right but the unit is a thousand times too large"),
    (0.001, "the digits are right but the unit is a thousand times too small"),
    (10.0, "the decimal point has slipped one place to the right"),
    (0.1, "the decimal point has slipped one place to the left"),
    (-1.0, "the size is right but the sign is not"),
    (GRAVITY, "a mass was read as a force: it was multiplied by g once too often"),
    (1.0 / GRAVITY, "a force was read as a mass: it was divided by g once too often"),
)
"""Slips that can happen in any calculation: what they multiply the answer by, and their words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What a self-check says to one answer.

    Attributes
    ----------
    kind : str
        "right", "slip" (a known one), "wrong", "refused" (no figure) or "empty"
    words : str
        For the reader
    slip : str or None
        Which slip it probably was
    question : str
        What was asked, for whoever tries again
    """

    kind: str
    words: str
    slip: str | None = None
    question: str = ""

    @property
    def right(self) -> bool:
        """Whether the answer was right."""
        return self.kind == "right"

    def __repr__(self) -> str:
        return self.words

    def _repr_html_(self) -> str:
        return Panel(words=(self.words,), mark=self.kind, small=self.question)._repr_html_()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Check:
    """One question with a number for an answer.

    Attributes
    ----------
    question : str
    answer : float
        [SI unit of the quantity]
    quantity : str
        A key of `boomsim.units.QUANTITIES`
    slips : Mapping of str to float
        What a learner may have done wrong, after "you probably …", and the number that it gives
        [SI unit of the quantity]
    working : str
        How the answer is found, for whoever gives up
    tolerance : float
        Share by which an answer may differ [1]
    units : str
        "metric" or "us", for what the check says
    unit : str
        Unit that it speaks in, where the usual one of the quantity is too coarse

    Raises
    ------
    ValueError
        If a slip cannot be told from the answer or from another slip

    Examples
    --------
    >>> check = Check(answer=11230.0, quantity="mass", slips={"forgot the hook block": 11680.0})
    >>> check("11.68 t").slip
    'forgot the hook block'
    >>> check("11.2 t").right
    True
    """

    answer: float
    quantity: str
    question: str = ""
    slips: Mapping[str, float] = field(default_factory=dict)
    working: str = ""
    tolerance: float = USUAL
    units: str = "metric"
    unit: str = ""

    def __post_init__(self) -> None:
        """Refuse a check that would blame the wrong thing."""
        if not (math.isfinite(self.answer) and self.answer):
            raise ValueError(f"A self-check needs an answer other than {self.answer:g}.")
        seen = {"the right answer": self.answer}
        for words, value in self.slips.items():
            near = [name for name, other in seen.items() if self._is_near(value, other)]
            if near:
                raise ValueError(
                    f'The slip "{words}" gives {value:g}, which cannot be told from '
                    f'"{near[0]}". Leave one out or ask for another case.'
                )
            seen[words] = value

    def _is_near(self, value: float, other: float) -> bool:
        return abs(value - other) <= self.tolerance * abs(other)

    def __call__(self, text: object) -> Verdict:
        """Judge one answer.

        Parameters
        ----------
        text : str
            Number and unit, such as "11.2 t"; it is read, never run
        """
        if isinstance(text, str) and not text.strip():
            return Verdict(kind="empty", words=f"{self.question} {self._invitation()}".strip())
        return replace(self._judged(text), question=self.question)

    def _judged(self, text: object) -> Verdict:
        try:
            value = parse(text, self.quantity)
        except UnitError as error:
            return Verdict(kind="refused", words=f"That cannot be read yet. {error}")
        said = quoted(text)
        if not quantity_named(self.quantity).unit and "%" not in str(text):
            words = f"{said} has no unit. Write it with the percent sign, like {self.said(0.45)}."
            return Verdict(kind="refused", words=f"That cannot be read yet. {words}")
        if self._is_near(value, self.answer):
            return Verdict(kind="right", words=f"Right: {said}. The model says {self.exact}.")
        slip = self._slip(value)
        if slip:
            return Verdict(kind="slip", words=f"Not {said}. You probably {slip}.", slip=slip)
        return Verdict(kind="wrong", words=f"Not {said}: {self._hint(value)}")

    def _slip(self, value: float) -> str | None:
        """Find the known slip whose number is nearest, if one is near."""
        near = [
            (abs(value - wrong) / abs(wrong), words)
            for words, wrong in self.slips.items()
            if wrong and self._is_near(value, wrong)
        ]
        return min(near)[1] if near else None

    def _hint(self, value: float) -> str:
        near = [
            (abs(value / (factor * self.answer) - 1.0), words)
            for factor, words in UNIT_SLIPS
            if self._is_near(value, factor * self.answer)
        ]
        if near:
            return f"{min(near)[1]}. Try again."
        way = "much" if value > self.answer else "little"
        return f"that is too {way}, and it is none of the slips that I know. Try again."

    def said(self, value: float, *, finer: bool = False) -> str:
        """Write a figure as this check speaks.

        Parameters
        ----------
        value : float
            [SI unit of the quantity]
        finer : bool
            With a digit more, for a range
        """
        if self.unit or finer:
            unit = self.unit or display(self.quantity, self.units, like=self.answer).unit
            symbol = self.unit or display(self.quantity, self.units, like=self.answer).symbol
            number = value / parse(f"1 {unit}", self.quantity)
            rounded = float(f"{number:.4g}" if finer else f"{number:.3g}")
            return f"{rounded:,.10g} {symbol}"
        return show(value, self.quantity, self.units)

    @property
    def exact(self) -> str:
        """The answer with its unit."""
        return self.said(self.answer)

    def _invitation(self) -> str:
        unit = self.exact.lstrip("-0123456789.,").strip()
        return (
            f"Write your answer between the quotes, with its unit (such as {unit}), and run the "
            "cell again."
        )

    def show_working(self) -> Panel:
        """How the answer is found."""
        return Panel(words=(f"{self.working} The answer is {self.exact}.",), mark="working")

    def __repr__(self) -> str:
        return f"{self.question}\n{self._invitation()}"

    def _repr_html_(self) -> str:
        return Panel(words=(self.question, self._invitation()), mark="question")._repr_html_()


def told_apart(
    slips: Mapping[str, float], *, answer: float, tolerance: float = USUAL
) -> dict[str, float]:
    """Keep the slips that give a number of their own, the first of equals.

    For slips that are found by a rule, of which some may happen to agree.

    Parameters
    ----------
    slips : Mapping of str to float
        [SI unit of the quantity]
    answer : float
        [SI unit of the quantity]
    tolerance : float
        [1]
    """
    kept: dict[str, float] = {}
    for words, value in slips.items():
        taken = [answer, *kept.values()]
        if all(abs(value - other) > tolerance * abs(other) for other in taken):
            kept[words] = value
    return kept
