"""The notebooks as files: thin, in order, and without a number that nobody computed."""

import re

import pytest
from notebook_files import ALL, FOLDER, GATE, INSTRUCTOR, OF_LESSONS, cells, name, read

from boomsim.lessons.class_plan import SCENES
from boomsim.lessons.class_screen import SHOWN as ON_SCREEN
from boomsim.lessons.lesson_order import LESSONS
from boomsim.lessons.shown.shown_in_order import shown_of

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
QUOTED = re.compile(r'"([^"]+)"')
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
        assert 1 <= len(lines) <= MOST_OF_A_CELL, text
        assert max(map(len, lines)) <= 100, text


MOST, MOST_IMPORTS, MOST_OF_A_CELL = 12, 2, 4
"""Lines of code of a lesson, imports among them, and lines of any cell; the cell that opens a
lesson has its imports and shows the question."""


@pytest.mark.parametrize("path", OF_LESSONS, ids=name)
def test_a_lesson_is_twelve_lines_of_code_and_two_imports_at_most(path):
    lines = [line for text in cells(path, "code") for line in text.splitlines()]
    code = [line for line in lines if line.strip() and not line.startswith("#")]
    assert len(code) <= MOST, code
    imports = [line for line in code if "import " in line]
    assert 1 <= len(imports) <= MOST_IMPORTS
    allowed = {"import boomsim as bs", "from boomsim.lessons import lesson"}
    assert set(imports) <= allowed
    for text in cells(path, "code")[1:]:
        assert len([line for line in text.splitlines() if not line.startswith("#")]) <= 2


@pytest.mark.parametrize("path", OF_LESSONS, ids=name)
def test_a_lesson_has_one_live_picture(path):
    assert cells(path, "code").count("this.live") == 1


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
    assert code[0].splitlines()[-1] == "this.question"
    # What is guessed stops the notebook before anything else is run.
    assert GATE in code[1]
    assert not any(GATE in text for text in code[:1] + code[2:])
    assert code[1].count('=""') == lesson.guess("metric").parts
    assert code.count("this.compare()") == 1
    assert any(text == 'this.check("")' for text in code)


@pairs
def test_a_lesson_shows_only_what_it_has_and_all_of_its_exercises(path, lesson):
    code, has = "\n".join(cells(path, "code")), shown_of(lesson.number)
    shown = [
        name for args in re.findall(r"this\.show\((.*)\)", code) for name in QUOTED.findall(args)
    ]
    asked = re.findall(r'this\.exercise\("([^"]+)"(.*)\)', code)
    assert sorted(shown) == sorted(has.views)
    assert sorted(title for title, _ in asked) == sorted(has.exercises)
    for title, blanks in asked:
        assert blanks.count('=""') == has.exercises[title]("metric").guess.parts


def test_the_scenes_of_the_class_are_the_headings_of_the_instructors_notebook():
    texts = cells(INSTRUCTOR, "markdown")
    headings = [text.splitlines()[0].removeprefix("## ") for text in texts[1:]]
    assert headings == ["Before the class", *(scene.name for scene in SCENES), "After the class"]


def test_the_projector_shows_all_of_the_class_and_no_word_of_the_script():
    code = cells(INSTRUCTOR, "code")
    shown = [view for text in code if "screen.show(" in text for view in QUOTED.findall(text)]
    assert shown == list(ON_SCREEN)
    assert code.count("screen.script()") == 1
    everything = " ".join([*code, *cells(INSTRUCTOR, "markdown")])
    for scene in SCENES:
        assert scene.point not in everything
        assert not any(reply in everything for _, reply in scene.wrong)
