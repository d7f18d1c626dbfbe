"""Our own dice: the same seed gives the same throws on every platform and Python version.

The standard library promises this only for some methods, so the throws are read off SHA-256
digests of the seed and a counter, and ranges are cut by rejection, which is exactly fair.
"""

import hashlib
from collections.abc import Sequence
from typing import TypeVar

_T = TypeVar("_T")

_BYTES = 8
_RANGE = 1 << (8 * _BYTES)


class Chance:
    """A stream of throws that belongs to one path, such as ``(seed, "03", 1)``.

    Parameters
    ----------
    *path : str or int
        Whatever names the stream; other paths give independent streams

    Examples
    --------
    >>> Chance(2025, "03").integer(100) == Chance(2025, "03").integer(100)
    True
    """

    __slots__ = ("_count", "_seed", "path")

    def __init__(self, *path: str | int) -> None:
        self.path = path
        self._seed = "/".join(map(str, path)).encode()
        self._count = 0

    def child(self, *more: str | int) -> "Chance":
        """Open an independent stream below this one."""
        return Chance(*self.path, *more)

    def integer(self, below: int) -> int:
        """Throw a number from 0 up to but not including `below`, each equally likely [1].

        Parameters
        ----------
        below : int
            [1]
        """
        if not 0 < below <= _RANGE:
            raise ValueError(f"Cannot throw a number below {below}: give a whole number from 1.")
        fair = _RANGE - _RANGE % below
        while True:
            thrown = self._next()
            if thrown < fair:
                return thrown % below

    def pick(self, items: Sequence[_T]) -> _T:
        """Pick one item, each equally likely."""
        return items[self.integer(len(items))]

    def some(self, items: Sequence[_T], *, count: int) -> tuple[_T, ...]:
        """Pick `count` different items, in random order.

        Parameters
        ----------
        count : int
            [1]
        """
        left = list(items)
        return tuple(left.pop(self.integer(len(left))) for _ in range(min(count, len(left))))

    def shuffled(self, items: Sequence[_T]) -> tuple[_T, ...]:
        """Put all items in random order."""
        return self.some(items, count=len(items))

    def _next(self) -> int:
        """Read eight fresh bytes as a number."""
        counter = self._count.to_bytes(8, "big")
        self._count += 1
        digest = hashlib.sha256(self._seed + b"#" + counter).digest()
        return int.from_bytes(digest[:_BYTES], "big")
