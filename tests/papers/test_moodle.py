"""Moodle XML: read back as the platform's importer reads it, and by an importer that is not ours.

The importer's source (question/format/xml/format.php) was read; what it takes from a file is taken
here in the same way. Where ``amc2moodle`` is installed, which reads such files for other exams, it
reads ours too; it knows no units.
"""

import base64
import importlib
import re
import sys
import types
import xml.etree.ElementTree as ElementTree
from functools import cache
from pathlib import Path

import pytest

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.family_registry import families
from boomsim.papers.moodle.moodle_check import quiz_complaints
from boomsim.papers.moodle.moodle_quiz import moodle_quiz
from boomsim.papers.moodle.moodle_units import units_of
from boomsim.papers.numbers.printed_units import FACTORS, unit
from boomsim.papers.paper import Paper, make_paper
from boomsim.units import UnitError, parse

EVERY = list(families())
WAYS = [("metric", "never"), ("us", "at the end")]


@cache
def paper(units: str, feedback: str) -> Paper:
    plan = {
        "title": "All <families> / more", "minutes": 60, "units": units, "form": "mixed",
        "feedback": feedback, "part": [{"families": EVERY, "questions": len(EVERY)}],
    }  # fmt: skip
    return make_paper(make_blueprint(plan), variant=0)


@cache
def questions(units: str, feedback: str) -> dict[str, ElementTree.Element]:
    """Numerical and multiple-choice questions by the end of their idnumber."""
    root = ElementTree.fromstring(moodle_quiz(paper(units, feedback)))
    return {
        one.findtext("idnumber").rpartition("-")[2]: one
        for one in root
        if one.get("type") in ("numerical", "multichoice")
    }


@pytest.mark.parametrize("way", WAYS, ids=str)
def test_our_own_look_finds_nothing(way: tuple[str, str]) -> None:
    assert quiz_complaints(moodle_quiz(paper(*way))) == []


@pytest.mark.parametrize("way", WAYS, ids=str)
def test_every_answer_is_a_question_with_its_marks(way: tuple[str, str]) -> None:
    found = questions(*way)
    wanted = {
        f"q{one.number:02d}{asked.part}": asked.marks
        for one in paper(*way).questions
        for asked in one.asked
    } | {f"q{one.number:02d}": one.marks for one in paper(*way).questions if one.is_choice}
    assert {name: int(one.findtext("defaultgrade")) for name, one in found.items()} == wanted


def earns(one: ElementTree.Element, number: float, name: str = "") -> bool:
    """As the platform marks: number over the unit's multiplier, first answer within tolerance."""
    units = {u.findtext("unit_name"): float(u.findtext("multiplier"))
             for u in one.findall("units/unit")}  # fmt: skip
    value = number / units[name] if name else number
    for answer in one.findall("answer"):
        if abs(value - float(answer.findtext("text"))) <= float(answer.findtext("tolerance")):
            return answer.get("fraction") == "100"
    return False


@pytest.mark.parametrize("way", WAYS, ids=str)
def test_a_number_earns_its_marks_inside_the_band_of_the_marking_key_alone(
    way: tuple[str, str],
) -> None:
    for one in paper(*way).questions:
        for asked in one.asked:
            found = questions(*way)[f"q{one.number:02d}{asked.part}"]
            amount = one.problem.results[asked.step.name]
            low, high = (end / float(amount.unit.factor) for end in one.ends(asked.step))
            # A millionth of the band: tolerances are written to six figures.
            inside, outside = 1e-4 * (high - low), 1e-3 * (high - low)
            assert earns(found, low + inside) and earns(found, high - inside)
            assert not earns(found, low - outside) and not earns(found, high + outside)
            assert earns(found, float(amount.number))


@pytest.mark.parametrize("name", [n for known in FACTORS.values() for n in known if n])
def test_a_number_in_another_unit_is_the_same_number(name: str) -> None:
    """Multiplied by what stands beside it, the printed unit becomes the other one."""
    base = unit(name)
    known = 0
    for spelling, times in units_of(base):
        try:
            read = parse(f"{times!r} {spelling}", base.quantity)
        except (UnitError, ValueError):
            continue  # our own reader does not know this spelling
        assert read == pytest.approx(float(base.factor), rel=1e-9)
        known += 1
    assert known >= 1 or not base.quantity


def test_common_spellings_of_a_moment_are_there() -> None:
    found = dict(units_of(unit("kN m")))
    assert {"kN m", "kNm", "kN*m", "N m"} <= found.keys()
    assert (found["kN m"], found["N m"]) == (1.0, 1000.0)
    assert next(iter(found)) == "kN m"
    assert {"kN/m²", "kN/m2", "kN/m^2"} <= dict(units_of(unit("kN/m^2"))).keys()
    assert units_of(unit("")) == ()


