"""``boomsim slabs``: setting up: the crane lifts its own counterweight, slab by slab."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell_result

HELP = "setting up: at which radii the crane lifts the slabs of its own counterweight"
EXAMPLE = "boomsim slabs yard60 --figure slabs.svg"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        action="append",
        help="a way out, as 0,0,45,45; repeat it for more (default: one for each boom length)",
    )
    inputs.add_rigging(parser, counterweight=False)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.face.slabs_result import slabs

    refuse_picture(chosen)
    tell_result(chosen, slabs(chosen.machine, **inputs.asked(chosen, slabs)))
