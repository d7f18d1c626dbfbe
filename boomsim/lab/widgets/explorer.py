"""The explorer: move something, and everything answers at once.

Handlers are synchronous and hold one lock; the scene is immutable; the picture is a pure function
of it. So two threads that move the same explorer leave a picture that is right.
"""

import traceback
from base64 import b64encode
from collections.abc import Callable, Iterable
from dataclasses import replace
from html import escape
from os import PathLike
from pathlib import Path
from threading import RLock
from typing import Any

from boomsim.files.text_file import write_whole
from boomsim.lab.scene.named_scenes import NamedScene, usual_scenes
from boomsim.lab.scene.scene import Look, Scene, first_scene
from boomsim.lab.scene.scene_changes import follow
from boomsim.lab.scene.scene_check import checked, checked_look
from boomsim.lab.scene.scene_code import as_code
from boomsim.lab.scene.undo_history import History
from boomsim.lab.solve.solved_scene import Answer, answer
from boomsim.lab.views.draw_scene import picture
from boomsim.lab.views.held_scenes import NOW, held_picture
from boomsim.lab.widgets.control_map import moved
from boomsim.lab.widgets.explorer_panel import MOST_HELD, Panel
from boomsim.lab.widgets.scene_list import Shelf
from boomsim.units import display, in_words, markup_in_words

LOOKS = {
    "units": "units",
    "exaggeration": "exaggeration",
    "large": "projector",
    "beside": "beside",
}
"""Controls that change the look, and which field of it."""


