"""Lets the tests in this folder import the class that they serve by name."""

import sys
from pathlib import Path

_HERE = str(Path(__file__).resolve().parent)

if _HERE not in sys.path:
    sys.path.insert(0, _HERE)
