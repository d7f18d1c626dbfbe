"""How formulas are written in Typst, LaTeX, MathML and plain text: four small dialects.

A dialect only knows how a fraction, a power or a letter is written;
:mod:`boomsim.papers.language.formula_printing` walks over the expression.
"""

from abc import ABC, abstractmethod
from collections.abc import Sequence

GREEK = {
    "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "Delta": "Δ", "epsilon": "ε", "eta": "η",
    "theta": "θ", "kappa": "κ", "lambda": "λ", "mu": "μ", "nu": "ν", "xi": "ξ", "pi": "π",
    "rho": "ρ", "sigma": "σ", "tau": "τ", "phi": "φ", "psi": "ψ", "omega": "ω",
}  # fmt: skip


class Dialect(ABC):
    """How one format writes the parts of a formula."""

    stacked = True
    """Whether a fraction is stacked, so that it needs no brackets."""

    @abstractmethod
    def letter(self, base: str, below: str) -> str:
        """Write a letter, with an index below or ""."""

    @abstractmethod
    def number(self, text: str) -> str:
        """Write a number, or an amount with its unit."""

    @abstractmethod
    def mark(self, text: str) -> str:
        """Write an operator or relation: + − × = ."""

    @abstractmethod
    def fraction(self, above: str, below: str) -> str:
        """Write a fraction."""

    @abstractmethod
    def power(self, base: str, exponent: str) -> str:
        """Write a power."""

    @abstractmethod
    def root(self, inside: str) -> str:
        """Write a square root."""

    @abstractmethod
    def call(self, name: str, inside: str) -> str:
        """Write a function before its argument, which has its brackets if it needs any."""

    @abstractmethod
    def group(self, inside: str) -> str:
        """Round brackets."""

    @abstractmethod
    def size(self, inside: str) -> str:
        """Absolute value."""

    @abstractmethod
    def row(self, parts: Sequence[str]) -> str:
        """Parts side by side."""


_LATEX = {"%": "\\%", "\u00a0": "\\ ", "\u202f": "\\,", "°": "^\\circ", "²": "^2", "³": "^3",
          "⁴": "^4", "−": "-", "&": "\\&"}  # fmt: skip


class Typst(Dialect):
    """Typst mathematics, for ``eval(text, mode: "math")``."""

    def letter(self, base: str, below: str) -> str:
        """Names and indices of more than one letter stand upright."""
        name = GREEK.get(base, base if len(base) < 2 else f'"{base}"')
        index = below if len(below) < 2 else f'"{below}"'
        return f"{name}_({index})" if below else name

    def number(self, text: str) -> str:
        """Quoted with its unit, so that they stay together and upright."""
        return text if text.replace(".", "").isdecimal() else f'#q("{text}")'

    def mark(self, text: str) -> str:
        """Spaced by Typst itself."""
        return f" {text} "

    def fraction(self, above: str, below: str) -> str:
        """Stacked."""
        return f"frac({above}, {below})"

    def power(self, base: str, exponent: str) -> str:
        """Raise it."""
        return f"{base}^({exponent})"

    def root(self, inside: str) -> str:
        """Square root."""
        return f"sqrt({inside})"

    def call(self, name: str, inside: str) -> str:
        """Upright name."""
        return f'op("{name}") {inside}'

    def group(self, inside: str) -> str:
        """Brackets that grow."""
        return f"lr(({inside}))"

    def size(self, inside: str) -> str:
        """Bars."""
        return f"abs({inside})"

    def row(self, parts: Sequence[str]) -> str:
        """Keep letters apart by a space."""
        return " ".join(parts)


