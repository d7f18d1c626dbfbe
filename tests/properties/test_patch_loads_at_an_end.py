"""Crushing of a web near an unstiffened end, EN 1993-1-5:2006, 6.1(4) type (c), 6.4 and 6.5.

What the formulas must do whatever the numbers; `tests/published/` has worked ones.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boomsim.machine.shapes.box import box
from boomsim.mechanics.sections.patch_loading import Crushing, crushing_resistance, web_crushing
from boomsim.mechanics.sections.section_properties import properties


def crushed(*, bearing: float, from_end: float | None, height: float = 0.5) -> Crushing:
    """A slender web that is pressed through a flange so thin that it spreads little."""
    return web_crushing(
        height, web=0.006, flange=0.004, flange_width=0.06, bearing=bearing, yield_stress=460e6,
        factor=1.1, from_end=from_end,
    )  # fmt: skip


@given(st.floats(0.05, 0.2), st.floats(0.0, 0.04))
def test_at_an_end_it_counts_how_far_in_the_bearing_ends(bearing: float, moved: float) -> None:
    # k_F and l_e hold s_s + c only, and eq. (6.12), the least here, nothing else of the two.
    whole = crushed(bearing=bearing + moved, from_end=0.0)
    other = crushed(bearing=bearing, from_end=moved)
    # One formula on both sides: rounding only.
    assert other.slenderness == pytest.approx(whole.slenderness)
    assert other.resistance == pytest.approx(whole.resistance)


@given(st.floats(0.05, 0.3), st.floats(0.0, 0.3), st.floats(0.01, 0.3))
def test_farther_from_the_end_it_never_crushes_earlier(
    bearing: float, near: float, more: float
) -> None:
    there = crushed(bearing=bearing, from_end=near)
    beyond = crushed(bearing=bearing, from_end=near + more)
    assert beyond.resistance >= there.resistance * (1.0 - 1e-9)


@given(st.floats(0.2, 0.5), st.floats(0.5, 3.0))
def test_far_from_the_end_the_critical_force_is_that_of_a_web_without_one(
    bearing: float, away: float
) -> None:
    # k_F = 2 + 6 (s_s + c)/h_w stops at the 6 of type (a); F_cr goes as l_y/lambda_F^2.
    end, inside = (crushed(bearing=bearing, from_end=c) for c in (away, None))
    critical = [made.loaded_length / made.slenderness**2 for made in (end, inside)]
    # One formula on both sides: rounding only.
    assert critical[0] == pytest.approx(critical[1])
    assert end.resistance <= inside.resistance * (1.0 + 1e-9)


def test_a_pad_presses_on_the_top_or_the_bottom_and_nowhere_else() -> None:
    shape = properties(box(0.3, width=0.3, top=0.008, bottom=0.008, web=0.006))
    with pytest.raises(ValueError, match='not on "left"'):
        crushing_resistance(shape, side="left", bearing=0.2, yield_stress=460e6, factor=1.1)
