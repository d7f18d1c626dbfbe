"""Machine files: what loads, what is refused, where the fault is said to be, and the way out."""

import dataclasses
import math
import re
import subprocess
import sys
import tomllib
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from boomsim.machine.boom_check import LEAST_MASS, MOST_MASS
from boomsim.machine.file_faults import MachineFileError
from boomsim.machine.file_schema import MACHINE
from boomsim.machine.machine_check import convex_hull, lever_arm
from boomsim.machine.machine_files import (
    LARGEST_FILE,
    builtin_text,
    load_machine,
    machine_names,
    read_machine,
)
from boomsim.machine.machine_text import machine_to_toml
from boomsim.machine.model import Machine, Profile
from boomsim.machine.nesting import inner_size, outer_size, vertical_play
from boomsim.machine.outline import plate_area
from boomsim.machine.shapes.box import box
from boomsim.machine.shapes.folded import folded
from boomsim.machine.shapes.polygon import polygon
from boomsim.machine.shapes.tube import tube
from boomsim.machine.value_readers import Reading
from boomsim.mechanics.sections.section_properties import properties

# An invented crane with round numbers: overlap of section 1 fully out is 5 - 0.1 - 3.5 = 1.4 m.
TEXT = """
name = "small"
title = "Invented crane for tests"
heel_out = "-1 m"
heel_up = "2 m"
hook_block = "100 kg"
slings = "20 kg"

[materials.steel]
yield_stress = "690 MPa"
modulus = "210 GPa"
density = "7850 kg/m3"

[boom]
systems = ["pinned", "free"]
lock_positions = ["0 %", "50 %", "100 %"]
least_angle = "0 deg"
greatest_angle = "75 deg"
wind_shape = 1.6

[boom.head]
ahead = "0.2 m"
below = "0.1 m"
rope_above = "0.3 m"
mass = "100 kg"

[[boom.sections]]
material = "steel"
length = "5.2 m"
mass = "500 kg"
box = { height = "500 mm", width = "400 mm", top = "5 mm", bottom = "5 mm", web = "5 mm" }

[[boom.sections]]
material = "steel"
length = "5 m"
mass = "400 kg"
box = { height = "420 mm", width = "320 mm", top = "5 mm", bottom = "5 mm", web = "5 mm" }
stroke = "3.5 m"
nose = "100 mm"
least_overlap = "1 m"
clearance = "2 mm"
front_pad = { length = "200 mm", width = "80 mm", pressure = "20 MPa" }
rear_pad = { length = "200 mm", width = "80 mm", pressure = "20 MPa" }
lock = { kind = "pins", strength = "300 kN" }

[[boom.sections]]
material = "steel"
length = "4.8 m"
mass = "300 kg"
box = { height = "340 mm", width = "240 mm", top = "5 mm", bottom = "5 mm", web = "5 mm" }
stroke = "3.4 m"
nose = "90 mm"
least_overlap = "0.9 m"
clearance = "3 mm"
front_pad = { length = "180 mm", width = "70 mm", pressure = "20 MPa" }
rear_pad = { length = "180 mm", width = "70 mm", pressure = "20 MPa" }
lock = { kind = "pins", strength = "250 kN" }

[cylinder]
base_out = "-0.2 m"
base_up = "1 m"
attach_along = "2.5 m"
attach_below = "0.3 m"
strength = "500 kN"
mass = "150 kg"

[hoist]
winch_out = "-1.5 m"
winch_up = "2.3 m"
line_pull = "20 kN"
sheave_efficiency = 0.98
parts = [1, 2, 4]

[ring]
moment = "400 kN m"
up = "1.1 m"

[[carrier]]
name = "chassis"
mass = "8 t"
x = "-1 m"
y = "0 m"
z = "0.8 m"

[[superstructure]]
name = "platform"
mass = "2 t"
out = "-0.5 m"
up = "1.5 m"

[[counterweights]]
name = "two"
mass = "2 t"
out = "-1.8 m"
up = "1.6 m"

[[counterweights]]
name = "none"
mass = "0 kg"
out = "-1.8 m"
up = "1.6 m"

[[supports]]
name = "full"
kind = "outriggers"
points = [["-2 m", "-2.5 m"], ["-2 m", "2.5 m"], ["2 m", "2.5 m"], ["2 m", "-2.5 m"]]
stiffness = "30 MN/m"
area = "0.2 m2"
"""


def changed(*pairs: tuple[str, str]) -> str:
    """Replace the first of each old text by the new one in the valid file."""
    text = TEXT
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new, 1)
    return text


def faults(*pairs: tuple[str, str]) -> dict[str, str]:
    """Paths and messages with which the changed file is refused."""
    with pytest.raises(MachineFileError) as caught:
        read_machine(changed(*pairs), "small.toml")
    assert str(caught.value).startswith("small.toml")
    return {fault.path: fault.says for fault in caught.value.faults}


def section(number: int, old: str, new: str) -> dict[str, str]:
    """Paths and messages when one line of one section is changed."""
    head, *sections = TEXT.split("[[boom.sections]]")
    assert old in sections[number]
    sections[number] = sections[number].replace(old, new, 1)
    with pytest.raises(MachineFileError) as caught:
        read_machine("[[boom.sections]]".join([head, *sections]), "small.toml")
    return {fault.path: fault.says for fault in caught.value.faults}


# --- what loads --------------------------------------------------------------------------------


def test_a_file_becomes_the_machine_it_describes_in_si_units() -> None:
    machine = read_machine(TEXT, "small.toml")
    boom = machine.boom
    assert (machine.heel_out, machine.heel_up, machine.hook_block) == (-1.0, 2.0, 100.0)
    assert [s.length for s in boom.sections] == [5.2, 5.0, 4.8]
    assert [s.stroke for s in boom.sections] == [0.0, 3.5, 3.4]
    assert boom.sections[1].profile == box(0.42, width=0.32, top=0.005, bottom=0.005, web=0.005)
    assert boom.sections[0].lock is None
    assert boom.sections[2].material.yield_stress == 690e6
    assert boom.greatest_angle == math.radians(75)
    assert boom.lock_positions == (0.0, 0.5, 1.0)
    assert machine.hoist.parts == (1, 2, 4)
    assert machine.counterweights[1].mass == 0.0
    assert machine.supports[0].points[0] == (-2.0, -2.5)


