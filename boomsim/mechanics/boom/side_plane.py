"""Forces across the luffing plane, on the boom as it is bent in that plane.

Derived in docs/theory.md, section 3.
"""

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.mechanics.boom.load_cases import AtStations, Lifts
from boomsim.mechanics.boom.luffing_plane import LuffingPlane, cos_sin
from boomsim.mechanics.geometry import Array


class Sideways:
    """One sweep sideways. Remembers the last one.

    The luffing cylinder neither holds nor pushes sideways: its lug moves by so little at the
    clamped base that its push, turned with it, is worth less than 1 % of the heel's moment.
    """

    def __init__(self, lifts: Lifts, plane: LuffingPlane, kept: AtStations) -> None:
        boom, change, wind = lifts.boom, lifts.disturbances, lifts.wind_across
        stations, head = boom.stations, boom.machine.boom.head
        self.plane, self.across, left = plane, kept.across_side, plane.luffing.left
        self.pull = (plane.live + head.mass * lifts.dead) * left
        self.pull = self.pull + change.side_pull * GRAVITY * plane.live
        self.pull = self.pull + wind * change.load_area * lifts.load
        spread = stations.mass_out * (lifts.dead * left)
        self.spread = spread + stations.area_side * (wind * boom.machine.boom.wind_shape)
        self.tangent = np.sum(kept.force * kept.direction, axis=0)
        self.direction = np.empty((2, *kept.rotation_side.shape))
        self.spare = np.empty_like(kept.rotation_side)
        self.head_torsion = head.below * self.pull

    def turned(self, rotation: Array, out: Array) -> None:
        """New rotations for old ones, shape (configurations, K, cells) [rad]."""
        boom, ahead = self.plane.boom, self.plane.boom.machine.boom.head.ahead
        self.head_left = (boom.path @ rotation)[:, 0] + ahead * rotation[:, -1]
        rope = -self.plane.pull * self.head_left / np.maximum(self.plane.last.head.sheave[0], 1e-3)
        end = self.pull + rope
        (cos, sin), carried = self.direction, self.spare
        cos_sin(rotation, out=self.direction, square=self.spare)
        np.multiply(boom.stations.beyond, end[:, None], out=carried)
        carried += self.spread
        np.multiply(carried, cos, out=self.across)
        sin *= self.tangent
        self.across -= sin
        self.head_moment = ahead * (end - self.plane.last.end.force[0] * rotation[:, -1])
        side = boom.side
        np.matmul(side.rotation, self.across, out=out)
        np.multiply(side.rotation_head, self.head_moment[:, None], out=carried)
        out += carried
