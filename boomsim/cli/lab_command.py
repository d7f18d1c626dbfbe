"""``boomsim lab``: opens the notebooks, or the explorer as a page for a class."""

import argparse

from boomsim.cli.json_printing import paragraph

HELP = "open the notebooks in JupyterLab, or with --class the explorer as a page for many"
EXAMPLE = "boomsim lab --class --address 0.0.0.0"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument(
        "--folder",
        metavar="FOLDER",
        help="where your copies of the notebooks lie (default: boomsim-notebooks in your home)",
    )
    parser.add_argument("--port", metavar="N", type=int, help="port to serve at")
    parser.add_argument(
        "--no-browser", action="store_true", help="do not open a browser, only say the address"
    )
    group = parser.add_argument_group("for a class")
    group.add_argument(
        "--class",
        dest="for_class",
        action="store_true",
        help="serve the explorer alone, one session for each visitor",
    )
    group.add_argument(
        "--address",
        metavar="ADDRESS",
        default="127.0.0.1",
        help="network address to listen at; 0.0.0.0 lets the class's machines in "
        "(default: this machine only)",
    )
    group.add_argument(
        "--idle",
        metavar="SECONDS",
        type=int,
        default=300,
        help="sessions whose page was closed end after so long (default: 300)",
    )


def run(chosen: argparse.Namespace) -> int:
    """Open them."""
    from boomsim.lab.notebook_server import (
        copy_notebooks,
        folder_of,
        lab_command,
        serve,
        voila_command,
    )

    if not chosen.for_class and chosen.address != "127.0.0.1":
        raise ValueError(
            "--address goes with --class. The notebooks are for this machine alone. Add --class, "
            "or leave --address out."
        )
    folder = folder_of(chosen.folder)
    make = voila_command if chosen.for_class else lab_command
    options = {"address": chosen.address, "idle": chosen.idle} if chosen.for_class else {}
    command = make(folder, port=chosen.port, browser=not chosen.no_browser, **options)
    copied, kept = copy_notebooks(folder)
    print(paragraph(_words(chosen, str(folder), copied, kept)), flush=True)
    return serve(command, folder, visitors=chosen.for_class)


def _words(chosen: argparse.Namespace, folder: str, copied: int, kept: int) -> str:
    left = f" {kept} kept; delete a file to get a fresh copy." if kept else ""
    said = f"Your notebooks are in {folder}: {copied} copied.{left}"
    if chosen.for_class:
        return (
            f"{said} The explorer is served at the address below; every visitor has a session of "
            f"their own, which ends {chosen.idle} s after its page is closed. Stop it with Ctrl-C."
        )
    return (
        f"{said} JupyterLab opens in your browser and needs no network. Stop it with Ctrl-C here, "
        "twice, or with File - Shut Down there."
    )
