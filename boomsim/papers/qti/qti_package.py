"""QTI 2.2 content packages for learning platforms: a test, its items, its drawings.

A number is right inside a ``gte``/``lte`` band: players read tolerance modes differently, a band
they all read the same. Formulas are pictures with the formula in words as alternative text. A
platform marks each part by itself; errors are carried forward only by
:mod:`boomsim.papers.marking.mark_class`.
"""

import io
import zipfile
from collections.abc import Mapping
from functools import lru_cache
from html import escape

import typst

from boomsim import __version__
from boomsim.caution import CAUTION
from boomsim.papers.check_code import code_of
from boomsim.papers.language.formula_markup import PLAIN, TYPST
from boomsim.papers.language.formula_printing import in_letters, in_numbers, letter
from boomsim.papers.paper import Paper, Question
from boomsim.papers.qti.qti_xml import (
    NEVER,
    band_condition,
    choice_condition,
    identifier,
    item,
    manifest,
    number_declaration,
    parts_of_letter,
    say,
    test,
)  # fmt: skip
from boomsim.papers.render.paper_notes import platform_notes

DAWN = (1980, 1, 1, 0, 0, 0)


def qti_package(paper: Paper) -> bytes:
    """Pack one paper.

    Parameters
    ----------
    paper : Paper

    Returns
    -------
    bytes
        Zip archive; stored, not compressed, so that the bytes depend on no library
    """
    files: dict[str, str] = {}
    for question in paper.questions:
        files |= _files(question, paper)
    plan, code = paper.plan, code_of(paper)
    names = [f"items/{_name(question)}.xml" for question in paper.questions]
    intro = [*platform_notes(paper), CAUTION]
    title = f"{plan.title} ({paper.variant}, {code})"
    drawings = [name for name in files if name.endswith(".svg")]
    files["test.xml"] = test(
        title, names, minutes=plan.minutes, intro=intro, code=code, feedback=plan.feedback
    )
    files["imsmanifest.xml"] = manifest(names, others=drawings, code=code)
    return _zipped(files)


