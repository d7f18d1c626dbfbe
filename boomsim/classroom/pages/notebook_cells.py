"""A lesson's notebook, run in this process: what each cell shows, without a server or a browser."""

import json
import os
import re
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from boomsim.files.shipped_files import shipped_files
from boomsim.lessons.first_guess import said_of
from boomsim.lessons.lesson_parts import Lesson
from boomsim.lessons.lesson_sliders import Slides

GATE, COMPARED, EXERCISE = "this.predict(", "this.compare(", "this.exercise("
"""In the cell beyond which nothing runs without a guess, the one that holds it up, and in one that
asks something more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """One thing that a cell shows.

    Attributes
    ----------
    kind : str
        "printed" or "text" (plain text), "html" (a table, a picture), or "sliders" (HTML of what
        stands over them at their start)
    text : str
    moved : tuple of (str, str)
        Of sliders: what is moved and to where, and the HTML that then stands over them
    """

    kind: str
    text: str
    moved: tuple[str, str] = ("", "")


def cells(name: str) -> Iterator[tuple[str, str]]:
    """Give kind and text of each cell of a notebook that came with the package.

    Parameters
    ----------
    name : str
        Without its ending

    Yields
    ------
    (str, str)
        "markdown" or "code", and the text
    """
    file = shipped_files("notebooks", ending=".ipynb")[f"{name}.ipynb"]
    for cell in json.loads(file.read_text(encoding="utf-8"))["cells"]:
        yield cell["cell_type"], "".join(cell["source"])


def guessed(text: str, lesson: Lesson, units: str) -> str:
    """Fill the cell with the guess in, as somebody does who knows the answers."""
    for truth in lesson.guess(units).truths:
        said = said_of(truth, units).replace(",", "")
        text = text.replace('=""', f'="{said}"', 1)
    return text


def exercise_of(text: str, lesson: Lesson, units: str) -> tuple[str, str]:
    """Give question and answer of a cell that asks something more, the answer as HTML."""
    from boomsim.lessons.shown.shown_in_order import shown_of

    name = text.removeprefix(EXERCISE).split('"')[1]
    asked = shown_of(lesson.number).exercises[name](units)
    return asked.guess.question, asked.told()._repr_html_()


class Kernel:
    """Runs cells one after another, and keeps what each shows."""

    def __init__(self) -> None:
        # Nothing of a person's own set-up is read, nothing is left in it.
        os.environ["IPYTHONDIR"] = tempfile.mkdtemp()
        from IPython.core.interactiveshell import InteractiveShell

        InteractiveShell.clear_instance()  # type: ignore[no-untyped-call, unused-ignore]
        self.shell: Any = InteractiveShell.instance(colors="nocolor")  # type: ignore[no-untyped-call, unused-ignore]

    def run(self, code: str) -> tuple[Shown, ...]:
        """Run a cell; one that fails raises what it raised."""
        from IPython.utils.capture import capture_output

        with capture_output() as seen:
            done = self.shell.run_cell(code, store_history=False)
        done.raise_error()
        printed = re.sub(r"^Out\[\d*\]: .*\Z", "", seen.stdout, flags=re.M | re.S).rstrip()
        outputs: list[Any] = list(seen.outputs)
        shown = [_shown(one._repr_mimebundle_()) for one in outputs]
        if done.result is not None:
            shown.append(self._result(done.result))
        return (*([Shown(kind="printed", text=printed)] if printed.strip() else []), *shown)

    def _result(self, result: Any) -> Shown:
        data, _ = self.shell.display_formatter.format(result)
        if isinstance(result, Slides):
            return Shown(kind="sliders", text=result.shown, moved=result.moved())
        return _shown(data)


def _shown(data: Any) -> Shown:
    data = data[0] if isinstance(data, tuple) else data
    made = data.get("text/html") or data.get("image/svg+xml")
    return Shown(kind="html", text=made) if made else Shown(kind="text", text=data["text/plain"])
