"""Nothing is told as rated that is less than hangs on the empty hook already."""

import re

import numpy as np
import pytest

import boomsim as bs
from boomsim.cli import main
from boomsim.machine.machine_files import load_machine, machine_names
from boomsim.rating.charts.rows_and_rounding import chart_radii
from boomsim.rating.nearest_radius import nearest_radius
from boomsim.rating.setup import set_up

OUT = {"yard60": "100,100,100,100", "truck18": "100,100,100", "bench": "100,100"}


def hangs_at_least(name: str) -> float:
    """Hook block and slings; the falls come on top [kg]."""
    machine = load_machine(name)
    return machine.hook_block + machine.slings


@pytest.mark.parametrize("name", OUT)
def test_comparisons_have_no_rated_load_below_the_hook(name: str) -> None:
    found = bs.compare(name, extension=[OUT[name]], counterweight="none").study
    capacity = found.rating.capacity
    assert np.nanmin(capacity) >= hangs_at_least(name)
    assert min(min(lead.capacity) for lead in found.leads) >= hangs_at_least(name)
    if name == "bench":
        return
    # Rated by themselves, the cranes' booms do have figures below it somewhere.
    every = chart_radii(load_machine(name), length=found.configurations.length).tolist()
    bare = bs.rate(name, extension=OUT[name], radius=every, counterweight="none").study
    assert np.nanmin(bare.capacity) < hangs_at_least(name)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_all_around_says_so_where_less_is_rated(units: str, capsys) -> None:
    given = ["around", "yard60", "--extension", OUT["yard60"], "--radius", "41 m", "--load"]
    assert main([*given, "700 kg", "--units", units]) == 0
    told = capsys.readouterr().out
    table = told[told.index("rated load, with the boom") : told.index("*: strength sets")]
    assert re.search(r"over the front +–\n", table)
    rope = "line" if units == "us" else "rope"
    assert f"–: less is rated here than hook block, slings and {rope} weigh." in re.sub(
        r"\s+", " ", told
    )
    assert re.search(r"\nrated +– ", told)
    loads = [float(v.replace(",", "")) for v in re.findall(r"([\d,]+) (?:kg|lb)\b", table)]
    least = hangs_at_least("yard60") / (0.45359237 if units == "us" else 1.0)
    assert loads
    assert min(loads) > least


@pytest.mark.parametrize("name", ["overload", "losses", "reeving", "around"])
def test_studies_of_a_rated_load_refuse_and_say_the_way_out(name: str, capsys) -> None:
    given = [name, "yard60", "--extension", OUT["yard60"], "--radius", "42 m"]
    assert main(given) == 2
    told = re.sub(r"\s+", " ", capsys.readouterr().err)
    assert "less is rated than hook block, slings and rope weigh" in told
    assert "Choose a smaller radius" in told


def test_what_takes_the_load_below_the_hook_takes_all_of_it(capsys) -> None:
    given = ["losses", "yard60", "--extension", OUT["yard60"], "--radius", "40 m"]
    assert main(given) == 0
    told = capsys.readouterr().out
    assert re.search(r"counterweight short by 4.00 t +all of it \(nothing rated\)", told)


@pytest.mark.parametrize("name", machine_names())
@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("study", ["compare", "around", "overload", "losses", "reeving"])
def test_radii_that_nobody_gave_are_round_and_beside_the_machine(study, name, units) -> None:
    """A metre, five feet, or a step of a tabletop's chart."""
    found = getattr(bs, study)(name, units=units)
    radii = {
        "compare": lambda: found.study.radii,
        "around": lambda: np.concatenate([found.study.sectors.radius, found.study.around.radius]),
        "overload": lambda: [found.study.radius],
        "losses": lambda: found.study.places.radius,
        "reeving": lambda: [found.study.radius],
    }[study]()
    step = {"metric": (1.0, 0.05), "us": (5 * 0.3048, 0.1 * 0.3048)}[units][name == "bench"]
    shares = np.asarray(radii) / step
    assert np.abs(shares - np.round(shares)).max() < 1e-6
    assert np.min(radii) > nearest_radius(set_up(load_machine(name)))
