"""The explorer's controls: labelled, keyboard-usable widgets, each with a class of our own."""

from collections.abc import Callable, Iterable
from typing import Any

import ipywidgets as widgets
import numpy as np

from boomsim.lab.scene.scene import BESIDE, Look, Scene, machine_of
from boomsim.lab.scene.scene_changes import systems_of
from boomsim.lab.scene.slider_ranges import Range
from boomsim.lab.widgets.control_map import ranges
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.machine_files import machine_names
from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import layout
from boomsim.mechanics.rope_reach import parts_reeved
from boomsim.rating.rules import RULES
from boomsim.units import SYSTEMS, in_words

RATED_FOR = (("all around", "around"), ("over the rear", "rear"), ("this slew angle", "here"))

ALLOWANCES_OFFERED = (("the rule's", "rule"), ("none", "none"))

PAIRS = [("A and now", (0, -1))]
"""Which two scenes to explain, before any is held."""

STYLE = {"description_width": "88px"}

Heard = Callable[[str, Any], None]
"""What a control tells: its name and its new value."""


def slider(name: str, words: str, span: Range, heard: Heard) -> Any:
    """Make a slider in the units shown.

    Parameters
    ----------
    name : str
        Its class is boomsim-<name>
    words : str
        Label, with the unit
    heard : callable
        Takes the name and the new value
    """
    made = widgets.FloatSlider(
        value=span.least,
        min=span.least,
        max=span.most,
        step=span.step,
        description=words,
        readout_format=f".{span.digits}f",
        style=STYLE,
        continuous_update=True,
    )
    return _told(made, name, heard)


def section_sliders(scene: Scene, heard: Heard) -> dict[str, Any]:
    """One slider for each moving section; a pinned boom's has a stop at every lock position.

    Returns
    -------
    dict of str to widget
        Named "section 1" and so on
    """
    boom, found = machine_of(scene.machine).boom, {}
    for k, fraction in enumerate(scene.extension, start=1):
        name, words = f"section {k}", f"section {k} [%]"
        if BOOM_SYSTEMS[scene.system].locks:
            options = [(f"{100 * p:g}", p) for p in sorted(boom.lock_positions)]
            made = widgets.SelectionSlider(
                options=options, value=fraction, description=words, style=STYLE
            )
        else:
            made = widgets.FloatSlider(
                value=100 * fraction,
                min=0.0,
                max=100.0,
                step=0.5,
                description=words,
                readout_format=".1f",
                style=STYLE,
            )
        found[name] = _told(made, name.replace(" ", "-"), heard, told=name)
    return found


def place_sliders(scene: Scene, look: Look, heard: Heard) -> dict[str, Any]:
    """Sliders for radius, boom angle, load and slew angle."""
    spans = ranges(scene, look)
    words = {"radius": "radius", "angle": "boom angle", "load": "gross load", "slew": "slew angle"}
    return {
        name: slider(
            name, f"{in_words(words[name], look.units)} [{span.shown.symbol}]", span, heard
        )
        for name, span in spans.items()
    }


PLATES = (0.7, 1.5)
"""Ends of the slider for the plates' thickness, over that of the machine's own [1]."""


def plates_slider(heard: Heard) -> dict[str, Any]:
    """Make the slider that builds the boom light or stout.

    Returns
    -------
    dict of str to widget
        Named "plates"
    """
    made = widgets.FloatSlider(
        value=1.0,
        min=PLATES[0],
        max=PLATES[1],
        step=0.05,
        description="plates [×]",
        tooltip="Plates of the boom so many times as thick as the machine's; its weight follows",
        readout_format=".2f",
        style=STYLE,
    )
    return {"plates": _told(made, "plates", heard)}


def disturbance_sliders(scene: Scene, heard: Heard) -> dict[str, Any]:
    """Make the sliders of what eats capacity: off until moved."""
    rows = {
        "wind_speed": ("wind [m/s]", 0.0, 20.0, 0.5, ".1f"),
        "lean": ("lean ahead [°]", -3.0, 3.0, 0.1, ".1f"),
        "lean_across": ("lean left [°]", -3.0, 3.0, 0.1, ".1f"),
        "side_pull": ("side pull [%]", 0.0, 5.0, 0.1, ".1f"),
    }
    made: dict[str, Any] = {}
    for name, (words, least, most, step, digits) in rows.items():
        one = widgets.FloatSlider(
            value=0.0,
            min=least,
            max=most,
            step=step,
            description=words,
            readout_format=digits,
            style=STYLE,
        )
        made[name] = _told(one, name.replace("_", "-"), heard, told=name)
    words = "wind from the side"
    across = widgets.Checkbox(value=scene.disturbances.wind_across, description=words, indent=False)
    made["wind_across"] = _told(across, "wind-across", heard, told="wind_across")
    return made


