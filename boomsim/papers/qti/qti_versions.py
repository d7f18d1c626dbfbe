"""QTI 2.2 and QTI 3: one tree, two ways to write it down.

Items and tests are built once, with the names of QTI 2.2. In QTI 3 the same names begin with
``qti-`` and have hyphens for capitals, and texts of feedback and notes lie in a body of their own;
the meaning is the same.
"""

import re
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass
from xml.etree.ElementTree import Element

XSI = "http://www.w3.org/2001/XMLSchema-instance"
_HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
_HTML = frozenset(
    ["br", "div", "em", "img", "p", "strong", "sub", "table", "tbody", "td", "th", "thead", "tr"]
)
"""Elements of HTML that we use: they have one name in both versions."""
_WITH_BODY = frozenset(["modalFeedback", "rubricBlock"])
"""Elements whose content has a body of its own in QTI 3."""
BODY = "contentBody"


@dataclass(frozen=True, slots=True, kw_only=True)
class Version:
    """One version of the standard.

    Attributes
    ----------
    namespace, location : str
        Of items and tests, and of their schema
    packing, packing_location : str
        Of the manifest, and of its schema
    schema, schema_version : str
        What the manifest says of the package
    suffix : str
        Of the types of resources
    hyphens : bool
        Whether names are written with hyphens and ``qti-``
    """

    name: str
    namespace: str
    location: str
    packing: str
    packing_location: str
    schema: str
    schema_version: str
    suffix: str
    hyphens: bool


QTI_22 = Version(
    name="2.2",
    namespace="http://www.imsglobal.org/xsd/imsqti_v2p2",
    location="http://www.imsglobal.org/xsd/qti/qtiv2p2/imsqti_v2p2p4.xsd",
    packing="http://www.imsglobal.org/xsd/imscp_v1p1",
    packing_location="",
    schema="QTIv2.2 Package",
    schema_version="1.0.0",
    suffix="xmlv2p2",
    hyphens=False,
)
QTI_3 = Version(
    name="3.0",
    namespace="http://www.imsglobal.org/xsd/imsqtiasi_v3p0",
    location="https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd",
    packing="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1",
    packing_location="https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/"
    "imsqtiv3p0_imscpv1p2_v1p0.xsd",
    schema="QTI Package",
    schema_version="3.0.0",
    suffix="xmlv3p0",
    hyphens=True,
)


def written(root: Element, version: Version) -> str:
    """Write an item or a test.

    Parameters
    ----------
    root : Element
        With the names of QTI 2.2 and without namespaces; it is left as it is

    Returns
    -------
    str
        XML
    """
    made = _hyphened(root) if version.hyphens else _copied(root)
    return _document(made, namespace=version.namespace, location=version.location)


def written_manifest(root: Element, version: Version) -> str:
    """Write a manifest, whose names are the same in both versions.

    Returns
    -------
    str
        XML
    """
    made = _copied(root)
    return _document(made, namespace=version.packing, location=version.packing_location)


def _document(root: Element, *, namespace: str, location: str) -> str:
    """Write a tree with its namespace in front."""
    told = {"xmlns": namespace}
    if location:
        told |= {"xmlns:xsi": XSI, "xsi:schemaLocation": f"{namespace} {location}"}
    root.attrib = told | root.attrib
    return f"{_HEAD}{ElementTree.tostring(root, encoding='unicode')}\n"


def _copied(root: Element) -> Element:
    """Copy the root, and leave what is in it."""
    made = Element(root.tag, dict(root.attrib))
    made.text = root.text
    made.extend(root)
    return made


def _hyphened(one: Element) -> Element:
    """Copy a tree with the names of QTI 3."""
    if one.tag in _HTML:
        made = Element(one.tag, dict(one.attrib))
    else:
        made = Element(
            f"qti-{_with_hyphens(one.tag)}", {_with_hyphens(n): v for n, v in one.attrib.items()}
        )
    inner = made
    if one.tag in _WITH_BODY:
        inner = ElementTree.SubElement(made, f"qti-{_with_hyphens(BODY)}")
    inner.text, made.tail = one.text, one.tail
    inner.extend(_hyphened(child) for child in one)
    return made


def plain(root: Element) -> Element:
    """Read a tree of either version back to the names of QTI 2.2, without namespaces."""
    name = root.tag.rpartition("}")[2]
    if name.startswith("qti-"):
        made = Element(
            _with_capitals(name.removeprefix("qti-")),
            {n if n.startswith("{") else _with_capitals(n): v for n, v in root.attrib.items()},
        )
    else:
        made = Element(name, dict(root.attrib))
    made.text, made.tail = root.text, root.tail
    for child in map(plain, root):
        if child.tag == BODY:
            made.text = child.text
            made.extend(child)
        else:
            made.append(child)
    return made


def _with_hyphens(name: str) -> str:
    """Write baseType as base-type."""
    return re.sub("[A-Z]", lambda found: f"-{found[0].lower()}", name)


def _with_capitals(name: str) -> str:
    """Write base-type as baseType."""
    return re.sub("-([a-z])", lambda found: found[1].upper(), name)
