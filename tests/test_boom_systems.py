"""Boom systems: what every row of their table must keep, and what the words of the trade say.

Status: closed forms; what a system means is common practice, no source.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boomsim.machine.boom_systems import BOOM_SYSTEMS, fractions_with

COUPLED = [system for system in BOOM_SYSTEMS.values() if system.path is not None]
STROKES = st.lists(st.floats(0.5, 15.0), min_size=1, max_size=6)
# Fractions are written to twelve decimals, of strokes that add up to less than 100 m.
ROUNDING = 1e-9


@pytest.mark.parametrize("system", COUPLED, ids=lambda system: system.name)
@given(stroke=STROKES, share=st.floats(0.0, 1.0))
def test_coupled_sections_are_out_by_what_was_asked_in_all(system, stroke, share):
    out = share * sum(stroke)
    fractions = system.path(stroke, out)
    assert all(0.0 <= fraction <= 1.0 + ROUNDING for fraction in fractions)
    together = sum(f * s for f, s in zip(fractions, stroke, strict=True))
    assert together == pytest.approx(out, abs=ROUNDING)


@pytest.mark.parametrize("system", COUPLED, ids=lambda system: system.name)
@given(stroke=STROKES, first=st.floats(0.0, 1.0), second=st.floats(0.0, 1.0))
def test_no_coupled_section_goes_in_while_the_boom_goes_out(system, stroke, first, second):
    near, far = (system.path(stroke, one * sum(stroke)) for one in sorted((first, second)))
    assert all(a <= b + ROUNDING for a, b in zip(near, far, strict=True))


@pytest.mark.parametrize("system", COUPLED, ids=lambda system: system.name)
@given(stroke=STROKES, fraction=st.floats(0.0, 1.0), data=st.data())
def test_a_section_moved_by_hand_comes_to_where_it_was_moved(system, stroke, fraction, data):
    section = data.draw(st.integers(1, len(stroke)))
    found = fractions_with(system.path, stroke, section=section, fraction=fraction)
    # Nine decimals are kept, as in a scene.
    assert found[section - 1] == pytest.approx(fraction, abs=1e-9)


@pytest.mark.parametrize(
    ("fraction", "others"), [(0.0, (1.0, 0.0, 0.0)), (0.5, (1.0, 0.5, 0.0)), (1.0, (1.0, 1.0, 0.0))]
)
def test_the_second_of_a_sequence_moves_with_the_first_out_and_the_third_in(fraction, others):
    path = BOOM_SYSTEMS["sequenced"].path
    assert fractions_with(path, (8.0, 6.0, 4.0), section=2, fraction=fraction) == others


def test_only_pinned_sections_lock():
    assert [name for name, system in BOOM_SYSTEMS.items() if system.locks] == ["pinned"]
