"""Which configuration and which radii a command looks at, named or chosen for it."""

import argparse
from typing import TYPE_CHECKING

from boomsim.cli import inputs

if TYPE_CHECKING:
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array
    from boomsim.rating.setup import Setup


def add_place(parser: argparse.ArgumentParser, *, several: bool) -> None:
    """Give a command its configuration and its radius or radii."""
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        help="of each moving section, base side first, as 0,0,45,45 (default: one that shows "
        "the question)",
    )
    example = "'6 m, 12 m'" if several else "'12 m'"
    parser.add_argument(
        "--radius",
        metavar="LENGTH",
        help=f"loaded radius, such as {example} (default: within the reach)",
    )


def add_ground(parser: argparse.ArgumentParser) -> None:
    """Give a command the stiffness of what the floats stand on."""
    parser.add_argument(
        "--ground",
        metavar="STIFFNESS",
        help="of one float with the ground under it, such as '6 MN/m' (default: the machine's)",
    )


def extension(text: str | None, machine: "Machine") -> "Array":
    """Read a configuration; without one take the middle one of the demonstration."""
    import numpy as np

    from boomsim.rating.comparison.compare import demonstration

    if text is not None:
        return inputs.extension(text, machine)
    shown = demonstration(machine.boom).extension
    return np.asarray(shown[len(shown) // 2])


def all_radii(setup: "Setup", extension: "Array") -> "Array":
    """Every radius of a chart at which this configuration has a rated load."""
    import numpy as np

    from boomsim.mechanics.geometry import layout
    from boomsim.rating.capacity import rate
    from boomsim.rating.charts.grid import chart_radii
    from boomsim.rating.longest_boom import refuse_too_long

    length = layout(setup.machine.boom, extension=extension).boom_length
    refuse_too_long(setup, length=length)
    radii = chart_radii(setup.machine, length=length)
    capacity = rate(setup, extension=extension, radius=radii).capacity[0]
    reached = radii[np.nan_to_num(capacity) > 0.0]
    if not len(reached):
        raise ValueError(
            "Nothing may be lifted at any radius of this configuration as the crane is set up. "
            "Choose another configuration, counterweight or support."
        )
    return np.asarray(reached)


def picked(radii: "Array", *shares: float) -> "Array":
    """Radii at shares of the way from the nearest to the farthest."""
    import numpy as np

    return np.array([radii[round(share * (len(radii) - 1))] for share in shares])


def on_ground(chosen: argparse.Namespace, setup: "Setup") -> "Setup":
    """Put the crane on the ground that was asked for."""
    from dataclasses import replace

    from boomsim.rating.changes import with_support
    from boomsim.units import parse

    if chosen.ground is None:
        return setup
    stiffness = parse(chosen.ground, "stiffness", what="--ground")
    if not 1e3 <= stiffness <= 1e12:
        raise ValueError(
            f"--ground: {stiffness:g} N/m is no stiffness of a float on ground. Give about 1 MN/m "
            "for very soft ground to 100 MN/m for concrete."
        )
    return with_support(setup, replace(setup.support, stiffness=stiffness))


def setup_json(setup: "Setup") -> dict[str, object]:
    """How the crane is set up, with the keys that all answers share."""
    return {
        "machine": setup.machine.name,
        "rule": setup.rule,
        "sector": setup.sector,
        "counterweight": setup.counterweight.name,
        "support": setup.support.name,
        "parts": setup.parts,
        "disturbances": setup.disturbances,
    }


def setup_text(setup: "Setup") -> str:
    """How the crane is set up, in a few sentences."""
    from boomsim.figures.words import allowance_words

    return (
        f"{setup.machine.name} (invented), {setup.sector}, counterweight "
        f"{setup.counterweight.name}, support {setup.support.name}, {setup.parts} parts of line, "
        f"rule {setup.rule.name}. {allowance_words(setup.rule)}"
    ).rstrip()
