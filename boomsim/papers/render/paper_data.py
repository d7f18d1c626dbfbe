"""A paper as JSON, and the key from which answers are marked: SI numbers, stable names."""

import json
from typing import Any

from boomsim.caution import CAUTION
from boomsim.papers.check_code import code_of
from boomsim.papers.language.formula_markup import LATEX, PLAIN
from boomsim.papers.language.formula_printing import in_letters, in_numbers
from boomsim.papers.language.question_words import in_plain
from boomsim.papers.numbers.printed_units import US
from boomsim.papers.paper import Asked, Paper, Question
from boomsim.papers.problems.tolerance_bands import asked_figures
from boomsim.papers.render.paper_notes import notes
from boomsim.version import __version__

PAPER_SCHEMA, KEY_SCHEMA = "boomsim-paper/1", "boomsim-key/1"

Data = dict[str, Any]


def paper_data(paper: Paper, *, kind: str) -> Data:
    """Turn a paper into plain data.

    Parameters
    ----------
    kind : str
        "paper", "solutions" or "marking"; the first has no answers in it
    """
    plan = paper.plan
    return {
        "schema": PAPER_SCHEMA,
        "kind": kind,
        "title": plan.title,
        "subtitle": plan.subtitle,
        "variant": paper.variant,
        "code": code_of(paper),
        "minutes": plan.minutes,
        "marks": paper.marks,
        "units": plan.units,
        "notes": notes(paper, kind=kind),
        "caution": CAUTION,
        "questions": [_question(question, kind) for question in paper.questions],
    }


def key_data(papers: list[Paper]) -> Data:
    """Turn all variants into the key from which answers are marked.

    Parameters
    ----------
    papers : list of Paper
        Of one blueprint
    """
    plan = papers[0].plan
    return {
        "schema": KEY_SCHEMA,
        "made_with": __version__,
        "title": plan.title,
        "units": plan.units,
        "seed": plan.seed,
        "marking": plan.marking.model_dump(),
        "caution": CAUTION,
        "variants": [
            {
                "variant": one.variant,
                "code": code_of(one),
                "questions": [_key(question) for question in one.questions],
            }
            for one in papers
        ],
    }


def to_json(data: Data) -> str:
    """Write plain data as JSON text."""
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


def _question(question: Question, kind: str) -> Data:
    """One question; the candidate's paper has no answers in it."""
    problem, family = question.problem, question.problem.family
    data: Data = {
        "number": question.number,
        "family": family.id,
        "topic": family.topic,
        "title": family.title,
        "difficulty": family.difficulty,
        "marks": question.marks,
        "text": in_plain(problem.pieces(family.text)),
        "assume": in_plain(problem.pieces(family.assume)),
        "givens": {name: amount.plain() for name, amount in problem.givens.items()},
        "table": [list(row) for row in problem.table.rows] if problem.table else None,
        "picture": problem.picture or None,
        "parts": [_part(question, asked) for asked in question.asked],
        "choices": {one.letter: in_plain(one.text) for one in problem.choices},
    }
    return data if kind == "paper" else data | _answers(question)


def _part(question: Question, asked: Asked) -> Data:
    """One wanted number."""
    unit = asked.step.unit(question.problem.system).name
    return {
        "label": asked.label, "letter": asked.step.name, "words": asked.step.words,
        "unit": unit, "marks": asked.marks, "figures": asked_figures(asked.step),
        "nearest": asked.step.nearest[question.problem.system == US] or None,
    }  # fmt: skip


def _answers(question: Question) -> Data:
    """Solution and slips."""
    problem = question.problem
    wrong = {one.letter: one.slip for one in problem.choices if not one.right}
    return {
        "right": problem.right or None,
        "because": in_plain(problem.pieces(problem.because)),
        "steps": [_step(question, place) for place in range(len(question.steps))],
        "slips": wrong or question.slips(),
    }


def _step(question: Question, place: int) -> Data:
    """One step of the solution."""
    problem, step = question.problem, question.steps[place]
    amount = problem.results[step.name]
    return {
        "letter": step.name,
        "does": step.does,
        "formula": in_letters(step.formula, problem.letters, PLAIN),
        "latex": in_letters(step.formula, problem.letters, LATEX),
        "numbers": in_numbers(step.formula, problem.letters, PLAIN, shown=problem.shown),
        "answer": amount.plain(),
        "si": amount.value,
        "tolerance": question.tolerance(step, amount.value),
        "marks": step.marks,
    }


def _key(question: Question) -> Data:
    """Say what marking needs of one question: how to make it again, and what must come out."""
    problem = question.problem
    return {
        "number": question.number,
        "family": problem.family.id,
        "form": problem.form,
        "seed": problem.seed,
        "guided": question.guided,
        "marks": question.marks,
        "givens": {name: amount.plain() for name, amount in problem.givens.items()},
        "answer": {name: amount.plain() for name, amount in problem.results.items()},
        "choices": {one.letter: one.slip for one in problem.choices},
        "right": problem.right,
    }
