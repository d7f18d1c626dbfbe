"""`boomsim page` and `boomsim lab`: what they write, copy, start and refuse."""

import pytest

from boomsim.cli import main
from boomsim.files.shipped_files import shipped
from boomsim.lab import notebook_server as serve


@pytest.mark.slow
def test_page_writes_one_file_and_says_the_caution(tmp_path, capsys):
    path = tmp_path / "ways.html"
    assert main(["page", str(path), "bench"]) == 0
    assert "not for planning a lift" in " ".join(capsys.readouterr().out.split())
    assert [one.name for one in tmp_path.iterdir()] == ["ways.html"]
    assert "One length, three ways" in path.read_text(encoding="utf-8")


@pytest.mark.slow
def test_page_takes_the_ways_the_setup_and_the_units(tmp_path):
    path = tmp_path / "ways.html"
    words = ["page", str(path), "bench", "--units", "us", "--slew", "90 deg", "--support", "narrow"]
    words += ["--extension", "0,80", "--extension", "80,0", "--wind", "2 m/s"]
    assert main(words) == 0
    text = path.read_text(encoding="utf-8")
    assert "One length, two ways" in text
    assert "swung to 90°" in text, "the page speaks US words"
    assert "narrow" in text
    assert " lb" in text


@pytest.mark.slow
def test_a_page_rates_with_the_allowances_that_are_chosen(tmp_path):
    said = {}
    for allowances in ("none", "rule"):
        path = tmp_path / f"{allowances}.html"
        assert main(["page", str(path), "bench", "--allowances", allowances]) == 0
        said[allowances] = "load x 1.10" in path.read_text(encoding="utf-8")
    assert said == {"none": False, "rule": True}


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["page", "ways.txt", "bench"], "should end in .html"),
        (["page", "no-such-folder/ways.html", "bench"], "does not exist"),
        (["page", "ways.html", "bench", "--extension", "0,80"], "2 to 6 ways"),
        (["page", "ways.html", "crane"], "crane"),
    ],
)
def test_what_cannot_be_is_refused_in_words_and_nothing_is_written(
    words, says, tmp_path, monkeypatch, capsys
):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    assert main(words) == 2
    assert says in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_missing_server_is_said_politely_with_the_way_out(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(serve, "find_spec", lambda module: None)
    monkeypatch.setenv("HOME", str(tmp_path))
    assert main(["lab"]) == 2
    told = capsys.readouterr().err
    assert "JupyterLab is not installed here" in told
    assert "pip install" in told
    assert "boomsim page" in told
    assert list(tmp_path.iterdir()) == []


def test_notebooks_are_copied_once_and_a_persons_work_is_left_alone(tmp_path):
    folder = serve.folder_of(str(tmp_path / "mine"))
    first, none = serve.copy_notebooks(folder)
    assert first >= 1
    assert none == 0
    (folder / "explorer.ipynb").write_text("my own work", encoding="utf-8")
    again, kept = serve.copy_notebooks(folder)
    assert (again, kept) == (0, first)
    assert (folder / "explorer.ipynb").read_text(encoding="utf-8") == "my own work"


def test_the_originals_are_no_folder_to_work_in():
    with pytest.raises(ValueError, match="original notebooks"):
        serve.folder_of(str(shipped("notebooks")))


def test_the_lab_looks_nowhere_in_the_network(tmp_path):
    command = serve.lab_command(tmp_path, port=8899, browser=False)
    assert "--LabApp.news_url=None" in command
    assert "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate" in command
    assert "--no-browser" in command


def test_the_lab_lets_nobody_else_in_whatever_a_persons_settings_say(tmp_path):
    """Code can be run there; its token is JupyterLab's own and stays on."""
    command = serve.lab_command(tmp_path)
    assert "--ServerApp.ip=127.0.0.1" in command
    assert not any("token" in word or "password" in word for word in command)
