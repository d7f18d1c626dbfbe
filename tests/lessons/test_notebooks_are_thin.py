"""The notebooks as files: thin, in order, and without a number that nobody computed."""

import re

import pytest
from notebook_files import ALL, FOLDER, GATE, INSTRUCTOR, OF_LESSONS, cells, name, read

from boomsim.lessons.class_plan import SCENES
from boomsim.lessons.lesson_order import LESSONS

ORDER = [
    "Predict",
    "Run",
    "Compare",
    "Explain",
    "Change one thing",
    "Break it",
    "Summary",
    "Check yourself",
]
every = pytest.mark.parametrize("path", ALL, ids=name)
pairs = pytest.mark.parametrize(
    ("path", "lesson"), list(zip(OF_LESSONS, LESSONS, strict=True)), ids=lambda v: name(v)
    if hasattr(v, "stem") else "",
)  # fmt: skip


def test_every_notebook_of_the_folder_is_a_lesson_the_instructor_or_the_explorer():
    found = {path.name for path in FOLDER.glob("*.ipynb")}
    assert found - {"explorer.ipynb"} == {path.name for path in ALL}


@every
def test_nothing_that_was_run_is_stored(path):
    notebook = read(path)
    assert "widgets" not in notebook["metadata"]
    for cell in notebook["cells"]:
        assert cell["metadata"] == {}
        if cell["cell_type"] == "code":
            assert cell["outputs"] == []
            assert cell["execution_count"] is None


@every
def test_format_kernel_and_cell_names_are_steady(path):
    notebook = read(path)
    assert (notebook["nbformat"], notebook["nbformat_minor"]) == (4, 5)
    assert notebook["metadata"]["kernelspec"]["name"] == "python3"
    ids = [cell["id"] for cell in notebook["cells"]]
    assert ids == [f"lesson-{path.stem[:2]}-{k:02d}" for k in range(len(ids))]


@every
def test_text_cells_have_no_number_that_could_go_stale(path):
    for text in cells(path, "markdown"):
        assert not re.search(r"\d", text), text


@every
def test_code_cells_are_short_enough_for_an_apprentice(path):
    for text in cells(path, "code"):
        lines = [line for line in text.splitlines() if line.strip()]
        assert 1 <= len(lines) <= 8, text
        assert max(map(len, lines)) <= 100, text


@pairs
def test_a_lesson_has_its_question_for_a_title_and_three_things_to_be_able_to(path, lesson):
    head = cells(path, "markdown")[0]
    assert head.startswith(f"# {lesson.title}\n")
    assert lesson.title.endswith("?")
    bullets = [line.removeprefix("- ") for line in head.splitlines() if line.startswith("- ")]
    assert tuple(bullets) == lesson.able


@pairs
def test_a_lesson_has_its_headings_in_order(path, lesson):
    texts = cells(path, "markdown")
    headings = [line[3:] for text in texts for line in text.splitlines() if line.startswith("## ")]
    assert headings == ORDER


@pairs
def test_a_lesson_opens_itself_and_ends_with_its_own_check(path, lesson):
    code = cells(path, "code")
    assert f'lesson("{lesson.number}", units="metric")' in code[0]
    assert code[1] == "this.question"
    asked = [text for text in code if text.startswith("this.compare(")]
    # What is guessed stops the notebook before anything else is imported or run.
    assert GATE in code[2]
    assert code[2].splitlines()[-1].removeprefix(GATE) == asked[0].removeprefix("this.compare(")
    assert not any(GATE in text for text in code[:2] + code[3:])
    assert len(asked) == 1
    assert len(lesson.guess("metric").truths) == asked[0].count(",") + 1
    assert any(text == 'check("")' for text in code)


@every
def test_a_notebook_with_sliders_ends_by_asserting_that_nothing_was_hidden(path):
    code = cells(path, "code")
    if any("Slides(" in text for text in code):
        assert "assert not slides.troubles" in code[-1]


def test_the_scenes_of_the_class_are_the_headings_of_the_instructors_notebook():
    texts = cells(INSTRUCTOR, "markdown")
    headings = [text.splitlines()[0].removeprefix("## ") for text in texts[1:]]
    assert headings == ["Before the class", *(scene.name for scene in SCENES), "After the class"]
    for scene in SCENES:
        assert f'script("{scene.name}")' in cells(INSTRUCTOR, "code")
