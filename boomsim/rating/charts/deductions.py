"""What hangs below the head besides the load, and counts."""

from dataclasses import dataclass

from boomsim.mechanics.rope_reach import falls_mass
from boomsim.rating.charts.load_chart import Chart


@dataclass(frozen=True, slots=True, kw_only=True)
class Deduction:
    """What hangs below the head besides the load, or counts as if it did [kg]."""

    name: str
    mass: float


def usual_deductions(
    chart: Chart, *, row: int, column: int, parts: int, stowed_jib: float
) -> tuple[Deduction, ...]:
    """List what the trade takes off a gross load.

    Parameters
    ----------
    row, column : int
        Of the cell that is read: the falls of the rope are as long as its boom's head is high
    parts : int
        Parts of line [1]
    stowed_jib : float
        [kg]

    Returns
    -------
    tuple of Deduction
        The rope with the hook on the ground; none in a blank cell
    """
    machine, length = chart.setup.machine, float(chart.length[column])
    falls = 0.0
    if chart.rated[row, column]:
        angle = float(chart.angle[row, column])
        falls = float(falls_mass(machine, parts=parts, length=length, angle=angle))
    listed = {
        "hook block": machine.hook_block,
        "slings": machine.slings,
        falls_words(parts): falls,
        "stowed jib": stowed_jib,
    }
    return tuple(Deduction(name=name, mass=mass) for name, mass in listed.items() if mass > 0.0)


def falls_words(parts: int) -> str:
    """Name the rope between head and hook.

    Parameters
    ----------
    parts : int
        Parts of line [1]
    """
    return "1 fall of rope" if parts == 1 else f"{parts} falls of rope"
