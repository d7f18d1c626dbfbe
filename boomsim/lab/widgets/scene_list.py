"""The list of named scenes, as a panel: arrow keys step through it, a file keeps it."""

from collections.abc import Callable
from html import escape
from typing import Any

import ipywidgets as widgets

from boomsim.lab.scene.named_scenes import NamedScene, read_scenes, write_scenes
from boomsim.lab.scene.scene import Scene
from boomsim.lab.widgets.slider_controls import button


class Shelf:
    """Named scenes to step through.

    Parameters
    ----------
    now : callable
        Gives the scene on the screen
    go : callable
        Shows a scene
    guarded : callable
        Does something and shows what goes wrong
    """

    def __init__(
        self,
        scenes: tuple[NamedScene, ...],
        *,
        now: Callable[[], Scene],
        go: Callable[[Scene], None],
        guarded: Callable[[Callable[[], None]], None],
    ) -> None:
        self.scenes, self._now, self._go, self._guarded = scenes, now, go, guarded
        self.listed = widgets.Select(options=[], rows=6, description="scenes")
        self.name = widgets.Text(description="name", placeholder="what you call it")
        self.file = widgets.Text(description="file", value="scenes.json")
        self.note = widgets.HTML()
        for made, name in (
            (self.listed, "scenes"),
            (self.name, "scene-name"),
            (self.file, "scene-file"),
            (self.note, "scene-note"),
        ):
            made.add_class(f"boomsim-{name}")
        self.listed.observe(self._chosen, names="value")
        self.buttons = self._make_buttons()
        row = widgets.HBox(list(self.buttons.values()))
        row.add_class("boomsim-buttons")
        named = widgets.HBox([self.name, self.file])
        self.panel = widgets.VBox([self.listed, self.note, named, row])
        self._filling = False
        self._refill(None)

    def _make_buttons(self) -> dict[str, Any]:
        rows = {
            "previous": ("Previous", self.previous, "The scene before this one"),
            "next": ("Next", self.next, "The scene after this one"),
            "add": ("Add this scene", self.add, "Put what is on the screen into the list"),
            "remove": ("Remove", self.remove, "Take the chosen scene out of the list"),
            "write": ("Save list", self.write, "Write the list to the file"),
            "read": ("Open list", self.read, "Read the list from the file"),
        }
        return {
            name: button(words, f"scene-{name}", self._press(action), tip=tip)
            for name, (words, action, tip) in rows.items()
        }

    def _press(self, action: Callable[[], None]) -> Callable[[], None]:
        return lambda: self._guarded(action)

    def _refill(self, chosen: int | None) -> None:
        self._filling = True
        self.listed.options = [(f"{k + 1}  {s.name}", k) for k, s in enumerate(self.scenes)]
        self.listed.value = chosen
        self._filling = False

    def _chosen(self, change: dict[str, Any]) -> None:
        number = change["new"]
        if self._filling or number is None:
            return
        self._guarded(lambda: self.show(number))

    def show(self, number: int) -> None:
        """Show one scene of the list.

        Parameters
        ----------
        number : int
            From 0
        """
        scene = self.scenes[number]
        self._go(scene.scene)
        # A note may come from anybody's file: it is text, whatever it holds.
        self.note.value = escape(scene.note)

    def next(self) -> None:
        """Show the next scene; after the last, the last."""
        self._step(1)

    def previous(self) -> None:
        """Show the scene before; before the first, the first."""
        self._step(-1)

    def _step(self, way: int) -> None:
        if not self.scenes:
            raise ValueError("The list has no scenes yet. Add the one on the screen.")
        now = self.listed.value
        first = 0 if way > 0 else len(self.scenes) - 1
        wanted = first if now is None else min(max(now + way, 0), len(self.scenes) - 1)
        if wanted == now:
            self.show(wanted)
        self.listed.value = wanted

    def add(self) -> None:
        """Put the scene on the screen at the end of the list."""
        name = self.name.value.strip() or f"scene {len(self.scenes) + 1}"
        self.scenes = (*self.scenes, NamedScene(name=name, scene=self._now()))
        self._refill(len(self.scenes) - 1)

    def remove(self) -> None:
        """Take the chosen scene out of the list."""
        number = self.listed.value
        if number is None:
            raise ValueError("Choose the scene to remove first.")
        self.scenes = self.scenes[:number] + self.scenes[number + 1 :]
        self._refill(None)

    def write(self) -> None:
        """Write the list to the file."""
        write_scenes(self.scenes, self.file.value.strip())
        self.note.value = f"Saved {len(self.scenes)} scenes."

    def read(self) -> None:
        """Read the list from the file."""
        self.scenes = read_scenes(self.file.value.strip())
        self._refill(None)
        self.note.value = f"{len(self.scenes)} scenes."
