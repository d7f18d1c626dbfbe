"""``boomsim pins``: the moves of a pinned boom from one configuration to another, in order."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.machine.model import Machine
    from boomsim.rating.path.pins_study import Sequence

HELP = "a pinned boom from one configuration to another: which section moves when, and how far"
EXAMPLE = "boomsim pins yard60 --from 0,0,45,45 --to 45,45,0,0 --figure pins.svg"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--from",
        dest="begin",
        metavar="PERCENT",
        help="of each moving section, base side first, as 0,0,45,45 (default: all in)",
    )
    parser.add_argument(
        "--to", metavar="PERCENT", required=True, help="the configuration that is wanted"
    )
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.rating.path.pins_study import pin_sequence

    refuse_picture(chosen)
    machine = inputs.machine(chosen)
    moving = len(machine.boom.sections) - 1
    begin = chosen.begin or ",".join(["0"] * moving)
    found = pin_sequence(
        machine.boom,
        start=inputs.extension(begin, machine, what="--from"),
        end=inputs.extension(chosen.to, machine, what="--to"),
    )

    def figure() -> "Figure":
        from boomsim.figures.path.pins_figure import figure_of_pins

        return figure_of_pins(machine, found, units=chosen.units)

    tell(
        chosen,
        "pins",
        data=lambda: as_json(machine, found),
        text=lambda: as_text(machine, found, units=chosen.units),
        figure=figure,
    )


def as_json(machine: "Machine", found: "Sequence") -> dict[str, Any]:
    """Give the moves, SI."""
    return {
        "machine": machine.name,
        "start": found.start,
        "end": found.end,
        "start_length": found.start_length,
        "moves": found.moves,
        "shortest": found.shortest,
        "longest": found.longest,
        "comes_back": found.comes_back,
    }


def as_text(machine: "Machine", found: "Sequence", *, units: str) -> str:
    """Give the moves: a sentence to be spoken, then the steps."""
    from boomsim.rating.path.pins_sentences import RULE, tell_pins
    from boomsim.units import show

    ends = (show(one, "boom_length", units) for one in (found.shortest, found.longest))
    shortest, longest = ends
    pieces = [
        paragraph(tell_pins(found, units=units)),
        paragraph(f"{machine.name} (invented). {RULE}"),
        table(["move", "then, % out", "boom"], _rows(found, units)),
        paragraph(
            f"On the way the boom is {shortest} at its shortest and {longest} at its longest."
        ),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def _rows(found: "Sequence", units: str) -> list[list[str]]:
    import numpy as np

    from boomsim.rating.path.pins_sentences import tell_move
    from boomsim.rating.strategies import label
    from boomsim.units import show

    first = ["at first", label(found.start), show(found.start_length, "boom_length", units)]
    moves = [
        [
            f"{number}. {tell_move(move)}",
            label(np.array(move.extension)),
            show(move.length, "boom_length", units),
        ]
        for number, move in enumerate(found.moves, start=1)
    ]
    return [first, *moves]
