"""The explorer without widgets: what a page's worker is asked in, what it is told out.

Runs in the browser's Python and in any other alike, and keeps to what can be written as JSON.
"""

import json
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from boomsim.lab.live.live_controls import offered
from boomsim.lab.live.live_pictures import LAYOUTS, pictures
from boomsim.lab.live.scene_address import from_address, to_address
from boomsim.lab.scene.scene import Look, Scene, first_scene
from boomsim.lab.scene.scene_check import checked
from boomsim.lab.scene.undo_history import History
from boomsim.lab.solve.solved_scene import Answer, answer
from boomsim.lab.views.number_table import numbers
from boomsim.lab.views.scene_sentences import headline, remark
from boomsim.lab.widgets.control_map import moved
from boomsim.machine.machine_files import read_machine
from boomsim.units import all_in_words, display

MOST_LETTERS = 200_000
"""A machine file has no more."""


class Live:
    """One reader's explorer.

    Parameters
    ----------
    start : str
        Address of the scene that the page opens with; empty: the demonstration
    address : str
        Address that the reader came with; empty: none
    files : mapping of str to str, optional
        Machine files that the page carries: name, text
    layout : str
        One of `LAYOUTS`
    """

    def __init__(
        self,
        start: str = "",
        *,
        address: str = "",
        files: Mapping[str, str] | None = None,
        layout: str = "desk",
    ) -> None:
        for name, text in (files or {}).items():
            _lay_down(name, text)
        self.scene, self.look = from_address(start) if start else (first_scene(), Look())
        self.layout = layout if layout in LAYOUTS else LAYOUTS[0]
        self._start, self._history, self._trouble = self.scene, History(), ""
        if address:
            self._try({"do": "go", "address": address})

    def ask(self, asked: str) -> str:
        """Do what is asked and tell everything that a page shows.

        Parameters
        ----------
        asked : str
            JSON with `do`: "move" (`name`, `value`), "go" (`address`), "open" (`name`, `text` of
            a machine file), "undo", "reset" or "look" (`layout`)

        Returns
        -------
        str
            As :meth:`tell`
        """
        self._try(json.loads(asked))
        return self.tell()

    def tell(self) -> str:
        """Tell :meth:`told` as JSON."""
        return json.dumps(self.told(), ensure_ascii=False)

    def told(self) -> dict[str, Any]:
        """Everything that a page shows.

        Returns
        -------
        dict
            Plain values; `trouble` is a refusal, empty where nothing was refused
        """
        now, units = self.answer, self.look.units
        spoken = {
            "numbers": numbers(now, self.look),
            "headline": headline(now, units=units),
            "remark": remark(now, units=units),
            "trouble": self._trouble,
            **pictures(now, self.look, layout=self.layout),
        }
        return {
            "address": to_address(self.scene, self.look),
            "controls": offered(self.scene, self.look, now=now),
            "layout": self.layout,
            **all_in_words(spoken, units),
        }

    @property
    def answer(self) -> Answer:
        """To the present scene."""
        return self._answer(self.scene, self.look)

    def _answer(self, scene: Scene, look: Look) -> Answer:
        return answer(scene, unit=display("length", look.units).factor)

    def _try(self, asked: dict[str, Any]) -> None:
        """What is refused changes nothing, and is told."""
        self._trouble = ""
        try:
            _DO[asked["do"]](self, asked)
        except ValueError as refusal:
            self._trouble = str(refusal)

    def _arrive(self, scene: Scene, look: Look, *, by: str) -> None:
        self._answer(scene, look)  # a scene that has no answer is not gone to
        if scene != self.scene:
            self._history.left(self.scene, by=by)
        self.scene, self.look = scene, look

    def _move(self, asked: dict[str, Any]) -> None:
        name, value = asked["name"], asked["value"]
        if name == "units":
            self._arrive(self.scene, replace(self.look, units=value), by=name)
            return
        scene = moved(self.scene, name, value, look=self.look, now=self.answer)
        self._arrive(checked(scene), self.look, by=name)

    def _go(self, asked: dict[str, Any]) -> None:
        self._arrive(*from_address(asked["address"]), by="")

    def _open(self, asked: dict[str, Any]) -> None:
        name = _lay_down(str(asked["name"]), str(asked["text"]))
        self._move({"name": "machine", "value": name})

    def _undo(self, asked: dict[str, Any]) -> None:
        self.scene = self._history.back() or self.scene

    def _reset(self, asked: dict[str, Any]) -> None:
        self._arrive(self._start, self.look, by="reset")

    def _look(self, asked: dict[str, Any]) -> None:
        if asked["layout"] in LAYOUTS:
            self.layout = asked["layout"]


def _lay_down(name: str, text: str) -> str:
    """Put a machine file where the model looks for files: in a browser, in its memory."""
    name = Path(name).name
    if Path(name).suffix.lower() != ".toml":
        raise ValueError(f'"{name}" should end in .toml, as a machine file does. Choose one.')
    if len(text) > MOST_LETTERS:
        raise ValueError(
            f'"{name}" has {len(text)} letters, and a machine file at most {MOST_LETTERS}. Choose '
            "a machine file."
        )
    read_machine(text, name)
    Path(name).write_text(text, encoding="utf-8")
    return name


_DO = {
    "move": Live._move,
    "go": Live._go,
    "open": Live._open,
    "undo": Live._undo,
    "reset": Live._reset,
    "look": Live._look,
}
