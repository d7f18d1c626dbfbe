"""Roark's Formulas for Stress and Strain, table of elastic stability, stepped straight bar: a
cantilever column whose base part is twice as stiff as its tip part, P at the tip.

K1 = Pcr L2/(pi2 EI_tip); from memory, reproduced from tan(k1 l1) tan(k2 l2) = k2/k1, the base
part being l1 long with k1 = sqrt(P/EI_base). An even column of the tip's stiffness has K1 = 1/4,
one of the base's 1/2.

Source: Roark's Formulas for Stress and Strain. Status: from memory.
"""

from math import pi, sqrt, tan

import numpy as np
import pytest
from making import bare_boom, chain, pulled_sideways

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.critical_load import critical_ratio
from boomsim.mechanics.boom.internal_forces import section_forces

TIP, LENGTH = 20e6, 18.0

# Length of the stiff part over the whole, K1.
STEPPED = ((1 / 3, 0.3553), (1 / 2, 0.4189), (2 / 3, 0.4713))


def stepped(share: float) -> Condensed:
    lengths = [share * LENGTH / 3] * 3 + [(1 - share) * LENGTH / 3] * 3
    return bare_boom(chain(lengths, stiffness=[2 * TIP] * 3 + [TIP] * 3))


def critical(factor: float) -> float:
    return factor * pi**2 * TIP / LENGTH**2


@pytest.mark.parametrize(("share", "factor"), STEPPED)
def test_the_figures_from_memory_satisfy_the_formula(share: float, factor: float) -> None:
    k1, k2 = sqrt(critical(factor) / (2 * TIP)), sqrt(critical(factor) / TIP)
    product = tan(k1 * share * LENGTH) * tan(k2 * (1 - share) * LENGTH)
    assert product == pytest.approx(k2 / k1, rel=1e-3)  # K1 has four figures


@pytest.mark.parametrize(("share", "factor"), STEPPED)
def test_sway_grows_without_bound_at_the_critical_load(share: float, factor: float) -> None:
    # Southwell's plot, as for Greenhill's column: higher modes bend the line a little: 0.2 %.
    boom, part = stepped(share), np.array([0.90, 0.96])
    pull = 1e-4 * critical(factor)
    yielding = [
        1.0 / pulled_sideways(boom, across=pull, along=p * critical(factor)).head_left[0, 0]
        for p in part
    ]
    slope = (yielding[1] - yielding[0]) / (part[1] - part[0])
    assert part[1] - yielding[1] / slope == pytest.approx(1.0, abs=2e-3)


@pytest.mark.parametrize(("share", "factor"), STEPPED)
def test_the_critical_ratio_is_the_share_of_the_stepped_columns_load(
    share: float, factor: float
) -> None:
    boom = stepped(share)
    state = pulled_sideways(boom, across=1e-4 * critical(factor), along=0.5 * critical(factor))
    ratio = critical_ratio(boom, state=state, forces=section_forces(boom, state=state))
    # K1 has four figures, six pieces of bar leave some 1e-4: a thousandth.
    assert ratio[0, 0] == pytest.approx(0.5, rel=1e-3)


@pytest.mark.parametrize(("share", "factor"), STEPPED)
def test_no_state_is_returned_beyond_the_critical_load(share: float, factor: float) -> None:
    # 10 % above: within a few percent an elastica still finds a far bent equilibrium.
    state = pulled_sideways(
        stepped(share), across=1e-4 * critical(factor), along=1.10 * critical(factor)
    )
    assert not state.converged.any()
