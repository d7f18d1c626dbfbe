"""``boomsim dynamics``: a load that is jerked, stopped or swung counts as more than it weighs."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli import place_options as places
from boomsim.cli.answer_printing import refuse_picture, tell_result

HELP = "a load lifted off, stopped, dropped or swung: as which load, hanging still, it counts"
CLOSE_IN = "1.5 m/s, less very close in"
EXAMPLE = "boomsim dynamics yard60 --extension 0,0,45,45 --radius '10 m' --speed '0.5 m/s'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=False)
    parser.add_argument(
        "--load", metavar="MASS", help="gross (default: three quarters of the rated load)"
    )
    moved = parser.add_argument_group("how the load is moved")
    options = (
        ("--speed", "SPEED", "0.5 m/s", "of hoisting and lowering"),
        ("--stop", "TIME", "1 s", "in which lowering is stopped evenly"),
        ("--drop", "LENGTH", "0.05 m", "that slack slings let the load fall"),
        ("--swing", "SPEED", None, "of the boom head while slewing"),
        ("--swing-stop", "TIME", "3 s", "in which slewing is stopped"),
        ("--hook", "LENGTH", "2 m", "height of the hook above the ground"),
    )
    for name, kind, usual, words in options:
        moved.add_argument(
            name, metavar=kind, default=usual, help=f"{words} (default: {usual or CLOSE_IN})"
        )
    moved.add_argument("--hoist-class", metavar="N", type=int, default=2, help="1 soft to 4 stiff")
    inputs.add_rigging(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.face.dynamics_result import dynamics

    refuse_picture(chosen)
    names = (
        "extension", "radius", "load", "speed", "stop", "drop", "swing", "swing_stop",
        "hoist_class", "hook", "counterweight", "support", "parts", "slew", "rule", "units",
    )  # fmt: skip
    tell_result(chosen, dynamics(chosen.machine, **{name: getattr(chosen, name) for name in names}))
