"""A number that changes is seen: see `charts.py`."""

import json
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import pytest

HERE = Path(__file__).parent
_spec = spec_from_file_location("golden_charts", HERE / "charts.py")
charts = module_from_spec(_spec)
_spec.loader.exec_module(charts)


def test_rated_cells_are_those_last_reviewed():
    kept = json.loads((HERE / "charts.json").read_text(encoding="utf-8"))
    now = charts.cells()
    changed = []
    for name, rows in now.items():
        for old, new in zip(kept.get(name, []), rows, strict=False):
            # Capacities are kept to five figures and solved to six.
            same = old[2] == pytest.approx(new[2], rel=1e-4) if new[2] and old[2] else old == new
            if not same or old[3] != new[3]:
                changed.append(f"{name}: {old} -> {new}")
        if len(kept.get(name, [])) != len(rows):
            changed.append(f"{name}: {len(kept.get(name, []))} cells -> {len(rows)}")
    assert not changed, (
        f"{len(changed)} rated cells changed. If that is meant, run python tests/golden/charts.py, "
        "review the diff, and tell it in CHANGELOG.md under 'Numbers that changed'.\n"
        + "\n".join(changed[:12])
    )
