"""Fuzz `boomsim mark`: files of answers, and keys.

pip install atheris
python tests/fuzz/answers.py -max_total_time=60
"""

import json
import tempfile
from pathlib import Path
from typing import Any

import contract

from boomsim.papers.paper_writing import write_papers

BLUEPRINT = """
title = "Fuzzed"
minutes = 10
variants = 2
form = "mixed"
[[part]]
families = ["statics_pad_force", "geometry_radius", "charts_what_governs"]
questions = 3
"""
CELLS = (
    "", "0", "1", "A", "B", "a", "12.5 kN", "12,5 kN", "1 234.5", "1,234.5", "-3 m", "−3 m", "3 ft",
    "1e99", "1e-99", "9" * 70, "nan", "inf", "=1+1", "@x", '"', '""', "kN", "1 kN kN", "1 furlong",
    "1..2", ".5", "5.", "٣", "½", "1/2", "1 000 000 000 000 000 0", "\u202e1", "\x00", "Ada", "01",
    "1", "02", "1a", "x" * 90, "-", "+", "1e", "1e5", "0.0000001 m", "100 %", "1 deg", "1°",
)  # fmt: skip
ODD = (None, True, 0, -1, 1e308, "", "x", "9" * 400, [], {}, "1 kN", "1", 10**400, "🏗", "\x00")


def papers(folder: Path) -> tuple[bytes, bytes]:
    """Write papers once: a key, and the head of the sheet of answers."""
    plan = folder / "plan.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    made = write_papers(plan, folder / "out", formats=("json",))
    return made.key.read_bytes(), made.sheet.read_bytes().splitlines()[0]


with tempfile.TemporaryDirectory() as name:
    KEY, HEAD = papers(Path(name))


def trial(draw: Any) -> None:
    """Answers as raw bytes, rows of strange cells, or JSON; or a key that was changed."""
    kind = draw.ConsumeIntInRange(0, 4)
    key = _key(draw) if kind == 3 else KEY
    report = ["--report", "report"] if not draw.ConsumeIntInRange(0, 15) else []
    locale = (["--locale", ("de", "en", "fr-CH", "")[draw.ConsumeIntInRange(0, 3)]]) * (kind == 1)
    answers = (_raw, _rows, _json, _rows, _under_head)[kind](draw)
    with contract.folder() as where:
        (where / "key.json").write_bytes(key)
        (where / "answers.csv").write_bytes(answers)
        shown = [["--json"], []][draw.ConsumeIntInRange(0, 1)]
        words = ["mark", "key.json", "answers.csv", *report, *locale, *shown]
        contract.run(words, where=where, given=answers.decode("utf-8", "replace"))


def _raw(draw: Any) -> bytes:
    return bytes(draw.ConsumeBytes(3000))


def _under_head(draw: Any) -> bytes:
    return HEAD + b"\n" + bytes(draw.ConsumeBytes(3000))


def _cell(draw: Any) -> str:
    if not draw.ConsumeIntInRange(0, 9):
        return str(draw.ConsumeUnicodeNoSurrogates(12))
    return CELLS[draw.ConsumeIntInRange(0, len(CELLS) - 1)]


def _rows(draw: Any) -> bytes:
    width = HEAD.count(b",") + 1
    rows = []
    for row in range(draw.ConsumeIntInRange(0, 5)):
        cells = [f"Ada {row}", "01", *(_cell(draw) for _ in range(width - 2))]
        if not draw.ConsumeIntInRange(0, 3):
            cells[draw.ConsumeIntInRange(0, 1)] = _cell(draw)
        rows.append(",".join(f'"{cell}"' if "," in cell else cell for cell in cells))
    return HEAD + b"\n" + "\n".join(rows).encode()


def _json(draw: Any) -> bytes:
    labels = HEAD.decode().split(",")[2:]
    rows: list[Any] = []
    for row in range(draw.ConsumeIntInRange(0, 4)):
        answers: dict[str, Any] = {label: _cell(draw) for label in labels}
        answers[labels[0]] = ODD[draw.ConsumeIntInRange(0, len(ODD) - 1)]
        rows.append({"candidate": f"Ada {row}", "variant": "01", "answers": answers})
    if rows and not draw.ConsumeIntInRange(0, 3):
        rows[0] = ODD[draw.ConsumeIntInRange(0, len(ODD) - 1)]
    return json.dumps(rows).encode()


def _key(draw: Any) -> bytes:
    """Change one value somewhere in the key, or its bytes."""
    if not draw.ConsumeIntInRange(0, 4):
        cut = draw.ConsumeIntInRange(0, len(KEY))
        return KEY[:cut] + bytes(draw.ConsumeBytes(20)) + KEY[cut + 3 :]
    data = json.loads(KEY)
    here: Any = data
    while True:
        steps = list(here) if isinstance(here, dict) else list(range(len(here)))
        step = steps[draw.ConsumeIntInRange(0, len(steps) - 1)]
        inner = here[step]
        if not isinstance(inner, dict | list) or not inner or not draw.ConsumeIntInRange(0, 9):
            break
        here = inner
    here[step] = _other(here[step], draw)
    return json.dumps(data).encode()


def _other(value: Any, draw: Any) -> Any:
    """Another value: of any kind, or near to the old one."""
    if isinstance(value, str) and draw.ConsumeBool():
        near = ("0 m", "-1 m", "1e9 m", "0", "1 kN", "999999999 kN", "0.000001 m", value + "0")
        return near[draw.ConsumeIntInRange(0, len(near) - 1)]
    return ODD[draw.ConsumeIntInRange(0, len(ODD) - 1)]


if __name__ == "__main__":
    head = bytes([4, 0, 0]) + b"Ada,01,1,2,3,A,4,5\n"
    contract.fuzz(trial, seeds=[head, b"\x00" + HEAD])
