"""The lock of exact versions fits what the package asks for, and where it was tried."""

import tomllib
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
ASKED = [
    Requirement(text)
    for wanted in (PROJECT["dependencies"], *PROJECT["optional-dependencies"].values())
    for text in wanted
]
LOCKED = [
    Requirement(line)
    for line in (ROOT / "constraints.txt").read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]


@pytest.mark.parametrize("asked", ASKED, ids=lambda asked: asked.name)
def test_the_lock_holds_a_version_that_the_package_takes(asked):
    name = canonicalize_name(asked.name)
    pins = [pin for pin in LOCKED if canonicalize_name(pin.name) == name]
    assert pins, f"constraints.txt has no {name}: write it anew, its head says how"
    for pin in pins:
        (exact,) = pin.specifier
        assert exact.operator == "=="
        assert asked.specifier.contains(exact.version)


@pytest.mark.parametrize("asked", ASKED, ids=lambda asked: asked.name)
def test_what_is_installed_is_what_the_package_takes(asked):
    try:
        found = version(asked.name)
    except PackageNotFoundError:
        pytest.skip(f"{asked.name} is not installed")
    assert asked.specifier.contains(found)
