"""One sweep of the equilibrium: from rotations of the axis to forces across it and back."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Disturbances
from boomsim.mechanics.condense import PER_SECTION, Condensed
from boomsim.mechanics.geometry import Array, angle_at_radius
from boomsim.mechanics.loads import (
    GRAVITY,
    gravity_in_base,
    hoisting_factor,
    tackle_advantage,
    wind_pressure,
)

TOLERANCE = 1e-6
"""Last change of the rotations over the rotations, root mean square [1]."""

STRAIGHT = 1e-12
"""A boom bent less than this is straight [rad]."""

MOST_SWEEPS = 60

MOST_RELAXED = 100.0
"""Largest step over the residual: a boom at 99 % of its critical load needs a hundredfold [1]."""

HARDLY = 0.05
"""Pad force over the section's own weight below which its play is not all taken up: a jump from one
side to the other would leave some loads without a solution [1]."""


class LuffingPlane:
    """Forces in the luffing plane on a boom bent so far. Remembers the last sweep."""

    def __init__(
        self,
        boom: Condensed,
        *,
        load: Array,
        held: Array,
        hold_radius: bool,
        parts: int,
        dead: float,
        live: float,
        disturbances: Disturbances,
    ) -> None:
        machine, stations = boom.machine, boom.stations
        self.boom, self.load, self.held, self.hold_radius = boom, load, held, hold_radius
        self.dead, self.disturbances = dead, disturbances
        dynamic = hoisting_factor(disturbances.hoist_speed, hoist_class=disturbances.hoist_class)
        self.live = load * (live * dynamic)
        self.pull = self.live * (
            GRAVITY / tackle_advantage(parts, sheave_efficiency=machine.hoist.sheave_efficiency)
        )
        self.pressure = wind_pressure(disturbances.wind_speed)
        self.load_wind = self.pressure * disturbances.load_area * load
        self.from_behind = bool(self.pressure) and not disturbances.wind_across
        carried = [stations.mass_out * dead, stations.beyond]
        if self.from_behind:
            carried.append(stations.area_up * machine.boom.wind_shape)
        self.carried = np.concatenate(carried, axis=2)
        self.mass = np.array([s.mass for s in machine.boom.sections])[:, None]
        self.has_play = any(s.clearance for s in machine.boom.sections)
        size, sections = boom.up.rotation.shape[1], len(self.mass)
        shape = load.shape[0], size, load.shape[1]
        rows = size + 2 + sections * self.has_play
        self.operator = boom.turning[:, :, :rows]
        self.acting = np.zeros((shape[0], rows, shape[2]))
        self.across = self.acting[:, :size]
        self.cos, self.sin, self.along, self.above, self.spare = (np.empty(shape) for _ in range(5))
        self.base_span = stations.in_overlap[:, :PER_SECTION]
        self.lug = (np.zeros_like(load),) * 3

    def start(self) -> Array:
        """Rotations to start from: of first order, enlarged by thrust, all play taken up [rad]."""
        boom = self.boom
        self.cos[...], self.sin[...] = 1.0, 0.0
        self._place_head()
        along, above = self._forces()
        thrust = -np.sum(boom.thrust * along[:, :2], axis=1)
        causes = np.stack([above[:, 0], above[:, 1], self.head_moment, self.lug[0]], axis=1)
        bent = (boom.straight @ causes) / (1.0 - np.clip(thrust, -0.5, 0.5))[:, None]
        play = boom.turning[:, :, -len(self.mass) :].sum(axis=2, keepdims=True)
        return np.asarray(bent + play)

    def turned(self, rotation: Array, out: Array) -> None:
        """New rotations for old ones, shape (configurations, K, cells) [rad]."""
        _cos_sin(rotation, square=self.spare, cos=self.cos, sin=self.sin)
        self._place_head()
        along, above = self._forces()
        np.matmul(self.carried, along, out=self.along)
        np.matmul(self.carried, above, out=self.above)
        np.multiply(self.above, self.cos, out=self.across)
        np.multiply(self.along, self.sin, out=self.spare)
        self.across -= self.spare
        # The cylinder presses the bent base section between heel pin and lug along its chord.
        base = self.sin[:, :PER_SECTION] * self.base_span
        self.across[:, :PER_SECTION] -= base * self.lug[1][:, None]
        plane, size = self.boom.up, rotation.shape[1]
        pads = plane.pads @ self.across + plane.pads_head * self.head_moment[:, None]
        self.lug_moment = self._lug(pads[:, 0])
        self.acting[:, size] = self.head_moment
        self.acting[:, size + 1] = self.lug_moment
        if self.has_play:
            self.acting[:, size + 2 :] = self._play_taken(pads)
        np.matmul(self.operator, self.acting, out=out)

    def _play_taken(self, front: Array) -> Array:
        """How much of each section's play is taken up, 1 as in a drooping boom to -1."""
        hardly = HARDLY * GRAVITY * self.mass
        rear = front + self.across[:, ::PER_SECTION]
        # What lies on both its pads from above has no play to take up.
        return np.asarray((_side(front / hardly) + _side(rear / hardly)) / 2.0)

    def _place_head(self) -> None:
        boom, machine = self.boom, self.boom.machine
        head, cos, sin = machine.boom.head, self.cos[:, -1], self.sin[:, -1]
        front_along = (boom.path @ self.cos)[:, 0]
        front_above = (boom.path @ self.sin)[:, 0]
        self.hook_arm = head.ahead * cos + head.below * sin, head.ahead * sin - head.below * cos
        self.rope_arm = (
            head.ahead * cos - head.rope_above * sin,
            head.ahead * sin + head.rope_above * cos,
        )
        self.head_along = front_along + self.hook_arm[0]
        self.head_above = front_above + self.hook_arm[1]
        self.rope_from = front_along + self.rope_arm[0], front_above + self.rope_arm[1]
        self.angle = self.held
        if self.hold_radius:
            reach = self.held - machine.heel_out
            self.angle = angle_at_radius(reach=reach, along=self.head_along, above=self.head_above)
        self.cos_angle, self.sin_angle = np.cos(self.angle), np.sin(self.angle)

    def _forces(self) -> tuple[Array, Array]:
        """Coefficients of what each station carries: gravity, head force, wind; along and above."""
        change = self.disturbances
        g_along, g_above, self.g_left = gravity_in_base(
            self.angle, lean=change.lean, lean_across=change.lean_across
        )
        self.gravity = g_along, g_above
        hung = self.live + self.boom.machine.boom.head.mass * self.dead
        load = [hung * g_along, hung * g_above]
        wind = [np.zeros(()), np.zeros(())]
        if self.from_behind:
            push = self.pressure * self.sin_angle**2
            wind = [push * self.cos_angle, -push * self.sin_angle]
            load[0] = load[0] + self.load_wind * self.cos_angle
            load[1] = load[1] - self.load_wind * self.sin_angle
        rope = self._rope()
        self.end_along = load[0] + rope[0]
        (hook_x, hook_y), (rope_x, rope_y) = self.hook_arm, self.rope_arm
        self.head_moment = hook_x * load[1] - hook_y * load[0] + rope_x * rope[1] - rope_y * rope[0]
        along = [g_along, self.end_along] + [wind[0]] * self.from_behind
        above = [g_above, load[1] + rope[1]] + [wind[1]] * self.from_behind
        return np.stack(along, axis=1), np.stack(above, axis=1)

    def _rope(self) -> tuple[Array, Array]:
        """Pull of the lead line on the head, towards the winch, along and above [N]."""
        machine = self.boom.machine
        out = machine.hoist.winch_out - machine.heel_out
        up = machine.hoist.winch_up - machine.heel_up
        to_along = out * self.cos_angle + up * self.sin_angle - self.rope_from[0]
        to_above = up * self.cos_angle - out * self.sin_angle - self.rope_from[1]
        scale = self.pull / np.hypot(to_along, to_above)
        return scale * to_along, scale * to_above

    def _lug(self, across: Array) -> Array:
        """Moment of the forces along the boom at the cylinder's lug, below the axis [N m]."""
        self.lug = lug_forces(
            self.boom, across=across, angle=self.angle, gravity=self.gravity, dead=self.dead
        )
        return self.lug[1] * self.boom.machine.cylinder.attach_below


