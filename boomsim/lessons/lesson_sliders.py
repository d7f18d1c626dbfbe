"""Sliders over something to look at. What goes wrong in them is shown and kept, never hidden."""

import traceback
from collections.abc import Callable, Iterator
from html import escape
from typing import Any

from boomsim.lessons.lesson_display import MARKS

Range = tuple[float, float, float] | tuple[float, float, float, float]
"""Least, most and step, and where to start if not at the least."""


class Slides:
    """A function of numbers, with a slider for each.

    Parameters
    ----------
    view : callable
        Takes the sliders' values by name and gives something to show
    **ranges : tuple of float
        For each name least, most and step, and perhaps where to start

    Examples
    --------
    >>> slides = Slides(lambda angle: f"{angle:.0f}", angle=(0, 80, 10, 20))
    >>> slides.move(angle=30)
    >>> slides.shown, slides.troubles
    ('30', ())
    """

    def __init__(self, view: Callable[..., object], **ranges: Range) -> None:
        import ipywidgets

        self._view, self._troubles = view, []  # type: tuple[Callable[..., object], list[str]]
        self._sliders = {name: _slider(name, spec) for name, spec in ranges.items()}
        self._picture = ipywidgets.HTML().add_class("lesson-slides")
        self._panel = ipywidgets.HTML().add_class("lesson-trouble")
        self.shown = ""
        for slider in self._sliders.values():
            slider.observe(self._moved, names="value")
        self._moved()
        rows = [*self._sliders.values(), self._panel, self._picture]
        self.box = ipywidgets.VBox(rows)

    @property
    def troubles(self) -> tuple[str, ...]:
        """What went wrong so far; a lesson ends by asserting that there is nothing."""
        return tuple(self._troubles)

    @property
    def values(self) -> dict[str, float]:
        """Where the sliders stand."""
        return {name: slider.value for name, slider in self._sliders.items()}

    def move(self, **values: float) -> None:
        """Move sliders as a hand would."""
        for name, value in values.items():
            self._sliders[name].value = value

    def try_all(self) -> None:
        """Move each slider through its range and back; for tests."""
        for name, slider in self._sliders.items():
            start = slider.value
            for value in (*_stops(slider), start):
                self.move(**{name: type(start)(value)})

    def _moved(self, _change: object = None) -> None:
        try:
            self.shown = _html(self._view(**self.values))
            self._picture.value, self._panel.value = self.shown, ""
        except ValueError as error:
            # A refusal is an answer: it teaches, so it stands in the panel and is no trouble.
            self._panel.value = _note(str(error), "refused")
        except Exception as error:
            # Jupyter would swallow it, and the old picture would seem to be the new one.
            self._troubles.append("".join(traceback.format_exception(error)))
            self._panel.value = _note(f"{type(error).__name__}: {error}", "slip")

    def _repr_mimebundle_(self, **kwargs: Any) -> Any:
        return self.box._repr_mimebundle_(**kwargs)


def _slider(name: str, spec: Range) -> Any:
    import ipywidgets

    least, most, step = spec[:3]
    words = name.replace("_", " ")
    whole = all(isinstance(number, int) for number in spec)
    made = (ipywidgets.IntSlider if whole else ipywidgets.FloatSlider)(
        value=spec[3] if len(spec) > 3 else least,
        min=least,
        max=most,
        step=step,
        description=words,
        readout_format="d" if whole else ".1f",
        style={"description_width": "11em"},
        layout={"width": "38em", "max_width": "100%"},
    )
    made.tooltip = words
    return made.add_class(f"lesson-slider-{name.replace('_', '-')}")


def _stops(slider: Any) -> Iterator[float]:
    for k in range(5):
        yield slider.min + k * (slider.max - slider.min) / 4


def _html(shown: object) -> str:
    made = getattr(shown, "_repr_html_", None)
    return str(made()) if callable(made) else escape(str(shown))


def _note(words: str, mark: str) -> str:
    colour = MARKS[mark][1]
    style = f"border-left:5px solid {colour};padding:0.3em 0.9em;max-width:54em"
    return f'<div role="alert" style="{style}">{escape(words)}</div>'
