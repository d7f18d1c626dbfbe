"""``boomsim pick``: may I make this pick? Every check, in the order in which they are made."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell_result

HELP = "may I make this pick? every check of an operator, on the model: no leave to lift anything"
EXAMPLE = (
    "boomsim pick yard60 --extension 0,0,45,45 --radius '9.8 m' --load '12 t' "
    "--slew '0 deg, 90 deg' --bearing '300 kPa' --mat '1.5 m2' --wind '6 m/s' "
    "--load-area '1 m2' --level '0.3 deg' --block '25 t'"
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        help="of each moving section, base side first, as 0,0,45,45 (default: one that shows the "
        "question)",
    )
    parser.add_argument(
        "--radius",
        metavar="LENGTH",
        required=True,
        help="measured with the hook empty, where the load will hang farthest out",
    )
    parser.add_argument(
        "--load", metavar="MASS", required=True, help="net, without hook block and slings"
    )
    parser.add_argument("--jib", metavar="MASS", help="deduction for a jib stowed on the boom")
    inputs.add_rigging(
        parser,
        slew="from where to where the boom swings, as '0 deg, 90 deg' (0 is over the rear); or "
        "around, or rear",
    )
    parser.add_argument(
        "--sector",
        choices=("around", "rear"),
        help="of the chart in hand (default: the one that the swing asks for)",
    )
    seen = parser.add_argument_group("measured; what is left out counts as not looked at")
    seen.add_argument("--wind", metavar="SPEED", help="gusts at the boom head, such as '6 m/s'")
    seen.add_argument(
        "--load-area", metavar="AREA", help="wind area of each tonne of load, such as '1 m2'"
    )
    seen.add_argument("--level", metavar="ANGLE", help="out of level, such as '0.3 deg'")
    seen.add_argument(
        "--bearing", metavar="PRESSURE", help="that the ground bears, such as '200 kPa'"
    )
    seen.add_argument(
        "--mat", metavar="AREA", help="of the mat under each float (default: the float alone)"
    )
    seen.add_argument("--block", metavar="MASS", help="stamped on the hook block, such as '25 t'")
    seen.add_argument(
        "--misread",
        metavar="LENGTH",
        default="0.5 m",
        help="a radius read so much too short: its cost is told (default: 0.5 m)",
    )
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.face.pick_result import pick

    refuse_picture(chosen)
    tell_result(chosen, pick(chosen.machine, **inputs.asked(chosen, pick)))
