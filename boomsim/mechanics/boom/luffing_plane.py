"""One sweep of the equilibrium: from rotations of the axis to forces across it and back.

Pairs, on axis 0, are along and above the base section, or cosine and sine.

Derived in docs/theory.md, section 3.
"""

from itertools import pairwise
from typing import NamedTuple

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.mechanics.boom.axial_stretch import Stretching
from boomsim.mechanics.boom.load_cases import AtStations, Lifts
from boomsim.mechanics.boom.luffing_forces import Luffed, Luffing
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array, direction_at_radius
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.mechanics.rope_tackle import tackle_advantages

HARDLY = 0.05
"""Pad force over the section's own weight below which its play is not all taken up: a jump from one
side to the other would leave some loads without a solution [1]."""

STRETCHED = 3
"""First sweeps in which the stretch follows the rotations; then it is kept. It is a ten-thousandth
of the boom; kept after one sweep it leaves 3e-5 of a utilisation, after two 2e-6, after three
2e-7."""


class Head(NamedTuple):
    """The boom's head, along and above the base section; pairs of shape (2, c, cells).

    Attributes
    ----------
    front : ndarray
        Of the last section, where the bent axis would put it without its stretch [m]
    sheave, rope_from : ndarray
        Head sheave and lead-line sheave, from the heel pin [m]
    arms : ndarray, shape (2, 2, c, cells)
        From the last front: of the load, and of the lead line [m]
    """

    front: Array
    sheave: Array
    rope_from: Array
    arms: Array


class End(NamedTuple):
    """What acts at the head.

    Attributes
    ----------
    force : ndarray, shape (2, c, cells)
        Load, rope and wind, along and above the base section [N]
    moment : ndarray, shape (c, cells)
        About the last front [N m]
    spread : ndarray, shape (2, c, 2 or 3, cells)
        What stations carry shares of: free fall [m/s2], the head's force [N], wind [Pa]
    """

    force: Array
    moment: Array
    spread: Array


class Cylinder(NamedTuple):
    """What the luffing cylinder does to the boom; each of shape (c, cells).

    Attributes
    ----------
    thrust : ndarray
        Push over the length of cylinder and rod [N/m]
    along : ndarray
        What the boom gets along it [N]
    moment : ndarray
        Of that, about the axis at the lug [N m]
    """

    thrust: Array
    along: Array
    moment: Array


class Sweep(NamedTuple):
    """One sweep: the crane at its boom angle, the head there, its force, the cylinder."""

    luffed: Luffed
    head: Head
    end: End
    cylinder: Cylinder