class Explorer:
    """Sliders and lists about one picture.

    Parameters
    ----------
    scene : Scene, optional
        Where to begin; default: the demonstration of yard60
    scenes : iterable of NamedScene, optional
        What the list of scenes begins with; default: the machine's usual ones

    Attributes
    ----------
    held : tuple of Scene
        Up to three
    errors : list of str
        What went wrong in a handler; a notebook may end with :meth:`check`
    shelf : Shelf
        The list of scenes
    panel : Panel
        The widgets
    """

    def __init__(
        self,
        scene: Scene | None = None,
        *,
        look: Look | None = None,
        scenes: Iterable[NamedScene] | None = None,
    ) -> None:
        self._lock = RLock()
        self.scene = checked(scene) if scene is not None else first_scene()
        self.look = checked_look(look or Look())
        self.held: tuple[Scene, ...] = ()
        self.errors: list[str] = []
        self._start, self._history = self.scene, History()
        listed = usual_scenes(self.scene.machine) if scenes is None else tuple(scenes)
        self.shelf = Shelf(listed, now=lambda: self.scene, go=self.go_to, guarded=self._guarded)
        self.panel = Panel(
            self.scene,
            self.look,
            heard=self._heard,
            buttons=self._buttons(),
            shelf=self.shelf.panel,
        )
        self._guarded(self._show)

    @property
    def sliders(self) -> dict[str, Any]:
        """Sliders by name: "section 1" …, "radius", "angle", "load", "slew", "wind_speed" …."""
        return self.panel.sliders

    @property
    def choices(self) -> dict[str, Any]:
        """Lists by name: "machine", "system", "held", "counterweight", "support", "parts" …."""
        return self.panel.choices

    @property
    def buttons(self) -> dict[str, Any]:
        """Buttons by name: "hold", "drop", "undo", "reset", "code", "save", "large" …."""
        return self.panel.buttons

    @property
    def answer(self) -> Answer:
        """The answer to the present scene."""
        return self._answer(self.scene)

    def svg(self) -> str:
        """Give the picture on the screen."""
        return str(self.panel.picture.value)

    def _repr_mimebundle_(self, **kwargs: Any) -> Any:
        return self.panel.root._repr_mimebundle_(**kwargs)

    def _buttons(self) -> dict[str, tuple[str, Callable[[], None], str]]:
        rows: dict[str, tuple[str, Callable[[], None], str]] = {
            "hold": ("Hold this", self.hold, "Keep this scene beside the others, up to three"),
            "drop": ("Clear", self.let_go, "Clear all held scenes"),
            "undo": ("Undo", self.undo, "Back to before the last move"),
            "reset": ("Reset", self.reset, "Back to where the explorer began"),
            "code": ("As code", self.show_code, "Three lines that work this scene out again"),
            "save": ("Save picture", self.offer_picture, "The picture as an SVG file"),
        }

        def guarded(action: Callable[[], None]) -> Callable[[], None]:
            return lambda: self._guarded(action)

        return {name: (words, guarded(do), tip) for name, (words, do, tip) in rows.items()}

    # --- Handlers ----------------------------------------------------------------------------

    def _heard(self, name: str, value: Any) -> None:
        self._guarded(lambda: self._obey(name, value))

    def _guarded(self, action: Callable[[], None]) -> None:
        """Do something; what goes wrong is shown in the explorer's own panel, never swallowed."""
        with self._lock:
            try:
                action()
            except ValueError as refusal:
                self._fail(str(refusal))
            except Exception:
                self._fail(traceback.format_exc())
            else:
                self.panel.error.value = ""

    def _fail(self, words: str) -> None:
        self.errors.append(words)
        self.panel.error.value = (
            f'<div role="alert">{escape(in_words(words, self.look.units))}</div>'
        )
        self._follow()

    def _obey(self, name: str, value: Any) -> None:
        if name in LOOKS:
            self.look = replace(self.look, **{LOOKS[name]: value})
            if name == "units":
                self.panel.refill(self.scene, self.look)
            self._show()
        elif name in ("alike", "pair"):
            self._show()
        else:
            scene = moved(self.scene, name, value, look=self.look, now=self.answer)
            self._go(scene, by=name)

    def go_to(self, scene: Scene) -> None:
        """Show a scene; it can be undone."""
        with self._lock:
            self._go(checked(scene), by="")

    def _go(self, scene: Scene, *, by: str) -> None:
        """Draw first: a scene that cannot be drawn is not gone to."""
        drawn = self._draw(scene)
        if scene != self.scene:
            self._history.left(self.scene, by=by)
        self._arrive(scene, drawn)

    def _arrive(self, scene: Scene, drawn: str | None = None) -> None:
        other = (scene.machine, scene.system) != (self.scene.machine, self.scene.system)
        self.scene = scene
        if other:
            self.panel.refill(self.scene, self.look)
        self._show(drawn)

    # --- Pictures ----------------------------------------------------------------------------

    def _answer(self, scene: Scene) -> Answer:
        return answer(scene, unit=display("length", self.look.units).factor)

    def _answers_held(self, scene: Scene) -> tuple[Answer, ...]:
        alike = bool(self.buttons["alike"].value)
        return tuple(self._answer(follow(h, live=scene) if alike else h) for h in self.held)

    def _draw(self, scene: Scene) -> str:
        held = self._answers_held(scene)
        return picture(self._answer(scene), self.look, held=held, uid="boomsim")

    def _show(self, drawn: str | None = None) -> None:
        drawn = self._draw(self.scene) if drawn is None else drawn
        self.panel.held.value = self._draw_held() if self.held else ""
        self.panel.picture.value = drawn
        self._follow()

    def _draw_held(self) -> str:
        pair = self.buttons["pair"].value
        drawn = held_picture(
            self.answer,
            self._answers_held(self.scene),
            self.look,
            pair=pair if max(pair) < len(self.held) else (0, NOW),
            uid="boomsim-held",
        )
        return markup_in_words(drawn, self.look.units)

    def _follow(self) -> None:
        self.panel.follow(self.scene, self.look, now=self.answer, held=len(self.held))

    # --- Buttons -----------------------------------------------------------------------------

    def hold(self) -> None:
        """Hold the scene beside the others."""
        with self._lock:
            if len(self.held) >= MOST_HELD:
                raise ValueError("Three scenes are held already. Let them go first.")
            self.held = (*self.held, self.scene)
            self._show()

    def let_go(self) -> None:
        """Let all held scenes go."""
        with self._lock:
            self.held = ()
            self._show()

    def undo(self) -> None:
        """Go back to before the last move; does nothing at the beginning."""
        with self._lock:
            before = self._history.back()
            if before is not None:
                self._arrive(before)

    def reset(self) -> None:
        """Go back to where the explorer began; it can be undone."""
        with self._lock:
            self._go(self._start, by="reset")

    def code(self) -> str:
        """Three lines that work the scene out again."""
        return as_code(self.scene)

    def show_code(self) -> None:
        """Show these lines, with a button that copies them."""
        copy = "navigator.clipboard.writeText(this.nextElementSibling.textContent)"
        self.panel.output.value = (
            f'<button type="button" class="jupyter-button" onclick="{copy}">Copy</button>'
            f'<pre class="boomsim-lines">{escape(self.code())}</pre>'
        )

    def offer_picture(self) -> None:
        """Offer the picture as it is now for download."""
        data = b64encode(self.svg().encode("utf-8")).decode("ascii")
        name = escape(f"boomsim-{Path(self.scene.machine).stem}.svg", quote=True)
        self.panel.output.value = (
            f'<a class="boomsim-download" download="{name}" '
            f'href="data:image/svg+xml;base64,{data}">Download the picture, {name}</a>'
        )

    def save_picture(self, path: str | PathLike[str]) -> Path:
        """Write the picture to a file.

        Parameters
        ----------
        path : str or path
            Ends in .svg
        """
        return write_whole(self.svg() + "\n", path, ending=".svg")

    def check(self) -> None:
        """Raise what went wrong in a handler, so that a notebook cannot pass over it.

        Raises
        ------
        RuntimeError
            If anything did
        """
        if self.errors:
            raise RuntimeError("The explorer met: " + "\n".join(self.errors))


def explore(
    machine: str | Scene | None = None,
    *,
    look: Look | None = None,
    scenes: Iterable[NamedScene] | None = None,
) -> Explorer:
    """Open the explorer.

    Parameters
    ----------
    machine : str or Scene, optional
        A machine's name or file, or the scene to begin with
    scenes : iterable of NamedScene, optional
        What the list of scenes begins with

    Returns
    -------
    Explorer
        A notebook shows it when it is a cell's last line
    """
    scene = first_scene(machine) if isinstance(machine, str) else machine
    return Explorer(scene, look=look, scenes=scenes)
