"""Runs the notebooks and sets each as a page: what its cells show, and its code folded away.

What a lesson shows after its guess lies behind a fold as well, for it is the guess that makes the
answer stick. A cell that fails stops the build.
"""

import json
import os
import re
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from boomsim.lessons.class_plan import LENGTH
from boomsim.lessons.first_guess import said_of
from boomsim.lessons.lesson_order import LESSONS
from boomsim.lessons.lesson_parts import Lesson

NOTEBOOKS = Path(__file__).parents[1] / "notebooks"
CLASS_PLAN = "00-instructor"

GATE, COMPARED = "this.predict(", "this.compare("
"""In the cell beyond which nothing runs without a guess, and in the one that holds it up."""

FOLD = '<details class="{kind}"><summary>{says}</summary>\n\n'
END = "\n\n</details>\n"
PRINTED = ":::{{container}} printed\n```text\n{}\n```\n:::"
WRITTEN_DOWN = "I have written my guess down: go on"

HOW = (
    "Run the cells one by one, with Shift and Enter. Write your guess between the quotes: nothing "
    "goes on before there is one."
)
HOW_HERE = "Write your guess down, on paper. What the model says is behind the fold."


class Kernel:
    """Runs cells in this process, one after another, and keeps what each shows."""

    def __init__(self) -> None:
        # Nothing of a person's own set-up is read, nothing is left in it.
        os.environ["IPYTHONDIR"] = tempfile.mkdtemp()
        from IPython.core.interactiveshell import InteractiveShell

        InteractiveShell.clear_instance()
        self.shell = InteractiveShell.instance(colors="nocolor")

    def run(self, code: str) -> str:
        """What a cell shows, as Markdown."""
        from IPython.utils.capture import capture_output

        with capture_output() as seen:
            done = self.shell.run_cell(code, store_history=False)
        done.raise_error()
        printed = re.sub(r"^Out\[\d*\]: .*\Z", "", seen.stdout, flags=re.M | re.S)
        shown = [self._set(one._repr_mimebundle_()) for one in seen.outputs]
        shown += [self._result(done.result)] if done.result is not None else []
        return "\n\n".join([*([PRINTED.format(printed.rstrip())] * bool(printed.strip())), *shown])

    def _result(self, result: Any) -> str:
        data, _ = self.shell.display_formatter.format(result)
        return self._set(data)

    def _set(self, data: Any) -> str:
        data = data[0] if isinstance(data, tuple) else data
        if "application/vnd.jupyter.widget-view+json" in data:
            return "*Here the notebook has sliders.*"
        made = data.get("text/html") or data.get("image/svg+xml")
        if made:
            return f'```{{raw}} html\n<div class="shown">{made}</div>\n```'
        return f"```text\n{data['text/plain']}\n```"


def cells(name: str) -> Iterator[tuple[str, str]]:
    """Kind and text of each cell of a notebook."""
    data = json.loads((NOTEBOOKS / f"{name}.ipynb").read_text(encoding="utf-8"))
    for cell in data["cells"]:
        yield cell["cell_type"], "".join(cell["source"])


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
        shown = self.kernel.run(code)
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
            page.kernel.run(_guessed(text, lesson))
            page.add(FOLD.format(kind="after-guess", says=WRITTEN_DOWN))
            gated = True
        else:
            page.run(_nothing_guessed(text, lesson))
    page.add(END)
    page.blocks.insert(1, _where(lesson))
    return page.text()


def class_plan() -> str:
    """The class of 45 minutes: all that its notebook shows."""
    page = Page()
    for kind, text in cells(CLASS_PLAN):
        page.add(text) if kind == "markdown" else page.run(text)
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


def _guessed(text: str, lesson: Lesson) -> str:
    """The cell with the guess, as somebody fills it in who knows the answers."""
    for truth in lesson.guess("metric").truths:
        said = said_of(truth, "metric").replace(",", "")
        text = text.replace('= ""', f'= "{said}"', 1)
    return text


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
