"""``boomsim page --live``: the explorer in one HTML file, with the whole model in it."""

import argparse
from collections.abc import Callable
from typing import TYPE_CHECKING

from boomsim.cli.progress_bar import Bar
from boomsim.cli.web_address import web_address

if TYPE_CHECKING:
    from boomsim.lab.scene.scene import Scene
    from boomsim.rating.strategies import Configurations


def add_live(parser: argparse.ArgumentParser) -> None:
    """Give the command its live page."""
    live = parser.add_argument_group("live page")
    live.add_argument(
        "--live",
        action="store_true",
        help="the whole explorer instead: everything can be moved, and the reader's browser works "
        "it out; opens with the first way",
    )
    live.add_argument(
        "--runtime",
        metavar="FOLDER",
        help="of Python for browsers, which a live page carries; without it the command says what "
        "to fetch",
    )
    live.add_argument(
        "--address",
        metavar="URL",
        default="",
        help="where the page will lie on the web: its links and their QR codes begin with it",
    )


def refuse_runtime(chosen: argparse.Namespace) -> None:
    """Refuse a runtime that nothing would run, and an address that nothing would use."""
    for name, given in (("--runtime", chosen.runtime), ("--address", chosen.address)):
        if given:
            raise ValueError(f"{name} goes with --live. Add --live, or leave {name} out.")


def write_live(
    chosen: argparse.Namespace, scene: "Scene", ways: "Callable[[], Configurations]"
) -> str:
    """Write the live page, and say what was written.

    Parameters
    ----------
    scene : Scene
        Whose setup holds
    ways : callable
        Gives the ways that were named

    Returns
    -------
    str
        A paragraph
    """
    from boomsim.files.text_file import write_whole
    from boomsim.lab.live.bytecode import find_compiler
    from boomsim.lab.live.live_page import live_page
    from boomsim.lab.live.python_runtime import read_runtime

    address = chosen.address and web_address(chosen.address)
    runtime = read_runtime(chosen.runtime)
    compiler = find_compiler()
    start = _start(chosen, scene, ways)
    with Bar() as bar:
        made = live_page(
            runtime,
            start,
            units=chosen.units,
            compiler=compiler,
            address=address,
            told=bar.tell,
        )
    target = write_whole(made, chosen.file, ending=".html")
    size = len(made) / 1e6
    return (
        f"{target}, {size:.1f} MB: open it in any browser; it needs no network. {_pace(compiler)}"
    )


def _start(
    chosen: argparse.Namespace, scene: "Scene", ways: "Callable[[], Configurations]"
) -> "Scene":
    """The machine's demonstration, in the setup and the first way that were chosen."""
    from dataclasses import replace

    from boomsim.lab.scene.scene import first_scene

    first = first_scene(scene.machine)
    begun = replace(
        scene,
        system=first.system,
        extension=first.extension,
        radius=first.radius,
        load=first.load,
    )
    if chosen.length is None and chosen.extension is None:
        return begun
    named = ways()
    extension = tuple(float(fraction) for fraction in named.extension[0])
    return replace(begun, extension=extension, system=named.system[0])


def _pace(compiler: object) -> str:
    from boomsim.lab.live.bytecode import PYTHON

    if compiler is not None:
        return f"Python {PYTHON} was at hand and has prepared it: it starts in about half the time."
    return (
        f"With Python {PYTHON} at hand (python{PYTHON} on the path) it would be prepared further "
        "and start in about half the time."
    )
