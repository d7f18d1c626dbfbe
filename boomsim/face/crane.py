"""A crane set up from text or numbers: machine, rigging, rule, disturbances, ground."""

from __future__ import annotations

from os import PathLike
from typing import TYPE_CHECKING, TypeAlias, TypedDict, Unpack

from boomsim.face.given_values import Given, figure

if TYPE_CHECKING:
    from boomsim.machine.model import Disturbances, Machine
    from boomsim.rating.setup import Setup

DEMONSTRATION = "yard60"
"""The machine that is taken when none is named."""

Crane: TypeAlias = "str | PathLike[str] | Machine | Setup"
"""A built-in name, a TOML file, a machine, or a crane set up already."""


class Choices(TypedDict, total=False):
    """How a crane is set up: rigging, rule and disturbances; every one may be left out.

    Attributes
    ----------
    counterweight, support : str
        One of the machine's; default: its first
    parts : int
        Parts of line; default: the most
    slew : str or float
        "around", "rear", or a slew angle, 0 over the rear [rad]
    rule : str
        "share", "test-load" or "limit-states"
    allowances : str
        "rule": strength bears the rule's allowances; "none": as in a calculation by hand
    wind : str or float
        Gust, from behind unless `wind_across` [m/s]
    load_area : str or float
        Wind area of each tonne of load [m2]
    side_pull : str or float
        Share of the load [1]
    hoist_speed : str or float
        Of lifting off [m/s]
    hoist_class : int
        1 soft to 4 stiff
    lean, lean_across : str or float
        Downhill ahead of the boom and to its left [rad]
    """

    counterweight: str | None
    support: str | None
    parts: int | None
    slew: Given
    rule: str
    allowances: str
    wind: Given | None
    wind_across: bool
    load_area: Given | None
    side_pull: Given | None
    hoist_speed: Given | None
    hoist_class: int
    lean: Given | None
    lean_across: Given | None


def set_up(machine: Crane = DEMONSTRATION, **choices: Unpack[Choices]) -> Setup:
    """Set a crane up.

    Parameters
    ----------
    machine : str, path or Machine
        A built-in name, a TOML file, or a machine
    **choices
        Those of :class:`Choices`, such as ``counterweight="10 t", slew="rear"``

    Returns
    -------
    Setup
        For any of the studies
    """
    from boomsim.machine.model import Rigging
    from boomsim.rating.setup import Setup
    from boomsim.rating.setup import set_up as settle

    _refuse_unknown(choices)
    if isinstance(machine, Setup):
        return _as_it_is(machine, choices)
    rigging = Rigging(
        counterweight=choices.get("counterweight"),
        support=choices.get("support"),
        parts=choices.get("parts"),
    )
    return settle(
        _machine(machine),
        rigging=rigging,
        slew=slew(choices.get("slew", "around")),
        rule=choices.get("rule", "share"),
        disturbances=disturbances(choices),
        allowances=choices.get("allowances", "rule"),
    )


def on_ground(setup: Setup, ground: Given | None) -> Setup:
    """Put the crane on ground of another stiffness.

    Parameters
    ----------
    ground : str, float or None
        Stiffness of one float with the ground under it; None: the machine's [N/m]
    """
    from dataclasses import replace

    from boomsim.rating.setup_variants import with_support

    if ground is None:
        return setup
    stiffness = figure(ground, "stiffness", what="--ground")
    if not 1e3 <= stiffness <= 1e12:
        raise ValueError(
            f"--ground: {stiffness:g} N/m is no stiffness of a float on ground. Give about 1 MN/m "
            "for very soft ground to 100 MN/m for concrete."
        )
    return with_support(setup, replace(setup.support, stiffness=stiffness))


def slew(value: Given) -> float | str:
    """Read a slew angle, or pass on the name of a sector [rad]."""
    if isinstance(value, str) and not any(sign.isdigit() for sign in value):
        return value
    return figure(value, "angle", what="--slew")


def disturbances(choices: Choices) -> Disturbances:
    """Read what disturbs a lift."""
    from boomsim.machine.model import Disturbances

    def read(name: str, quantity: str) -> float:
        what = "--" + name.replace("_", "-")
        return figure(choices.get(name), quantity, what=what) or 0.0  # type: ignore[call-overload]

    hoist_class = choices.get("hoist_class", 2)
    if hoist_class not in (1, 2, 3, 4):
        raise ValueError(
            f"--hoist-class {hoist_class} is not a class. Give 1 for a soft hoist, 2, 3, or "
            "4 for a stiff one."
        )
    found = Disturbances(
        wind_speed=read("wind", "speed"),
        wind_across=choices.get("wind_across", False),
        load_area=read("load_area", "area") / 1000.0,
        side_pull=read("side_pull", "share"),
        hoist_speed=read("hoist_speed", "speed"),
        hoist_class=hoist_class,
        lean=read("lean", "angle"),
        lean_across=read("lean_across", "angle"),
    )
    _refuse_absurd(found)
    return found


def _refuse_absurd(found: Disturbances) -> None:
    from math import radians

    from boomsim.units import outside

    steep = radians(10.0)
    bounds = {
        "wind_speed": (0.0, 60.0, "--wind", "speed", "9 m/s"),
        "load_area": (0.0, 0.1, "--load-area", "area_per_mass", "1 m2"),
        "side_pull": (0.0, 0.3, "--side-pull", "share", "2 %"),
        "hoist_speed": (0.0, 3.0, "--hoist-speed", "speed", "0.3 m/s"),
        "lean": (-steep, steep, "--lean", "angle", "1 deg"),
        "lean_across": (-steep, steep, "--lean-across", "angle", "1 deg"),
    }
    for name, (least, most, option, quantity, example) in bounds.items():
        value = getattr(found, name)
        if not least <= value <= most:
            raise ValueError(
                f"{option}: {outside(value, least, most, quantity)}, beyond which this model says "
                f"nothing. Give a value inside, such as '{example}'."
            )


def _machine(machine: str | PathLike[str] | Machine) -> Machine:
    from boomsim.machine.machine_files import load_machine
    from boomsim.machine.model import Machine

    return machine if isinstance(machine, Machine) else load_machine(machine)


def _as_it_is(setup: Setup, choices: Choices) -> Setup:
    """Take a crane that is set up; what would set it up anew is refused."""
    if choices:
        raise ValueError(
            f"The crane is set up already, so {', '.join(choices)} cannot be chosen any more. Give "
            "it to set_up, or give the machine."
        )
    return setup


def _refuse_unknown(choices: Choices) -> None:
    """Say which choices there are, as Python does for a wrong keyword."""
    from boomsim.units import did_you_mean

    for name in choices:
        if name not in Choices.__annotations__:
            near = did_you_mean(name, list(Choices.__annotations__))
            raise TypeError(f"There is no choice {name!r}.{near}")
