"""A family's texts in the words of the trade that go with a system of units."""

from functools import lru_cache
from typing import TypeVar

from boomsim.papers.problems.family import AnyFamily
from boomsim.units import all_in_words

F = TypeVar("F", bound=AnyFamily)


@lru_cache(maxsize=512)
def _american(family: AnyFamily) -> AnyFamily:
    return all_in_words(family, "us")


def worded(family: F, system: str) -> F:
    """Say wording, steps and slips of a family as a system of units has it.

    Parameters
    ----------
    family : Family or ChoiceFamily

    Returns
    -------
    Family or ChoiceFamily
        The very same in metric units; always the same object for one family
    """
    return _american(family) if system == "us" else family  # type: ignore[return-value]
