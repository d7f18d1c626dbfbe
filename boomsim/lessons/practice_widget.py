"""Fields and buttons in a notebook for whatever asks problems and judges answers."""

import re
import time
from collections.abc import Callable
from html import escape
from typing import Protocol

import ipywidgets as widgets
from IPython.display import display

from boomsim.caution import CAUTION
from boomsim.figures.colours_and_lines import VERDICTS
from boomsim.lessons.practice_feedback import Feedback
from boomsim.papers.paper import Asked, Question
from boomsim.papers.render.paper_html import asked_html

CLASS = "boomsim-practice"
MARKS = {"right": "✓ ", "wrong": "✗ ", "error": "⚠ "}
LATE = 3.0
"""A text that arrives so soon after a wish to check was meant to be checked [s]."""
_INDEX = re.compile(r"(?<=\w)_(\w+)")


class Asking(Protocol):
    """What asks: :class:`boomsim.lessons.practice.Practice` does."""

    question: Question
    units: str

    def next(self) -> Question:
        """Go to the next problem."""
        ...

    def answer(self, text: str = "", **parts: str) -> Feedback:
        """Judge an answer."""
        ...

    def hint(self) -> str:
        """Say one thing more."""
        ...

    @property
    def hints(self) -> tuple[str, ...]:
        """All that can be said."""
        ...


def show(practice: Asking) -> None:
    """Show the fields below a notebook cell."""
    display(build(practice))  # type: ignore[no-untyped-call]


def build(practice: Asking) -> widgets.VBox:
    """Build the fields and buttons.

    Returns
    -------
    ipywidgets.VBox
        With the class "boomsim-practice"; errors appear in its own panel
    """
    box = widgets.VBox()
    box.add_class(CLASS)
    _Face(practice, box).fill()
    return box


class _Face:
    """One problem on the screen."""

    def __init__(self, practice: Asking, box: widgets.VBox) -> None:
        self.practice, self.box = practice, box
        self.said, self.hinted = widgets.HTML(), widgets.HTML()
        self.said.add_class(f"{CLASS}-said")
        self.hinted.add_class(f"{CLASS}-hints")
        self.fields: dict[str, widgets.Widget] = {}
        self.given: list[str] = []
        self.asked_at = -LATE

    def fill(self) -> None:
        """Show the problem at hand with empty fields."""
        self.said.value = self.hinted.value = ""
        self.said.remove_class(f"{CLASS}-error")
        self.given, self.asked_at = [], -LATE
        text = widgets.HTML(f'<div class="{CLASS}-text">{asked_html(self.practice.question)}</div>')
        caution = widgets.HTML(f"<small>{escape(CAUTION)}</small>")
        below = (self._buttons(), self.said, self.hinted, caution)
        self.box.children = (text, *self._fields(), *below)

    def _fields(self) -> list[widgets.Widget]:
        """One field for every answer."""
        question = self.practice.question
        if question.is_choice:
            letters = [choice.letter for choice in question.problem.choices]
            choice = widgets.ToggleButtons(options=letters, value=None, description="Answer")
            choice.observe(self._changed, "value")
            self.fields = {"": choice}
        else:
            last = question.asked[-1].label
            self.fields = {
                "" if one.label == last else one.part: self._field(one) for one in question.asked
            }
        for place, field in enumerate(self.fields.values()):
            field.add_class(f"{CLASS}-answer-{place + 1}")
        return list(self.fields.values())

    def _field(self, asked: Asked) -> widgets.Text:
        """Make a field for a number, named so that it can be found without seeing it."""
        shown = asked.step.unit(self.practice.units).shown
        field = widgets.Text(
            description=f"{asked.step.words}", placeholder=f"number, in {shown} if no other unit",
            style={"description_width": "16em"}, layout={"width": "34em"}, continuous_update=False,
        )  # fmt: skip
        field.tooltip = asked.step.words
        field.on_msg(self._heard)
        field.observe(self._changed, "value")
        return field

    def _heard(self, field: widgets.Text, told: dict[str, object], _buffers: object) -> None:
        """Check when a person presses Enter."""
        if told.get("event") == "submit":
            self.asked_at = time.monotonic()
            if field.value.strip():
                self.guarded(self.check)

    def _changed(self, _change: object) -> None:
        """Check again what a browser sends only after the key or the click that asked for it."""
        if time.monotonic() - self.asked_at < LATE:
            self.guarded(self.check)

    def _buttons(self) -> widgets.HBox:
        """Check, hint, next."""
        made = []
        for name, action in (
            ("Check", self.check),
            ("Hint", self.hint),
            ("Next problem", self.next),
        ):
            button = widgets.Button(description=name, tooltip=name)
            button.add_class(f"{CLASS}-{name.split()[0].lower()}")
            button.on_click(lambda _, act=action: self.guarded(act))
            made.append(button)
        return widgets.HBox(made)

    def guarded(self, act: Callable[[], None]) -> None:
        """Show an exception in our own panel; in a callback it would be invisible."""
        try:
            self.said.remove_class(f"{CLASS}-error")
            act()
        except Exception as error:
            self.said.add_class(f"{CLASS}-error")
            kind = type(error).__name__
            self.tell(f"Something went wrong here, and not with you ({kind}: {error}).", "error")

    def check(self) -> None:
        """Judge what has been typed."""
        self.asked_at = time.monotonic()
        given = {name: str(field.value or "") for name, field in self.fields.items()}
        final = given.pop("", "")
        feedback = self.practice.answer(final, **{k: v for k, v in given.items() if v.strip()})
        self.tell(feedback.said, "right" if feedback.right else "wrong")

    def hint(self) -> None:
        """Show one hint more, below the earlier ones."""
        hint = self.practice.hint()
        if hint not in self.given:
            self.given.append(hint)
        items = "".join(f"<li>{_as_html(one)}</li>" for one in self.given)
        end = "" if len(self.given) < len(self.practice.hints) else "<p>That is all there is.</p>"
        self.hinted.value = f'<div role="status"><ol>{items}</ol>{end}</div>'

    def next(self) -> None:
        """Go on."""
        self.practice.next()
        self.fill()

    def tell(self, words: str, kind: str) -> None:
        """Say something below the buttons; screen readers say it too."""
        self.said.value = (
            f'<p role="status" data-kind="{kind}" style="color:{VERDICTS[kind]};font-weight:600">'
            f"{MARKS[kind]}{_as_html(words)}</p>"
        )


def _as_html(text: str) -> str:
    """Set the index of a letter below it: R_r."""
    return _INDEX.sub(r"<sub>\1</sub>", escape(text))
