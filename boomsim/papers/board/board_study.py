"""Everything that a board is told about a marked class, worked out once."""

from dataclasses import dataclass
from functools import cached_property

from boomsim.papers.board.class_thirds import FEWEST
from boomsim.papers.board.cut_score import Cut, Judgements, cut_of
from boomsim.papers.board.item_analysis import Item, items, same_paper
from boomsim.papers.board.learning_outcomes import Outcome, outcomes
from boomsim.papers.board.mark_reliability import Reliability, reliability
from boomsim.papers.marking.class_figures import FEW, LEAST
from boomsim.papers.marking.mark_class import CandidateMark, Marked

UNLIKE = (
    "Reliability cannot be told: variants have questions of different families, and alpha compares "
    "candidates who had the same questions."
)


@dataclass(frozen=True, kw_only=True, eq=False)
class Board:
    """A marked class as a board looks at it."""

    marked: Marked
    judged: Judgements | None = None

    @property
    def count(self) -> int:
        """Candidates [1]."""
        return len(self.marked.candidates)

    @cached_property
    def items(self) -> tuple[Item, ...]:
        """Every question."""
        return items(self.marked)

    @cached_property
    def outcomes(self) -> tuple[Outcome, ...]:
        """Every topic."""
        return outcomes(self.items)

    @cached_property
    def reliability(self) -> Reliability | str:
        """Alpha and its interval, or why it cannot be told."""
        marks = same_paper(self.marked.candidates)
        return UNLIKE if marks is None else reliability(marks)

    @property
    def shows_thirds(self) -> bool:
        """Whether thirds of the class are more than single people."""
        return self.count >= FEWEST

    @cached_property
    def cuts(self) -> tuple[Cut, ...]:
        """Different cut scores: one, unless variants have different questions."""
        if self.judged is None:
            return ()
        found = {cut_of(self.judged, one).by_judge: one for one in self.marked.candidates}
        return tuple(cut_of(self.judged, one) for one in found.values())

    def passes(self, one: CandidateMark, *, shift: float = 0.0) -> bool:
        """Whether a candidate reaches the cut score, moved by some marks."""
        assert self.judged is not None
        return one.marks >= cut_of(self.judged, one).marks + shift - 1e-9

    def passed(self, *, shift: float = 0.0) -> int:
        """Count the candidates who reach the cut score, moved by some marks [1]."""
        return sum(self.passes(one, shift=shift) for one in self.marked.candidates)

    @cached_property
    def cautions(self) -> tuple[str, ...]:
        """What the size of the class and unread answers do to the figures."""
        return tuple(filter(None, (self._small(), self._provisional(), self.marked.unchecked)))

    def _small(self) -> str:
        """What cannot be told of a small class."""
        who = "one candidate" if self.count == 1 else f"{self.count or 'no'} candidates"
        if self.count < LEAST:
            return (
                f"From {who} only the marks can be told. Discrimination and reliability take at "
                f"least {LEAST} candidates, thirds of the class at least {FEWEST}."
            )
        if self.count < FEW:
            thirds = "" if self.shows_thirds else f" Thirds take at least {FEWEST} candidates."
            return f"With {who} the figures say little: one other candidate moves them.{thirds}"
        return ""

    def _provisional(self) -> str:
        """Say that marks may still change."""
        open_ = sum(one.unread > 0 for one in self.marked.candidates)
        whose = "1 candidate" if open_ == 1 else f"{open_} candidates"
        return f"The marks of {whose} are provisional: answers could not be read." if open_ else ""
