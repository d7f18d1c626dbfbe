"""Edits of text files, drawn from the fuzzer's bytes."""

import re
from typing import Any

WORDS = (
    "nan", "inf", "-1", "0", "1e999", "true", "[]", "{}", "[[[]]]", "1979-05-27", '""', '"x"',
    '"1 m"', '"0 m"', '"-1 m"', '"1e6 m"', '"1e-6 m"', '"1 mm"', '"1 kg"', '"1e9 kg"', '"1 t"',
    '"1 kN"', '"1 MPa"', '"1e9 MPa"', '"1 deg"', '"90 deg"', '"-90 deg"', '"100 %"', '"0.1 %"',
    '"1,5 m"', '"1 ton"', "9999999999999999999999", "0.0", "1.0", "-0.0", '"\\u0000"', '"ü"',
)  # fmt: skip
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def edited(text: str, draw: Any) -> str:
    """Change a few lines of a file: other values, scaled numbers, lines lost and doubled."""
    lines = text.splitlines()
    for _ in range(draw.ConsumeIntInRange(0, 4)):
        place = draw.ConsumeIntInRange(0, len(lines) - 1)
        lines[place : place + 1] = _changed(lines, place, draw)
    mark = ("\n", "\r\n", "\n", "\n")[draw.ConsumeIntInRange(0, 3)]
    return mark.join(lines) + mark


def _changed(lines: list[str], place: int, draw: Any) -> list[str]:
    line, kind = lines[place], draw.ConsumeIntInRange(0, 7)
    if kind == 0:
        return []
    if kind == 1:
        return [line, line]
    if kind == 2:
        return [lines[draw.ConsumeIntInRange(0, len(lines) - 1)], line]
    if kind == 3:
        return [f"{line.split('=')[0]}= {WORDS[draw.ConsumeIntInRange(0, len(WORDS) - 1)]}"]
    if kind == 4:
        return [line.split("=")[0] + "= " + draw.ConsumeUnicodeNoSurrogates(12)]
    factor = (0.0, -1.0, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 2.0, 10.0, 1000.0)
    scale = factor[draw.ConsumeIntInRange(0, len(factor) - 1)]
    return [_scaled(line, scale, draw.ConsumeIntInRange(0, 5))]


def _scaled(line: str, factor: float, which: int) -> str:
    """Scale one number of a line's value."""
    name, sign, value = line.partition("=")
    found = list(_NUMBER.finditer(value))
    if not sign or not found:
        return line
    at = found[which % len(found)]
    return f"{name}={value[: at.start()]}{float(at[0]) * factor:.12g}{value[at.end() :]}"
