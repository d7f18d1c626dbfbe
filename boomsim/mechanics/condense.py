"""What depends on the configuration alone, condensed once into small matrices.

Every section is cut at its tail, its front, the mouth of the outer section and the tail of the
inner one, into three segments; the innermost, which has no inner one, in the middle of its overlap
or of its overhang, whichever is longer. Each segment has three stations (start, middle, end),
between which a function is the parabola through its three values (Simpson's rule): exact for the
moment of an evenly spread weight, so a first-order deflection carries no error of discretisation.

All operators act on values at stations, ordered section by section: K = 9 stations for each
section. Axis 0 is the configuration.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array, Layout, layout
from boomsim.mechanics.profile import properties

SEGMENTS, NODES = 3, 3
PER_SECTION = SEGMENTS * NODES


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Stations:
    """Where the stations lie and what acts beyond them.

    Shapes are (configurations, K, 1) unless given; the last axis stretches over cells.

    Attributes
    ----------
    position : ndarray, shape (configurations, sections, 9)
        Along the section from its tail [m]
    weight : ndarray, shape (configurations, sections, 9)
        Simpson weights [m]
    beyond : ndarray
        1 where the station carries all that hangs on the inner sections, else 0 [1]
    in_overlap : ndarray
        1 between the tail and the outer section's mouth (base: heel pin to cylinder) [1]
    at_mouth, at_inner_tail : ndarray of int, shape (configurations, sections)
        Station where the outer section's mouth is, and where the inner section's tail is (of the
        innermost section: where its cut is)
    mass_out : ndarray
        Mass of the sections outboard that the station carries [kg]
    area_up, area_side : ndarray
        Wind area outboard: seen from behind or above (width), and from the side (height) [m2]
    """

    position: Array
    weight: Array
    beyond: Array
    in_overlap: Array
    at_mouth: np.ndarray
    at_inner_tail: np.ndarray
    mass_out: Array
    area_up: Array
    area_side: Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Plane:
    """Bending in one plane: from the force across each station to moments and rotations.

    Attributes
    ----------
    moment : ndarray, shape (configurations, K, K)
        Bending moment for the known forces across the axis [m]
    moment_head, moment_lug : ndarray, shape (configurations, K, 1)
        The same for a moment at the head, and for that of the cylinder's axial pull at its
        eccentric lug [1]
    pads : ndarray, shape (configurations, sections, K)
        Front-pad force for the known forces across; base section: cylinder's force across [1]
    pads_head : ndarray, shape (configurations, sections, 1)
        The same for a moment at the head [1/m]
    rotation : ndarray, shape (configurations, K, K)
        Rotation of the axis for the known forces across [rad/N]
    rotation_head : ndarray, shape (configurations, K, 1)
        The same for a moment at the head [rad/(N m)]
    rotation_lug : ndarray, shape (configurations, K, 1)
        The same for the moment at the lug [rad/(N m)]
    stiffness : ndarray, shape (K, 1)
        E I [N m2]
    """

    moment: Array
    moment_head: Array
    moment_lug: Array
    pads: Array
    pads_head: Array
    rotation: Array
    rotation_head: Array
    rotation_lug: Array
    stiffness: Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Condensed:
    """A machine's boom in a set of configurations, ready for any number of states.

    Attributes
    ----------
    machine : Machine
    layout : Layout
    stations : Stations
    up, side : Plane
        Bending in the luffing plane and sideways
    turning : ndarray, shape (configurations, K, K + 2 + sections)
        Rotation of the axis in the luffing plane for all that turns it at once: the known forces
        across, the head moment, the lug moment, and each section's play [rad/N], [rad/(N m)], [rad]
    bending : ndarray, shape (configurations, K + sections, K + 2)
        Bending moments, then front-pad forces, for the first three of these [m], [1], [1/m]
    pressing : ndarray, shape (configurations, K, sections)
        Shear for each front-pad force: the own inside the overlap, the inner's past its tail [1]
    straight : ndarray, shape (configurations, K, 4)
        Rotation of an axis not yet bent, for free fall and a force at the head across the axis, the
        head moment and the lug moment: where an iteration starts
    thrust : ndarray, shape (configurations, 2, 1)
        Share of the critical load for free fall and a head force along the axis (Rayleigh, with the
        shape of a force across the head) [s2/m], [1/N]
    path : ndarray, shape (configurations, 1, K)
        Weights that sum the direction of the axis to the position of the last front [m]
    centres : ndarray, shape (configurations, sections, K)
        The same for the centre of gravity of each section [m]
    """

    machine: Machine
    layout: Layout
    stations: Stations
    up: Plane
    side: Plane
    turning: Array
    bending: Array
    pressing: Array
    straight: Array
    thrust: Array
    path: Array
    centres: Array


def condense(machine: Machine, *, extension: Array) -> Condensed:
    """Build the operators of a set of configurations.

    Parameters
    ----------
    machine : Machine
    extension : array_like, shape (configurations, moving sections)
        Fraction of each stroke [1]

    Returns
    -------
    Condensed

    Raises
    ------
    ValueError
        From :func:`boomsim.mechanics.geometry.layout`.
    """
    placed = layout(machine.boom, extension=extension)
    cuts = _Cuts.of(machine, placed)
    stations = _stations(machine, cuts)
    shapes = [properties(s.profile) for s in machine.boom.sections]
    modulus = np.array([s.material.modulus for s in machine.boom.sections])
    up, side = _planes(cuts, stiffness=modulus * np.array([[p.i_y, p.i_z] for p in shapes]).T)
    path, centres = _positions(cuts)
    straight, thrust = _start(stations, up)
    return Condensed(
        machine=machine,
        layout=placed,
        stations=stations,
        up=up,
        side=side,
        turning=np.concatenate(
            [up.rotation, up.rotation_head, up.rotation_lug, _play(machine, placed)], axis=2
        ),
        bending=_bending(up),
        pressing=_pressing(stations),
        straight=straight,
        thrust=thrust,
        path=path,
        centres=centres,
    )


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Cuts:
    """Segments of each section; shapes (configurations, sections) and (…, 3) for segments."""

    length: Array
    support: Array
    inner_tail: Array
    seg_length: Array
    position: Array
    weight: Array
    has_inner: Array
    in_overlap: Array
    mouth_first: np.ndarray

    @classmethod
    def of(cls, machine: Machine, placed: Layout) -> "_Cuts":
        count = len(machine.boom.sections)
        length = np.broadcast_to([s.length for s in machine.boom.sections], placed.front.shape)
        support = placed.overlap.copy()
        support[:, 0] = machine.cylinder.attach_along
        inner_tail = length.copy()
        inner_tail[:, :-1] = placed.tail[:, 1:] - placed.tail[:, :-1]
        breaks = np.zeros((*length.shape, SEGMENTS + 1))
        last, front = support[:, -1], length[:, -1]
        cut = inner_tail.copy()
        cut[:, -1] = np.where(2.0 * last > front, last, last + front) / 2.0
        breaks[..., 1], breaks[..., 2], breaks[..., 3] = support, cut, length
        breaks[..., 1:3].sort(axis=-1)
        breaks.clip(0.0, length[..., None], out=breaks)
        seg_length = breaks[..., 1:] - breaks[..., :-1]
        middle = breaks[..., :-1] + seg_length / 2
        position = np.empty((*length.shape, SEGMENTS, NODES))
        for node, place in enumerate((breaks[..., :-1], middle, breaks[..., 1:])):
            position[..., node] = place
        weight = seg_length[..., None] * (np.array([1.0, 4.0, 1.0]) / 6.0)
        # A segment of no length lies nowhere: compare its middle, which then equals its start.
        has_inner = (middle < inner_tail[..., None]).astype(float)
        has_inner[:, count - 1] = 1.0
        return cls(
            length=length,
            support=support,
            inner_tail=inner_tail,
            seg_length=seg_length,
            position=position,
            weight=weight,
            has_inner=has_inner,
            in_overlap=(middle < support[..., None]).astype(float),
            mouth_first=support <= cut,
        )

    @property
    def shape(self) -> tuple[int, int]:
        """Configurations and sections."""
        return self.length.shape[0], self.length.shape[1]

    def spread(self, per_segment: Array) -> Array:
        """Give each station its segment's value: (…, 3) to (…, 9)."""
        return np.repeat(per_segment, NODES, axis=-1)


