"""Pipeline Rules of Thumb Handbook, rigging (read): a tackle of N parts and sheaves of efficiency E
gains E(1 - E^N)/(1 - E). Wire-rope handbooks (from memory): lead-line factor K^S (K - 1)/(K^N - 1)
for N parts and S sheaves, K the friction of a sheave.

Source: Pipeline Rules of Thumb Handbook. Status: read.
"""

import pytest

from boomsim.mechanics.external_loads import tackle_advantage


def test_four_parts_with_sheaves_of_0_917_gain_3_236() -> None:
    # The book prints 3.25, from a table of one more sheave's rounding: 0.5 %.
    made = tackle_advantage(4, sheave_efficiency=0.917)
    assert made == pytest.approx(3.236, abs=5e-4)
    assert made == pytest.approx(3.25, rel=5e-3)


def test_without_friction_n_parts_gain_n() -> None:
    assert [tackle_advantage(n, sheave_efficiency=1.0) for n in (1, 4, 12)] == [1.0, 4.0, 12.0]


LEAD_LINE = (1.04, 0.5302, 0.3603, 0.2755, 0.2246, 0.1908, 0.1666, 0.1485)


@pytest.mark.parametrize(("parts", "factor"), list(enumerate(LEAD_LINE, start=1)))
def test_lead_line_factors_for_k_1_04_and_as_many_sheaves_as_parts(
    parts: int, factor: float
) -> None:
    # Half a unit of the fourth decimal. Source: Wire-rope handbooks. Status: from memory.
    pull_over_load = 1.0 / tackle_advantage(parts, sheave_efficiency=1.0 / 1.04)
    assert pull_over_load == pytest.approx(factor, abs=6e-5)


def test_lead_line_factor_for_k_1_09_and_four_parts() -> None:
    # Half a unit of the fourth decimal. Source: Wire-rope handbooks. Status: from memory.
    assert 1.0 / tackle_advantage(4, sheave_efficiency=1.0 / 1.09) == pytest.approx(
        0.3087, abs=6e-5
    )
