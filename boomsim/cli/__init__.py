"""The commands: a thin face over the package. One file for each command."""

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module

from boomsim import __version__
from boomsim.caution import CAUTION

COMMANDS = (
    "machines",
    "describe",
    "compare",
    "lift",
    "chart",
    "range",
    "around",
    "overload",
    "losses",
    "lab",
    "page",
    "handouts",
    "paper",
    "mark",
)
"""Modules of this package, in the order that --help lists them."""


def parser() -> argparse.ArgumentParser:
    """Build the command line; imports nothing that computes.

    Returns
    -------
    argparse.ArgumentParser
    """
    top = argparse.ArgumentParser(
        prog="boomsim",
        description="A physics teaching simulator of a telescoping boom: why one boom length lifts "
        "differently depending on which sections are out.",
        epilog=CAUTION,
    )
    top.add_argument("--version", action="version", version=f"boomsim {__version__}")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", required=True)
    for name in COMMANDS:
        module = import_module(f"boomsim.cli.{name}")
        command = commands.add_parser(
            name,
            help=module.HELP,
            description=module.HELP,
            epilog=f"Example: {module.EXAMPLE}",
        )
        module.add_arguments(command)
        command.set_defaults(run=module.run)
    return top


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command.

    Parameters
    ----------
    arguments : sequence of str, optional
        Default: those of the process

    Returns
    -------
    int
        0, or 2 for input that was refused with a sentence on standard error
    """
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            # A terminal with an old code page shows a question mark rather than a traceback.
            stream.reconfigure(errors="replace")
    chosen = parser().parse_args(arguments)
    try:
        return int(chosen.run(chosen) or 0)
    except BrokenPipeError:
        sys.stderr.close()
        return 0
    except (ValueError, OSError) as error:
        print(f"boomsim {chosen.command}: {error}", file=sys.stderr)
        return 2
