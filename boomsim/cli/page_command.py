"""``boomsim page``: one HTML file with one boom length, several ways, for home or a phone."""

import argparse
from typing import TYPE_CHECKING

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli.page_command_live import add_live, refuse_runtime, write_live
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import paragraph

if TYPE_CHECKING:
    from boomsim.lab.scene.scene import Scene
    from boomsim.machine.model import Machine
    from boomsim.rating.strategies import Configurations

HELP = "one HTML file without network: one boom length, several ways, for home or a phone"
EXAMPLE = "boomsim page three-ways.html yard60"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("file", metavar="FILE.html", help="the page to write")
    inputs.add_machine(parser)
    parser.add_argument("--length", metavar="LENGTH", help="all legal ways to this boom length")
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        action="append",
        help="one way, as 0,0,45,45; repeat it (default: ways that show the question)",
    )
    inputs.add_setup(parser)
    parser.add_argument("--units", choices=("metric", "us"), default="metric", help="of the page")
    add_live(parser)


def run(chosen: argparse.Namespace) -> None:
    """Write the page."""
    from boomsim.files.text_file import refuse_ending, write_whole
    from boomsim.lab.page.page_file import page
    from boomsim.lab.page.page_states import ways_of

    refuse_ending(chosen.file, ending=".html")
    machine = inputs.machine(chosen)
    scene = _scene(chosen, machine)
    if chosen.live:
        said = write_live(chosen, scene, lambda: _configurations(chosen, machine))
        print(f"{paragraph(said)}\n\n{paragraph(CAUTION)}")
        return
    refuse_runtime(chosen)
    ways = ways_of(scene, _configurations(chosen, machine), units=chosen.units)
    with Bar() as bar:
        made = page(ways, told=bar.tell)
    target = write_whole(made, chosen.file, ending=".html")
    print(f"{target}: open it in any browser; it needs no network.\n\n{paragraph(CAUTION)}")


def _scene(chosen: argparse.Namespace, machine: "Machine") -> "Scene":
    from boomsim.lab.scene.scene import Scene

    slew = inputs.slew(chosen.slew)
    setup = inputs.setup(chosen, machine)
    moving = len(machine.boom.sections) - 1
    return Scene(
        machine=chosen.machine,
        system=machine.boom.systems[0],
        extension=(0.0,) * moving,
        slew=0.0 if isinstance(slew, str) else slew,
        rated_for=slew if isinstance(slew, str) else "here",
        counterweight=setup.counterweight.name,
        support=setup.support.name,
        parts=setup.parts,
        rule=chosen.rule,
        allowances=chosen.allowances,
        disturbances=setup.disturbances,
    )


def _configurations(chosen: argparse.Namespace, machine: "Machine") -> "Configurations":
    import numpy as np

    from boomsim.rating.comparison.comparison_study import demonstration
    from boomsim.rating.strategies import configurations_of, configurations_of_length
    from boomsim.units import parse

    if chosen.length is not None:
        length = parse(chosen.length, "length", what="--length")
        return configurations_of_length(machine.boom, length=length)
    if chosen.extension is None:
        return demonstration(machine.boom)
    written = np.array([inputs.extension(text, machine) for text in chosen.extension])
    return configurations_of(machine.boom, extension=written)
