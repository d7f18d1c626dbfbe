"""Self-contained HTML: formulas as MathML, drawings inline, everything escaped, no script."""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from html import escape
from pathlib import Path

from boomsim.caution import CAUTION
from boomsim.papers.check_code import code_of
from boomsim.papers.language.formula_markup import MATHML
from boomsim.papers.language.formula_printing import in_letters, in_numbers, letter
from boomsim.papers.language.question_words import Piece
from boomsim.papers.paper import Paper, Question
from boomsim.papers.render.paper_notes import NAMES, notes

SHORT = 26
"""Choices of at most so many letters stand in one row [1]."""


def render_html(paper: Paper, *, kind: str) -> str:
    """Write one paper as a page that needs nothing else.

    Parameters
    ----------
    kind : str
        "paper", "solutions" or "marking"

    Returns
    -------
    str
        HTML
    """
    body = "\n".join(
        [_head(paper, kind), *(_question(question, kind) for question in paper.questions), _foot()]
    )
    return page(f"{paper.plan.title} – {NAMES[kind]} {paper.variant}", body)


def page(title: str, body: str, *, style: str = "") -> str:
    """Wrap a body into a page.

    Parameters
    ----------
    title : str
        Plain text
    body : str
        HTML
    style : str
        More CSS
    """
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(title)}</title><style>{stylesheet()}{style}</style></head>\n"
        f"<body>\n{body}\n</body></html>\n"
    )


@lru_cache(maxsize=1)
def stylesheet() -> str:
    """Write the style of all our pages."""
    return (Path(__file__).parent / "templates" / "paper.css").read_text(encoding="utf-8")


def math(inside: str) -> str:
    """Wrap MathML."""
    return f"<math>{inside}</math>"


def say(pieces: Sequence[Piece]) -> str:
    """Write text and letters."""
    return "".join(
        math(letter(one.letter, MATHML)) if one.letter else escape(one.text) for one in pieces
    )


def asked_html(question: Question) -> str:
    """Write one question without answer lines, for a notebook.

    Returns
    -------
    str
        HTML
    """
    problem, family = question.problem, question.problem.family
    text = say(problem.pieces(family.text))
    assume = f"<em>{say(problem.pieces(family.assume))}</em>"
    return f"<p>{text} {assume}</p>{_figure(question)}{_table(question)}{_choices(question)}"


def _head(paper: Paper, kind: str) -> str:
    """Title, variant, name field, notes."""
    plan = paper.plan
    subtitle = f'<p class="subtitle">{escape(plan.subtitle)}</p>' if plan.subtitle else ""
    fields = (
        f'<div class="fields"><span>Name</span><span>Date</span><b>_____ / {paper.marks}</b></div>'
    )
    said = " ".join(escape(note) for note in notes(paper, kind=kind))
    return (
        f'<header><div><p class="kind">{NAMES[kind]}</p><h1>{escape(plan.title)}</h1>{subtitle}'
        f'</div><div class="variant"><small>VARIANT</small>{paper.variant}'
        f"<small>{code_of(paper)}</small></div></header>"
        f"{fields if kind == 'paper' else ''}"
        f'<p class="notes"><strong>{plan.minutes} minutes · {paper.marks} marks</strong> {said}</p>'
    )


def _foot() -> str:
    """Write the caution."""
    return f"<footer>{escape(CAUTION)}</footer>"


def _question(question: Question, kind: str) -> str:
    """One question with what the reader of this kind needs."""
    heading = f"<h2>{escape(question.heading)}</h2>" if question.heading else ""
    inner = {"paper": _posed, "solutions": _solved, "marking": _keyed}[kind](question)
    return (
        f'{heading}<section class="question" aria-label="Question {question.number}">'
        f'<span class="number">{question.number}</span>{inner}</section>'
    )


def _posed(question: Question) -> str:
    """Write the question with its answer lines."""
    return _asked(question) + _parts(question)


def _asked(question: Question) -> str:
    """Write the question itself."""
    problem, family = question.problem, question.problem.family
    marks = f'<span class="marks">[{question.marks}]</span>' if question.is_choice else ""
    text = say(problem.pieces(family.text))
    assume = f'<span class="assume">{say(problem.pieces(family.assume))}</span>'
    return f"{marks}<p>{text} {assume}</p>{_figure(question)}{_table(question)}{_choices(question)}"


def _figure(question: Question) -> str:
    """Write the drawing, with its words for those who do not see it."""
    svg = question.problem.picture
    words = escape(question.problem.family.seen, quote=True)
    shown = svg.replace("<svg ", f'<svg role="img" aria-label="{words}" ', 1)
    return f"<figure>{shown}</figure>" if svg else ""


