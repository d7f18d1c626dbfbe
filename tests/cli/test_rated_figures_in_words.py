"""A rated figure in a command's words is never more than the one in its JSON, and hardly less."""

import json
import re
from collections.abc import Callable
from typing import Any

import pytest

from boomsim.cli import main

KILOGRAMS = {"t": 1000.0, "kg": 1.0, "lb": 0.45359237}
FIGURE = r"([\d.,]+) (t|kg|lb)"
WAY = ["yard60", "--extension", "0,100,100,0"]
FREE = ["truck18", "--extension", "50,50,50"]
HAIR = 1e-9
"""What dividing by a unit may lose [1]."""

Answer = dict[str, Any]
Words = Callable[[str, Answer], list[tuple[str, float]]]


def ran(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(list(words)) == 0
    return str(capsys.readouterr().out)


def figures(text: str) -> list[str]:
    return [" ".join(found) for found in re.findall(FIGURE, text)]


def rows(text: str, start: str) -> list[str]:
    """Lines of the one table whose head begins so."""
    table = next(part for part in text.split("\n\n") if re.match(start, part))
    return table.splitlines()[2:]


def of_lift(text: str, answer: Answer) -> list[tuple[str, float]]:
    line = next(row for row in text.splitlines() if row.startswith("rated capacity"))
    return [(figures(line)[0], answer["capacity"])]


def of_losses(text: str, answer: Answer) -> list[tuple[str, float]]:
    line = next(row for row in text.splitlines() if row.startswith("rated "))
    said = list(zip(figures(line), answer["capacity"], strict=True))
    short = next(effect for effect in answer["effects"] if effect["name"] == "outrigger")
    one_line = " ".join(text.split())
    before = re.findall(rf"{FIGURE} before", one_line)
    told = [" ".join(found) for found in before]
    return said + list(zip(told, short["before"], strict=True))


def of_around(text: str, answer: Answer) -> list[tuple[str, float]]:
    listed = rows(text, r"radius +all around")
    sectors = answer["sectors"]
    # As many rows as are readable: every so many of the radii.
    step = -(-len(sectors["radii"]) // len(listed))
    said = []
    for k, row in enumerate(listed):
        _, around, rear, *_ = re.split(r"\s{2,}", row)
        said.append((figures(around)[0], sectors["around"][k * step]))
        said.append((figures(rear)[0], sectors["rear"][k * step]))
    line = next(row for row in text.splitlines() if re.match(r"rated  +", row))
    pair = answer["reasons"]["around"]["capacity"], answer["reasons"]["rear"]["capacity"]
    return said + list(zip(figures(line), pair, strict=True))


def of_overload(text: str, answer: Answer) -> list[tuple[str, float]]:
    one_line = " ".join(text.split())
    head = re.search(rf"{FIGURE} is rated at", one_line)
    hung = re.search(rf"With {FIGURE} hanging clear", one_line)
    assert head is not None
    assert hung is not None
    return [(" ".join(found.groups()), answer["rated"]) for found in (head, hung)]


def of_compare(text: str, answer: Answer) -> list[tuple[str, float]]:
    ways = answer["configurations"]
    said = []
    for k, line in enumerate(rows(text, r"radius +A")):
        said += list(zip(figures(line), [way["capacity"][k] for way in ways], strict=True))
    one_line = " ".join(text.split())
    at = answer["explained"][0]
    capacities = sorted((a["capacity"] for a in at["accounts"]), reverse=True)
    told = re.findall(rf"carries {FIGURE};", one_line)
    said += [(" ".join(one), kg) for one, kg in zip(told, capacities, strict=True)]
    met = re.findall(rf"both carry {FIGURE} there", one_line)
    crossed = [x["capacity"] for x in answer["crossovers"]]
    return said + [(" ".join(one), kg) for one, kg in zip(met, crossed, strict=True)]


CASES: dict[str, tuple[list[str], Words]] = {
    "lift": (["lift", *WAY, "--radius", "9.3 m", "--load", "1 t"], of_lift),
    "losses": (["losses", *FREE, "--radius", "6.3 m, 9.1 m, 13.7 m"], of_losses),
    "around": (["around", *FREE, "--radius", "9 m"], of_around),
    "overload": (["overload", *WAY, "--radius", "17.3 m"], of_overload),
    "compare": (
        ["compare", *WAY, "--extension", "0,0,100,100", "--radius", "12 m", "--radii", "9 m, 12 m"],
        of_compare,
    ),
}


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("command", CASES)
def test_no_rated_figure_is_rounded_up(
    command: str, units: str, capsys: pytest.CaptureFixture[str]
) -> None:
    words, found = CASES[command]
    text = ran(capsys, *words, "--units", units)
    answer = json.loads(ran(capsys, *words, "--units", units, "--json"))
    pairs = found(text, answer)
    assert pairs
    for said, exact in pairs:
        number, unit = said.split()
        kilograms = float(number.replace(",", "")) * KILOGRAMS[unit]
        assert kilograms <= exact * (1.0 + HAIR)
        # Three digits at least are shown: less than one in a hundred is left out.
        assert kilograms > 0.99 * exact
