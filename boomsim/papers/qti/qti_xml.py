"""The XML of QTI 2.2, as small functions: declarations, conditions, item, test, manifest."""

from collections.abc import Sequence
from html import escape

from boomsim.papers.language.formula_markup import GREEK
from boomsim.papers.language.question_words import Piece

QTI = "http://www.imsglobal.org/xsd/imsqti_v2p2"
CP = "http://www.imsglobal.org/xsd/imscp_v1p1"
_HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
_WHERE = (
    f'xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="{QTI} '
    'http://www.imsglobal.org/xsd/qti/qtiv2p2/imsqti_v2p2p4.xsd"'
)


NEVER, AT_THE_END = "never", "at the end"
"""When a platform shows the worked solution, as blueprints say it."""


def identifier(name: str, code: str) -> str:
    """Name an item, a test or a resource so that no other paper has the same name.

    Parameters
    ----------
    name : str
        "q01"
    code : str
        Check code of the paper

    Returns
    -------
    str
    """
    return f"{code}-{name}"


def say(pieces: Sequence[Piece]) -> str:
    """Write text and letters.

    Parameters
    ----------
    pieces : sequence of Piece

    Returns
    -------
    str
    """
    return "".join(
        parts_of_letter(one.letter) if one.letter else escape(one.text) for one in pieces
    )


def parts_of_letter(name: str) -> str:
    """Write a letter in italics, with its index.

    Parameters
    ----------
    name : str

    Returns
    -------
    str
    """
    base, _, below = name.partition("_")
    return f"<em>{GREEK.get(base, base)}</em>" + (f"<sub>{below}</sub>" if below else "")


def number_declaration(name: str, right: str) -> str:
    """Declare a number that is asked for.

    Parameters
    ----------
    name, right : str

    Returns
    -------
    str
    """
    return (
        f'<responseDeclaration identifier="{name}" cardinality="single" baseType="float">'
        f"<correctResponse><value>{right}</value></correctResponse></responseDeclaration>"
    )


def band_condition(name: str, low: float, high: float, *, marks: int) -> str:
    """Give marks inside a band.

    Parameters
    ----------
    name : str
    low, high : float
        In the unit that is asked for
    marks : int
        [1]

    Returns
    -------
    str
    """
    value = f'<variable identifier="{name}"/>'
    ends = "".join(
        f'<{test}>{value}<baseValue baseType="float">{end:.6g}</baseValue></{test}>'
        for test, end in (("gte", low), ("lte", high))
    )
    given = f"<not><isNull>{value}</isNull></not>"
    return _if(f"<and>{given}{ends}</and>", _more(marks))


def choice_condition(*, marks: int) -> str:
    """Give marks for the right choice.

    Parameters
    ----------
    marks : int
        [1]

    Returns
    -------
    str
    """
    same = '<match><variable identifier="RESPONSE"/><correct identifier="RESPONSE"/></match>'
    return _if(same, _more(marks))


def item(
    name: str,
    *,
    title: str,
    declared: Sequence[str],
    body: str,
    conditions: Sequence[str],
    most: int,
    solution: str,
    version: str,
) -> str:
    """Write an item.

    Parameters
    ----------
    name, title : str
    declared : sequence of str
        Response declarations
    body : str
    conditions : sequence of str
        Response conditions
    most : int
        Marks [1]
    solution : str
        Shown when the feedback policy lets it be; "" to leave it out
    version : str
        Of the program

    Returns
    -------
    str
        XML
    """
    declared_too, set_too, shown = _feedback(solution)
    return (
        f'{_HEAD}<assessmentItem xmlns="{QTI}" {_WHERE} identifier="{name}" '
        f'title="{escape(title)}" adaptive="false" timeDependent="false" xml:lang="en" '
        f'toolName="boomsim" toolVersion="{version}">\n{"".join(declared)}'
        f'<outcomeDeclaration identifier="SCORE" cardinality="single" baseType="float" '
        f'normalMaximum="{most}"><defaultValue><value>0</value></defaultValue></outcomeDeclaration>'
        '<outcomeDeclaration identifier="MAXSCORE" cardinality="single" baseType="float">'
        f"<defaultValue><value>{most}</value></defaultValue></outcomeDeclaration>{declared_too}\n"
        f"<itemBody>{body}</itemBody>\n"
        f"<responseProcessing>{''.join(conditions)}{set_too}</responseProcessing>\n"
        f"{shown}</assessmentItem>\n"
    )


