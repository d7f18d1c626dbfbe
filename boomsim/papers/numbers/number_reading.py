"""Reading a candidate's number: never guessing, never evaluating.

A comma is a decimal comma only where the locale was named; what could mean two numbers is refused
and left to the examiner. Units are read by :func:`boomsim.units.parse`.
"""

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from boomsim.papers.numbers.moment_units import moment_unit
from boomsim.papers.numbers.number_notations import quotient_in, with_exponent, without_name
from boomsim.papers.numbers.printed_units import METRIC, US, Unit
from boomsim.papers.paper_errors import AnswerError, PaperError
from boomsim.units import UnitError, did_you_mean, parse

EXACT = 15
"""Significant figures of a quotient of whole numbers [1]."""

LONGEST = 60
"""Characters in one answer; nobody needs more [1]."""

COMMA_LANGUAGES = frozenset([
    "af", "az", "be", "bg", "bs", "ca", "cs", "da", "de", "el", "es", "et", "eu", "fi", "fr",
    "gl", "hr", "hu", "hy", "id", "is", "it", "ka", "kk", "lt", "lv", "mk", "nb", "nl", "nn",
    "no", "pl", "pt", "ro", "ru", "sk", "sl", "sq", "sr", "sv", "tr", "uk", "uz", "vi",
])  # fmt: skip
POINT_LANGUAGES = frozenset([
    "ar", "bn", "en", "fa", "ga", "he", "hi", "ja", "ko", "ms", "mt", "pa", "sw", "ta", "th",
    "ur", "zh",
])  # fmt: skip
POINT_PLACES = frozenset([
    "de-ch", "de-li", "it-ch", "es-mx", "es-us", "es-gt", "es-hn", "es-ni", "es-pa", "es-pe",
    "es-pr", "es-sv", "es-do",
])  # fmt: skip
COMMA_PLACES = frozenset(["en-za"])
"""Where the decimal sign is not the language's usual one; from memory, after CLDR."""

_NUMBER = re.compile(
    r"([+-]?)([.,]?\d[\d.,' ]*)(?:[eE]([+-]?\d{1,2})(?![\d.,]))?\s*([^\d\s'.,].*)?", re.ASCII
)
_POUNDS = re.compile(r"(?<![A-Za-z])lbs?(?![A-Za-z])")


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """A number as a candidate gave it.

    Attributes
    ----------
    value : float
        [SI]
    figures : int
        Significant figures written; of 1200 the zeros count [1]
    half_step : float
        Half a unit of its last figure: what rounding may have hidden [SI]
    """

    value: float
    figures: int
    half_step: float


def decimal_sign(locale: str | None, *, system: str = METRIC) -> str:
    """Find the decimal sign of a locale.

    Parameters
    ----------
    locale : str or None
        "de", "de-CH", "en_US"; None if it was not named
    system : str
        Of the paper: US papers print 12,500 with a comma for thousands

    Returns
    -------
    str
        "," or "." if it is certain; "" if a comma could mean either
    """
    if locale is None:
        return "." if system == US else ""
    name = locale.strip().lower().replace("_", "-").partition(".")[0]
    language = name.partition("-")[0]
    if name in POINT_PLACES or (language in POINT_LANGUAGES and name not in COMMA_PLACES):
        return "."
    if name in COMMA_PLACES or language in COMMA_LANGUAGES:
        return ","
    known = sorted(COMMA_LANGUAGES | POINT_LANGUAGES)
    raise PaperError(
        f'The locale "{locale[:20]}" is not known.{did_you_mean(language, known)} '
        'Name one like "de", "fr-FR" or "en-US".'
    )


