"""Where the helpers of these tests lie, and the browser that the browser tests share."""

import importlib.util
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))

_spec = importlib.util.spec_from_file_location(
    "browser_fixtures", HERE.parent / "browser" / "conftest.py"
)
assert _spec is not None
assert _spec.loader is not None
_shared = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(_shared)

browser, lab = _shared.browser, _shared.lab
