"""What hangs below the head besides the load, and counts."""

from dataclasses import dataclass

from boomsim.rating.charts.load_chart import Chart


@dataclass(frozen=True, slots=True, kw_only=True)
class Deduction:
    """What hangs below the head besides the load, or counts as if it did [kg]."""

    name: str
    mass: float


def usual_deductions(chart: Chart, *, stowed_jib: float) -> tuple[Deduction, ...]:
    """List what the trade takes off a gross load.

    Parameters
    ----------
    chart : Chart
    stowed_jib : float
        [kg]

    Returns
    -------
    tuple of Deduction
    """
    machine = chart.setup.machine
    listed = {"hook block": machine.hook_block, "slings": machine.slings, "stowed jib": stowed_jib}
    return tuple(Deduction(name=name, mass=mass) for name, mass in listed.items() if mass > 0.0)
