"""A scene: everything that is chosen in the explorer. A look: how it is shown."""

from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

import numpy as np

from boomsim.machine.machine_files import load_machine, machine_names
from boomsim.machine.model import CALM, Disturbances, Machine, Rigging
from boomsim.machine.plate_thickness import with_plates
from boomsim.rating.setup import DEFAULT_ALLOWANCES, SECTORS, Setup, set_up

HELD = ("radius", "angle")
"""What stays while the rest moves: the loaded radius, or the boom angle."""

RATED_FOR = (*SECTORS, "here")
"""Slew angles that the rating holds for: all around, over the rear, or the one slewed to."""

FREE = "free"
"""The boom system of a boom whose locks are taken out."""

BESIDE = ("limits", "chart", "moments", "plan")
"""What projector mode shows beside the side view."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """Everything that is chosen.

    Attributes
    ----------
    machine : str
        Built-in name or TOML file
    plates : float
        Thickness of the boom's plates over that of the machine's own [1]
    system : str
        Boom system, or "free"
    extension : tuple of float
        Fraction of each stroke, base side first [1]
    held : str
        "radius" or "angle": which of the next two is meant
    radius, angle : float
        Loaded radius [m], boom angle [rad]
    load : float
        Gross load [kg]
    slew : float
        Where the boom points; 0 over the rear, anticlockwise from above [rad]
    rated_for : str
        "around", "rear" or "here"
    counterweight, support : str or None
        Names among the machine's choices; None is the usual one
    parts : int or None
        Parts of line; None is the usual number
    rule : str
        A name in `boomsim.rating.rules.RULES`
    allowances : str
        "rule": strength bears the rule's allowances; "none": what is given and nothing else
    """

    machine: str = "yard60"
    plates: float = 1.0
    system: str = "pinned"
    extension: tuple[float, ...] = (0.0, 0.0, 0.45, 0.45)
    held: str = "radius"
    radius: float = 10.0
    angle: float = 1.0
    load: float = 8000.0
    slew: float = 0.0
    rated_for: str = "around"
    counterweight: str | None = None
    support: str | None = None
    parts: int | None = None
    rule: str = "share"
    allowances: str = DEFAULT_ALLOWANCES
    disturbances: Disturbances = CALM


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How a scene is shown.

    Attributes
    ----------
    exaggeration : float
        What the deflection of the thin line is multiplied by [1]
    projector : bool
        Large type and fewer views
    beside : str
        What projector mode shows beside the side view; one of `BESIDE`
    """

    units: str = "metric"
    exaggeration: float = 10.0
    projector: bool = False
    beside: str = "limits"


def machine_of(name: str) -> Machine:
    """Load a machine once, and again when its file has changed.

    Parameters
    ----------
    name : str
        Built-in name or TOML file
    """
    return _machine(name, None if name in machine_names() else _stamp(name))


@lru_cache(maxsize=32)
def _machine(name: str, stamp: int | None) -> Machine:
    return load_machine(name)


def _stamp(name: str) -> int | None:
    path = Path(name)
    return path.stat().st_mtime_ns if path.is_file() else None


def setup_of(scene: Scene) -> Setup:
    """Settle a scene's setup; equal choices give one and the same object."""
    slew: float | str = scene.slew if scene.rated_for == "here" else scene.rated_for
    return _setup(
        machine_of(scene.machine),
        scene.plates,
        Rigging(counterweight=scene.counterweight, support=scene.support, parts=scene.parts),
        slew,
        scene.rule,
        scene.allowances,
        scene.disturbances,
    )


@lru_cache(maxsize=512)
def _setup(
    machine: Machine,
    plates: float,
    rigging: Rigging,
    slew: float | str,
    rule: str,
    allowances: str,
    disturbances: Disturbances,
) -> Setup:
    return set_up(
        _built(machine, plates),
        rigging=rigging,
        slew=slew,
        rule=rule,
        allowances=allowances,
        disturbances=disturbances,
    )


@lru_cache(maxsize=64)
def _built(machine: Machine, plates: float) -> Machine:
    return with_plates(machine, factor=plates)


def first_scene(machine: str = "yard60") -> Scene:
    """Where the explorer opens with a machine: its demonstration, half loaded."""
    from boomsim.lab.scene.slider_ranges import rounded
    from boomsim.rating.capacity import rate
    from boomsim.rating.comparison.comparison_study import demonstration

    boom = machine_of(machine).boom
    ways = demonstration(boom)
    middle = len(ways.length) // 2
    extension = tuple(float(f) for f in ways.extension[middle])
    reach = machine_of(machine).heel_out + float(ways.length[middle])
    start = Scene(machine=machine, system=ways.system[middle], extension=extension)
    radius = rounded(0.55 * reach)
    rated = rate(setup_of(start), extension=np.array(extension), radius=np.array([radius]))
    load = 0.6 * float(np.nan_to_num(rated.capacity[0, 0]))
    return replace(start, radius=radius, load=rounded(load))
