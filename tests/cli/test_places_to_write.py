"""Folders that are read-only, missing, full, or have strange names; two runs at one time."""

import ctypes
import os
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from apart import environment, one_line, ran, ran_in_turn, started

from boomsim.cli import main
from boomsim.machine.machine_files import builtin_text

QUIZ = Path(__file__).parents[2] / "exercises" / "quiz-10-minutes.toml"
FOLDERS = {
    "book": ("chart", "truck18", "--rule", "share", "--sector", "rear", "--all"),
    "papers": ("paper", str(QUIZ), "--format", "md", "--out"),
    "handouts": ("handouts", "--lesson", "02"),
}
FILES = {
    "figure": ("reeving", "bench", "--figure", "{}.svg"),
    "chart": ("chart", "bench", "--figure", "{}.pdf"),
    "csv": ("chart", "bench", "--csv", "{}.csv"),
    "html": ("chart", "bench", "--html", "{}.html"),
    "page": ("page", "{}.html", "bench"),
}
STRANGE = ("with two spaces", "Größe é ñ", "吊车 🏗", "-dash", "a'b\"c$d;e")


UNKEPT = environment(PYTHONDONTWRITEBYTECODE="1")
"""Where no file may be large, half a compiled module would be kept, and break every later run."""


def files(folder: Path) -> list[str]:
    found = (path for path in folder.rglob("*") if path.is_file())
    return sorted(path.relative_to(folder).as_posix() for path in found)


def named(words: tuple[str, ...], name: str) -> list[str]:
    return [word.format(name) for word in words]


def refused(capsys: pytest.CaptureFixture[str], words: list[str]) -> str:
    capsys.readouterr()
    assert main(words) == 2
    said = capsys.readouterr()
    assert said.out == ""
    return one_line(said.err)


