"""Two hundred scripts of simulated candidates, marked as by an independent rule.

The rule is written here and shares nothing with the marking but the families' formulas, which it
evaluates by substitution: a part is right if its number is that of the key or follows from the
candidate's own numbers; else it earns nothing. A letter earns all or nothing. Where only the answer
is asked for, a known slip keeps the marks of the steps that the answer rests on, but for its own,
and any other error keeps none. Candidates write four figures, so that no tolerance decides; draws
on which one does are left out.
"""

import csv
import random
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import pytest
import sympy

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.check_code import code_of
from boomsim.papers.family_registry import families
from boomsim.papers.marking.mark_class import mark
from boomsim.papers.paper import Paper, Question, make_paper
from boomsim.papers.paper_writing import write_plan
from boomsim.papers.problems.family import Family, Slip

SCRIPTS, VARIANTS = 100, 20
APART = 0.15
"""Least difference of a wrong number from every right one: far beyond any tolerance [1]."""
ERROR = 1.37
"""An arithmetic error: no factor of a unit, and no known slip unless by chance."""


@cache
def function_of(formula: sympy.Expr) -> tuple[list[str], Callable[..., complex]]:
    """A formula's symbols, and the formula as a function of them, of 15 figures."""
    names = sorted(one.name for one in formula.free_symbols)
    return names, sympy.lambdify(names, formula, "mpmath")


def value_of(formula: sympy.Expr, have: dict[str, float]) -> float:
    """By substitution; 0 where it is no positive number."""
    names, function = function_of(formula)
    found = complex(function(*(have[name] for name in names)))
    return found.real if abs(found.imag) < 1e-12 and found.real > 0 else 0.0


def written(question: Question, name: str, value: float) -> str:
    """Four figures in the unit of the line; a figure of a chart as the line asks."""
    step = next(one for one in question.steps if one.name == name)
    unit = step.unit(question.problem.system)
    number = value / float(unit.factor)
    by = step.by(question.problem.system)
    return f"{round(number / float(by)) * float(by):.6g}" if by else f"{number:.4g}"


@dataclass
class Script:
    """What a candidate hands in, and what the rule gives for it."""

    answers: dict[str, str] = field(default_factory=dict)
    marks: dict[int, int] = field(default_factory=dict)


def far(value: float, others: list[float]) -> bool:
    return value > 0 and all(
        abs(value - one) > APART * max(value, one) for one in others if one > 0
    )


def through(question: Question, slip: Slip | None, at: str, factor: float) -> dict[str, float]:
    """Numbers of a candidate who errs in one step and goes on from there."""
    have = dict(question.problem.values)
    for step in question.steps:
        formula = slip.formula if slip and step.letter == slip.step else step.formula
        have[step.name] = value_of(formula, have) * (factor if step.name == at else 1.0)
    return have


def guided(question: Question, script: Script, dice: random.Random) -> bool:
    """All parts answered, one of them wrong at times; False where a tolerance could decide."""
    family = question.problem.family
    right = through(question, None, "", 1.0)
    slip = dice.choice(family.slips) if dice.random() < 0.4 else None
    at = dice.choice(question.steps).name if slip is None and dice.random() < 0.4 else ""
    have = through(question, slip, at, ERROR) if slip or at else right
    wrong = str(slip.step) if slip else at
    marks = 0
    for step in question.steps:
        own = value_of(step.formula, have)
        if have[step.name] <= 0 or right[step.name] <= 0:
            return False
        is_wrong = step.name == wrong
        if is_wrong and any(step.nearest) and step is not question.steps[-1]:
            return False  # what is written in whole steps is not what the candidate goes on from
        if is_wrong and not far(have[step.name], [own, right[step.name]]):
            return False
        if (
            is_wrong
            and any(  # an error that a marker takes for a wrong unit costs one mark only
                abs(have[step.name] / right[step.name] / f - 1) < APART
                for f in (10, 100, 1000, 1e6, 9.81, 12, 0.1, 0.01, 1e-3, 1e-6, 1 / 9.81, 1 / 12)
            )
            and not slip
        ):
            return False
        if step.whole and have[step.name] != right[step.name] and not is_wrong and not own:
            return False
        marks += 0 if is_wrong else step.marks
    for asked in question.asked:
        script.answers[asked.label] = written(question, asked.step.name, have[asked.step.name])
    script.marks[question.number] = marks
    return True


