"""What two reports tell of one thing is the same, and what one report adds up is right."""

import io
import json
import re
from contextlib import redirect_stdout
from functools import cache

import numpy as np
import pytest

import boomsim as bs
from boomsim.cli import main


@cache
def told(*words):
    out = io.StringIO()
    with redirect_stdout(out):
        assert main(list(words)) == 0
    return out.getvalue()


def in_one_line(text):
    return " ".join(text.split())


def rows(text, first):
    """Cells of the table whose head begins with some words."""
    block = next(b for b in text.split("\n\n") if b.startswith(first) and "\n--" in b)
    lines = block.split("\n")
    spans = [m.span() for m in re.finditer("-+", lines[1])]
    return [[line.ljust(spans[-1][1])[a:b].strip() for a, b in spans] for line in lines[2:]]


@pytest.mark.parametrize("name", ["truck18", "bench"])
def test_the_map_and_the_chart_with_its_second_line_tell_the_same_cells(name):
    chart = json.loads(told("chart", name, "--breaks-first", "--json"))
    raised = [one for column in chart["raised"] for one in column if one is not None]
    first = sum(one["comes_first"] == "breaks" for one in raised)
    said = in_one_line(told("overload", name, "--map"))
    assert f"In {first} of {len(raised)} cells something gives way before the crane tips." in said
    assert "one way to extend for each boom length" in said
    assert "one way to extend for each boom length" in in_one_line(told("chart", name))


def test_the_map_of_the_best_chart_says_so_and_tells_other_cells():
    said = in_one_line(told("overload", "truck18", "--map", "--best"))
    assert "the best of all ways to extend in each cell" in said
    assert "the best of all ways to extend in each cell" in in_one_line(
        told("chart", "truck18", "--best")
    )
    counts = [
        re.search(r"In (\d+) of (\d+) cells", in_one_line(text)).groups()
        for text in (said, told("overload", "truck18", "--map"))
    ]
    assert counts[0] != counts[1]


def test_best_without_map_is_refused(capsys):
    assert main(["overload", "truck18", "--best"]) == 2
    assert "Add --map" in capsys.readouterr().err


def test_a_ratio_reads_the_same_in_the_text_and_in_the_picture():
    from boomsim.figures.overload.overload_map_figure import narrow_ratio
    from boomsim.rating.overload.overload_map import ratio_words

    for ratio in (0.0, 0.424, 0.9999, 1.0, 1.0001, 1.275, 12.3, np.inf):
        assert float(narrow_ratio(ratio).replace("tips", "inf")) == float(
            ratio_words(ratio).replace("tips", "inf")
        )
    assert ratio_words(0.9999) == "0.99" and narrow_ratio(0.9999) == ".99"


@pytest.mark.slow
@pytest.mark.parametrize("rule", ["share", "limit-states"])
@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_what_holds_a_figure_down_is_the_same_wherever_compare_tells_it(name, rule, units):
    """Each way's own sentence has the figure that the difference of two takes."""
    said, seen = in_one_line(told("compare", name, "--rule", rule, "--units", units)), 0
    for where in re.findall(r"Why, at .*?(?=Why, at|Stiffness)", said):
        own = dict(
            re.findall(r"- (\w) carries [^;]*;[^-]*?, ([\d.,]+ (?:t|kg|lb)) below what", where)
        )
        for first, one, second, other in re.findall(
            r"(\w) is held ([\d.,]+ \w+) and (\w) ([\d.,]+ \w+) below what", where
        ):
            for way, figure in ((first, one), (second, other)):
                assert own.get(way, figure) == figure
                assert way in own or float(figure.split()[0]) == 0.0
                seen += way in own
    assert seen


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_account_of_a_difference_adds_up_to_the_last_digit(units):
    said = in_one_line(told("compare", "yard60", "--units", units))
    found = re.findall(
        r"carries ([\d.,]+) \w+ (more|less) than \w\. What each part's weight is worth[^;.]*?: "
        r"(.*?)(?=- At|Why|Stiffness)",
        said,
    )
    assert found
    for apart, way, rest in found:
        number = float(apart.replace(",", "")) * (1 if way == "more" else -1)
        lies = re.search(r"in all ([+-][\d.,]+)", rest) or re.search(r" ([+-][\d.,]+)", rest)
        held = re.search(r"would allow: ([+-][\d.,]+)", rest)
        total = float(lies[1].rstrip(".").replace(",", ""))
        total += float(held[1].rstrip(".").replace(",", "")) if held else 0.0
        assert total == pytest.approx(number, abs=1e-9)


