"""The reference programs, which not every platform and Python has."""

import importlib
from typing import Any

import pytest


def program(name: str) -> Any:
    """Import a reference program's module, or skip the tests of the file that wants it."""
    try:
        return importlib.import_module(name)
    except (ImportError, RuntimeError) as fault:
        # OpenSeesPy raises RuntimeError where a shared library that it links to is missing.
        pytest.skip(f"needs the reference program {name}: {fault}", allow_module_level=True)
