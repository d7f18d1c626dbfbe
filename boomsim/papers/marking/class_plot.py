"""Facility against discrimination: one point a question."""

import io
import math
from collections.abc import Sequence

from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.text import Text

from boomsim.figures.colours_and_lines import BLUE, PAPER, QUIET, WASH
from boomsim.papers.marking.class_figures import QuestionFigures

WEAK = 0.2
"""Discrimination below which a question is worth a look; common practice, no source [1]."""


def draw_class(ax: Axes, figures: Sequence[QuestionFigures]) -> list[Text]:
    """Draw the questions of a class.

    Returns
    -------
    list of Text
        One label a point; questions that lie on one another share it
    """
    drawn = [one for one in figures if math.isfinite(one.discrimination)]
    ax.axhspan(-1.05, WEAK, color=WASH, zorder=0)
    ax.axhline(0.0, color=QUIET, linewidth=0.6)
    points = [(one.facility, one.discrimination) for one in drawn]
    ax.scatter([x for x, _ in points], [y for _, y in points], s=220, color=BLUE, zorder=3)
    lowest = min([y for _, y in points], default=0.0)
    ax.set(xlim=(-0.05, 1.05), ylim=(min(-0.25, lowest - 0.12), 1.08))
    ax.set_xlabel("facility: mean share of the marks")
    ax.set_ylabel("discrimination: correlation with the rest")
    ax.text(1.03, WEAK - 0.04, "look at these questions", ha="right", va="top", color=QUIET, size=8)
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)
    return [_label(ax, names, x, y) for (x, y), names in _places(drawn).items()]


def _places(drawn: Sequence[QuestionFigures]) -> dict[tuple[float, float], list[str]]:
    """Names of the questions at each place; points that cover one another count as one place."""
    places: dict[tuple[float, float], list[str]] = {}
    for one in drawn:
        here = (one.facility, one.discrimination)
        near = (at for at in places if abs(at[0] - here[0]) < 0.02 and abs(at[1] - here[1]) < 0.04)
        places.setdefault(next(near, here), []).append(one.name[:3])
    return places


def _label(ax: Axes, names: list[str], x: float, y: float) -> Text:
    """Write one name into its point, and several beside it."""
    if len(names) == 1:
        return ax.text(x, y, names[0], color=PAPER, ha="center", va="center", size=8, zorder=4)
    left, side = ("right", -10) if x > 0.8 else ("left", 10)
    return ax.annotate(
        ", ".join(names), (x, y), xytext=(side, 0), textcoords="offset points", color=BLUE,
        ha=left, va="center", size=8, zorder=4,
    )  # fmt: skip


def class_png(figures: Sequence[QuestionFigures]) -> bytes:
    """Draw the questions of a class as a picture.

    Returns
    -------
    bytes
        PNG
    """
    figure = Figure(figsize=(6.4, 4.2), layout="constrained")
    FigureCanvasAgg(figure)
    draw_class(figure.add_subplot(), figures)
    buffer = io.BytesIO()
    figure.savefig(buffer, format="png", dpi=150, metadata={"Software": None})
    return buffer.getvalue()
