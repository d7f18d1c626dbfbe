"""What an installation brings along is what the code imports, no more and no less."""

import ast
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
NAMES = {"matplotlib": "matplotlib", "fonttools": "fontTools", "jupyterlab": None, "voila": None}
"""Names under which packages are imported; jupyterlab and voila are started, not imported."""

project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def names_of(requirements: list[str]) -> set[str]:
    found = set()
    for requirement in requirements:
        name = requirement.replace(">", " ").replace("<", " ").replace("=", " ").split()[0]
        found.add(NAMES.get(name, name))
    return found - {None}


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
    for extra in ("lab", "papers", "frames"):
        offered |= names_of(extras[extra])
    # These come with ipywidgets and pydantic, which require them.
    assert imported() - offered <= {"IPython", "pydantic_core"}


@pytest.mark.parametrize("extra", ["lab", "papers", "frames"])
def test_what_an_extra_brings_is_imported_or_started(extra):
    assert names_of(project["optional-dependencies"][extra]) <= imported()
