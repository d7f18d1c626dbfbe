"""What the platform's importer would take wrongly without a word: our own look at a file."""

import re
import xml.etree.ElementTree as ElementTree
from collections import Counter
from collections.abc import Iterator

_NUMBER = re.compile(r"-?\d+(\.\d+)?([eE][+-]?\d+)?")
KINDS = ("category", "description", "numerical", "multichoice")


def quiz_complaints(text: bytes) -> list[str]:
    """Find what is wrong with a file of questions.

    Parameters
    ----------
    text : bytes
        XML

    Returns
    -------
    list of str
        Empty if nothing is
    """
    root = ElementTree.fromstring(text)
    found = [] if root.tag == "quiz" else [f"the root is {root.tag}, and the importer reads quiz"]
    numbers = Counter(one.findtext("idnumber") for one in root if one.get("type") != "category")
    found += [f"the idnumber {name} comes {n} times" for name, n in numbers.items() if n > 1]
    for one in root:
        name = one.findtext("name/text") or "a category"
        found += [f"{name}: {words}" for words in _question(one)]
    return found


def _question(one: ElementTree.Element) -> Iterator[str]:
    """Look at one question."""
    kind = one.get("type", "")
    if kind not in KINDS:
        yield f'the type "{kind}" is not one that we write'
    if kind == "category":
        return
    yield from _pictures(one)
    if kind in ("numerical", "multichoice"):
        fractions = [answer.get("fraction") for answer in one.findall("answer")]
        if fractions.count("100") != 1 or not set(fractions) <= {"0", "100"}:
            yield f"not exactly one answer earns all: {fractions}"
        if not int(one.findtext("defaultgrade") or 0) > 0:
            yield "it has no marks"
    if kind == "numerical":
        yield from _numbers(one)


def _numbers(one: ElementTree.Element) -> Iterator[str]:
    """Numbers with a decimal point, tolerances above nothing, units with the first as base."""
    for answer in one.findall("answer"):
        told = {what: answer.findtext(what) or "" for what in ("text", "tolerance")}
        wrong = [what for what, text in told.items() if not _NUMBER.fullmatch(text)]
        for what in wrong:
            yield f'the {what} "{told[what]}" is not a number with a decimal point'
        if not wrong and not float(told["tolerance"]) > 0:
            yield "an answer has no tolerance"
    units = one.findall("units/unit")
    names = [unit.findtext("unit_name") for unit in units]
    if len(set(names)) < len(names):
        yield "a unit comes twice"
    if units and float(units[0].findtext("multiplier") or 0) != 1:
        yield "the first unit is not the one in which the answer is written"
    if (one.findtext("showunits") == "0") != bool(units):
        yield "units are shown and not listed, or listed and not shown"


def _pictures(one: ElementTree.Element) -> Iterator[str]:
    """Every picture is packed, every packed file shown."""
    html = one.findtext("questiontext/text") or ""
    shown = set(re.findall(r'src="@@PLUGINFILE@@/([^"]+)"', html))
    packed = {file.get("name") for file in one.findall("questiontext/file")}
    if shown != packed:
        yield f"pictures {sorted(shown)} are shown and files {sorted(map(str, packed))} packed"
    if html.count("<img") != len(re.findall(r'alt="[^"]+"', html)):
        yield "a picture has no alternative text"
