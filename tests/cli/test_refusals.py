"""What a command refuses, and how: one sentence, no page of what was given, no file."""

import json

import pytest

import boomsim as bs
from boomsim.cli import main
from boomsim.face.offered_names import MOST_ECHOED

LONG = "x1" * 400


def refused(capsys, *words):
    assert main(list(words)) == 2
    told = capsys.readouterr()
    assert told.out == ""
    return told.err


@pytest.mark.parametrize("more", [(), ("--extension", "100,0,0,0"), ("--length", "18.7 m")])
def test_a_boom_system_that_there_is_not_is_refused_whatever_else_is_given(capsys, more):
    assert "no boom system 'foo'" in refused(capsys, "compare", "--system", "foo", *more)


@pytest.mark.parametrize("written", ["6,5 m", "6 m, 8,25 m"])
@pytest.mark.parametrize(
    "words", [("compare", "--radius"), ("compare", "--radii"), ("around", "--radius")]
)
def test_a_decimal_comma_in_a_list_is_asked_for(capsys, words, written):
    assert "has a comma in its number" in refused(capsys, *words, written)


def test_a_list_without_spaces_is_a_list():
    assert {row["radius"] for row in bs.rate(radius="6 m,8 m").rows()} == {6.0, 8.0}


def test_two_ways_to_write_a_machine_down_are_one_too_many(capsys):
    assert "Choose one" in refused(capsys, "describe", "yard60", "--json", "--toml")


def test_a_page_is_not_written_under_the_name_of_a_pdf(capsys, tmp_path):
    assert ".html" in refused(capsys, "chart", "bench", "--html", str(tmp_path / "x.pdf"))
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    "words",
    [
        ("lift", LONG),
        ("lift", "--rule", LONG),
        ("lift", f"--slew={LONG}"),
        ("lift", "--extension", "1," * 400),
        ("compare", "--system", LONG),
        ("telescope", "--load", "5 t", "--friction", LONG),
        ("paper", LONG, "--out", "papers"),
    ],
    ids=lambda words: " ".join(words)[:24],
)
def test_a_refusal_repeats_no_page_of_what_was_given(capsys, words):
    told = refused(capsys, *words)
    # Whatever is repeated of the long word is made of these few characters.
    repeated = max("".join(c if c in "x1,…" else " " for c in told).split(), key=len)
    assert len(repeated) <= MOST_ECHOED


@pytest.mark.parametrize("words", [("lift", "--allowances", LONG), ("lift", "bench", LONG)])
def test_nor_does_one_of_the_command_line_itself(capsys, words):
    with pytest.raises(SystemExit) as ended:
        main(list(words))
    assert ended.value.code == 2
    assert max(map(len, capsys.readouterr().err.split())) <= MOST_ECHOED + 2


@pytest.mark.parametrize("words", [("game", "--seed", "x"), ("paper", "a.toml", "--variants", "x")])
def test_what_is_no_whole_number_is_refused_in_a_sentence(capsys, words):
    with pytest.raises(SystemExit):
        main(list(words))
    assert capsys.readouterr().err.endswith(
        f"{words[-2]}: 'x' is no whole number. Write it in digits, such as 4.\n"
    )


def test_the_face_repeats_no_page_either():
    with pytest.raises(ValueError, match="no rule") as refusal:
        bs.lift(rule=LONG)
    assert len(str(refusal.value)) < MOST_ECHOED + 150


@pytest.mark.slow
@pytest.mark.parametrize(
    "words",
    [
        ("compare", "bench"),
        ("lift", "bench"),
        ("around", "bench"),
        ("range", "bench"),
        ("losses", "bench"),
        ("overload", "bench"),
        ("chart", "bench"),
    ],
    ids=lambda words: words[0],
)
def test_every_answer_says_in_the_same_words_how_the_crane_is_set_up(capsys, words):
    assert main([*words, "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert {"name", "stability", "strength"} <= answer["rule"].keys()
    shared = ("machine", "sector", "counterweight", "support", "parts", "disturbances")
    assert all(key in answer for key in shared)
