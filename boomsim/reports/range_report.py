"""What a range diagram says: where the boom head can be, and what it may carry there."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.figures.range.range_shape import RangeShape
    from boomsim.rating.limits.limit_kind import Limit

ROWS = 7
"""Places of each boom that the table shows [1]."""


def as_json(found: "RangeShape") -> dict[str, Any]:
    """Every arc, SI."""
    from boomsim.rating.charts.chart_tables import plain_setup
    from boomsim.rating.empty_hook.empty_hook_sentences import plain_empty_hook

    return {
        "machine": found.setup.machine.name,
        **plain_setup(found.setup),
        "disturbances": found.setup.disturbances,
        "boom_angle": found.angle,
        "arcs": [
            {
                "boom_length": found.length[a],
                "extension": found.extension[a],
                "radius": found.radius[a],
                "height": found.height[a],
                "capacity": found.capacity[a],
                "set_by": [found.limits[g].set_by if g >= 0 else None for g in found.governing[a]],
                "empty_hook": plain_empty_hook(found.empty_hook, row=a),
                "stands": found.stands[a],
            }
            for a in range(len(found.length))
        ],
    }


def as_text(found: "RangeShape", *, units: str) -> str:
    """Lay out some places of each arc as a table."""
    import numpy as np

    from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
    from boomsim.rating.empty_hook.empty_hook_sentences import tell_empty_hook, under_hook_words
    from boomsim.rating.strategies import label
    from boomsim.units import show

    def said(value: float, quantity: str) -> str:
        return show(float(value), quantity, units)

    rows = []
    for a in range(len(found.length)):
        for k in np.linspace(0, len(found.angle) - 1, ROWS).round().astype(int):
            rows.append(
                [
                    said(found.length[a], "boom_length"),
                    label(found.extension[a]),
                    said(found.angle[k], "angle"),
                    said(found.radius[a, k], "length"),
                    said(found.height[a, k], "length"),
                    *_rated(found, a, int(k), units),
                ]
            )
    head = ["boom", "extension, %", "boom angle", "radius", "head height", "gross load", "set by"]
    words = f"{machine_words(found.setup)}: where the boom head can be; "
    note = (
        "Angle and height are those of the empty hook; the gross load is the one rated at that "
        "radius. Not rated: near its greatest reach and at its steepest a loaded boom cannot keep "
        f"the radius; elsewhere {under_hook_words(found.setup.machine)}."
    )
    lowest = [
        f"({label(found.extension[a])}): {sentence}"
        for a in range(len(found.length))
        if (sentence := tell_empty_hook(found.empty_hook, units=units, row=a))
    ]
    return "\n\n".join(
        [
            paragraph(
                f"{words}{setup_words(found.setup, units=units, extension=found.extension)}. "
                f"{allowance_words(found.setup.rule, units=units)}"
            ),
            table(head, rows),
            paragraph(note),
            *map(paragraph, lowest),
            paragraph(CAUTION),
        ]
    )


def _rated(found: "RangeShape", arc: int, angle: int, units: str) -> tuple[str, str]:
    """What one place of an arc carries, and what sets it."""
    from boomsim.units import show_rated

    governing = int(found.governing[arc, angle])
    if not found.stands[arc, angle]:
        return "turns over", ""
    if governing < 0:
        return "not rated", ""
    return show_rated(float(found.capacity[arc, angle]), units), found.limits[governing].set_by


def limit(found: "RangeShape", arc: int, angle: int) -> "Limit | None":
    """Limit that governs at a place of an arc; None where nothing is rated."""
    governing = int(found.governing[arc, angle])
    return found.limits[governing] if governing >= 0 else None


def summary(found: "RangeShape") -> str:
    """Say in a few words what was looked at."""
    return (
        f"{found.setup.machine.name}, {len(found.length)} booms from {found.length.min():.1f} to "
        f"{found.length.max():.1f} m, {len(found.angle)} boom angles"
    )


def figure(found: "RangeShape", *, units: str) -> "Figure":
    """Draw the range diagram."""
    from boomsim.figures.range.range_figure import figure_of_range

    return figure_of_range(found.setup, extension=found.extension, units=units)
