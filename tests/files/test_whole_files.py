"""Files are there whole or not at all, whatever happens meanwhile."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from boomsim.files.file_errors import FileError
from boomsim.files.folder_lock import only_writer
from boomsim.files.whole_files import whole_file, write_whole
from boomsim.lab.notebook_server import folder_of

posix = pytest.mark.skipif(os.name == "nt", reason="Windows has neither")


def test_a_file_that_fails_half_way_is_not_there(tmp_path: Path) -> None:
    target = tmp_path / "chart.csv"
    target.write_text("old")
    with pytest.raises(KeyboardInterrupt), whole_file(target) as part:
        part.write_text("half of i")
        raise KeyboardInterrupt
    assert target.read_text() == "old"
    assert [file.name for file in tmp_path.iterdir()] == ["chart.csv"]


@pytest.mark.parametrize(
    ("number", "helps"),
    [(28, "make room"), (13, "close it in other"), (27, "make room"), (5, "another folder")],
)  # fmt: skip
def test_what_the_system_refuses_is_said_with_the_way_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, helps: str
) -> None:
    def refuse(*_: object) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "replace", refuse)
    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(FileError, match=helps) as said:
        write_whole(tmp_path / "paper.pdf", b"content")
    assert os.strerror(number) in str(said.value)
    assert list(tmp_path.iterdir()) == []


def test_the_longest_name_that_a_folder_takes_is_written(tmp_path: Path) -> None:
    # 255 bytes is what common file systems allow: a name for the part must not be longer.
    name = "a" * 251 + ".csv"
    assert write_whole(tmp_path / name, b"1").read_bytes() == b"1"
    with pytest.raises(FileError, match="shorter name"):
        write_whole(tmp_path / f"a{name}", b"1")


@posix
def test_a_link_stays_a_link_and_its_file_is_written(tmp_path: Path) -> None:
    link, real = tmp_path / "link.csv", tmp_path / "real.csv"
    link.symlink_to(real)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert real.read_bytes() == b"new"


@posix
def test_a_device_is_written_to_and_not_replaced_by_a_file() -> None:
    write_whole(Path("/dev/null"), b"away")
    assert not Path("/dev/null").is_file()


@pytest.mark.parametrize("name", ["a\0b.csv", "\udc00.csv\0"])
def test_what_is_no_name_is_refused_in_words(tmp_path: Path, name: str) -> None:
    with pytest.raises(FileError, match="no name of a file"):
        write_whole(tmp_path / name, b"1")


def test_what_is_no_name_of_a_folder_is_refused_in_words(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="no name of a file"), only_writer(tmp_path / "a\0b"):
        pass
    with pytest.raises(FileError, match="no name of a file"):
        folder_of("a\0b")


@pytest.fixture
def protected(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A file that may not be written; root may write anything, so the answer is put in."""
    target = tmp_path / "old.csv"
    target.write_text("old")
    monkeypatch.setattr(os, "access", lambda *_: False)
    yield target


def test_a_protected_file_stays_as_it_is(protected: Path) -> None:
    with pytest.raises(FileError, match="protected"):
        write_whole(protected, b"new")
    assert protected.read_text() == "old"


def test_a_folder_has_one_writer_at_a_time(tmp_path: Path) -> None:
    folder = tmp_path / "out"
    with only_writer(folder):
        (folder / "a").write_text("a")
        with pytest.raises(FileError, match="Wait until it has ended"), only_writer(folder):
            pass
    with only_writer(folder):
        pass
    assert [file.name for file in folder.iterdir()] == ["a"]


def test_a_folder_that_was_made_for_nothing_goes_away_again(tmp_path: Path) -> None:
    with pytest.raises(KeyboardInterrupt), only_writer(tmp_path / "out"):
        raise KeyboardInterrupt
    assert list(tmp_path.iterdir()) == []