def choices(scene: Scene, look: Look, heard: Heard) -> dict[str, Any]:
    """Make the lists to choose from."""
    known = dict.fromkeys((*machine_names(), scene.machine))
    rows: dict[str, tuple[str, Iterable[Any], Any]] = {
        "held": ("keep", (("the radius", "radius"), ("the boom angle", "angle")), scene.held),
        "system": ("boom system", (), None),
        "counterweight": ("counterweight", (), None),
        "support": ("support", (), None),
        "parts": ("parts of line", (), None),
        "rated_for": ("rated for", RATED_FOR, scene.rated_for),
        "rule": ("rule", tuple(RULES), scene.rule),
        "allowances": ("allowances", ALLOWANCES_OFFERED, scene.allowances),
        "machine": ("machine", tuple(known), scene.machine),
        "units": ("units", tuple(SYSTEMS), look.units),
        "exaggeration": ("deflection drawn", _bends(look), look.exaggeration),
    }
    made = {}
    for name, (words, options, value) in rows.items():
        one = widgets.Dropdown(options=options, value=value, description=words, style=STYLE)
        kind = "keep" if name == "held" else name.replace("_", "-")
        made[name] = _told(one, kind, heard, told=name)
    refill(made, scene, look)
    return made


def _bends(look: Look) -> list[tuple[str, float]]:
    times = sorted({1.0, 5.0, 10.0, 20.0, look.exaggeration})
    return [("true to scale" if one == 1.0 else f"× {one:g}", one) for one in times]


def _parts_offered(machine: Machine, scene: Scene) -> tuple[int, ...]:
    """Parts of line for which the rope on the drum reaches with the scene's boom.

    A crane reeved in fewer than was once chosen keeps the choice: a shorter boom has it again.
    """
    length = layout(machine.boom, extension=np.array(scene.extension)).boom_length
    most = int(parts_reeved(machine, length=length, most=max(machine.hoist.parts))[0])
    return tuple(parts for parts in machine.hoist.parts if parts <= most)


def refill(made: dict[str, Any], scene: Scene, look: Look) -> None:
    """Give the lists that depend on the machine or on the units what there is, in its words.

    Parameters
    ----------
    made : dict of str to widget
        From :func:`choices`
    """
    machine = machine_of(scene.machine)

    def said(words: str) -> str:
        return in_words(words, look.units)

    reached = _parts_offered(machine, scene)
    wanted = scene.parts or machine.hoist.parts[-1]
    offered: dict[str, tuple[Any, ...]] = {
        "system": tuple((said(name), name) for name in systems_of(machine.boom)),
        "counterweight": tuple(c.name for c in machine.counterweights),
        "support": tuple((said(s.name), s.name) for s in machine.supports),
        "parts": reached,
        "rated_for": tuple((said(words), name) for words, name in RATED_FOR),
    }
    usual = {
        "system": scene.system,
        "counterweight": scene.counterweight or machine.counterweights[0].name,
        "support": scene.support or machine.supports[0].name,
        "parts": max((n for n in reached if n <= wanted), default=reached[0]),
        "rated_for": scene.rated_for,
    }
    for name, options in offered.items():
        if tuple(made[name].options) != options:
            made[name].options = options
        if made[name].value != usual[name]:
            made[name].value = usual[name]


def look_controls(look: Look, heard: Heard) -> dict[str, Any]:
    """Large type and what is shown beside it; held scenes at one radius or each at its own."""
    narrow = {"description_width": "46px"}
    made = {
        "large": widgets.ToggleButton(value=look.projector, description="Large type"),
        "beside": widgets.Dropdown(
            options=BESIDE, value=look.beside, description="beside", style=narrow
        ),
        "alike": widgets.ToggleButton(value=True, description="Held: same radius and load"),
        "pair": widgets.Dropdown(options=PAIRS, description="why", style=narrow),
    }
    made["beside"].layout.width = made["pair"].layout.width = "168px"
    return {name: _told(one, name, heard) for name, one in made.items()}


def button(words: str, name: str, pressed: Callable[[], None], *, tip: str) -> Any:
    """Make a button with a tooltip.

    Parameters
    ----------
    words, name : str
        Its class is boomsim-<name>
    """
    made = widgets.Button(description=words, tooltip=tip)
    made.add_class(f"boomsim-{name}")
    made.on_click(lambda _: pressed())
    return made


def _told(made: Any, name: str, heard: Heard, *, told: str | None = None) -> Any:
    made.add_class(f"boomsim-{name}")
    made.observe(lambda change: heard(told or name, change["new"]), names="value")
    return made
