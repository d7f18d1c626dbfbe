"""The Moodle XML format, as small functions: texts, files, answers, units, questions.

Written after the source of the platform's own importer, ``question/format/xml/format.php``.
"""

import base64
from collections.abc import Mapping, Sequence
from html import escape

HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
UNIT_OPTIONAL, UNIT_NONE = 0, 3
"""What the importer calls showunits: a unit may be typed behind the number, or there is none."""


def html_text(tag: str, html: str, *, files: Mapping[str, str] | None = None) -> str:
    """Write a text of HTML with the files that it shows.

    Parameters
    ----------
    tag : str
        "questiontext", "generalfeedback" or "feedback"
    files : mapping of str to str, optional
        Drawings by name
    """
    packed = "".join(_file(name, text) for name, text in (files or {}).items())
    return f'<{tag} format="html"><text>{escape(html, quote=False)}</text>{packed}</{tag}>'


def _file(name: str, text: str) -> str:
    """Pack a drawing into the question."""
    data = base64.b64encode(text.encode()).decode()
    return f'<file name="{escape(name)}" path="/" encoding="base64">{data}</file>'


def answer(text: str, *, fraction: int, tolerance: str = "", feedback: str = "") -> str:
    """Write a right or wrong answer.

    Parameters
    ----------
    text : str
        A number, or the HTML of a choice
    fraction : int
        100 or 0: per cent of the marks [1]
    tolerance : str
        Of a number, in its unit; "" for a choice
    feedback : str
        HTML; "" for none
    """
    kind = "moodle_auto_format" if tolerance else "html"
    near = f"<tolerance>{tolerance}</tolerance>" if tolerance else ""
    return (
        f'<answer fraction="{fraction}" format="{kind}"><text>{escape(text, quote=False)}</text>'
        f"{near}{html_text('feedback', feedback)}</answer>"
    )


def units(known: Sequence[tuple[str, float]]) -> str:
    """Write the units in which a number may be given.

    Parameters
    ----------
    known : sequence of (str, float)
        Spelling, and how many of it are one of the first
    """
    shown = UNIT_OPTIONAL if known else UNIT_NONE
    rows = "".join(
        f"<unit><multiplier>{times:.12g}</multiplier><unit_name>{escape(name)}</unit_name></unit>"
        for name, times in known
    )
    listed = f"<units>{rows}</units>" if rows else ""
    return (
        "<unitgradingtype>0</unitgradingtype><unitpenalty>0</unitpenalty>"
        f"<showunits>{shown}</showunits><unitsleft>0</unitsleft>{listed}"
    )


def question(
    kind: str, name: str, *, number: str, text: str, body: str, marks: int, feedback: str = "",
    tags: Sequence[str] = (),
) -> str:  # fmt: skip
    """Write one question.

    Parameters
    ----------
    kind : str
        "numerical", "multichoice" or "description"
    number : str
        Its idnumber, which no other question of a course may have
    text : str
        A questiontext element
    body : str
        Answers and what else the kind needs
    marks : int
        [1]
    feedback : str
        HTML shown after the attempt; "" for none
    """
    tagged = "".join(f"<tag><text>{escape(one)}</text></tag>" for one in tags)
    return (
        f'<question type="{kind}"><name><text>{escape(name)}</text></name>{text}'
        f"{html_text('generalfeedback', feedback)}<defaultgrade>{marks}</defaultgrade>"
        f"<penalty>0</penalty><hidden>0</hidden><idnumber>{escape(number)}</idnumber>{body}"
        f"<tags>{tagged}</tags></question>\n"
    )


def category(name: str, *, info: str) -> str:
    """Write the category into which the questions below it go."""
    plain = name.replace("/", "//")  # a slash alone begins another category
    return (
        f'<question type="category"><category><text>$course$/top/{escape(plain)}</text></category>'
        f'<info format="html"><text>{escape(escape(info), quote=False)}</text></info></question>\n'
    )
