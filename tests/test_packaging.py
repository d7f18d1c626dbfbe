"""What an installation brings along is what the code imports, no more and no less."""

import ast
import os
import re
import subprocess
import sys
import tomllib
import zipfile
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
NAMES = {"fonttools": "fontTools", "pillow": "PIL", "jupyterlab": None}
"""Names under which packages are imported; jupyterlab is started, not imported."""

pyproject = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
project = pyproject["project"]


def names_of(requirements: list[str]) -> set[str]:
    found = set()
    for requirement in requirements:
        name = requirement.replace(">", " ").replace("<", " ").replace("=", " ").split()[0]
        found.add(NAMES.get(name, name))
    return found - {None}


@cache
def imported() -> set[str]:
    found = set()
    for file in (ROOT / "boomsim").rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                found |= {alias.name.split(".")[0] for alias in node.names}
            elif isinstance(node, ast.ImportFrom) and node.level == 0:
                found.add(str(node.module).split(".")[0])
    return found - set(sys.stdlib_module_names) - {"boomsim"}


def test_every_dependency_is_imported_by_the_package():
    assert names_of(project["dependencies"]) <= imported()


def test_every_import_is_a_dependency_of_the_package_or_of_an_extra():
    extras = project["optional-dependencies"]
    offered = names_of(project["dependencies"])
    for extra in ("lab", "class", "papers", "frames"):
        offered |= names_of(extras[extra])
    # These come with ipywidgets and pydantic, which require them.
    assert imported() - offered <= {"IPython", "pydantic_core"}


@pytest.mark.parametrize("extra", ["lab", "class", "papers", "frames"])
def test_what_an_extra_brings_is_imported_or_started(extra):
    assert names_of(project["optional-dependencies"][extra]) <= imported()


def test_on_a_package_index_the_description_points_at_no_file_that_is_not_there():
    hook = pyproject["tool"]["hatch"]["metadata"]["hooks"]["fancy-pypi-readme"]
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    assert "](docs/" in text
    for change in hook["substitutions"]:
        text = re.sub(change["pattern"], change["replacement"], text)
    assert not re.search(r"\]\((?!https?:)", text)
    assert "DEVELOPERS.md" in text


def test_pythons_that_are_named_are_those_that_are_asked_for():
    minors = [int(c.rsplit(".", 1)[1]) for c in project["classifiers"] if ":: Python :: 3." in c]
    assert f">=3.{min(minors)}" == project["requires-python"]
    assert minors == list(range(min(minors), max(minors) + 1))


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """The wheel, built from this checkout without fetching anything."""
    for needed in ("hatchling", "hatch_fancy_pypi_readme"):
        pytest.importorskip(needed)
    place = tmp_path_factory.mktemp("wheel")
    line = [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "--no-build-isolation"]
    subprocess.run([*line, "-w", str(place), str(ROOT)], check=True, timeout=300)
    (built,) = place.glob("boomsim-*.whl")
    return built


@pytest.mark.slow
def test_the_wheel_holds_every_notebook_and_exercise_inside_the_package(wheel):
    with zipfile.ZipFile(wheel) as archive:
        for path in (*ROOT.glob("notebooks/*.ipynb"), *ROOT.glob("exercises/*.toml")):
            assert archive.read(f"boomsim/{path.relative_to(ROOT).as_posix()}") == path.read_bytes()
        assert {name.split("/")[0].split("-")[0] for name in archive.namelist()} == {"boomsim"}


@pytest.mark.slow
def test_an_unpacked_wheel_finds_what_it_brought_from_another_folder(wheel, tmp_path):
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(tmp_path / "site")
    (tmp_path / "else").mkdir()
    code = (
        "import boomsim\n"
        "from boomsim.files.shipped_files import shipped\n"
        "print(boomsim.__file__, shipped('notebooks'), shipped('exercises'), sep='\\n')"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=tmp_path / "else",
        env=os.environ | {"PYTHONPATH": str(tmp_path / "site")},
        capture_output=True,
        text=True,
        check=True,
    )
    inside = tmp_path / "site" / "boomsim"
    found = ["__init__.py", "notebooks", "exercises"]
    assert done.stdout.splitlines() == [str(inside / name) for name in found]
