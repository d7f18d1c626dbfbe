"""Marking a class: a key and a file of answers in, marks, reports and refusals out."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path

from boomsim.files.work_progress import Told, counted
from boomsim.papers.check_code import tidy
from boomsim.papers.marking.answer_sheets import Refusal, Sheet, short
from boomsim.papers.marking.candidate_answers import read_answers
from boomsim.papers.marking.class_figures import QuestionFigures, class_figures
from boomsim.papers.marking.mark_question import REFUSED, QuestionMark, mark_question
from boomsim.papers.marking.marking_key import Key, questions_of, read_key
from boomsim.papers.marking_policy import Policy
from boomsim.papers.numbers.number_reading import decimal_sign
from boomsim.papers.paper import Question
from boomsim.papers.paper_errors import PaperError


@dataclass(frozen=True, slots=True, kw_only=True)
class CandidateMark:
    """What one candidate earned.

    Attributes
    ----------
    row : int
        In the answers [1]
    """

    row: int
    candidate: str
    variant: str
    questions: tuple[QuestionMark, ...]

    @property
    def marks(self) -> int:
        """Earned [1]."""
        return sum(question.marks for question in self.questions)

    @property
    def most(self) -> int:
        """Could be earned [1]."""
        return sum(question.most for question in self.questions)

    @property
    def unread(self) -> int:
        """Answers that an examiner has to look at before the marks stand [1]."""
        parts = (part for question in self.questions for part in question.parts)
        return sum(part.status == REFUSED for part in parts)


@dataclass(frozen=True, kw_only=True, eq=False)
class Marked:
    """A class that has been marked.

    Attributes
    ----------
    candidates : tuple of CandidateMark
        In the order of the answers
    refusals : tuple of Refusal
        What could not be read; an examiner looks at these
    unanswered : tuple of str
        Variants for which no answers came
    uncoded : tuple of int
        Rows without the code of their paper: nobody knows whether they belong to this sitting [1]
    """

    key: Key
    candidates: tuple[CandidateMark, ...]
    refusals: tuple[Refusal, ...]
    unanswered: tuple[str, ...]
    uncoded: tuple[int, ...] = ()

    @property
    def unchecked(self) -> str:
        """A sentence about rows without a code; "" if there are none."""
        if not self.uncoded:
            return ""
        rows = ", ".join(map(str, self.uncoded[:6])) + (" …" if len(self.uncoded) > 6 else "")
        return (
            f"No code in row {rows}: whether these answers belong to this sitting was not checked; "
            "the code is printed below the variant."
        )

    @cached_property
    def figures(self) -> tuple[QuestionFigures, ...]:
        """Facility and discrimination of every question."""
        return class_figures([one.questions for one in self.candidates])


def mark(
    key_path: str | Path,
    answers_path: str | Path,
    *,
    locale: str | None = None,
    told: Told | None = None,
) -> Marked:
    """Mark the answers of a class.

    Parameters
    ----------
    key_path : str or Path
        The key.json written with the papers
    answers_path : str or Path
        CSV or JSON, see :func:`boomsim.papers.marking.candidate_answers.read_answers`
    locale : str or None
        In which the candidates wrote numbers, such as "de"; only then is "12,5" read as 12.5
    told : callable, optional
        Hears what is done

    Raises
    ------
    PaperError
        If the key or the file of answers as a whole cannot be read, or the locale is not known
    """
    key = read_key(key_path)
    sign = decimal_sign(locale, system=key.units)
    sheets, refused = read_answers(answers_path)
    _refuse_another_sitting(key, sheets)
    made: dict[str, tuple[Question, ...]] = {}
    candidates = []
    for sheet in counted(sheets, what="marking", told=told):
        variant = _variant(key, sheet)
        column, reason = _why_not(key, sheet, variant)
        if reason:
            refused.append(
                Refusal(row=sheet.row, candidate=sheet.candidate, column=column, reason=reason)
            )
            continue
        if variant not in made:
            made[variant] = questions_of(key, variant)
        own = replace(sheet, variant=variant)
        candidates.append(_candidate(own, made[variant], sign, refused, policy=key.marking))
    return Marked(
        key=key,
        candidates=tuple(candidates),
        refusals=tuple(sorted(refused, key=_as_in_the_sheet)),
        unanswered=tuple(name for name in key.names if name not in made),
        uncoded=tuple(sheet.row for sheet in sheets if not tidy(sheet.code)),
    )


def _as_in_the_sheet(refusal: Refusal) -> tuple[int, int, str]:
    """Order refusals by row and question: 2 stands before 10."""
    number = "".join(filter(str.isdecimal, refusal.column))
    return refusal.row, int(number or 0), refusal.column


def _refuse_another_sitting(key: Key, sheets: Sequence[Sheet]) -> None:
    """Refuse answers none of which belongs to this key."""
    codes = [code for sheet in sheets if (code := tidy(sheet.code))]
    if codes and not any(key.variant_with(code) for code in codes):
        raise PaperError(
            f"These answers are for papers with the code {short(codes[0])}, and this key is for "
            f'"{short(key.title)}" with the code {key.variants[0].code}: mark them with the key of '
            "their own sitting."
        )


def _why_not(key: Key, sheet: Sheet, variant: str) -> tuple[str, str]:
    """Column and reason for which a row is not marked; ("", "") if it is."""
    code = tidy(sheet.code)
    if not variant:
        return "variant", f'no variant "{short(sheet.variant)}"; known are {_some(key.names)}'
    if not code or code == key.code(variant):
        return "", ""
    other = key.variant_with(code)
    whose = f"variant {other}" if other else "another sitting"
    return "code", (
        f'the code "{short(sheet.code)}" is that of {whose}; variant {variant} of this sitting has '
        f"{key.code(variant)}"
    )


def _variant(key: Key, sheet: Sheet) -> str:
    """Name of the variant; spreadsheets turn 01 into 1."""
    known = {name.lstrip("0"): name for name in key.names}
    return known.get(sheet.variant.lstrip("0"), "")


def _candidate(
    sheet: Sheet,
    questions: Sequence[Question],
    sign: str,
    refused: list[Refusal],
    *,
    policy: Policy,
) -> CandidateMark:
    """Mark one candidate, and keep what could not be read."""
    marks = tuple(mark_question(one, sheet.answers, sign=sign, policy=policy) for one in questions)
    asked = {label for question in questions for label in question.labels}
    for label in sheet.answers.keys() - asked:
        reason = f"variant {sheet.variant} has no such question; look at variant and column"
        refused.append(
            Refusal(row=sheet.row, candidate=sheet.candidate, column=label, reason=reason)
        )
    for part in (part for question in marks for part in question.parts):
        if part.status == REFUSED:
            refused.append(
                Refusal(
                    row=sheet.row, candidate=sheet.candidate, column=part.label,
                    reason=f'"{short(part.given)}" {part.note}',
                )
            )  # fmt: skip
    return CandidateMark(
        row=sheet.row, candidate=sheet.candidate, variant=sheet.variant, questions=marks
    )


def _some(names: Sequence[str]) -> str:
    """Return the first and last of many names."""
    return ", ".join(names) if len(names) < 7 else f"{names[0]} to {names[-1]}"
