"""One sweep of the equilibrium: from rotations of the axis to forces across it and back.

Pairs, on axis 0, are along and above the base section, or cosine and sine.
"""

from itertools import pairwise

import numpy as np

from boomsim.mechanics.geometry import Array, direction_at_radius
from boomsim.mechanics.lifts import AtStations, Lifts
from boomsim.mechanics.loads import GRAVITY, hoisting_factor, tackle_advantage
from boomsim.mechanics.luffing import Luffing
from boomsim.mechanics.stations import PER_SECTION
from boomsim.mechanics.stretch import Stretching

HARDLY = 0.05
"""Pad force over the section's own weight below which its play is not all taken up: a jump from one
side to the other would leave some loads without a solution [1]."""

STRETCHED = 3
"""First sweeps in which the stretch follows the rotations; then it is kept. It is a ten-thousandth
of the boom; kept after one sweep it leaves 3e-5 of a use, after two 2e-6, after three 2e-7."""


class LuffingPlane:
    """Forces in the luffing plane on a boom bent so far. Remembers the last sweep.

    Parameters
    ----------
    lifts : Lifts
        What is asked
    kept : AtStations
        Room for what is found at stations
    """

    def __init__(self, lifts: Lifts, kept: AtStations) -> None:
        self.boom, self.lifts, self.kept = lifts.boom, lifts, kept
        machine, change = self.boom.machine, lifts.disturbances
        dynamic = hoisting_factor(change.hoist_speed, hoist_class=change.hoist_class)
        efficiency = machine.hoist.sheave_efficiency
        advantage = tackle_advantage(lifts.parts, sheave_efficiency=efficiency)
        self.live = lifts.load * (lifts.live * dynamic)
        self.pull = self.live * (GRAVITY / advantage)
        self.hung = self.live + machine.boom.head.mass * lifts.dead
        self.half_cylinder = lifts.dead * machine.cylinder.mass / 2
        self.luffing = Luffing(machine, hanging=self.half_cylinder, change=change)
        self.carried, self.wind = _carried(lifts), lifts.wind_from_behind
        self.stretching = Stretching(self.boom.stretch, carried=self.carried)
        self.to_stretch = STRETCHED
        self.ends = np.empty((2, len(lifts.load), self.carried.shape[2], lifts.load.shape[1]))
        self.arms_of = _arms(lifts)
        self.spare = np.empty_like(kept.rotation)
        self._take_operators()
        if not lifts.hold_radius:
            self._luff(np.cos(lifts.held), np.sin(lifts.held))

    def _take_operators(self) -> None:
        """Put together what the forces across press on the pads, and how they turn sections."""
        boom, sections = self.boom, self.boom.machine.boom.sections
        size = self.spare.shape[1]
        self.has_play = any(section.clearance for section in sections)
        self.acting, self.across = self.kept.acting, self.kept.acting[:, :size]
        moving, arms = len(sections) - 1, len(sections) + 1
        ends = np.cumsum([size + 1, arms, 1, moving, moving])
        self.of_arms, self.of_lug, self.of_mouths, self.of_wholes = (
            slice(*pair) for pair in pairwise(ends)
        )
        known = size + 1 + arms
        pads = boom.bending[:, size:, :known]
        self.pads = pads if self.has_play else pads[:, :1]
        self.all_pads = np.concatenate([pads, boom.stretch.turns[:, :, :known]], axis=1)
        self.chord = boom.stations.in_overlap[:, :PER_SECTION]
        # One over the force below which a pad hardly presses.
        hardly = [HARDLY * GRAVITY * mass for mass in boom.machine.boom.section_masses[1:]]
        self.firm = 1.0 / np.array(hardly)[:, None]

    def start(self) -> Array:
        """Rotations to start from: of first order, enlarged by thrust, all play taken up [rad]."""
        boom, direction = self.boom, self.kept.direction
        direction[0], direction[1] = 1.0, 0.0
        self._place_head()
        self._pull_head()
        self._push_about()
        causes = np.concatenate(
            [self.ends[1, :, :2], self.head_moment[:, None], self.lug_moment[:, None]], axis=1
        )
        pull = (boom.thrust * self.ends[0, :, :2]).sum(axis=1)
        bent = (boom.straight @ causes) / (1.0 + pull.clip(-0.5, 0.5))[:, None]
        play = boom.turning[:, :, self.of_wholes] @ boom.play
        return np.asarray(bent + play)

    def _push_about(self) -> None:
        """Force of the luffing cylinder, nearly: only what hangs on the head has sunk."""
        plane, arm = self.boom.up, self.boom.machine.cylinder.attach_along
        hung = (plane.pads[:, :1] @ self.carried @ self.ends[1])[:, 0]
        sunk = self.front[1] * self.end[0] / arm
        self._push(hung + sunk + plane.pads_head[:, 0] * self.head_moment, feedback=0.0)

    def turned(self, rotation: Array, out: Array) -> None:
        """New rotations for old ones, shape (configurations, K, cells) [rad]."""
        (cos, sin), (along, above) = self.kept.direction, self.kept.force
        cos_sin(rotation, out=self.kept.direction, square=self.spare)
        self._place_head()
        self._pull_head()
        if self.to_stretch:
            self._stretch()
        np.matmul(self.carried, self.ends, out=self.kept.force)
        # The new rotations are not there yet: their room serves for a product.
        np.multiply(above, cos, out=out)
        np.multiply(along, sin, out=self.spare)
        np.subtract(out, self.spare, out=self.across)
        self._hold()
        np.matmul(self.boom.turning, self.acting, out=out)

    def _place_head(self) -> None:
        """Head sheave and lead-line sheave on the bent axis."""
        tip = self.kept.direction[:, :, -1]
        self.front = (self.boom.path @ self.kept.direction)[:, :, 0]
        self.arms = (self.arms_of @ tip.reshape(2, -1)).reshape(2, *tip.shape)
        self._stand_head()

    def _stand_head(self) -> None:
        """Put the head where the stretched axis ends; the boom angle, where the radius is kept."""
        self.head, self.rope_from = self.front + self.stretching.moved + self.arms
        if self.lifts.hold_radius:
            reach = self.lifts.held - self.boom.machine.heel_out
            self._luff(*direction_at_radius(reach=reach, along=self.head[0], above=self.head[1]))

    def _luff(self, cos: Array, sin: Array) -> None:
        self.luffed = self.luffing.to(cos, sin)
        self.ends[:, :, 0] = self.luffed.gravity
        self.hanging = self.half_cylinder * self.luffed.gravity

    def _pull_head(self) -> None:
        """What each station carries a share of: gravity, the head's force, wind; its moment."""
        load = self.hung * self.luffed.gravity
        if self.wind:
            cos, sin = self.luffed.unit
            downwind = self.wind * np.array([cos, -sin])
            load = load + downwind * (self.lifts.disturbances.load_area * self.lifts.load)
            self.ends[:, :, 2] = downwind * sin**2
        rope = self.luffed.winch - self.rope_from
        rope *= self.pull / np.sqrt(rope[0] * rope[0] + rope[1] * rope[1])
        self.end = load + rope
        self.ends[:, :, 1] = self.end
        self.head_moment = _moment(self.arms[0], load) + _moment(self.arms[1], rope)

    def _hold(self) -> None:
        """Let the luffing cylinder hold the boom, and each section's play be taken up.

        The cylinder presses the bent base section between heel pin and lug along its chord, so
        that a little of its push along the boom is missing from the force across that it holds.
        """
        self.acting[:, self.across.shape[1]] = self.head_moment
        pads = self._pressed()
        bent = self.chord * self.kept.direction[1, :, :PER_SECTION]
        self._push(pads[:, 0], feedback=(self.pads[:, :1, :PER_SECTION] @ bent)[:, 0])
        bent *= self.lug_along[:, None]
        self.across[:, :PER_SECTION] -= bent
        self.acting[:, self.of_lug] = self.lug_moment[:, None]
        if self.has_play:
            taken = self.boom.play * self._play_taken(pads)
            np.add(self.slid, taken, out=self.acting[:, self.of_wholes])

    def _stretch(self) -> None:
        """Stretch the sections, and let the head stand where they then end."""
        self._push_about()
        stretching = self.stretching
        stretching.strain_by(self.ends, sin=self.kept.direction[1], lug_along=self.lug_along)
        stretching.lengthen_arms(out=self.acting[:, self.of_arms])
        self._stand_head()
        self._pull_head()

    def _pressed(self) -> Array:
        """Pad forces; with a new stretch also what the mouths do that it moves on the sections."""
        known = self.acting[:, : self.of_arms.stop]
        if not self.to_stretch:
            return np.asarray(self.pads @ known)
        self.to_stretch -= 1
        sections = len(self.boom.machine.boom.sections)
        pressed, outwards = self.all_pads @ known, self.stretching.outwards()
        np.multiply(pressed[:, 1:sections], outwards, out=self.acting[:, self.of_mouths])
        self.slid = pressed[:, sections:] * outwards
        self.acting[:, self.of_wholes] = self.slid
        return np.asarray(pressed[:, :sections])

    def _push(self, across: Array, *, feedback: Array | float) -> None:
        """Force of the luffing cylinder along the boom at its lug.

        The cylinder holds the boom's moment about the heel pin and the half of its own weight w
        that hangs on its upper pin. With the lug at (x, y), the rod (u, v) and its push over its
        length s, the boom gets s u + w_u along it, and s (x v - y u) = x across - own moment.

        Parameters
        ----------
        across : ndarray
            Force across the axis, over the lug, that would hold the boom [N]
        feedback : ndarray
            By how much `across` becomes less for each newton along the boom [1]
        """
        arm, rod = self.boom.machine.cylinder.attach_along, self.luffed.rod[0]
        held = (across - feedback * self.hanging[0]) * arm - self.luffed.own
        self.thrust = held / (self.luffed.leverage + feedback * (arm * rod))
        self.lug_along = self.thrust * rod + self.hanging[0]
        self.lug_moment = self.lug_along * self.boom.machine.cylinder.attach_below

    @property
    def angle(self) -> Array:
        """Boom angle [rad]."""
        if self.lifts.hold_radius:
            cos, sin = self.luffed.unit
            return np.asarray(np.arctan2(sin, cos))
        return self.lifts.held

    @property
    def cylinder(self) -> Array:
        """Push of the luffing cylinder along its axis [N]."""
        return np.asarray(self.thrust * np.hypot(*self.luffed.rod))

    @property
    def lug_above(self) -> Array:
        """What the boom gets from the cylinder, above it [N]."""
        return np.asarray(self.thrust * self.luffed.rod[1] + self.hanging[1])

    def _play_taken(self, front: Array) -> Array:
        """How much of each moving section's play is taken up, 1 as in a drooping boom to -1.

        What lies on both its pads from above has no play to take up.
        """
        front = front[:, 1:]
        rear = front + self.across[:, PER_SECTION::PER_SECTION]
        return np.asarray((_side(front * self.firm) + _side(rear * self.firm)) / 2.0)


