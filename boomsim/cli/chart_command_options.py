"""What one chart and a whole book read alike from the command line."""

import argparse
from typing import TYPE_CHECKING

from boomsim.face.chart_result import read_rows, read_step

if TYPE_CHECKING:
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array


def rows(chosen: argparse.Namespace, machine: "Machine", *, length: "Array") -> "Array | None":
    """Radii of the rows: named one by one, or by their distance [m]."""
    return read_rows(machine, radii=chosen.radii, rows=chosen.rows, length=length)


def step(chosen: argparse.Namespace) -> float | None:
    """Read what capacities are rounded down to [kg]."""
    return read_step(chosen.step)


def paper(chosen: argparse.Namespace) -> str:
    """Choose the paper that goes with the units, unless it was named."""
    return str(chosen.paper or ("letter" if chosen.units == "us" else "a4"))
