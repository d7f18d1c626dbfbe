"""What every command says in metric and in US units: no word of the other form of the trade.

Which form is whose: common practice of the trade in the United States and elsewhere; standards of
both name the same parts (ASME B30.5: swing, tires, boom hoist; ISO 4306: slewing, tyres, luffing).
"""

import io
import re
from contextlib import redirect_stdout
from functools import cache

import pytest
from matplotlib.text import Text

from boomsim.cli import COMMANDS, main
from boomsim.units import TRADE, all_in_words, in_words, markup_in_words

MACHINES = ("yard60", "truck18", "bench")

ABROAD = re.compile(
    r"\b(tyres?|slew\w*|luff\w*|ropes?|metres?|tonnes?|centres?|colou?rs?(?<=ours|lour)|grey|"
    r"aluminium|synchronised|utilisation|labelled)\b",
    re.IGNORECASE,
)
"""Words that nobody in the United States says or writes so."""

AMERICAN = re.compile(
    r"\b(tires?|swung to|lift cylinder|turntable bearing|meters?|centers?|gray|aluminum|"
    r"synchronized|utilization|labeled)\b",
    re.IGNORECASE,
)
"""Words of the American form that mean nothing else."""

STUDIES = {
    "describe": [],
    "compare": [],
    "compare --plates": ["--plates", "0.8, 1.25"],
    "lift": ["--radius", "7 m"],
    "lift on tyres": ["--support", "tyres", "--radius", "5 m", "--extension"],
    "lower": ["--load", "1 t"],
    "telescope": ["--load", "1 t"],
    "pins": ["--to", "90,90,45,45"],
    "chart": ["--breaks-first"],
    "range": [],
    "around": [],
    "overload": [],
    "overload --map": ["--map"],
    "losses": [],
    "pick": ["--radius", "7 m", "--load", "2 t"],
    "slabs": [],
    "reeving": [],
    "dynamics": [],
    "indicator": [],
    "game": ["--picks", "1", "--seed", "3", "--answers", "A"],
}
"""What each command is asked, with radii and loads for a crane."""

SMALL = {
    "pick": ["--radius", "0.45 m", "--load", "0.1 kg"],
    "lift": ["--radius", "0.45 m"],
    "lower": ["--load", "1 kg"],
}
"""The same for the tabletop."""


def cases():
    for name, words in STUDIES.items():
        for machine in MACHINES:
            given = SMALL.get(name, words) if machine == "bench" else words
            if name == "lift on tyres":
                if machine == "bench":
                    continue
                given = [*given, "0,0,0,0" if machine == "yard60" else "0,0,0"]
            if (
                name in ("telescope", "slabs", "game", "indicator", "dynamics")
                and machine == "bench"
            ):
                continue
            if name == "pins" and machine != "yard60":
                continue
            if name == "overload --map" and machine == "yard60":
                continue
            yield pytest.param(machine, name, given, id=f"{machine} {name}")


@cache
def said(machine, name, given, units):
    out = io.StringIO()
    with redirect_stdout(out):
        assert main([name.split()[0], machine, *given, "--units", units]) == 0
    return out.getvalue()


def words_without_names(text):
    """Without what is typed: options and quoted names."""
    return re.sub(r"--[\w-]+", "", text)


