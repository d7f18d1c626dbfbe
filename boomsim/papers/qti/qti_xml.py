"""The XML of QTI, as small functions: declarations, conditions, item, test, manifest.

Trees have the names of QTI 2.2; :mod:`boomsim.papers.qti.qti_versions` writes them in either
version.
"""

import xml.etree.ElementTree as ElementTree
from collections.abc import Iterable, Sequence
from html import escape
from xml.etree.ElementTree import Element

from boomsim.papers.language.formula_markup import GREEK
from boomsim.papers.language.question_words import Piece
from boomsim.papers.qti.qti_versions import Version

Node = Element | str
"""An element, or text between elements."""

NEVER, AT_THE_END = "never", "at the end"
"""When a platform shows the worked solution, as blueprints say it."""


def node(tag: str, *inside: Node, **attributes: str) -> Element:
    """Build an element.

    Parameters
    ----------
    *inside : Element or str
        In order; a text belongs behind the element before it
    **attributes : str
    """
    made = Element(tag, attributes)
    for one in inside:
        if isinstance(one, Element):
            made.append(one)
        elif len(made):
            made[-1].tail = (made[-1].tail or "") + one
        else:
            made.text = (made.text or "") + one
    return made


def html(*inside: Node) -> str:
    """Write texts and elements one behind the other.

    Returns
    -------
    str
        HTML, escaped
    """
    return "".join(
        escape(one, quote=False)
        if isinstance(one, str)
        else ElementTree.tostring(one, encoding="unicode")
        for one in inside
    )


def identifier(name: str, code: str) -> str:
    """Name an item, a test or a resource so that no other paper has the same name.

    Parameters
    ----------
    name : str
        "q01"
    code : str
        Check code of the paper
    """
    return f"{code}-{name}"


def say(pieces: Sequence[Piece]) -> list[Node]:
    """Write text and letters."""
    said: list[Node] = []
    for one in pieces:
        said += parts_of_letter(one.letter) if one.letter else [one.text]
    return said


def parts_of_letter(name: str) -> list[Node]:
    """Write a letter in italics, with its index."""
    base, _, below = name.partition("_")
    letter: list[Node] = [node("em", GREEK.get(base, base))]
    return [*letter, node("sub", below)] if below else letter


def table(rows: Sequence[Sequence[str]]) -> Element:
    """Write a table whose first row is its head."""
    head, *others = rows
    return node(
        "table",
        node("thead", node("tr", *(node("th", cell) for cell in head))),
        node("tbody", *(node("tr", *(node("td", cell) for cell in row)) for row in others)),
    )


def declaration(name: str, right: str, *, kind: str) -> Element:
    """Declare what is asked for.

    Parameters
    ----------
    kind : str
        "float" or "identifier"
    """
    return node(
        "responseDeclaration", node("correctResponse", node("value", right)),
        identifier=name, cardinality="single", baseType=kind,
    )  # fmt: skip


def band_condition(name: str, low: float, high: float, *, marks: int) -> Element:
    """Give marks inside a band.

    Parameters
    ----------
    low, high : float
        In the unit that is asked for
    marks : int
        [1]
    """
    ends = (
        node(test, _variable(name), _value("float", f"{end:.6g}"))
        for test, end in (("gte", low), ("lte", high))
    )
    given = node("not", node("isNull", _variable(name)))
    return _if(node("and", given, *ends), _more(marks))


def choice_condition(*, marks: int) -> Element:
    """Give marks for the right choice.

    Parameters
    ----------
    marks : int
        [1]
    """
    same = node("match", _variable("RESPONSE"), node("correct", identifier="RESPONSE"))
    return _if(same, _more(marks))


def item(
    name: str,
    *,
    title: str,
    declared: Iterable[Element],
    body: Iterable[Element],
    conditions: Iterable[Element],
    most: int,
    solution: Sequence[Element],
    version: str,
) -> Element:
    """Build an item.

    Parameters
    ----------
    declared : iterable of Element
        Response declarations
    conditions : iterable of Element
        Response conditions
    most : int
        Marks [1]
    solution : sequence of Element
        Shown when the feedback policy lets it be; none to leave it out
    version : str
        Of the program
    """
    score = _outcome("SCORE", "float", start="0", normalMaximum=str(most))
    outcomes = [score, _outcome("MAXSCORE", "float", start=str(most))]
    processing, shown = list(conditions), []
    if solution:
        outcomes.append(_outcome("FEEDBACK", "identifier"))
        processing.append(_set("FEEDBACK", _value("identifier", "solution")))
        shown.append(
            node(
                "modalFeedback", node("div", *solution),
                outcomeIdentifier="FEEDBACK", identifier="solution", showHide="show",
            )
        )  # fmt: skip
    return node(
        "assessmentItem", *declared, *outcomes, node("itemBody", *body),
        node("responseProcessing", *processing), *shown,
        **{
            "identifier": name, "title": title, "adaptive": "false", "timeDependent": "false",
            "xml:lang": "en", "toolName": "boomsim", "toolVersion": version,
        },
    )  # fmt: skip


