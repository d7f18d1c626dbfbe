"""Line pull: what the winch may pull at its rope."""

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import PERMISSIBLE, PERMISSIBLE_VALUE, Case, Kind, Ultimate


def _utilisation(case: Case) -> Array:
    # Without equilibrium there is no line pull either: the angle brings its NaN.
    return case.service.line_pull / case.machine.hoist.line_pull + 0.0 * case.service.angle


LINE_PULL = Kind(
    name="line pull",
    words="the line pull",
    short="hoist line pull",
    code="h",
    utilisation=_utilisation,
    set_by=PERMISSIBLE_VALUE,
    passed=PERMISSIBLE,
    ultimate=Ultimate(times=3.55, words="the hoist rope parts"),
)