def _stations(machine: Machine, cuts: _Cuts) -> Stations:
    configurations, sections = cuts.shape
    flat = (configurations, sections * PER_SECTION, 1)
    position = cuts.position.reshape(configurations, sections, PER_SECTION)
    own = 1.0 - position / cuts.length[..., None]
    beyond = cuts.spread(cuts.has_inner)

    boom = machine.boom.sections
    shapes = [properties(s.profile) for s in boom]
    # Mass, and the areas that wind sees from behind and from the side, of each section and of all
    # that is in it.
    of_own = np.array([
        [s.mass, s.length * p.outer_width, s.length * p.outer_height]
        for s, p in zip(boom, shapes, strict=True)
    ]).T[:, :, None]  # fmt: skip
    of_inner = np.cumsum(of_own[:, ::-1], axis=1)[:, ::-1] - of_own
    outboard = own * of_own[:, None] + beyond * of_inner[:, None]
    mass_out, area_up, area_side = outboard.reshape(3, *flat)
    # Of the two cuts inside a section, the mouth is the first where it comes before the other.
    first = np.arange(sections) * PER_SECTION + NODES - 1
    return Stations(
        position=position,
        weight=cuts.weight.reshape(configurations, sections, PER_SECTION),
        beyond=beyond.reshape(flat),
        in_overlap=cuts.spread(cuts.in_overlap).reshape(flat),
        at_mouth=first + np.where(cuts.mouth_first, 0, NODES),
        at_inner_tail=first + np.where(cuts.mouth_first, NODES, 0),
        mass_out=mass_out,
        area_up=area_up,
        area_side=area_side,
    )


