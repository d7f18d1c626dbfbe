"""Sliders over something to look at. What goes wrong in them is shown and kept, never hidden."""

import traceback
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from html import escape
from typing import Any

from boomsim.lessons.lesson_display import MARKS
from boomsim.units import parse

Range = tuple[float, float, float] | tuple[float, float, float, float]
"""Least, most and step, and where to start if not at the least."""


WORDS = {"m": "metres", "ft": "feet", "t": "tonnes", "lb": "pounds"}
"""Units that a slider may be marked in, as they are spoken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A slider that is marked in a unit and gives its function SI.

    Attributes
    ----------
    name : str
        What is moved, such as "radius"
    quantity : str
        A key of `boomsim.units.QUANTITIES`
    unit : str
        A key of `WORDS`
    marks : tuple of float
        Least, most, step and start [unit]
    """

    name: str
    quantity: str
    unit: str
    marks: Range

    @property
    def factor(self) -> float:
        """What one unit is [SI unit of the quantity]."""
        return parse(f"1 {self.unit}", self.quantity)


def measured(name: str, quantity: str, units: str, **marks: Range) -> Measure:
    """Choose a slider's marks by the system of units.

    Parameters
    ----------
    name, quantity : str
    units : str
        "metric" or "us"
    **marks : tuple of float
        For each of two units, the metric one first, least, most, step and start

    Examples
    --------
    >>> radius = measured("radius", "length", "us", m=(5, 10, 1, 6), ft=(16, 33, 1, 20))
    >>> Slides(lambda radius: f"{radius:.3f} m", radius=radius).shown
    '6.096 m'
    """
    unit = list(marks)[units == "us"]
    return Measure(name=name, quantity=quantity, unit=unit, marks=marks[unit])


class Slides:
    """A function of numbers, with a slider for each.

    Parameters
    ----------
    view : callable
        Takes the sliders' values by name and gives something to show
    **ranges : tuple of float or Measure
        For each name least, most and step, and perhaps where to start

    Examples
    --------
    >>> slides = Slides(lambda angle: f"{angle:.0f}", angle=(0, 80, 10, 20))
    >>> slides.move(angle=30)
    >>> slides.shown, slides.troubles
    ('30', ())
    """

    def __init__(self, view: Callable[..., object], **ranges: Range | Measure) -> None:
        import ipywidgets

        self._view, self._troubles = view, []  # type: tuple[Callable[..., object], list[str]]
        self._sliders = {name: _slider(name, spec) for name, spec in ranges.items()}
        self._factors = {
            name: spec.factor for name, spec in ranges.items() if isinstance(spec, Measure)
        }
        self._picture = ipywidgets.HTML().add_class("lesson-slides")
        self._panel = ipywidgets.HTML().add_class("lesson-trouble")
        self._also: dict[str, float] = {}
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
        """Where the sliders stand, what is measured in SI."""
        return {
            name: slider.value * self._factors[name] if name in self._factors else slider.value
            for name, slider in self._sliders.items()
        }

    def move(self, **values: float) -> None:
        """Move sliders as a hand would, each to one of its own marks."""
        for name, value in values.items():
            self._sliders[name].value = value

    def also(self, **values: float) -> "Slides":
        """Choose where a page without sliders shows it a second time."""
        self._also = values
        return self

    def moved(self) -> tuple[str, str]:
        """Show it once more with a slider moved, by itself to its farther end, and move it back.

        Returns
        -------
        str, str
            What was moved and to where, and what is then shown as HTML
        """
        name, slider = next(iter(self._sliders.items()))
        there = max((slider.min, slider.max), key=lambda end: abs(end - slider.value))
        values = self._also or {name: there}
        start = {name: self._sliders[name].value for name in values}
        self.move(**values)
        made = self.shown
        said = ", ".join(
            f"{self._sliders[name].description}: {value:g}" for name, value in values.items()
        )
        self.move(**start)
        return said, made

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


def _slider(name: str, spec: Range | Measure) -> Any:
    import ipywidgets

    words, marks = name.replace("_", " "), spec
    if isinstance(spec, Measure):
        words, marks = f"{spec.name} in {WORDS[spec.unit]}", spec.marks
    assert isinstance(marks, tuple)
    least, most, step = marks[:3]
    whole = all(isinstance(number, int) for number in marks)
    made = (ipywidgets.IntSlider if whole else ipywidgets.FloatSlider)(
        value=marks[3] if len(marks) > 3 else least,
        min=least,
        max=most,
        step=step,
        description=words,
        readout_format="d" if whole else f".{_decimals(step)}f",
        style={"description_width": "15em"},
        layout={"width": "42em", "max_width": "100%"},
    )
    made.tooltip = words
    return made.add_class(f"lesson-slider-{name.replace('_', '-')}")


def _decimals(step: float) -> int:
    """Decimals that tell each stop from the next."""
    return len(f"{step:g}".partition(".")[2]) or 1


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
