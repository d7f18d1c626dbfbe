"""``boomsim lab``: opens the notebooks."""

import argparse

from boomsim.reports.text_tables import paragraph

HELP = "open the notebooks in JupyterLab: the explorer and the lessons"
EXAMPLE = "boomsim lab --folder my-notebooks"


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


def run(chosen: argparse.Namespace) -> int:
    """Open them."""
    from boomsim.lab.notebook_server import copy_notebooks, folder_of, lab_command, serve

    folder = folder_of(chosen.folder)
    command = lab_command(folder, port=chosen.port, browser=not chosen.no_browser)
    copied, kept = copy_notebooks(folder)
    print(paragraph(_words(str(folder), copied, kept)), flush=True)
    return serve(command, folder)


def _words(folder: str, copied: int, kept: int) -> str:
    left = f" {kept} kept; delete a file to get a fresh copy." if kept else ""
    return (
        f"Your notebooks are in {folder}: {copied} copied.{left} JupyterLab opens in your browser "
        "and needs no network. Stop it with Ctrl-C here, twice, or with File - Shut Down there."
    )
