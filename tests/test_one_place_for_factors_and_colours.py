"""Factors of units and colours have one place each; elsewhere stand their names, no digits."""

import ast
import re
from pathlib import Path

import pytest

from boomsim.figures import colours_and_lines
from boomsim.gravity import GRAVITY
from boomsim.units import FOOT, INCH, POUND

PACKAGE = Path(__file__).parents[1] / "boomsim"
MODULES = sorted(PACKAGE.rglob("*.py"))

FACTORS = {
    factor
    for one in (float(POUND), float(FOOT), float(INCH), 1e3 * float(INCH), GRAVITY)
    for factor in (one, 1.0 / one)
}
"""And their inverses; an inch in millimetres too."""

CLOSE = 5e-4
"""So that 9.81, 0.4536 and 2.205 are found [1]."""

SCHOOL_GRAVITY_STANDS_IN = "lessons/printed_figures.py"
"""A class's own 9.81, against which its figures are read."""

COLOUR = re.compile(r"#(?:[0-9a-fA-F]{8}|[0-9a-fA-F]{6}|[0-9a-fA-F]{3})\b")
COLOURS_STAND_IN = "figures/colours_and_lines.py"
NAMED = {"white", "black", "red", "green", "blue", "orange", "yellow"}


def numbers(text: str) -> list[float]:
    found = (node.value for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Constant))
    return [value for value in found if type(value) is float]


def factors_in(text: str) -> list[float]:
    return [n for n in numbers(text) for f in FACTORS if abs(n - f) <= CLOSE * f]


def colours_in(text: str) -> list[str]:
    """In digits anywhere in a string, by name where the string is nothing else."""
    tree = ast.parse(text)
    told = [n.value for n in ast.walk(tree) if isinstance(n, ast.Constant)]
    digits = [one for value in told if isinstance(value, str) for one in COLOUR.findall(value)]
    return digits + [value for value in told if isinstance(value, str) and value in NAMED]


def where(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


def test_what_is_looked_for_is_found():
    found = factors_in("a = 25.4 / 72.0; b = 9.81 * 2.2046; c = 0.3048")
    assert sorted(found) == [0.3048, 2.2046, 9.81, 25.4]
    assert factors_in("a = 0.3; b = 2.2; c = 9.8; d = 25.0") == []
    found = colours_in("fill = '#fff'; css = f'a {{ color: #8a3b12 }} {fill}'; text(c='white')")
    assert sorted(found) == ["#8a3b12", "#fff", "white"]


@pytest.mark.parametrize("path", MODULES, ids=where)
def test_factors_of_units_and_colours_are_named(path):
    text = path.read_text(encoding="utf-8")
    assert factors_in(text) == ([9.81] if where(path) == SCHOOL_GRAVITY_STANDS_IN else [])
    if where(path) != COLOURS_STAND_IN:
        assert colours_in(text) == []


def test_no_colour_of_the_palette_has_two_names():
    colours = [v for v in vars(colours_and_lines).values() if isinstance(v, str) and v[:1] == "#"]
    assert len(colours) > 15
    assert len(set(colours)) == len(colours)
