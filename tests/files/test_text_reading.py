"""Files as people's programs leave them: marks at the beginning, line ends, code pages."""

import os
import threading
from pathlib import Path

import pytest

from boomsim.files.file_errors import FileError
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.machine.machine_files import builtin_text, load_machine
from boomsim.papers.blueprint import read_blueprint

QUIZ = Path(__file__).parents[2] / "exercises" / "quiz-10-minutes.toml"
ENCODINGS = ("utf-8", "utf-8-sig", "utf-16")  # an editor's, Notepad's, and > of an old PowerShell
LINE_ENDS = ("\n", "\r\n")


def as_saved(text: str, encoding: str, line_end: str) -> bytes:
    return text.replace("\n", line_end).encode(encoding)


@pytest.mark.parametrize("encoding", ENCODINGS)
@pytest.mark.parametrize("line_end", LINE_ENDS)
def test_a_machine_file_is_read_however_it_was_saved(
    tmp_path: Path, encoding: str, line_end: str
) -> None:
    path = tmp_path / "grün 🏗.toml"
    path.write_bytes(as_saved(builtin_text("yard60"), encoding, line_end))
    assert load_machine(path) == load_machine("yard60")


@pytest.mark.parametrize("encoding", ENCODINGS)
@pytest.mark.parametrize("line_end", LINE_ENDS)
def test_a_blueprint_is_read_however_it_was_saved(
    tmp_path: Path, encoding: str, line_end: str
) -> None:
    text = QUIZ.read_text(encoding="utf-8").replace('title = "', 'title = "Prüfung: ', 1)
    path = tmp_path / "Prüfung.toml"
    path.write_bytes(as_saved(text, encoding, line_end))
    assert read_blueprint(path).title.startswith("Prüfung: ")


@pytest.mark.parametrize("encoding", ["cp1252", "latin-1"])
def test_another_code_page_is_refused_with_the_way_out(tmp_path: Path, encoding: str) -> None:
    path = tmp_path / "mine.toml"
    path.write_bytes(
        builtin_text("yard60").replace("Invented", "Erfunden für Köln").encode(encoding)
    )
    with pytest.raises(ValueError, match="save it as UTF-8"):
        load_machine(path)
    with pytest.raises(ValueError, match="save it as UTF-8"):
        read_blueprint(path)


@pytest.mark.parametrize("data", [b"\xff\xfea", b"\xfe\xff\xd8\x00", b"\x80"])
def test_damaged_text_is_refused_in_words(data: bytes) -> None:
    with pytest.raises(FileError, match=r"mine\.csv is not UTF-8 text"):
        text_of(data, name="mine.csv")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no endless file to read from")
def test_an_endless_file_is_left_after_as_much_as_could_be_one(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="has more than 9 KiB"):
        read_bytes(Path("/dev/zero"), most=9 * 1024)
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    writer = threading.Thread(target=lambda: pipe.write_bytes(b"abc"))
    writer.start()
    assert read_bytes(pipe, most=9) == b"abc"
    writer.join()


def test_a_folder_is_no_file_to_read(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="cannot be read"):
        read_bytes(tmp_path, most=9)
