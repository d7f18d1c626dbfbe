"""``boomsim range``: where the boom head can be, and what it may carry there."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell_result

HELP = "range diagram: radius and height of the boom head, boom angles, and capacities"
EXAMPLE = "boomsim range yard60 --extension 0,0,45,45 --figure range.svg"


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
    from boomsim.face.range_result import range as range_of

    refuse_picture(chosen)
    found = range_of(
        chosen.machine,
        extension=chosen.extension,
        length=chosen.length,
        system=chosen.system,
        **inputs.choices(chosen),
    )
    tell_result(chosen, found)
