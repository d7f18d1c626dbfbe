"""ISO 4302, cranes, wind load assessment: q = 0.613 v2 in pascals. Classes of wind from memory.

Source: ISO 4302. Status: from memory.
"""

import pytest

from boomsim.mechanics.external_loads import wind_pressure


@pytest.mark.parametrize(
    ("speed", "exact", "nominal"),
    [(14.0, 120.15, 125.0), (20.0, 245.20, 250.0), (28.5, 497.91, 500.0)],
)
def test_pressure_is_0_613_v2(speed: float, exact: float, nominal: float) -> None:
    assert wind_pressure(speed) == pytest.approx(exact, abs=0.005)
    # The standard rounds its classes up, by up to 4 %.
    assert 1.0 <= nominal / wind_pressure(speed) < 1.042


def test_still_air_presses_on_nothing() -> None:
    assert wind_pressure(0.0) == 0.0
