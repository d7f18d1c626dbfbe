"""Markdown with LaTeX formulas, for handouts and repositories; drawings lie beside it."""

from collections.abc import Iterator, Sequence

from boomsim.caution import CAUTION
from boomsim.papers.check_code import code_of
from boomsim.papers.language.formula_markup import LATEX
from boomsim.papers.language.formula_printing import in_letters, in_numbers, letter
from boomsim.papers.language.question_words import Piece
from boomsim.papers.paper import Paper, Question
from boomsim.papers.problems.family import Step
from boomsim.papers.problems.problem import Problem
from boomsim.papers.render.paper_notes import NAMES, notes

_SPECIAL = str.maketrans({mark: f"\\{mark}" for mark in "\\`*_{}[]<>#$|"})


def render_markdown(paper: Paper, *, kind: str) -> str:
    """Write one paper as Markdown.

    Parameters
    ----------
    kind : str
        "paper", "solutions" or "marking"

    Returns
    -------
    str
        Refers to the files of :func:`drawings`
    """
    plan = paper.plan
    lines = [f"# {_plain(plan.title)}", ""]
    lines += [f"*{_plain(plan.subtitle)}*", ""] if plan.subtitle else []
    lines += [
        f"{NAMES[kind]}, variant {paper.variant}, code {code_of(paper)} · {plan.minutes} minutes · "
        f"{paper.marks} marks",
        "",
        *(f"- {_plain(note)}" for note in notes(paper, kind=kind)),
        "",
    ]
    for question in paper.questions:
        lines += [f"## {_plain(question.heading)}", ""] if question.heading else []
        lines += [*_question(paper, question, kind), ""]
    return "\n".join([*lines, "---", "", f"*{_plain(CAUTION)}*", ""])


def drawings(paper: Paper) -> dict[str, str]:
    """Write the drawings of a paper.

    Returns
    -------
    dict of str to str
        SVG text by file name
    """
    drawn = {question.number: question.problem.picture for question in paper.questions}
    return {_file(paper, number): svg for number, svg in drawn.items() if svg}


def _file(paper: Paper, number: int) -> str:
    """Name of one drawing."""
    return f"figure-{paper.variant}-{number}.svg"


def _question(paper: Paper, question: Question, kind: str) -> Iterator[str]:
    """Lines of one question."""
    problem, family = question.problem, question.problem.family
    yield f"### Question {question.number} ({question.marks})"
    yield ""
    if kind != "marking":
        yield f"{_say(problem.pieces(family.text))} *{_say(problem.pieces(family.assume))}*"
        yield from _shown(paper, question)
    if kind == "paper":
        yield from _parts(question)
    else:
        yield from _answers(question, kind)


def _shown(paper: Paper, question: Question) -> Iterator[str]:
    """Drawing, table and choices."""
    problem = question.problem
    if problem.picture:
        yield from ("", f"![{_plain(problem.family.seen)}]({_file(paper, question.number)})")
    if problem.table:
        head, *rows = problem.table.rows
        yield from ("", _row(head), _row(["---"] * len(head)), *(_row(row) for row in rows))
        yield from ("", _plain(problem.table.caption))
    if problem.choices:
        yield ""
        yield from (f"- **{one.letter}** {_say(one.text)}" for one in problem.choices)


def _row(cells: Sequence[str]) -> str:
    """One row of a table."""
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"


def _parts(question: Question) -> Iterator[str]:
    """Write the answer lines."""
    yield ""
    for one in question.asked:
        part = f"({one.part}) " if one.part else ""
        unit = one.step.unit(question.problem.system).shown
        name = letter(one.step.name, LATEX)
        yield f"- {part}{one.words}: ${name}$ = \\_\\_\\_\\_\\_\\_ {unit} [{one.marks}]"


def _answers(question: Question, kind: str) -> Iterator[str]:
    """Write the worked solution, or the key."""
    problem = question.problem
    yield ""
    if problem.right:
        yield f"**Answer {problem.right}.** {_say(problem.pieces(problem.because))}"
    for step in question.steps:
        low, high = question.band(step)
        shown = f"$${' = '.join(_sides(problem, step))}$$"
        is_marked = kind == "marking" and not question.is_choice
        accepted = f" Accepted: {low} to {high} [{step.marks}]." if is_marked else ""
        yield from ("", f"{_plain(step.does)}{accepted}", "", shown)
    wrong = {one.letter: one.slip for one in problem.choices if not one.right}
    yield ""
    for answer, words in (wrong or question.slips()).items():
        yield f"- {_plain(answer)}: {_plain(words)}"


def _sides(problem: Problem, step: Step) -> Iterator[str]:
    """Letter, formula, numbers and result; what is read off a chart has no formula."""
    yield letter(step.name, LATEX)
    if not step.is_reading:
        yield in_letters(step.formula, problem.letters, LATEX)
        yield in_numbers(step.formula, problem.letters, LATEX, shown=problem.shown)
    yield LATEX.number(problem.shown(step.name))


def _say(pieces: Sequence[Piece]) -> str:
    """Text and letters."""
    return "".join(
        f"${letter(one.letter, LATEX)}$" if one.letter else _plain(one.text) for one in pieces
    )


def _plain(text: str) -> str:
    """Text that Markdown must not read as markup."""
    return text.translate(_SPECIAL)