def read_number(text: str, *, unit: Unit, sign: str, letter: str = "") -> Number:
    """Read one answer.

    Parameters
    ----------
    text : str
        "15.6 kN", "15600 N", or "15.6" in the unit printed beside the answer line; also
        "F = 15.6 kN", "1.56 x 10^4 N" and, of whole numbers, "78/5"
    unit : Unit
        The unit printed there
    sign : str
        From :func:`decimal_sign`
    letter : str
        Which the answer line asks for; "" if any may stand before the number

    Raises
    ------
    AnswerError
        If it is no number, could be two, or has a unit of something else
    """
    clean = without_name(_clean(text), letter=letter)
    if quotient := quotient_in(clean):
        value = _in_si(quotient[0], quotient[1], unit)
        return Number(value=value, figures=EXACT, half_step=0.0)
    sign_, digits, exponent, name = _parts(with_exponent(clean))
    plain = sign_ + _with_point(digits.strip(), sign)
    number = Decimal(f"{plain}e{exponent or 0}")
    last = Decimal(1).scaleb(int(number.as_tuple().exponent))
    written = len(plain.lstrip("+-0.").replace(".", "")) or 1
    value = _in_si(number, name or "", unit)
    one = abs(value / float(number)) if number else float(unit.factor)
    return Number(value=value, figures=written, half_step=0.5 * float(last) * one)


def _clean(text: str) -> str:
    """Refuse what is too long or a formula of a spreadsheet; bring blanks and signs to one form."""
    if len(text) > LONGEST:
        raise AnswerError(
            f"has {len(text)} characters; an answer has at most {LONGEST}, a number and its unit"
        )
    clean = re.sub(r"[\u00a0\u202f\u2009]", " ", text).replace("−", "-").strip()
    if clean[:1] in ("=", "@"):
        raise AnswerError("looks like a spreadsheet formula; type the number itself")
    return clean


def _parts(clean: str) -> tuple[str, str, str | None, str | None]:
    """Sign, digits, exponent and unit of an answer."""
    found = _NUMBER.fullmatch(clean)
    if not found:
        raise AnswerError("is not a number with a unit, such as 12.5 kN")
    sign, digits, exponent, name = found.groups()
    return sign, digits, exponent, name


def _with_point(digits: str, sign: str) -> str:
    """Bring the digits to a decimal point, or say why that cannot be done with certainty."""
    decimal = sign or "."
    other = "." if decimal == "," else ","
    if re.fullmatch(rf"\d+\{decimal}?\d*|\{decimal}\d+", digits):
        return digits.replace(decimal, ".")
    thousands = re.fullmatch(
        rf"\d{{1,3}}([{other}' ])\d{{3}}(?:\1\d{{3}})*(\{decimal}\d+)?", digits
    )
    if not thousands:
        raise AnswerError(_why_not(digits, sign))
    mark, part = thousands.groups()
    once = mark == other and not part and digits.count(mark) == 1
    if once and sign != ".":
        raise AnswerError(f'could mean two numbers ("{digits}"); it is left to the examiner')
    return digits.replace(mark, "").replace(decimal, ".")


def _why_not(digits: str, sign: str) -> str:
    """Say why the digits are no number."""
    if "," in digits and sign == "":
        return "has a comma, and no locale was named in which that is a decimal comma"
    if ("," if sign == "." else ".") in digits and sign:
        meant = "comma" if sign == "." else "point"
        return f"has a {meant}, which is no decimal sign in the locale that was named"
    return f'has signs between its digits that make no number ("{digits[:20]}")'


def _in_si(number: Decimal | Fraction, name: str, unit: Unit) -> float:
    """Apply the unit; without one, the printed unit holds."""
    if abs(Fraction(number)) > 10**15:
        raise AnswerError("is unreasonably large; look at its zeros and its unit")
    if not name:
        return float(Fraction(number) * unit.factor)
    if unit.si == "N*m" and (size := moment_unit(name)):
        return float(Fraction(number) * size)
    if unit.si.startswith("N"):
        name = _POUNDS.sub("lbf", name)  # US trade writes lb for the force too
    try:
        # A quotient has no end of digits; twelve are as many as print ever needs.
        digits = number if isinstance(number, Decimal) else Decimal(f"{float(number):.12g}")
        return parse(f"{digits:f} {name}", unit.quantity)
    except UnitError as error:
        raise AnswerError(f"cannot be read: {error}") from None
