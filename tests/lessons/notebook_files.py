"""The notebooks of the lessons, as data."""

import json
from pathlib import Path

from boomsim.lessons.first_guess import said_of
from boomsim.lessons.lesson_order import LESSONS, lesson_named

FOLDER = Path(__file__).parents[2] / "notebooks"
INSTRUCTOR = FOLDER / "00-instructor.ipynb"
OF_LESSONS = tuple(FOLDER / f"{lesson.file}.ipynb" for lesson in LESSONS)
ALL = (INSTRUCTOR, *OF_LESSONS)


def name(path):
    return path.stem


def read(path):
    return json.loads(path.read_text(encoding="utf-8"))


def cells(path, kind):
    return ["".join(c["source"]) for c in read(path)["cells"] if c["cell_type"] == kind]


GATE = "this.predict("
"""Stands in the cell beyond which nothing runs without a guess."""


def guessed(path):
    """The cell with the guess, as somebody fills it in who knows the answers."""
    (cell,) = [text for text in cells(path, "code") if GATE in text]
    for truth in lesson_named(path.stem).guess("metric").truths:
        answer = said_of(truth, "metric").replace(",", "")
        cell = cell.replace('=""', f'="{answer}"', 1)
    return cell


def with_guess(path):
    """The notebook as data, its guess filled in."""
    notebook = read(path)
    for cell in notebook["cells"]:
        if cell["cell_type"] == "code" and GATE in "".join(cell["source"]):
            cell["source"] = guessed(path)
    return notebook
