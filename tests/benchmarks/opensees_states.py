"""The same boom's states solved by a general-purpose compiled program, against the clock.

The program is OpenSees through OpenSeesPy. A configuration's model is built once and re-loaded
for each state, as its manual describes. The model is made as light as its results allow: the boom
stands on heel pin and a roller above the luffing cylinder, whose thrust and eccentric moment come
from statics; the rope's pull is aimed from where the head was in the state before; with P-delta
elements the front pads are shared displacements.
"""

import math
import time
from dataclasses import dataclass

import numpy as np
import openseespy.opensees as ops
from boom_frame import BoomFrame, boom_frame
from boom_layout import GRAVITY, from_heel, rope_tension
from fe_opensees import COROTATIONAL, P_DELTA, build
from frame import Floats, Frame, end_loads, nodal_loads

from boomsim.machine.model import Machine


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Twin:
    """A configuration's model, built, and what its loads are made of.

    Attributes
    ----------
    machine : Machine
    boom : BoomFrame
    lead, upper : int
        Node where the rope leaves; node of the luffing cylinder's upper pin
    along, across : ndarray, shape (nodes, 3)
        Loads of all masses with the boom upright and level [N, N m]
    places : ndarray, shape (2, nodes)
        x and y of every node [m]
    mouths : tuple of int
        Elements behind which each front pad acts
    fixed : ndarray, shape (moving sections,)
        Fixed-end moments of those elements with the boom level, which the nodes carry [N m]
    """

    machine: Machine
    boom: BoomFrame
    lead: int
    upper: int
    along: Floats
    across: Floats
    places: Floats
    mouths: tuple[int, ...]
    fixed: Floats


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Timing:
    """What a run took and found.

    Attributes
    ----------
    seconds : float
        Of processor time for each state, reading its results included [s]
    heads : ndarray, shape (states, 2)
        Head sheave centre in the base frame [m]
    moments : ndarray, shape (states, moving sections)
        At the mouths, positive with tension on top [N m]
    """

    seconds: float
    heads: Floats
    moments: Floats


def time_states(
    machine: Machine,
    fractions: tuple[float, ...],
    thetas: Floats,
    loads: Floats,
    transform: str = P_DELTA,
    elements: int = 1,
    reset: bool = False,
) -> Timing:
    """Solve many states of one configuration and time them; building is not timed.

    Parameters
    ----------
    machine : Machine
    fractions : tuple of float
        How far each moving section is out, base side first [1]
    thetas : ndarray, shape (states,)
        Boom angles [rad]
    loads : ndarray, shape (states,)
        Gross loads [kg]
    transform : str
        P_DELTA or COROTATIONAL
    elements : int
        For each length of section between supports [1]
    reset : bool
        Whether each state starts from the unloaded boom, else from the state before

    Returns
    -------
    Timing
    """
    twin = build_twin(machine, fractions, transform, elements)
    states = list(zip(thetas.tolist(), loads.tolist(), strict=True))
    lead = twin.places[:, twin.lead].tolist()
    for _ in range(4):
        lead = solve_state(twin, *states[0], lead, reset)[0]
    heads, moments = [], []
    start = time.process_time()
    for theta, load in states:
        lead, head, moment = solve_state(twin, theta, load, lead, reset)
        heads.append(head)
        moments.append(moment)
    seconds = (time.process_time() - start) / len(heads)
    return Timing(seconds=seconds, heads=np.array(heads), moments=np.array(moments))


def build_twin(
    machine: Machine, fractions: tuple[float, ...], transform: str, elements: int
) -> Twin:
    """Build the model of one configuration.

    Parameters
    ----------
    machine : Machine
    fractions : tuple of float
        [1]
    transform : str
        P_DELTA or COROTATIONAL
    elements : int
        For each length of section between supports [1]

    Returns
    -------
    Twin
    """
    level = boom_frame(machine, fractions, 0.0, 0.0, elements=elements)
    upright = boom_frame(machine, fractions, math.pi / 2, 0.0, elements=elements)
    frame, bars = level.frame, level.frame.bars
    contacts = [_arm_root(frame, bars[pad].last) for pad in level.pads]
    light = _light_frame(level, keep_links=transform == COROTATIONAL)
    build(light, transform)
    if transform != COROTATIONAL:
        for pad, contact in zip(level.pads, contacts, strict=True):
            ops.equalDOF(bars[pad].first, contact, 2)
    _choose_solver()
    mouths = tuple(
        next(n for n, beam in enumerate(light.beams) if beam.first == contact)
        for contact in contacts
    )
    return Twin(
        machine=machine,
        boom=level,
        lead=bars[level.rope].first,
        upper=bars[level.cylinder].last,
        along=nodal_loads(upright.frame),
        across=nodal_loads(level.frame),
        places=np.array(frame.nodes).T,
        mouths=mouths,
        fixed=np.array([end_loads(light, light.beams[mouth])[1] for mouth in mouths]),
    )


