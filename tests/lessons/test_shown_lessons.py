"""What each lesson shows: nothing before a guess, everything without a fault in both systems."""

import re

import numpy as np
import pytest

import boomsim as bs
from boomsim.caution import CAUTION
from boomsim.lessons import lesson
from boomsim.lessons.first_guess import FIRST, GuessFirst, said_of
from boomsim.lessons.lesson_02_same_length import ways
from boomsim.lessons.lesson_03_why_not_half import half_ways
from boomsim.lessons.lesson_06_reading_a_chart import few_ways
from boomsim.lessons.lesson_07_breaks_or_tips import FAR, NEAR, past_rated
from boomsim.lessons.lesson_08_gross_to_net import NET_RADIUS, net_reading
from boomsim.lessons.lesson_order import LESSONS
from boomsim.lessons.shown.lesson_02_shown import with_slabs
from boomsim.lessons.shown.lesson_05_shown import FIRST_SLAB, LIES, first_bands
from boomsim.lessons.shown.lesson_07_shown import events
from boomsim.lessons.shown.lesson_08_shown import OUT
from boomsim.lessons.shown.lesson_09_shown import STOPS, TOLD
from boomsim.lessons.shown.shown_in_order import shown_of
from boomsim.machine.machine_files import load_machine

each = pytest.mark.parametrize("one", LESSONS, ids=lambda one: one.number)
LONGEST = "what the indicator knows"
"""A whole study of the indicator each time: two seconds."""
EXERCISES = [
    pytest.param(one.number, name, marks=pytest.mark.slow if name == LONGEST else ())
    for one in LESSONS
    for name in shown_of(one.number).exercises
]


def opened(number, units="metric"):
    found = lesson(number, units=units)
    found.predict(*["?"] * found.lesson.guess(units).parts)
    return found


@each
def test_before_a_guess_nothing_is_shown_drawn_moved_or_asked(one):
    shut, has = lesson(one.number), shown_of(one.number)
    for refused in (
        lambda: shut.compare(),
        lambda: shut.live,
        lambda: shut.draw(None),
        *(lambda name=name: shut.show(name) for name in has.views),
        *(lambda name=name: shut.exercise(name, "x") for name in has.exercises),
    ):
        with pytest.raises(GuessFirst, match=FIRST):
            refused()


@pytest.mark.slow
@each
@pytest.mark.parametrize("units", ["metric", "us"])
def test_every_view_can_be_shown(one, units):
    for name in shown_of(one.number).views:
        made = opened(one.number, units).show(name)
        assert made.parts
        assert "nan" not in repr(made).replace("nance", "")
        assert made._repr_html_()


@pytest.mark.slow
@each
def test_every_live_picture_moves_without_trouble_and_stays_the_same_one(one):
    found = opened(one.number)
    assert found.live is found.live
    before = found.live.shown
    found.live.try_all()
    assert found.live.troubles == ()
    assert "<img" in before


def test_what_is_not_there_is_refused_with_what_is():
    with pytest.raises(ValueError, match=r"no view 'who carries least'.* Did you mean"):
        opened("02").show("who carries least")
    with pytest.raises(ValueError, match="It has: may I make this pick"):
        opened("08").exercise("may I", "yes")
    with pytest.raises(ValueError, match="It has: none"):
        opened("02").exercise("may I", "yes")


@pytest.mark.parametrize(("number", "name"), EXERCISES)
def test_an_exercise_asks_first_and_then_tells_the_study_that_its_call_asks(number, name):
    found = opened(number)
    asked = shown_of(number).exercises[name]("metric")
    truths = asked.guess.truths
    blank = repr(found.exercise(name, *[""] * len(truths)))
    assert asked.guess.question in blank
    assert FIRST in blank
    told = repr(found.exercise(name, *[said_of(truth, "metric") for truth in truths]))
    assert told.count("as you said") == len(truths)
    assert asked.call in told
    assert CAUTION.split(":")[0] in told
    # The line that is offered is the study that was told.
    again = eval(asked.call, {"bs": bs})
    assert str(again.text()) in told


