"""The notebooks of the lessons, as data."""

import json
from pathlib import Path

from boomsim.lab.lessons.contents import LESSONS

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