class Latex(Dialect):
    """LaTeX mathematics, for Markdown."""

    def letter(self, base: str, below: str) -> str:
        """Names and indices of more than one letter stand upright."""
        name = f"\\{base}" if base in GREEK else base if len(base) < 2 else f"\\mathrm{{{base}}}"
        index = below if len(below) < 2 else f"\\mathrm{{{below}}}"
        return f"{name}_{{{index}}}" if below else name

    def number(self, text: str) -> str:
        """Upright with its unit; spaces and signs as LaTeX writes them."""
        if text.replace(".", "").isdecimal():
            return text
        for plain, latex in _LATEX.items():
            text = text.replace(plain, latex)
        return f"\\mathrm{{{text}}}"

    def mark(self, text: str) -> str:
        """Signs by their LaTeX names."""
        named = {"×": "\\times", "−": "-", "<": "<", "≈": "\\approx"}
        return f" {named.get(text, text)} "

    def fraction(self, above: str, below: str) -> str:
        """Stacked."""
        return f"\\frac{{{above}}}{{{below}}}"

    def power(self, base: str, exponent: str) -> str:
        """Raise it."""
        return f"{{{base}}}^{{{exponent}}}"

    def root(self, inside: str) -> str:
        """Square root."""
        return f"\\sqrt{{{inside}}}"

    def call(self, name: str, inside: str) -> str:
        """LaTeX knows functions of one word; words of our own are set upright."""
        if " " in name:
            return f"\\text{{{name.replace('%', chr(92) + '%')}}} {inside}"
        return f"\\{name} {inside}"

    def group(self, inside: str) -> str:
        """Brackets that grow."""
        return f"\\left({inside}\\right)"

    def size(self, inside: str) -> str:
        """Bars."""
        return f"\\left|{inside}\\right|"

    def row(self, parts: Sequence[str]) -> str:
        """Thin spaces between letters are LaTeX's own affair."""
        return " ".join(parts)


class MathML(Dialect):
    """Presentation MathML, for HTML."""

    def letter(self, base: str, below: str) -> str:
        """Names and indices of more than one letter stand upright, as ``mi`` does by itself."""
        name = f"<mi>{GREEK.get(base, base)}</mi>"
        kind = "mi" if len(below) == 1 and below.isalpha() else "mn"
        return f"<msub>{name}<{kind}>{below}</{kind}></msub>" if below else name

    def number(self, text: str) -> str:
        """Use ``mn`` even with a unit: an operator between two ``mtext`` would lose its space."""
        return f"<mn>{text}</mn>"

    def mark(self, text: str) -> str:
        """Write an operator."""
        return f"<mo>{text.replace('<', '&lt;')}</mo>"

    def fraction(self, above: str, below: str) -> str:
        """Stacked."""
        return f"<mfrac><mrow>{above}</mrow><mrow>{below}</mrow></mfrac>"

    def power(self, base: str, exponent: str) -> str:
        """Raise it."""
        return f"<msup><mrow>{base}</mrow><mrow>{exponent}</mrow></msup>"

    def root(self, inside: str) -> str:
        """Square root."""
        return f"<msqrt>{inside}</msqrt>"

    def call(self, name: str, inside: str) -> str:
        """Name, invisible function sign, argument."""
        gap = "" if inside.startswith("<mrow><mo>(") else '<mspace width="0.17em"/>'
        return f"<mn>{name}</mn><mo>&#x2061;</mo>{gap}{inside}"

    def group(self, inside: str) -> str:
        """Brackets."""
        return f"<mrow><mo>(</mo>{inside}<mo>)</mo></mrow>"

    def size(self, inside: str) -> str:
        """Bars."""
        return f"<mrow><mo>|</mo>{inside}<mo>|</mo></mrow>"

    def row(self, parts: Sequence[str]) -> str:
        """Leave a thin gap where two factors meet."""
        return '<mspace width="0.17em"/>'.join(parts)


class Plain(Dialect):
    """One line of text: alternative text, tables, the terminal."""

    stacked = False

    def letter(self, base: str, below: str) -> str:
        """Put the index after an underscore."""
        return f"{GREEK.get(base, base)}_{below}" if below else GREEK.get(base, base)

    def number(self, text: str) -> str:
        """As it is."""
        return text

    def mark(self, text: str) -> str:
        """Spaced, but a comma only after it."""
        return ", " if text == "," else f" {text} "

    def fraction(self, above: str, below: str) -> str:
        """Write a slash."""
        return f"{above} / {below}"

    def power(self, base: str, exponent: str) -> str:
        """Write a caret."""
        return f"{base}^{exponent}"

    def root(self, inside: str) -> str:
        """Write the root sign."""
        return f"√({inside})"

    def call(self, name: str, inside: str) -> str:
        """Brackets close up to the name."""
        return f"{name}{inside}" if inside.startswith("(") else f"{name} {inside}"

    def group(self, inside: str) -> str:
        """Brackets."""
        return f"({inside})"

    def size(self, inside: str) -> str:
        """Bars."""
        return f"|{inside}|"

    def row(self, parts: Sequence[str]) -> str:
        """Write a space."""
        return " ".join(parts)


TYPST, LATEX, MATHML, PLAIN = Typst(), Latex(), MathML(), Plain()