@pytest.mark.parametrize(("number", "name"), EXERCISES)
def test_the_question_of_an_exercise_stays_beside_its_answer(number, name):
    asked = shown_of(number).exercises[name]("metric")
    told = repr(asked.answer(*["?"] * len(asked.guess.truths)))
    assert told.startswith(f"Question: {asked.guess.question}")


METRIC = re.compile(r"\d (?:m|mm|t|kg|g|kN|MPa|cm³)\b|metres|tonnes")


@pytest.mark.slow
@each
def test_in_us_units_no_slider_is_marked_in_metres_and_no_word_beside_it_says_them(one):
    live = opened(one.number, "us").live
    said = " ".join(slider.description for slider in live._sliders.values())
    there = re.sub(r'src="[^"]*"', "", live.shown + live.moved()[1])
    assert not METRIC.search(said + re.sub(r"<[^>]*>", " ", there))


@each
def test_a_page_without_sliders_shows_the_live_picture_a_second_time_and_puts_it_back(one):
    live = opened(one.number).live
    before, start = live.shown, live.values
    said, there = live.moved()
    assert (live.shown, live.values) == (before, start)
    assert there != before
    assert ": " in said


def test_06_without_slabs_the_page_shows_the_bold_line_in_every_column():
    said, there = opened("06").live.moved()
    assert said == "slabs of counterweight: 0"
    assert "counterweight none" in there


def test_09_twice_the_lean_takes_what_the_text_below_says():
    live = opened("09").live
    once, twice = (
        [float(share) for share in re.findall(r"([\d.]+) %", html)]
        for html in (live.shown, live.moved()[1])
    )
    assert live.moved()[0].endswith(": 2")
    close, far = (b / a for a, b in zip(once, twice, strict=True))
    # "nearly twice far out, nearly three times close in"
    assert 2.5 < close < 3.0
    assert 1.8 < far < 2.05


def test_01_the_base_section_lies_in_no_other_and_each_longer_stroke_is_refused():
    found = opened("01")
    table = found.show("where each lies").parts[0]
    assert table.rows[0][0] == "base section"
    assert table.rows[0][-1] == "in no other"
    words, refused = found.show("a longer stroke").parts
    assert "4 faults" in repr(words)
    for row in refused.rows:
        left, needed = (float(field.split()[0]) for field in row[1:3])
        assert left < needed


def test_where_the_crane_turns_over_by_itself_nothing_is_rated():
    for number, name in (("05", "all the way out"), ("10", "a shaky crane")):
        assert opened(number).show(name).parts[0].rows[-1][-1] == "nothing"


@pytest.mark.parametrize(
    ("number", "name"),
    [
        ("01", "a longer stroke"),
        ("02", "a length between"),
        ("06", "what is not there"),
        ("08", "more than there is"),
        ("10", "what is unsure"),
    ],
)
def test_in_us_units_no_refusal_and_no_amount_is_left_in_metric(number, name):
    assert METRIC.search(repr(opened(number).show(name)))
    assert not METRIC.search(repr(opened(number, "us").show(name)))


@pytest.mark.parametrize(("number", "name"), EXERCISES)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_a_wrong_guess_in_an_exercise_gets_the_thought_behind_it(number, name, units):
    guess = shown_of(number).exercises[name](units).guess
    for k, truth in enumerate(guess.truths):
        assert truth.slips
        for words, wrong in truth.wrong_guesses():
            mine = ["" for _ in guess.truths]
            mine[k] = wrong
            assert guess.against(*mine).rows[k][-1] == f"not as you said: you probably {words}"


def test_02_the_slider_begins_with_the_crane_of_the_lesson():
    most = len(load_machine("yard60").counterweights) - 1
    assert np.array_equal(
        with_slabs(most).rating.capacity, ways()[1].rating.capacity, equal_nan=True
    )
    assert with_slabs(0).rating.setup.counterweight.mass == 0.0