def kept(question: Question, slip: Slip) -> int:
    """Marks of the steps that an answer with this slip rests on, less the step of the slip."""
    marks = {one.name: one.marks for one in question.steps}
    if str(slip.step) != question.steps[-1].name:
        return question.marks - marks[str(slip.step)]
    formulas = {one.name: one.formula for one in question.steps}
    rests, more = set(), {str(one) for one in slip.formula.free_symbols} & marks.keys()
    while more:
        rests |= more
        more = {str(s) for name in more for s in formulas[name].free_symbols} & marks.keys() - rests
    return sum(marks[name] for name in rests)


def alone(question: Question, script: Script, dice: random.Random) -> bool:
    """Only the answer: right, after a known slip, or wrong without a reason."""
    family, last = question.problem.family, question.steps[-1].name
    right = through(question, None, "", 1.0)
    ends = {one: through(question, one, "", 1.0)[last] for one in family.slips}
    way = dice.random()
    if way < 0.4:
        value, marks = right[last], question.marks
    elif way < 0.8:
        slip = dice.choice(family.slips)
        value = ends[slip]
        others = [end for one, end in ends.items() if one is not slip]
        if not far(value, [right[last], *others]):
            return False
        if min(through(question, slip, "", 1.0).values()) <= 0:
            return False
        marks = kept(question, slip)
    else:
        value, marks = right[last] * ERROR, 0
        if not far(value, [right[last], *ends.values()]):
            return False
    script.answers[question.labels[0]] = written(question, last, value)
    script.marks[question.number] = marks
    return True


def chosen(question: Question, script: Script, dice: random.Random) -> bool:
    one = dice.choice(question.problem.choices)
    script.answers[str(question.number)] = one.letter
    script.marks[question.number] = question.marks * one.right
    return True


def answered(question: Question, script: Script, dice: random.Random) -> None:
    """Answer one question; blank where twenty tries leave a tolerance to decide."""
    way = chosen if question.is_choice else guided if len(question.asked) > 1 else alone
    if way is alone and len(question.steps) == 1:
        way = guided
    for _ in range(20):
        if way(question, script, dice):
            return
    script.marks[question.number] = 0
    for label in question.labels:
        script.answers.pop(label, None)


@pytest.mark.slow
@pytest.mark.parametrize("asked", ["guided", "the answer alone"])
def test_a_hundred_scripts_are_marked_as_by_an_independent_rule(tmp_path: Path, asked: str) -> None:
    every = [
        name for name, one in families().items()
        if asked == "guided" or not isinstance(one, Family) or not one.by_check
    ]  # fmt: skip
    plan = make_blueprint(
        {
            "title": "Scripts", "minutes": 90, "form": "mixed", "variants": VARIANTS,
            "guided": asked == "guided",
            "vary": "families", "seed": asked, "part": [{"families": every, "questions": 12}],
        }
    )  # fmt: skip
    papers: list[Paper] = [make_paper(plan, variant=number) for number in range(VARIANTS)]
    written_papers = write_plan(plan, tmp_path, formats=("json",))
    scripts: dict[str, tuple[Paper, Script]] = {}
    for number in range(SCRIPTS):
        paper, dice = papers[number % VARIANTS], random.Random(f"{asked} {number}")
        script = Script()
        for question in paper.questions:
            answered(question, script, dice)
        scripts[f"candidate {number:03d}"] = (paper, script)
    labels = sorted({label for _, script in scripts.values() for label in script.answers})
    with (tmp_path / "in.csv").open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file)
        writer.writerow(["candidate", "variant", "code", *labels])
        for name, (paper, script) in scripts.items():
            cells = [script.answers.get(label, "") for label in labels]
            writer.writerow([name, paper.variant, code_of(paper), *cells])
    marked = mark(written_papers.key, tmp_path / "in.csv")
    assert marked.refusals == () and len(marked.candidates) == SCRIPTS
    differ = []
    for one in marked.candidates:
        paper, script = scripts[one.candidate]
        for question, mine in zip(one.questions, paper.questions, strict=True):
            wanted = script.marks[question.number]
            if question.marks != wanted:
                given = {label: script.answers.get(label) for label in mine.labels}
                differ.append((one.candidate, question.family, question.marks, wanted, given))
    assert differ == []
    answers = sum(len(script.answers) for _, script in scripts.values())
    wrong = sum(
        script.marks[question.number] < question.marks
        for paper, script in scripts.values() for question in paper.questions
    )  # fmt: skip
    assert answers > 1000 and 300 < wrong < 900  # of 1200 questions
