"""Every legal configuration, rated at the rows of a chart."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate
from boomsim.rating.charts.chart_configurations import every_configuration
from boomsim.rating.charts.rows_and_rounding import chart_radii, checked_radii, reach
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import Configurations


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Cells:
    """Rated cells, shapes (configurations, rows) unless given.

    Attributes
    ----------
    radii : ndarray, shape (rows,)
        Growing [m]
    capacity : ndarray
        Gross, not rounded; NaN out of reach or of the angle range [kg]
    governing : ndarray of int
        Index into `limits`; -1 where blank
    tipping_load, angle : ndarray
        At the rated load; NaN where blank [kg], [rad]
    within_range : ndarray of bool
        False where the tip deflects beyond what the model is meant for
    hanging : ndarray
        Hook block, slings and falls of the rope at that boom angle; NaN out of reach [kg]
    empty_hook : EmptyHook
        How far down and out each configuration stands without a load
    """

    setup: Setup
    configurations: Configurations
    radii: Array
    capacity: Array
    governing: np.ndarray
    limits: tuple[Limit, ...]
    tipping_load: Array
    angle: Array
    within_range: np.ndarray
    hanging: Array
    empty_hook: EmptyHook


def rate_cells(setup: Setup, *, configurations: Configurations, radii: Array) -> Cells:
    """Rate configurations at radii.

    Parameters
    ----------
    radii : array_like, shape (rows,)
        [m]

    Raises
    ------
    ValueError
        If a radius is no number above zero.
    """
    rows = checked_radii(radii)
    rating = rate(setup, extension=configurations.extension, radius=rows)
    return Cells(
        setup=setup,
        configurations=configurations,
        radii=rows,
        capacity=rating.capacity,
        governing=rating.governing,
        limits=rating.limits,
        tipping_load=rating.tipping_load,
        angle=rating.angle,
        within_range=rating.valid,
        hanging=hanging_mass(setup, length=configurations.length, angle=rating.angle),
        empty_hook=empty_hook(setup, extension=configurations.extension),
    )


def chart_cells(
    setup: Setup,
    *,
    configurations: Configurations | None = None,
    radii: Array | None = None,
    units: str = "metric",
) -> Cells:
    """Rate what charts are made of.

    Parameters
    ----------
    configurations : Configurations, optional
        Default: all that belong in the machine's chart book
    radii : array_like, optional
        Default: :func:`chart_radii` [m]

    Raises
    ------
    ValueError
        If nothing can be reached; says what can.
    """
    if configurations is None:
        configurations = every_configuration(setup.machine.boom)
    if radii is None:
        radii = chart_radii(setup.machine, length=configurations.length, units=units)
    cells = rate_cells(setup, configurations=configurations, radii=radii)
    if not np.any(cells.governing >= 0):
        near, far = reach(setup.machine, length=configurations.length)
        asked = " or ".join(f"{r:g} m" for r in sorted({cells.radii[0], cells.radii[-1]}))
        raise ValueError(
            f"No boom length of this chart reaches a radius of {asked}. Give radii from "
            f"{max(near.min(), 0.0):.1f} m to {far.max():.1f} m."
        )
    return cells
