"""Plane frames solved with PyNite: Euler-Bernoulli beams, P-delta on small rotations.

PyNite is a general-purpose frame library in Python, written apart from OpenSees. It looks for
nodes that lie on a member and joins them, so rows of beams that lie over each other are drawn in
layers, a hand's breadth apart across the plane, and pinned together by rigid links across.
"""

import math

import numpy as np
from frame import Beam, Floats, Frame, FrameSolution, NoSolution
from programs import program

FEModel3D = program("Pynite").FEModel3D

LAYER = 0.1
"""Distance between layers [m]."""
SETTLED = 1e-5
"""Change of the nodes' places below which the rope's direction counts as found [m]."""
PIN_BENDING = 1e11
"""Bending stiffness EI of the links between layers [N m2]."""


def solve_frame(frame: Frame, rounds: int = 8) -> FrameSolution:
    """Find the frame's equilibrium; the pull of soft bars follows the displaced nodes.

    Parameters
    ----------
    frame : Frame
        [m, N]
    rounds : int
        Most rounds for the direction of the soft bars' pull [1]

    Returns
    -------
    FrameSolution
        [m, N]
    """
    moved = np.zeros((len(frame.nodes), 3))
    for _ in range(rounds):
        model = _model(frame, moved)
        _analyse(model)
        solution = _read(frame, model)
        if np.abs(solution.displacements - moved).max() < SETTLED:
            return solution
        moved = solution.displacements
    raise NoSolution("The direction of the rope did not settle.")


def _analyse(model: FEModel3D) -> None:
    """Run the P-delta analysis, and put the library's many errors into one."""
    try:
        model.analyze_PDelta(check_stability=False)
    except Exception as error:
        raise NoSolution(f"PyNite found no equilibrium: {error}") from error


def _model(frame: Frame, moved: Floats) -> FEModel3D:
    """The frame in the library's terms."""
    model = FEModel3D()
    model.add_material("unit", 1.0, 0.5, 0.0, 0.0)
    _add_nodes(model, frame)
    for number, beam in enumerate(frame.beams):
        _add_beam(model, f"beam{number}", beam, frame)
    for number, bar in enumerate(frame.bars):
        if not bar.tension:
            _add_link(model, f"bar{number}", bar.first, bar.last, bar.axial)
    for number, (leader, follower) in enumerate(frame.hinges):
        _add_pin(model, f"pin{number}", leader, follower)
    for node, force in {**frame.forces, **_pulls(frame, moved)}.items():
        _push(model, node, force)
    return model


def _pulls(frame: Frame, moved: Floats) -> dict[int, list[float]]:
    """Forces at nodes, those of the soft bars along their displaced lines included."""
    forces: dict[int, list[float]] = {}
    for bar in frame.bars:
        if bar.tension:
            way = np.array(frame.nodes[bar.last]) + moved[bar.last, :2]
            way -= np.array(frame.nodes[bar.first]) + moved[bar.first, :2]
            pull = bar.tension * way / np.hypot(*way)
            old = frame.forces.get(bar.first, [0.0, 0.0, 0.0])
            forces[bar.first] = [old[0] + float(pull[0]), old[1] + float(pull[1]), old[2]]
    return forces


def _push(model: FEModel3D, node: int, force: list[float]) -> None:
    """A force and moment at a node."""
    for direction, size in zip(("FX", "FY", "MZ"), force, strict=True):
        model.add_node_load(f"n{node}", direction, size)


def _layers(frame: Frame) -> list[int]:
    """A number for each node, the same for nodes joined by beams."""
    layer = list(range(len(frame.nodes)))
    for beam in frame.beams:
        a, b = layer[beam.first], layer[beam.last]
        layer = [a if one == b else one for one in layer]
    ranks = {one: rank for rank, one in enumerate(dict.fromkeys(layer))}
    return [ranks[one] for one in layer]


def _add_nodes(model: FEModel3D, frame: Frame) -> None:
    """Nodes in their layers, held so that only x, y and rotation in the plane are free."""
    for number, ((x, y), layer) in enumerate(zip(frame.nodes, _layers(frame), strict=True)):
        model.add_node(f"n{number}", x, y, LAYER * layer)
        dx, dy, rz = frame.supports.get(number, (False, False, False))
        model.def_support(f"n{number}", dx, dy, True, True, True, rz)


def _add_beam(model: FEModel3D, name: str, beam: Beam, frame: Frame) -> None:
    """Area and inertia stand for EA and EI: the modulus is one."""
    model.add_section(name, beam.axial, beam.bending, beam.bending, beam.bending)
    model.add_member(name, f"n{beam.first}", f"n{beam.last}", "unit", name)
    for direction, size in zip(("FX", "FY"), beam.load, strict=True):
        if size:
            model.add_member_dist_load(name, direction, size, size)


def _add_link(model: FEModel3D, name: str, first: int, last: int, axial: float) -> None:
    """A member hinged at both ends."""
    model.add_section(name, axial, 1.0, 1.0, 1.0)
    model.add_member(name, f"n{first}", f"n{last}", "unit", name)
    model.def_releases(name, Rzi=True, Rzj=True, Ryi=True, Ryj=True)


def _add_pin(model: FEModel3D, name: str, leader: int, follower: int) -> None:
    """A rigid link across the layers, free to twist."""
    model.add_section(name, PIN_BENDING, PIN_BENDING, PIN_BENDING, 1e-6)
    model.add_member(name, f"n{leader}", f"n{follower}", "unit", name)


def _read(frame: Frame, model: FEModel3D) -> FrameSolution:
    """Collect the answers. Signs: local end moments turn anticlockwise."""
    combo = "Combo 1"
    nodes = [model.nodes[f"n{k}"] for k in range(len(frame.nodes))]
    members = [model.members[f"beam{k}"] for k in range(len(frame.beams))]
    local = np.array([member.f(combo).ravel() for member in members])
    overall = np.array([member.F(combo).ravel() for member in members])
    return FrameSolution(
        displacements=np.array([[n.DX[combo], n.DY[combo], n.RZ[combo]] for n in nodes]),
        axial=local[:, 6],
        moments=np.column_stack([local[:, 5], -local[:, 11]]),
        ends=overall[:, [0, 1, 6, 7]],
        bars=np.array([_bar_tension(frame, model, k) for k in range(len(frame.bars))]),
    )


def _bar_tension(frame: Frame, model: FEModel3D, number: int) -> float:
    """Tension of a link in the plane; links between layers lean a little across it."""
    bar = frame.bars[number]
    if bar.tension:
        return bar.tension
    first, last = model.nodes[f"n{bar.first}"], model.nodes[f"n{bar.last}"]
    plane = math.hypot(last.X - first.X, last.Y - first.Y)
    lean = plane / math.hypot(plane, last.Z - first.Z)
    return float(model.members[f"bar{number}"].f("Combo 1")[6, 0]) * lean