def _table(question: Question) -> str:
    """Write the table, if the question has one."""
    table = question.problem.table
    if table is None:
        return ""
    head = _row(table.rows[0], "th")
    body = "".join(_row(row, "td") for row in table.rows[1:])
    caption = f"<caption>{escape(table.caption)}</caption>" if table.caption else ""
    return f"<table>{caption}<thead>{head}</thead><tbody>{body}</tbody></table>"


def _row(cells: Iterable[str], tag: str) -> str:
    """One row of texts."""
    return "<tr>" + "".join(f"<{tag}>{escape(cell)}</{tag}>" for cell in cells) + "</tr>"


def _choices(question: Question) -> str:
    """Write the choices, in one row if they are short."""
    choices = question.problem.choices
    short = all(len("".join(p.text for p in one.text)) < SHORT for one in choices)
    items = "".join(
        f'<li><span class="letter">{one.letter}</span><span>{say(one.text)}</span></li>'
        for one in choices
    )
    return f'<ul class="choices{" short" if short else ""}">{items}</ul>' if choices else ""


def _parts(question: Question) -> str:
    """Write the answer lines."""
    items = "".join(
        f'<li><span class="marks">[{one.marks}]</span>'
        f"<span>{f'({one.part})' if one.part else ''}</span><span>{escape(one.words)}</span>"
        f"<span>{math(letter(one.step.name, MATHML))} =</span>"
        '<span class="line"></span>'
        f"<span>{one.step.unit(question.problem.system).shown}</span></li>"
        for one in question.asked
    )
    return f'<ul class="parts">{items}</ul>' if items else ""


def _solved(question: Question) -> str:
    """Write the question and its worked solution."""
    problem = question.problem
    because = say(problem.pieces(problem.because))
    right = f"<p><strong>Answer {problem.right}.</strong> {because}</p>" if problem.right else ""
    lines = "".join(_line(question, place) for place in range(len(question.steps)))
    slips = _slips(question, "perhaps you ")
    return f'{_asked(question)}<div class="solution">{right}{lines}{slips}</div>'


def _line(question: Question, place: int) -> str:
    """One line: what is done, letters, numbers, result."""
    problem, step = question.problem, question.steps[place]
    part = {asked.step.name: asked.part for asked in question.asked}.get(step.name)
    sides = [_equation(question, place)]
    if not step.is_reading:
        sides.append(in_numbers(step.formula, problem.letters, MATHML, shown=problem.shown))
    chain = "<mo>=</mo>".join(f"<mrow>{side}</mrow>" for side in sides)
    between = "" if part is not None else " between"
    return (
        f'<p class="step">{f"({part}) " if part else ""}{escape(step.does)}</p>'
        f'<p class="formula"><math displaystyle="true"><mrow>{chain}<mo>=</mo></mrow></math> '
        f'<span class="result{between}">{escape(problem.shown(step.name))}</span></p>'
    )


def _equation(question: Question, place: int) -> str:
    """Letter and formula; what is read off a chart has no formula."""
    problem, step = question.problem, question.steps[place]
    name = letter(step.name, MATHML)
    if step.is_reading:
        return name
    return f"{name}<mo>=</mo>{in_letters(step.formula, problem.letters, MATHML)}"


def _keyed(question: Question) -> str:
    """Title, answers, accepted bands, marks, slips."""
    title = f"<p><strong>{escape(question.problem.family.title)}</strong></p>"
    right = question.problem.right
    if right:
        answer = f"<p><strong>Answer {right}</strong> [{question.marks}]</p>"
    else:
        names = ("", "from", "", "answer", "accepted", "marks")
        head = f"<tr>{''.join(f'<th>{name}</th>' for name in names)}</tr>"
        rows = "".join(_key_row(question, place) for place in range(len(question.steps)))
        answer = f"<table><thead>{head}</thead><tbody>{rows}</tbody></table>"
    return f'{title}<div class="solution">{answer}{_slips(question, "")}</div>'


def _key_row(question: Question, place: int) -> str:
    """One step in the marking key."""
    problem, step = question.problem, question.steps[place]
    part = {asked.step.name: asked.part for asked in question.asked}.get(step.name, "")
    low, high = question.band(step)
    return (
        f"<tr><td>{f'({part})' if part else ''}</td>"
        f"<td>{math(_equation(question, place))}</td>"
        f"<td>{escape(step.words)}</td>"
        f"<td><strong>{escape(problem.shown(step.name))}</strong></td>"
        f"<td>{low} to {escape(high)}</td><td>{step.marks}</td></tr>"
    )


def _slips(question: Question, before: str) -> str:
    """Say what wrong answers give away."""
    wrong = {one.letter: one.slip for one in question.problem.choices if not one.right}
    found = wrong or question.slips()
    items = "".join(
        f"<dt>{escape(answer)}</dt><dd>{before}{escape(words)}</dd>"
        for answer, words in found.items()
    )
    return f'<dl class="slips">{items}</dl>' if items else ""
