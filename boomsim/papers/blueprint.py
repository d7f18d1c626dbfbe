"""A blueprint: what an examiner writes down about a paper, in TOML.

Every fault is named at once, each with its place, the value, what is needed and the way out.
"""

import os
import tomllib
from collections.abc import Iterable
from pathlib import Path
from typing import Annotated, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ValidationError,
    field_validator,
    model_validator,
)  # fmt: skip
from pydantic_core import ErrorDetails

from boomsim.files.file_errors import FileError
from boomsim.files.shipped_files import shipped_files
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.papers.family_registry import families
from boomsim.papers.marking_policy import USUAL, Policy
from boomsim.papers.paper_errors import BlueprintError
from boomsim.papers.problems.family import TOPICS
from boomsim.units import did_you_mean

Form = Literal["numeric", "choice", "mixed"]
Feedback = Literal["never", "at the end", "at once"]
LARGEST_FILE = 200_000


def _as_text(seed: object) -> object:
    """Take a whole number for a seed, too."""
    return str(seed) if isinstance(seed, int) and not isinstance(seed, bool) else seed


Seed = Annotated[str, BeforeValidator(_as_text), Field(min_length=1, max_length=80)]


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)


class Part(_Strict):
    """Questions that belong together.

    Attributes
    ----------
    title : str
        Printed above them; "" for nothing
    topics, families : list of str
        What to choose from: whole topics, single families, or both
    questions : int
        [1]
    marks : int or None
        Of the part; whatever comes if not given [1]
    form : str or None
        Instead of the paper's
    guided : bool or None
        Instead of the paper's
    """

    title: str = Field(default="", max_length=120)
    topics: list[str] = []
    families: list[str] = []
    questions: int = Field(ge=1, le=60)
    marks: int | None = Field(default=None, ge=1, le=500)
    form: Form | None = None
    guided: bool | None = None

    @field_validator("topics")
    @classmethod
    def _known_topics(cls, topics: list[str]) -> list[str]:
        return _known(topics, TOPICS, "topic")

    @field_validator("families")
    @classmethod
    def _known_families(cls, names: list[str]) -> list[str]:
        return _known(names, tuple(families()), "problem family")

    @model_validator(mode="after")
    def _something(self) -> "Part":
        if not self.topics and not self.families:
            raise ValueError("names no topics and no families. Give at least one of them")
        return self


class Blueprint(_Strict):
    """A paper to be set.

    Attributes
    ----------
    minutes : int
        Time allowed [min]
    form : str
        "numeric", "choice", or "mixed": questions of difficulty 1 and 2 as choices
    guided : bool
        True asks for every step; False for the answer alone
    difficulty : list of two int
        Easiest and hardest question, see :func:`boomsim.papers.problems.difficulty.effort_of` [1]
    variants : int
        How many papers [1]
    vary : str
        "numbers": the same families in every variant; "families": others of equal marks and
        equal difficulty
    order : str
        "rising": easier questions first; "shuffled": another order in every variant
    seed : str or int
        Of a sitting: secret until it is over
    feedback : str
        When a learning platform shows the worked solution: "never" (it is not in the package),
        "at the end" of the test or "at once" after each question
    instructions : list of str
        Printed below the title, beside the usual ones
    marking : Policy
        What a slip, a unit and a rounding cost
    """

    title: str = Field(min_length=1, max_length=120)
    subtitle: str = Field(default="", max_length=200)
    minutes: int = Field(ge=1, le=600)
    units: Literal["metric", "us"] = "metric"
    form: Form = "numeric"
    guided: bool = True
    difficulty: Annotated[list[int], Field(min_length=2, max_length=2)] = [1, 5]
    variants: int = Field(default=1, ge=1, le=5000)
    vary: Literal["numbers", "families"] = "numbers"
    order: Literal["rising", "shuffled"] = "rising"
    seed: Seed = "1"
    feedback: Feedback = "never"
    marking: Policy = USUAL
    instructions: list[str] = []
    part: Annotated[list[Part], Field(min_length=1, max_length=40)]

    @field_validator("difficulty")
    @classmethod
    def _in_order(cls, ends: list[int]) -> list[int]:
        if not 1 <= ends[0] <= ends[1] <= 5:
            raise ValueError(f"is {ends}, and needs two numbers from 1 to 5, the easier first")
        return ends


def ready_names() -> tuple[str, ...]:
    """List the blueprints that come with the package.

    Returns
    -------
    tuple of str
        In alphabetical order
    """
    return tuple(name.removesuffix(".toml") for name in shipped_files("exercises", ending=".toml"))