def _zipped(files: Mapping[str, str]) -> bytes:
    """Archive without times, in the order of the names."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_STORED) as archive:
        for name in sorted(files):
            info = zipfile.ZipInfo(name, DAWN)
            info.external_attr = 0o644 << 16
            info.create_system = 3
            archive.writestr(info, files[name].encode("utf-8"))
    return buffer.getvalue()


def _name(question: Question) -> str:
    """Write identifier of an item."""
    return f"q{question.number:02d}"


def _files(question: Question, paper: Paper) -> dict[str, str]:
    """Write the item and its drawings."""
    name, problem = _name(question), question.problem
    drawings = {f"items/{name}-figure.svg": problem.picture} if problem.picture else {}
    solved = paper.plan.feedback != NEVER
    for place, step in enumerate(question.steps if solved else ()):
        source = in_letters(step.formula, problem.letters, TYPST)
        whole = f"{letter(step.name, TYPST)} = {source}"
        drawings[f"items/{name}-formula-{place + 1}.svg"] = formula_svg(whole)
    make = _choice_item if question.is_choice else _number_item
    text = make(question, code=code_of(paper), solved=solved)
    return drawings | {f"items/{name}.xml": text}


@lru_cache(maxsize=4096)
def formula_svg(source: str) -> str:
    """Draw a formula; its glyphs are outlines, so no font is needed to show it.

    Parameters
    ----------
    source : str
        Typst mathematics from our own dialect

    Returns
    -------
    str
        SVG
    """
    document = (
        "#set page(width: auto, height: auto, margin: 2pt, fill: none)\n"
        f'#set text(size: 12pt)\n#let source = "{source.replace(chr(34), chr(92) + chr(34))}"\n'
        '$ #eval(source, mode: "math", scope: (q: it => it)) $'
    )
    made = typst.compile(document.encode(), format="svg", ignore_system_fonts=True)
    return made.decode("utf-8")


def _number_item(question: Question, *, code: str, solved: bool) -> str:
    """Every part a number with its own band."""
    problem = question.problem
    declared, conditions, lines = [], [], []
    for place, asked in enumerate(question.asked):
        name = f"RESPONSE_{place + 1}"
        amount = problem.results[asked.step.name]
        low, high = (end / float(amount.unit.factor) for end in question.ends(asked.step))
        declared.append(number_declaration(name, f"{amount.number:f}"))
        conditions.append(band_condition(name, low, high, marks=asked.marks))
        part = f"({asked.part}) " if asked.part else ""
        lines.append(
            f"<p>{part}{escape(asked.words)}: {parts_of_letter(asked.step.name)} = "
            f'<textEntryInteraction responseIdentifier="{name}" expectedLength="10" '
            f'placeholderText="number"/> {escape(amount.unit.shown)} [{asked.marks}]</p>'
        )
    hint = "<p>Write numbers with a decimal point, without commas and without the unit.</p>"
    body = _asked(question) + "".join(lines) + hint
    return _item(question, declared, body, conditions, code=code, solved=solved)


def _choice_item(question: Question, *, code: str, solved: bool) -> str:
    """One of several choices."""
    problem = question.problem
    choices = "".join(
        f'<simpleChoice identifier="{one.letter}">{say(one.text)}</simpleChoice>'
        for one in problem.choices
    )
    body = (
        f"{_asked(question)}<p>[{question.marks}]</p>"
        '<choiceInteraction responseIdentifier="RESPONSE" shuffle="false" maxChoices="1">'
        f"{choices}</choiceInteraction>"
    )
    declared = (
        '<responseDeclaration identifier="RESPONSE" cardinality="single" baseType="identifier">'
        f"<correctResponse><value>{problem.right}</value></correctResponse></responseDeclaration>"
    )
    conditions = [choice_condition(marks=question.marks)]
    return _item(question, [declared], body, conditions, code=code, solved=solved)


def _item(
    question: Question, declared: list[str], body: str, conditions: list[str],
    *, code: str, solved: bool,
) -> str:  # fmt: skip
    """Put an item together."""
    return item(
        identifier(_name(question), code),
        title=question.problem.family.title,
        declared=declared,
        body=body,
        conditions=conditions,
        most=question.marks,
        solution=_solution(question) if solved else "",
        version=__version__,
    )


def _asked(question: Question) -> str:
    """Text, simplification, drawing and table."""
    problem, family = question.problem, question.problem.family
    text = (
        f"<p>{say(problem.pieces(family.text))} <em>{say(problem.pieces(family.assume))}</em></p>"
    )
    if problem.picture:
        seen = escape(family.seen, quote=True)
        text += f'<p><img src="{_name(question)}-figure.svg" alt="{seen}"/></p>'
    if problem.table:
        rows = (
            "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>"
            for row in problem.table.rows
        )
        text += f"<table><tbody>{''.join(rows)}</tbody></table>"
    return text


def _solution(question: Question) -> str:
    """Write the worked solution, and what wrong choices give away."""
    problem = question.problem
    text = f"<p>Answer {problem.right}. {say(problem.pieces(problem.because))}</p>" * bool(
        problem.right
    )
    for place, step in enumerate(question.steps):
        order = problem.letters
        words = f"{letter(step.name, PLAIN)} = {in_letters(step.formula, order, PLAIN)}"
        numbers = in_numbers(step.formula, order, PLAIN, shown=problem.shown)
        text += (
            f'<p>{escape(step.does)}</p><p><img src="{_name(question)}-formula-{place + 1}.svg" '
            f'alt="{escape(words, quote=True)}"/></p><p>{parts_of_letter(step.name)} = '
            f"{escape(numbers)} = <strong>{escape(problem.shown(step.name))}</strong></p>"
        )
    wrong = {one.letter: one.slip for one in problem.choices if not one.right}
    slips = (wrong or question.slips()).items()
    return text + "".join(f"<p>{escape(a)}: perhaps you {escape(w)}.</p>" for a, w in slips)
