"""What one candidate can do, topic by topic."""

from collections.abc import Sequence

from boomsim.papers.family_registry import family_named
from boomsim.papers.marking.mark_question import QuestionMark
from boomsim.papers.problems.family import TOPICS


def own_outcomes(questions: Sequence[QuestionMark]) -> tuple[tuple[str, int, int], ...]:
    """Put one candidate's marks together by topic.

    Returns
    -------
    tuple of (str, int, int)
        Topic, marks and marks that could be earned [1]
    """
    sums: dict[str, list[int]] = {}
    for mark in questions:
        topic = sums.setdefault(family_named(mark.family).topic, [0, 0])
        topic[0] += mark.marks
        topic[1] += mark.most
    return tuple((topic, sums[topic][0], sums[topic][1]) for topic in TOPICS if topic in sums)