def _integral(cuts: _Cuts) -> Array:
    """Matrix of each section that integrates a function from the tail to every station.

    Within a segment of length l: to the middle l (5 f0 + 8 f1 - f2)/24, to the end
    l (f0 + 4 f1 + f2)/6. Shape (configurations, sections, 9, 9).
    """
    within = np.array([[0.0, 0.0, 0.0], [5.0, 8.0, -1.0], [4.0, 16.0, 4.0]]) / 24.0
    configurations, sections = cuts.shape
    matrix = np.zeros((configurations, sections, SEGMENTS, NODES, SEGMENTS, NODES))
    for k in range(SEGMENTS):
        matrix[:, :, k, :, k, :] = cuts.seg_length[:, :, k, None, None] * within
        matrix[:, :, k + 1 :, :, k, :] = cuts.weight[:, :, None, None, k, :]
    return matrix.reshape(configurations, sections, PER_SECTION, PER_SECTION)


def _planes(cuts: _Cuts, *, stiffness: Array) -> tuple[Plane, Plane]:
    """The luffing plane and sideways, where the base section is clamped at the heel.

    Both at once, as axis 0: `stiffness` has shape (2, sections). The last axis of an operator has
    the known forces across, then the head moment and the lug moment.
    """
    total = cuts.weight.reshape(*cuts.shape, PER_SECTION)
    integral, size = _integral(cuts), cuts.shape[1] * PER_SECTION
    pads = _pads(cuts, total)
    moment = _moments(cuts, total, integral, pads)
    stiff = np.repeat(stiffness, PER_SECTION, axis=1)
    rotation = (_turn(cuts, integral, total) / stiff[:, None, None]) @ moment
    up, side = (
        Plane(
            moment=moment[k, :, :, :size],
            moment_head=moment[k, :, :, size : size + 1],
            moment_lug=moment[k, :, :, size + 1 :],
            pads=pads[k, :, :, :size],
            pads_head=pads[k, :, :, size : size + 1],
            rotation=rotation[k, :, :, :size],
            rotation_head=rotation[k, :, :, size : size + 1],
            rotation_lug=rotation[k, :, :, size + 1 :],
            stiffness=stiff[k, :, None],
        )
        for k in range(2)
    )
    return up, side


def _moments(cuts: _Cuts, total: Array, integral: Array, pads: Array) -> Array:
    """Bending moments: what lies outboard in the section, its own front pad, the inner section's.

    Along the base section the lug's moment grows in a straight line from the heel pin to the lug.
    """
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    position = cuts.position.reshape(configurations, sections, PER_SECTION)
    inner_arm = cuts.length[..., None] - np.maximum(position, cuts.inner_tail[..., None])
    own_arm = np.maximum(cuts.support[..., None] - position, 0.0)
    moment = own_arm[..., None] * pads[:, :, :, None]
    moment[:, :, :-1] -= inner_arm[:, :-1, :, None] * pads[:, :, 1:, None]
    for i in range(sections):
        block = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        moment[:, :, i, :, block] += total[:, i, None, :] - integral[:, i]
    moment[:, :, -1, :, size] += 1.0
    along = position[:, 0] / cuts.support[:, :1] * cuts.spread(cuts.in_overlap)[:, 0]
    moment[:, :, 0, :, size + 1] = along
    return np.asarray(moment.reshape(2, configurations, size, size + 2))


