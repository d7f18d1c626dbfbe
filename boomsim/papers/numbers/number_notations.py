"""Other ways to write one number: "M = 490", "4.90 x 10^2", "35/4". Nothing is evaluated.

Each is brought to the form that :mod:`boomsim.papers.numbers.number_reading` reads, or left as it
is.
"""

import re
from fractions import Fraction

from boomsim.papers.language.formula_markup import GREEK
from boomsim.papers.paper_errors import AnswerError

_NAME = re.compile(r"([^\W\d_]{1,12}(?:_?[^\W_]{1,8})?)\s*[=:≈]\s*(?=[-+.,\d])")
_ABOUT = re.compile(r"[≈~]\s*(?=[-+.,\d])")
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺", "0123456789-+")
_POWER = re.compile(
    r"(?<=[\d.,])\s*[x×X*·⋅]\s*10\s*"
    r"(?:(?:\^|\*\*)\s*(\(?)([-+]?[0-9]{1,2})(\)?)|([⁻⁺]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,2}))(?![\d.,⁰¹²³⁴⁵⁶⁷⁸⁹*^])"
)
_QUOTIENT = re.compile(r"([-+]?)(\d{1,9})\s*/\s*(\d{1,9})(?:\s*([^\d\s'.,/*^+-].*))?", re.ASCII)
_SIGNS = {sign: name for name, sign in GREEK.items()}


def without_name(text: str, *, letter: str) -> str:
    """Take off what a candidate writes before the number: "M = " or "≈ ".

    Parameters
    ----------
    letter : str
        Which the answer line asks for; "" takes any

    Raises
    ------
    AnswerError
        If another letter stands there: the answer may belong to another line
    """
    found = _NAME.match(text)
    if found and letter and _plain(found[1]) != _plain(letter):
        raise AnswerError(f"gives {found[1]}, and this line asks for {letter}")
    rest = text[found.end() :] if found else text
    about = _ABOUT.match(rest)
    return rest[about.end() :] if about else rest


def with_exponent(text: str) -> str:
    """Write a power of ten behind a number as an exponent: "4.90 x 10^2 kN" as "4.90e2 kN"."""
    return _POWER.sub(_exponent, text, count=1)


def quotient_in(text: str) -> tuple[Fraction, str] | None:
    """Read one whole number over another one, with what follows them.

    Parameters
    ----------
    text : str
        "35/4 m"

    Returns
    -------
    (Fraction, str) or None
        Number and unit; None if the text is no quotient
    """
    found = _QUOTIENT.fullmatch(text)
    if not found:
        return None
    sign, above, below, unit = found.groups()
    if not int(below):
        raise AnswerError("divides by nothing")
    return Fraction(int(sign + above), int(below)), unit or ""


def _exponent(found: re.Match[str]) -> str:
    """One power of ten; a bracket that is not closed leaves it as it is."""
    opened, digits, closed, raised = found.groups()
    if bool(opened) != bool(closed):
        return found[0]
    return f"e{digits or raised.translate(_RAISED)}"


def _plain(name: str) -> str:
    """Letters that look alike are one: M_max, Mmax and mmax; θ and theta."""
    base, _, below = name.partition("_")
    return (_SIGNS.get(base, base) + below).casefold()
