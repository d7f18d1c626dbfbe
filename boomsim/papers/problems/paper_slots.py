"""One place in a paper: a family, and how it is asked."""

from dataclasses import dataclass

from boomsim.papers.problems.family import AnyFamily, ChoiceFamily
from boomsim.papers.problems.problem import NUMERIC


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """One place in a paper: a family, and how it is asked.

    Attributes
    ----------
    family : Family or ChoiceFamily
    form : str
        "numeric" or "choice"
    part : int
        Number of the part, from 0 [1]
    """

    family: AnyFamily
    form: str
    guided: bool
    part: int

    @property
    def marks(self) -> int:
        """What the question is worth [1]."""
        whole = self.form == NUMERIC or isinstance(self.family, ChoiceFamily)
        return self.family.marks if whole else (self.family.marks + 1) // 2
