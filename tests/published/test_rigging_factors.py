"""Pipeline Rules of Thumb Handbook, rigging (read): a tackle of N parts and sheaves of efficiency E
gains E(1 - E^N)/(1 - E). Wire-rope handbooks (from memory): lead-line factor K^S (K - 1)/(K^N - 1)
for N parts and S sheaves, K the friction of a sheave.

Source: Pipeline Rules of Thumb Handbook. Status: read.
"""

import pytest

from boomsim.mechanics.rope_tackle import tackle_advantage


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


BUSHED = (
    0.96, 1.87, 2.75, 3.59, 4.39, 5.16, 5.90, 6.60, 7.27, 7.91,
    8.52, 9.11, 9.68, 10.20, 10.70, 11.20, 11.70, 12.20, 12.60, 13.00,
)  # fmt: skip
ROLLING = (
    0.98, 1.94, 2.88, 3.81, 4.71, 5.60, 6.47, 7.32, 8.16, 8.98,
    9.79, 10.60, 11.40, 12.10, 12.90, 13.60, 14.30, 15.00, 15.70, 16.40,
)  # fmt: skip
"""Load over line pull of one to twenty parts: sheaves on bronze bushings, on rolling bearings."""


@pytest.mark.parametrize(("friction", "printed"), [(1.045, BUSHED), (1.02, ROLLING)])
def test_ratios_of_load_to_line_pull_for_up_to_twenty_parts(
    friction: float, printed: tuple[float, ...]
) -> None:
    """The friction of a sheave, 1.045 and 1.02, is that of the first row, 1/0.96 and 1/0.98.

    Tolerance: three figures are printed, some of them cut off and not rounded: a unit of the last.
    Source: Table for sheave blocks in rigging handbooks. Status: second-hand.
    """
    for parts, ratio in enumerate(printed, start=1):
        made = tackle_advantage(parts, sheave_efficiency=1.0 / friction)
        assert made == pytest.approx(ratio, abs=0.1 if ratio > 10.0 else 0.01), parts
