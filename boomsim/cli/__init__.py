"""The commands: a thin face over the package. One file for each command."""

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module
from typing import NoReturn

from boomsim.caution import CAUTION
from boomsim.cli import standard_streams as streams
from boomsim.cli.interruptions import STOPPED, stoppable
from boomsim.face.offered_names import brief
from boomsim.version import __version__

COMMANDS = (
    "machines",
    "describe",
    "compare",
    "lift",
    "reeving",
    "pick",
    "slabs",
    "lower",
    "telescope",
    "pins",
    "chart",
    "range",
    "around",
    "overload",
    "losses",
    "dynamics",
    "indicator",
    "lab",
    "page",
    "lessons",
    "class",
    "game",
    "handouts",
    "paper",
    "scan",
    "mark",
    "markers",
)
"""Modules of this package, in the order that --help lists them."""

STOPPED_WORDS = "no partial files were left. Run the command again to start over."

NO_WHOLE_NUMBER = ": invalid int value: "
"""What Python's parser says, between the option and what was given."""

REFUSED = 2
"""Exit code of a command whose input was refused."""


def parser() -> argparse.ArgumentParser:
    """Build the command line; imports nothing that computes."""
    top = _Parser(
        prog="boomsim",
        description="A physics teaching simulator of a telescoping boom: why one boom length lifts "
        "differently depending on which sections are out.",
        epilog=CAUTION,
    )
    top.add_argument("--version", action="version", version=f"boomsim {__version__}")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", required=True)
    for name in COMMANDS:
        module = import_module(f"boomsim.cli.{name}_command")
        command = commands.add_parser(
            name,
            help=module.HELP,
            description=module.HELP,
            epilog=f"Example: {module.EXAMPLE}",
        )
        module.add_arguments(command)
        command.set_defaults(run=module.run, stopped=getattr(module, "STOPPED", STOPPED_WORDS))
    return top


class _Parser(argparse.ArgumentParser):
    """Repeats no page of what was given."""

    def error(self, message: str) -> NoReturn:
        option, no_number, given = message.removeprefix("argument ").partition(NO_WHOLE_NUMBER)
        if no_number:
            message = f"{option}: {given} is no whole number. Write it in digits, such as 4."
        if message.startswith("unrecognized arguments"):
            message += ". Leave them out; --help behind the command lists what it takes."
        super().error(brief(message, message.replace("'", " ").split()))


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command.

    Parameters
    ----------
    arguments : sequence of str, optional
        Default: those of the process

    Returns
    -------
    int
        0; 2 for input that was refused with a sentence on standard error; 130 for a run that was
        stopped
    """
    streams.prepare()
    told = argparse.Namespace(command="", stopped=STOPPED_WORDS)
    with stoppable(whole_process=arguments is None) as stopping:
        try:
            return _answered(arguments, told)
        except BaseException as error:
            # A library may turn the interruption into an error of its own.
            if not stopping.asked and not isinstance(error, KeyboardInterrupt):
                return _refused(error, told, sys.argv[1:] if arguments is None else arguments)
            streams.say(f"{_name(told)}: stopped; {told.stopped}")
            return STOPPED
        finally:
            streams.finish()


def _answered(arguments: Sequence[str] | None, told: argparse.Namespace) -> int:
    """Read the command line, run the command, and see that the answer has left."""
    try:
        _refuse_dashes(sys.argv[1:] if arguments is None else arguments)
        chosen = parser().parse_args(arguments, namespace=told)
        return int(chosen.run(chosen) or 0)
    finally:
        sys.stdout.flush()


def _refuse_dashes(words: Sequence[str]) -> None:
    """Refuse "--option=--", of which Python's parser makes an empty list before 3.13."""
    for word in words:
        if word.startswith("--") and word.endswith("=--"):
            raise ValueError(f"{word} gives two dashes for a value. Write one after the sign =.")


def _refused(error: BaseException, told: argparse.Namespace, given: Sequence[str]) -> int:
    """Report user errors, without a page of what was given; re-raise the rest."""
    if isinstance(error, BrokenPipeError):
        return 0  # whoever read the answer has read enough of it
    if isinstance(error, OSError):
        streams.say(f"{_name(told)}: {streams.what_failed(error)}")
    elif isinstance(error, ValueError):
        streams.say(f"{_name(told)}: {brief(_in_words(error, told), given)}")
    else:
        raise error
    return REFUSED


def _in_words(error: ValueError, told: argparse.Namespace) -> str:
    """Say a refusal in the words of the units that were chosen."""
    from boomsim.units import in_words

    return in_words(str(error), getattr(told, "units", "metric"))


def _name(chosen: argparse.Namespace) -> str:
    """What a message begins with."""
    return f"boomsim {chosen.command}".rstrip()