class Sideways:
    """Forces across the luffing plane, on the boom as it is bent in that plane.

    The luffing cylinder neither holds nor pushes sideways: its lug moves by so little at the
    clamped base that its push, turned with it, is worth less than 1 % of the heel's moment.
    """

    def __init__(self, plane: LuffingPlane) -> None:
        boom, change = plane.boom, plane.disturbances
        stations, head = boom.stations, boom.machine.boom.head
        wind = plane.pressure if change.wind_across else 0.0
        self.plane = plane
        self.acts = bool(change.side_pull or change.lean_across or wind)
        self.pull = (plane.live + head.mass * plane.dead) * plane.g_left
        self.pull = self.pull + change.side_pull * GRAVITY * plane.live
        if wind:
            self.pull = self.pull + plane.load_wind
        spread = stations.mass_out * (plane.dead * plane.g_left)
        self.spread = spread + stations.area_side * (wind * boom.machine.boom.wind_shape)
        self.tangent = plane.along * plane.cos + plane.above * plane.sin
        self.head_torsion = head.below * self.pull

    def turned(self, rotation: Array, out: Array) -> None:
        """New rotations for old ones, shape (configurations, K, cells) [rad]."""
        boom, ahead = self.plane.boom, self.plane.boom.machine.boom.head.ahead
        self.head_left = (boom.path @ rotation)[:, 0] + ahead * rotation[:, -1]
        rope = -self.plane.pull * self.head_left / np.maximum(self.plane.head_along, 1e-3)
        end = self.pull + rope
        carried = self.spread + boom.stations.beyond * end[:, None]
        cos, sin, square = (np.empty_like(rotation) for _ in range(3))
        _cos_sin(rotation, square=square, cos=cos, sin=sin)
        self.across = carried * cos - self.tangent * sin
        self.head_moment = ahead * (end - self.plane.end_along * rotation[:, -1])
        side = boom.side
        out[...] = side.rotation @ self.across + side.rotation_head * self.head_moment[:, None]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Sweeps:
    """Where an iteration ended: rotations [rad], which cells converged, sweeps used."""

    rotation: Array
    converged: np.typing.NDArray[np.bool_]
    count: int


