"""The key: enough to make every question again, and to notice if that has become impossible."""

import json
from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from boomsim.files.file_errors import FileError
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.papers.family_registry import family_named
from boomsim.papers.marking_policy import Policy
from boomsim.papers.numbers.amounts import Amount, read_amount
from boomsim.papers.paper import Question
from boomsim.papers.paper_errors import PaperError
from boomsim.papers.problems.family import AnyFamily, Family
from boomsim.papers.problems.family_in_trade_words import worded
from boomsim.papers.problems.problem import CHOICE, Choice, Problem
from boomsim.papers.problems.step_solving import solve
from boomsim.papers.problems.tolerance_bands import result_of
from boomsim.papers.render.paper_data import KEY_SCHEMA

LARGEST_FILE = 200_000_000


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)


class _Entry(_Strict):
    number: int = Field(ge=1, le=999)
    family: str = Field(max_length=80)
    form: Literal["numeric", "choice"]
    seed: str = Field(max_length=200)
    guided: bool
    marks: int = Field(ge=1, le=100)
    givens: dict[str, str]
    answer: dict[str, str]
    choices: dict[str, str]
    right: str = Field(max_length=1)


class _Variant(_Strict):
    variant: str = Field(max_length=10)
    code: str = Field(max_length=20)
    questions: list[_Entry]


class Key(_Strict):
    """The key of all variants, as :func:`boomsim.papers.render.paper_data.key_data` writes it."""

    schema_: str = Field(alias="schema")
    made_with: str
    title: str
    units: Literal["metric", "us"]
    seed: str
    caution: str
    marking: Policy
    variants: list[_Variant] = Field(min_length=1)

    @property
    def names(self) -> list[str]:
        """Names of the variants."""
        return [one.variant for one in self.variants]

    def code(self, variant: str) -> str:
        """Check code of a variant."""
        return next(one.code for one in self.variants if one.variant == variant)

    def variant_with(self, code: str) -> str:
        """Name of the variant that has a code; "" if none has."""
        return next((one.variant for one in self.variants if one.code == code), "")


def read_key(path: str | Path) -> Key:
    """Read a key."""
    source = Path(path)
    try:
        data = json.loads(text_of(read_bytes(source, most=LARGEST_FILE), name=source.name))
        key = Key.model_validate(data)
    except FileError as error:
        raise PaperError(str(error)) from None
    except (ValidationError, ValueError, RecursionError) as error:
        count = f" ({error.error_count()} faults)" if isinstance(error, ValidationError) else ""
        raise PaperError(
            f"{source.name} is not a key{count}. Use the key.json that was written with the papers."
        ) from None
    if key.schema_ != KEY_SCHEMA:
        raise PaperError(
            f'{source.name} is a "{key.schema_[:40]}", and this version reads {KEY_SCHEMA}. Mark '
            "with the version that wrote it, or write the papers again."
        )
    return key


def questions_of(key: Key, variant: str) -> tuple[Question, ...]:
    """Make the questions of one variant again."""
    entries = next(one.questions for one in key.variants if one.variant == variant)
    return tuple(
        Question(number=one.number, problem=_problem(one, key.units), guided=one.guided)
        for one in entries
    )


def _problem(entry: _Entry, system: str) -> Problem:
    """Make a problem from its givens, and hold its answers against the key."""
    family = worded(family_named(entry.family), system)
    givens = {name: read_amount(text) for name, text in entry.givens.items()}
    if givens.keys() != {one.name for one in family.givens}:
        raise PaperError(_stale(entry))
    results = _results(family, givens, system)
    again = {name: amount.plain() for name, amount in results.items()}
    problem = Problem(
        family=family, system=system, form=entry.form, seed=entry.seed,
        givens=givens, results=results,
        choices=tuple(
            Choice(letter=letter[:1], text=(), right=letter == entry.right, slip=slip)
            for letter, slip in entry.choices.items()
        ),
    )  # fmt: skip
    fits = problem.right == entry.right and (entry.form == CHOICE) == bool(entry.right)
    if again != entry.answer or problem.marks != entry.marks or not fits:
        raise PaperError(_stale(entry))
    return problem


def _results(family: AnyFamily, givens: dict[str, Amount], system: str) -> dict[str, Amount]:
    """Solve again."""
    if not isinstance(family, Family):
        return {}
    values = solve(family, {name: amount.value for name, amount in givens.items()})
    return {step.name: result_of(step, values[step.name], system=system) for step in family.steps}


def _stale(entry: _Entry) -> str:
    """Say that the family is no longer what it was."""
    return (
        f'Question {entry.number} of the key does not fit the family "{entry.family}" of today. '
        "Mark with the version that wrote the papers, or write them again from blueprint and seed."
    )
