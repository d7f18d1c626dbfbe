"""Sentences about any limit, as words and as a sign beside a figure.

The words of one limit stand in its own file, in its `Kind`.

A rated figure is the smallest of several, each after its margin. So what sets a figure is never
what would happen first: that is for :mod:`boomsim.rating.overload` to say.
"""

from boomsim.rating.limits.limit_kind import (
    GIVES_WAY,
    PERMISSIBLE,
    PERMISSIBLE_VALUE,
    STABILITY,
    STRENGTH,
    TIPS,
    Limit,
)

SETTERS = {
    STABILITY: "stability",
    STRENGTH: "strength",
    PERMISSIBLE_VALUE: "a maker's permissible value",
}
"""What can set a figure, as a subject or an object."""

WHAT_SETS = {what: f"{words} sets this figure" for what, words in SETTERS.items()}
"""In a sentence, in a legend, in a footnote."""

SIGNS = {STABILITY: "", STRENGTH: "*", PERMISSIBLE_VALUE: "†"}
"""Beside a figure."""

WHEN_PASSED = {
    GIVES_WAY: "something gives way",
    TIPS: "the crane tips",
    PERMISSIBLE: "a permissible value is passed",
}
"""What happens past a limit, without saying which one."""


def what_sets(limit: Limit) -> str:
    """What sets a figure that a limit governs, and which limit it is."""
    words = WHAT_SETS[limit.set_by]
    return words if limit.set_by == STABILITY else f"{words}: {limit.words}"


def what_happens(limit: Limit) -> str:
    """Name a limit by what happens past it, as the end of a sentence."""
    return limit.kind.happens or limit.words


def sign(limit: Limit | None) -> str:
    """Sign beside a figure that a limit governs, or beside a blank."""
    return "" if limit is None else SIGNS[limit.set_by]


def signs_in_words() -> str:
    """Footnote that says what the signs beside figures mean."""
    return (
        f"{SIGNS[STRENGTH]}: {WHAT_SETS[STRENGTH]}; {SIGNS[PERMISSIBLE_VALUE]}: "
        f"{WHAT_SETS[PERMISSIBLE_VALUE]}; without a sign {WHAT_SETS[STABILITY]}."
    )
