"""What bends a boom at a station: the load, its own weight, the rope along it, wind, the lug.

The moment is linear in the forces on the boom as it is bent, so each cause by itself gives its part
of it, and the parts add up. The state is the one that strength is judged by: with the allowances
and the partial factors of the rule.
"""

import numpy as np

from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.external_loads import gravity_in_base, gusts
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.lift_response import Response

Pair = tuple[float, float]
"""Along the base section and above it."""


def moment_by_cause(at: Response, station: int) -> dict[str, float]:
    """Bending moment at a station in the luffing plane, by cause.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell

    Returns
    -------
    dict of str to float
        They add up to the moment that strength is judged by; without what is not there [N m]
    """
    return _Bent(at, station).causes()


class _Bent:
    """One cell's boom as it is bent under the strained and factored lift."""

    def __init__(self, at: Response, station: int) -> None:
        self.at, self.state, self.machine = at, at.factored, at.boom.machine
        self.row = at.boom.bending[0, station]
        self.size = self.state.cos.shape[1]
        self.cos, self.sin = self.state.cos[0, :, 0], self.state.sin[0, :, 0]
        self.strains = at.setup.rule.strains(at.setup.disturbances)
        angle = float(self.state.angle[0, 0])
        self.luffed = float(np.cos(angle)), float(np.sin(angle))
        lean, across = self.strains.lean, self.strains.lean_across
        along, above, _ = gravity_in_base(*self.luffed, lean=lean, lean_across=across)
        self.gravity: Pair = (along, above)

    def causes(self) -> dict[str, float]:
        factors, change = self.at.setup.rule.strength, self.strains
        phi = hoisting_factor(change.hoist_speed, hoist_class=change.hoist_class)
        stations, head = self.at.boom.stations, self.machine.boom.head
        hook = self.turned(head.ahead, -head.below)
        down = self.gravity
        load = phi * factors.live * float(self.state.load[0, 0])
        parts = {
            "load": self.at_head(_times(load, down), arm=hook),
            "own weight": factors.dead
            * (
                self.spread(stations.mass_out[0, :, 0], down)
                + self.at_head(_times(head.mass, down), arm=hook)
            ),
            "hoist rope": self.rope(),
        }
        behind, _ = gusts(change)
        if behind:
            parts["wind"] = self.wind(behind, hook)
        if self.row[-1] or self.machine.cylinder.attach_below:
            parts["cylinder lug"] = self.lug()
        return {name: moment for name, moment in parts.items() if moment}

    def turned(self, ahead: float, above: float) -> Pair:
        """Place off the last section's front, in axes of the base section."""
        cos, sin = float(self.cos[-1]), float(self.sin[-1])
        return ahead * cos - above * sin, ahead * sin + above * cos

    def spread(self, carried: Array, force: Pair) -> float:
        """Moment of a force that each station carries a share of, at the stretched axis's arms."""
        across = carried * (force[1] * self.cos - force[0] * self.sin)
        stretch, strain = self.at.boom.stretch, self.state.strain[0, :, 0]
        mean = stretch.mean[0] @ carried
        mean *= strain * (force[1] - force[0] * self.sin[stretch.middle[0]])
        return float(self.row[: self.size] @ across + self.row[self.size + 1 : -1] @ mean)

    def at_head(self, force: Pair, *, arm: Pair) -> float:
        """Moment of a force that acts off the last section's front."""
        beyond = self.spread(self.at.boom.stations.beyond[0, :, 0], force)
        return beyond + float(self.row[self.size]) * (arm[0] * force[1] - arm[1] * force[0])

    def rope(self) -> float:
        """The lead line pulls the head towards the winch."""
        head, hoist = self.machine.boom.head, self.machine.hoist
        sheave, from_front = (
            self.turned(head.ahead, above) for above in (-head.below, head.rope_above)
        )
        place = (
            float(self.state.head_along[0, 0]) - sheave[0] + from_front[0],
            float(self.state.head_above[0, 0]) - sheave[1] + from_front[1],
        )
        out, up = hoist.winch_out - self.machine.heel_out, hoist.winch_up - self.machine.heel_up
        cos, sin = self.luffed
        way = out * cos + up * sin - place[0], up * cos - out * sin - place[1]
        pull = float(self.state.line_pull[0, 0]) / float(np.hypot(*way))
        return self.at_head(_times(pull, way), arm=from_front)

    def wind(self, pressure: float, hook: Pair) -> float:
        """Wind from behind on the boom, of which its slope lets a part through, and on the load."""
        cos, sin = self.luffed
        downwind = pressure * cos, -pressure * sin
        shown = self.at.boom.stations.area_up[0, :, 0] * self.machine.boom.wind_shape
        area = self.strains.load_area * float(self.state.load[0, 0])
        own = self.spread(shown, _times(sin**2, downwind))
        return own + self.at_head(_times(area, downwind), arm=hook)

    def lug(self) -> float:
        """What the luffing cylinder presses along the boom, off its axis and along its bend."""
        along = float(self.state.lug_along[0, 0])
        own = slice(0, PER_SECTION)
        pressed = self.at.boom.stations.in_overlap[0, own, 0] * self.sin[own] * along
        turned = float(self.row[-1]) * float(self.state.lug_moment[0, 0])
        return turned - float(self.row[own] @ pressed)


def _times(factor: float, force: Pair) -> Pair:
    return factor * force[0], factor * force[1]
