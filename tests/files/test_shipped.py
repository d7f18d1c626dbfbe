"""Notebooks and exercises are found wherever the package lies."""

import zipfile
from pathlib import Path

import pytest

from boomsim.files import shipped_files as room
from boomsim.files.shipped_files import KNOWN_BY, shipped, shipped_files
from boomsim.lab.notebook_server import copy_notebooks
from boomsim.papers.blueprint import blueprint_text, read_blueprint, ready_names

ROOT = Path(__file__).parents[2]


@pytest.fixture
def elsewhere(tmp_path, monkeypatch):
    """No checkout around the package."""
    monkeypatch.setattr(room, "__file__", str(tmp_path / "a" / "b" / "c" / "shipped.py"))
    return tmp_path


@pytest.mark.parametrize("folder", KNOWN_BY)
def test_a_checkout_has_them_in_front(folder):
    assert shipped(folder) == ROOT / folder


def test_an_installation_has_them_inside_the_package(elsewhere, monkeypatch):
    place = elsewhere / "boomsim" / "exercises"
    place.mkdir(parents=True)
    (place / "quiz-10-minutes.toml").write_text("mine = 1", encoding="utf-8")
    monkeypatch.setattr(room, "files", lambda name: elsewhere / name)
    assert shipped("exercises") == place
    assert blueprint_text("quiz-10-minutes") == "mine = 1"


def test_a_package_in_a_zip_gives_its_notebooks_too(elsewhere, monkeypatch):
    packed = elsewhere / "boomsim.zip"
    with zipfile.ZipFile(packed, "w") as archive:
        archive.writestr("boomsim/notebooks/explorer.ipynb", "{}")
        archive.writestr("boomsim/notebooks/notes.txt", "none of them")
    monkeypatch.setattr(room, "files", lambda name: zipfile.Path(packed, f"{name}/"))
    assert copy_notebooks(elsewhere / "mine") == (1, 0)
    assert (elsewhere / "mine" / "explorer.ipynb").read_text(encoding="utf-8") == "{}"
    assert not (elsewhere / "mine" / "notes.txt").exists()


@pytest.mark.parametrize("folder", KNOWN_BY)
def test_what_is_nowhere_is_missed_in_words(folder, elsewhere, monkeypatch):
    monkeypatch.setattr(room, "files", lambda name: elsewhere / name)
    with pytest.raises(ValueError, match=f"The {folder} did not come with this installation"):
        shipped(folder)


def test_a_folder_of_the_same_name_beside_the_package_is_not_taken_for_ours(elsewhere, monkeypatch):
    (elsewhere / "a" / "notebooks").mkdir(parents=True)
    monkeypatch.setattr(room, "files", lambda name: elsewhere / name)
    with pytest.raises(ValueError, match="did not come"):
        shipped("notebooks")


def test_every_ready_blueprint_is_read_by_its_name_from_any_folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    names = {path.stem for path in (ROOT / "exercises").glob("*.toml")}
    assert (
        set(ready_names())
        == names
        == {n.split(".")[0] for n in shipped_files("exercises", ending=".toml")}
    )
    for name in names:
        assert read_blueprint(name) == read_blueprint(ROOT / "exercises" / f"{name}.toml")


def test_a_slip_in_the_name_of_a_ready_blueprint_is_told_which_there_are(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(ValueError, match='Did you mean "theory-paper"') as error:
        read_blueprint("theory-papr")
    assert all(name in str(error.value) for name in ready_names())
