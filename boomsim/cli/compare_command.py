"""``boomsim compare``: configurations of one boom length, rated side by side, and why."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell_result

HELP = "configurations of one boom length, rated side by side over radius: who wins where, and why"
EXAMPLE = "boomsim compare yard60 --length '18.7 m' --radius '6 m, 16 m' --figure compare.svg"
PICTURE = "boomsim-compare.png"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--length", metavar="LENGTH", help="boom length; all legal configurations of it are rated"
    )
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        action="append",
        help="one configuration, as 0,0,45,45; repeat it to choose which to compare",
    )
    parser.add_argument("--system", metavar="NAME", help="boom system: pinned, sequenced, ...")
    parser.add_argument(
        "--radius", metavar="LENGTH", help="explain at these radii, such as '6 m, 16 m'"
    )
    parser.add_argument(
        "--radii", metavar="LENGTH", help="rate at these radii (default: every metre)"
    )
    parser.add_argument(
        "--every-way",
        action="store_true",
        help="list every way to the length (default: those that lead somewhere, the one that "
        "carries least close in and the one that does far out)",
    )
    parser.add_argument(
        "--plates",
        metavar="FACTORS",
        help="instead: one configuration of the same crane with plates so many times as thick, "
        "side by side, as '0.8, 1, 1.3'",
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    if chosen.plates is not None:
        from boomsim.cli.compare_command_plates import run_builds

        run_builds(chosen)
    else:
        _run_ways(chosen)


def _run_ways(chosen: argparse.Namespace) -> None:
    from boomsim.face.compare_result import compare

    refuse_picture(chosen)
    found = compare(
        chosen.machine,
        length=chosen.length,
        extension=chosen.extension,
        system=chosen.system,
        radius=chosen.radius,
        radii=chosen.radii,
        every_way=chosen.every_way,
        units=chosen.units,
        **inputs.choices(chosen),
    )
    demonstrates = chosen.length is None and chosen.extension is None
    tell_result(chosen, found, picture=PICTURE if demonstrates and not chosen.json else None)