def test_02_what_the_notebook_compares_are_the_ways_of_the_lesson():
    shown = bs.compare("yard60").study.configurations.extension
    assert np.array_equal(shown, ways()[1].configurations.extension)


def test_03_what_the_notebook_compares_are_the_ways_of_the_lesson():
    asked = ("45,45,45,45", "0,0,90,90", "90,90,0,0")
    shown = bs.compare("yard60", extension=asked).study.configurations.extension
    assert shown == pytest.approx(half_ways().extension)


def test_05_the_slab_lies_between_the_reach_of_half_and_of_full_outriggers():
    study = bs.slabs("yard60", extension="45,45,45,0").study
    assert study.stages[0].slab == FIRST_SLAB
    far = {one.support.name: one.far[0] for one in first_bands(study)}
    # A tenth of a metre is the step of the study; both lie ten and more away.
    assert far["half"] + 1.0 < LIES
    assert far["full"] > LIES + 0.5


@pytest.mark.parametrize("radius", [NEAR, FAR])
def test_07_events_stand_in_the_order_of_the_load_and_the_rated_load_among_them(radius):
    times = [float(row[2]) for row in events(past_rated(radius), "metric").rows]
    assert times == sorted(times)
    assert 1.0 in times


def test_08_the_load_of_the_pick_fits_the_chart_and_all_that_hangs_does_not():
    study = bs.pick("yard60", extension="0,0,0,90", radius="9.4 m", load="15.3 t").study
    (chart,) = (check for check in study.checks if check.key == "chart")
    assert study.asked.load < chart.limit < chart.found
    assert chart.limit == pytest.approx(study.found.reading.cell)


def test_09_only_a_stop_at_once_and_a_fall_pass_the_rated_load_and_each_is_harder_than_the_last():
    study = bs.dynamics("yard60").study
    share = {one.key: one.share for one in study.effects}
    stops = [share[key] for key in STOPS.values()]
    assert stops == sorted(stops)
    assert [one > 1.0 for one in stops] == [False, True, True]
    # The question's first sentence, and 1 + v/(g t) by hand.
    assert study.load == pytest.approx(0.75 * study.rated, rel=0.01)
    even = next(one.factor for one in study.effects if one.key == STOPS["A"])
    assert even == pytest.approx(1.0 + 0.5 / (9.80665 * 1.0))


def test_09_of_the_three_only_outriggers_told_wrong_are_shown_far_too_small():
    off = {
        r.condition.key: r.utilisation - r.shown_utilisation
        for r in bs.indicator("yard60").study.rows
    }
    near = [off[key] for letter, key in TOLD.items() if letter != "B"]
    assert off[TOLD["B"]] > 0.2
    assert max(map(abs, near)) < 0.03


def test_08_rope_and_pick_are_of_the_way_out_that_the_lesson_reads():
    found = bs.reeving("yard60", extension=OUT, radius=NET_RADIUS).study
    assert found.extension == pytest.approx(few_ways().extension[2])
    reading = net_reading("metric", radius=NET_RADIUS, parts=1)
    assert found.length == pytest.approx(reading.column_length)


def test_09_what_the_model_does_not_answer_for_is_said_without_an_option_of_a_command():
    told = repr(opened("09").show("four at once"))
    assert "is outside" in told
    assert "--" not in told


@pytest.mark.parametrize("number", ["04", "08"])
def test_what_stands_over_a_slider_is_in_the_words_of_its_units(number):
    shown = {units: shown_of(number).live(units) for units in ("metric", "us")}
    there = {units: one.shown + one.moved()[1] for units, one in shown.items()}
    words = {"04": ("the luffing cylinder", "the lift cylinder"), "08": (">rope<", ">line<")}[
        number
    ]
    for units, said, other in (("metric", *words), ("us", *words[::-1])):
        cells = there[units].partition("<img")[0] + there[units].rpartition("<table")[2]
        assert said in cells
        assert other not in cells
