"""Everything that is seen of an explorer: its widgets, laid out, and how they follow a scene."""

from collections.abc import Callable
from threading import get_ident
from typing import Any

import ipywidgets as widgets

from boomsim.lab.scene.scene import Look, Scene
from boomsim.lab.scene.slider_ranges import Range
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.held_scenes import NOW
from boomsim.lab.widgets import slider_controls as controls
from boomsim.lab.widgets.control_map import FACTORS, shown_values, spans_of
from boomsim.lab.widgets.explorer_assets import head
from boomsim.rating.strategies import letter

MOST_HELD = 3

ROW = ("hold", "drop", "alike", "pair", "undo", "reset", "code", "save", "large", "beside")
"""Buttons and lists under the picture, in their order."""

EATS = (*FACTORS, "wind_across")
"""Sliders of what eats capacity; they stand apart."""


class Panel:
    """The widgets of one explorer.

    Parameters
    ----------
    heard : callable
        Told the name and the new value of a control that a person moves
    buttons : dict of str to (str, callable, str)
        Words, what a press does, and a tip, by name
    shelf : widget
        Panel of the list of scenes
    """

    def __init__(
        self,
        scene: Scene,
        look: Look,
        *,
        heard: controls.Heard,
        buttons: dict[str, tuple[str, Callable[[], None], str]],
        shelf: Any,
    ) -> None:
        self._heard_by = heard
        self._following: int | None = get_ident()
        self.picture, self.held = _html("picture"), _html("held")
        self.error, self.output = _html("error"), _html("out")
        self.sliders: dict[str, Any] = {}
        self._stands: dict[str, Any] = {}
        self.choices = controls.choices(scene, look, self._heard)
        self.buttons = {
            name: controls.button(words, name, pressed, tip=tip)
            for name, (words, pressed, tip) in buttons.items()
        }
        self.buttons |= controls.look_controls(look, self._heard)
        self._moving, self._eats = _box("moves"), _box("eats")
        self.refill(scene, look)
        self.root = self._lay_out(shelf)
        self._following = None

    def _heard(self, name: str, value: Any) -> None:
        # What this thread sets while it follows a scene is no news; another thread's move is.
        if self._following != get_ident() and not self._is_echo(name, value):
            self._heard_by(name, value)

    def _is_echo(self, name: str, value: Any) -> bool:
        """Browsers bring a slider to the nearest step and tell its new value: nobody moved it."""
        step = getattr(self.sliders.get(name), "step", None)
        last = self._stands.get(name)
        return step is not None and last is not None and abs(value - last) < 0.75 * step

    def refill(self, scene: Scene, look: Look) -> None:
        """Make the sliders anew for another machine, boom system or system of units."""
        self.sliders = {
            **controls.section_sliders(scene, self._heard),
            **controls.place_sliders(scene, look, self._heard),
            **controls.plates_slider(self._heard),
            **controls.disturbance_sliders(scene, self._heard),
        }
        moving = [one for name, one in self.sliders.items() if name not in EATS]
        self._moving.children = moving
        self._eats.children = [self.sliders[name] for name in EATS]

    def _lay_out(self, shelf: Any) -> Any:
        choices = _box("choices", *self.choices.values())
        stage = _box("stage", self._moving, self.picture, choices)
        row = _box("buttons", *(self.buttons[name] for name in ROW))
        more = widgets.Accordion([shelf, self._eats])
        more.set_title(0, "Scenes")
        more.set_title(1, "What eats capacity: wind, lean, side pull")
        more.selected_index = None
        start = widgets.HTML(head())
        root = widgets.VBox([start, self.error, stage, row, self.held, self.output, more])
        root.add_class("boomsim-explorer")
        return root

    def follow(self, scene: Scene, look: Look, *, now: Answer, held: int) -> None:
        """Bring every control to a scene, without telling anyone.

        Parameters
        ----------
        now : Answer
            To the scene
        held : int
            How many scenes are held
        """
        self._following = get_ident()
        try:
            self._stands = shown_values(scene, look=look, now=now)
            for name, span in spans_of(scene, look=look, now=now).items():
                _stretch(self.sliders[name], span)
            for name, value in self._stands.items():
                _bring(self.sliders[name], value)
            controls.refill(self.choices, scene, look)
            for name in ("held", "rated_for", "rule", "allowances", "machine"):
                _set(self.choices[name], getattr(scene, name))
            for name in ("units", "exaggeration"):
                _set(self.choices[name], getattr(look, name))
            self._follow_look(look, held)
        finally:
            self._following = None

    def _follow_look(self, look: Look, held: int) -> None:
        for name in ("alike", "pair", "drop"):
            self.buttons[name].layout.display = "" if held else "none"
        self.buttons["beside"].layout.display = "" if look.projector else "none"
        self.buttons["hold"].disabled = held >= MOST_HELD
        _set(self.buttons["large"], look.projector)
        _set(self.buttons["beside"], look.beside)
        (self.root.add_class if look.projector else self.root.remove_class)("boomsim-large")
        _offer(self.buttons["pair"], _pairs(held))


def _pairs(held: int) -> list[tuple[str, tuple[int, int]]]:
    places = [*range(held), NOW]
    names = ["now" if place == NOW else letter(place) for place in places]
    return [
        (f"{names[i]} and {names[j]}", (places[i], places[j]))
        for i in range(len(places))
        for j in range(i + 1, len(places))
    ] or controls.PAIRS


def _offer(made: Any, options: list[tuple[str, tuple[int, int]]]) -> None:
    if list(made.options) != options:
        before = made.value
        made.options = options
        made.value = before if before in [value for _, value in options] else options[0][1]


def _bring(slider: Any, value: Any) -> None:
    """Move a slider, but not by a part of a step.

    A browser's 12.300000000000002 for 12.3 is no place to correct: the correction would arrive
    after the next key press and undo it.
    """
    step = getattr(slider, "step", None)
    if step is None or abs(slider.value - value) > 0.25 * step:
        _set(slider, value)


def _stretch(slider: Any, span: Range) -> None:
    """Let a slider go as far as its range, outwards first: its ends must not cross."""
    _set_end(slider, "max", max(span.most, slider.max))
    _set_end(slider, "min", span.least)
    _set_end(slider, "max", span.most)


def _set_end(slider: Any, name: str, value: float) -> None:
    if getattr(slider, name) != value:
        setattr(slider, name, value)


def _set(made: Any, value: Any) -> None:
    if made.value != value:
        made.value = value


def _html(name: str) -> Any:
    made = widgets.HTML()
    made.add_class(f"boomsim-{name}")
    return made


def _box(name: str, *parts: Any) -> Any:
    made = widgets.Box(list(parts))
    made.add_class(f"boomsim-{name}")
    return made
