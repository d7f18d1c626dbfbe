"""Runs the notebooks and sets each as a page: what its cells show, and its code folded away.

What a lesson shows after its guess lies behind a fold as well, for it is the guess that makes the
answer stick. A cell that fails stops the build.
"""

import re
from collections.abc import Iterator

from boomsim.classroom.pages.notebook_cells import (
    COMPARED,
    EXERCISE,
    GATE,
    Kernel,
    Shown,
    cells,
    exercise_of,
    guessed,
)
from boomsim.lessons.class_plan import LENGTH, SCENES, script
from boomsim.lessons.lesson_order import LESSONS
from boomsim.lessons.lesson_parts import Lesson

CLASS_PLAN, SCRIPT = "00-instructor", "screen.script("

FOLD = '<details class="{kind}"><summary>{says}</summary>\n\n'
END = "\n\n</details>\n"
PRINTED = ":::{{container}} printed\n```text\n{}\n```\n:::"
WRITTEN_DOWN = "I have written my guess down: go on"

HOW = (
    "Run the cells one by one, with Shift and Enter. Write your guess between the quotes: nothing "
    "goes on before there is one."
)
HOW_HERE = "Write your guess down, on paper. What the model says is behind the fold."


def set_cell(shown: tuple[Shown, ...]) -> str:
    """What a cell shows, as Markdown."""
    return "\n\n".join(_set(one) for one in shown)


def _set(one: Shown) -> str:
    if one.kind == "printed":
        return PRINTED.format(one.text)
    if one.kind == "sliders":
        return "*Here the notebook has sliders.*"
    if one.kind == "html":
        return f'```{{raw}} html\n<div class="shown">{one.text}</div>\n```'
    return f"```text\n{one.text}\n```"


class Page:
    """Blocks of a page; code that shows nothing goes with that of the next cell that does."""

    def __init__(self) -> None:
        self.blocks: list[str] = []
        self.codes: list[str] = []
        self.kernel = Kernel()

    def add(self, block: str) -> None:
        """Text."""
        self.fold_code()
        self.blocks.append(block)

    def run(self, code: str) -> None:
        """A cell."""
        shown = set_cell(self.kernel.run(code))
        self.codes.append(code)
        if shown:
            self.blocks.append(shown)
            self.fold_code()

    def fold_code(self) -> None:
        """Set the code that is waiting."""
        if self.codes:
            code = "\n\n".join(self.codes)
            self.blocks.append(
                FOLD.format(kind="code", says="code") + f"```python\n{code}\n```" + END
            )
            self.codes.clear()

    def text(self) -> str:
        """The whole page."""
        self.fold_code()
        return "\n\n".join(self.blocks) + "\n"


def lesson_page(lesson: Lesson) -> str:
    """A lesson up to its guess, and behind a fold what follows."""
    page, gated = Page(), False
    for kind, text in cells(lesson.file):
        if kind == "markdown":
            page.add(_below_the_fold(text) if gated else text.replace(HOW, HOW_HERE))
        elif GATE in text:
            page.kernel.run(guessed(text, lesson, "metric"))
            page.add(FOLD.format(kind="after-guess", says=WRITTEN_DOWN))
            gated = True
        elif EXERCISE in text:
            question, answer = exercise_of(text, lesson, "metric")
            page.add(question)
            page.add(FOLD.format(kind="after-guess", says=WRITTEN_DOWN))
            page.add(_set(Shown(kind="html", text=answer)) + END)
        else:
            page.run(_nothing_guessed(text, lesson))
    page.add(END)
    page.blocks.insert(1, _where(lesson))
    return page.text()


def class_plan() -> str:
    """The class of 45 minutes: all that its notebook shows."""
    page = Page()
    for kind, text in cells(CLASS_PLAN):
        if kind == "markdown":
            page.add(text)
            heading = text.splitlines()[0].removeprefix("## ")
            if heading in {scene.name for scene in SCENES}:
                page.add(_set(Shown(kind="html", text=script(heading)._repr_html_())))
        elif SCRIPT not in text:
            page.run(text)
    question, rest = page.blocks[0].removeprefix("# ").split("\n", 1)
    page.blocks[0] = f"# A class of {LENGTH} minutes\n\n**{question}**\n{rest}"
    return page.text()


def contents() -> str:
    """The list of all lessons, each with its question."""
    rows = [
        f"| {one.number} | [{one.title}](lessons/{one.file}.md) | {one.machine} |"
        for one in LESSONS
    ]
    return "\n".join(["| | question | machine |", "|---|---|---|", *rows, ""])


def _where(lesson: Lesson) -> str:
    return (
        f"*Lesson {int(lesson.number)} of {len(LESSONS)}. This page is the notebook "
        f"{lesson.file}, run; "
        "to change something and to move its sliders, open it with* `boomsim lab`. *Its sheet on "
        f"paper:* `boomsim handouts sheets --lesson {lesson.number}`"
    )


def _below_the_fold(text: str) -> str:
    """No headings, since a fold is no section."""
    return re.sub(r"^#+ (.*)$", r"```{rubric} \1\n```", text, flags=re.M)


def _nothing_guessed(text: str, lesson: Lesson) -> str:
    """On a page nobody has guessed: the comparison says what the model says, and no more."""
    if COMPARED not in text:
        return text
    blanks = ", ".join(['""'] * lesson.guess("metric").parts)
    return re.sub(r"this\.compare\([^)]*\)", f"this.compare({blanks})", text)


def pages() -> Iterator[tuple[str, str]]:
    """Every page by its file."""
    yield "class-plan.md", class_plan()
    for lesson in LESSONS:
        yield f"lessons/{lesson.file}.md", lesson_page(lesson)