def _feedback(solution: str) -> tuple[str, str, str]:
    """Declaration, rule and text of a solution; nothing of it where there is none."""
    if not solution:
        return "", "", ""
    return (
        '<outcomeDeclaration identifier="FEEDBACK" cardinality="single" baseType="identifier"/>',
        '<setOutcomeValue identifier="FEEDBACK"><baseValue baseType="identifier">solution'
        "</baseValue></setOutcomeValue>",
        '<modalFeedback outcomeIdentifier="FEEDBACK" identifier="solution" showHide="show">'
        f"<div>{solution}</div></modalFeedback>\n",
    )


def test(
    title: str,
    items: Sequence[str],
    *,
    minutes: int,
    intro: Sequence[str],
    code: str,
    feedback: str,
) -> str:
    """Write the test that holds the items.

    Parameters
    ----------
    title : str
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

    Returns
    -------
    str
        XML
    """
    notes = "".join(f"<p>{escape(note)}</p>" for note in intro)
    refs = "".join(
        f'<assessmentItemRef identifier="{_id(one, code)}" href="{one}" fixed="true"/>'
        for one in items
    )
    # Handed in together, solutions come when the test is over.
    submission = "simultaneous" if feedback == AT_THE_END else "individual"
    shown = "false" if feedback == NEVER else "true"
    total = (
        '<outcomeProcessing><setOutcomeValue identifier="SCORE"><sum>'
        '<testVariables variableIdentifier="SCORE"/></sum></setOutcomeValue></outcomeProcessing>'
    )
    return (
        f'{_HEAD}<assessmentTest xmlns="{QTI}" {_WHERE} identifier="{identifier("test", code)}" '
        f'title="{escape(title)}" toolName="boomsim">\n'
        '<outcomeDeclaration identifier="SCORE" cardinality="single" baseType="float">'
        "<defaultValue><value>0</value></defaultValue></outcomeDeclaration>"
        f'<timeLimits maxTime="{60 * minutes}"/>\n'
        f'<testPart identifier="part" navigationMode="nonlinear" submissionMode="{submission}">'
        f'<itemSessionControl maxAttempts="1" showFeedback="{shown}" showSolution="false"/>'
        f'<assessmentSection identifier="section" title="{escape(title)}" visible="true">'
        f'<rubricBlock view="candidate">{notes}</rubricBlock>{refs}'
        "</assessmentSection></testPart>\n"
        f"{total}</assessmentTest>\n"
    )


def manifest(items: Sequence[str], *, others: Sequence[str], code: str) -> str:
    """Write the package's list of contents.

    Parameters
    ----------
    items, others : sequence of str
        Files of the items, and of the drawings
    code : str
        Check code of the paper

    Returns
    -------
    str
        XML
    """
    resources = "".join(_item_resource(one, others, code) for one in items)
    needs = "".join(f'<dependency identifierref="res-{_id(one, code)}"/>' for one in items)
    return (
        f'{_HEAD}<manifest xmlns="{CP}" identifier="boomsim-{code}">'
        "<metadata><schema>QTIv2.2 Package</schema><schemaversion>1.0.0</schemaversion></metadata>"
        f'<organizations/><resources><resource identifier="res-{identifier("test", code)}" '
        f'type="imsqti_test_xmlv2p2" href="test.xml"><file href="test.xml"/>{needs}</resource>'
        f"{resources}</resources></manifest>\n"
    )


def _item_resource(name: str, others: Sequence[str], code: str) -> str:
    """Write an item with its drawings."""
    stem = name.removesuffix(".xml")
    files = [name, *(one for one in others if one.startswith(f"{stem}-"))]
    listed = "".join(f'<file href="{one}"/>' for one in files)
    return (
        f'<resource identifier="res-{_id(name, code)}" type="imsqti_item_xmlv2p2" href="{name}">'
        f"{listed}</resource>"
    )


def _id(name: str, code: str) -> str:
    """Write identifier of an item from its file."""
    return identifier(name.rpartition("/")[2].removesuffix(".xml"), code)


def _if(condition: str, then: str) -> str:
    """One response condition."""
    return f"<responseCondition><responseIf>{condition}{then}</responseIf></responseCondition>"


def _more(marks: int) -> str:
    """Add marks to the score."""
    return (
        '<setOutcomeValue identifier="SCORE"><sum><variable identifier="SCORE"/>'
        f'<baseValue baseType="float">{marks}</baseValue></sum></setOutcomeValue>'
    )