def _pads(cuts: _Cuts, total: Array) -> Array:
    """Front-pad forces from the condition that no moment acts at a tail, head inwards.

    pad[i] overlap[i] = -(moment of what is outboard about the tail), where the inner section
    counts with the force pair it puts on this one. A base section clamped at the heel has none.
    """
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    pads = np.zeros((2, configurations, sections, size + 2))
    arm = (cuts.length - cuts.inner_tail) / cuts.support
    own = -total / cuts.support[..., None]
    pads[:, :, -1, size] = -1.0 / cuts.support[:, -1]
    for i in range(sections - 1, -1, -1):
        pads[:, :, i, i * PER_SECTION : (i + 1) * PER_SECTION] = own[:, i]
        if i + 1 < sections:
            pads[:, :, i] += arm[:, i, None] * pads[:, :, i + 1]
    pads[1, :, 0] = 0.0
    return pads


def _turn(cuts: _Cuts, integral: Array, total: Array) -> Array:
    """Rotation of the axis at every station for a curvature at every station.

    Between its two pads an inner section's mean rotation is the outer section's there (both pads
    touch); the base section's is zero between heel pin and cylinder, or its rotation is zero at the
    heel when clamped. Shape (2, configurations, K, K).
    """
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    turn = np.zeros((2, configurations, sections, PER_SECTION, size))
    inside = total * cuts.spread(cuts.in_overlap) / cuts.support[..., None]
    mouth = total * (1.0 - cuts.spread(cuts.has_inner))
    own = (inside[:, :, None] @ integral)[:, :, 0]
    for i in range(sections):
        block = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        if i:
            share = mouth[:, i - 1] / cuts.support[:, i, None]
            turn[:, :, i] = share[:, None] @ turn[:, :, i - 1]
        clamped = 1 if i == 0 else 2
        turn[:clamped, :, i, :, block] -= own[:, i, None]
        turn[:, :, i, :, block] += integral[:, i]
    return turn.reshape(2, configurations, size, size)


def _start(stations: Stations, up: Plane) -> tuple[Array, Array]:
    """First-order rotations, and by how much thrust enlarges them."""
    hung = np.concatenate([stations.mass_out, stations.beyond], axis=2)
    straight = np.concatenate([up.rotation @ hung, up.rotation_head, up.rotation_lug], axis=2)
    shape, moment = straight[:, :, 1:2], up.moment @ stations.beyond
    weight = stations.weight.reshape(*shape.shape)
    energy = np.sum(weight * moment**2 / up.stiffness, axis=1, keepdims=True)
    work = np.sum(weight * hung * shape**2, axis=1)[:, :, None]
    return straight, work / energy


def _bending(up: Plane) -> Array:
    """Moments and front-pad forces for the forces across, the head moment and the lug moment."""
    moments = np.concatenate([up.moment, up.moment_head, up.moment_lug], axis=2)
    pads = np.concatenate([up.pads, up.pads_head, np.zeros_like(up.pads_head)], axis=2)
    return np.concatenate([moments, pads], axis=1)


def _pressing(stations: Stations) -> Array:
    sections = stations.position.shape[1]
    own = np.repeat(np.eye(sections), PER_SECTION, axis=0)
    inner = np.repeat(np.eye(sections, k=1), PER_SECTION, axis=0)
    return own * stations.in_overlap - inner * (1.0 - stations.beyond)


def _play(machine: Machine, placed: Layout) -> Array:
    """Rotation of every station when one section takes up its play as in a drooping boom.

    A section turns by clearance/overlap and takes along all that is in it. Shape (configurations,
    K, sections).
    """
    clearance = np.array([s.clearance for s in machine.boom.sections])
    sections = len(clearance)
    turn = np.zeros_like(placed.overlap)
    turn[:, 1:] = -clearance[1:] / placed.overlap[:, 1:]
    carries = np.repeat(np.tri(sections), PER_SECTION, axis=0)
    return np.asarray(carries * turn[:, None, :])


def _positions(cuts: _Cuts) -> tuple[Array, Array]:
    configurations, sections = cuts.shape
    total = cuts.weight.reshape(configurations, sections, PER_SECTION)
    position = cuts.position.reshape(configurations, sections, PER_SECTION)
    along = total * cuts.spread(cuts.has_inner)
    own = total * (1.0 - position / cuts.length[..., None])
    centres = np.zeros((configurations, sections, sections, PER_SECTION))
    for i in range(sections):
        centres[:, i, :i] = along[:, :i]
        centres[:, i, i] = own[:, i]
    size = sections * PER_SECTION
    return along.reshape(configurations, 1, size), centres.reshape(configurations, sections, size)