def test_no_solution_is_in_the_file_unless_the_blueprint_says_so() -> None:
    silent, telling = (moodle_quiz(paper(*way)).decode() for way in WAYS)
    assert "erhaps you" not in silent and "Answer A" not in silent
    assert "erhaps you" in telling and "Answer A" in telling


def test_pictures_are_packed_with_their_question() -> None:
    found = [
        one for one in questions(*WAYS[0]).values() if one.find("questiontext/file") is not None
    ]
    assert found
    for one in found:
        file = one.find("questiontext/file")
        assert base64.b64decode(file.text).startswith(b"<svg")
        assert f"@@PLUGINFILE@@/{file.get('name')}" in one.findtext("questiontext/text")


def test_a_slash_in_a_title_makes_no_other_category() -> None:
    root = ElementTree.fromstring(moodle_quiz(paper(*WAYS[0])))
    assert "All <families> // more" in root.findtext("question/category/text")


def test_the_caution_goes_with_the_file() -> None:
    assert b"not for planning a lift" in moodle_quiz(paper(*WAYS[0]))


TWO = {
    "title": "x", "minutes": 5,
    "part": [{"families": ["statics_pad_force"], "questions": 1},
             {"families": ["strategy_own_weight"], "questions": 1, "form": "choice"}],
}  # fmt: skip
GOOD = moodle_quiz(make_paper(make_blueprint(TWO), variant=0))


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (rb'fraction="100"', b'fraction="50"', "not exactly one"),
        (rb"<tolerance>[\d.]+", b"<tolerance>0,1", "decimal point"),
        (rb"<tolerance>[\d.]+", b"<tolerance>0", "no tolerance"),
        (rb"<defaultgrade>1", b"<defaultgrade>0", "no marks"),
        (rb"<multiplier>1<", b"<multiplier>2<", "not the one in which"),
        (rb"<unit_name>N m<", b"<unit_name>kN m<", "twice"),
        (rb"<showunits>0", b"<showunits>3", "shown and not listed"),
        (rb"-q\d\d[ab]?</idnumber>", b"-q</idnumber>", "times"),
        (rb"PLUGINFILE@@/q\d\d", b"PLUGINFILE@@/q99", "are shown and files"),
        (rb'type="numerical"', b'type="number"', "not one that we write"),
    ],
)  # fmt: skip
def test_what_an_importer_takes_wrongly_is_caught(old: bytes, new: bytes, said: str) -> None:
    changed = re.sub(old, new, GOOD)
    assert changed != GOOD
    assert quiz_complaints(GOOD) == []
    assert any(said in words for words in quiz_complaints(changed))


def other_importer() -> types.ModuleType:
    """The other importer; its library of pictures, which not every machine has, is left out."""
    try:
        importlib.import_module("wand.image")
    except ImportError:
        stub = types.ModuleType("wand.image")
        stub.Image = object  # type: ignore[attr-defined]
        sys.modules["wand"], sys.modules["wand.image"] = types.ModuleType("wand"), stub
    return pytest.importorskip("amc2moodle.moodle2amc._quiz")


@pytest.mark.slow
@pytest.mark.parametrize("way", WAYS, ids=str)
def test_an_importer_that_is_not_ours_reads_the_same_numbers(
    way: tuple[str, str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    importer = other_importer()
    monkeypatch.chdir(tmp_path)  # it writes pictures where it is
    (tmp_path / "quiz.xml").write_bytes(moodle_quiz(paper(*way)))
    importer.Quiz(str(tmp_path / "quiz.xml")).convert(str(tmp_path / "quiz.tex"))
    told = (tmp_path / "quiz.tex").read_text(encoding="utf-8")
    read = re.findall(r"\\AMCnumericChoices\{([-\d.e+]+)\}\{exact = (\d+), decimals = (\d+)", told)
    every = questions(*way).values()
    wanted = [one.find("answer") for one in every if one.get("type") == "numerical"]
    assert len(read) == len(wanted) > 50
    pairs = zip(
        sorted((float(number), int(exact), int(places)) for number, exact, places in read),
        sorted((float(one.findtext("text")), float(one.findtext("tolerance"))) for one in wanted),
        strict=True,
    )
    for (number, exact, places), (text, tolerance) in pairs:
        assert number == text
        # It keeps the tolerance as a whole number of the last place, rounded half to even.
        assert abs(exact - tolerance * 10**places) <= 0.5
    choices = [one for one in every if one.get("type") == "multichoice"]
    assert told.count(r"\correctchoice{") == len(choices)
