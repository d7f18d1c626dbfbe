"""``boomsim losses``: what eats capacity, and what a kilogram in a section costs."""

import argparse

from boomsim.cli import command_options as inputs
from boomsim.cli import place_options as places
from boomsim.cli.answer_printing import refuse_picture, tell_result
from boomsim.cli.progress_bar import Bar
from boomsim.face.losses_result import QUANTITIES, checked_amount, losses

HELP = "what eats capacity: slope, side pull, wind, picking up fast, soft ground, and each kilogram"
EXAMPLE = "boomsim losses yard60 --radius '8 m, 16 m' --amount wind='14 m/s'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=True)
    parser.add_argument(
        "--amount",
        metavar="NAME=VALUE",
        action="append",
        default=[],
        help=f"how much of an effect: {', '.join(QUANTITIES)}; such as lean='2 deg' or soft='5 %%'",
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    refuse_picture(chosen)
    with Bar() as bar:
        found = losses(
            chosen.machine,
            extension=chosen.extension,
            radius=chosen.radius,
            amounts=dict(_amount(text) for text in chosen.amount),
            told=bar.tell,
            units=chosen.units,
            **inputs.choices(chosen),
        )
    tell_result(chosen, found)


def _amount(written: str) -> tuple[str, str]:
    """Part a name from its value, as in "lean=2 deg"."""
    name, sign, value = written.partition("=")
    return checked_amount(name, written, has_value=bool(sign)), value.strip()
