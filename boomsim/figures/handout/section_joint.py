"""One joint of two sections as two pads and a lever."""

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import BODY, INK, LOAD, PAPER, STEEL, type_of
from boomsim.figures.handout.bare_drawing import WIDTH, axes_on, bare
from boomsim.units import show


def figure_of_joint(*, overhang: float, overlap: float, force: float, units: str) -> Figure:
    """Draw two sections and the pads between them, with a force at the head.

    Parameters
    ----------
    overhang, overlap : float
        Of the inner section [m]
    force : float
        Across the boom, at the head [N]
    """
    figure = bare(0.036)
    ax = axes_on(figure, left=0.0, bottom=0.0, width=WIDTH, height=0.036)
    ax.set_axis_off()
    whole = overhang + overlap
    ax.set_xlim(-0.35 * whole, 1.1 * whole)
    ax.set_ylim(-1.9, 1.9)
    for x, wide, high, colour in (
        (-0.3 * whole, 0.3 * whole + overlap, 0.75, STEEL), (0.0, whole, 0.48, PAPER)
    ):  # fmt: skip
        ax.add_patch(
            Rectangle((x, -high), wide, 2.0 * high, facecolor=colour, edgecolor=INK, linewidth=1.0)
        )
    pad = 0.02 * whole
    for x, y in ((0.0, 0.48), (overlap - pad, -0.75)):
        ax.add_patch(Rectangle((x, y), pad, 0.27, facecolor=INK, linewidth=0.0))
    arrow = {"arrowstyle": "-|>", "color": LOAD, "linewidth": 1.8, "mutation_scale": 12}
    ax.annotate("", (whole, -1.6), (whole, -0.48), arrowprops=arrow)
    ax.text(
        whole * 0.98, -1.1, f"force across the boom, {show(force, 'force', units)}",
        ha="right", va="center", **type_of(BODY, colour=LOAD),
    )  # fmt: skip
    for start, end, words in (
        (0.0, overlap, f"overlap {show(overlap, 'length', units)}"),
        (overlap, whole, f"overhang {show(overhang, 'length', units)}"),
    ):
        _measure(ax, start, end, 1.25, words)
    ax.text(-0.01 * whole, 0.95, "rear pad", ha="right", va="center", **type_of(BODY))
    ax.text(overlap, -1.15, "front pad", ha="center", va="center", **type_of(BODY))
    return figure


def _measure(ax: Axes, start: float, end: float, y: float, words: str) -> None:
    both = {"arrowstyle": "<|-|>", "color": INK, "linewidth": 0.7, "shrinkA": 0.0, "shrinkB": 0.0}
    ax.annotate("", (end, y), (start, y), arrowprops=both)
    ax.text((start + end) / 2, y + 0.18, words, ha="center", va="bottom", **type_of(BODY))
