"""The dice: fair, and the same on every platform."""

import hashlib
from collections import Counter

import pytest

from boomsim.papers.numbers.dice import Chance


def test_throws_are_what_the_digest_says() -> None:
    # Worked here from the definition: SHA-256 of "2025/03", "#", and the counter in eight bytes.
    for counter in range(3):
        digest = hashlib.sha256(b"2025/03#" + counter.to_bytes(8, "big")).digest()
        wanted = int.from_bytes(digest[:8], "big") % 1000
        dice = Chance(2025, "03")
        thrown = [dice.integer(1000) for _ in range(counter + 1)][-1]
        assert thrown == wanted


def test_other_paths_give_other_throws() -> None:
    def some(*path: str | int) -> list[int]:
        dice = Chance(*path)
        return [dice.integer(1000) for _ in range(5)]

    assert some("a", 1) == some("a", 1)
    assert len({tuple(some("a", number)) for number in range(50)}) == 50
    assert Chance("a").child(1).integer(10**6) == Chance("a", 1).integer(10**6)


def test_every_number_is_thrown_about_equally_often() -> None:
    dice = Chance("fair")
    counts = Counter(dice.integer(6) for _ in range(6000))
    # Chi-squared with 5 degrees of freedom exceeds 20.5 once in a thousand fair runs.
    assert sum((counts[face] - 1000) ** 2 / 1000 for face in range(6)) < 20.5


def test_shuffling_keeps_every_item_and_reaches_every_order() -> None:
    orders = {Chance("order", number).shuffled("abc") for number in range(100)}
    assert len(orders) == 6
    assert all(sorted(order) == ["a", "b", "c"] for order in orders)


def test_a_range_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="from 1"):
        Chance("x").integer(0)
