"""The answer in three sentences that can be spoken: who leads close in, who far out, and why."""

from collections.abc import Sequence

import numpy as np

from boomsim.machine.naming import section_name
from boomsim.rating.charts.grid import row_step
from boomsim.rating.comparison.compare import Comparison
from boomsim.rating.comparison.envelope import SAME
from boomsim.rating.comparison.explain import Account, accounts, difference
from boomsim.rating.comparison.reasons import listed, reason
from boomsim.rating.comparison.spans import Span, spans_of
from boomsim.rating.comparison.sums import scale_of
from boomsim.rating.limits.telling import what_sets
from boomsim.rating.strategies import label
from boomsim.units import show, show_rated

NEARER = 1e-6
"""Less than this is rounding [m]."""


BRIEF = 0.25
"""A lead at an end of the reach over less than this share of a row is not worth a sentence [1]."""


def in_short(
    comparison: Comparison, *, names: Sequence[str], radius: float, units: str
) -> list[str]:
    """Answer in three sentences; in fewer where there is less to tell.

    Parameters
    ----------
    comparison : Comparison
    names : sequence of str
        A letter for each way
    radius : float
        Where the difference is explained [m]
    units : str
        "metric" or "us"

    Returns
    -------
    list of str
    """
    told = _Told(comparison, names, units)
    row = row_step(comparison.setup.machine, length=comparison.configurations.length)
    spans = _broad(spans_of(comparison.leads), least=BRIEF * row)
    if not spans:
        return ["None of them carries anything at any radius."]
    if len(names) == 1:
        return [told.alone(spans), *told.at(radius)]
    return [told.close_in(spans), told.far_out(spans), *told.at(radius)]


def _broad(spans: list[Span], *, least: float) -> list[Span]:
    """Leave out who leads over a hand's breadth at either end, while two are left to tell."""
    while len(spans) > 2 and spans[0].far - spans[0].near < least:
        spans = spans[1:]
    while len(spans) > 2 and spans[-1].far - spans[-1].near < least:
        spans = spans[:-1]
    return spans


class _Told:
    """Names each way in full where it first comes up."""

    def __init__(self, comparison: Comparison, names: Sequence[str], units: str) -> None:
        self.comparison, self.names, self.units = comparison, names, units
        self.named: set[int] = set()

    def name(self, way: int) -> str:
        if way in self.named:
            return self.names[way]
        self.named.add(way)
        return f"{self.names[way]} ({label(self.comparison.configurations.extension[way])})"

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
        return (
            f"{said}; in between lead{self.s(between)} {listed(between)}."
            if between
            else said + "."
        )

    def s(self, words: list[str]) -> str:
        return "s" if len(words) == 1 else ""

    def from_where(self, span: Span) -> str:
        who = "nobody" if span.leader is None else self.names[span.leader]
        return f"{who} from {self.metres(span.near)}"

    def nobody_passes(self, span: Span) -> str:
        if span.leader is None:
            return "So it makes no difference which is taken, as far as the rated load goes."
        return "Nowhere does the lead pass to another, close in or far out."

    def at(self, radius: float) -> list[str]:
        """The third sentence: kilograms at one radius, and why."""
        where = self.metres(radius)
        every = accounts(
            self.comparison.setup,
            extension=self.comparison.configurations.extension,
            radius=radius,
        )
        known = {k: one for k, one in enumerate(every) if one is not None}
        if not any(one.capacity > 0.0 for one in known.values()):
            return [f"At {where} none of them carries anything."]
        order = sorted(known, key=lambda k: -known[k].capacity)
        best, least = order[0], order[-1]
        scale = scale_of(known[best].capacity, self.units)
        most = scale.down(known[best].capacity)
        if len(order) == 1:
            alone = f"{self.name(best)} carries {scale.text(most)}; {what_sets(known[best].limit)}"
            return [f"At {where} {alone}."]
        if known[least].capacity >= known[best].capacity * (1.0 - SAME):
            return [self.level(where, order, known, scale.text(most))]
        less = scale.down(known[least].capacity)
        apart = difference(known[best], known[least], radius=radius)
        names = self.name(best), self.name(least)
        said = (
            f"At {where} {names[0]} carries {scale.text(most)} and {names[1]} {scale.text(less)}, "
            f"{scale.text(most - less)} less: "
        )
        letters = self.names[best], self.names[least]
        kept = self.further_in(best, least)
        return [said + reason(apart, letters, kept, total=most - less, scale=scale) + "."]

    def further_in(self, one: int, other: int) -> list[str]:
        """Sections that one way holds nearer to the heel pin than the other does."""
        front = self.comparison.rating.boom.layout.front
        nearer = np.flatnonzero(front[one] < front[other] - NEARER)
        return [section_name(int(number)) for number in nearer]

    def level(self, where: str, order: list[int], known: dict[int, Account], same: str) -> str:
        limits = {known[k].limit for k in order}
        why = f"; {what_sets(limits.pop())}" if len(limits) == 1 else ""
        return f"At {where} all that reach carry the same {same}{why}."
