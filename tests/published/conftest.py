"""Lets the tests in this folder import the helpers beside it by name."""

import sys
from pathlib import Path

_TESTS = str(Path(__file__).resolve().parent.parent)

if _TESTS not in sys.path:
    sys.path.insert(0, _TESTS)
