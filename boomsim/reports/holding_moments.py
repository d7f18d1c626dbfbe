"""What holds the crane down, mass by mass, as the rows of a table in one unit."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boomsim.machine.model import Boom
    from boomsim.rating.setup import Setup


def cylinder_words(boom: "Boom", *, units: str) -> str:
    """Say with which sections the telescope cylinder's mass goes.

    Returns
    -------
    str
        "360 kg of the telescope cylinder go with the base section and 240 kg with section 1";
        empty where the boom has no cylinder of its own
    """
    from boomsim.machine.part_names import section_name
    from boomsim.units import show

    if boom.telescope_cylinder is None:
        return ""
    names = ["the base section", *(section_name(k) for k in range(1, len(boom.sections)))]
    weighed = zip(names, boom.section_masses, boom.sections, strict=True)
    more = [(name, whole - section.mass) for name, whole, section in weighed]
    (name, mass), *rest = [(name, mass) for name, mass in more if mass > 0.0]
    said = f"{show(mass, 'mass', units)} of the telescope cylinder go with {name}"
    return " and ".join([said, *(f"{show(m, 'mass', units)} with {n}" for n, m in rest)])


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
    moments : sequence of mapping of str to float
        Of each part; a column for each mapping [N m]
    mass : mapping of str to float
        Of each part that is a mass [kg]

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


def holding_note(boom: "Boom", *, units: str) -> str:
    """Say that the sections of such a table are weighed with the telescope cylinder.

    Returns
    -------
    str
        A sentence; empty where the boom has no cylinder of its own
    """
    shares = cylinder_words(boom, units=units)
    return f"In the sections' masses {shares}." if shares else ""
