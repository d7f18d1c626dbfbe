"""A pick judged check by check: within, not within, or not looked at.

The radius is measured with the hook empty. As the load comes on the boom bends and the radius
grows: the chart is read for the grown one, at the next larger row, of the column for this very way
out. Chart figures are those of :mod:`boomsim.rating.charts.chart_reading`; floats and ground those
of :mod:`boomsim.rating.around.float_loads`.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.around.float_loads import GroundLoads, ground_loads
from boomsim.rating.charts.load_chart import stated_chart
from boomsim.rating.charts.misreadings import Misreading
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.parts_reeved import falls_at_radius, hanging_mass
from boomsim.rating.path.path_marks import loaded_radius
from boomsim.rating.pick.pick_asked import Asked, in_sector, refuse, slews
from boomsim.rating.pick.pick_checks import (
    BEYOND,
    UNKNOWN,
    WITHIN,
    Check,
    Found,
    checks_of,
    read_own_column,
)
from boomsim.rating.pick.pick_mistakes import mistakes
from boomsim.rating.pick.same_length_ways import legal_ways
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_disturbances
from boomsim.rating.strategies import configurations_of


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Pick:
    """One pick and what each check says.

    Attributes
    ----------
    setup : Setup
        Of the sector whose chart is read
    found : Found
        What the checks are made of
    checks : tuple of Check
        In the order in which they are made
    mistakes : tuple of Misreading
        What a wrong measurement or a wrong reading would have given
    tips_at : float
        Gross load at which the crane would tip at this boom angle, over this one, with the wind and
        the lean that were measured; NaN where the boom finds no equilibrium [1]
    """

    setup: Setup
    asked: Asked
    found: Found
    checks: tuple[Check, ...]
    mistakes: tuple[Misreading, ...]
    tips_at: float

    @property
    def state(self) -> str:
        """`BEYOND` if any check is, else `UNKNOWN` if any is, else `WITHIN`."""
        states = {check.state for check in self.checks}
        return BEYOND if BEYOND in states else UNKNOWN if UNKNOWN in states else WITHIN

    def of_state(self, state: str) -> tuple[Check, ...]:
        """Checks with a state, in their order."""
        return tuple(check for check in self.checks if check.state == state)


def pick(setup: Setup, *, extension: Array, asked: Asked, units: str = "metric") -> Pick:
    """Judge a pick.

    Parameters
    ----------
    setup : Setup
        Calm: the chart's; its sector counts where the pick gives neither swing nor sector
    extension : ndarray, shape (moving sections,)
        [1]
    units : str
        "metric" or "us": in which the chart is printed

    Raises
    ------
    ValueError
        If a figure is none, or the boom cannot be where it was measured.
    """
    refuse(asked)
    setup = in_sector(setup, asked)
    boom = condense(setup.machine, extension=np.atleast_2d(extension))
    refuse_too_long(setup, length=boom.layout.boom_length)
    angle, length = _angle(setup, boom, asked.radius), boom.layout.boom_length
    gross = asked.load + float(hanging_mass(setup, length=length, angle=angle)[0, 0]) + asked.jib
    radius = loaded_radius(setup, boom=boom, load=np.array([[gross]]), angle=np.array([[angle]]))
    own = configurations_of(setup.machine.boom, extension=boom.layout.extension)
    chart = stated_chart(setup, configurations=own, units=units)
    reading = read_own_column(chart, radius=float(radius[0, 0]), asked=asked, units=units)
    at = respond(setup, boom=boom, load=np.array([[gross]]), angle=np.array([[angle]]))
    found = Found(
        setup=setup,
        asked=asked,
        boom=boom,
        legal=legal_ways(setup.machine.boom, extension=boom.layout.extension[0]),
        angle=angle,
        radius=float(radius[0, 0]),
        gross=gross,
        chart=chart,
        reading=reading,
        at=at,
        ground=_ground(at, setup, asked),
    )
    return Pick(
        setup=setup,
        asked=asked,
        found=found,
        checks=checks_of(found),
        mistakes=mistakes(found, units=units),
        tips_at=_tips_at(found),
    )


def _angle(setup: Setup, boom: Condensed, radius: float) -> float:
    """Boom angle at which the empty hook hangs at the measured radius [rad]."""
    falls = falls_at_radius(setup, length=boom.layout.boom_length, radius=np.array([[radius]]))
    at = respond(
        setup,
        boom=boom,
        load=setup.machine.hook_block + setup.machine.slings + falls,
        radius=np.array([[radius]]),
    )
    if not (at.state.converged[0, 0] and at.in_range[0, 0]):
        limits, length = setup.machine.boom, float(boom.layout.boom_length[0])
        raise ValueError(
            f"--radius: a boom of {length:.2f} m cannot hang its hook at {radius:.2f} m between "
            f"{np.degrees(limits.least_angle):.0f} and {np.degrees(limits.greatest_angle):.0f} "
            "degrees. Give another radius or another extension."
        )
    return float(at.state.angle[0, 0])


def _ground(at: Response, setup: Setup, asked: Asked) -> GroundLoads | None:
    if not at.state.converged[0, 0]:
        return None
    return ground_loads(at, slew=slews(setup, asked), mat=asked.mat)


def _tips_at(found: Found) -> float:
    """Work the balance out with everything in it that was measured."""
    asked = found.asked
    windy = with_disturbances(
        found.setup,
        wind_speed=asked.wind or 0.0,
        load_area=asked.load_area or 0.0,
        lean=asked.level or 0.0,
    )
    at = respond(
        replace(windy, slew=slews(found.setup, asked)),
        boom=found.boom,
        load=np.array([[found.gross]]),
        angle=np.array([[found.angle]]),
    )
    return float(at.balance.least[0, 0]) / found.gross
