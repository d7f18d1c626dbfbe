"""What one chart and a whole book read alike from the command line."""

import argparse
from typing import TYPE_CHECKING

from boomsim.cli import inputs

if TYPE_CHECKING:
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array


def rows(chosen: argparse.Namespace, machine: "Machine", *, length: "Array") -> "Array | None":
    """Radii of the rows: named one by one, or by their distance [m]."""
    from boomsim.rating.charts.grid import chart_radii
    from boomsim.units import parse

    if chosen.rows is None:
        return inputs.radii(chosen.radii, what="--radii")
    return chart_radii(machine, length=length, step=parse(chosen.rows, "length", what="--rows"))


def step(chosen: argparse.Namespace) -> float | None:
    """Read what capacities are rounded down to [kg]."""
    from boomsim.rating.charts.grid import checked_step
    from boomsim.units import parse

    if chosen.step is None:
        return None
    return checked_step(parse(chosen.step, "mass", what="--step"))


def paper(chosen: argparse.Namespace) -> str:
    """Choose the paper that goes with the units, unless it was named."""
    return str(chosen.paper or ("letter" if chosen.units == "us" else "a4"))
