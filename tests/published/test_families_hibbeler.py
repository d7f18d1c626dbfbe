"""Hibbeler, Engineering Mechanics: Statics, review problem R4-1 (inputs read second-hand).

The problem family on the load that the foot of a boom bears, posed with the book's numbers, gives
the book's answer; posing it also asks the call path, which must agree.

Tolerances: half a unit of the last figure.

Source: Hibbeler, Statics. Status: second-hand.
"""

import pytest

from boomsim.papers.family_registry import family_named
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem_making import problem_with

FOOT = family_named("statics_load_at_foot")
assert isinstance(FOOT, Family)
# Book: boom of 800 lb with its centre of gravity at 16 ft, 30 ft long at 30 degrees; the load hangs
# 2 ft beyond its end; 20 kip ft at the foot.
BOOK = {
    "W": "800 lbf", "x": "16 ft", "L": "30 ft", "theta": "30 deg", "e": "2 ft", "M_0": "20 kip*ft",
}  # fmt: skip
POSED = problem_with(FOOT, givens=BOOK, system="us")


def test_the_load_is_the_printed_319_pounds() -> None:
    # Book: 319 lb, three figures, so the figures must be the same.
    assert POSED.shown("Q") == "319\u00a0lbf"


def test_the_steps_are_those_done_by_hand() -> None:
    # 800 x 16 cos 30 = 11085 lb ft; 30 cos 30 + 2 = 27.98 ft; (20000 - 11085)/27.98 = 318.6 lb.
    pound = 4.4482216152605
    assert POSED.results["M"].value / (pound * 0.3048) == pytest.approx(11085, abs=0.5)
    assert POSED.results["r"].value / 0.3048 == pytest.approx(27.98, abs=0.005)
    assert POSED.results["Q"].value / pound == pytest.approx(318.6, abs=0.05)