def test_what_is_more_over_the_rear_is_the_difference_of_what_stands_beside_it():
    text = told("around", "yard60", "--extension", "0,0,45,45", "--radius", "7 m, 11 m")
    seen = 0
    for _, around, rear, more, percent in rows(text, "radius"):
        shown = [float(re.sub(r"[*†]", "", one).split()[0]) for one in (around, rear)]
        if more == "nothing":
            assert shown[0] == shown[1] and percent == ""
            continue
        seen += 1
        assert float(more.split()[0]) == pytest.approx(shown[1] - shown[0], abs=1e-9)
        assert percent == f"{100 * (shown[1] / shown[0] - 1):.0f} %"
    assert seen


@pytest.mark.slow
@pytest.mark.parametrize("machine", ["bench", "yard60"])
def test_builds_whose_figures_read_the_same_tie(machine, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    seen = 0
    for row in rows(told("compare", machine, "--plates", "0.8, 1, 1.25"), "radius"):
        loads = [one.rstrip("*†") for one in row[1:-1] if one != "-"]
        most = max(loads, key=lambda one: float(one.split()[0]))
        assert (row[-1] == "tie") == (loads.count(most) > 1)
        seen += row[-1] == "tie"
    assert seen or machine == "yard60"


def test_lift_and_range_say_in_the_same_words_what_is_not_rated():
    found = bs.lift("yard60", extension="100,100,100,100", radius="41.5 m")
    assert 0.0 < found.study.capacity < 550.0  # hook block 450 kg, slings 100 kg, and some rope
    words = re.search(r"not rated: (less is rated here than [^\n]*)", found.text())[1]
    assert "hook block" in words and "slings" in words
    assert words in in_one_line(told("range", "yard60"))


@pytest.mark.parametrize("command", ["lift", "describe", "around"])
@pytest.mark.parametrize("machine", ["yard60", "truck18", "bench"])
def test_who_weighs_sections_names_the_telescope_cylinder_s_share(command, machine):
    from boomsim.machine.machine_files import load_machine

    boom = load_machine(machine).boom
    where = ("--radius", "0.5 m" if machine == "bench" else "7 m") if command == "lift" else ()
    said = in_one_line(told(command, machine, *where))
    if boom.telescope_cylinder is None:
        assert "of the telescope cylinder go with" not in said
        return
    shares = re.search(
        r"(\d+) kg of the telescope cylinder go with the base section and (\d+) kg with section 1",
        said,
    )
    given = boom.telescope_cylinder
    assert int(shares[2]) == round(given.mass * given.moving_share)
    assert int(shares[1]) + int(shares[2]) == round(given.mass)
    if command != "describe":
        table = "what holds the crane down" if command == "lift" else "moment about"
        weighed = next(row[1] for row in rows(told(command, machine, *where), table))
        assert float(weighed.split()[0]) == pytest.approx(
            (boom.sections[0].mass + int(shares[1])) / 1000.0, abs=0.006
        )


def test_where_every_line_is_past_tipping_lift_faces_the_one_that_is_worst():
    """With half outriggers, no counterweight and the whole boom low it lies over on every side."""
    found = bs.lift(
        "yard60", counterweight="none", support="half", extension="100,100,100,100",
        angle="20 deg", load="0 t",
    )  # fmt: skip
    left = {one.name: one.righting - one.overturning for one in found.study.margins}
    assert max(left.values()) < 0.0
    assert sum(found.study.holds.values()) == pytest.approx(min(left.values()), rel=1e-9)
    said = in_one_line(found.text())
    assert "over the left side the supports hold nothing: there the crane turns over" in said
    assert "Supports with the boom" not in said


@pytest.mark.slow
@pytest.mark.parametrize("support", ["full", "tyres"])
def test_what_the_lean_would_do_to_the_head_is_a_turn_about_the_ground(support):
    """The head turned by the lean about the point of the ground under the axis of rotation."""
    result = bs.overload("yard60", support=support, extension="0,0,45,45", radius="9 m")
    study, feel = result.study, result.study.feel
    at = bs.lift(
        "yard60", support=support, extension="0,0,45,45", angle=study.angle,
        load=float(feel.load[-1]), slew=feel.slew,
    ).study  # fmt: skip
    lean = feel.lean[-1]
    turn = np.array([[np.cos(lean), np.sin(lean)], [-np.sin(lean), np.cos(lean)]])
    out, _ = turn @ [at.radius, at.head_height]
    # Lift's slew alone leaves all forces in the boom as they are: only rounding is between them.
    assert feel.carried[-1] == pytest.approx(out - at.radius, rel=0.02)
    said = in_one_line(result.text())
    foot = "tyre" if support == "tyres" else "float"
    carried = feel.carried[-1]
    shown = f"{carried:.2f} m" if carried >= 1.0 else f"{1000 * carried:.0f} mm"
    assert f"would carry the head {shown} farther out, so in truth the end comes sooner" in said
    assert f"a {foot} goes light" in said and f"on its {foot}s" in said


@pytest.mark.slow
def test_on_the_tabletop_a_larger_radius_costs_a_part_and_is_a_tenth_of_a_metre():
    found = bs.losses("bench").study
    farther = next(one for one in found.effects if one.name == "farther")
    assert farther.amount == pytest.approx(0.1)
    assert all(limit is not None for limit in farther.governing)
    yard = bs.losses("yard60").study
    assert next(one for one in yard.effects if one.name == "farther").amount == 1.0


@pytest.mark.slow
def test_no_loss_that_is_one_reads_as_nought():
    text = told("losses", "bench")
    assert re.search(r"-0\.00 kg", text) is None
    assert re.search(r"-0\.00\d kg \(0\.\d %\)", text)


@pytest.mark.slow
def test_lifting_fast_bends_the_boom_and_stability_hardly_feels_it():
    """The footnote's bound: the share that the study itself finds."""
    found = bs.losses("bench").study
    hoisting = next(one for one in found.effects if one.name == "hoisting")
    assert np.all(np.abs(hoisting.share) < 5e-4)
    said = in_one_line(told("losses", "bench"))
    assert (
        "picking up fast reaches it only by bending the boom, which takes less than 0.05 %" in said
    )


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["losses", "--amount", "lean=-2 deg"], "-2° is outside 0° to 7°"),
        (["lift", "--radius", "8 m", "--load", "-8 t"], "-8 t is outside 0 t to 10,000 t"),
        (["lift", "--slew", "left"], "-90 deg over the left side"),
        (["lift", "--side-pull", "200"], "20,000 % is outside 0 % to 30 %"),
        (["lift", "--side-pull", "200"], "such as '2 %'"),
        (["lift", "--wind", "200 m/s"], "200 m/s is outside 0 m/s to 60 m/s"),
        (["lift", "--lean", "30 deg"], "30° is outside -10° to 10°"),
    ],
)
def test_a_refusal_answers_in_the_units_that_were_given(words, says, capsys):
    assert main(words) == 2
    assert says in in_one_line(capsys.readouterr().err)


def test_parts_of_line_are_whole(capsys):
    with pytest.raises(SystemExit):
        main(["lift", "--parts", "2.5"])
    assert '"2.5" is not a whole number' in in_one_line(capsys.readouterr().err)
