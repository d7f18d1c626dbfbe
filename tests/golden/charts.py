"""Rated cells of the built-in machines, kept so that a number that changes is seen.

    python tests/golden/charts.py        # writes charts.json anew

These are our own numbers: they prove nothing. A change is reviewed as a diff of `charts.json` and
told in CHANGELOG.md under "Numbers that changed".
"""

import json
from pathlib import Path

import numpy as np

from boomsim.machine.machine_files import load_machine, machine_names
from boomsim.rating.capacity import rate
from boomsim.rating.rules import RULES
from boomsim.rating.setup import set_up

FILE = Path(__file__).with_name("charts.json")
SHARES = (0.25, 0.5, 0.75, 0.95)


def extensions(moving: int) -> np.ndarray:
    """All in, all out, half out, and each section out alone."""
    alone = np.eye(moving)
    return np.concatenate([np.zeros((1, moving)), np.ones((1, moving)), alone])


def cells() -> dict[str, list[list[object]]]:
    """A handful of cells of every machine, rule and sector: capacity [kg] and what governs."""
    found = {}
    for name in machine_names():
        machine = load_machine(name)
        rows = extensions(len(machine.boom.sections) - 1)
        for rule in RULES:
            for sector in ("around", "rear"):
                setup = set_up(machine, rule=rule, slew=sector)
                found[f"{name}, {rule}, {sector}"] = _rows(setup, rows)
    return found


def _rows(setup, rows) -> list[list[object]]:
    machine, told = setup.machine, []
    for row in rows:
        far = machine.heel_out + float(
            rate(setup, extension=row, radius=[1.0]).boom.layout.boom_length[0]
        )
        radii = np.round(np.array(SHARES) * far, 3)
        rating = rate(setup, extension=row, radius=radii)
        for radius, capacity, governing in zip(
            radii, rating.capacity[0], rating.governing[0], strict=True
        ):
            known = np.isfinite(capacity)
            told.append(
                [
                    [round(float(f), 3) for f in row],
                    float(radius),
                    float(f"{capacity:.5g}") if known else None,
                    rating.limits[governing].key if known else None,
                ]
            )
    return told


def as_text(found: dict[str, list[list[object]]]) -> str:
    """One cell to a line, so that a diff reads well."""
    parts = []
    for name, rows in found.items():
        lines = ",\n".join("  " + json.dumps(row) for row in rows)
        parts.append(f" {json.dumps(name)}: [\n{lines}\n ]")
    return "{\n" + ",\n".join(parts) + "\n}\n"


if __name__ == "__main__":
    FILE.write_text(as_text(cells()), encoding="utf-8")
