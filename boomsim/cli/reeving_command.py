"""``boomsim reeving``: parts of line, rope out and left on the drum, line pull, hook speed."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell_result
from boomsim.face.reeving_result import reeving

HELP = "how a boom is reeved: parts of line, rope out and left on the drum, line pull, hook speed"
EXAMPLE = "boomsim reeving yard60 --length '33.1 m' --load '6 t' --radius '12 m'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    which = parser.add_mutually_exclusive_group()
    which.add_argument("--length", metavar="LENGTH", help="boom length, such as '33.1 m'")
    which.add_argument(
        "--extension",
        metavar="PERCENT",
        help="of each moving section, base side first, as 0,0,45,45 (default: one that shows the "
        "question)",
    )
    parser.add_argument(
        "--radius", metavar="LENGTH", help="of the load, as '12 m' (default: where most is rated)"
    )
    parser.add_argument(
        "--load", metavar="MASS", help="net load, as '6 t' (default: the rated load is looked at)"
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    refuse_picture(chosen)
    found = reeving(
        chosen.machine,
        length=chosen.length,
        extension=chosen.extension,
        radius=chosen.radius,
        load=chosen.load,
        units=chosen.units,
        **inputs.choices(chosen),
    )
    tell_result(chosen, found)
