"""Lets the benchmarks import the reference models and the random machines by name."""

import sys
from pathlib import Path

_HERE = Path(__file__).resolve().parent

for folder in (_HERE, _HERE.parent, _HERE.parent / "reference"):
    if str(folder) not in sys.path:
        sys.path.insert(0, str(folder))
