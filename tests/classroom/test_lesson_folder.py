"""The folder of lessons: what each page says before a guess, what it holds after, what it needs."""

import gzip
import json
import re
from base64 import b64decode
from html import unescape
from html.parser import HTMLParser

import pytest

from boomsim.caution import CAUTION
from boomsim.classroom.pages.lesson_folder import CRANE, INDEX, RUNTIME, WAYS, lesson_folder, parted
from boomsim.cli import main
from boomsim.lessons.choice_questions import choice_questions
from boomsim.lessons.lesson_order import lesson_named

LESSONS = tuple(lesson_named(number) for number in ("01", "02", "08"))


@pytest.fixture(scope="module")
def folder():
    pytest.importorskip("IPython")
    pytest.importorskip("mistune")
    made = lesson_folder(LESSONS, units="metric", runtime=None, compiler=None)
    return {name: content.decode("utf-8") for name, content in made.items()}


@pytest.fixture(params=LESSONS, ids=lambda one: one.number)
def lesson(request):
    return request.param


class Words(HTMLParser):
    """What of a page can be read: no style, no script, no sealed part."""

    def __init__(self, page):
        super().__init__()
        self.words, self._deaf = [], False
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        self._deaf = tag in ("script", "style")

    def handle_endtag(self, tag):
        self._deaf = False

    def handle_data(self, data):
        if not self._deaf:
            self.words.append(data)


def read(page):
    return " ".join(" ".join(Words(page).words).split())


def sealed(page):
    text = re.search(r'id="sealed">([A-Za-z0-9+/=]*)</script>', page)[1]
    return json.loads(gzip.decompress(b64decode(text)))


@pytest.mark.slow
def test_the_folder_holds_an_index_and_a_page_for_each_lesson(folder):
    assert set(folder) == {INDEX, WAYS, *(f"{one.file}.html" for one in LESSONS)}
    links = set(re.findall(r'href="([^"#:]+)"', folder[INDEX]))
    assert links == set(folder) - {INDEX}


def test_every_page_says_the_caution_and_asks_nothing_of_a_network(folder):
    for name, page in folder.items():
        assert CAUTION in unescape(page)
        assert "default-src 'none'" in page
        asked = re.findall(r'(?:src|href)="([^"]*)"', page)
        assert not [one for one in asked if re.match(r"(https?:)?//", one)], name


def test_before_a_guess_a_page_shows_and_holds_in_plain_words_nothing_that_follows_it(
    folder, lesson
):
    page = folder[f"{lesson.file}.html"]
    plain, rest = read(page), sealed(page)
    assert lesson.sheet("metric").because not in plain
    for question in choice_questions(lesson, "metric"):
        assert question.reason not in plain
        assert not any(one.thought in page for one in question.options if one.thought)
    assert "<img" not in page
    assert "<table" not in page
    follows = read(rest["html"])
    assert "Summary" in follows
    assert "Summary" not in plain


def test_after_it_stand_pictures_what_was_guessed_and_the_self_check(folder, lesson):
    rest = sealed(folder[f"{lesson.file}.html"])
    *guesses, check = choice_questions(lesson, "metric")
    assert [part["letter"] for part in rest["parts"]] == [one.right.letter for one in guesses]
    assert rest["check"]["letter"] == check.right.letter
    assert rest["check"]["reason"] == check.reason
    assert rest["html"].count('id="verdicts"') == 1
    assert rest["html"].count('id="check"') == 1
    assert "Check yourself" in rest["html"]


def test_the_live_picture_stands_there_as_it_begins_and_once_moved(folder, lesson):
    html = sealed(folder[f"{lesson.file}.html"])["html"]
    begun, moved = html.split("and once moved.")
    assert begun.rstrip().endswith(
        '<p class="small">In the notebook sliders move this; here it is as it begins,'
    )
    assert re.match(r'</p>\s*<p><b>[^<]+: \d+</b></p><div class="shown">', moved)


def test_a_page_shows_no_code_and_no_orders_for_a_notebook(folder, lesson):
    page = folder[f"{lesson.file}.html"]
    told = read(page) + read(sealed(page)["html"])
    for words in (
        "import ",
        "Shift and Enter",
        "between the quotes",
        "run the cell",
        "this.predict",
    ):
        assert words not in told


def test_sentences_that_a_notebook_breaks_are_whole_again_and_no_others(capsys):
    """What breaks them is asked itself: the lessons' own `tell`."""
    from boomsim.classroom.pages.lesson_pages import unwrapped
    from boomsim.lessons import tell

    said = ["Far out stability sets them all. " * 8, "A short line.", "Another."]
    for line in said:
        tell(line.strip())
    assert unwrapped(capsys.readouterr().out).splitlines() == [line.strip() for line in said]


@pytest.mark.slow
def test_a_lesson_in_other_units_speaks_in_them():
    made = lesson_folder(LESSONS[:1], units="us", runtime=None, compiler=None)
    page = made[f"{LESSONS[0].file}.html"].decode()
    assert re.search(r"\d ft", read(page))
    assert re.search(r"\d ft", read(sealed(page)["html"]))
    assert not re.search(r"\d m\b", read(page))


def test_a_live_page_is_parted_from_its_runtime_and_nothing_is_lost():
    whole = (
        "<meta content=\"script-src 'unsafe-inline' blob:\">all of it is in this file"
        '<script type="application/json" id="first">{}</script>\n'
        '<script type="text/plain" id="part-code">QUJD</script>\n'
        '<script type="text/plain" id="part-wasm">REVG+/==</script>\n<script>go</script>'
    )
    page, held = parted(whole)
    assert "QUJD" not in page and "REVG" not in page
    assert page.index(f'src="{RUNTIME}"') < page.index("<script>go")
    assert 'code: "QUJD"' in held and 'wasm: "REVG+/=="' in held
    assert "in this folder" in page
    with pytest.raises(ValueError, match="carries no runtime"):
        parted("<p>nothing</p>")
    assert CRANE.endswith(".html")


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (["--lesson", "99"], "no lesson"),
        (["--runtime", "nowhere"], "lacks pyodide.js"),
        (["--units", "us", "--lesson", "same-lenght"], "same-length"),
        (["--address", "https://example.org/lessons/"], "Add --runtime FOLDER"),
        (["--runtime", "nowhere", "--address", "lessons"], "https://example.org/lessons/"),
    ],
)
def test_what_cannot_be_is_refused_in_words_and_nothing_is_written(more, says, tmp_path, capsys):
    assert main(["lessons", str(tmp_path / "made"), *more]) == 2
    assert says in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_file_in_the_way_is_refused(tmp_path, capsys):
    (tmp_path / "made").write_text("mine")
    assert main(["lessons", str(tmp_path / "made")]) == 2
    assert "is a file" in capsys.readouterr().err


@pytest.mark.slow
def test_the_command_writes_the_folder_and_says_how_it_is_opened(tmp_path, capsys):
    assert main(["lessons", str(tmp_path / "made"), "--lesson", "08"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "open index.html in any browser" in told
    assert "not for planning a lift" in told
    written = {one.name for one in (tmp_path / "made").iterdir()}
    assert written == {INDEX, WAYS, "08-gross-to-net.html"}
