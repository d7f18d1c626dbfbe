"""What is rated again: places on charts of cranes, and the states that they are judged by.

The equilibrium is the package's, for it is held against finite elements elsewhere; the rule's
figures and what acts beside a lift are written here once more.
"""

from dataclasses import dataclass, replace
from functools import cache
from math import radians

import numpy as np
from reeving_by_hand import parts_by_hand

from boomsim.machine.model import CALM, Disturbances, Machine, Rigging, Support, TurningMass
from boomsim.mechanics.boom.boom_state import Factors, State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import Forces, section_forces
from boomsim.mechanics.geometry import layout

GRAVITY = 9.80665


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruling:
    """A rule's figures: tipping T >= load P/share, or load_factor P + boom_share F."""

    test_load: bool
    dead: float
    live: float
    resistance: float
    buckling: float


RULINGS = {
    "share": Ruling(test_load=False, dead=1.0, live=1.0, resistance=1.5, buckling=1.92),
    "test-load": Ruling(test_load=True, dead=1.0, live=1.0, resistance=1.5, buckling=1.92),
    "limit-states": Ruling(test_load=True, dead=1.22, live=1.34, resistance=1.1, buckling=1.1),
}
SHARES = {"outriggers": 0.85, "tyres": 0.75}
"""Of the tipping load, what the rule of shares lets hang [1]."""

LEAST_FACTOR = {1: 1.05, 2: 1.10, 3: 1.15, 4: 1.20}
FACTOR_BY_SPEED = {1: 0.17, 2: 0.34, 3: 0.51, 4: 0.68}
"""Hoisting factor of EN 13001-2: least value [1], and what a metre a second adds [s/m]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cells:
    """Places of one crane that is set up in one way: an extension and a radius for each."""

    title: str
    machine: Machine
    rigging: Rigging
    rule: str
    allowances: str
    sector: float | str
    given: Disturbances
    extension: np.ndarray
    radius: np.ndarray

    @property
    def ruling(self) -> Ruling:
        return RULINGS[self.rule]

    @property
    def support(self) -> Support:
        return _named(self.machine.supports, self.rigging.support)

    @property
    def counterweight(self) -> TurningMass:
        return _named(self.machine.counterweights, self.rigging.counterweight)

    @property
    def parts(self) -> np.ndarray:
        """Parts of line of each place, counted out by hand, shape (places,) [1]."""
        most = self.rigging.parts or self.machine.hoist.parts[-1]
        lengths = layout(self.machine.boom, extension=self.extension).boom_length
        return np.array([_parts(self.machine, float(one), most) for one in lengths])

    @property
    def borne(self) -> Disturbances:
        """What strength bears: of what is given and what the rule allows for, the larger."""
        return self.given if self.allowances == "none" else with_allowances(self.given)


@cache
def _parts(machine: Machine, length: float, most: int) -> int:
    return parts_by_hand(machine, length=length, most=most)


def _named(choices, name):
    return next((one for one in choices if one.name == name), choices[0])


def with_allowances(given: Disturbances) -> Disturbances:
    """Side pull 2 %, 0.3 m/s of HC1, 9 m/s from behind on 1.2 m2 a tonne, half a degree twice."""
    hoisting = {"hoist_speed": 0.3, "hoist_class": 1}
    if lifted(given) > 1.05 + 0.17 * 0.3:
        hoisting = {"hoist_speed": given.hoist_speed, "hoist_class": given.hoist_class}
    across = given.wind_across
    return Disturbances(
        side_pull=max(0.02, given.side_pull),
        wind_speed=max(9.0, 0.0 if across else given.wind_speed),
        wind_beside=given.wind_speed if across else 0.0,
        load_area=max(1.2e-3, given.load_area),
        lean=max(radians(0.5), given.lean),
        lean_across=max(radians(0.5), abs(given.lean_across)),
        **hoisting,
    )


def lifted(change: Disturbances) -> float:
    """Hoisting factor: nothing for a load that only hangs."""
    if change.hoist_speed == 0.0:
        return 1.0
    least, slope = LEAST_FACTOR[change.hoist_class], FACTOR_BY_SPEED[change.hoist_class]
    return least + slope * change.hoist_speed


def pressures(change: Disturbances) -> tuple[float, float]:
    """Wind from behind and across, 0.613 v2 [Pa]."""
    speed = change.wind_speed
    behind, across = (0.0, speed) if change.wind_across else (speed, change.wind_beside)
    return 0.613 * behind**2, 0.613 * across**2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bent:
    """All cells under one load each: as given, with allowances, and with partial factors too."""

    cells: Cells
    boom: Condensed
    load: np.ndarray
    given: State
    borne: State
    factored: State
    forces: Forces
    factored_forces: Forces


def bend(cells: Cells, *, load: np.ndarray) -> Bent:
    """Bend every boom; the boom angle is that of the calm lift at the cell's radius."""
    boom = condense(cells.machine, extension=cells.extension)
    hung, radius = load[:, None], cells.radius[:, None]
    calm = solve_state(boom, load=hung, parts=cells.parts, radius=radius)

    def under(change: Disturbances, factors: Factors) -> State:
        if change == CALM and factors == Factors():
            return calm
        return solve_state(
            boom,
            load=hung,
            parts=cells.parts,
            angle=calm.angle,
            disturbances=change,
            factors=factors,
        )

    ruling = cells.ruling
    given, borne = under(cells.given, Factors()), under(cells.borne, Factors())
    factored = under(cells.borne, Factors(dead=ruling.dead, live=ruling.live))
    return Bent(
        cells=cells,
        boom=boom,
        load=load,
        given=given,
        borne=borne,
        factored=factored,
        forces=section_forces(boom, state=borne),
        factored_forces=section_forces(boom, state=factored),
    )


def some_of(cells: Cells, rows: np.ndarray) -> Cells:
    """Some of the places."""
    return replace(cells, extension=cells.extension[rows], radius=cells.radius[rows])
