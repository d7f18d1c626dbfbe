"""A plane frame as plain data, ready for any finite-element library to solve."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

Point = tuple[float, float]
Floats = NDArray[np.float64]

RIGID_AXIAL = 1e13
"""Stretching stiffness EA of arms and links that stand for rigid parts [N]."""
RIGID_BENDING = 1e12
"""Bending stiffness EI of arms that stand for rigid parts [N m2]."""
SOFT = 1.0
"""Stretching stiffness EA of a rope whose tension is given [N]: too small to change it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Beam:
    """Beam element between two nodes: Timoshenko's, or Euler and Bernoulli's without `shear`.

    Attributes
    ----------
    first, last : int
        Node numbers
    axial, bending : float
        EA [N], EI [N m2]
    shear : float
        GA [N]
    load : (float, float)
        Dead load for each metre of undeformed length, along x and y [N/m]
    """

    first: int
    last: int
    axial: float
    bending: float
    load: Point = (0.0, 0.0)
    shear: float = math.inf


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """Hinged straight link. `tension` is there from the start and stays if the bar is soft.

    Attributes
    ----------
    first, last : int
        Node numbers
    axial, tension : float
        EA [N], starting tension [N]
    """

    first: int
    last: int
    axial: float = RIGID_AXIAL
    tension: float = 0.0


@dataclass(slots=True)
class Frame:
    """Nodes and what connects, holds and loads them; filled in step by step.

    Attributes
    ----------
    nodes : list of (float, float)
        [m]
    hinges : list of (int, int)
        Pairs of nodes that share x and y but not rotation; the second follows the first
    supports : dict of int to (bool, bool, bool)
        Whether x, y and rotation are held
    forces : dict of int to list of float
        x, y [N] and anticlockwise moment [N m] at a node
    """

    nodes: list[Point] = field(default_factory=list)
    beams: list[Beam] = field(default_factory=list)
    bars: list[Bar] = field(default_factory=list)
    hinges: list[tuple[int, int]] = field(default_factory=list)
    supports: dict[int, tuple[bool, bool, bool]] = field(default_factory=dict)
    forces: dict[int, list[float]] = field(default_factory=dict)

    def node(self, place: Point) -> int:
        """Add a node and return its number."""
        self.nodes.append((float(place[0]), float(place[1])))
        return len(self.nodes) - 1

    def arm(self, node: int, place: Point) -> int:
        """Add a node held to `node` by a rigid arm; `node` itself if it is there already."""
        x, y = self.nodes[node]
        if np.hypot(place[0] - x, place[1] - y) < 1e-9:
            return node
        end = self.node(place)
        self.beams.append(Beam(first=node, last=end, axial=RIGID_AXIAL, bending=RIGID_BENDING))
        return end

    def push(self, node: int, force: Point) -> None:
        """Add a dead force [N] at a node."""
        now = self.forces.setdefault(node, [0.0, 0.0, 0.0])
        now[0] += force[0]
        now[1] += force[1]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FrameSolution:
    """What a finite-element library answers.

    Attributes
    ----------
    displacements : ndarray, shape (nodes, 3)
        x, y [m] and anticlockwise rotation [rad]
    axial : ndarray, shape (beams,)
        Tension positive [N]
    moments : ndarray, shape (beams, 2)
        At first and last node, positive with tension on the left side of the direction of
        travel from first to last: on top, for a boom drawn from left to right [N m]
    ends : ndarray, shape (beams, 4)
        Force of the rest on the beam at the first node and at the last, x and y, the beam's own
        distributed load being on the beam [N]
    bars : ndarray, shape (bars,)
        Tension positive [N]
    """

    displacements: Floats
    axial: Floats
    moments: Floats
    ends: Floats
    bars: Floats


FrameSolver = Callable[[Frame], FrameSolution]


class NoSolution(RuntimeError):
    """The finite-element library found no equilibrium."""


def nodal_loads(frame: Frame) -> Floats:
    """Every load put at the nodes, a distributed one with its fixed-end moments.

    Parameters
    ----------
    frame : Frame

    Returns
    -------
    ndarray, shape (nodes, 3)
        x, y [N] and moment [N m]
    """
    loads = np.zeros((len(frame.nodes), 3))
    for node, force in frame.forces.items():
        loads[node] += force
    for beam in frame.beams:
        half, moment = end_loads(frame, beam)
        loads[beam.first] += [half[0], half[1], moment]
        loads[beam.last] += [half[0], half[1], -moment]
    return loads


def end_loads(frame: Frame, beam: Beam) -> tuple[Floats, float]:
    """Half the beam's load [N] and its fixed-end moment w_n l^2/12 [N m]."""
    (x1, y1), (x2, y2) = frame.nodes[beam.first], frame.nodes[beam.last]
    length = float(np.hypot(x2 - x1, y2 - y1))
    across = (beam.load[1] * (x2 - x1) - beam.load[0] * (y2 - y1)) / length
    return np.array(beam.load) * length / 2, across * length**2 / 12