@pytest.fixture(scope="module")
def whole(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a command that nobody disturbed."""
    folder = tmp_path_factory.mktemp("whole") / "whole"
    assert main([*FOLDERS[request.param], str(folder)]) == 0
    return folder


@pytest.mark.slow
@pytest.mark.parametrize("kind", FILES)
@pytest.mark.parametrize("name", [n for n in STRANGE if os.name != "nt" or '"' not in n])
def test_a_file_may_have_any_name_that_the_system_takes(
    kind: str, name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / name
    folder.mkdir()
    assert main(named(FILES[kind], str(folder / name))) == 0
    assert capsys.readouterr().err == ""
    assert [Path(file).stem for file in files(folder)] == [name]


@pytest.mark.parametrize("kind", FOLDERS)
def test_a_folder_may_have_any_name_and_be_made_with_those_above_it(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "Größe é" / "吊车 🏗"
    assert main([*FOLDERS[kind], str(folder)]) == 0
    assert capsys.readouterr().err == ""
    assert files(folder)


@pytest.mark.parametrize("kind", FILES)
def test_a_folder_in_the_place_of_a_file_is_refused(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = named(FILES[kind], str(tmp_path / "a"))
    target = next(Path(word) for word in words if word.startswith(str(tmp_path)))
    target.mkdir()
    assert "is a folder" in refused(capsys, words)
    assert files(tmp_path) == []


@pytest.mark.parametrize("kind", FILES)
def test_a_file_in_a_folder_that_is_not_there_is_refused(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = named(FILES[kind], str(tmp_path / "no" / "a"))
    assert "does not exist. Make it first" in refused(capsys, words)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("kind", FOLDERS)
def test_a_file_in_the_place_of_a_folder_is_refused_and_left_alone(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "out").write_text("mine")
    said = refused(capsys, [*FOLDERS[kind], str(tmp_path / "out")])
    assert "folder" in said
    assert (tmp_path / "out").read_text() == "mine"


@pytest.mark.parametrize(
    "bad", [("--csv", "no/a.csv"), ("--html", "no/a.html"), ("--read", "1 m, 999 m")]
)
def test_a_chart_of_which_one_part_is_refused_writes_no_other_part(
    bad: tuple[str, str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    monkeypatch.chdir(tmp_path)
    refused(capsys, ["chart", "bench", "--figure", "a.svg", "--csv", "a.csv", *bad])
    assert files(tmp_path) == []


def test_a_machine_s_name_does_not_lead_out_of_the_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = builtin_text("bench").replace('name = "bench"', 'name = "../../mine 1/2%"', 1)
    (tmp_path / "mine.toml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(["chart", "mine.toml", "--all", "a/b/c", "--rule", "share"]) == 0
    found = [file for file in files(tmp_path) if file != "mine.toml"]
    assert len(found) == 4
    assert all(Path(file).parent == Path("a/b/c") for file in found)


def bounded(most: int) -> Callable[[], None]:
    """No file of a process may be larger: what a full disk looks like to it."""

    def bind() -> None:
        import resource

        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))

    return bind


def unprivileged() -> None:
    """Root writes into any folder; without this capability it does so no more."""
    drop_from_bounding_set, dac_override = 24, 1
    ctypes.CDLL(None).prctl(drop_from_bounding_set, dac_override, 0, 0, 0)


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="Windows bounds no sizes of files")
def test_a_disk_that_is_full_leaves_nothing_and_the_old_file_as_it_was(tmp_path: Path) -> None:
    commands, targets = [], []
    for kind, words in FILES.items():
        (tmp_path / kind).mkdir()
        commands.append(named(words, f"{tmp_path / kind}/a"))
        targets.append(next(Path(one) for one in commands[-1] if one.startswith(str(tmp_path))))
        targets[-1].write_text("old")
    ended = ran_in_turn(commands, cwd=tmp_path, preexec_fn=bounded(500), env=UNKEPT)
    for (code, out, err), target in zip(ended, targets, strict=True):
        assert (code, out) == (2, ""), target
        assert "make room on the disk" in one_line(err)
        assert files(target.parent) == [target.name]
        assert target.read_text() == "old"


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="Windows bounds no sizes of files")
@pytest.mark.parametrize(("kind", "whole"), [(one, one) for one in FOLDERS], indirect=["whole"])
def test_a_disk_that_is_full_leaves_whole_files_only(
    kind: str, whole: Path, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    code, _, err = ran(*FOLDERS[kind], "out", cwd=tmp_path, preexec_fn=bounded(2000), env=UNKEPT)
    assert code == 2
    assert "make room on the disk" in one_line(err)
    for name in (name for name in files(out) if name != "manifest.json"):
        assert (out / name).read_bytes() == (whole / name).read_bytes()


@pytest.mark.slow
@pytest.mark.skipif(sys.platform != "linux", reason="how root gives up its rights is Linux's own")
def test_a_read_only_folder_is_refused_in_one_line(tmp_path: Path) -> None:
    locked = [tmp_path / kind for kind in (*FOLDERS, *FILES)]
    for folder in locked:
        folder.mkdir(mode=0o555)
    commands = [[*words, str(tmp_path / kind)] for kind, words in FOLDERS.items()]
    commands += [named(words, f"{tmp_path / kind}/a") for kind, words in FILES.items()]
    ended = ran_in_turn(commands, cwd=tmp_path, preexec_fn=unprivileged)
    for (code, out, err), folder in zip(ended, locked, strict=True):
        assert (code, out) == (2, ""), folder
        assert "Permission denied" in one_line(err)
        assert files(folder) == []


def both(words: tuple[str, ...], folder: Path) -> list[tuple[int, str]]:
    """Two runs of one command at one time: exit code and standard error of each."""
    running = [started(*words, cwd=folder) for _ in range(2)]
    said = [run.communicate(timeout=300)[1] for run in running]
    return [(run.returncode, err) for run, err in zip(running, said, strict=True)]


@pytest.mark.slow
@pytest.mark.parametrize("kind", ["figure", "csv"])
def test_two_runs_that_write_one_file_leave_it_whole(
    kind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    words = tuple(named(FILES[kind], "a"))
    assert both(words, tmp_path) == [(0, ""), (0, "")]
    written = files(tmp_path)
    assert len(written) == 1
    before = (tmp_path / written[0]).read_bytes()
    monkeypatch.chdir(tmp_path)
    assert main(list(words)) == 0
    assert (tmp_path / written[0]).read_bytes() == before


@pytest.mark.slow
@pytest.mark.parametrize(("kind", "whole"), [(one, one) for one in FOLDERS], indirect=["whole"])
def test_two_runs_that_write_one_folder_leave_it_whole(
    kind: str, whole: Path, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    ended = both((*FOLDERS[kind], "out"), tmp_path)
    assert any(code == 0 for code, _ in ended)
    for code, err in ended:
        if code:
            assert "Another run is writing to out" in one_line(err)
    assert files(out) == files(whole)
    for name in files(out):
        assert (out / name).read_bytes() == (whole / name).read_bytes()


@pytest.mark.slow
def test_papers_of_two_blueprints_are_never_mixed_in_one_folder(tmp_path: Path) -> None:
    words = ("paper", str(QUIZ), "--format", "md", "--out", "out", "--seed")
    running = [started(*words, seed, cwd=tmp_path) for seed in ("one", "two")]
    said = [run.communicate(timeout=300)[1] for run in running]
    assert sorted(run.returncode for run in running) == [0, 2]
    loser = one_line(next(err for err in said if err))
    assert "Another run is writing" in loser or "holds other papers" in loser
    winner = ("one", "two")[[run.returncode for run in running].index(0)]
    assert ran(*words, winner, "--json", cwd=tmp_path)[0] == 0
