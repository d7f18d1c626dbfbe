"""``boomsim lift``: one lift, with everything that follows from it."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli.json_printing import print_json

HELP = "one lift: angle, deflection, section forces, every limit, margin, float loads"
EXAMPLE = "boomsim lift yard60 --extension 0,0,45,45 --radius '10 m' --load '8 t'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        help="of each moving section, base side first, as 0,0,45,45 (default: all in)",
    )
    where = parser.add_mutually_exclusive_group()
    where.add_argument("--radius", metavar="LENGTH", help="loaded radius, such as '10 m'")
    where.add_argument("--angle", metavar="ANGLE", help="boom angle, such as '60 deg' (default)")
    parser.add_argument("--load", metavar="MASS", default="0 kg", help="gross load, such as '8 t'")
    inputs.add_setup(parser)
    inputs.add_output(parser, figure=False)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.face.lift_result import lift

    found = lift(
        chosen.machine,
        extension=chosen.extension,
        radius=chosen.radius,
        angle=chosen.angle,
        load=chosen.load,
        **inputs.choices(chosen),
    )
    if chosen.json:
        print_json(found.kind, found.data())
    else:
        print(found.text(chosen.units))