@pytest.mark.parametrize("name", machine_names())
def test_every_built_in_machine_loads_and_says_that_it_is_invented(
    name: str,
) -> None:
    machine = load_machine(name)
    assert machine.name == name
    assert "INVENTED" in builtin_text(name).splitlines()[0]
    assert machine.note.startswith("Invented.")
    assert machine.title.startswith("Invented")


def test_the_three_built_in_machines_are_listed_in_alphabetical_order() -> None:
    assert machine_names() == ("bench", "truck18", "yard60")


def test_the_truck_helps_over_the_rear_because_its_carrier_is_far_ahead_of_the_axis() -> None:
    carrier = load_machine("truck18").carrier
    centre = sum(m.mass * m.x for m in carrier) / sum(m.mass for m in carrier)
    assert centre < -2.0


@pytest.mark.parametrize("name", machine_names())
def test_every_figure_in_a_built_in_file_is_explained_by_a_comment_the_first_time(
    name: str,
) -> None:
    keys, bare = set(), set()
    for line in builtin_text(name).splitlines():
        found = re.match(r"(\w+) = .*?(# .+)?$", line)
        if found and found[1] not in keys:
            keys.add(found[1])
            if not found[2] and not line.startswith(("box", "points")):
                bare.add(found[1])
    explained_by_headings = {"name", "title", "note", "material", "kind", "x", "y", "z", "out"}
    assert bare - explained_by_headings == set()


