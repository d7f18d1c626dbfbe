"""A paper as plain data for the Typst template: texts as texts, formulas as Typst mathematics.

Texts reach the template as JSON strings and are never read as markup, so nothing in them needs
escaping. Only formulas, which come from our own families, are evaluated there.
"""

import re
from collections.abc import Sequence
from itertools import accumulate
from typing import Any

from boomsim.caution import CAUTION
from boomsim.papers.check_code import code_of, paper_qr_svg
from boomsim.papers.language.formula_markup import PLAIN, TYPST
from boomsim.papers.language.formula_printing import in_letters, in_numbers, letter
from boomsim.papers.language.question_words import Piece
from boomsim.papers.numbers.printed_units import US
from boomsim.papers.paper import Paper, Question
from boomsim.papers.render.paper_notes import notes
from boomsim.papers.render.question_heights import height_of, is_wide, room_for_working, step_height

Data = dict[str, Any]

_WIDTH = re.compile(r'width="([\d.]+)pt"')


def typst_data(paper: Paper, *, kind: str, large: bool = False) -> Data:
    """Turn a paper into what the template reads.

    Parameters
    ----------
    kind : str
        "paper", "solutions" or "marking"
    large : bool
        Large print, for those who read badly

    Returns
    -------
    dict
        Of texts, numbers and lists only
    """
    plan = paper.plan
    return {
        "kind": kind,
        "title": plan.title,
        "subtitle": plan.subtitle,
        "variant": paper.variant,
        "code": code_of(paper),
        "qr": paper_qr_svg(paper),
        "large": large,
        "region": "us" if plan.units == US else "gb",
        "minutes": plan.minutes,
        "marks": paper.marks,
        "notes": notes(paper, kind=kind),
        "caution": CAUTION,
        "sheet": "us-letter" if plan.units == US else "a4",
        "questions": [
            _question(question, kind) | {"level": level}
            for question, level in zip(paper.questions, _levels(paper), strict=True)
        ],
    }


def _levels(paper: Paper) -> list[int]:
    """Heading of each question: below the title, or below the last heading of a part before it."""
    parted = accumulate(bool(one.heading) for one in paper.questions)
    return [3 if below else 2 for below in parted]


def _question(question: Question, kind: str) -> Data:
    """One question; solutions are left out of the candidate's paper altogether."""
    problem, family = question.problem, question.problem.family
    asked: Data = {
        "number": question.number,
        "heading": question.heading,
        "marks": question.marks,
        "height": height_of(question, kind=kind),
        "room": room_for_working(question),
        "title": family.title,
        "text": _pieces(problem.pieces(family.text)),
        "assume": _pieces(problem.pieces(family.assume)),
        "picture": _picture(problem.picture, family.seen),
        "table": _table(question),
        "parts": [_part(question, place) for place in range(len(question.asked))],
        "choices": [{"letter": one.letter, "text": _pieces(one.text)} for one in problem.choices],
    }
    return asked if kind == "paper" else asked | _answers(question)


def _answers(question: Question) -> Data:
    """Say what the worked solution and the marking key add."""
    problem = question.problem
    return {
        "right": problem.right,
        "because": _pieces(problem.pieces(problem.because)),
        "lines": [_line(question, place) for place in range(len(question.steps))],
        "slips": _slips(question),
    }


def _part(question: Question, place: int) -> Data:
    """One answer that is asked for."""
    asked = question.asked[place]
    return {
        "part": asked.part,
        "letter": letter(asked.step.name, TYPST),
        "alt": letter(asked.step.name, PLAIN),
        "words": asked.words,
        "unit": asked.step.unit(question.problem.system).shown,
        "marks": asked.marks,
    }


def _line(question: Question, place: int) -> Data:
    """One line of the worked solution."""
    problem, step = question.problem, question.steps[place]
    order = problem.letters
    parts = {asked.step.name: asked.part for asked in question.asked}
    low, high = question.band(step)
    spoken = letter(step.name, PLAIN)
    if not step.is_reading:
        spoken += f" = {in_letters(step.formula, order, PLAIN)}"
    return {
        "alt": spoken,
        "numbers-alt": ""
        if step.is_reading
        else in_numbers(step.formula, order, PLAIN, shown=problem.shown),
        "part": parts.get(step.name, ""),
        "height": step_height(question, place),
        "asked": step.name in parts,
        "marks": step.marks,
        "does": step.does,
        "words": step.words,
        "letter": letter(step.name, TYPST),
        "formula": "" if step.is_reading else in_letters(step.formula, order, TYPST),
        "wide": is_wide(question, place),
        "numbers": ""
        if step.is_reading
        else in_numbers(step.formula, order, TYPST, shown=problem.shown),
        "result": problem.shown(step.name),
        "low": low,
        "high": high,
    }


def _slips(question: Question) -> list[Data]:
    """Wrong answers that give a slip away."""
    if question.is_choice:
        wrong = [one for one in question.problem.choices if not one.right]
        return [{"answer": one.letter, "words": one.slip} for one in wrong]
    return [{"answer": text, "words": words} for text, words in question.slips().items()]


def _pieces(pieces: Sequence[Piece]) -> list[Data]:
    """Texts under "t", mathematics under "m"."""
    return [
        {"m": letter(piece.letter, TYPST), "w": letter(piece.letter, PLAIN)}
        if piece.letter
        else {"t": piece.text}
        for piece in pieces
    ]


def _picture(svg: str, seen: str) -> Data | None:
    """Return the drawing with its width [pt] and its words."""
    found = _WIDTH.search(svg)
    return {"svg": svg, "width": float(found[1]), "seen": seen} if found else None


def _table(question: Question) -> Data | None:
    """Return a table that belongs to the question."""
    table = question.problem.table
    return {"rows": table.rows, "caption": table.caption} if table else None
