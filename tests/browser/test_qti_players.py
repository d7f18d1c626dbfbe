"""Our QTI items in players that are not ours, in a real browser: do they score as an examiner does?

Two open-source players from the npm registry, by other people and with nothing in common:
``@citolab/qti-components`` (web components) and ``qti3-item-player`` (Vue). Both read QTI 3: our
own, and our QTI 2.2 after a third program, ``@citolab/qti-convert``, has converted it, as a
platform does when it takes in such a package. Answers are typed and clicked as a candidate does
it; the score is the one that the player computes. They are installed in a temporary folder, never
with us.
"""

import functools
import http.server
import io
import shutil
import subprocess
import threading
import zipfile
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.family_registry import families, family_named
from boomsim.papers.marking.mark_question import mark_question
from boomsim.papers.paper import Paper, Question
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem_making import make_problem, problem_with
from boomsim.papers.qti.qti_package import qti_package
from boomsim.papers.qti.qti_versions import QTI_3

PLAYERS = Path(__file__).parent / "qti_players"
PACKAGES = (
    "@citolab/qti-components@7.27.4",
    "@citolab/qti-convert@0.3.52",
    "qti3-item-player@1.1.20",
)
PATIENCE = 120
"""For npm [s]."""

pytestmark = [pytest.mark.browser, pytest.mark.slow]


