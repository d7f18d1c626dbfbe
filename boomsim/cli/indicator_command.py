"""``boomsim indicator``: what a load-moment indicator knows, and what it cannot."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli import place_options as places
from boomsim.cli.answer_printing import refuse_picture, tell_result

HELP = "what a load-moment indicator knows and what it cannot: it shows, and it is"
CLOSE_IN = "1.5 m/s, less very close in"
EXAMPLE = "boomsim indicator yard60 --extension 0,0,45,45 --radius '10 m' --figure indicator.svg"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=False)
    parser.add_argument(
        "--load", metavar="MASS", help="gross (default: nine tenths of the rated load)"
    )
    unseen = parser.add_argument_group("conditions that it is not told of, each alone")
    options = (
        ("--side-pull", "SHARE", "5 %", "pull across the boom, over the load"),
        ("--lean", "ANGLE", "1 deg", "out of level, ahead and across"),
        ("--wind", "SPEED", "14 m/s", "gusts, from behind and across"),
        ("--load-area", "AREA", "1.2 m2", "wind area of each tonne of load"),
        ("--swing", "SPEED", None, "of the boom head while the load is slewed round"),
    )
    for name, kind, usual, words in options:
        told = (usual or CLOSE_IN).replace("%", "%%")
        unseen.add_argument(name, metavar=kind, default=usual, help=f"{words} (default: {told})")
    inputs.add_rigging(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.face.indicator_result import indicator

    refuse_picture(chosen)
    names = (
        "extension", "radius", "load", "side_pull", "lean", "wind", "load_area", "swing",
        "counterweight", "support", "parts", "slew", "rule", "units",
    )  # fmt: skip
    given = {name: getattr(chosen, name) for name in names}
    tell_result(chosen, indicator(chosen.machine, **given))
