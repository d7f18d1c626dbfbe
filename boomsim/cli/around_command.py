"""``boomsim around``: capacity all around the crane, over the rear, and what the floats carry."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli import place_options as places
from boomsim.cli.answer_printing import refuse_picture, tell_result

HELP = "all around the crane: capacity by slew angle, over the rear, float loads, ground pressure"
EXAMPLE = "boomsim around truck18 --extension 50,50,50 --radius '9 m' --mat '1 m2'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=True)
    parser.add_argument(
        "--load",
        metavar="MASS",
        help="gross load whose room in each direction and float loads are shown, at the last "
        "radius (default: the rated one)",
    )
    parser.add_argument("--mat", metavar="AREA", help="of the mat under each float, such as '1 m2'")
    places.add_ground(parser)
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.face.around_result import around

    refuse_picture(chosen)
    found = around(
        chosen.machine,
        extension=chosen.extension,
        radius=chosen.radius,
        load=chosen.load,
        mat=chosen.mat,
        ground=chosen.ground,
        units=chosen.units,
        **inputs.choices(chosen),
    )
    tell_result(chosen, found)