def test_a_copy_of_a_built_in_file_loads_from_its_path(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text(builtin_text("bench"), encoding="utf-8-sig")  # some editors add a mark in front
    assert load_machine(path) == load_machine(str(path)) == load_machine("bench")


def test_a_tube_and_a_polygon_load_as_well_as_a_box() -> None:
    corners = [["-200 mm", "-250 mm"], ["200 mm", "-250 mm"], ["0.2 m", "0.25 m"]]
    sides = ["5 mm", "6 mm", "5 mm", "6 mm"]
    square = f"{{ corners = {[*corners, ['-20 cm', '25 cm']]}, thickness = {sides} }}"
    profile = base_profile("polygon = " + square.replace("'", '"'))
    assert (profile.corners[0], profile.thickness) == ((-0.2, -0.25), (0.005, 0.006, 0.005, 0.006))
    assert base_profile('tube = { diameter = "600 mm", wall = "5 mm" }') == tube(0.6, wall=0.005)


def base_profile(shape: str) -> Profile:
    """Profile of the base section when it is given like this."""
    text = re.sub(r"(?m)^box = .*$", shape, TEXT, count=1)
    return read_machine(text, "small.toml").boom.sections[0].profile


def test_a_box_with_a_folded_bottom_has_one_flat_and_two_sloping_plates() -> None:
    sizes = 'height = "520 mm", width = "420 mm", top = "6 mm", bottom = "8 mm", web = "5 mm"'
    profile = base_profile(f'folded = {{ {sizes}, flat = "300 mm", fold = "60 mm" }}')
    # right half, mid-plate, from the origin at half the height and width
    right = [(0.15, -0.256), (0.2075, -0.196), (0.2075, 0.257)]
    for corner, expected in zip(profile.corners[1:4], right, strict=True):
        assert corner == pytest.approx(expected)
    assert profile.thickness == (0.008, 0.008, 0.005, 0.006, 0.005, 0.008)
    assert outer_size(profile) == pytest.approx((0.42, 0.52))


def test_us_customary_units_load_as_well() -> None:
    machine = read_machine(changed(('length = "5.2 m"', 'length = "17 ft"')), "small.toml")
    assert machine.boom.sections[0].length == pytest.approx(17 * 0.3048, rel=1e-15)


def test_tyres_may_stand_inside_the_others_for_axles_differ_in_width() -> None:
    points = '[["-2 m", "-1 m"], ["-2 m", "1 m"], ["1 m", "0.8 m"], ["1 m", "-0.8 m"], '
    points += '["2 m", "1 m"], ["2 m", "-1 m"]]'
    text = re.sub(r"points = .*", f"points = {points}", TEXT).replace('"outriggers"', '"tyres"')
    assert len(read_machine(text, "small.toml").supports[0].points) == 6


# --- names and files ---------------------------------------------------------------------------


def test_a_folded_bottom_wider_than_its_box_is_refused() -> None:
    sizes = 'height = "520 mm", width = "420 mm", top = "6 mm", bottom = "8 mm", web = "5 mm"'
    with pytest.raises(MachineFileError, match=r"sections\[0\]\.folded: .*do not fit a box"):
        base_profile(f'folded = {{ {sizes}, flat = "420 mm", fold = "60 mm" }}')


def test_an_unknown_machine_is_refused_with_the_nearest_name_and_the_list() -> None:
    with pytest.raises(MachineFileError) as caught:
        load_machine("yard6")
    assert 'Did you mean "yard60"?' in str(caught.value)
    assert "bench, truck18, yard60" in str(caught.value)


def test_the_text_of_an_unknown_machine_is_refused() -> None:
    with pytest.raises(MachineFileError, match='Did you mean "bench"'):
        builtin_text("bensh")


@pytest.mark.parametrize("name", ["", ".", "/", "no/such/file.toml", "a\0b", "x" * 5000])
def test_a_path_that_is_no_file_is_refused(name: str) -> None:
    with pytest.raises(MachineFileError):
        load_machine(name)


def test_a_file_that_is_too_large_is_refused_before_it_is_read(tmp_path: Path) -> None:
    path = tmp_path / "huge.toml"
    path.write_text("#" * (LARGEST_FILE + 1))
    with pytest.raises(MachineFileError, match="256 KiB"):
        load_machine(path)
    with pytest.raises(MachineFileError, match="256 KiB"):
        read_machine("#" * (LARGEST_FILE + 1), "huge.toml")


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "picture.toml"
    path.write_bytes(b"\x89PNG\xff\xfe")
    with pytest.raises(MachineFileError, match="UTF-8"):
        load_machine(path)


@pytest.mark.parametrize("text", ["name = ", "a = " + "[" * 5000, "a = " + "9" * 9000, "=", "\0"])
def test_a_file_that_is_not_toml_is_refused(text: str) -> None:
    with pytest.raises(MachineFileError, match="not valid TOML"):
        read_machine(text, "bad.toml")


def test_all_faults_are_reported_at_once_each_with_its_exact_path() -> None:
    found = faults(
        ('heel_up = "2 m"', 'heel_up = "2,0 m"'),
        ('kind = "outriggers"', 'kind = "outrigger"'),
        ("[1, 2, 4]", "[1, 1]"),
        ('mass = "500 kg"', 'mass = "50 kg"'),
    )
    assert list(found) == ["heel_up", "boom.sections[0].mass", "hoist.parts[1]", "supports[0].kind"]


def test_a_boom_that_cannot_move_is_reported_together_with_a_misspelt_key_elsewhere() -> None:
    found = faults(('least_overlap = "1 m"', 'least_overlap = "2 m"'), ("line_pull", "line_pul"))
    assert list(found) == ["boom.sections[1].least_overlap", "hoist.line_pull", "hoist.line_pul"]


def test_a_machine_error_holds_its_faults_for_programs_to_read() -> None:
    with pytest.raises(MachineFileError) as caught:
        read_machine(changed(('heel_up = "2 m"', 'heel_up = "2"')), "small.toml")
    assert caught.value.where == "small.toml"
    assert [f.path for f in caught.value.faults] == ["heel_up"]
    assert str(caught.value).startswith('small.toml: heel_up: "2" has no unit.')


# --- keys and structure ------------------------------------------------------------------------


def test_a_misspelt_key_is_refused_with_the_nearest_one() -> None:
    found = section(1, "stroke", "strok")
    assert found["boom.sections[1].strok"] == 'There is no key "strok" here. Did you mean "stroke"?'
    assert "how far it can move out" in found["boom.sections[1].stroke"]


def test_a_key_from_nowhere_is_refused() -> None:
    assert "Take it out" in faults(('name = "small"', 'name = "small"\nwarp = 9'))["warp"]


def test_a_missing_key_is_named_with_its_meaning() -> None:
    says = faults(('line_pull = "20 kN"\n', ""))["hoist.line_pull"]
    assert says == "This is missing: permissible pull in one part of the rope."


def test_a_missing_table_is_named() -> None:
    assert "slewing ring" in faults(('[ring]\nmoment = "400 kN m"\nup = "1.1 m"\n', ""))["ring"]


def test_a_value_where_a_table_belongs_is_refused() -> None:
    found = section(1, 'lock = { kind = "pins", strength = "300 kN" }', "lock = 5")
    assert "table" in found["boom.sections[1].lock"]


def test_a_value_where_a_list_belongs_is_refused() -> None:
    assert "list" in faults(('["pinned", "free"]', '"pinned"'))["boom.systems"]


def test_a_base_section_that_moves_is_refused() -> None:
    found = section(0, 'length = "5.2 m"', 'length = "5.2 m"\nstroke = "1 m"')
    assert found["boom.sections[0].stroke"] == "The base section does not move: take this out."


@pytest.mark.parametrize("key", ["stroke", "nose", "least_overlap", "clearance", "lock"])
def test_a_moving_section_needs_all_that_moving_takes(key: str) -> None:
    text = re.sub(rf"(?m)^{key} = .*\n", "", TEXT, count=1)
    with pytest.raises(MachineFileError) as caught:
        read_machine(text, "small.toml")
    assert [f.path for f in caught.value.faults] == [f"boom.sections[1].{key}"]


def test_a_section_without_a_shape_is_refused() -> None:
    text = re.sub(r"(?m)^box = .*\n", "", TEXT, count=1)
    with pytest.raises(MachineFileError, match=r"boom.sections\[0\]: A section needs one shape"):
        read_machine(text, "small.toml")


def test_a_section_with_two_shapes_is_refused() -> None:
    two = 'material = "steel"\ntube = { diameter = "300 mm", wall = "5 mm" }'
    assert "has 2" in section(1, 'material = "steel"', two)["boom.sections[1]"]


def test_an_unknown_material_is_refused_with_the_nearest_name() -> None:
    says = section(2, 'material = "steel"', 'material = "stel"')["boom.sections[2].material"]
    assert 'Did you mean "steel"?' in says


def test_an_unknown_boom_system_is_refused_with_the_nearest_name() -> None:
    assert 'Did you mean "pinned"?' in faults(('["pinned",', '["pined",'))["boom.systems[0]"]


@pytest.mark.parametrize(
    ("old", "path"),
    [
        ('systems = ["pinned", "free"]', "boom.systems"),
        ('lock_positions = ["0 %", "50 %", "100 %"]', "boom.lock_positions"),
        ("parts = [1, 2, 4]", "hoist.parts"),
    ],
)
def test_an_empty_list_of_choices_is_refused(old: str, path: str) -> None:
    assert "0 entries" in faults((old, old.split("=")[0] + "= []"))[path]


@pytest.mark.parametrize("part", ["counterweights", "supports", "carrier", "superstructure"])
def test_a_machine_without_a_choice_is_refused(part: str) -> None:
    data = tomllib.loads(TEXT)
    data[part] = []
    assert part in {f.path for f in read_data(data).faults}


def test_a_boom_of_one_section_is_refused() -> None:
    data = tomllib.loads(TEXT)
    data["boom"]["sections"] = data["boom"]["sections"][:1]
    assert read_data(data).faults[0].path == "boom.sections"


def test_a_boom_of_eleven_sections_is_refused() -> None:
    data = tomllib.loads(TEXT)
    data["boom"]["sections"] += data["boom"]["sections"][2:] * 8
    assert "needs 2 to 10" in read_data(data).faults[0].says


@pytest.mark.parametrize("parts", ["[1, 2.0]", "[0, 1]", "[1, 99]", "[true]", '["1"]', "[1, -2]"])
def test_parts_of_line_that_are_no_small_whole_numbers_are_refused(parts: str) -> None:
    path = next(iter(faults(("[1, 2, 4]", parts))))
    assert path.startswith("hoist.parts[")


def test_parts_of_line_given_twice_are_refused() -> None:
    assert "twice" in faults(("[1, 2, 4]", "[1, 2, 2]"))["hoist.parts[2]"]


@pytest.mark.parametrize("name", ["", "  ", "a\\tb", "a\\u0000b", "x" * 41, "<b>"])
def test_a_name_that_is_empty_too_long_or_full_of_marks_is_refused(name: str) -> None:
    assert "name" in faults(('name = "small"', f'name = "{name}"'))


def test_names_given_twice_among_the_choices_are_refused() -> None:
    assert "twice" in faults(('name = "none"', 'name = "two"'))["counterweights[1].name"]


# --- figures -----------------------------------------------------------------------------------


def test_a_decimal_comma_in_a_file_is_refused() -> None:
    assert "comma" in section(1, '"3.5 m"', '"3,5 m"')["boom.sections[1].stroke"]


def test_a_bare_number_for_a_length_is_refused_and_shown_with_a_unit() -> None:
    says = section(1, 'stroke = "3.5 m"', "stroke = 3.5")["boom.sections[1].stroke"]
    assert says == '"3.5" has no unit. Write it like "8.20 m" or "26.9 ft".'


@pytest.mark.parametrize("value", ['"nan m"', '"inf m"', "nan", "inf", '"-inf kg"'])
def test_a_figure_that_is_not_finite_is_refused(value: str) -> None:
    assert "boom.sections[1].mass" in section(1, 'mass = "400 kg"', f"mass = {value}")


@pytest.mark.parametrize("value", ["nan", "inf", "-inf"])
def test_a_bare_coefficient_that_is_not_finite_is_refused(value: str) -> None:
    assert "finite" in faults(("wind_shape = 1.6", f"wind_shape = {value}"))["boom.wind_shape"]


def test_a_negative_length_is_refused() -> None:
    says = section(1, '"3.5 m"', '"-3.5 m"')["boom.sections[1].stroke"]
    assert says == '"-3.5 m" must be more than zero: give 1 cm to 60 m.'


def test_a_length_of_zero_is_refused() -> None:
    assert "more than zero" in section(0, '"5.2 m"', '"0 m"')["boom.sections[0].length"]


def test_a_mass_of_zero_is_refused_except_for_a_counterweight_and_what_hangs() -> None:
    assert "more than zero" in faults(('mass = "8 t"', 'mass = "0 kg"'))["carrier[0].mass"]
    assert read_machine(changed(('"20 kg"', '"0 kg"')), "small.toml").slings == 0.0


@pytest.mark.parametrize(
    ("old", "new", "path"),
    [
        ('length = "5.2 m"', 'length = "5200 m"', "boom.sections[0].length"),
        ('mass = "500 kg"', 'mass = "500 t"', "boom.sections[0].mass"),
        ('yield_stress = "690 MPa"', 'yield_stress = "690 GPa"', "materials.steel.yield_stress"),
        ('modulus = "210 GPa"', 'modulus = "210 MPa"', "materials.steel.modulus"),
        ('density = "7850 kg/m3"', 'density = "7.85 kg/m3"', "materials.steel.density"),
        ('width = "80 mm"', 'width = "80 m"', "boom.sections[1].front_pad.width"),
        ('pressure = "20 MPa"', 'pressure = "20 Pa"', "boom.sections[1].front_pad.pressure"),
        ('strength = "300 kN"', 'strength = "300 GN"', "boom.sections[1].lock.strength"),
        ('stiffness = "30 MN/m"', 'stiffness = "30 N/m"', "supports[0].stiffness"),
        ('area = "0.2 m2"', 'area = "200 m2"', "supports[0].area"),
        ('moment = "400 kN m"', 'moment = "400 GN m"', "ring.moment"),
        ('greatest_angle = "75 deg"', 'greatest_angle = "75 rad"', "boom.greatest_angle"),
        ("sheave_efficiency = 0.98", "sheave_efficiency = 98", "hoist.sheave_efficiency"),
        ("sheave_efficiency = 0.98", "sheave_efficiency = 1.02", "hoist.sheave_efficiency"),
        ("wind_shape = 1.6", "wind_shape = 16", "boom.wind_shape"),
        ('clearance = "2 mm"', 'clearance = "2 m"', "boom.sections[1].clearance"),
        ('nose = "100 mm"', 'nose = "-100 mm"', "boom.sections[1].nose"),
        ('heel_out = "-1 m"', 'heel_out = "-1 km"', "heel_out"),
        ('web = "5 mm"', 'web = "5 m"', "boom.sections[0].box.web"),
    ],
)
def test_an_absurd_size_is_refused_with_the_plausible_range(old: str, new: str, path: str) -> None:
    says = faults((old, new))[path]
    assert re.search(r"give .+ to .+\.$", says)


@pytest.mark.parametrize("position", ['"-5 %"', '"101 %"', "1.5", "50"])
def test_a_lock_position_outside_the_stroke_is_refused(position: str) -> None:
    assert "boom.lock_positions[1]" in faults(('"50 %"', position))


@pytest.mark.parametrize("positions", ['["0 %", "60 %", "50 %"]', '["0 %", "50 %", "50 %"]'])
def test_lock_positions_out_of_order_or_twice_are_refused(positions: str) -> None:
    says = faults(('["0 %", "50 %", "100 %"]', positions))["boom.lock_positions[2]"]
    assert "smallest to the largest" in says


# --- what cannot be built ----------------------------------------------------------------------


def test_an_overlap_that_runs_out_is_refused_with_the_stroke_and_the_length_that_would_do() -> None:
    # overlap 5 - 0.1 - 3.5 = 1.4 m of 1.75 m; stroke at most 5 - 0.1 - 1.75 = 3.15 m = 90 %
    says = section(1, 'least_overlap = "1 m"', 'least_overlap = "1.75 m"')[
        "boom.sections[1].least_overlap"
    ]
    assert says == (
        "Section 1 overlaps section 0 by 1.40 m and needs 1.75 m. Retract it to 90 % or less, "
        "that is a stroke of 3,150 mm, or make it 0.35 m longer."
    )


def test_the_stroke_that_an_overlap_fault_proposes_is_accepted() -> None:
    needs = ('least_overlap = "1 m"', 'least_overlap = "1.75 m"')
    assert read_machine(changed(needs, ('stroke = "3.5 m"', 'stroke = "3150 mm"')), "small.toml")


def test_an_overlap_longer_than_the_section_is_refused_without_a_senseless_percentage() -> None:
    says = section(1, 'least_overlap = "1 m"', 'least_overlap = "6 m"')[
        "boom.sections[1].least_overlap"
    ]
    assert "which it never has" in says
    assert "%" not in says


def test_a_section_too_wide_for_the_outer_one_is_refused_with_both_widths() -> None:
    says = section(1, 'width = "320 mm"', 'width = "395 mm"')["boom.sections[1]"]
    assert says == (
        "Section 1 is 395 mm wide outside and section 0 leaves 390 mm inside. Make it smaller."
    )


def test_a_section_too_high_for_the_outer_one_and_its_clearance_is_refused() -> None:
    says = section(2, 'height = "340 mm"', 'height = "408 mm"')["boom.sections[2]"]
    assert says == (
        "Section 2 needs 411 mm of height, clearance included, and section 1 leaves 410 mm inside. "
        "Make it smaller."
    )


def test_a_section_that_fits_by_size_but_touches_the_bevelled_corners_is_refused() -> None:
    # Octagon of the same height and width as section 0: a box inside it must miss its corners.
    octagon = [(-0.1, -0.24), (0.1, -0.24), (0.2, -0.14), (0.2, 0.14)]
    octagon += [(-z, -y) for z, y in octagon]
    corners = [[f"{z} m", f"{y} m"] for z, y in octagon]
    shape = f"polygon = {{ corners = {corners}, thickness = {['5 mm'] * 8} }}".replace("'", '"')
    text = re.sub(r"(?m)^box = .*$", shape, TEXT, count=1)
    with pytest.raises(MachineFileError, match="would touch the corners of section 0"):
        read_machine(text, "small.toml")


def test_a_tail_that_sticks_out_behind_the_outer_section_is_refused() -> None:
    # tail of section 2 at 5.2 + 0.1 + 0.09 - 5.2 = 0.19 m, tail of section 1 at 0.3 m
    says = section(2, 'length = "4.8 m"', 'length = "5.2 m"')["boom.sections[2].length"]
    assert "stands 0.11 m behind the tail of section 1" in says


def test_a_section_lighter_than_its_plates_is_refused() -> None:
    # plates: 2 (395 + 495) mm x 5 mm x 5.2 m x 7850 kg/m3 = 363 kg
    says = section(0, 'mass = "500 kg"', 'mass = "300 kg"')["boom.sections[0].mass"]
    assert "its plates alone 363 kg" in says
    assert "Give 345 kg to 1.45 t" in says


def test_a_section_many_times_heavier_than_its_plates_is_refused() -> None:
    assert "boom.sections[0].mass" in section(0, 'mass = "500 kg"', 'mass = "1500 kg"')


def test_plates_that_fill_the_section_are_refused() -> None:
    thick = 'top = "5 mm", bottom = "5 mm", web = "99 mm" }'
    text = changed(
        ('height = "500 mm", width = "400 mm"', 'height = "500 mm", width = "190 mm"'),
        ('top = "5 mm", bottom = "5 mm", web = "5 mm" }', thick),
    )
    with pytest.raises(MachineFileError, match=r"sections\[0\]\.box: The plates leave no room"):
        read_machine(text, "small.toml")


def test_a_tube_that_is_all_wall_is_refused() -> None:
    text = re.sub(r"(?m)^box = .*$", 'tube = { diameter = "60 mm", wall = "30 mm" }', TEXT, count=1)
    with pytest.raises(MachineFileError, match=r"sections\[0\]\.tube: A tube of 0.06 m"):
        read_machine(text, "small.toml")


def polygon_faults(corners: list[tuple[float, float]], plates: list[float]) -> str:
    """Message with which a base section of this polygon is refused."""
    points = [[f"{z} m", f"{y} m"] for z, y in corners]
    sides = [f"{t} mm" for t in plates]
    shape = f"polygon = {{ corners = {points}, thickness = {sides} }}".replace("'", '"')
    with pytest.raises(MachineFileError) as caught:
        read_machine(re.sub(r"(?m)^box = .*$", shape, TEXT, count=1), "small.toml")
    assert {f.path for f in caught.value.faults} == {"boom.sections[0].polygon"}
    return str(caught.value)


def test_a_polygon_with_a_thickness_missing_is_refused() -> None:
    square = [(-0.2, -0.2), (0.2, -0.2), (0.2, 0.2), (-0.2, 0.2)]
    assert "4 corners need 4 thicknesses" in polygon_faults(square, [5, 5, 5])


def test_a_polygon_that_bends_inwards_is_refused() -> None:
    arrow = [(-0.3, -0.3), (0.0, -0.1), (0.3, -0.3), (0.3, 0.3), (-0.3, 0.3)]
    assert "none that bends inwards" in polygon_faults(arrow, [5] * 5)


def test_a_polygon_that_crosses_itself_is_refused() -> None:
    eight = [(-0.2, -0.2), (0.2, 0.2), (0.2, -0.2), (-0.2, 0.2)]
    assert "once round a convex shape" in polygon_faults(eight, [5] * 4)


def test_a_polygon_that_goes_round_twice_is_refused() -> None:
    turns = [math.pi / 10 + 4 * math.pi * k / 5 for k in range(5)]
    star = [(round(math.cos(a), 6), round(math.sin(a), 6)) for a in turns]
    assert "once round a convex shape" in polygon_faults(star, [5] * 5)


def test_a_polygon_that_is_not_the_same_left_and_right_is_refused() -> None:
    lopsided = [(-0.2, -0.2), (0.2, -0.2), (0.25, 0.2), (-0.2, 0.2)]
    assert "mirror image" in polygon_faults(lopsided, [5] * 4)


def test_a_polygon_with_unequal_plates_left_and_right_is_refused() -> None:
    square = [(-0.2, -0.2), (0.2, -0.2), (0.2, 0.2), (-0.2, 0.2)]
    assert "mirror image" in polygon_faults(square, [5, 6, 5, 5])


def test_a_polygon_with_a_corner_twice_is_refused() -> None:
    square = [(-0.2, -0.2), (-0.2, -0.2), (0.2, -0.2), (0.2, 0.2), (-0.2, 0.2)]
    assert "Corner 0 and the next are one point" in polygon_faults(square, [5] * 5)


def test_pads_wider_than_the_section_are_refused() -> None:
    assert "rear_pad" not in section(1, 'width = "80 mm"', 'width = "161 mm"')
    says = section(1, 'width = "80 mm"', 'width = "161 mm"')["boom.sections[1].front_pad.width"]
    assert "Give 160 mm or less" in says


def test_a_pad_longer_than_the_overlap_is_refused() -> None:
    says = section(2, '{ length = "180 mm"', '{ length = "950 mm"')
    assert "least overlap only 900 mm" in says["boom.sections[2].front_pad.length"]


def test_a_boom_system_given_twice_is_refused() -> None:
    assert "twice" in faults(('["pinned", "free"]', '["free", "free"]'))["boom.systems[1]"]


def test_a_pinned_boom_with_a_drive_in_the_place_of_pins_is_refused() -> None:
    assert 'kind = "pins"' in section(2, '"pins"', '"drive"')["boom.sections[2].lock.kind"]


def test_a_range_of_boom_angles_that_ends_before_it_begins_is_refused() -> None:
    assert "the larger" in faults(('"0 deg"', '"80 deg"'))["boom.greatest_angle"]


def test_a_cylinder_that_would_pull_the_boom_down_is_refused() -> None:
    says = faults(('base_up = "1 m"', 'base_up = "4 m"'))["cylinder"]
    assert "a push would lower the boom" in says


def test_a_cylinder_in_line_with_the_heel_pin_is_refused_with_its_lever_arm() -> None:
    # Lower pin 5 mm from the heel pin: it has no lever at any angle.
    beside = (
        ('base_out = "-0.2 m"', 'base_out = "-1 m"'),
        ('base_up = "1 m"', 'base_up = "1.995 m"'),
    )
    says = faults(*beside)["cylinder"]
    assert "lever arm" in says
    assert "must be 0.25 m or more" in says


def test_a_cylinder_pin_in_the_overlap_of_the_base_section_is_refused() -> None:
    # 5.2 m less the 1.4 m by which section 1 overlaps when fully out
    says = faults(('attach_along = "2.5 m"', 'attach_along = "4 m"'))["cylinder.attach_along"]
    assert "Give 3.80 m or less" in says


def points_faults(*points: tuple[float, float]) -> dict[str, str]:
    """Paths and messages when the outriggers stand at these points."""
    rows = [[f"{x} m", f"{y} m"] for x, y in points]
    text = re.sub(r"(?m)^points = .*$", f"points = {rows}".replace("'", '"'), TEXT)
    with pytest.raises(MachineFileError) as caught:
        read_machine(text, "small.toml")
    return {fault.path: fault.says for fault in caught.value.faults}


def test_fewer_than_three_supports_are_refused() -> None:
    assert "needs 3 to 40" in points_faults((-2, -2), (2, 2))["supports[0].points"]


def test_supports_on_one_line_are_refused() -> None:
    assert "one line" in points_faults((-2, -2), (0, 0), (2, 2))["supports[0].points"]


def test_supports_that_are_not_round_the_axis_of_rotation_are_refused() -> None:
    says = points_faults((1, -2), (1, 2), (4, 2), (4, -2))["supports[0].points"]
    assert "axis of rotation" in says


def test_an_outrigger_inside_the_others_is_refused() -> None:
    found = points_faults((-2, -2), (-2, 2), (2, 2), (2, -2), (0.5, 0.5))
    assert "no convex shape" in found["supports[0].points[4]"]


def test_two_outriggers_on_one_spot_are_refused() -> None:
    found = points_faults((-2, -2), (-2, 2), (2, 2), (2, -2), (2, 2))
    assert "twice" in found["supports[0].points[4]"]


def test_a_point_of_three_figures_is_refused() -> None:
    found = faults(('["-2 m", "-2.5 m"]', '["-2 m", "-2.5 m", "0 m"]'))
    assert "needs 2" in found["supports[0].points[0]"]


# --- properties --------------------------------------------------------------------------------


def read_data(data: dict[str, Any]) -> MachineFileError:
    """Fault report on data as TOML would give it."""
    reading = Reading()
    MACHINE.read(data, "", reading)
    return MachineFileError("data", reading.faults)


@given(angle=st.floats(0.0, 1.3))
def test_the_lever_arm_is_the_rate_at_which_the_cylinder_lengthens(angle: float) -> None:
    """Virtual work: force times change of length is moment times change of angle."""
    machine, step = read_machine(TEXT, "small.toml"), 1e-6
    c = machine.cylinder

    def length(a: float) -> float:
        pin = complex(c.attach_along, -c.attach_below) * complex(math.cos(a), math.sin(a))
        heel, base = complex(machine.heel_out, machine.heel_up), complex(c.base_out, c.base_up)
        return abs(heel + pin - base)

    rate = (length(angle + step) - length(angle - step)) / (2 * step)
    assert lever_arm(machine, angle=angle) == pytest.approx(rate, abs=1e-8)


SIZES = st.floats(0.1, 2.0)
PLATES = st.floats(0.001, 0.02)


@st.composite
def profiles(draw: st.DrawFn) -> Profile:
    """Boxes, tubes and U shapes, the latter given either way round."""
    height, width = draw(SIZES), draw(SIZES)
    top, bottom, web = draw(PLATES), draw(PLATES), draw(PLATES)
    kind = draw(st.sampled_from(["box", "folded", "tube", "u", "reversed u"]))
    if kind == "folded":
        sizes = {"width": width, "top": top, "bottom": bottom, "web": web}
        return folded(height, **sizes, flat=0.4 * width, fold=0.3 * height)
    if kind == "box":
        return box(height, width=width, top=top, bottom=bottom, web=web)
    if kind == "tube":
        return tube(height, wall=web)
    half, low = width / 2, -height / 2
    right = [(half * 0.6, low), (half, low * 0.5), (half, -low)]
    corners = right + [(-z, y) for z, y in reversed(right)]
    sides = (web, web, top, web, web, bottom)
    return polygon(corners if kind == "u" else corners[::-1], thickness=sides)


@given(profile=profiles())
def test_sizes_for_nesting_agree_with_the_section_properties_of_the_mechanics(
    profile: Profile,
) -> None:
    found = properties(profile)
    assert outer_size(profile) == pytest.approx((found.outer_width, found.outer_height))
    assert inner_size(profile) == pytest.approx((found.inner_width, found.inner_height))
    # a tube's plates are mitred a little inside their midline length: 24 flats, 0.3 %
    assert plate_area(profile) == pytest.approx(found.area, rel=4e-3)


@given(inner=profiles(), outer=profiles(), shift=st.floats(-0.5, 0.5))
@settings(max_examples=300)
def test_the_play_between_two_profiles_does_not_depend_on_where_their_origins_are(
    inner: Profile, outer: Profile, shift: float
) -> None:
    moved = dataclasses.replace(inner, corners=tuple((z, y + shift) for z, y in inner.corners))
    before, after = vertical_play(inner, outer), vertical_play(moved, outer)
    assert after == pytest.approx(before, abs=1e-9)


@given(
    height=SIZES, width=SIZES, gap=st.floats(-0.05, 0.05), side=st.floats(0.0, 0.05), wall=PLATES
)
def test_the_play_of_a_box_in_a_box_is_the_difference_of_their_heights(
    height: float, width: float, gap: float, side: float, wall: float
) -> None:
    inner = box(height, width=width, top=wall, bottom=wall, web=wall)
    room_high, room_wide = height + gap + 2 * wall, width + side + 1e-6 + 2 * wall
    outer = box(room_high, width=room_wide, top=wall, bottom=wall, web=wall)
    assert vertical_play(inner, outer) == pytest.approx(gap, abs=1e-9)
    assert vertical_play(outer, inner) < 0


@given(st.lists(st.tuples(st.integers(-5, 5), st.integers(-5, 5)), min_size=1, max_size=30))
def test_the_convex_hull_holds_every_point_and_turns_left_at_every_corner(
    points: list[tuple[int, int]],
) -> None:
    hull = convex_hull([(float(x), float(y)) for x, y in points])
    assume(len(hull) > 2)
    for k in range(len(hull)):
        (ax, ay), (bx, by) = hull[k - 1], hull[k]
        assert all((bx - ax) * (y - ay) - (by - ay) * (x - ax) >= -1e-9 for x, y in points)
        cx, cy = hull[(k + 1) % len(hull)]
        assert (bx - ax) * (cy - by) - (by - ay) * (cx - bx) > 0


# --- round trip --------------------------------------------------------------------------------


@pytest.mark.parametrize("name", machine_names())
def test_a_built_in_machine_written_as_toml_loads_back_equal(name: str) -> None:
    machine = load_machine(name)
    assert read_machine(machine_to_toml(machine), name) == machine


@pytest.mark.parametrize("name", machine_names())
def test_a_written_file_explains_every_key_once(name: str) -> None:
    text = machine_to_toml(load_machine(name))
    for about in ("how far it can move out", "largest push", "of one float or tyre"):
        assert text.count(about) == 1


def jittered(value: Any, draw: Callable[[st.SearchStrategy[Any]], Any]) -> Any:
    """Multiply every number of a machine by a factor of its own, a little below one."""
    if isinstance(value, Profile):
        high, wide = outer_size(value)[1], outer_size(value)[0]
        t = value.thickness[0]
        shapes = [box(high, width=wide, top=t, bottom=t * 0.99, web=t), value]
        shapes.append(dataclasses.replace(value, kind="polygon"))
        return draw(st.sampled_from(shapes))
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        names = [f.name for f in dataclasses.fields(value)]
        return dataclasses.replace(value, **{n: jittered(getattr(value, n), draw) for n in names})
    if isinstance(value, tuple):
        return tuple(jittered(v, draw) for v in value)
    if isinstance(value, float):
        return value * draw(st.floats(0.99, 1.0))
    return value


@given(data=st.data())
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_machine_that_can_be_built_loads_back_equal_from_its_toml(data: st.DataObject) -> None:
    machine: Machine = jittered(load_machine("truck18"), data.draw)
    text = machine_to_toml(dataclasses.replace(machine, note='Two\nlines, "quoted" \\ and ü.'))
    try:
        back = read_machine(text, "drawn")
    except MachineFileError as error:
        assume(not error.faults)
        raise
    assert back == dataclasses.replace(machine, note='Two\nlines, "quoted" \\ and ü.')


@given(
    diameter=st.floats(0.05, 2.9),
    wall=st.floats(0.0005, 0.02),
    kind=st.sampled_from(["tube", "box"]),
)
def test_a_profile_of_any_size_is_written_so_that_it_reads_back_exactly(
    diameter: float, wall: float, kind: str
) -> None:
    shape = tube(diameter, wall=wall)
    if kind == "box":
        shape = box(diameter, width=diameter, top=wall, bottom=wall, web=wall)
    small = read_machine(TEXT, "small.toml")
    mass = 1.3 * plate_area(shape) * 7850 * 5.2
    base = dataclasses.replace(small.boom.sections[0], profile=shape, mass=mass)
    boom = dataclasses.replace(small.boom, sections=(base, *small.boom.sections[1:]))
    text = machine_to_toml(dataclasses.replace(small, boom=boom))
    data = tomllib.loads(text)["boom"]["sections"][0]
    reading = Reading()
    table = MACHINE.keys["boom"].reader.keys["sections"].reader.reader_at(0)  # type: ignore[attr-defined]
    reading.named["materials"] = {data["material"]: base.material}
    assert (table.read(data, "", reading), reading.faults) == (base, [])


# --- fuzzing: a Machine or a MachineFileError, never anything else -----------------------------


def check(text: str) -> None:
    """Read, and hold what is accepted against the physics, not against the checks."""
    try:
        machine = read_machine(text, "fuzzed.toml")
    except MachineFileError as error:
        assert error.faults
        assert all(fault.says.endswith((".", "?")) for fault in error.faults)
        return
    sections = machine.boom.sections
    front, tails = sections[0].length, [0.0]
    for s in sections[1:]:
        fully_out = front + s.nose + s.stroke
        assert front - (fully_out - s.length) >= s.least_overlap - 1e-8
        tails.append(front + s.nose - s.length)
        front += s.nose
    assert all(b >= a - 1e-8 for a, b in pairwise(tails))
    for s in sections:
        plates = properties(s.profile).area * s.material.density * s.length
        assert LEAST_MASS * 0.99 < s.mass / plates < MOST_MASS * 1.01
    for outer, inner in pairwise([properties(s.profile) for s in sections]):
        assert outer.inner_height >= inner.outer_height - 1e-8
        assert outer.inner_width >= inner.outer_width - 1e-8


LINES = [k for k, line in enumerate(TEXT.splitlines()) if line.strip()]
VALUES = st.one_of(
    st.text(max_size=20).map(lambda s: s.replace("\n", " ")),
    st.sampled_from(["nan", "inf", "-1", "1e999", "true", "[]", "{}", "[[[]]]", "1979-05-27"]),
    st.builds(
        '"{} {}"'.format,
        st.one_of(st.integers(-100, 1000), st.floats(-1e3, 1e6)),
        st.sampled_from(["m", "mm", "kg", "t", "kN", "MPa", "deg", "%", "", "ton", "kg/m3", "m2"]),
    ),
)


@given(line=st.sampled_from(LINES), value=VALUES)
@settings(max_examples=400, deadline=None)
def test_a_file_with_one_value_replaced_loads_or_is_refused(line: int, value: str) -> None:
    lines = TEXT.splitlines()
    lines[line] = lines[line].split("=")[0] + f"= {value}"
    check("\n".join(lines))


@given(
    edits=st.lists(
        st.tuples(st.integers(0, len(TEXT)), st.integers(0, 12), st.text(max_size=4)), max_size=3
    )
)
@settings(max_examples=300, deadline=None)
def test_a_file_with_characters_lost_and_added_loads_or_is_refused(
    edits: list[tuple[int, int, str]],
) -> None:
    text = TEXT
    for start, length, new in edits:
        text = text[:start] + new + text[start + length :]
    check(text)


@given(
    corners=st.lists(
        st.tuples(st.integers(-4, 4), st.integers(-4, 4)), min_size=2, max_size=7, unique=False
    ),
    mirrored=st.booleans(),
    plates=st.lists(st.sampled_from([2, 5, 60]), min_size=2, max_size=8),
)
@settings(max_examples=400, deadline=None)
def test_a_section_with_any_polygon_loads_or_is_refused(
    corners: list[tuple[int, int]], mirrored: bool, plates: list[int]
) -> None:
    if mirrored:
        corners = corners + [(-z, y) for z, y in reversed(corners)]
        plates = [plates[k % len(plates)] for k in range(len(corners) // 2)]
        plates = plates[:-1] + plates[-1:] + plates[-2::-1] + plates[-1:]
    points = [[f"{z / 10} m", f"{y / 10} m"] for z, y in corners]
    sides = [f"{t} mm" for t in plates]
    shape = f"polygon = {{ corners = {points}, thickness = {sides} }}".replace("'", '"')
    for mass in ("500 kg", "900 kg"):  # so that some are neither too light nor too heavy
        text = re.sub(r"(?m)^box = .*$", shape, TEXT, count=1)
        check(text.replace('mass = "500 kg"', f'mass = "{mass}"'))


NUMBER = re.compile(r'(?<=")-?[\d.]+(?= )')
NUMBERS = len(NUMBER.findall(TEXT))


@given(
    factors=st.dictionaries(
        st.integers(0, NUMBERS - 1),
        st.one_of(st.sampled_from([0.0, -1.0, 10.0, 1000.0]), st.floats(0.5, 2.0)),
        max_size=4,
    )
)
@settings(max_examples=400, deadline=None)
def test_a_file_with_figures_scaled_loads_as_a_boom_that_can_move_or_is_refused(
    factors: dict[int, float],
) -> None:
    count = iter(range(NUMBERS))
    check(NUMBER.sub(lambda m: repr(float(m[0]) * factors.get(next(count), 1.0)), TEXT))


SCALARS = st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), st.text(max_size=8))
TREES = st.recursive(
    SCALARS,
    lambda inner: st.one_of(
        st.lists(inner, max_size=3), st.dictionaries(st.text(max_size=5), inner, max_size=3)
    ),
    max_leaves=6,
)


def places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Paths to all values of a tree."""
    steps: Any = value.items() if isinstance(value, dict) else ()
    if isinstance(value, list):
        steps = enumerate(value)
    return [path, *(place for step, inner in steps for place in places(inner, (*path, step)))]


PLACES = places(tomllib.loads(TEXT))[1:]


@given(place=st.sampled_from(PLACES), tree=TREES)
@settings(max_examples=400, deadline=None)
def test_data_with_any_part_replaced_by_anything_is_read_without_another_exception(
    place: tuple[Any, ...], tree: Any
) -> None:
    data: Any = tomllib.loads(TEXT)
    parent = data
    for step in place[:-1]:
        parent = parent[step]
    parent[place[-1]] = tree
    assert isinstance(read_data(data), MachineFileError)


def test_loading_a_machine_loads_neither_pint_nor_numpy() -> None:
    code = (
        "import sys; from boomsim.machine.machine_files import load_machine\n"
        "load_machine('yard60');"
        "print([m for m in ('pint', 'numpy', 'matplotlib') if m in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"
