"""ISO 4305 (from memory): tipping load at least 1.25 P + 0.1 F; ASME B30.5 (percentages read
second-hand): P at most 85 % of it on outriggers. 1/1.25 = 0.80 < 0.85, so the test load always
rates lower where stability governs, and the same where strength does.

Source: ISO 4305. Status: from memory.
"""

import numpy as np
import pytest
from making import set_up_by_hand

from boomsim.machine.machine_files import load_machine
from boomsim.rating.capacity import rate


@pytest.mark.parametrize(
    ("name", "out"), [("truck18", (0.0, 0.0, 0.0)), ("truck18", (1.0, 1.0, 1.0)),
                      ("yard60", (0.465, 0.465, 0.465, 0.465)), ("yard60", (0.0, 0.0, 0.93, 0.93))],
)  # fmt: skip
def test_the_test_load_rates_lower_in_every_stability_cell(
    name: str, out: tuple[float, ...]
) -> None:
    machine, radii = load_machine(name), np.arange(4.0, 30.0, 2.0)
    share = rate(set_up_by_hand(machine, rule="share"), extension=np.array([out]), radius=radii)
    test = rate(set_up_by_hand(machine, rule="test-load"), extension=np.array([out]), radius=radii)
    known = np.isfinite(share.capacity)
    tips = known & share.is_stability
    assert tips.any()
    # 0.80/0.85 at most, and 0.1 F less.
    assert np.all(test.capacity[tips] < 0.80 / 0.85 * share.capacity[tips] * (1 + 3e-6))
    # The same strength, searched twice to a millionth.
    both = known & ~test.is_stability
    assert test.capacity[both] == pytest.approx(share.capacity[both], rel=3e-6)
