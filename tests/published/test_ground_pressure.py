"""Published outrigger guidance (read): a round pad of 24 in under 186000 lb presses 411 psi.

Source: Published outrigger guidance. Status: read.
"""

import numpy as np
import pytest

from boomsim.mechanics.stability.support_reactions import ground_pressure

POUND_FORCE, INCH = 4.4482216, 0.0254


def test_a_round_pad_of_24_inches_under_186000_pounds_presses_411_psi() -> None:
    area = np.pi / 4 * (24 * INCH) ** 2
    pressure = ground_pressure(np.array(186000 * POUND_FORCE), area=float(area))
    # 186000/452.39 = 411.15, printed without decimals.
    assert float(pressure) / (POUND_FORCE / INCH**2) == pytest.approx(411.0, abs=0.5)
