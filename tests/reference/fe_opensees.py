"""Plane frames solved with OpenSeesPy: corotational beam elements, full Newton iteration.

OpenSeesPy is the Python face of a general-purpose compiled finite-element program.
"""

import math

import numpy as np
from frame import Bar, Beam, Floats, Frame, FrameSolution, NoSolution, end_loads, nodal_loads
from programs import program

ops = program("openseespy.opensees")

COROTATIONAL, P_DELTA, LINEAR = "Corotational", "PDelta", "Linear"


def solve_frame(
    frame: Frame, transform: str = COROTATIONAL, steps: int = 1, settled: float = 1e-8
) -> FrameSolution:
    """Find the frame's equilibrium.

    Parameters
    ----------
    frame : Frame
        [m, N]
    transform : str
        How element and global axes are tied: COROTATIONAL, P_DELTA or LINEAR
    steps : int
        Load steps; ten times as many are tried if these fail [1]
    settled : float
        Norm of the last change of places and rotations below which iteration ends [m, rad]

    Returns
    -------
    FrameSolution
        [m, N]
    """
    for count in (steps, 10 * steps):
        build(frame, transform)
        apply_loads(nodal_loads(frame))
        prepare(1 / count, settled)
        if ops.analyze(count) == 0:
            return _read(frame)
    raise NoSolution("OpenSees found no equilibrium: the load may be beyond buckling.")


def build(frame: Frame, transform: str) -> None:
    """Hand nodes, supports, elements and hinges to the program.

    Parameters
    ----------
    frame : Frame
        [m, N]
    transform : str
        As in `solve_frame`
    """
    ops.wipe()
    ops.model("basic", "-ndm", 2, "-ndf", 3)
    for tag, (x, y) in enumerate(frame.nodes):
        ops.node(tag, x, y)
    for tag, held in frame.supports.items():
        ops.fix(tag, *(int(one) for one in held))
    ops.geomTransf(transform, 1)
    for tag, beam in enumerate(frame.beams):
        _add_beam(tag, beam)
    for tag, bar in enumerate(frame.bars, start=len(frame.beams)):
        _add_bar(tag, bar, transform)
    for leader, follower in frame.hinges:
        ops.equalDOF(leader, follower, 1, 2)


def apply_loads(loads: Floats) -> None:
    """Put loads of shape (nodes, 3) [N, N m] into one pattern.

    Parameters
    ----------
    loads : ndarray, shape (nodes, 3)
        [N, N m]
    """
    ops.timeSeries("Linear", 1)
    ops.pattern("Plain", 1, 1)
    for tag in np.flatnonzero(loads.any(axis=1)):
        ops.load(int(tag), *(float(value) for value in loads[tag]))


def prepare(step: float, settled: float) -> None:
    """Choose the solver.

    Parameters
    ----------
    step : float
        Share of the load in each step [1]
    settled : float
        As in `solve_frame` [m, rad]
    """
    ops.constraints("Transformation")
    ops.numberer("RCM")
    ops.system("UmfPack")
    ops.test("NormDispIncr", settled, 60)
    ops.algorithm("Newton")
    ops.integrator("LoadControl", step)
    ops.analysis("Static", "-noWarnings")


def _add_beam(tag: int, beam: Beam) -> None:
    """Area, inertia and shear area stand for EA, EI and GA: the moduli are one.

    A force-based element with three Lobatto points is exact for a moment that grows in a straight
    line, and shears; it is tied to the axes of the whole as the other is.
    """
    ends = (beam.first, beam.last)
    if math.isinf(beam.shear):
        ops.element("elasticBeamColumn", tag, *ends, beam.axial, 1.0, beam.bending, 1)
        return
    sums = beam.axial, beam.bending
    ops.section("Elastic", tag + 1, 1.0, *sums, 1.0, beam.shear / beam.axial)
    ops.beamIntegration("Lobatto", tag + 1, tag + 1, 3)
    ops.element("forceBeamColumn", tag, *ends, 1, tag + 1)


def _add_bar(tag: int, bar: Bar, transform: str) -> None:
    """A link, with its starting tension, if any, as initial stress."""
    material = 2 * tag
    ops.uniaxialMaterial("Elastic", material, bar.axial)
    if bar.tension:
        ops.uniaxialMaterial("InitStressMaterial", material + 1, material, bar.tension)
        material += 1
    kind = "truss" if transform == LINEAR else "corotTruss"
    ops.element(kind, tag, bar.first, bar.last, 1.0, material)


def _read(frame: Frame) -> FrameSolution:
    """Collect the answers, and put back what fixed-end moments and end shares took out."""
    beams = range(len(frame.beams))
    bars = range(len(frame.beams), len(frame.beams) + len(frame.bars))
    basic = np.array([ops.eleResponse(tag, "basicForce") for tag in beams])
    ends = np.array([ops.eleResponse(tag, "globalForce") for tag in beams])[:, [0, 1, 3, 4]]
    shares = [end_loads(frame, beam) for beam in frame.beams]
    half = np.array([share[0] for share in shares])
    fixed = np.array([share[1] for share in shares])
    moments = np.column_stack([basic[:, 1] - fixed, -(basic[:, 2] + fixed)])
    return FrameSolution(
        displacements=np.array([ops.nodeDisp(tag) for tag in range(len(frame.nodes))]),
        axial=basic[:, 0],
        moments=moments,
        ends=ends - np.hstack([half, half]),
        bars=np.array([ops.eleResponse(tag, "axialForce")[0] for tag in bars]),
    )
