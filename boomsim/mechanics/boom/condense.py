"""What depends on the configuration alone, condensed once into small matrices.

All operators act on values at the stations of :mod:`boomsim.mechanics.boom.stations`.

Derived in docs/theory.md, section 2.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.boom.axial_stretch import Stretch, stretch_of
from boomsim.mechanics.boom.bending_operators import Plane, planes_of
from boomsim.mechanics.boom.stations import PER_SECTION, Cuts, Stations, stations_of
from boomsim.mechanics.geometry import Array, Layout, layout
from boomsim.mechanics.sections.section_properties import properties


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Condensed:
    """A machine's boom in a set of configurations, ready for any number of states.

    Attributes
    ----------
    up, side : Plane
        Bending in the luffing plane and sideways
    turning : ndarray, shape (configurations, K, K + 2 + parts + 2 moving sections)
        Rotation of the axis in the luffing plane for all that turns it at once: the known forces
        across, the head moment, the forces of longer arms, the lug moment, a moment on each moving
        section at the mouth around it, and what each turns by as a whole, with all that is in it
        [rad/N], [rad/(N m)], [1]
    play : ndarray, shape (configurations, moving sections, 1)
        What each turns by when it takes up its play as in a drooping boom [rad]
    bending : ndarray, shape (configurations, K + sections, K + 2 + parts)
        Bending moments, then front-pad forces, for the first four of these [m], [1], [1/m]
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
    play: Array
    bending: Array
    pressing: Array
    straight: Array
    thrust: Array
    stretch: Stretch
    path: Array
    centres: Array
    shown: Array


def condense(machine: Machine, *, extension: Array) -> Condensed:
    """Build the operators of a set of configurations.

    Parameters
    ----------
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
    stretch = stretch_of(
        machine, cuts=cuts, stations=stations, up=up, path=path, centres=centres, shown=shown
    )
    carries = np.repeat(_carries(len(shapes))[None], len(path), axis=0)
    return Condensed(
        machine=machine,
        layout=placed,
        stations=stations,
        up=up,
        side=side,
        turning=np.concatenate(
            [
                up.rotation,
                up.rotation_head,
                up.rotation @ stretch.spread,
                up.rotation_lug,
                up.rotation_mouths,
                carries,
            ],
            axis=2,
        ),
        play=_play(machine, placed),
        bending=_bending(up, stretch),
        pressing=_pressing(stations),
        straight=straight,
        thrust=thrust,
        stretch=stretch,
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


def _bending(up: Plane, stretch: Stretch) -> Array:
    """Moments and front-pad forces for forces across, head moment, longer arms, lug moment."""
    moments = [up.moment, up.moment_head, up.moment @ stretch.spread, up.moment_lug]
    pads = [up.pads, up.pads_head, up.pads @ stretch.spread, np.zeros_like(up.pads_head)]
    return np.concatenate([np.concatenate(both, axis=2) for both in (moments, pads)], axis=1)


def _pressing(stations: Stations) -> Array:
    sections = stations.position.shape[1]
    own = np.repeat(np.eye(sections), PER_SECTION, axis=0)
    inner = np.repeat(np.eye(sections, k=1), PER_SECTION, axis=0)
    return own * stations.in_overlap - inner * (1.0 - stations.beyond)


def _carries(sections: int) -> Array:
    """Stations that turn when a moving section does: its own and those of all that is in it.

    Shape (K, moving sections).
    """
    return np.repeat(np.tri(sections), PER_SECTION, axis=0)[:, 1:]


def _play(machine: Machine, placed: Layout) -> Array:
    """What each moving section turns by when it takes up its play: clearance/overlap."""
    clearance = np.array([s.clearance for s in machine.boom.sections])
    return np.asarray((-clearance[1:] / placed.overlap[:, 1:])[..., None])


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
