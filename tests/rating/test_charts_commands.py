"""Commands chart and range: what they print and write, and what they refuse."""

import json

import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main


def run(capsys, *arguments):
    assert main(list(arguments)) == 0
    return capsys.readouterr().out


def refused(capsys, *arguments):
    assert main(list(arguments)) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "Traceback" not in said.err
    return said.err


def plain(text):
    return " ".join(text.split())


def test_chart_prints_a_table_a_key_and_the_caution(capsys):
    said = run(capsys, "chart", "truck18")
    assert plain(CAUTION) in plain(said)
    assert "*: strength sets this figure" in plain(said)
    rows = [line for line in said.splitlines() if line[:2].strip().isdigit()]
    assert len(rows) > 20


def test_chart_json_is_si_with_stable_keys(capsys):
    made = json.loads(run(capsys, "chart", "truck18", "--units", "us", "--json"))
    assert made["schema"] == "boomsim.chart/4"
    assert made["caution"] == CAUTION
    assert made["step"] == pytest.approx(45.359237)
    rows = len(made["radii"])
    cells = [cell for column in made["columns"] for cell in column["cells"]]
    assert len(cells) == rows * len(made["columns"])
    rated = [cell for cell in cells if cell is not None]
    assert {"stability", "strength"} <= {cell["set_by"] for cell in rated}
    for cell in rated:
        assert 0.0 <= cell["before_rounding"] - cell["capacity"] < made["step"]
    assert all(len(edge) == 2 for edge in made["bold_line"])


def test_chart_writes_what_it_is_asked_for_and_nothing_else(capsys, tmp_path):
    files = [tmp_path / name for name in ("a.pdf", "a.csv", "a.html")]
    pairs = zip(("--figure", "--csv", "--html"), map(str, files), strict=True)
    run(capsys, "chart", "truck18", *[word for pair in pairs for word in pair])
    assert sorted(tmp_path.iterdir()) == sorted(files)


def test_a_class_version_comes_with_its_answer_sheet(capsys, tmp_path):
    run(capsys, "chart", "truck18", "--class", "--figure", str(tmp_path / "b.svg"))
    assert {file.name for file in tmp_path.iterdir()} == {"b.svg", "b-answers.svg"}
    assert "bold line" not in (tmp_path / "b.svg").read_text()
    assert "bold line" in (tmp_path / "b-answers.svg").read_text()


def test_a_reading_is_told_with_its_wrong_ways(capsys):
    said = plain(run(capsys, "chart", "truck18", "--read", "9.4 m, 20 m", "--load", "1 t"))
    assert "the next larger radius, 10.00 m, counts" in said
    assert "Read wrongly" in said
    made = json.loads(run(capsys, "chart", "truck18", "--read", "9.4 m, 20 m", "--json"))
    assert made["row_radius"] == 10.0
    assert made["misreadings"]


def test_a_whole_book_lands_in_its_folder(capsys, tmp_path):
    narrow = ("--rule", "share", "--support", "full", "--sector", "rear", "--counterweight", "none")
    said = run(capsys, "chart", "truck18", "--all", str(tmp_path / "book"), *narrow)
    assert plain(CAUTION) in plain(said)
    assert len(list((tmp_path / "book").iterdir())) == 4


def test_a_book_stopped_from_the_keyboard_says_so_and_leaves_nothing(capsys, tmp_path, monkeypatch):
    def stop(*_, **__):
        raise KeyboardInterrupt

    monkeypatch.setattr("boomsim.figures.charts.book.book_files.book_html", stop)
    narrow = ("--rule", "share", "--support", "full", "--sector", "rear", "--counterweight", "none")
    assert main(["chart", "truck18", "--all", str(tmp_path / "book"), *narrow]) == 130
    assert "nothing was written" in capsys.readouterr().err
    assert not list(tmp_path.iterdir())


def test_range_prints_places_of_the_head(capsys, tmp_path):
    picture = tmp_path / "range.svg"
    said = run(capsys, "range", "truck18", "--extension", "0,0,0", "--figure", str(picture))
    assert plain(CAUTION) in plain(said)
    assert picture.exists()
    made = json.loads(run(capsys, "range", "truck18", "--extension", "0,0,0", "--json"))
    (arc,) = made["arcs"]
    assert len(arc["radius"]) == len(made["boom_angle"]) == len(arc["set_by"])
    assert {"stability", "strength", "permissible value", None} >= set(arc["set_by"])


@pytest.mark.parametrize(
    ("options", "sentence"),
    [
        (("--step", "0 kg"), "rounds nothing"),
        (("--step", "nan kg"), "not a finite number"),
        (("--radii", "400 m"), "No boom length of this chart reaches"),
        (("--rows", "0 m"), "Rows cannot be 0 m apart"),
        (("--radii", "5 m", "--rows", "1 m"), "--radii or their distance with --rows"),
        (("--read", "99 m, 20 m"), "beyond the last row"),
        (("--read", "9 m"), "needs a radius and a boom length"),
        (("--load", "3 t"), "which is missing"),
        (("--class",), "needs a file to draw in"),
        (("--counterweight", "9 t"), "There is no counterweight"),
        (("--support", "air"), "There is no support"),
        (("--rule", "luck"), "There is no rule"),
        (("--sector", "left"), "There is no sector"),
        (("--parts", "99"), "cannot be reeved"),
        (("--extension", "0,0"), "needs 3 percentages"),
        (("--length", "99 m"), "cannot be 99.00 m long"),
        (("--system", "pinned"), "has no system 'pinned'"),
        (("--figure", "chart.txt"), "End it in .png, .svg or .pdf"),
        (("--csv", "nowhere/chart.csv"), "does not exist"),
        (("--all", "x", "--csv", "y.csv"), "--csv goes with one chart"),
    ],
)
def test_chart_refuses_in_one_sentence(capsys, tmp_path, monkeypatch, options, sentence):
    monkeypatch.chdir(tmp_path)
    said = refused(capsys, "chart", "truck18", *options)
    assert sentence in plain(said)
    assert len(said.strip().splitlines()) == 1
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    ("options", "sentence"),
    [
        (("--extension", "0,0"), "needs 3 percentages"),
        (("--length", "99 m"), "cannot be 99.00 m long"),
        (("--system", "sequenced"), "which is missing"),
        (("--figure", "range.txt"), "End it in .png, .svg or .pdf"),
    ],
)
def test_range_refuses_in_one_sentence(capsys, options, sentence):
    assert sentence in plain(refused(capsys, "range", "truck18", *options))
