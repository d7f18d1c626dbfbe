"""What holds the crane down, mass by mass, as the rows of a table in one unit."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boomsim.rating.setup import Setup


def holding_rows(
    setup: "Setup",
    moments: Sequence[Mapping[str, float]],
    *,
    mass: Mapping[str, float],
    units: str,
) -> list[list[str]]:
    """List every mass of the machine with its moments, and their sums, so that they can be added.

    Parameters
    ----------
    setup : Setup
    moments : sequence of mapping of str to float
        Of each part; a column for each mapping [N m]
    mass : mapping of str to float
        Of each part that is a mass [kg]
    units : str
        "metric" or "us"

    Returns
    -------
    list of list of str
        Part, mass, moments
    """
    from boomsim.units import display

    names = list(dict.fromkeys(name for each in moments for name in each))
    force = display("moment", units, like=max(abs(v) for each in moments for v in each.values()))
    weight = display("mass", units, like=max(mass.values()))
    rows = [
        [
            f"counterweight {name}" if name == setup.counterweight.name else name,
            weight.text(mass[name]) if name in mass else "",
            *(force.text(each.get(name, 0.0)) for each in moments),
        ]
        for name in names
    ]
    sums = (force.text(sum(each.values())) for each in moments)
    return [*rows, ["in all", weight.text(sum(mass.values())), *sums]]
