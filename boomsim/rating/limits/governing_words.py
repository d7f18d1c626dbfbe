"""What sets a figure, in words and as a sign: the one place where both are kept.

A rated figure is the smallest of several, each after its margin. So these words say which of them
set it, never what would happen first: that is for :mod:`boomsim.rating.overload` to say.
"""

from boomsim.rating.limits.limit_kind import PERMISSIBLE_VALUE, STABILITY, STRENGTH, Limit

WHAT_SETS = {
    STABILITY: "stability sets this figure",
    STRENGTH: "strength sets this figure",
    PERMISSIBLE_VALUE: "a maker's permissible value sets this figure",
}
"""In a sentence, in a legend, in a footnote."""

SIGNS = {STABILITY: "", STRENGTH: "*", PERMISSIBLE_VALUE: "†"}
"""Beside a figure."""


def what_sets(limit: Limit) -> str:
    """What sets a figure that a limit governs, and which limit it is."""
    words = WHAT_SETS[limit.set_by]
    return words if limit.set_by == STABILITY else f"{words}: {limit.words}"


def sign(limit: Limit | None) -> str:
    """Sign beside a figure that a limit governs, or beside a blank."""
    return "" if limit is None else SIGNS[limit.set_by]


def signs_in_words() -> str:
    """Footnote that says what the signs beside figures mean."""
    return (
        f"{SIGNS[STRENGTH]}: {WHAT_SETS[STRENGTH]}; {SIGNS[PERMISSIBLE_VALUE]}: "
        f"{WHAT_SETS[PERMISSIBLE_VALUE]}; without a sign {WHAT_SETS[STABILITY]}."
    )