def blueprint_text(name_or_path: str | Path) -> str:
    """Read what a blueprint says, to set it or to copy and change it.

    Parameters
    ----------
    name_or_path : str or Path
        One of `ready_names`, or a TOML file

    Raises
    ------
    FileError
        If there is no such file, or it is no text
    """
    if name_or_path in ready_names():
        ready = shipped_files("exercises", ending=".toml")[f"{name_or_path}.toml"]
        return ready.read_text(encoding="utf-8")
    path = Path(name_or_path)
    try:
        return text_of(read_bytes(path, most=LARGEST_FILE), name=path.name)
    except FileError as error:
        raise FileError(f"{error}{_ready_instead(path)}") from None


def _ready_instead(path: Path) -> str:
    """Say which blueprints there are, to who named a file that is not there."""
    if os.path.exists(path):
        return ""
    meant = did_you_mean(path.name.removesuffix(".toml"), ready_names())
    return f"{meant} Ready ones are {', '.join(ready_names())}; a file of your own ends in .toml."


def read_blueprint(path: str | Path, **changes: object) -> Blueprint:
    """Read a blueprint.

    Parameters
    ----------
    path : str or Path
        One of `ready_names`, or a TOML file
    **changes : object
        Fields to replace, such as ``units="us"``, ``variants=30`` or ``seed=7``; None keeps

    Raises
    ------
    BlueprintError
        Names every fault
    """
    source = Path(path)
    try:
        table = tomllib.loads(blueprint_text(path))
    except tomllib.TOMLDecodeError as error:
        raise BlueprintError(f"{source.name} is not TOML: {error}. Mend that line.") from None
    except FileError as error:
        raise BlueprintError(str(error)) from None
    except (ValueError, RecursionError):
        raise BlueprintError(
            f"{source.name} is not TOML: a number is too long or brackets nest too deep. Mend it."
        ) from None
    given = {name: value for name, value in changes.items() if value is not None}
    return make_blueprint(table | given, name=source.name)


def make_blueprint(table: dict[str, object], *, name: str = "blueprint") -> Blueprint:
    """Check a blueprint that is already a dictionary.

    Parameters
    ----------
    name : str
        For the error message
    """
    try:
        return Blueprint.model_validate(table)
    except ValidationError as error:
        faults = [f"  {_place(one)}: {_said(one)}" for one in error.errors()]
        count = "one fault" if len(faults) == 1 else f"{len(faults)} faults"
        raise BlueprintError("\n".join([f"{name} has {count}:", *faults])) from None


def _known(names: list[str], known: tuple[str, ...], what: str) -> list[str]:
    """Refuse unknown names, and say which one was probably meant."""
    wrong = [f'"{n[:40]}" is no {what}.{did_you_mean(n, known)}' for n in names if n not in known]
    if wrong:
        raise ValueError(f"{' '.join(wrong)} Known: {', '.join(known)}")
    return names


def _place(fault: ErrorDetails) -> str:
    """Where it is: part[2].topics."""
    text = ""
    for step in fault["loc"]:
        text += f"[{step + 1}]" if isinstance(step, int) else f".{step}" if text else str(step)
    return text or "file"


def _fields(loc: tuple[int | str, ...]) -> Iterable[str]:
    """Keys that are known at a place."""
    if len(loc) == 1:
        return Blueprint.model_fields
    return Policy.model_fields if loc[0] == "marking" else Part.model_fields


def _said(fault: ErrorDetails) -> str:
    """Say what is wrong, in words of ours."""
    if fault["type"] == "extra_forbidden":
        fields = _fields(fault["loc"])
        return f"this key is not known.{did_you_mean(str(fault['loc'][-1]), fields)}"
    if fault["type"] == "missing":
        return "is missing; write it"
    needed = _NEEDS.get(fault["type"], fault["msg"].removeprefix("Value error, "))
    message = needed.format(**fault.get("ctx", {}))
    value = repr(fault["input"])
    shown = f"is {value[:60]} and " if isinstance(fault["input"], str | int | float) else ""
    return f"{shown}{message}" if fault["type"] in _NEEDS else message


_NEEDS = {
    "int_type": "needs a whole number",
    "bool_type": "needs true or false",
    "string_type": "needs text in quotation marks",
    "list_type": "needs a list in square brackets",
    "model_type": "needs a table with keys of its own",
    "literal_error": "needs to be {expected}",
    "greater_than_equal": "needs to be {ge} or more",
    "less_than_equal": "needs to be {le} or less",
    "string_too_short": "needs at least {min_length} character",
    "string_too_long": "needs to be {max_length} characters or shorter",
    "too_short": "needs {min_length} or more of them, and has {actual_length}",
    "too_long": "needs {max_length} or fewer of them, and has {actual_length}",
}
"""What a field needs, by the library's name of the fault."""
