"""A boom is named by its length, and by the same figure wherever it is named."""

import re

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.figures.charts.cell_text import numbers_of
from boomsim.machine.machine_files import load_machine, machine_names
from boomsim.rating.charts.chart_reading import read_chart
from boomsim.rating.charts.load_chart import stated_chart
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of
from boomsim.units import show

UNITS = {"metric": ("m", 1.0), "us": ("ft", 0.3048)}


def heading(name: str, units: str, fraction: float) -> tuple[str, str]:
    """Heading of a chart's column for a boom with all sections out alike; its extension."""
    machine = load_machine(name)
    moving = len(machine.boom.sections) - 1
    ways = configurations_of(machine.boom, extension=np.full((1, moving), fraction))
    chart = stated_chart(set_up(machine), configurations=ways, units=units)
    text = numbers_of(chart, units=units).boom(float(chart.length[0]))
    return text, ",".join([f"{100 * fraction:g}"] * moving)


@pytest.mark.parametrize("name", machine_names())
@pytest.mark.parametrize("units", UNITS)
@pytest.mark.parametrize("fraction", [0.0, 1.0])
def test_lift_and_range_name_a_boom_as_the_chart_heads_its_column(
    name: str, units: str, fraction: float, capsys: pytest.CaptureFixture[str]
) -> None:
    text, extension = heading(name, units, fraction)
    named = f"{text} {UNITS[units][0]}"
    for command in ("lift", "range"):
        assert main([command, name, "--extension", extension, "--units", units]) == 0
        said = " ".join(capsys.readouterr().out.split())
        assert re.search(rf"(^|[ (]){re.escape(named)}\b", said), f"{command} does not say {named}"


@pytest.mark.parametrize("name", machine_names())
@pytest.mark.parametrize("units", UNITS)
def test_rows_between_whole_tenths_do_not_change_how_boom_lengths_are_printed(
    name: str, units: str
) -> None:
    machine = load_machine(name)
    moving = len(machine.boom.sections) - 1
    ways = configurations_of(machine.boom, extension=np.stack([np.zeros(moving), np.ones(moving)]))
    setup = set_up(machine)
    usual = stated_chart(setup, configurations=ways, units=units)
    radii = usual.radii[[1, 2]] + 0.25 * UNITS[units][1] * np.diff(usual.radii)[0]
    fine = stated_chart(setup, configurations=ways, radii=radii, units=units)
    for length in usual.length:
        assert numbers_of(fine, units=units).boom(length) == numbers_of(usual, units=units).boom(
            length
        )


@pytest.mark.parametrize("units", UNITS)
def test_a_typed_heading_reads_its_own_column(units: str) -> None:
    machine = load_machine("yard60")
    ways = configurations_of(
        machine.boom, extension=np.array([[0.0, 0, 0, 0], [0, 0, 0, 1], [0, 0, 1, 1]])
    )
    chart = stated_chart(set_up(machine), configurations=ways, units=units)
    for column, length in enumerate(chart.length):
        typed = float(show(float(length), "boom_length", units).split()[0]) * UNITS[units][1]
        reading = read_chart(chart, radius=float(chart.radii[3]), length=typed, units=units)
        assert (reading.row, reading.column) == (3, column)
