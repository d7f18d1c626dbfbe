"""Formulas in print: what is printed is what is computed."""

import math
import re
import xml.etree.ElementTree as ElementTree

import pytest
import typst
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from sympy import Expr, Function, Integer, Rational, cos, sin, sqrt, symbols

from boomsim.papers.language.formula_markup import LATEX, MATHML, PLAIN, TYPST
from boomsim.papers.language.formula_printing import ENDLESS, in_letters, in_numbers
from boomsim.papers.paper_errors import FamilyError
from boomsim.papers.problems.family import as_written
from boomsim.papers.problems.step_solving import evaluate

A, B, C = symbols("a b c")
ORDER = ("a", "b", "c")

atoms = st.sampled_from([A, B, C, Integer(2), Integer(3), Rational(1, 2)])


def _bigger(inner: st.SearchStrategy[Expr]) -> st.SearchStrategy[Expr]:
    pair = st.tuples(inner, inner)
    return st.one_of(
        pair.map(lambda p: p[0] + p[1]),
        pair.map(lambda p: p[0] - p[1]),
        pair.map(lambda p: p[0] * p[1]),
        pair.map(lambda p: p[0] / (p[1] + 1)),
        inner.map(lambda x: x**2),
        inner.map(lambda x: sqrt(x**2 + 1)),
        inner.map(sin),
        inner.map(cos),
    )


formulas = st.recursive(atoms, _bigger, max_leaves=8)


def calculated(text: str) -> float:
    """What a reader with a calculator gets from a printed line."""
    signs = {"×": "*", "−": "-", "^": "**", "√": "sqrt"}
    for printed, typed in signs.items():
        text = text.replace(printed, typed)
    text = re.sub(r"\b(sin|cos) ([0-9.]+)", r"\1(\2)", text)
    return float(eval(text, {"__builtins__": {}}, vars(math)))


@pytest.mark.slow
@given(formulas, st.booleans())
@settings(max_examples=150, deadline=None)
def test_a_printed_line_of_numbers_gives_the_value(formula: Expr, written: bool) -> None:
    values = {"a": 1.5, "b": 2.25, "c": 0.75}
    if written:
        with as_written():
            formula = 2 * (formula + A) / (B + C)
    assume(not formula.has(*ENDLESS))  # sympy divided by nothing; refused, see below
    assume(math.isfinite(evaluate(formula, values)))
    printed = in_numbers(formula, ORDER, PLAIN, shown=lambda name: str(values[name]))
    value = evaluate(formula, values)
    # Numbers in a formula print to 12 figures; sums of a few such terms keep 9.
    assert calculated(printed) == pytest.approx(value, rel=1e-9, abs=1e-9)


@given(formulas)
@settings(max_examples=60, deadline=None)
def test_mathml_is_well_formed(formula: Expr) -> None:
    assume(not formula.has(*ENDLESS))
    ElementTree.fromstring(f"<math>{in_letters(formula, ORDER, MATHML)}</math>")


def test_a_formula_reads_as_in_a_book() -> None:
    with as_written():
        formula = A * (B + C) / C - 2 * (A - B)
    assert in_letters(formula, ORDER, PLAIN) == "a (b + c) / c − 2 (a − b)"
    assert in_letters(formula, ORDER, LATEX) == (
        r"\frac{a \left(b + c\right)}{c} - 2 \left(a - b\right)"
    )


def test_a_power_of_an_amount_has_brackets() -> None:
    shown = in_numbers(A**2 / 4, ORDER, PLAIN, shown=lambda _: "3 m")
    assert shown == "(3 m)^2 / 4"


def test_letters_have_greek_and_indices() -> None:
    sigma, m_max = symbols("sigma_2 M_max")
    assert in_letters(sigma + m_max, (), LATEX) == r"M_{\mathrm{max}} + \sigma_{2}"
    assert in_letters(sigma, (), PLAIN) == "σ_2"


def test_typst_sets_every_construct() -> None:
    phi = symbols("phi_2")
    with as_written():
        formula = sqrt(A**2 + B) / (2 * sin(phi)) - (A / C) ** 3 * cos(A - B)
    line = in_letters(formula, ORDER, TYPST)
    numbers = in_numbers(formula, ORDER, TYPST, shown=lambda _: "3.1 m")
    source = f"#let q = it => it\n$ {line} = {numbers} $"
    assert typst.compile(source.encode(), format="pdf").startswith(b"%PDF")


@pytest.mark.parametrize("endless", ENDLESS)
def test_a_division_by_nothing_is_refused(endless: Expr) -> None:
    with pytest.raises(FamilyError, match="divided by nothing"):
        in_letters(A + cos(endless * B), ORDER, PLAIN)


def test_an_unknown_construct_is_refused() -> None:
    with pytest.raises(FamilyError, match="cannot be printed"):
        in_letters(Function("airy")(A), ORDER, PLAIN)
