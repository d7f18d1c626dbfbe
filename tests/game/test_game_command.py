"""``boomsim game``: played by typing, by a list of answers, as JSON; progress kept and refused."""

import io
import json

import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main

GAME = ["game", "truck18", "--picks", "3", "--seed", "5"]


def right_answers(capsys):
    assert main([*GAME, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["caution"] == CAUTION
    return [pick["right"][0] for pick in found["picks"]]


def test_right_answers_get_all_points(capsys):
    right = right_answers(capsys)
    assert main([*GAME, "--answers", ",".join(right)]) == 0
    said = capsys.readouterr().out
    assert "Score: 6 of 6 points." in said
    assert said.count("Right: ") == 3
    assert " ".join(said.split()).endswith(CAUTION)


def test_nothing_of_an_answer_is_printed_before_a_choice(capsys, monkeypatch):
    monkeypatch.setattr("sys.stdin", io.StringIO(""))
    assert main(GAME) == 0
    said = capsys.readouterr().out
    assert "Pick 1 of 3." in said
    for word in ("Right", "No:", "short", "Why", "sets this figure", "Score"):
        assert word not in said


def test_a_letter_that_is_none_is_asked_for_again_and_an_end_stops(capsys, monkeypatch):
    right = right_answers(capsys)
    monkeypatch.setattr("sys.stdin", io.StringIO(f"Z\n{right[0].lower()}\n"))
    assert main(GAME) == 0
    said = capsys.readouterr().out
    assert "'Z' is no choice here. Type one of A, B" in said
    assert "Stopped here." in said
    assert "Score: 2 of 2 points, 1 of 3 picks played." in said


def test_stopped_with_control_and_c_what_was_played_is_kept(tmp_path, capsys, monkeypatch):
    right, file = right_answers(capsys), tmp_path / "mine.json"

    class Stopped(io.StringIO):
        def readline(self, size=-1):
            line = super().readline(size)
            if not line:
                raise KeyboardInterrupt
            return line

    monkeypatch.setattr("sys.stdin", Stopped(f"\n{right[0]}\n"))
    assert main([*GAME, "--progress", str(file)]) == 0
    said = capsys.readouterr().out
    assert "Nothing was typed. Type one of A, B" in said
    assert "Stopped here." in said
    assert [one["number"] for one in json.loads(file.read_text())["played"]] == [1]


def test_progress_grows_and_is_told_by_what_sets_the_best_figure(tmp_path, capsys):
    file = tmp_path / "mine.json"
    right = right_answers(capsys)
    for answers, total in ((right, "6 of 6"), (["N"] * 3, f"{6 + 2 * right.count('N')} of 12")):
        command = [*GAME, "--answers", ",".join(answers), "--progress", str(file)]
        assert main(command) == 0
        assert f"So far {total} points:" in " ".join(capsys.readouterr().out.split())
    kept = json.loads(file.read_text())
    assert [one["number"] for one in kept["played"]] == [1, 2, 3, 1, 2, 3]


@pytest.mark.parametrize(
    "content",
    [
        '{"a": 1}',
        "[]",
        "no json",
        '{"kind": "progress in the game", "played": [{"machine": 3}]}',
        '{"kind": "progress in the game", "played": 7}',
        "[" * 5000,
    ],
)
def test_another_file_is_refused_and_left_as_it_is(tmp_path, capsys, content):
    file = tmp_path / "other.json"
    file.write_text(content)
    assert main([*GAME, "--answers", "A,A,A", "--progress", str(file)]) == 2
    assert "is no progress that a game has kept" in capsys.readouterr().err
    assert file.read_text() == content


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (["--answers", "A"], "1 answers for 3 picks"),
        (["--answers", "A,Q,B"], "'Q' is no answer to pick 2. Choose one of A, B, N."),
        (["--page", "game.txt"], '"game.txt" should end in .html'),
    ],
)
def test_what_cannot_be_played_is_refused_with_the_way_out(capsys, more, said):
    assert main([*GAME, *more]) == 2
    assert said in capsys.readouterr().err