class LuffingPlane:
    """Forces in the luffing plane on a boom bent so far.

    A sweep is a row of steps, each of which gives a value: head, boom angle, force at the head,
    cylinder. What is large, at stations, is written into `kept`. The last sweep stays as `last`.

    Parameters
    ----------
    lifts : Lifts
        What is asked
    kept : AtStations
        Room for what is found at stations
    """

    last: Sweep

    def __init__(self, lifts: Lifts, kept: AtStations) -> None:
        boom = self.boom = lifts.boom
        self.lifts, self.kept = lifts, kept
        machine, change = boom.machine, lifts.disturbances
        dynamic = hoisting_factor(change.hoist_speed, hoist_class=change.hoist_class)
        efficiency = machine.hoist.sheave_efficiency
        advantage = tackle_advantages(lifts.parts, sheave_efficiency=efficiency)[:, None]
        self.live = lifts.load * (lifts.live * dynamic)
        self.pull = self.live * (GRAVITY / advantage)
        self.hung = self.live + machine.boom.head.mass * lifts.dead
        self.half_cylinder = lifts.dead * machine.cylinder.mass / 2
        self.luffing = Luffing(machine, hanging=self.half_cylinder, change=change)
        self.carried, self.wind = _carried(lifts), lifts.wind_from_behind
        self.stretching = Stretching(boom.stretch, carried=self.carried)
        self.to_stretch = STRETCHED
        self.arms_of = _arms(lifts)
        self.spare = np.empty_like(kept.rotation)
        held = None if lifts.hold_radius else (np.cos(lifts.held), np.sin(lifts.held))
        self.reach = lifts.held - machine.heel_out
        self.kept_angle = self.luffing.to(*held) if held else None
        self._take_operators()

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
        head = self._head()
        luffed = self._luffed(head)
        end = self._end(head, luffed)
        lug = self._pushed_about(head, luffed, end)
        causes = np.concatenate(
            [end.spread[1, :, :2], end.moment[:, None], lug.moment[:, None]], axis=1
        )
        pull = (boom.thrust * end.spread[0, :, :2]).sum(axis=1)
        bent = (boom.straight @ causes) / (1.0 + pull.clip(-0.5, 0.5))[:, None]
        play = boom.turning[:, :, self.of_wholes] @ boom.play
        return np.asarray(bent + play)

    def turned(self, rotation: Array, out: Array) -> None:
        """New rotations for old ones, shape (configurations, K, cells) [rad]."""
        (cos, sin), (along, above) = self.kept.direction, self.kept.force
        cos_sin(rotation, out=self.kept.direction, square=self.spare)
        head = self._head()
        luffed = self._luffed(head)
        end = self._end(head, luffed)
        if self.to_stretch:
            head, luffed, end = self._stretched(head, luffed, end)
        np.matmul(self.carried, end.spread, out=self.kept.force)
        # The new rotations are not there yet: their room serves for a product.
        np.multiply(above, cos, out=out)
        np.multiply(along, sin, out=self.spare)
        np.subtract(out, self.spare, out=self.across)
        cylinder = self._held(luffed, end)
        np.matmul(self.boom.turning, self.acting, out=out)
        self.last = Sweep(luffed, head, end, cylinder)

    def _head(self) -> Head:
        """Head sheave and lead-line sheave on the bent axis."""
        tip = self.kept.direction[:, :, -1]
        front = (self.boom.path @ self.kept.direction)[:, :, 0]
        arms = (self.arms_of @ tip.reshape(2, -1)).reshape(2, *tip.shape)
        return self._standing(front, arms)

    def _standing(self, front: Array, arms: Array) -> Head:
        """Put the head where the axis ends as it is stretched by now."""
        sheave, rope_from = front + self.stretching.moved + arms
        return Head(front, sheave, rope_from, arms)

    def _luffed(self, head: Head) -> Luffed:
        """The boom angle: kept, or the one that keeps the radius of this head."""
        if self.kept_angle is not None:
            return self.kept_angle
        along, above = head.sheave
        return self.luffing.to(*direction_at_radius(reach=self.reach, along=along, above=above))

    def _end(self, head: Head, luffed: Luffed) -> End:
        """What each station carries a share of: gravity, the head's force, wind; its moment."""
        load = self.hung * luffed.gravity
        wind: tuple[Array, ...] = ()
        if self.wind:
            cos, sin = luffed.unit
            downwind = self.wind * np.array([cos, -sin])
            load = load + downwind * (self.lifts.disturbances.load_area * self.lifts.load)
            wind = (downwind * sin**2,)
        rope = luffed.winch - head.rope_from
        rope *= self.pull / np.sqrt(rope[0] * rope[0] + rope[1] * rope[1])
        force = load + rope
        moment = _moment(head.arms[0], load) + _moment(head.arms[1], rope)
        return End(force, moment, np.stack([luffed.gravity, force, *wind], axis=2))

    def _stretched(self, head: Head, luffed: Luffed, end: End) -> tuple[Head, Luffed, End]:
        """Stretch the sections, and let the head stand where they then end."""
        lug, stretching = self._pushed_about(head, luffed, end), self.stretching
        stretching.strain_by(end.spread, sin=self.kept.direction[1], lug_along=lug.along)
        stretching.lengthen_arms(out=self.acting[:, self.of_arms])
        head = self._standing(head.front, head.arms)
        luffed = self._luffed(head)
        return head, luffed, self._end(head, luffed)

    def _held(self, luffed: Luffed, end: End) -> Cylinder:
        """Let the luffing cylinder hold the boom, and each section's play be taken up.

        The cylinder presses the bent base section between heel pin and lug along its chord, so
        that a little of its push along the boom is missing from the force across that it holds.
        """
        self.acting[:, self.across.shape[1]] = end.moment
        pads = self._pressed()
        bent = self.chord * self.kept.direction[1, :, :PER_SECTION]
        feedback = (self.pads[:, :1, :PER_SECTION] @ bent)[:, 0]
        cylinder = self._cylinder(luffed, across=pads[:, 0], feedback=feedback)
        bent *= cylinder.along[:, None]
        self.across[:, :PER_SECTION] -= bent
        self.acting[:, self.of_lug] = cylinder.moment[:, None]
        if self.has_play:
            taken = self.boom.play * self._play_taken(pads)
            np.add(self.slid, taken, out=self.acting[:, self.of_wholes])
        return cylinder

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

    def _pushed_about(self, head: Head, luffed: Luffed, end: End) -> Cylinder:
        """What the luffing cylinder does, nearly: only what hangs on the head has sunk."""
        plane, arm = self.boom.up, self.boom.machine.cylinder.attach_along
        hung = (plane.pads[:, :1] @ self.carried @ end.spread[1])[:, 0]
        sunk = head.front[1] * end.force[0] / arm
        across = hung + sunk + plane.pads_head[:, 0] * end.moment
        return self._cylinder(luffed, across=across, feedback=0.0)

    def _cylinder(self, luffed: Luffed, *, across: Array, feedback: Array | float) -> Cylinder:
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
        attach, rod = self.boom.machine.cylinder, luffed.rod[0]
        arm, hanging = attach.attach_along, self.half_cylinder * luffed.gravity[0]
        held = (across - feedback * hanging) * arm - luffed.own
        thrust = held / (luffed.leverage + feedback * (arm * rod))
        along = thrust * rod + hanging
        return Cylinder(thrust, along, along * attach.attach_below)

    @property
    def reaches(self) -> np.typing.NDArray[np.bool_]:
        """True where the bent boom is long enough for the radius; a sweep may fall short of it."""
        head = self.last.head.sheave
        farthest = np.hypot(*head) if self.lifts.hold_radius else np.inf
        return np.asarray(np.abs(self.reach) <= farthest)

    @property
    def angle(self) -> Array:
        """Boom angle [rad]."""
        if self.lifts.hold_radius:
            cos, sin = self.last.luffed.unit
            return np.asarray(np.arctan2(sin, cos))
        return self.lifts.held

    @property
    def cylinder(self) -> Array:
        """Push of the luffing cylinder along its axis [N]."""
        return np.asarray(self.last.cylinder.thrust * np.hypot(*self.last.luffed.rod))

    @property
    def lug_above(self) -> Array:
        """What the boom gets from the cylinder, above it [N]."""
        luffed, thrust = self.last.luffed, self.last.cylinder.thrust
        return np.asarray(thrust * luffed.rod[1] + self.half_cylinder * luffed.gravity[1])

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
