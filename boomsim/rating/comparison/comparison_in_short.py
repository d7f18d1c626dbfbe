"""The answer in three sentences that can be spoken: who leads close in, who far out, and why."""

from collections.abc import Callable, Sequence

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.rows_and_rounding import row_step
from boomsim.rating.comparison.capacity_envelope import SAME
from boomsim.rating.comparison.comparison_reasons import further_in, tell_pair
from boomsim.rating.comparison.comparison_study import (
    Comparison,
    account_at,
    capacities_at,
    capacities_of,
)
from boomsim.rating.comparison.difference_account import Account, Difference, account, difference
from boomsim.rating.comparison.lead_spans import Span, spans_of
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import label
from boomsim.units import listed, show, show_rated

BRIEF = 0.25
"""A lead at an end of the reach over less than this share of a row is not worth a sentence [1]."""

GLIMPSE = 0.05
"""Nor one between two others over less than this share [1]."""


def in_short(
    comparison: Comparison, *, names: Sequence[str], radius: float, units: str
) -> list[str]:
    """Answer in three sentences; in fewer where there is less to tell.

    Parameters
    ----------
    names : sequence of str
        A letter for each way
    radius : float
        Where the difference is explained [m]
    """
    told = _Told(
        comparison.configurations.extension,
        comparison.rating.boom,
        names,
        units,
        carried=lambda radius: capacities_at(comparison, radius=radius),
        account=lambda way, radius: account_at(comparison, way=way, radius=radius),
    )
    row = row_step(comparison.setup.machine, length=comparison.configurations.length)
    spans = _lasting(spans_of(comparison.leads), least=GLIMPSE * row)
    spans = _broad(spans, least=BRIEF * row)
    if not spans:
        return ["None of them carries anything at any radius."]
    if len(names) == 1:
        return [told.alone(spans), *told.at(radius)]
    return [told.close_in(spans), told.far_out(spans), *told.at(radius)]


def in_short_at(
    setup: Setup,
    *,
    extension: Array,
    boom: Condensed,
    names: Sequence[str],
    radius: float,
    units: str,
) -> str:
    """Say who carries most at one radius, by how much more than who carries least, and why.

    Parameters
    ----------
    extension : ndarray, shape (configurations, moving sections)
        [1]
    boom : Condensed
        Of these configurations
    names : sequence of str
        A letter for each way
    radius : float
        [m]

    Returns
    -------
    str
        A sentence; empty where there is nothing to tell
    """
    told = _Told(
        extension,
        boom,
        names,
        units,
        carried=lambda where: capacities_of(setup, extension=extension, boom=boom, radius=where),
        account=lambda way, where: account(setup, extension=extension[way], radius=where),
    )
    return " ".join(told.at(radius))


def _lasting(spans: list[Span], *, least: float) -> list[Span]:
    """Leave out who leads for a moment only, between two others."""
    inner = [span for span in spans[1:-1] if span.far - span.near >= least]
    return [*spans[:1], *inner, *spans[1:][-1:]]


def _broad(spans: list[Span], *, least: float) -> list[Span]:
    """Leave out who leads over a hand's breadth at either end, while two are left to tell."""
    while len(spans) > 2 and spans[0].far - spans[0].near < least:
        spans = spans[1:]
    while len(spans) > 2 and spans[-1].far - spans[-1].near < least:
        spans = spans[:-1]
    return spans


class _Told:
    """Names each way in full where it first comes up."""

    def __init__(
        self,
        extension: Array,
        boom: Condensed,
        names: Sequence[str],
        units: str,
        *,
        carried: Callable[[float], Array],
        account: Callable[[int, float], Account | None],
    ) -> None:
        self.extension, self.boom = extension, boom
        self.carried, self.account = carried, account
        self.names, self.units = names, units
        self.named: set[int] = set()

    def name(self, way: int) -> str:
        if way in self.named:
            return self.names[way]
        self.named.add(way)
        return f"{self.names[way]} ({label(self.extension[way])})"

    def metres(self, radius: float) -> str:
        return show(radius, "length", self.units)

    def alone(self, spans: list[Span]) -> str:
        near, far = self.metres(spans[0].near), self.metres(spans[-1].far)
        return f"There is only one way, {self.name(0)}, and it carries a load from {near} to {far}."

    def close_in(self, spans: list[Span]) -> str:
        first, throughout = spans[0], len(spans) == 1
        where = f"from {self.metres(first.near)} to {self.metres(first.far)}"
        where = f"Everywhere, {where}," if throughout else f"Close in, {where},"
        if first.leader is None:
            return f"{where} nobody leads, for {self.tie(first)}."
        return f"{where} {self.name(first.leader)} carries most."

    def tie(self, span: Span) -> str:
        who = "all carry" if len(span.tied) == len(self.names) else "at least two ways carry"
        if span.limit is None:
            return f"{who} the same"
        same = show_rated(span.capacity[0], self.units)
        return f"{who} the same {same}; {what_sets(span.limit)}"

    def far_out(self, spans: list[Span]) -> str:
        last = spans[-1]
        if len(spans) == 1:
            return self.nobody_passes(last)
        where = f"Far out, from {self.metres(last.near)} to {self.metres(last.far)},"
        if last.leader is None:
            said = f"{where} nobody leads, for {self.tie(last)}"
        else:
            said = f"{where} {self.name(last.leader)} carries most"
        between = [self.from_where(span) for span in spans[1:-1]]
        between[:1] = [words.replace(" from ", " leads from ", 1) for words in between[:1]]
        return f"{said}; in between, {listed(between)}." if between else said + "."

    def from_where(self, span: Span) -> str:
        who = "nobody" if span.leader is None else self.names[span.leader]
        return f"{who} from {self.metres(span.near)}"

    def nobody_passes(self, span: Span) -> str:
        if span.leader is None:
            return "So it makes no difference which is taken, as far as the rated load goes."
        return "Nowhere does the lead pass to another, close in or far out."

    def at(self, radius: float) -> list[str]:
        """The third sentence: kilograms at one radius, and why."""
        carried = self.carried(radius)
        order = [int(way) for way in np.argsort(-carried, kind="stable") if carried[way] > 0.0]
        where = self.metres(radius)
        if not order:
            return [f"At {where} none of them carries anything."]
        best, least = order[0], order[-1]
        one, other = (self.account(way, radius) for way in (best, least))
        if one is None or other is None:
            return []
        if best == least:
            return [f"At {where} {self.only(best, one)}."]
        if other.capacity >= one.capacity * (1.0 - SAME):
            return [f"At {where} all that reach carry {self.level(one, other)}."]
        return [f"At {where} {self.pair((best, least), difference(one, other, radius=radius))}."]

    def only(self, way: int, one: Account) -> str:
        alone = "only " if len(self.names) > 1 else ""
        said = show_rated(one.capacity, self.units)
        return f"{alone}{self.name(way)} carries {said}; {what_sets(one.limit)}"

    def level(self, one: Account, other: Account) -> str:
        why = f"; {what_sets(one.limit)}" if one.limit == other.limit else ""
        return f"the same {show_rated(one.capacity, self.units)}{why}"

    def pair(self, ways: tuple[int, int], apart: Difference) -> str:
        best, least = (self.name(way) for way in ways)
        letters = self.names[ways[0]], self.names[ways[1]]
        kept = further_in(self.boom.layout.front[list(ways)])
        return tell_pair(apart, names=(best, least), letters=letters, kept=kept, units=self.units)
