"""The same machine with other plates: what changes, what stays, and what is refused."""

import dataclasses

import numpy as np
import pytest
from making import invented_crane
from random_machines import random_machine

from boomsim.machine.machine_files import load_machine, machine_names, read_machine
from boomsim.machine.machine_text import machine_to_toml
from boomsim.machine.model import Machine, Section
from boomsim.machine.nesting import outer_size
from boomsim.machine.outline import plate_area
from boomsim.machine.plate_thickness import LEAST, MOST, plate_mass, with_plates
from boomsim.machine.shapes.box import box
from boomsim.machine.shapes.polygon import polygon

BUILT = [(name, factor) for name in ("yard60", "truck18") for factor in (LEAST, 0.8, 1.3, MOST)] + [
    ("bench", LEAST),
    ("bench", 1.2),
]


def beside(machine: Machine, factor: float) -> list[tuple[Section, Section]]:
    made = with_plates(machine, factor=factor)
    return list(zip(machine.boom.sections, made.boom.sections, strict=True))


@pytest.mark.parametrize(("name", "factor"), BUILT)
def test_sections_keep_what_they_measure_outside(name: str, factor: float) -> None:
    for old, new in beside(load_machine(name), factor):
        assert outer_size(new.profile) == pytest.approx(outer_size(old.profile), abs=1e-12)


@pytest.mark.parametrize(("name", "factor"), BUILT)
def test_every_plate_is_so_many_times_as_thick(name: str, factor: float) -> None:
    for old, new in beside(load_machine(name), factor):
        wanted = [factor * thickness for thickness in old.profile.thickness]
        assert new.profile.thickness == pytest.approx(wanted)


@pytest.mark.parametrize(("name", "factor"), BUILT)
def test_what_a_section_weighs_beyond_its_plates_stays(name: str, factor: float) -> None:
    for old, new in beside(load_machine(name), factor):
        rest = old.mass - plate_mass(old)
        assert new.mass - plate_mass(new) == pytest.approx(rest, abs=1e-9 * old.mass)
        assert (new.mass > old.mass) == (factor > 1.0)


def test_added_mass_is_the_added_steel_by_hand() -> None:
    """Source: area, length and density. Status: worked."""
    # A box 0.4 m high and 0.3 m wide of 10 mm plates, then of 13 mm: 0.4 x 0.3 - 0.374 x 0.274
    # less 0.4 x 0.3 - 0.38 x 0.28, that is 3.924e-3 m2 more, 10 m long, of 7850 kg/m3: 308.0 kg.
    profile = box(0.4, width=0.3, top=0.01, bottom=0.01, web=0.01)
    crane = invented_crane()
    base = dataclasses.replace(crane.boom.sections[0], profile=profile, mass=1500.0, length=10.0)
    made = dataclasses.replace(crane.boom, sections=(base, *_small(crane)))
    thick = with_plates(dataclasses.replace(crane, boom=made), factor=1.3)
    more = (0.38 * 0.28 - 0.374 * 0.274) * 10.0 * 7850.0
    # Corners of a box belong to two plates; each is counted once, whatever the thickness.
    assert thick.boom.sections[0].mass - 1500.0 == pytest.approx(more, rel=1e-9)


def _small(crane: Machine) -> list[Section]:
    """Moving sections that fit into a box 0.3 m wide, each 50 mm smaller than the last."""
    made = []
    for k, old in enumerate(crane.boom.sections[1:], start=1):
        shape = box(0.4 - 0.05 * k, width=0.3 - 0.05 * k, top=5e-3, bottom=5e-3, web=5e-3)
        mass = 1.3 * 7850.0 * plate_area(shape) * old.length
        pad = dataclasses.replace(old.front_pad, width=0.05)
        made.append(dataclasses.replace(old, profile=shape, mass=mass, front_pad=pad, rear_pad=pad))
    return made


@pytest.mark.parametrize(("name", "factor"), BUILT)
def test_all_that_is_no_section_stays_and_the_name_says_what_was_done(
    name: str, factor: float
) -> None:
    old, new = load_machine(name), with_plates(load_machine(name), factor=factor)
    assert new.name == f"{name}, plates x {factor:g}"
    assert new.title.endswith(f"plates x {factor:g}")
    boom = dataclasses.replace(new.boom, sections=old.boom.sections)
    assert dataclasses.replace(new, name=old.name, title=old.title, boom=boom) == old


@pytest.mark.parametrize(("name", "factor"), BUILT)
def test_a_build_is_a_machine_that_a_file_can_hold(name: str, factor: float) -> None:
    made = with_plates(load_machine(name), factor=factor)
    assert read_machine(machine_to_toml(made), "made.toml") == made


@pytest.mark.parametrize("number", range(20))
def test_random_machines_with_other_plates_are_machines_still(number: int) -> None:
    machine = random_machine(np.random.default_rng(number))
    for factor in (LEAST, 0.9, 1.2, MOST):
        made = with_plates(machine, factor=factor)
        assert read_machine(machine_to_toml(made), "made.toml") == made


def test_a_long_name_stays_short_enough_for_a_file() -> None:
    long = dataclasses.replace(load_machine("yard60"), name="a" * 40)
    made = with_plates(long, factor=1.3)
    assert read_machine(machine_to_toml(made), "made.toml").name.endswith(", plates x 1.3")


def test_factor_one_is_the_machine_itself() -> None:
    for name in machine_names():
        assert with_plates(load_machine(name), factor=1.0) is load_machine(name)


def test_a_plate_of_two_thicknesses_keeps_its_straight_corner() -> None:
    # The webs are thicker below y = 0: the corner between stays on the web.
    corners = [(-0.2, -0.3), (0.2, -0.3), (0.2, 0.0), (0.2, 0.3), (-0.2, 0.3), (-0.2, 0.0)]
    shape = polygon(corners, thickness=[0.01, 0.01, 0.008, 0.01, 0.008, 0.01])
    crane = invented_crane()
    base = dataclasses.replace(
        crane.boom.sections[0], profile=shape, mass=1.3 * 7850.0 * plate_area(shape) * 10.0
    )
    boom = dataclasses.replace(crane.boom, sections=(base, *_small(crane)))
    made = with_plates(dataclasses.replace(crane, boom=boom), factor=1.3).boom.sections[0].profile
    assert len(made.corners) == 6
    # The two halves move in by 0.15 x 10 mm and 0.15 x 8 mm; their common corner by the mean.
    assert made.corners[2] == pytest.approx((0.2 - 0.00135, 0.0))


@pytest.mark.parametrize("factor", [0.59, 1.81, 0.0, -1.0, float("nan"), float("inf")])
def test_a_factor_out_of_range_is_refused(factor: float) -> None:
    with pytest.raises(ValueError, match=r"not between 0\.6 and 1\.8\. Give 1\.3"):
        with_plates(load_machine("yard60"), factor=factor)


def test_sections_that_would_not_fit_are_refused_with_a_factor_that_fits() -> None:
    bench = load_machine("bench")
    with pytest.raises(ValueError, match=r"Section 1 is 34 mm wide .* plates x 1.4 fits") as found:
        with_plates(bench, factor=1.8)
    assert "\n" not in str(found.value)
    with_plates(bench, factor=1.4)
