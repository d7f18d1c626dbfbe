"""What a class can do, topic by topic: the learning outcomes of a course."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from boomsim.papers.board.item_analysis import Item
from boomsim.papers.problems.family import TOPICS


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """One topic.

    Attributes
    ----------
    questions : tuple of str
        Their names
    share : float
        Earned, of all marks of these questions over the class [1]
    weakest : Item
        Question with the smallest facility
    """

    topic: str
    questions: tuple[str, ...]
    share: float
    weakest: Item


def outcomes(found: Sequence[Item]) -> tuple[Outcome, ...]:
    """Put the questions of a class together by topic, in the order of a course."""
    topics = [topic for topic in TOPICS if any(one.topic == topic for one in found)]
    return tuple(_outcome([one for one in found if one.topic == topic]) for topic in topics)


def _outcome(found: Sequence[Item]) -> Outcome:
    """Put the questions of one topic together."""
    earned = math.fsum(one.facility * one.most * one.count for one in found)
    return Outcome(
        topic=found[0].topic,
        questions=tuple(one.name for one in found),
        share=earned / sum(one.most * one.count for one in found),
        weakest=min(found, key=lambda one: one.facility),
    )
