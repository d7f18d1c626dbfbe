"""Which configuration and which radii a study looks at when none are named."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from boomsim.face import given_values as given

if TYPE_CHECKING:
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array
    from boomsim.rating.setup import Setup
    from boomsim.rating.strategies import Configurations


def extension(value: given.Extension | None, machine: Machine) -> Array:
    """Read a configuration; without one take the middle one of the demonstration.

    Returns
    -------
    ndarray, shape (moving sections,)
        [1]
    """
    import numpy as np

    from boomsim.rating.comparison.comparison_study import demonstration

    if value is not None:
        return given.extension(value, machine)
    shown = demonstration(machine.boom).extension
    return np.asarray(shown[len(shown) // 2])


def ways(
    value: given.Extension | Sequence[given.Extension] | None,
    setup: Setup,
    *,
    system: str | None,
) -> Configurations:
    """Read configurations that were written out; without them take those of the demonstration.

    Parameters
    ----------
    value : str, sequence of float, sequence of these, or None
    setup : Setup
    system : str, optional
        Boom system
    """
    from boomsim.rating.comparison.comparison_study import demonstration
    from boomsim.rating.strategies import configurations_of

    boom = setup.machine.boom
    if value is None:
        return demonstration(boom, system=system)
    written = given.extensions(value, setup.machine)
    return configurations_of(boom, extension=written, system=system)


def all_radii(setup: Setup, extension: Array, units: str) -> Array:
    """Every radius of a chart, metric or us, at which this configuration has a rated load."""
    import numpy as np

    from boomsim.mechanics.geometry import layout
    from boomsim.rating.capacity import rate
    from boomsim.rating.charts.rows_and_rounding import chart_radii
    from boomsim.rating.empty_hook.less_than_the_hook import blank_under_hook
    from boomsim.rating.longest_boom import refuse_too_long
    from boomsim.rating.nearest_radius import nearest_radius

    length = layout(setup.machine.boom, extension=extension).boom_length
    refuse_too_long(setup, length=length)
    radii = chart_radii(setup.machine, length=length, units=units)
    radii = radii[radii > nearest_radius(setup)]
    capacity = blank_under_hook(rate(setup, extension=extension, radius=radii)).capacity[0]
    reached = radii[np.nan_to_num(capacity) > 0.0]
    if not len(reached):
        raise ValueError(
            "Nothing may be lifted at any radius of this configuration as the crane is set up. "
            "Choose another configuration, counterweight or support."
        )
    return np.asarray(reached)


def picked(radii: Array, *shares: float) -> Array:
    """Radii at shares of the way from the nearest to the farthest."""
    import numpy as np

    return np.array([radii[round(share * (len(radii) - 1))] for share in shares])
