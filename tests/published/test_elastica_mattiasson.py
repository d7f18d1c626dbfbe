"""Bisshopp & Drucker, Q. Appl. Math. 3 (1945); Mattiasson, Int. J. Num. Meth. Eng. 17 (1981): the
elastica of a cantilever under a tip load that keeps its direction.

From memory, reproduced by elliptic integrals. The model bends its axis without stretching it, so it
is compared with the elastica itself, far outside the range of small deflections.

Source: Bisshopp & Drucker (1945), Mattiasson (1981). Status: from memory.
"""

import pytest
from making import bare_boom, even_bar, loaded

LENGTH, STIFFNESS = 10.0, 10e6

# P L2/EI, droop of the tip over the length; the theory of small deflections gives P L2/3EI.
ELASTICA = ((0.2, 0.06636), (0.5, 0.16214), (1.0, 0.30172))


@pytest.mark.parametrize(("force", "droop"), ELASTICA)
def test_a_level_boom_droops_like_the_elastica(force: float, droop: float) -> None:
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS, pieces=8))
    state = loaded(boom, across=force * STIFFNESS / LENGTH**2, along=0.0)
    # The last figure, and 5e-5 for joints of 0.1 mm.
    assert -state.head_above[0, 0] / LENGTH == pytest.approx(droop, abs=2e-5)
    assert droop < 0.999 * force / 3


@pytest.mark.parametrize(("force", "droop"), ELASTICA)
def test_one_section_alone_comes_within_half_a_percent(force: float, droop: float) -> None:
    # Three stations carry the whole bar; in a real boom each section has nine. Half a percent
    # at the largest load.
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS, pieces=1))
    state = loaded(boom, across=force * STIFFNESS / LENGTH**2, along=0.0)
    assert -state.head_above[0, 0] / LENGTH == pytest.approx(droop, rel=5e-3)
