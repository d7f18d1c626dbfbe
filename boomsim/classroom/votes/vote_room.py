"""A room: its questions, its ballot, and the pages that are connected to it."""

import asyncio
import json
import secrets
from collections.abc import Callable
from typing import Any

from boomsim.classroom.votes.ballot import Ballot, answer_of
from boomsim.lessons.choice_questions import ChoiceQuestion

MOST_PAGES = 400
"""So many pages are connected at once; a voter beyond them is refused."""

MOST_VOTERS = 5000
"""So many random numbers are given out in all."""

PAUSE = 0.2
"""News goes out at most so often [s]."""


class Full(Exception):
    """The room has as many pages as it holds."""


class Room:
    """What the class server knows; lives in one thread.

    Parameters
    ----------
    token : str
        Of the instructor

    Attributes
    ----------
    questions : dict of str to ChoiceQuestion
        By key
    ballot : Ballot
    """

    def __init__(self, questions: tuple[ChoiceQuestion, ...], *, token: str) -> None:
        self.questions = {one.key: one for one in questions}
        self.ballot, self.token = Ballot(), token
        self._voters: set[str] = set()
        self._pages: set[asyncio.Queue[str | None]] = set()
        self._news: asyncio.TimerHandle | None = None

    @property
    def here(self) -> int:
        """Pages that are connected."""
        return len(self._pages)

    def join(self, voter: str) -> tuple[str, "asyncio.Queue[str | None]"]:
        """Connect a page.

        Parameters
        ----------
        voter : str
            What the page has from an earlier connection; anything else gets a new number

        Returns
        -------
        str, asyncio.Queue
            The voter's number, and where its news arrive

        Raises
        ------
        Full
        """
        if self.here >= MOST_PAGES or len(self._voters) >= MOST_VOTERS:
            raise Full
        if voter not in self._voters:
            voter = secrets.token_urlsafe(12)
            self._voters.add(voter)
        # Only the newest state counts: a slow page misses what has been overtaken.
        page: asyncio.Queue[str | None] = asyncio.Queue()
        self._pages.add(page)
        self.changed()
        return voter, page

    def leave(self, page: "asyncio.Queue[str | None]") -> None:
        """Forget a page that is gone; its vote stays."""
        if page in self._pages:
            self._pages.discard(page)
            self.changed()

    def vote(self, voter: str, letter: str, round: int) -> bool:
        """Count a vote of a voter who is known."""
        counted = voter in self._voters and self.ballot.vote(voter, letter, round=round)
        if counted:
            self.changed()
        return counted

    def control(self, asked: str, question: str) -> bool:
        """Do what the instructor asks.

        Parameters
        ----------
        asked : str
            "open", "close", "show", "tell" or "look"
        question : str
            Key of the question to open

        Returns
        -------
        bool
            False for what is not known
        """
        if asked == "open":
            if question not in self.questions:
                return False
            self.ballot.open(self.questions[question])
        elif asked in _ACTS:
            _ACTS[asked](self.ballot)
        elif asked != "look":
            return False
        if asked != "look":
            self.changed()
        return True

    def known(self) -> dict[str, Any]:
        """What the instructor alone may see.

        Returns
        -------
        dict
            Plain values
        """
        asked = self.ballot.question
        return {
            "questions": [
                {"key": one.key, "lesson": one.lesson, "title": one.title, "asked": one.asked}
                for one in self.questions.values()
            ],
            "counts": self.ballot.counts,
            "before": self.ballot.before,
            "answer": answer_of(asked) if asked else None,
        }

    def seen(self) -> str:
        """What everybody may see, as JSON."""
        return json.dumps(self.ballot.seen() | {"here": self.here}, ensure_ascii=False)

    def changed(self) -> None:
        """Tell all pages soon; what changes meanwhile goes out together."""
        if self._news is None:
            self._news = asyncio.get_running_loop().call_later(PAUSE, self._send)

    def _send(self) -> None:
        self._news, seen = None, self.seen()
        for page in self._pages:
            while not page.empty():
                page.get_nowait()
            page.put_nowait(seen)


_ACTS: dict[str, Callable[[Ballot], None]] = {
    "close": Ballot.close,
    "show": Ballot.show,
    "tell": Ballot.tell,
}
