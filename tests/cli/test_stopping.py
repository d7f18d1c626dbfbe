"""A run that is stopped half-way: nothing half written, one line, and the next one completes."""

import json
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from apart import environment, one_line, ran, started

from boomsim.cli import main
from boomsim.cli.interruptions import stoppable

QUIZ = Path(__file__).parents[2] / "exercises" / "quiz-10-minutes.toml"
LONG = {
    "book": ("chart", "truck18", "--all", "out", "--rule", "share", "--sector", "rear"),
    "papers": ("paper", str(QUIZ), "--out", "out", "--variants", "3", "--format", "html"),
    "handouts": ("handouts", "out", "--lesson", "02"),
    "page": ("page", "page.html", "bench"),
    "losses": ("losses", "bench", "--figure", "losses.svg"),
    "map": ("overload", "bench", "--map", "--figure", "map.png"),
    "compare": ("compare", "bench", "--figure", "compare.pdf"),
}
STAGES = {
    "book": "boomsim.figures.charts.book.book_files.book_html",
    "papers": "boomsim.papers.render.paper_html.render_html",
    "handouts": "boomsim.lessons.lesson_handouts.answers_pdf",
    "page": "boomsim.lab.page.page_file.page",
    "losses": "boomsim.figures.losses.losses_figure.figure_of_losses",
    "map": "boomsim.figures.overload.overload_map_figure.figure_of_overload_map",
    "compare": "boomsim.figures.comparison.comparison_figure.figure_of_comparison",
}
"""Where each of them is stopped: when a part of its work is done."""


@pytest.fixture(autouse=True)
def _a_closed_terminal_is_heard():
    """Tests that were started by nohup, which lets whom it starts ignore that, hear it too."""
    request_ = getattr(signal, "SIGHUP", None)
    if request_ is None or signal.getsignal(request_) is not signal.SIG_IGN:
        yield
        return
    signal.signal(request_, signal.SIG_DFL)
    yield
    signal.signal(request_, signal.SIG_IGN)


def files(folder: Path) -> dict[str, bytes]:
    found = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


@pytest.mark.slow
@pytest.mark.parametrize("name", LONG)
def test_a_command_stopped_in_its_work_leaves_whole_files_and_the_next_one_completes(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    stopped, whole = tmp_path / "stopped", tmp_path / "whole"
    for folder in (stopped, whole):
        folder.mkdir()
    monkeypatch.chdir(whole)
    assert main(list(LONG[name])) == 0
    monkeypatch.chdir(stopped)
    capsys.readouterr()
    with monkeypatch.context() as patched:
        patched.setattr(STAGES[name], interrupting())
        assert main(list(LONG[name])) == 130
    said = capsys.readouterr()
    assert said.out == ""
    assert "stopped; " in one_line(said.err)
    left = {path: data for path, data in files(stopped).items() if path != "out/manifest.json"}
    assert left.items() <= files(whole).items()
    assert main(list(LONG[name])) == 0
    assert files(stopped) == files(whole)


def interrupting() -> Callable[..., None]:
    """Ask the process to end, as `kill` does, and go on until it is heard."""

    def stop(*_: object, **__: object) -> None:
        signal.raise_signal(signal.SIGTERM)
        raise AssertionError("nobody heard it")

    return stop


def test_an_interruption_that_a_library_makes_an_error_of_is_still_one(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """As compiled code of a drawing library does: "Invalid bounding box"."""

    def turned(*_: object, **__: object) -> None:
        try:
            signal.raise_signal(signal.SIGINT)
        except KeyboardInterrupt:
            raise ValueError("Invalid bounding box") from None

    monkeypatch.setattr("boomsim.cli.machines_command.run", turned)
    assert main(["machines"]) == 130
    assert "stopped" in one_line(capsys.readouterr().err)


@pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")
def test_an_interruption_that_gets_lost_is_made_again() -> None:
    class Deaf:
        def __del__(self) -> None:
            signal.raise_signal(signal.SIGINT)

    with pytest.raises(KeyboardInterrupt), stoppable(whole_process=False):
        deaf = Deaf()
        del deaf
        for _ in range(500):
            time.sleep(0.01)


def test_the_handlers_of_whoever_calls_us_are_put_back() -> None:
    before = signal.getsignal(signal.SIGTERM), signal.getsignal(signal.SIGINT)
    assert main(["machines"]) == 0
    assert (signal.getsignal(signal.SIGTERM), signal.getsignal(signal.SIGINT)) == before


def test_a_command_runs_in_a_thread_where_nobody_may_listen_for_signals() -> None:
    codes: list[int] = []
    thread = threading.Thread(target=lambda: codes.append(main(["machines"])))
    thread.start()
    thread.join()
    assert codes == [0]


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="Windows has no polite request for another process")
@pytest.mark.parametrize("request_", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_a_real_process_is_stopped_by_every_request_of_the_system(
    request_: signal.Signals, tmp_path: Path
) -> None:
    words = ("chart", "truck18", "--all", "out")
    running = started(*words, cwd=tmp_path)
    until = time.monotonic() + 300
    while not (tmp_path / "out").is_dir() and time.monotonic() < until:
        time.sleep(0.01)
    running.send_signal(request_)
    out, err = running.communicate(timeout=120)
    assert (running.returncode, out) == (130, "")
    assert one_line(err).startswith("boomsim chart: stopped; nothing was written.")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(os.name == "nt", reason="Windows has no SIGINT for another process")
@pytest.mark.parametrize("request_", ["SIGTERM", "SIGHUP"])
def test_a_server_ends_with_the_command_that_started_it(tmp_path: Path, request_: str) -> None:
    """`kill` reaches the command alone; its server must not live on without it."""
    server = tmp_path / "server.py"
    server.write_text("import os, time; print(os.getpid(), flush=True); time.sleep(60)")
    code = (
        "import sys; from pathlib import Path; from boomsim.lab.notebook_server import serve;"
        f"sys.exit(serve([sys.executable, {str(server)!r}], Path({str(tmp_path)!r})))"
    )
    running = subprocess.Popen(
        [sys.executable, "-c", code], stdout=subprocess.PIPE, text=True, env=environment()
    )
    assert running.stdout is not None
    number = int(running.stdout.readline())
    running.send_signal(getattr(signal, request_))
    running.wait(timeout=120)
    with pytest.raises(ProcessLookupError):
        for _ in range(300):
            os.kill(number, 0)
            time.sleep(0.05)


@pytest.mark.slow
def test_papers_that_were_stopped_are_gone_on_with(tmp_path: Path) -> None:
    words = ("paper", str(QUIZ), "--out", "out", "--variants", "2", "--format", "md", "--json")
    assert ran(*words, cwd=tmp_path)[0] == 0
    (tmp_path / "out" / "papers" / "02.md").unlink()
    code, out, _ = ran(*words, cwd=tmp_path)
    assert code == 0
    assert json.loads(out)["made"] == 1
