"""EN 13000 and the guidance on wind that goes with it: a load with more wind area than the chart
has in it (1.2 m2 a tonne, shape coefficient in it) lowers the wind in which the chart holds to
v = v_chart sqrt(1.2 m2/t m/A_w).

Tolerance: the form is exact, a billionth for rounding.
Source: EN 13000, remembered. Status: from memory.
"""

from dataclasses import replace

import pytest

from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.external_loads import wind_pressure
from boomsim.rating.allowances import USUAL_ALLOWANCES
from boomsim.rating.pick.pick_checks import permitted_wind
from boomsim.rating.setup import set_up


def test_four_times_the_area_halves_the_wind_and_less_area_does_not_raise_it() -> None:
    assert permitted_wind(9.0, area=4 * 1.2e-3, area_in_chart=1.2e-3) == pytest.approx(4.5)
    assert permitted_wind(9.0, area=0.3e-3, area_in_chart=1.2e-3) == 9.0


def test_a_silo_of_5_t_and_24_square_metres_by_hand() -> None:
    """A_w = 24 m2 x 1.2 = 28.8 m2: v = 9 sqrt(1.2 x 5/28.8) = 9 sqrt(0.208333) = 4.1079 m/s."""
    found = permitted_wind(9.0, area=28.8 / 5000.0, area_in_chart=1.2e-3)
    assert found == pytest.approx(4.1079, abs=5e-5)


@pytest.mark.parametrize("area", [2e-3, 5.76e-3, 2e-2])
def test_the_wind_pushes_the_load_as_hard_as_the_allowance_of_the_rule_does(area: float) -> None:
    rule = set_up(load_machine("yard60")).rule
    assert rule.allowances == replace(USUAL_ALLOWANCES)
    speed, usual = USUAL_ALLOWANCES.wind_speed.value, USUAL_ALLOWANCES.load_area.value
    own = permitted_wind(speed, area=area, area_in_chart=usual)
    assert wind_pressure(own) * area == pytest.approx(wind_pressure(speed) * usual, rel=1e-9)
