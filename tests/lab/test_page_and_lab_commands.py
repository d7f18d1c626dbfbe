"""`boomsim page` and `boomsim lab`: what they write, copy, start and refuse."""

import subprocess
import sys
import time
from urllib.request import urlopen

import pytest

from boomsim.cli import main
from boomsim.files.shipped_files import shipped
from boomsim.lab import notebook_server as serve


def test_page_writes_one_file_and_says_the_caution(tmp_path, capsys):
    path = tmp_path / "ways.html"
    assert main(["page", str(path), "bench"]) == 0
    assert "not for planning a lift" in " ".join(capsys.readouterr().out.split())
    assert [one.name for one in tmp_path.iterdir()] == ["ways.html"]
    assert "One length, three ways" in path.read_text(encoding="utf-8")


def test_page_takes_the_ways_the_setup_and_the_units(tmp_path):
    path = tmp_path / "ways.html"
    words = ["page", str(path), "bench", "--units", "us", "--slew", "90 deg", "--support", "narrow"]
    words += ["--extension", "0,80", "--extension", "80,0", "--wind", "2 m/s"]
    assert main(words) == 0
    text = path.read_text(encoding="utf-8")
    assert "One length, two ways" in text
    assert "slewed to 90°" in text
    assert "narrow" in text
    assert " lb" in text


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
        (["lab", "--address", "0.0.0.0"], "--address goes with --class"),
        (["lab", "--class", "--idle", "1"], "at least 10 s"),
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


@pytest.mark.parametrize(
    ("words", "name"), [(["lab"], "JupyterLab"), (["lab", "--class"], "voila")]
)
def test_a_missing_server_is_said_politely_with_the_way_out(
    words, name, tmp_path, monkeypatch, capsys
):
    monkeypatch.setattr(serve, "find_spec", lambda module: None)
    monkeypatch.setenv("HOME", str(tmp_path))
    assert main(words) == 2
    told = capsys.readouterr().err
    assert f"{name} is not installed here" in told
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


def test_a_class_page_waits_for_slow_kernels_and_ends_idle_ones(tmp_path):
    """With the usual four seconds, eight of twelve pages opened together stayed empty."""
    command = serve.voila_command(tmp_path, address="127.0.0.1", idle=300)
    assert "--VoilaExecutor.iopub_timeout=300" in command
    assert "--MappingKernelManager.cull_idle_timeout=300" in command
    assert any("default-src 'self'" in word for word in command)


def test_a_class_is_served_and_stops_when_told(tmp_path):
    """The whole way: `boomsim lab --class` answers over HTTP and ends at Ctrl-C."""
    import signal
    import socket

    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    words = ["lab", "--class", "--no-browser", "--port", str(port), "--folder", str(tmp_path / "n")]
    server = subprocess.Popen([sys.executable, "-m", "boomsim", *words], start_new_session=True)
    try:
        assert answers(f"http://127.0.0.1:{port}/static/", server) is not None
    finally:
        import os

        os.killpg(server.pid, signal.SIGINT)
        assert server.wait(30) is not None


def answers(address: str, server: subprocess.Popen) -> int | None:
    """Wait until something answers there, if only with a refusal."""
    from urllib.error import HTTPError, URLError

    for _ in range(150):
        try:
            with urlopen(address, timeout=5) as found:
                return int(found.status)
        except HTTPError as refusal:
            return refusal.code
        except (URLError, OSError):
            assert server.poll() is None
            time.sleep(0.2)
    return None
