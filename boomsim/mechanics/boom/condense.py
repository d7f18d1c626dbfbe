"""What depends on the configuration alone, condensed once into small matrices.

All operators act on values at the stations of :mod:`boomsim.mechanics.boom.stations`.

Derived in docs/theory.md, section 2.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.boom.bending_operators import Plane, planes_of
from boomsim.mechanics.boom.stations import PER_SECTION, Cuts, Stations, stations_of
from boomsim.mechanics.geometry import Array, Layout, layout
from boomsim.mechanics.sections.section_properties import properties


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
    shown : ndarray, shape (configurations, sections, K)
        The same for the middle of what each section shows beyond the mouth around it [m]
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
    shown: Array


def condense(machine: Machine, *, extension: Array) -> Condensed:
    """Build the operators of a set of configurations.

    Parameters
    ----------
    machine : Machine
    extension : array_like, shape (configurations, moving sections)
        Fraction of each stroke [1]

    Raises
    ------
    ValueError
        From :func:`boomsim.mechanics.geometry.layout`.
    """
    placed = layout(machine.boom, extension=extension)
    cuts = Cuts.of(machine, placed)
    stations = stations_of(machine, cuts=cuts)
    shapes = [properties(s.profile) for s in machine.boom.sections]
    modulus = np.array([s.material.modulus for s in machine.boom.sections])
    bending = modulus * np.array([[p.i_y, p.i_z] for p in shapes]).T
    in_shear = np.array([s.material.in_shear for s in machine.boom.sections])
    areas = np.array([[p.shear_area_y, p.shear_area_z] for p in shapes]).T
    up, side = planes_of(cuts, stiffness=bending, in_shear=in_shear * areas)
    path, centres, shown = _positions(cuts)
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
        shown=shown,
    )


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


def _positions(cuts: Cuts) -> tuple[Array, Array, Array]:
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    total = cuts.weight.reshape(configurations, sections, PER_SECTION)
    position = cuts.position.reshape(configurations, sections, PER_SECTION)
    along, left = total * cuts.spread(cuts.has_inner), cuts.length[..., None] - position
    # A section that shows nothing has its middle at its front.
    seen = np.maximum(cuts.shown, 1e-9)[..., None]

    def middles(own: Array) -> Array:
        made = np.zeros((configurations, sections, sections, PER_SECTION))
        for i in range(sections):
            made[:, i, :i] = along[:, :i]
            made[:, i, i] = own[:, i]
        return made.reshape(configurations, sections, size)

    return (
        along.reshape(configurations, 1, size),
        middles(total * left / cuts.length[..., None]),
        middles(total * np.minimum(left / seen, 1.0)),
    )
