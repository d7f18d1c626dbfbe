"""Where an overload study ends: how far the model reaches, and where two ends come together."""

from dataclasses import replace

import numpy as np
import pytest
from making import invented_crane

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Disturbances, Machine
from boomsim.rating.charts.load_chart import stated_chart
from boomsim.rating.lift_response import Response
from boomsim.rating.load_search import Held, no_margin
from boomsim.rating.overload.overload_map import meeting_radii, overload_map
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.overload.tip_over import net_moment
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of

OUT = np.array([1.0, 1.0, 1.0])


def hung(result: Overload, load: float) -> Response:
    rated, angle = np.array([[result.rated]]), np.array([[result.angle]])
    kept = Held(
        no_margin(result.setup), boom=result.boom, rated=rated, held=angle, hold=result.hold
    )
    return kept.hung(np.array([[load]]))


def bendier() -> Machine:
    """A crane of a stuff four fifths as stiff as steel."""
    crane = invented_crane()
    sections = tuple(
        replace(s, material=replace(s.material, modulus=0.8 * 210e9)) for s in crane.boom.sections
    )
    return replace(crane, boom=replace(crane.boom, sections=sections))


@pytest.mark.parametrize(("radius", "valid"), [(22.0, True), (8.0, False)])
def test_a_study_is_valid_if_the_model_is_up_to_its_first_end(radius: float, valid: bool) -> None:
    result = overload(set_up(bendier()), extension=OUT, radius=radius)
    assert result.first is not None
    ends = [end.load for end in (result.failure, result.tipping) if end]
    reached = [bool(hung(result, load).is_valid[0, 0]) for load in (min(ends), max(ends))]
    # The later end is beyond the model's range in both.
    assert reached == [valid, False]
    assert result.is_valid is valid


@pytest.mark.parametrize("radius", [22.0, 8.0])
def test_a_study_shows_both_ends(radius: float) -> None:
    result = overload(set_up(invented_crane()), extension=OUT, radius=radius)
    assert result.failure is not None
    assert result.tipping is not None
    assert result.load[0] == 0.0
    assert result.load[-1] > max(result.failure.load, result.tipping.load)


@pytest.mark.parametrize("met", [6.5, 9.0, 17.3])
def test_ratios_that_grow_exponentially_meet_where_the_exponent_is_nought(met: float) -> None:
    setup = set_up(invented_crane())
    radii = np.array([4.0, 6.0, 8.0, 12.0, 18.0])
    ways = configurations_of(setup.machine.boom, extension=OUT[None])
    made = overload_map(stated_chart(setup, configurations=ways, radii=radii))
    shown = made.chart.radii[:, None]
    straight = replace(made, tipping=np.ones_like(shown), failure=np.exp(0.3 * (shown - met)))
    # Straight on the logarithm, so exact.
    assert meeting_radii(straight, 0) == pytest.approx([met])


@pytest.mark.slow
def test_a_crane_that_is_pulled_sideways_falls_as_a_rigid_body_too() -> None:
    # Free body by hand: the height of every mass times the sine of the lean, and what the balance
    # holds at rest times its cosine; the swayed boom is as high as it is.
    setup = set_up(invented_crane(), disturbances=Disturbances(side_pull=0.02))
    result = overload(setup, extension=OUT, radius=22.0)
    fallen = result.fall
    assert fallen is not None
    at, lean = hung(result, float(fallen.load[0])), float(fallen.lean[30])
    placed, load = at.placed, float(fallen.load[0])
    heights = np.concatenate([placed.up[:, 0, 0], placed.z])
    high = float(placed.mass @ heights) + load * float(placed.head_up[0, 0])
    turn = int(np.argmin(np.abs(at.balance.slew - fallen.slew)))
    rest = float(net_moment(at)[turn, fallen.line, 0, 0])
    by_hand = rest * np.cos(lean) - GRAVITY * high * np.sin(lean)
    # The same sums in another order: rounding, and the load good to 1e-7 of itself.
    assert fallen.moment[0, 30] == pytest.approx(by_hand, rel=1e-6)
