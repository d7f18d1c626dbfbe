"""``boomsim overload``: what happens first past the rated load, and where a float goes light."""

import argparse
from typing import TYPE_CHECKING

from boomsim.cli import command_options as inputs
from boomsim.cli import place_options as places
from boomsim.cli.answer_printing import refuse_picture, tell_result
from boomsim.cli.progress_bar import Bar

if TYPE_CHECKING:
    from boomsim.face.study_result import Result

HELP = "raise the load past the rated one: does the crane tip first, or does something break?"
EXAMPLE = "boomsim overload yard60 --extension 0,0,45,45 --radius '8 m'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=False)
    parser.add_argument(
        "--hold",
        choices=("angle", "radius"),
        default="angle",
        help="what stays while the load grows (default: the boom angle; nobody luffs meanwhile)",
    )
    places.add_ground(parser)
    parser.add_argument("--map", action="store_true", help="all over the chart instead of one lift")
    parser.add_argument(
        "--best",
        action="store_true",
        help="with --map: the chart of the best of all ways to extend at each radius (default: one "
        "way for each length, as chart has it)",
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    refuse_picture(chosen)
    tell_result(chosen, _map(chosen) if chosen.map else _one(chosen))


def _one(chosen: argparse.Namespace) -> "Result":
    if chosen.best:
        raise ValueError("--best chooses the chart of --map. Add --map, or leave --best out.")
    from boomsim.face.overload_result import overload

    return overload(
        chosen.machine,
        extension=chosen.extension,
        radius=chosen.radius,
        hold=chosen.hold,
        ground=chosen.ground,
        units=chosen.units,
        **inputs.choices(chosen),
    )


def _map(chosen: argparse.Namespace) -> "Result":
    from boomsim.face.overload_result import overload_map

    if chosen.extension or chosen.radius or chosen.hold == "radius":
        raise ValueError(
            "--map takes every boom length and radius of the chart at a kept boom angle. Leave out "
            "--extension, --radius and --hold, or leave out --map."
        )
    with Bar() as bar:
        return overload_map(
            chosen.machine,
            best=chosen.best,
            units=chosen.units,
            told=bar.tell,
            **inputs.choices(chosen),
        )
