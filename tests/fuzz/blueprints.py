"""Fuzz `boomsim paper`: blueprints as raw bytes, and the ready ones with a few edits.

pip install atheris
python tests/fuzz/blueprints.py -max_total_time=60
"""

from pathlib import Path
from typing import Any

import contract
import edits

from boomsim.papers.blueprint import read_blueprint
from boomsim.papers.paper_errors import BlueprintError

FOLDER = Path(__file__).parents[2] / "exercises"
TEXTS = [path.read_text(encoding="utf-8") for path in sorted(FOLDER.glob("*.toml"))]
FORMATS = ("md", "json", "html", "qti", "moodle", "pdf")


def trial(draw: Any) -> None:
    """Read it; set one variant of what is accepted."""
    raw = draw.ConsumeIntInRange(0, 15) == 0
    with contract.folder() as where:
        path = where / "plan.toml"
        if raw:
            path.write_bytes(draw.ConsumeBytes(5000))
        else:
            text = TEXTS[draw.ConsumeIntInRange(0, len(TEXTS) - 1)]
            path.write_bytes(edits.edited(text, draw).encode("utf-8", "replace"))
        try:
            plan = read_blueprint(path)
        except BlueprintError:
            plan = None
        if plan is None and draw.ConsumeIntInRange(0, 3):
            return
        if plan is not None and sum(part.questions for part in plan.part) > 30:
            return
        options = ["--format", FORMATS[draw.ConsumeIntInRange(0, 4)], "--variants", "1"]
        options += [["--units", "us"], []][draw.ConsumeIntInRange(0, 1)]
        contract.run(["paper", "plan.toml", "--out", "out", *options], where=where)


if __name__ == "__main__":
    raw = [b"\x00" + text.encode() for text in TEXTS]
    contract.fuzz(trial, seeds=raw)