@pytest.fixture(scope="module")
def questions() -> tuple[Question, ...]:
    """The pads with chosen numbers, each family as it comes, and some as choices, in US units."""
    pads = family_named("statics_pad_force")
    assert isinstance(pads, Family)
    posed = [problem_with(pads, givens={"F": "5.30 kN", "a": "3.30 m", "c": "1.70 m"})]
    numeric = [one for one in families().values() if isinstance(one, Family)]
    posed += [make_problem(one, seed="player") for one in numeric]
    posed += [make_problem(one, seed="player", system="us", form="choice") for one in numeric[::8]]
    return tuple(Question(number=n, problem=one) for n, one in enumerate(posed, start=1))


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory, questions: tuple[Question, ...]) -> Path:
    """A folder with the players, their pages and our items in both versions of the standard."""
    for program in ("npm", "node"):
        if not shutil.which(program):
            pytest.skip(f"{program} is not installed, and the players come from its registry")
    folder = tmp_path_factory.mktemp("players")
    (folder / "package.json").write_text('{"private": true}')
    quiet = ("--no-audit", "--no-fund", "--ignore-scripts", "--prefer-offline", "--no-save")
    try:
        made = subprocess.run(
            ["npm", "install", *quiet, *PACKAGES],
            cwd=folder, capture_output=True, text=True, timeout=PATIENCE, check=False,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        pytest.skip(f"npm did not bring the players within {PATIENCE} s")
    if made.returncode:
        pytest.skip(f"npm could not bring the players: {made.stderr.strip()[-200:]}")
    for page in PLAYERS.iterdir():
        shutil.copy(page, folder)
    plan = make_blueprint(
        {
            "title": "Players",
            "minutes": 9,
            "feedback": "at once",
            "part": [{"topics": ["statics"], "questions": 1}],
        }
    )
    paper = Paper(plan=plan, variant="01", questions=questions)
    zipfile.ZipFile(io.BytesIO(qti_package(paper))).extractall(folder)
    native = qti_package(paper, version=QTI_3)
    zipfile.ZipFile(io.BytesIO(native)).extractall(folder / "qti3")
    subprocess.run(["node", "convert.mjs", "items"], cwd=folder, check=True, timeout=PATIENCE)
    return folder


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves files and keeps no log."""

    def log_message(self, *_: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="module")
def address(site: Path) -> Iterator[str]:
    handler = functools.partial(Quiet, directory=str(site))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}"
        server.shutdown()


class Player:
    """A player with a candidate before it."""

    def __init__(self, name: str, items: str, page: Any, address: str) -> None:
        self.name, self.items, self.page = name, items, page
        self.faults: list[str] = []
        page.on("pageerror", lambda fault: self.faults.append(str(fault)))
        page.goto(f"{address}/{name}.html")
        page.wait_for_function("window.isReady")

    def open(self, question: Question) -> None:
        self.page.evaluate("url => play(url)", self.items.format(question.number))

    def typed(self, question: Question, answers: Sequence[str]) -> float:
        """Type answers, leave the fields, hand in."""
        self.open(question)
        fields = self.page.locator("input")
        assert fields.count() == len(answers) == len(question.asked)
        for place, answer in enumerate(answers):
            fields.nth(place).fill(answer)
            fields.nth(place).press("Tab")
        return float(self.page.evaluate("score()"))

    def chosen(self, question: Question, letter: str) -> float:
        """Click a choice, hand in."""
        self.open(question)
        if self.name == "components":
            self.page.locator(f"qti-simple-choice[identifier={letter}]").click()
        else:
            self.page.get_by_role("radio").nth("ABCDEF".index(letter)).click()
        return float(self.page.evaluate("score()"))


CONVERTED, NATIVE = "/items/q{:02d}.qti3.xml", "/qti3/items/q{:02d}.xml"
"""Where our QTI 2.2, converted, and our QTI 3 are."""


@pytest.fixture(
    scope="module",
    params=[
        pytest.param((name, items), id=f"{name}, {words}")
        for name in ("components", "vue")
        for items, words in ((CONVERTED, "QTI 2.2 converted"), (NATIVE, "QTI 3"))
    ],
)
def player(request: pytest.FixtureRequest, browser: Any, address: str) -> Iterator[Player]:
    made = Player(*request.param, browser.new_page(), address)
    yield made
    assert made.faults == []
    made.page.close()


# F = 5.30 kN, a = 3.30 m, c = 1.70 m. By hand: M = 17.49 kN m, R_r = 17.49/1.70 = 10.288 kN,
# R_f = 15.588 kN, each right within 1 %: 17.315 to 17.665, 10.185 to 10.391, 15.432 to 15.744.
@pytest.mark.parametrize(
    ("answers", "score"),
    [
        pytest.param(("17.5", "10.3", "15.6"), 3, id="right"),
        pytest.param(("17.32", "10.19", "15.44"), 3, id="just inside from below"),
        pytest.param(("17.66", "10.39", "15.74"), 3, id="just inside from above"),
        pytest.param(("17.31", "10.18", "15.43"), 0, id="just outside from below"),
        pytest.param(("17.67", "10.40", "15.75"), 0, id="just outside from above"),
        pytest.param(("26.5", "10.3", "20.9"), 1, id="one of three"),
        pytest.param(("", "", "15.6"), 1, id="two left blank"),
        pytest.param(("", "", ""), 0, id="nothing"),
        pytest.param(("-17.5", "0", "1e400"), 0, id="nonsense"),
        pytest.param(("17,5", "10,3", "15.6 kN"), 0, id="a comma, a unit: told not to"),
    ],
)
def test_numbers_score_in_their_band_and_nowhere_else(
    player: Player, questions: tuple[Question, ...], answers: tuple[str, ...], score: int
) -> None:
    assert player.typed(questions[0], answers) == score


def test_handing_in_twice_does_not_count_twice(
    player: Player, questions: tuple[Question, ...]
) -> None:
    assert player.typed(questions[0], ("17.5", "10.3", "15.6")) == 3
    assert float(player.page.evaluate("score()")) == 3


def test_the_right_choice_alone_scores(player: Player, questions: tuple[Question, ...]) -> None:
    posed = [one for one in questions if one.is_choice]
    assert len(posed) > 1
    for question in posed:
        for choice in question.problem.choices:
            worth = question.marks if choice.right else 0
            assert player.chosen(question, choice.letter) == worth, question.problem.family.id


def test_every_family_scores_as_we_mark_it(player: Player, questions: tuple[Question, ...]) -> None:
    """The answers as the solution prints them earn everything."""
    posed = [one for one in questions if not one.is_choice]
    for question in posed if player.name == "components" else posed[::4]:
        results = question.problem.results
        answers = [f"{results[one.step.name].number:f}" for one in question.asked]
        assert player.typed(question, answers) == question.marks, question.problem.family.id


def test_a_wrong_end_costs_what_we_take_for_it(
    player: Player, questions: tuple[Question, ...]
) -> None:
    for question in [one for one in questions if not one.is_choice][1::4]:
        results = question.problem.results
        right = [f"{results[one.step.name].number:f}" for one in question.asked]
        answers = [*right[:-1], f"{1.5 * float(right[-1]):.4f}"]
        labelled = {one.label: a for one, a in zip(question.asked, answers, strict=True)}
        ours = mark_question(question, labelled, sign="").marks
        assert player.typed(question, answers) == ours < question.marks


def test_drawings_are_seen_and_have_words_for_those_who_do_not_see_them(
    player: Player, questions: tuple[Question, ...]
) -> None:
    player.open(questions[0])
    picture = player.page.locator("img").first
    picture.wait_for()
    player.page.wait_for_function("node => node.complete", arg=picture.element_handle())
    assert picture.evaluate("node => node.naturalWidth") > 100
    assert "from its tail to the mouth" in str(picture.get_attribute("alt"))


@pytest.mark.parametrize(
    "player", [("components", CONVERTED), ("components", NATIVE)], indirect=True, ids=str
)
def test_the_solution_is_shown_after_handing_in_and_not_before(
    player: Player, questions: tuple[Question, ...]
) -> None:
    player.open(questions[0])
    words = player.page.get_by_text("perhaps you divided by the overhang")
    assert not words.is_visible()
    player.page.evaluate("score()")
    words.wait_for(state="visible")
