"""What the QTI schemas do not catch: our own look at a package before anyone is examined by it."""

import io
import re
import xml.etree.ElementTree as ElementTree
import zipfile
from collections.abc import Iterator

from boomsim.papers.qti.qti_versions import plain

_FLOAT = re.compile(r"-?\d+(\.\d+)?([eE][+-]?\d+)?")


def package_complaints(package: bytes) -> list[str]:
    """Find what is wrong with a package.

    Parameters
    ----------
    package : bytes
        Zip archive

    Returns
    -------
    list of str
        Empty if nothing is
    """
    with zipfile.ZipFile(io.BytesIO(package)) as archive:
        files = {name: archive.read(name) for name in archive.namelist()}
    found = list(_listed(files))
    for name, text in files.items():
        if name.startswith("items/") and name.endswith(".xml"):
            root = plain(ElementTree.fromstring(text))
            found += [f"{name}: {words}" for words in item_complaints(root, files)]
    return found


def item_complaints(root: ElementTree.Element, files: dict[str, bytes]) -> Iterator[str]:
    """Find what is wrong with one item.

    Parameters
    ----------
    root : Element
        With the names of QTI 2.2, see :func:`boomsim.papers.qti.qti_versions.plain`
    files : dict of str to bytes
        All files of the package
    """
    yield from _responses(root)
    yield from _numbers(root)
    yield from _bands(root)
    for image in root.iter("img"):
        if not image.get("alt", "").strip():
            yield f"the image {image.get('src')} has no alternative text"
        if f"items/{image.get('src')}" not in files:
            yield f"the image {image.get('src')} is not in the package"


def _responses(root: ElementTree.Element) -> Iterator[str]:
    """Every interaction is declared, every declaration asked, the right choice offered."""
    declared = {one.get("identifier", ""): one for one in root.iter("responseDeclaration")}
    asked = {
        one.get("responseIdentifier", ""): one
        for one in root.iter()
        if one.get("responseIdentifier")
    }
    yield from (f"{name} is asked and not declared" for name in asked.keys() - declared.keys())
    yield from (f"{name} is declared and not asked" for name in declared.keys() - asked.keys())
    for used in root.iter("variable"):
        name = used.get("identifier", "")
        if name not in declared and name not in ("SCORE", "MAXSCORE", "FEEDBACK"):
            yield f"{name} is marked and not declared"
    for name, interaction in asked.items():
        offered = [one.get("identifier") for one in interaction.iter("simpleChoice")]
        right = _right(declared.get(name))
        if offered and right not in offered:
            yield f"the right choice {right} is not offered"
        if len(set(offered)) != len(offered):
            yield "two choices have one identifier"
        texts = ["".join(one.itertext()) for one in interaction.iter("simpleChoice")]
        if len(set(texts)) != len(texts):
            yield "two choices read the same"


def _right(declaration: ElementTree.Element | None) -> str:
    """Return the right answer of a declaration."""
    found = None if declaration is None else declaration.find("correctResponse/value")
    return "" if found is None else found.text or ""


def _numbers(root: ElementTree.Element) -> Iterator[str]:
    """Find decimal commas, which pass the schema and fail the candidate."""
    for one in root.iter("baseValue"):
        if one.get("baseType") == "float" and not _FLOAT.fullmatch(one.text or ""):
            yield f'"{one.text}" is not a number with a decimal point'
    for one in root.iter("responseDeclaration"):
        if one.get("baseType") == "float" and not _FLOAT.fullmatch(_right(one)):
            yield f'the answer "{_right(one)}" is not a number with a decimal point'


def _bands(root: ElementTree.Element) -> Iterator[str]:
    """Every number has a band, the right way round, with the answer in it."""
    ends: dict[tuple[str, str], float] = {}
    for kind in ("gte", "lte"):
        for test in root.iter(f"{kind}"):
            name, value = test[0].get("identifier", ""), test[1].text or "nan"
            ends[name, kind] = float(value) if _FLOAT.fullmatch(value) else float("nan")
    for one in root.iter("responseDeclaration"):
        name, right = one.get("identifier", ""), _right(one)
        if one.get("baseType") != "float" or not _FLOAT.fullmatch(right):
            continue
        low, high = ends.get((name, "gte")), ends.get((name, "lte"))
        if low is None or high is None:
            yield f"{name} has no band"
        elif not low <= float(right) <= high:
            yield f"{name}: the answer {right} is not between {low} and {high}"


def _listed(files: dict[str, bytes]) -> Iterator[str]:
    """See whether the manifest lists what is there, and only that."""
    if "imsmanifest.xml" not in files:
        yield "there is no imsmanifest.xml"
        return
    root = plain(ElementTree.fromstring(files["imsmanifest.xml"]))
    listed = {one.get("href", "") for one in root.iter("file")}
    there = files.keys() - {"imsmanifest.xml"}
    yield from (f"{name} is listed and not there" for name in sorted(listed - there))
    yield from (f"{name} is there and not listed" for name in sorted(there - listed))
    known = {one.get("identifier") for one in root.iter("resource")}
    for need in root.iter("dependency"):
        if need.get("identifierref") not in known:
            yield f"the resource {need.get('identifierref')} is needed and not there"
