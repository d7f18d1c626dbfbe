"""QTI content packages for learning platforms: a test, its items, its drawings.

A number is right inside a ``gte``/``lte`` band: players read tolerance modes differently, a band
they all read the same. Formulas are pictures with the formula in words as alternative text. A
platform marks each part by itself; errors are carried forward only by
:mod:`boomsim.papers.marking.mark_class`.
"""

import io
import zipfile
from collections.abc import Mapping
from functools import lru_cache
from xml.etree.ElementTree import Element

import typst

from boomsim.caution import CAUTION
from boomsim.papers.check_code import code_of
from boomsim.papers.language.formula_markup import PLAIN, TYPST
from boomsim.papers.language.formula_printing import in_letters, in_numbers, letter
from boomsim.papers.paper import Paper, Question
from boomsim.papers.qti.qti_versions import QTI_22, Version, written, written_manifest
from boomsim.papers.qti.qti_xml import (
    NEVER,
    Node,
    band_condition,
    choice_condition,
    declaration,
    identifier,
    item,
    manifest,
    node,
    parts_of_letter,
    say,
    table,
    test,
)  # fmt: skip
from boomsim.papers.render.paper_notes import platform_notes
from boomsim.version import __version__

DAWN = (1980, 1, 1, 0, 0, 0)


def qti_package(paper: Paper, *, version: Version = QTI_22) -> bytes:
    """Pack one paper.

    Parameters
    ----------
    version : Version
        Of the standard

    Returns
    -------
    bytes
        Zip archive; stored, not compressed, so that the bytes depend on no library
    """
    files: dict[str, str] = {}
    for question in paper.questions:
        files |= _files(question, paper, version)
    plan, code = paper.plan, code_of(paper)
    names = [f"items/{_name(question)}.xml" for question in paper.questions]
    intro = [*platform_notes(paper), CAUTION]
    title = f"{plan.title} ({paper.variant}, {code})"
    drawings = [name for name in files if name.endswith(".svg")]
    whole = test(title, names, minutes=plan.minutes, intro=intro, code=code, feedback=plan.feedback)
    listed = manifest(names, others=drawings, code=code, version=version)
    files["test.xml"] = written(whole, version)
    files["imsmanifest.xml"] = written_manifest(listed, version)
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


def _files(question: Question, paper: Paper, version: Version) -> dict[str, str]:
    """Write the item and its drawings."""
    name, problem = _name(question), question.problem
    drawings = {f"items/{name}-figure.svg": problem.picture} if problem.picture else {}
    solved = paper.plan.feedback != NEVER
    for place, step in enumerate(question.steps if solved else ()):
        source = in_letters(step.formula, problem.letters, TYPST)
        whole = f"{letter(step.name, TYPST)} = {source}"
        drawings[f"items/{name}-formula-{place + 1}.svg"] = formula_svg(whole)
    make = _choice_item if question.is_choice else _number_item
    made = make(question, code=code_of(paper), solved=solved)
    return drawings | {f"items/{name}.xml": written(made, version)}


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


def _number_item(question: Question, *, code: str, solved: bool) -> Element:
    """Every part a number with its own band."""
    problem = question.problem
    declared, conditions, lines = [], [], []
    for place, asked in enumerate(question.asked):
        name = f"RESPONSE_{place + 1}"
        amount = problem.results[asked.step.name]
        low, high = (end / float(amount.unit.factor) for end in question.ends(asked.step))
        declared.append(declaration(name, f"{amount.number:f}", kind="float"))
        conditions.append(band_condition(name, low, high, marks=asked.marks))
        part = f"({asked.part}) " if asked.part else ""
        field = node(
            "textEntryInteraction", responseIdentifier=name, expectedLength="10",
            placeholderText="number",
        )  # fmt: skip
        lines.append(
            node(
                "p", f"{part}{asked.words}: ", *parts_of_letter(asked.step.name), " = ", field,
                f" {amount.unit.shown} [{asked.marks}]",
            )
        )  # fmt: skip
    hint = node("p", "Write numbers with a decimal point, without commas and without the unit.")
    body = [*_asked(question), *lines, hint]
    return _item(question, declared, body, conditions, code=code, solved=solved)


def _choice_item(question: Question, *, code: str, solved: bool) -> Element:
    """One of several choices."""
    problem = question.problem
    choices = (
        node("simpleChoice", *say(one.text), identifier=one.letter) for one in problem.choices
    )
    asked = node(
        "choiceInteraction", *choices, responseIdentifier="RESPONSE", shuffle="false",
        maxChoices="1",
    )  # fmt: skip
    body = [*_asked(question), node("p", f"[{question.marks}]"), asked]
    declared = [declaration("RESPONSE", problem.right, kind="identifier")]
    conditions = [choice_condition(marks=question.marks)]
    return _item(question, declared, body, conditions, code=code, solved=solved)


def _item(
    question: Question, declared: list[Element], body: list[Element], conditions: list[Element],
    *, code: str, solved: bool,
) -> Element:  # fmt: skip
    """Put an item together."""
    return item(
        identifier(_name(question), code),
        title=question.problem.family.title,
        declared=declared,
        body=body,
        conditions=conditions,
        most=question.marks,
        solution=_solution(question) if solved else (),
        version=__version__,
    )


def _asked(question: Question) -> list[Element]:
    """Text, simplification, drawing and table."""
    problem, family = question.problem, question.problem.family
    assume = node("em", *say(problem.pieces(family.assume)))
    shown = [node("p", *say(problem.pieces(family.text)), " ", assume)]
    if problem.picture:
        shown.append(_image(f"{_name(question)}-figure.svg", family.seen))
    if problem.table:
        shown.append(table(problem.table.rows))
    return shown


def _image(name: str, seen: str) -> Element:
    """Show a drawing, with its words for those who do not see it."""
    return node("p", node("img", src=name, alt=seen))


def _solution(question: Question) -> list[Element]:
    """Write the worked solution, and what wrong choices give away."""
    problem = question.problem
    told = []
    if problem.right:
        told.append(node("p", f"Answer {problem.right}. ", *say(problem.pieces(problem.because))))
    for place, step in enumerate(question.steps):
        order = problem.letters
        words = f"{letter(step.name, PLAIN)} = {in_letters(step.formula, order, PLAIN)}"
        numbers = in_numbers(step.formula, order, PLAIN, shown=problem.shown)
        result: list[Node] = [f" = {numbers} = ", node("strong", problem.shown(step.name))]
        told += [
            node("p", step.does),
            _image(f"{_name(question)}-formula-{place + 1}.svg", words),
            node("p", *parts_of_letter(step.name), *result),
        ]
    wrong = {one.letter: one.slip for one in problem.choices if not one.right}
    slips = (wrong or question.slips()).items()
    return told + [node("p", f"{answer}: perhaps you {words}.") for answer, words in slips]
