"""A vote on one question after another: what is counted, and what may be seen of it when."""

from collections import Counter
from dataclasses import dataclass, field
from typing import Any

from boomsim.lessons.choice_questions import ChoiceQuestion

OPEN, CLOSED = "open", "closed"


@dataclass(slots=True, kw_only=True)
class Ballot:
    """One room's vote. Knows voters by random ids only, and keeps nothing but their last letter.

    Attributes
    ----------
    question : ChoiceQuestion or None
        None before the first is chosen
    round : int
        Grows with each opening, so that a late vote for the last question is not counted for this
    votes : dict of str to str
        Letter by voter
    before : dict of str to int
        How the same question was answered before the class talked it over
    phase : str
        "open" or "closed"
    shown, told : bool
        Whether the distribution, and the answer, may be seen by all
    """

    question: ChoiceQuestion | None = None
    round: int = 0
    votes: dict[str, str] = field(default_factory=dict)
    before: dict[str, int] = field(default_factory=dict)
    phase: str = CLOSED
    shown: bool = False
    told: bool = False

    @property
    def counts(self) -> dict[str, int]:
        """Votes by letter, letters without a vote too."""
        if self.question is None:
            return {}
        found = Counter(self.votes.values())
        return {one.letter: found[one.letter] for one in self.question.options}

    def open(self, question: ChoiceQuestion) -> None:
        """Ask a question, or ask it again; then what was voted before is kept for comparison."""
        again = self.question is not None and self.question.key == question.key
        self.before = self.counts if again and self.votes else {}
        self.question, self.phase, self.round = question, OPEN, self.round + 1
        self.votes, self.shown, self.told = {}, False, False

    def close(self) -> None:
        """Take no more votes."""
        self.phase = CLOSED

    def show(self) -> None:
        """Let everybody see how the votes are distributed."""
        self.shown = self.question is not None

    def tell(self) -> None:
        """Close, show, and tell the answer with its reason."""
        self.close()
        self.show()
        self.told = self.question is not None

    def vote(self, voter: str, letter: str, *, round: int) -> bool:
        """Count a vote; a later one of the same voter takes its place.

        Parameters
        ----------
        round : int
            That the voter's page shows

        Returns
        -------
        bool
            Whether it was counted
        """
        known = self.question is not None and letter in self.counts
        if self.phase != OPEN or round != self.round or not known:
            return False
        self.votes[voter] = letter
        return True

    def seen(self) -> dict[str, Any]:
        """What everybody may see now: no count before it is shown, no answer before it is told.

        Returns
        -------
        dict
            Plain values
        """
        made: dict[str, Any] = {"phase": self.phase, "round": self.round, "votes": len(self.votes)}
        if self.question is None:
            return made
        made["question"] = _asked(self.question)
        if self.shown:
            made |= {"counts": self.counts, "before": self.before}
        if self.told:
            made["answer"] = answer_of(self.question)
        return made


def _asked(question: ChoiceQuestion) -> dict[str, Any]:
    return {
        "key": question.key,
        "lesson": question.lesson,
        "title": question.title,
        "words": question.words,
        "asked": question.asked,
        "options": [{"letter": one.letter, "words": one.words} for one in question.options],
        "given": question.given,
        "table": [question.head, *question.rows] if question.rows else [],
    }


def answer_of(question: ChoiceQuestion) -> dict[str, Any]:
    """The answer, its reason, and the thought behind each other choice.

    Returns
    -------
    dict
        Plain values
    """
    return {
        "letter": question.right.letter,
        "reason": question.reason,
        "thoughts": {one.letter: one.thought for one in question.options if one.thought},
    }
