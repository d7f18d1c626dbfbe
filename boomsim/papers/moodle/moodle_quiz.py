"""One paper as Moodle XML: a question for each answer, with its unit and tolerance.

A numerical question of the platform has one answer; a question of several parts becomes several,
each with the whole text. Nothing in them says what the others ask for.
"""

from collections.abc import Iterator
from html import escape

from boomsim.caution import CAUTION
from boomsim.papers.check_code import code_of
from boomsim.papers.language.formula_markup import PLAIN
from boomsim.papers.language.formula_printing import in_letters, in_numbers
from boomsim.papers.moodle.moodle_units import units_of
from boomsim.papers.moodle.moodle_xml import HEAD, answer, category, html_text, question, units
from boomsim.papers.paper import Asked, Paper, Question
from boomsim.papers.problems.family import Family, Step
from boomsim.papers.problems.step_solving import close, evaluate
from boomsim.papers.qti.qti_xml import NEVER, html, identifier, parts_of_letter, say, table
from boomsim.papers.render.paper_notes import moodle_notes


def moodle_quiz(paper: Paper) -> bytes:
    """Write a paper for a question bank.

    Returns
    -------
    bytes
        XML
    """
    code, plan = code_of(paper), paper.plan
    title = f"{plan.title} ({paper.variant}, {code})"
    notes = "".join(f"<p>{escape(note)}</p>" for note in [*moodle_notes(paper), CAUTION])
    first = question(
        "description", f"{code} notes", number=identifier("notes", code),
        text=html_text("questiontext", notes), body="", marks=0,
    )  # fmt: skip
    rest = (text for one in paper.questions for text in _questions(one, paper, code))
    whole = "".join([category(title, info=CAUTION), first, *rest])
    return f"{HEAD}<quiz>\n{whole}</quiz>\n".encode()


def _questions(one: Question, paper: Paper, code: str) -> Iterator[str]:
    """A question for each answer."""
    if one.is_choice:
        yield _choice(one, paper, code)
    for asked in one.asked:
        yield _number(one, asked, paper, code)


def _choice(one: Question, paper: Paper, code: str) -> str:
    """One of several choices."""
    tells = paper.plan.feedback != NEVER
    answers = "".join(
        answer(
            html(*say(choice.text)), fraction=100 * choice.right,
            feedback=f"<p>Perhaps you {escape(choice.slip)}.</p>" * (tells and not choice.right),
        )
        for choice in one.problem.choices
    )  # fmt: skip
    kind = (
        "<single>true</single><shuffleanswers>false</shuffleanswers>"
        "<answernumbering>ABCD</answernumbering>"
    )
    return question(
        "multichoice", _name(one, "", code), number=identifier(f"q{one.number:02d}", code),
        text=_text(one, ""), body=kind + answers, marks=one.marks,
        feedback=_solution(one) if tells else "", tags=_tags(one),
    )  # fmt: skip


def _number(one: Question, asked: Asked, paper: Paper, code: str) -> str:
    """One number with its unit and tolerance."""
    tells = paper.plan.feedback != NEVER
    line = (
        f"<p>{_part(asked)}{escape(asked.words)}: {html(*parts_of_letter(asked.step.name))} = ?</p>"
    )
    unit = one.problem.results[asked.step.name].unit
    name = f"q{one.number:02d}{asked.part}"
    return question(
        "numerical", _name(one, asked.part, code), number=identifier(name, code),
        text=_text(one, f"{line}<p>Unit: {escape(unit.shown) or 'none'}.</p>"),
        body="".join(_answers(one, asked, tells=tells)) + units(units_of(unit)),
        marks=asked.marks, feedback=_solution(one) if tells else "", tags=_tags(one),
    )  # fmt: skip


def _part(asked: Asked) -> str:
    """Letter of a part; "" where a question has one answer."""
    return f"({asked.part}) " if asked.part else ""


def _name(one: Question, part: str, code: str) -> str:
    """Name in the question bank: sorts as the paper does."""
    return f"{code} {one.number:02d}{part} {one.problem.family.title}"


def _tags(one: Question) -> tuple[str, str]:
    """Topic and difficulty, by which a question bank is searched."""
    return one.problem.family.topic, f"difficulty {one.problem.family.difficulty}"


def _answers(one: Question, asked: Asked, *, tells: bool) -> Iterator[str]:
    """The right answer, and what known slips in this step lead to."""
    step, value = asked.step, one.problem.results[asked.step.name].value
    near = one.tolerance(step, value)
    yield _band(one, step, value, near, fraction=100)
    family = one.problem.family
    if not tells or not isinstance(family, Family):
        return
    have = one.problem.values | {name: a.value for name, a in one.problem.results.items()}
    for slip in family.slips:
        wrong = evaluate(slip.formula, have) if slip.step == step.letter else 0.0
        if wrong > 0 and not close(wrong, value, tolerance=near):
            words = f"<p>Perhaps you {escape(slip.words)}.</p>"
            yield _band(one, step, wrong, one.tolerance(step, wrong), fraction=0, said=words)


def _band(
    one: Question, step: Step, value: float, near: float, *, fraction: int, said: str = ""
) -> str:
    """A value in its unit, and how far from it counts as the same."""
    shown = value / float(one.problem.results[step.name].unit.factor)
    return answer(
        f"{shown:.10g}", fraction=fraction, tolerance=f"{shown * near:.6g}", feedback=said
    )


def _text(one: Question, line: str) -> str:
    """Text, simplification, drawing, table, and what is wanted."""
    problem, family = one.problem, one.problem.family
    asked, assume = (html(*say(problem.pieces(one))) for one in (family.text, family.assume))
    text = f"<p>{asked} <em>{assume}</em></p>"
    files = {}
    if problem.picture:
        name = f"q{one.number:02d}-figure.svg"
        files[name] = problem.picture
        seen = escape(family.seen, quote=True)
        text += f'<p><img src="@@PLUGINFILE@@/{name}" alt="{seen}"/></p>'
    if problem.table:
        text += html(table(problem.table.rows))
    return html_text("questiontext", text + line, files=files)


def _solution(one: Question) -> str:
    """Write the worked solution; formulas in words."""
    problem = one.problem
    because = html(*say(problem.pieces(problem.because)))
    text = f"<p>Answer {problem.right}. {because}</p>" if problem.right else ""
    for step in one.steps:
        formula = in_letters(step.formula, problem.letters, PLAIN)
        numbers = in_numbers(step.formula, problem.letters, PLAIN, shown=problem.shown)
        text += (
            f"<p>{escape(step.does)}<br/>{html(*parts_of_letter(step.name))} = {escape(formula)} = "
            f"{escape(numbers)} = <strong>{escape(problem.shown(step.name))}</strong></p>"
        )
    return text
