"""How long work tells what is done: the work counts, whoever started it may show it."""

from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

Told = Callable[[str, int, int], None]
"""Takes what is being done, and that so many of so many are."""

_T = TypeVar("_T")


def counted(items: Sequence[_T], *, what: str, told: Told | None) -> Iterator[_T]:
    """Tell after each item that it is done.

    Parameters
    ----------
    what : str
        Such as "setting papers"
    told : callable, optional

    Yields
    ------
    object
        The items
    """
    for done, item in enumerate(items):
        if told:
            told(what, done, len(items))
        yield item
    if told and items:
        told(what, len(items), len(items))