def relax(turned: Callable[[Array, Array], None], *, start: Array) -> Sweeps:
    """Iterate rotation = turned(rotation) in every cell at once.

    Aitken's relaxation for vectors, each cell for itself: omega_n = -omega_(n-1)
    <r_(n-1), r_n - r_(n-1)> / |r_n - r_(n-1)|2 with the residual r (Kuettler and Wall,
    Computational Mechanics 43, 2008, from memory).

    Parameters
    ----------
    turned : callable
        Writes new rotations for old ones into its second argument [rad]
    start : ndarray, shape (configurations, K, cells)
        Overwritten [rad]

    Returns
    -------
    Sweeps
    """
    rotation = start
    residual, before, step = (np.empty_like(start) for _ in range(3))
    omega = np.ones((start.shape[0], start.shape[2]))
    straight = STRAIGHT**2 * start.shape[1]
    for count in range(1, MOST_SWEEPS + 1):
        turned(rotation, residual)
        residual -= rotation
        size = np.einsum("ckr,ckr->cr", residual, residual)
        settled = size < TOLERANCE**2 * np.einsum("ckr,ckr->cr", rotation, rotation) + straight
        if np.all(settled | np.isnan(size)):
            break
        if count > 1:
            before -= residual
            top = np.einsum("ckr,ckr->cr", before, residual)
            bottom = np.einsum("ckr,ckr->cr", before, before)
            # r_(n-1).(r_n - r_(n-1)) = -(before.residual + before.before), before being r_(n-1)-r_n
            new = omega * (top + bottom) / bottom
            # A cell that has settled divides nought by nought; a wild one is held back.
            omega = np.where(np.isfinite(new), np.clip(new, 0.05, MOST_RELAXED), 1.0)
        np.multiply(omega[:, None, :], residual, out=step)
        rotation += step
        residual, before = before, residual
    return Sweeps(rotation=rotation, converged=settled, count=count)


def lug_forces(
    boom: Condensed, *, across: Array, angle: Array, gravity: tuple[Array, Array], dead: float
) -> tuple[Array, Array, Array]:
    """Push of the luffing cylinder, and what the boom gets from it at its lug.

    The cylinder holds the boom's moment about the heel pin and half its own weight, which hangs on
    its upper pin.

    Parameters
    ----------
    boom : Condensed
    across : ndarray
        Force across the axis, over the lug, that would hold the boom [N]
    angle : ndarray
        Boom angle [rad]
    gravity : tuple of ndarray
        Free fall along and above the base section [m/s2]
    dead : float
        Factor on weights [1]

    Returns
    -------
    push : ndarray
        Along the cylinder's axis [N]
    along, above : ndarray
        On the boom, the hanging half of its weight included [N]
    """
    machine = boom.machine
    cylinder, cos, sin = machine.cylinder, np.cos(angle), np.sin(angle)
    out = cylinder.base_out - machine.heel_out
    up = cylinder.base_up - machine.heel_up
    arm, depth = cylinder.attach_along, cylinder.attach_below
    along, above = arm - (out * cos + up * sin), -depth - (up * cos - out * sin)
    length = np.hypot(along, above)
    half = dead * cylinder.mass / 2
    own = half * (arm * gravity[1] + depth * gravity[0])
    push = (across * arm - own) * length / (arm * above + depth * along)
    return (
        push,
        push * along / length + half * gravity[0],
        push * above / length + half * gravity[1],
    )


def _side(force: Array) -> Array:
    """Which side a pad presses on, -1 to 1; a pad that hardly presses (under 1) is in between."""
    return np.clip(force, -1.0, 1.0)


def _cos_sin(rotation: Array, *, square: Array, cos: Array, sin: Array) -> None:
    """Cosine and sine by their series, into given arrays.

    Under 1e-7 off to 0.2 rad and 2e-5 at 0.5, and many times as fast as the library's where a
    thousand cells are bent at once.
    """
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
