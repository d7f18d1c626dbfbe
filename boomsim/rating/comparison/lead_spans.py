"""What is told of who leads: without the edges of the reach, ties in one piece, and which ways."""

from dataclasses import dataclass

import numpy as np

from boomsim.rating.comparison.capacity_envelope import SAME
from boomsim.rating.comparison.comparison_leads import Lead
from boomsim.rating.comparison.comparison_study import Comparison
from boomsim.rating.limits.limit_kind import Limit

FEW = 4
"""So many ways are all told; of more, those that matter [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Span:
    """Radii over which one leads, or nobody does.

    Attributes
    ----------
    near, far : float
        [m]
    leader : int or None
        None in a tie
    tied : tuple of int
        Those that are level at the far end of a tie
    limit : Limit or None
        What sets the figure of all that are level, all the way
    capacity : tuple of float
        Of the best, at the near and at the far end [kg]
    """

    near: float
    far: float
    leader: int | None
    tied: tuple[int, ...]
    limit: Limit | None
    capacity: tuple[float, float]


def spans_of(leads: tuple[Lead, ...]) -> list[Span]:
    """Tell who leads from where to where.

    At either end of the reach some lead only as a better one does not reach: that is left out. Ways
    that drop out of a tie one by one make one tie.

    Returns
    -------
    list of Span
        By growing radius; none where nobody carries anything
    """
    spans: list[Span] = []
    for lead in _inner(leads):
        span = _span(lead)
        if spans and spans[-1].leader is span.leader is None and spans[-1].far == span.near:
            span = _joined(spans.pop(), span)
        spans.append(span)
    return spans


def _inner(leads: tuple[Lead, ...]) -> tuple[Lead, ...]:
    inner = [k for k, lead in enumerate(leads) if not lead.by_reach]
    return leads[inner[0] : inner[-1] + 1] if inner else leads


def _span(lead: Lead) -> Span:
    return Span(
        near=lead.near,
        far=lead.far,
        leader=lead.leader,
        tied=lead.ways if lead.leader is None else (),
        limit=lead.limit,
        capacity=lead.capacity,
    )


def _joined(one: Span, two: Span) -> Span:
    return Span(
        near=one.near,
        far=two.far,
        leader=None,
        tied=two.tied,
        limit=two.limit if one.limit == two.limit else None,
        capacity=(one.capacity[0], two.capacity[1]),
    )


def ways_that_matter(comparison: Comparison) -> list[int]:
    """Choose the ways to tell: those that lead somewhere, and the two that carry least.

    The extremes are the way that carries least close in and the way that does far out: on a boom
    whose sections get lighter towards the head, mostly the lightest section out and the heaviest.

    Returns
    -------
    list of int
        In the order of the comparison; all, if they are few
    """
    count = len(comparison.configurations.extension)
    if count <= FEW:
        return list(range(count))
    leaders = {span.leader for span in spans_of(comparison.leads) if span.leader is not None}
    printed = {ways[0] for ways in most_at(comparison) if len(ways) == 1}
    return sorted({*leaders, *printed, *comparison.least})


def most_at(comparison: Comparison) -> list[tuple[int, ...]]:
    """Who carries most at each radius of the table.

    Returns
    -------
    list of tuple of int
        Several where they are level, none where nobody carries anything
    """
    capacity = np.nan_to_num(comparison.rating.capacity)
    most = capacity.max(axis=0)
    level = (capacity >= most * (1.0 - SAME)) & (most > 0.0)
    return [tuple(map(int, np.flatnonzero(column))) for column in level.T]
