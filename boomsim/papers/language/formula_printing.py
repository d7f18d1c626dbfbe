"""From a sympy formula to print: one walk over the expression, for every dialect.

What the walk does not know is refused: a formula is never printed half. A formula is written
with its letters, or with the numbers of one problem in their places; the walk is done once a
formula, the numbers are then put into its slots.
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from sympy import (
    Abs,
    Add,
    Expr,
    Function,
    Integer,
    Max,
    Min,
    Mul,
    Number,
    Pow,
    Rational,
    S,
    Symbol,
    acos,
    asin,
    atan,
    cos,
    exp,
    log,
    pi,
    sin,
    tan,
)  # fmt: skip

from boomsim.papers.language.first_failing_check import first_over
from boomsim.papers.language.formula_markup import Dialect
from boomsim.papers.paper_errors import FamilyError

FUNCTIONS = {
    sin: "sin", cos: "cos", tan: "tan", asin: "arcsin", acos: "arccos", atan: "arctan",
    log: "ln", exp: "exp", Min: "min", Max: "max", first_over: "first over 100 % of",
}  # fmt: skip

ENDLESS = (S.NaN, S.Infinity, S.NegativeInfinity, S.ComplexInfinity)

_SUM, _PRODUCT, _POWER = 1, 2, 3  # a weaker binding than asked for needs brackets
_SLOT = re.compile("\ue000(.*?)\ue001")


@lru_cache(maxsize=8192)
def in_letters(formula: Expr, order: tuple[str, ...], dialect: Dialect) -> str:
    """Write a formula with its letters.

    Parameters
    ----------
    order : tuple of str
        Letters in the order in which terms and factors are written
    """
    return _Walk(dialect=dialect, order=order, slots=False).write(formula)


def in_numbers(
    formula: Expr, order: tuple[str, ...], dialect: Dialect, *, shown: Callable[[str], str]
) -> str:
    """Write a formula with numbers in the places of its letters.

    Parameters
    ----------
    shown : callable
        Printed amount by letter
    """
    template = _with_slots(formula, order, dialect)
    return _SLOT.sub(lambda slot: dialect.number(shown(slot[1])), template)


def letter(name: str, dialect: Dialect) -> str:
    """Write one letter; what follows an underscore is its index.

    Parameters
    ----------
    name : str
        "F", "theta", "M_max"
    """
    base, _, below = name.partition("_")
    return dialect.letter(base, below)


@lru_cache(maxsize=8192)
def _with_slots(formula: Expr, order: tuple[str, ...], dialect: Dialect) -> str:
    """Write a formula with a slot for each letter."""
    return _Walk(dialect=dialect, order=order, slots=True).write(formula)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Walk:
    """One walk: how to write, in which order, and whether letters become slots."""

    dialect: Dialect
    order: tuple[str, ...]
    slots: bool

    def write(self, part: Expr, binding: int = 0) -> str:
        """Write a part, in brackets where it binds more weakly than its surroundings."""
        if part in ENDLESS:
            raise FamilyError(f"A formula holds {part}: something in it is divided by nothing.")
        if isinstance(part, Add):
            return self._grouped(self._sum(part), _SUM, binding)
        if isinstance(part, Mul) or (isinstance(part, Pow) and _is_below(part)):
            return self._product(part, binding)
        if isinstance(part, Pow):
            return self._power(part)
        return self._single(part, binding)

    def _single(self, part: Expr, binding: int) -> str:
        """Write what has no operator."""
        if isinstance(part, Symbol):
            return self._letter(str(part))
        if part is pi:
            return self.dialect.letter("pi", "")
        if isinstance(part, Rational) and not isinstance(part, Integer):
            return self._product(part, binding)
        if isinstance(part, Number):
            return self._grouped(
                self.dialect.number(_number(part)), _SUM, binding if part.is_negative else 0
            )
        if isinstance(part, Abs):
            return self.dialect.size(self.write(part.args[0]))
        if part.func in FUNCTIONS:
            return self._call(part)
        raise FamilyError(
            f"The formula part {part} ({type(part).__name__}) cannot be printed. "
            "Write it with + − × /, powers, roots and the functions of "
            "boomsim.papers.language.formula_printing."
        )

    def _call(self, part: Expr) -> str:
        """Write a function; of a single letter without brackets: cos θ."""
        inside = [self.write(arg) for arg in part.args]
        bare = len(inside) == 1 and isinstance(part.args[0], Symbol)
        text = inside[0] if bare else self.dialect.group(self.dialect.mark(",").join(inside))
        return self.dialect.call(FUNCTIONS[part.func], text)

    def _letter(self, name: str) -> str:
        """Write a letter or its slot."""
        return f"\ue000{name}\ue001" if self.slots else letter(name, self.dialect)

    def _grouped(self, text: str, own: int, binding: int) -> str:
        """Add brackets if needed."""
        return self.dialect.group(text) if binding > own else text

    def _sum(self, part: Expr) -> str:
        """Positive terms first, each group in the order of the letters."""
        terms = sorted(_terms(part), key=lambda term: (_split(term)[0] < 0, self._rank(term)[1:]))
        text = self._term(terms[0], first=True)
        return text + "".join(self._term(term, first=False) for term in terms[1:])

    def _term(self, term: Expr, *, first: bool) -> str:
        """One term with its sign."""
        sign, above, below = _split(term)
        mark = self.dialect.mark("−") if sign < 0 else "" if first else self.dialect.mark("+")
        return (mark.lstrip() if first else mark) + self._ratio(above, below, _PRODUCT)

    def _product(self, part: Expr, binding: int) -> str:
        """Write a product with its sign, as one fraction if anything stands below."""
        sign, above, below = _split(part)
        if sign < 0:
            text = self.dialect.mark("−") + self._ratio(above, below, _PRODUCT)
            return self._grouped(text.lstrip(), _SUM, binding)
        own = _POWER if below and self.dialect.stacked and binding < _POWER else _PRODUCT
        own = own if len(above) + len(below) > 1 else _POWER
        return self._grouped(self._ratio(above, below, _PRODUCT), own, binding)

    def _ratio(self, above: list[Expr], below: list[Expr], binding: int) -> str:
        """Write above / below."""
        if not below:
            return self._row(above, binding)
        alone = 0 if self.dialect.stacked else _PRODUCT
        foot = 0 if self.dialect.stacked else _POWER
        bottom = self._row(below, foot if len(below) == 1 else _PRODUCT)
        if len(below) > 1 and not self.dialect.stacked:
            bottom = self.dialect.group(bottom)
        top = self._row(above, alone if len(above) == 1 else _PRODUCT)
        return self.dialect.fraction(top, bottom)

    def _row(self, factors: Sequence[Expr], binding: int) -> str:
        """Factors side by side; a sign of multiplication only where numbers meet."""
        ordered = sorted(factors, key=lambda f: (not isinstance(f, Number), self._rank(f)))
        texts = [self.write(factor, binding) for factor in ordered] or [self.dialect.number("1")]
        if self.slots:
            return self.dialect.mark("×").join(texts)
        return self.dialect.row(texts)

    def _power(self, part: Expr) -> str:
        """Write a power or a square root."""
        base, exponent = part.args
        if exponent == S.Half:
            return self.dialect.root(self.write(base))
        bracketed = isinstance(base, Function) or (self.slots and isinstance(base, Symbol))
        text = self.dialect.group(self.write(base)) if bracketed else self.write(base, _POWER + 1)
        return self.dialect.power(text, self.write(exponent, 0 if self.dialect.stacked else _POWER))

    def _rank(self, part: Expr) -> tuple[int, tuple[int, ...], str]:
        """Place in the row: letters, sums, functions, each by the order of the letters."""
        places = sorted(self._place(str(one)) for one in part.free_symbols)
        late = 2 if isinstance(part, Function) else int(isinstance(part, Add))
        return (late, tuple(places), str(part))

    def _place(self, name: str) -> int:
        """Place of one letter."""
        return self.order.index(name) if name in self.order else len(self.order)


def _is_below(power: Expr) -> bool:
    """Whether a power stands below a fraction bar."""
    return bool(power.exp.is_number and power.exp.is_negative)


def _terms(part: Expr) -> list[Expr]:
    """All terms of nested sums."""
    return [one for arg in part.args for one in (_terms(arg) if isinstance(arg, Add) else [arg])]


def _split(part: Expr) -> tuple[int, list[Expr], list[Expr]]:
    """Split a product into its sign, what stands above and what stands below the bar."""
    if isinstance(part, Mul):
        sign, above, below = 1, list[Expr](), list[Expr]()
        for factor in part.args:
            own, up, down = _split(factor)
            sign, above, below = sign * own, above + up, below + down
        return sign, above, below
    if isinstance(part, Pow) and _is_below(part):
        up = part.base if part.exp == S.NegativeOne else Pow(part.base, -part.exp)
        return 1, [], [up]
    if isinstance(part, Number):
        return _split_number(part)
    return 1, [part], []


def _split_number(part: Expr) -> tuple[int, list[Expr], list[Expr]]:
    """Split a number into sign, numerator and denominator; a factor of one is not written."""
    sign, size = (-1, -part) if part.is_negative else (1, part)
    if not isinstance(size, Rational):
        return sign, [size], []
    top, bottom = Integer(size.p), Integer(size.q)
    return sign, [top] * (top != 1), [bottom] * (bottom != 1)


def _number(part: Expr) -> str:
    """Write a number as people write it: 0.85, not 0.850000000000000."""
    return str(part) if isinstance(part, Integer) else f"{float(part):.12g}"
