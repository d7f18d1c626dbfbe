"""The usual notes at the head of a paper."""

from boomsim.papers.marking_policy import policy_notes
from boomsim.papers.numbers.printed_units import US
from boomsim.papers.paper import Paper

KINDS = ("paper", "solutions", "marking")
"""What is printed of one variant: for the candidate, for learning, for the marker."""

NAMES = {"paper": "Question paper", "solutions": "Worked solutions", "marking": "Marking key"}


def notes(paper: Paper, *, kind: str) -> list[str]:
    """Write what a reader of this paper has to know.

    Parameters
    ----------
    kind : str
        One of `KINDS`
    """
    if kind == "paper":
        return [*_for_candidate(paper), *paper.plan.instructions]
    if kind == "solutions":
        return [
            "Intermediate results are printed rounded and carried on unrounded; other sensible "
            "ways to the same answer are as good."
        ]
    return [
        "A part is right if its value lies in the band, or if it follows from the candidate's own "
        "earlier value by the formula beside it: an error is paid for once.",
        "A right final answer earns the marks of all parts that lead to it.",
        *_policy(paper),
    ]


def platform_notes(paper: Paper) -> list[str]:
    """Write what a candidate before a learning platform has to know.

    Returns
    -------
    list of str
        Other than on paper: a platform reads plain numbers and marks each part by itself
    """
    choices = [question.is_choice for question in paper.questions]
    lines = ["Marks stand in brackets."]
    if any(choices):
        lines.append("Where choices are offered, exactly one is right.")
    if not all(choices):
        lines.append(
            "Write numbers to at least three significant figures, or as the line asks, in the unit "
            "behind the field, "
            "with a decimal point, without commas and without the unit. Each part is marked by "
            "itself: carry your intermediate results on unrounded."
        )
    return [*lines, *paper.plan.instructions, _system(paper)]


def moodle_notes(paper: Paper) -> list[str]:
    """Write what a candidate before a platform that reads units has to know."""
    lines = []
    if any(question.is_choice for question in paper.questions):
        lines.append("Where choices are offered, exactly one is right.")
    if not all(question.is_choice for question in paper.questions):
        lines.append(
            "Write numbers to at least three significant figures, or as the line asks, with a "
            "decimal point and without commas. A unit may stand behind the number; without one the "
            "unit named below the question is taken. Each part is marked by itself: carry your "
            "intermediate results on unrounded."
        )
    return [*lines, *paper.plan.instructions, _system(paper)]


def _for_candidate(paper: Paper) -> list[str]:
    """Say what the questions in this paper need."""
    choices = [question.is_choice for question in paper.questions]
    lines = ["Marks stand in brackets."]
    if any(choices):
        lines.append("Where choices are offered, write one letter; exactly one is right.")
    if not all(choices):
        lines.append(
            "Give numbers to at least three significant figures, or as the answer line asks, in "
            "the unit printed or another one named."
        )
    if any(len(question.asked) > 1 for question in paper.questions):
        lines.append(
            "An error carries forward: later parts are marked from your own earlier values."
        )
    return [*lines, *_policy(paper), _system(paper)]


def _policy(paper: Paper) -> list[str]:
    """Say what a slip, a unit and a rounding cost; nothing where all is answered by letters."""
    numeric = [question for question in paper.questions if not question.is_choice]
    if not numeric:
        return []
    alone = any(len(question.asked) < len(question.steps) for question in numeric)
    return policy_notes(paper.plan.marking, answer_alone=alone)


def _system(paper: Paper) -> str:
    """Name the units."""
    system = "US customary units" if paper.plan.units == US else "metric units"
    return f"All quantities are in {system}. The machines are invented."