@pytest.mark.slow
@pytest.mark.parametrize(("machine", "name", "given"), list(cases()))
def test_what_is_told_in_us_units_has_american_words_only(
    machine, name, given, tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    told = words_without_names(said(machine, name, tuple(given), "us"))
    assert ABROAD.findall(told) == []


@pytest.mark.slow
@pytest.mark.parametrize(("machine", "name", "given"), list(cases()))
def test_what_is_told_in_metric_units_has_no_american_words(
    machine, name, given, tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    told = words_without_names(said(machine, name, tuple(given), "metric"))
    assert AMERICAN.findall(told) == []


@pytest.mark.slow
@pytest.mark.parametrize(("machine", "name", "given"), list(cases()))
def test_the_allowances_are_in_the_units_of_all_the_rest(
    machine, name, given, tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    told = " ".join(said(machine, name, tuple(given), "us").split())
    found = re.search(r"Allowances .*?across \(", told)
    if found is None:
        pytest.skip("this one names no allowances")
    # 9 m/s are 20.1 mph and 0.3 m/s 59 ft/min, by the foot of 0.3048 m.
    assert "20.1 mph" in found[0] and "59 ft/min" in found[0] and "m/s" not in found[0]


@pytest.mark.slow
@pytest.mark.parametrize("name", sorted(set(STUDIES) & set(COMMANDS)))
def test_tables_stay_tables_when_their_words_change(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    told = said("yard60", name, tuple(STUDIES[name]), "us").split("\n\n")
    tables = [block.split("\n") for block in told if re.search(r"\n-+(  -+)*(\n|$)", block)]
    for lines in tables:
        rule = lines[1]
        ends = [m.end() for m in re.finditer("-+", rule)]
        assert max(len(line) for line in (lines[0], rule)) == ends[-1]
    assert all(len(line) <= 96 for block in told if block.split("\n") not in tables
               for line in block.split("\n"))  # fmt: skip


@pytest.mark.slow
def test_labels_of_figures_are_in_the_words_of_their_units():
    import boomsim as bs

    studies = (
        bs.overload("yard60", extension="0,0,0,0", radius="4 m", support="tyres"),
        bs.around("truck18", extension="0,0,0", radius="5 m", support="tyres"),
        bs.losses("truck18"),
    )
    for units, other in (("us", ABROAD), ("metric", AMERICAN)):
        for study in studies:
            labels = [text.get_text() for text in study.plot(units).findobj(Text)]
            assert [one for one in labels if other.search(one)] == []


def test_a_refusal_in_us_units_has_american_words(capsys):
    assert main(["lift", "yard60", "--support", "rubber", "--units", "us"]) == 2
    assert "'tires'" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["tyres", "tires"])
def test_either_form_of_a_name_is_taken(name, capsys):
    words = ["lift", "yard60", "--support", name, "--radius", "5 m", "--extension", "0,0,0,0"]
    assert main(words) == 0
    assert "tyre position" in " ".join(capsys.readouterr().out.split())


@pytest.mark.slow
def test_papers_in_us_units_have_american_words():
    from boomsim.papers.family_registry import families
    from boomsim.papers.language.question_words import in_plain
    from boomsim.papers.problems.problem_making import make_problem

    seen = 0
    for family in families().values():
        problem = make_problem(family, seed="words", system="us")
        told = [in_plain(problem.pieces(problem.family.text)), problem.family.title]
        told += [in_plain(problem.pieces(problem.family.assume)), problem.family.seen]
        told += [step.does for step in getattr(problem.family, "steps", ())]
        told += [step.words for step in getattr(problem.family, "steps", ())]
        told += [re.sub("<[^>]*>", " ", problem.picture)]
        assert [one for one in told if ABROAD.search(str(one))] == [], family.id
        seen += problem.family is not family
    assert seen > 10


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
def test_handouts_have_the_words_of_their_units(units):
    from boomsim.lessons.lesson_order import LESSONS

    other = ABROAD if units == "us" else AMERICAN
    for lesson in LESSONS:
        guess, check, sheet = lesson.guess(units), lesson.check(units), lesson.sheet(units)
        told = [guess.question, check.question, check.working, *check.slips]
        told += [sheet.given, sheet.seen, sheet.task, sheet.why, sheet.because, *sheet.head]
        assert [one for one in told if other.search(one)] == [], lesson.number


def test_the_explorer_has_the_words_of_its_units():
    from boomsim.lab.scene.scene import Look, Scene
    from boomsim.lab.views.draw_scene import draw

    for units, other in (("us", ABROAD), ("metric", AMERICAN)):
        drawn = draw(Scene(load=5000.0), look=Look(units=units))
        told = re.sub(r"<style>.*?</style>", " ", drawn, flags=re.DOTALL)
        labels = re.findall(r'aria-label="([^"]*)"', told)
        assert other.findall(re.sub("<[^>]*>", " ", told)) == []
        assert [one for one in labels if other.search(one)] == []


def test_the_live_page_has_the_words_of_its_units():
    from boomsim.lab.live.live_controls import offered
    from boomsim.lab.scene.scene import Look, Scene
    from boomsim.lab.solve.solved_scene import answer

    scene = Scene()
    for units, other in (("us", ABROAD), ("metric", AMERICAN)):
        controls = offered(scene, Look(units=units), now=answer(scene, unit=1.0), keep="radius")
        labels = [one["words"] for one in controls]
        labels += [str(shown) for one in controls if one["kind"] == "choice"
                   for _, shown in one["options"]]  # fmt: skip
        assert [one for one in labels if other.search(one)] == []
        # What goes back to the model is the name, in either system the same.
        assert {"slew"} <= {one["name"] for one in controls}


def test_every_row_of_the_list_differs_and_none_is_made_twice():
    for international, american in TRADE:
        assert international != american
        assert in_words(american, "us") == american
        assert in_words(international, "metric") == international
    assert len({international for international, _ in TRADE}) == len(TRADE)


def test_capitals_options_and_style_names_stay():
    assert in_words("Slewed on tyres", "us") == "Swung on tires"
    assert in_words("give --slew rear", "us") == "give --slew rear"
    assert in_words(".rope{stroke:#000}", "us") == ".rope{stroke:#000}"
    assert markup_in_words('<g class="rope" aria-label="rope">rope</g>', "us") == (
        '<g class="rope" aria-label="line">line</g>'
    )


def test_texts_in_data_change_and_keys_do_not():
    told = all_in_words({"slew": ["slew angle", 1.0]}, "us")
    assert told == {"slew": ["swing angle", 1.0]}
