"""``boomsim range``: where the boom head can be, and what it may carry there."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import inputs
from boomsim.cli.answer import paragraph, table
from boomsim.cli.tell import refuse_picture, tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.figures.range.shape import RangeShape
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array

HELP = "range diagram: radius and height of the boom head, boom angles, and capacities"
EXAMPLE = "boomsim range yard60 --extension 0,0,45,45 --figure range.svg"

ROWS = 7
"""Places of each boom that the table shows [1]."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    what = parser.add_mutually_exclusive_group()
    what.add_argument(
        "--extension",
        metavar="PERCENT",
        action="append",
        help="one way to extend, as 0,0,45,45; repeat it for more (default: a few lengths)",
    )
    what.add_argument(
        "--length", metavar="LENGTH", help="all ways to reach these lengths, as '18.7 m, 25.9 m'"
    )
    parser.add_argument("--system", metavar="NAME", help="boom system: pinned, sequenced, ...")
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.figures.range.shape import range_of

    if chosen.system is not None and chosen.length is None:
        raise ValueError(
            "--system chooses among the ways to reach a --length, which is missing. Add it, or "
            "leave --system out."
        )
    machine = inputs.machine(chosen)
    setup, extension = inputs.setup(chosen, machine), _ways(chosen, machine)
    refuse_picture(chosen)
    found = range_of(setup, extension=extension)

    def figure() -> "Figure":
        from boomsim.figures.range.figure import figure_of_range

        return figure_of_range(setup, extension=extension, units=chosen.units)

    tell(
        chosen,
        "range",
        data=lambda: as_json(found),
        text=lambda: as_text(found, units=chosen.units),
        figure=figure,
    )


def _ways(chosen: argparse.Namespace, machine: "Machine") -> "Array | None":
    import numpy as np

    from boomsim.rating.charts.ways import configurations_at_lengths

    if chosen.extension is not None:
        return np.array([inputs.extension(text, machine) for text in chosen.extension])
    if chosen.length is not None:
        lengths = inputs.radii(chosen.length, what="--length")
        assert lengths is not None
        wanted = [float(one) for one in lengths]
        return configurations_at_lengths(
            machine.boom, length=wanted, system=chosen.system
        ).extension
    return None


def as_json(found: "RangeShape") -> dict[str, Any]:
    """Every arc, SI."""
    from boomsim.rating.charts.tables import plain_setup
    from boomsim.rating.empty_hook.telling import plain_empty_hook

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

    from boomsim.figures.words import allowance_words, machine_words, setup_words
    from boomsim.rating.empty_hook.telling import tell_empty_hook
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
        "radius. Near its greatest reach and at its steepest a loaded boom cannot keep the radius, "
        "and what is less than hook block and slings is not rated."
    )
    lowest = [
        f"({label(found.extension[a])}): {sentence}"
        for a in range(len(found.length))
        if (sentence := tell_empty_hook(found.empty_hook, units=units, row=a))
    ]
    return "\n\n".join(
        [
            paragraph(
                f"{words}{setup_words(found.setup, units=units)}. "
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