def test(
    title: str,
    items: Sequence[str],
    *,
    minutes: int,
    intro: Sequence[str],
    code: str,
    feedback: str,
) -> Element:
    """Build the test that holds the items.

    Parameters
    ----------
    items : sequence of str
        Their files
    minutes : int
        Time allowed [min]
    intro : sequence of str
        Notes before the first question
    code : str
        Check code of the paper
    feedback : str
        "never", "at the end" or "at once"
    """
    refs = (
        node("assessmentItemRef", identifier=_id(one, code), href=one, fixed="true")
        for one in items
    )
    notes = node(
        "rubricBlock", *(node("p", note) for note in intro), view="candidate", use="instructions"
    )
    section = node(
        "assessmentSection", notes, *refs, identifier="section", title=title, visible="true"
    )
    control = node(
        "itemSessionControl", maxAttempts="1",
        showFeedback="false" if feedback == NEVER else "true", showSolution="false",
    )  # fmt: skip
    part = node(
        "testPart", control, section, identifier="part", navigationMode="nonlinear",
        # Handed in together, solutions come when the test is over.
        submissionMode="simultaneous" if feedback == AT_THE_END else "individual",
    )  # fmt: skip
    total = _set("SCORE", node("sum", node("testVariables", variableIdentifier="SCORE")))
    return node(
        "assessmentTest", _outcome("SCORE", "float", start="0"),
        node("timeLimits", maxTime=str(60 * minutes)), part, node("outcomeProcessing", total),
        identifier=identifier("test", code), title=title, toolName="boomsim",
    )  # fmt: skip


def manifest(
    items: Sequence[str], *, others: Sequence[str], code: str, version: Version
) -> Element:
    """Build the package's list of contents.

    Parameters
    ----------
    items, others : sequence of str
        Files of the items, and of the drawings
    code : str
        Check code of the paper
    """
    about = node(
        "metadata", node("schema", version.schema), node("schemaversion", version.schema_version)
    )
    needs = (node("dependency", identifierref=f"res-{_id(one, code)}") for one in items)
    whole = node(
        "resource", node("file", href="test.xml"), *needs,
        identifier=f"res-{identifier('test', code)}", type=f"imsqti_test_{version.suffix}",
        href="test.xml",
    )  # fmt: skip
    resources = (_item_resource(one, others, code, version) for one in items)
    return node(
        "manifest", about, node("organizations"), node("resources", whole, *resources),
        identifier=f"boomsim-{code}",
    )  # fmt: skip


def _item_resource(name: str, others: Sequence[str], code: str, version: Version) -> Element:
    """Build an item with its drawings."""
    stem = name.removesuffix(".xml")
    files = [name, *(one for one in others if one.startswith(f"{stem}-"))]
    return node(
        "resource", *(node("file", href=one) for one in files),
        identifier=f"res-{_id(name, code)}", type=f"imsqti_item_{version.suffix}", href=name,
    )  # fmt: skip


def _id(name: str, code: str) -> str:
    """Write identifier of an item from its file."""
    return identifier(name.rpartition("/")[2].removesuffix(".xml"), code)


def _outcome(name: str, kind: str, *, start: str = "", **more: str) -> Element:
    """Declare an outcome, with its value at the start if it has one."""
    value = [node("defaultValue", node("value", start))] if start else []
    return node(
        "outcomeDeclaration", *value, identifier=name, cardinality="single", baseType=kind, **more
    )


def _if(condition: Element, then: Element) -> Element:
    """One response condition."""
    return node("responseCondition", node("responseIf", condition, then))


def _more(marks: int) -> Element:
    """Add marks to the score."""
    return _set("SCORE", node("sum", _variable("SCORE"), _value("float", str(marks))))


def _set(name: str, value: Element) -> Element:
    """Set an outcome."""
    return node("setOutcomeValue", value, identifier=name)


def _variable(name: str) -> Element:
    """What was answered or earned so far."""
    return node("variable", identifier=name)


def _value(kind: str, text: str) -> Element:
    """A constant."""
    return node("baseValue", text, baseType=kind)