def _carried(lifts: Lifts) -> Array:
    """What each station carries of gravity [kg], the head's force [1] and wind [m2]."""
    stations, boom = lifts.boom.stations, lifts.boom.machine.boom
    carried = [stations.mass_out * lifts.dead, stations.beyond]
    if lifts.wind_from_behind:
        carried.append(stations.area_up * boom.wind_shape)
    return np.concatenate(carried, axis=2)


def _arms(lifts: Lifts) -> Array:
    """Factors on the last front's cosine and sine: arms of the load and of the lead line [m]."""
    head = lifts.boom.machine.boom.head
    return np.array([
        [head.ahead, head.below],
        [-head.below, head.ahead],
        [head.ahead, -head.rope_above],
        [head.rope_above, head.ahead],
    ])  # fmt: skip


def _side(force: Array) -> Array:
    """Which side a pad presses on, -1 to 1; a pad that hardly presses (under 1) is in between."""
    return force.clip(-1.0, 1.0, out=force)


def _moment(arm: Array, force: Array) -> Array:
    return np.asarray(arm[0] * force[1] - arm[1] * force[0])


def cos_sin(rotation: Array, *, out: Array, square: Array) -> None:
    """Cosine and sine by their series, into given arrays.

    Under 1e-7 off to 0.2 rad and 2e-5 at 0.5, and many times as fast as the library's where a
    thousand cells are bent at once.

    Parameters
    ----------
    rotation : ndarray
        [rad]
    out : ndarray, shape (2, ...)
        Cosine and sine [1]
    square : ndarray
        Room to work in
    """
    cos, sin = out
    np.multiply(rotation, rotation, out=square)
    np.multiply(square, 1.0 / 24.0, out=cos)
    cos -= 0.5
    cos *= square
    cos += 1.0
    np.multiply(square, 1.0 / 120.0, out=sin)
    sin -= 1.0 / 6.0
    sin *= square
    sin += 1.0
    sin *= rotation