def solve_state(
    twin: Twin, theta: float, load: float, lead: list[float], reset: bool
) -> tuple[list[float], list[float], Floats]:
    """Put a state's loads on the model, solve it and read it.

    Parameters
    ----------
    twin : Twin
    theta, load : float
        Boom angle [rad], gross load [kg]
    lead : list of float
        Where the rope left the head in the state before [m]
    reset : bool
        Whether to start from the unloaded boom

    Returns
    -------
    lead, head : list of float
        Place where the rope leaves the head, and of the head sheave centre [m]
    moments : ndarray, shape (moving sections,)
        At the mouths [N m]
    """
    if reset:
        ops.reset()
    _put(state_loads(twin, theta, load, lead))
    if ops.analyze(1) != 0:
        raise RuntimeError("OpenSees found no equilibrium.")
    moments = np.array([ops.eleResponse(tag, "basicForce")[1] for tag in twin.mouths])
    moments -= math.cos(theta) * twin.fixed
    return _moved(twin, twin.lead), _moved(twin, twin.boom.head), moments


def _moved(twin: Twin, node: int) -> list[float]:
    """A node's place after loading [m]."""
    x, y = twin.boom.frame.nodes[node]
    return [x + ops.nodeDisp(node, 1), y + ops.nodeDisp(node, 2)]


def state_loads(twin: Twin, theta: float, load: float, lead: list[float]) -> Floats:
    """Loads at the nodes with the rope aimed from `lead` [m], and the cylinder's thrust.

    Parameters
    ----------
    twin : Twin
    theta, load : float
        Boom angle [rad], gross load [kg]
    lead : list of float
        Where the rope leaves the head, as far as known [m]

    Returns
    -------
    ndarray, shape (nodes, 3)
        [N, N m]
    """
    machine, sin, cos = twin.machine, math.sin(theta), math.cos(theta)
    loads = sin * twin.along + cos * twin.across
    loads[twin.boom.head, :2] -= load * GRAVITY * np.array([sin, cos])
    x, y = from_heel(machine, machine.hoist.winch_out, machine.hoist.winch_up, theta)
    away = math.hypot(x - lead[0], y - lead[1])
    pull = rope_tension(machine, load) / away
    loads[twin.lead, :2] += [pull * (x - lead[0]), pull * (y - lead[1])]
    _add_thrust(loads, twin, theta)
    return loads


def _add_thrust(loads: Floats, twin: Twin, theta: float) -> None:
    """The part of the cylinder's push along the boom, at its upper pin, from statics."""
    machine = twin.machine
    cylinder, (x, y) = machine.cylinder, twin.places
    moment = float(x @ loads[:, 1] - y @ loads[:, 0] + loads[:, 2].sum())
    u, v = from_heel(machine, cylinder.base_out, cylinder.base_up, theta)
    dx, dy = cylinder.attach_along - u, -cylinder.attach_below - v
    push = -moment / (cylinder.attach_along * dy + cylinder.attach_below * dx)
    loads[twin.upper, 0] += push * dx


def _arm_root(frame: Frame, end: int) -> int:
    """The node an arm stands on."""
    return next(beam.first for beam in frame.beams if beam.last == end)


def _light_frame(boom: BoomFrame, keep_links: bool) -> Frame:
    """The frame on heel pin and roller, without ropes and cylinder, with links or without."""
    old = boom.frame
    links = [old.bars[pad] for pad in boom.pads]
    ends = {link.last for link in links}
    frame = Frame(nodes=old.nodes, hinges=old.hinges)
    frame.beams = [beam for beam in old.beams if keep_links or beam.last not in ends]
    frame.bars = links if keep_links else []
    frame.supports = dict(old.supports)
    frame.supports[boom.attach] = (False, True, False)
    if not keep_links:
        frame.supports |= dict.fromkeys(ends, (True, True, True))
    return frame


def _choose_solver() -> None:
    """The fastest of the program's choices for this chain; loads stay as put on."""
    ops.timeSeries("Constant", 1)
    ops.constraints("Plain")
    ops.numberer("RCM")
    ops.system("ProfileSPD")
    ops.test("NormDispIncr", 1e-6, 30)
    ops.algorithm("Newton")
    ops.integrator("LoadControl", 1.0)
    ops.analysis("Static", "-noWarnings")
    ops.pattern("Plain", 1, 1)


def _put(loads: Floats) -> None:
    """Take the last state's loads off and put these on."""
    ops.remove("loadPattern", 1)
    ops.pattern("Plain", 1, 1)
    for tag in np.flatnonzero(loads.any(axis=1)).tolist():
        ops.load(tag, *loads[tag].tolist())
