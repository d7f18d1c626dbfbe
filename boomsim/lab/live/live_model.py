"""The explorer without widgets: what a page's worker is asked in, what it is told out.

Runs in the browser's Python and in any other alike, and keeps to what can be written as JSON.
"""

import json
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from boomsim.figures.qr_code import qr_code
from boomsim.lab.live.drag_grips import Hold, dragged, grips, keeps_of, nudged, weighed
from boomsim.lab.live.live_controls import offered
from boomsim.lab.live.live_pictures import LAYOUTS, picture_below, pictures, stage_frame
from boomsim.lab.live.overload_pictures import past_picture, told_past
from boomsim.lab.live.scene_address import from_address, to_address
from boomsim.lab.live.sliding_sections import traded
from boomsim.lab.live.ways_side_by_side import Way, Ways, chosen, told_ways, ways_of
from boomsim.lab.live.why_ways_differ import told_reasons
from boomsim.lab.scene.scene import Look, Scene, first_scene
from boomsim.lab.scene.scene_check import checked
from boomsim.lab.scene.undo_history import History
from boomsim.lab.solve.solved_scene import Answer, answer
from boomsim.lab.views.number_table import numbers
from boomsim.lab.views.scene_sentences import headline, remark
from boomsim.lab.views.small_chart import chart_of
from boomsim.lab.views.svg_text import Frame
from boomsim.lab.widgets.control_map import holding, moved
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.machine_files import read_machine
from boomsim.machine.part_names import section_name
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

    Attributes
    ----------
    keeps_length : bool
        Whether sections slide against each other
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
        opened = from_address(start) if start else (first_scene(), Look(), True)
        self.scene, self.look, self.keeps_length = opened
        self.layout = layout if layout in LAYOUTS else LAYOUTS[0]
        self._start, self._history, self._trouble = self.scene, History(), ""
        self._ways: tuple[Way, ...] = ()
        self._frame: Frame | None = None
        if address:
            self._try({"do": "go", "address": address})

    def ask(self, asked: str) -> str:
        """Do what is asked and tell what a page shows, but what takes its time and can wait.

        Parameters
        ----------
        asked : str
            JSON with `do`: "move" (`name`, `value`), "drag" (`grip`, `frame` as told when it began,
            and `place` or `load`), "drop", "nudge" (`grip`, `key`, `large`), "way" (`number` of
            the card), "go" (`address`), "open" (`name`, `text` of a machine file), "undo", "redo",
            "reset" or "look" (`layout`); or "why", "past", "frame" (`number`) and "code"
            (`text` of a link), which move
            nothing

        Returns
        -------
        str
            As :meth:`told`, without what :meth:`rest` tells; what moves nothing is answered under
            its own name alone
        """
        wanted = json.loads(asked)
        if wanted["do"] in _READ:
            return json.dumps({wanted["do"]: _READ[wanted["do"]](self, wanted)}, ensure_ascii=False)
        self._try(wanted)
        return json.dumps(self._at_once(), ensure_ascii=False)

    def rest(self) -> str:
        """Tell what a page shows after the rest: it must follow every :meth:`ask` that moves.

        A configuration's chart is worked out here, which takes longer than its picture.

        Returns
        -------
        str
            JSON with `below`
        """
        return json.dumps(self._afterwards(), ensure_ascii=False)

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
        return {**self._at_once(), **self._afterwards()}

    def _afterwards(self) -> dict[str, Any]:
        now = self.answer
        # Where it is not drawn, the next step still begins from it.
        chart_of(now, self.look)
        drawn = picture_below(now, self.look, layout=self.layout)
        return {"below": all_in_words(drawn, self.look.units)}

    def _at_once(self) -> dict[str, Any]:
        now, units = self.answer, self.look.units
        ways = self._compared(now)
        frame = self._frame or stage_frame(now, self.look, layout=self.layout)
        held = grips(now, self.look, frame, keep=self.keep)
        spoken = {
            **told_ways(ways, now, units=units),
            "grips": held,
            "numbers": numbers(now, self.look),
            "headline": headline(now, units=units),
            "remark": remark(now, units=units),
            "trouble": self._trouble,
            **pictures(now, ways, self.look, layout=self.layout, frame=frame, held=held),
        }
        return {
            "address": to_address(self.scene, self.look, keep=self.keep),
            "controls": offered(self.scene, self.look, now=now, keep=self.keep),
            "past": bool(now.used > 1.0),
            "undo": self._history.goes_back,
            "redo": self._history.goes_forward,
            "layout": self.layout,
            **all_in_words(spoken, units),
        }

    @property
    def keep(self) -> str:
        """What stays while something is dragged: "length", "radius" or "angle"."""
        if self.keeps_length and "length" in keeps_of(self.scene):
            return "length"
        return self.scene.held

    def _compared(self, now: Answer) -> Ways | None:
        self._ways = chosen(self.scene, before=self._ways)
        return ways_of(now, self._ways)

    def _why(self, asked: dict[str, Any]) -> dict[str, Any]:
        now = self.answer
        told = told_reasons(self._compared(now), now, units=self.look.units)
        return all_in_words(told, self.look.units)

    def _past(self, asked: dict[str, Any]) -> dict[str, Any]:
        told = told_past(self.answer, self.look, layout=self.layout)
        return all_in_words(told, self.look.units)

    def _code(self, asked: dict[str, Any]) -> dict[str, Any]:
        return qr_code(str(asked["text"]))

    def _frame_past(self, asked: dict[str, Any]) -> str:
        number = int(asked["number"])
        drawn = past_picture(self.answer, self.look, layout=self.layout, number=number)
        return all_in_words(drawn, self.look.units)

    @property
    def answer(self) -> Answer:
        """To the present scene."""
        return self._answer(self.scene, self.look)

    def _answer(self, scene: Scene, look: Look) -> Answer:
        unit = display("length", look.units).factor
        ways = chosen(scene, before=self._ways)
        beside = tuple(way for way, _ in ways if way != scene.extension)
        return answer(scene, unit=unit, beside=beside)

    def _try(self, asked: dict[str, Any]) -> None:
        """What is refused changes nothing, and is told."""
        self._trouble, self._frame = "", None
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
        elif name == "keep":
            self._keep(str(value))
        elif name.startswith("section ") and self.keep == "length":
            self._trade(int(name.split()[1]), float(value))
        else:
            scene = moved(self.scene, name, value, look=self.look, now=self.answer)
            self._arrive(checked(scene), self.look, by=name)

    def _keep(self, what: str) -> None:
        if what not in keeps_of(self.scene):
            raise ValueError(
                f'"{what}" cannot be kept here. Keep one of: {", ".join(keeps_of(self.scene))}.'
            )
        self.keeps_length = what == "length"
        held = self.scene.held if what == "length" else what
        self._arrive(holding(self.scene, held, now=self.answer), self.look, by="keep")

    def _trade(self, section: int, value: float) -> None:
        locks = BOOM_SYSTEMS[self.scene.system].locks
        scene = traded(self.scene, section=section, fraction=value if locks else value / 100.0)
        if scene == self.scene:
            raise ValueError(
                f"No other way to this length has {section_name(section)} nearer to there. Keep "
                "the radius or the boom angle to make the boom longer or shorter."
            )
        self._arrive(checked(scene), self.look, by=f"section {section}")

    def _drag(self, asked: dict[str, Any]) -> None:
        grip = str(asked["grip"])
        # A longer boom at another scale would run away from the hand that draws it out.
        x, y, scale = (float(one) for one in asked["frame"])
        self._frame = Frame(x=x, y=y, scale=scale)
        if "load" in asked:
            scene = weighed(self.scene, float(asked["load"]), look=self.look)
        else:
            out, up = (float(one) for one in asked["place"])
            hold = Hold(grip=grip, keep=self.keep)
            scene = dragged(self.scene, hold, (out, up), look=self.look, now=self.answer)
        self._arrive(checked(scene), self.look, by=f"drag {grip}")

    def _drop(self, asked: dict[str, Any]) -> None:
        """What was dragged is let go: the picture may have its own scale again."""

    def _nudge(self, asked: dict[str, Any]) -> None:
        hold = Hold(grip=str(asked["grip"]), keep=self.keep)
        key, large = str(asked["key"]), bool(asked["large"])
        scene = nudged(self.scene, hold, key, large=large, look=self.look, now=self.answer)
        self._arrive(checked(scene), self.look, by=f"drag {hold.grip}")

    def _way(self, asked: dict[str, Any]) -> None:
        extension, system = self._ways[int(asked["number"])]
        scene = replace(self.scene, extension=extension, system=system)
        self._arrive(checked(scene), self.look, by="")

    def _go(self, asked: dict[str, Any]) -> None:
        scene, look, self.keeps_length = from_address(asked["address"])
        self._arrive(scene, look, by="")

    def _open(self, asked: dict[str, Any]) -> None:
        name = _lay_down(str(asked["name"]), str(asked["text"]))
        self._move({"name": "machine", "value": name})

    def _undo(self, asked: dict[str, Any]) -> None:
        self.scene = self._history.back(now=self.scene) or self.scene

    def _redo(self, asked: dict[str, Any]) -> None:
        self.scene = self._history.forward(now=self.scene) or self.scene

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
    "drag": Live._drag,
    "drop": Live._drop,
    "nudge": Live._nudge,
    "way": Live._way,
    "go": Live._go,
    "open": Live._open,
    "undo": Live._undo,
    "redo": Live._redo,
    "reset": Live._reset,
    "look": Live._look,
}

_READ = {
    "why": Live._why,
    "past": Live._past,
    "frame": Live._frame_past,
    "code": Live._code,
}
"""What is told beside the scene, and changes nothing."""
