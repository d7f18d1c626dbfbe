"""The words of the trade where they differ between the international and the American form.

Sentences are written once, in the international form; what is told in US units passes through
:func:`in_words` at the edge, where it is printed, drawn or put on a page.
"""

import re
from dataclasses import fields, is_dataclass, replace
from functools import lru_cache
from typing import Any, TypeVar, cast

TRADE: tuple[tuple[str, str], ...] = (
    ("luffing cylinder", "lift cylinder"),
    ("luffing plane", "plane of the boom"),
    ("luffs", "booms up or down"),
    ("luffed", "boomed"),
    ("luffing", "booming"),
    ("slewing ring", "turntable bearing"),
    ("slewing platform", "turntable"),
    ("slewing gear", "swing gear"),
    ("slewed", "swung"),
    ("slewing", "swing"),
    ("slews", "swings"),
    ("slew", "swing"),
    ("tyres", "tires"),
    ("tyre", "tire"),
    ("hoist rope", "hoist line"),
    ("ropes", "lines"),
    ("rope", "line"),
    ("tonnes", "metric tons"),
    ("tonne", "metric ton"),
    ("metres", "meters"),
    ("metre", "meter"),
    ("centres", "centers"),
    ("centre", "center"),
    ("colours", "colors"),
    ("colour", "color"),
    ("grey", "gray"),
    ("aluminium", "aluminum"),
    ("synchronised", "synchronized"),
    ("utilisation", "utilization"),
    ("labelled", "labeled"),
    ("neighbours", "neighbors"),
    ("neighbouring", "neighboring"),
    ("neighbour", "neighbor"),
    ("favourable", "favorable"),
    ("judgement", "judgment"),
)
"""International and American form, what is longer first."""

_US = dict(TRADE)

# A hyphen before a word makes it an option, a brace a place in a text, a point or a hash a name in
# a style sheet: all these stay as they are.
_INTERNATIONAL = re.compile(rf"(?<![-\w{{.#])(?:{'|'.join(_US)})(?!\w)", re.IGNORECASE)


@lru_cache(maxsize=4096)
def in_words(text: str, system: str) -> str:
    """Say a text in the words that go with a system of units.

    Parameters
    ----------
    text : str
        In the international form

    Examples
    --------
    >>> in_words("Slewed to 30° on tyres; give --slew.", "us")
    'Swung to 30° on tires; give --slew.'
    """
    return _INTERNATIONAL.sub(_american, text) if system == "us" else text


def _american(found: re.Match[str]) -> str:
    said = _US[found[0].lower()]
    return said[0].upper() + said[1:] if found[0][0].isupper() else said


_TAG = re.compile(r"<[^>]*>")
_SPOKEN = re.compile(r'((?:aria-label|alt|title)=")([^"]*)(")')


def markup_in_words(markup: str, system: str) -> str:
    """Say HTML or SVG in the words that go with a system of units; tags stay, but for their labels.

    Parameters
    ----------
    markup : str
        Without style sheets or scripts that have such words
    """
    if system != "us" or not _INTERNATIONAL.search(markup):
        return markup
    ends, told, at = _TAG.finditer(markup), [], 0
    for tag in ends:
        spoken = _SPOKEN.sub(lambda one: one[1] + in_words(one[2], system) + one[3], tag[0])
        told += [in_words(markup[at : tag.start()], system), spoken]
        at = tag.end()
    return "".join([*told, in_words(markup[at:], system)])


Told = TypeVar("Told")


def all_in_words(value: Told, system: str) -> Told:
    """Say every text in a dataclass, list, tuple or dictionary in the words of a system of units.

    Parameters
    ----------
    value : object
        Functions in it stay as they are, and so does a key of one word

    Returns
    -------
    object
        Of the same kind; the very same in metric units
    """
    if system != "us":
        return value
    told: Any = value
    if isinstance(value, str):
        told = markup_in_words(value, system)
    elif isinstance(value, dict):
        told = {in_words(k, system) if " " in str(k) else k: all_in_words(v, system)
                for k, v in value.items()}  # fmt: skip
    elif isinstance(value, tuple) and hasattr(value, "_fields"):
        told = type(value)(*(all_in_words(one, system) for one in value))
    elif isinstance(value, list | tuple):
        told = type(value)(all_in_words(one, system) for one in value)
    elif is_dataclass(value) and not isinstance(value, type):
        changed = {f.name: all_in_words(getattr(value, f.name), system) for f in fields(value)}
        told = replace(value, **changed)
    return cast(Told, told)


def is_named(name: str, given: str) -> bool:
    """Tell whether a name is meant, in either form.

    Parameters
    ----------
    name : str
        As it is kept, such as "tyres"
    given : str
        As it is typed, such as "tires"
    """
    return given in (name, in_words(name, "us"))
