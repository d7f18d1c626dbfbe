"""The face of :class:`boomsim.papers.practice.Practice` in a notebook."""

from html import escape
from typing import TYPE_CHECKING

import ipywidgets as widgets
from IPython.display import display

from boomsim.caution import CAUTION
from boomsim.papers.html import asked_html
from boomsim.papers.paper import Asked

if TYPE_CHECKING:
    from boomsim.papers.practice import Practice

CLASS = "boomsim-practice"


def show(practice: "Practice") -> None:
    """Show the fields below a notebook cell.

    Parameters
    ----------
    practice : Practice
    """
    display(build(practice))  # type: ignore[no-untyped-call]


def build(practice: "Practice") -> widgets.VBox:
    """Build the fields and buttons.

    Parameters
    ----------
    practice : Practice

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

    def __init__(self, practice: "Practice", box: widgets.VBox) -> None:
        self.practice, self.box = practice, box
        self.said = widgets.HTML()
        self.said.add_class(f"{CLASS}-said")
        self.fields: dict[str, widgets.Widget] = {}

    def fill(self) -> None:
        """Show the problem at hand with empty fields."""
        self.said.value = ""
        text = widgets.HTML(f'<div class="{CLASS}-text">{asked_html(self.practice.question)}</div>')
        caution = widgets.HTML(f"<small>{escape(CAUTION)}</small>")
        self.box.children = (text, *self._fields(), self._buttons(), self.said, caution)

    def _fields(self) -> list[widgets.Widget]:
        """One field for every answer."""
        question = self.practice.question
        if question.is_choice:
            letters = [choice.letter for choice in question.problem.choices]
            choice = widgets.ToggleButtons(options=letters, value=None, description="Answer")
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
        return field

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

    def guarded(self, act: object) -> None:
        """Show an exception in our own panel; in a callback it would be invisible."""
        try:
            act()  # type: ignore[operator]
        except Exception as error:
            self.said.add_class(f"{CLASS}-error")
            self.tell(f"Something went wrong here: {error}", "error")

    def check(self) -> None:
        """Judge what has been typed."""
        given = {name: str(field.value or "") for name, field in self.fields.items()}
        final = given.pop("", "")
        feedback = self.practice.answer(final, **{k: v for k, v in given.items() if v.strip()})
        self.tell(feedback.said, "right" if feedback.right else "wrong")

    def hint(self) -> None:
        """Show the next hint."""
        self.tell(self.practice.hint(), "hint")

    def next(self) -> None:
        """Go on."""
        self.practice.next()
        self.fill()

    def tell(self, words: str, kind: str) -> None:
        """Say something below the buttons; screen readers say it too."""
        mark = {"right": "✓ ", "wrong": "✗ ", "hint": "→ "}.get(kind, "")
        self.said.value = f'<p role="status" data-kind="{kind}">{mark}{escape(words)}</p>'
