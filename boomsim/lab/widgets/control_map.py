"""What each control does to a scene: its name and its value in, the next scene out. No widgets."""

from dataclasses import replace
from functools import lru_cache
from typing import Any

import numpy as np

from boomsim.lab.scene.scene import Look, Scene, machine_of
from boomsim.lab.scene.scene_changes import (
    choose_machine,
    choose_system,
    hold_angle,
    hold_radius,
    move_section,
)
from boomsim.lab.scene.slider_ranges import Range, angle_range, load_range, radius_range, slew_range
from boomsim.lab.solve.solved_scene import Answer
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import layout

FACTORS = {
    "wind_speed": 1.0,
    "lean": float(np.radians(1.0)),
    "lean_across": float(np.radians(1.0)),
    "side_pull": 0.01,
}
"""SI value of one unit of the sliders of what eats capacity."""


def ranges(scene: Scene, look: Look) -> dict[str, Range]:
    """How far the sliders for radius, boom angle, load and slew angle go with this boom."""
    return _ranges(machine_of(scene.machine), scene.extension, look.units)


@lru_cache(maxsize=64)
def _ranges(machine: Machine, extension: tuple[float, ...], units: str) -> dict[str, Range]:
    length = round(float(layout(machine.boom, extension=extension).boom_length[0]), 6)
    return {
        "radius": radius_range(machine, length=length, units=units),
        "angle": angle_range(machine, units=units),
        "load": load_range(machine, units=units),
        "slew": slew_range(units=units),
    }


def moved(scene: Scene, name: str, value: Any, *, look: Look, now: Answer) -> Scene:
    """Move a control.

    Parameters
    ----------
    name : str
        Of the control
    value : object
        As the control gives it, in the units shown
    now : Answer
        To `scene`; what is held next begins where the boom is
    """
    if name.startswith("section "):
        fraction = value if BOOM_SYSTEMS[scene.system].locks else value / 100.0
        return move_section(scene, section=int(name.split()[1]), fraction=fraction)
    if name in FACTORS or name == "wind_across":
        changed = value * FACTORS[name] if name in FACTORS else value
        return _with(scene, "disturbances", replace(scene.disturbances, **{name: changed}))
    if name in ("radius", "angle", "load", "slew"):
        return _placed(scene, name, ranges(scene, look)[name].to_si(value))
    if name == "plates":
        return _with(scene, name, round(value, 9))
    if name == "held":
        return holding(scene, value, now=now)
    if name == "system":
        return choose_system(scene, system=value)
    if name == "machine":
        return choose_machine(scene, machine=value)
    return _with(scene, name, value)


def _with(scene: Scene, name: str, value: Any) -> Scene:
    return replace(scene, **{name: value})


def _placed(scene: Scene, name: str, value: float) -> Scene:
    if name == "radius":
        return hold_radius(scene, radius=value)
    if name == "angle":
        return hold_angle(scene, angle=value)
    return _with(scene, name, value)


def holding(scene: Scene, what: str, *, now: Answer) -> Scene:
    """Hold radius or boom angle, at what it is now.

    Parameters
    ----------
    what : str
        "radius" or "angle"
    now : Answer
        To `scene`
    """
    at = now.at
    if what == scene.held or at is None:
        return scene
    if what == "radius":
        return hold_radius(scene, radius=float(at.radius[0, 0]))
    return hold_angle(scene, angle=float(at.state.angle[0, 0]))


def spans_of(scene: Scene, *, look: Look, now: Answer) -> dict[str, Range]:
    """How far the sliders go, and as far as what is drawn.

    Parameters
    ----------
    now : Answer
        To `scene`
    """
    places = _places(scene, now)
    return {name: span.with_value(places[name]) for name, span in ranges(scene, look).items()}


def _places(scene: Scene, now: Answer) -> dict[str, float]:
    """Radius, boom angle, load and slew angle: what is held, and what follows from it [SI]."""
    at = now.at
    places = {name: float(getattr(scene, name)) for name in ("load", "slew")}
    places["angle"] = now.angle
    places["radius"] = scene.radius if at is None else float(at.radius[0, 0])
    return {**places, scene.held: float(getattr(scene, scene.held))}


def shown_values(scene: Scene, *, look: Look, now: Answer) -> dict[str, Any]:
    """Where every slider stands in a scene; the one of radius and angle that follows, too.

    Parameters
    ----------
    now : Answer
        To `scene`

    Returns
    -------
    dict of str to object
        By name, in the units shown
    """
    spans, places = spans_of(scene, look=look, now=now), _places(scene, now)
    shown: dict[str, Any] = {name: span.to_shown(places[name]) for name, span in spans.items()}
    scale = 1.0 if BOOM_SYSTEMS[scene.system].locks else 100.0
    for k, fraction in enumerate(scene.extension, start=1):
        shown[f"section {k}"] = fraction if scale == 1.0 else round(fraction * scale, 9)
    for name, factor in FACTORS.items():
        shown[name] = round(getattr(scene.disturbances, name) / factor, 9)
    return {**shown, "plates": scene.plates, "wind_across": scene.disturbances.wind_across}
