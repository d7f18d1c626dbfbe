"""Every number a question gives is one that a crane has: bounds, each with its reason.

The bounds are wider than what families offer, and are those of mobile cranes with a telescopic
boom up to some hundred tonnes, truck-mounted ones among them. Where a row says "common practice",
no source was at hand.
"""

import re

import pytest

from boomsim.papers.family_registry import families
from boomsim.papers.problems.family import AnyFamily
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import make_problem

GRAVITY = 9.80665
PRACTICE = "common practice, no source"

BOUNDS = [
    # Unit, what the given is, least and most, why
    ("m", "boom length|foot to head|load from the foot", 7.5, 62.0,
     f"telescopic booms of two to five sections: {PRACTICE}"),
    ("m", "length of (the base|section|the section|the outer)", 4.5, 15.0,
     "a base section travels on the road, in vehicles of 12 m to 16 m"),
    ("m", "stroke", 4.0, 12.0, f"less than a section's length: {PRACTICE}"),
    ("m", "nose of", 0.1, 1.0, f"what pads and head of a nested section take: {PRACTICE}"),
    ("m", "head ahead of", 0.2, 1.2, f"plates and sheaves of a head: {PRACTICE}"),
    ("m", "overhang|stands out|extension of", 1.5, 12.0, "less than a section's length"),
    ("m", "^overlap", 0.7, 4.5, f"an eighth to a third of a section: {PRACTICE}"),
    ("m", "radius|row (before|after)|last row", 3.0, 40.0,
     "from beside the crane to the end of the boom"),
    ("m", "heel pin behind", 0.5, 3.0, f"heel pins lie behind the axis of rotation: {PRACTICE}"),
    ("m", "heel pin above|height of the heel pin", 1.5, 3.5,
     "a carrier's frame is 1 m to 1.5 m up, and a crane on the road is at most 4 m high"),
    ("m", "tipping line|rear jacks|boom foot inside", 0.8, 4.0,
     "from half the track of tyres to half of 8 m between floats"),
    ("m", "floats apart", 4.0, 9.0, f"outrigger bases from truck-mounted cranes up: {PRACTICE}"),
    ("m", "resultant", 0.2, 2.7, "inside the floats"),
    ("m", "centre (of gravity )?(behind|inside)", 0.2, 2.5, "within the carrier's wheels"),
    ("m", "its centre", 0.4, 10.0, "of a carrier within its wheels, of a boom near its middle"),
    ("m", "centre of gravity|foot to centre", 3.5, 20.0, "near the middle of boom or section"),
    ("m", "(cylinder|heel pin to cylinder)|upper pin", 2.5, 6.0,
     f"a luffing cylinder takes hold of the base section near its middle: {PRACTICE}"),
    ("m", "lower pin", 0.5, 2.5, f"a luffing cylinder stands on the superstructure: {PRACTICE}"),
    ("m", "load beyond", 0.2, 1.2, f"sheaves beyond the head's pin: {PRACTICE}"),
    ("m", "deflection", 0.1, 1.6, "up to some 4 % of a boom; see the ratio below"),
    ("m", "diameter of the float", 0.3, 1.0, f"round floats, carried by a person or on the jack: "
     f"{PRACTICE}"),
    ("m", "width of the mat", 0.6, 3.0, f"mats that a crane brings along: {PRACTICE}"),
    ("m", "height of the head|hoist line down", 7.5, 62.0, "no more than boom length and heel pin"),
    ("m", "lead line", 10.0, 62.0, "along the boom"),
    ("m", "rope on", 80.0, 350.0, f"drums of mobile cranes: {PRACTICE}"),
    ("m", "rope that stays", 2.0, 7.0,
     "two or three turns stay on the drum (ASME B30.5 asks for two): of 0.3 to 0.7 m across"),
    ("m", "offset to the side", 0.1, 2.0, "a side pull that someone may not see"),
    ("m", "height (of the webs|over)", 0.15, 0.9, f"boxes of boom sections: {PRACTICE}"),
    ("m", "width over|width of the plate", 0.1, 0.7, f"boxes of boom sections: {PRACTICE}"),
    ("m", "thickness", 0.004, 0.016, f"plates of boom sections: {PRACTICE}"),
    ("m", "(length|width) of a pad", 0.04, 0.3, f"sliding pads: {PRACTICE}"),
    ("rad", "boom angle", 0.15, 1.45, f"8 to 83 degrees: {PRACTICE}"),
    ("rad", "slew angle", 0.3, 1.5, "between over the rear and over the side"),
    ("rad", "slope of the cylinder", 0.3, 1.2, f"luffing cylinders: {PRACTICE}"),
    ("rad", "out of level", 0.005, 0.06,
     "makers permit some 0.5 to 1 %; a soft float sinks to a few degrees unseen"),
    ("N", "permissible line pull", 25e3, 1e5, f"hoist ropes of 14 to 24 mm: {PRACTICE}"),
    ("N", "weight of the boom", 8e3, 150e3, "see mass to length below"),
    ("N", "weight of (section|the section|the base|what stands)", 3e3, 60e3, "as of whole booms"),
    ("N", "weight of the hook block", 1e3, 10e3, f"blocks up to some 1 t: {PRACTICE}"),
    ("N", "weight with the load", 200e3, 900e3, "cranes of two to five axles at some 12 t each"),
    ("N", "weight (of the load|with the hook)|gross load|tipping load", 5e3, 450e3,
     "what such cranes lift, from the tip of the boom to beside the crane"),
    ("N", "force on the float|largest float load", 80e3, 700e3, "a share of the crane's weight"),
    ("N", "force (across|at)", 1e3, 160e3, "a gross load or its part across the boom"),
    ("N", "shear force", 5e4, 7e5, "in one box, luffing cylinder or pads ahead of it"),
    ("N", "thrust", 4e4, 8e5, "the load's part along the boom and the hoist rope's pull"),
    ("N*m", "permissible moment", 1e5, 4e6, "lifting moments of 10 to 400 t m"),
    ("N*m", "torque", 1e3, 6e4, "a side pull, or the weight of a load off the boom's axis"),
    ("Pa", "modulus", 1.9e11, 2.15e11, "steel: EN 1993-1-1 has 210 GPa, AISC 360 29,000 ksi"),
    ("Pa", "yield", 3.3e8, 11.1e8, "S355 to S1100, 50 to 160 ksi: steels of booms"),
    ("Pa", "reference stress", 2.34e8, 2.36e8, "EN 1993-1-1: epsilon is the root of 235 MPa / fy"),
    ("Pa", "allowed stress", 1.9e8, 7.4e8, "two thirds of the yield stress, or near"),
    ("Pa", "bending stress", 5e7, 5.8e8, "up to what is allowed"),
    ("Pa", "allowed pressure", 5e6, 3e7, f"cast polyamide: {PRACTICE}"),
    ("Pa", "bearing", 6e4, 4e5, f"soft clay to firm gravel, made ground among them: {PRACTICE}"),
    ("Pa", "dynamic pressure", 10.0, 130.0, "air of 1.225 kg/m3 at up to 14.6 m/s"),
    ("kg", "hook block|slings", 40.0, 1000.0, f"blocks of 1 to 60 t and their slings: {PRACTICE}"),
    ("kg", "counterweight", 1e3, 15e3, f"cranes of two to four axles: {PRACTICE}"),
    ("kg", "mass of section", 400.0, 4e3, "see mass to length below"),
    ("kg", "mass of the boom", 1e3, 12e3, "from truck-mounted cranes up"),
    ("kg", "mass (of the truck|without)|carrier", 12e3, 62e3, "two to five axles at some 12 t"),
    ("kg", "load|capacity|cell|beside|row|column|outrigger beams|sector|way out|between", 500.0,
     7e4, "cells of the charts of the machines built in, and what is lifted by them"),
    ("kg*m", "righting moment", 4e3, 3e5, "see mass and tipping line below"),
    ("kg/m", "weight of the rope", 0.8, 2.3, f"0.4 kg/m a cm2 of diameter squared: {PRACTICE}"),
    ("m/s", "gusts|wind", 4.0, 17.0, "charts permit 9 to 14 m/s (some 30 mph at most)"),
    ("m/s", "hoisting speed", 0.05, 1.0, f"6 to 48 m/min on a hook in several parts: {PRACTICE}"),
    ("m/s", "speed of the table", 0.3, 1.01, "one metre or foot a second: of a unit"),
    ("m^2", "area of the panel", 2.0, 30.0, f"wall and roof panels: {PRACTICE}"),
    ("m^3", "section modulus", 3e-4, 4e-3, "of the boxes above"),
    ("m^4", "second moment", 5e-5, 4e-3, "of the boxes above"),
    ("", "efficiency of a sheave", 0.93, 0.99, "0.95 on bushes, 0.98 on rolling bearings"),
    ("", "parts of line", 2.0, 14.0, f"hook blocks of up to seven sheaves: {PRACTICE}"),
    ("", "share of the tipping load|the other share", 0.75, 0.85, "ASME B30.5: tyres, outriggers"),
    ("", "share on one float", 0.35, 0.75, f"from a quarter and more to nearly all: {PRACTICE}"),
    ("", "share that is allowed", 0.55, 0.8, f"two thirds, and both sides of it: {PRACTICE}"),
    ("", "stress ratio", 0.0, 1.0, "from bending about one side to pure thrust"),
    ("", "fraction out", 0.0, 1.0, "of a stroke"),
    ("", "buckling factor", 4.0, 23.9, "EN 1993-1-5, table 4.1: thrust, one side, bending"),
    ("", "shape coefficient", 1.0, 1.7, "EN 13001-2: plates by their slenderness"),
    ("", "factor at|factor of another", 1.05, 1.2, "EN 13001-2: HC1 to HC4"),
    ("", "growth", 0.05, 0.69, "EN 13001-2: 0.17 to 0.68 by m/s; 0.3048 of it by ft/s"),
    ("", "^(class|column|line of|which column|cell of)", 0.0, 24.0, "a place in a list"),
]  # fmt: skip

RATIOS = [
    # Family ("" for all that have the letters), what, value, least and most, why
    ("geometry_boom_length", "stroke to base section",
     lambda g: max(g["s_1"], g["s_2"]) / g["L_0"], 0.3, 0.88,
     "a moving section is no longer than the base around it, and an eighth stays inside"),
    ("geometry_overlap", "stroke to section", lambda g: g["s"] / g["l"], 0.3, 0.88,
     "an eighth stays inside"),
    ("weights_centre_of_gravity", "section to the one around it",
     lambda g: max(g["l_1"] / g["l_0"], g["l_2"] / g["l_1"]), 0.8, 1.1,
     "a nested section shows its nose, no more"),
    ("weights_centre_of_gravity", "lightest to the one around it",
     lambda g: max(g["W_1"] / g["W_0"], g["W_2"] / g["W_1"]), 0.3, 1.01,
     "sections grow lighter to the tip"),
    ("statics_pad_force", "overlap to section", lambda g: g["c"] / (g["a"] + g["c"]), 0.12, 0.5,
     f"an eighth at least: {PRACTICE}"),
    ("strength_pad_pressure", "overlap to section", lambda g: g["c"] / (g["a"] + g["c"]), 0.12,
     0.5, f"an eighth at least: {PRACTICE}"),
    ("deflection_two_sections", "overlap to section", lambda g: g["c"] / (g["a"] + g["c"]), 0.125,
     0.5, f"an eighth at least: {PRACTICE}"),
    ("weights_tipping_line", "mass of a metre of boom [kg/m]",
     lambda g: g["W"] / GRAVITY / (2.0 * g["x"]), 140.0, 650.0,
     f"all sections of it, over twice the distance to their centre: {PRACTICE}"),
    ("statics_cylinder_force", "mass of a metre of boom [kg/m]",
     lambda g: g["W"] / GRAVITY / g["L"], 130.0, 750.0,
     f"nested ones are heavier by the metre: {PRACTICE}"),
    ("statics_mouth_moment", "mass of a metre of section [kg/m]",
     lambda g: g["W"] / GRAVITY / g["l"], 55.0, 260.0, f"boxes of 5 to 8 mm plates: {PRACTICE}"),
    ("statics_cylinder_force", "centre of gravity to boom length", lambda g: g["x"] / g["L"], 0.3,
     0.55, "the heavy sections are at the foot"),
    ("deflection_loaded_radius", "deflection to length", lambda g: g["v"] / g["L"], 0.005, 0.04,
     f"long booms droop by a few percent: {PRACTICE}"),
    ("deflection_second_order", "thrust to the critical one",
     lambda g: 4.0 * g["P"] * g["L"] ** 2 / (9.8696 * g["E"] * g["I_y"]), 0.1, 0.51,
     f"twice as safe against buckling at least: {PRACTICE}"),
    ("stability_ground_pressure", "pressure under a float [kPa]",
     lambda g: g["F"] / (785.4 * g["D"] ** 2), 200.0, 3000.0,
     "published outrigger guidance has 411 psi (2.8 MPa) under a bare pad"),
    ("stability_mat_size", "float load [kN]", lambda g: g["s"] * g["V"] / 1e3, 100.0, 500.0,
     "as of floats"),
    ("rigging_lead_line_pull", "pull without friction [kN]", lambda g: g["W"] / g["N"] / 1e3, 7.0,
     100.0, f"hoist ropes of 14 to 24 mm: {PRACTICE}"),
    ("disturbances_side_pull", "hoist line to boom length", lambda g: g["j"] / g["L"], 0.1, 1.0,
     "no longer than the head is high"),
    ("disturbances_side_pull", "slope of the hoist line", lambda g: g["d"] / g["j"], 0.0, 0.09,
     "five degrees at most: more is seen"),
    ("rigging_rope_reaches", "lead line to height", lambda g: g["S"] / g["H"], 0.75, 1.25,
     "both are about the boom length"),
    ("stability_float_reactions", "load off the emptiest corner",
     lambda g: g["e_x"] / g["L_x"] + g["e_y"] / g["B"], 0.1, 0.5, "all four floats stay down"),
    ("strength_section_modulus", "width to height", lambda g: g["w"] / g["h"], 0.4, 1.0,
     f"booms stand on edge: {PRACTICE}"),
    ("strength_torsion", "width to height", lambda g: g["w"] / g["h"], 0.4, 1.0,
     f"booms stand on edge: {PRACTICE}"),
    ("strength_effective_width", "plate width to thickness", lambda g: g["b"] / g["t"], 20.0, 120.0,
     "slender, and stiffened beyond: EN 1993-1-5"),
    ("stability_tipping_load", "counterweight behind carrier's centre [m]",
     lambda g: g["w"] - g["x"], 0.9, 3.0, "it hangs at the superstructure's end"),
]  # fmt: skip


def problems(family: AnyFamily, count: int) -> list[Problem]:
    """As many in each unit system."""
    return [
        make_problem(family, seed=f"{seed}", system=system)
        for seed in range(count) for system in ("metric", "us")
    ]  # fmt: skip


def bounds_of(unit: str, words: str) -> tuple[float, float, str]:
    """Of a given: the first row that names it."""
    for si, pattern, low, high, why in BOUNDS:
        if si == unit and re.search(pattern, words):
            return low, high, why
    raise AssertionError(f"no bounds for {words} [{unit}]: add them, with a reason")


def look(family: AnyFamily, count: int) -> None:
    """Hold every given and every ratio of some draws against its bounds."""
    for problem in problems(family, count):
        for one in family.givens:
            amount = problem.givens[one.name]
            low, high, why = bounds_of(str(amount.unit.si), one.words)
            # A range of round feet begins and ends beside that of round metres: by 1 %.
            assert 0.99 * low <= amount.value <= 1.01 * high, (one.words, amount.plain(), why)
        for name, what, ratio, low, high, why in RATIOS:
            if name == family.id:
                assert low <= ratio(problem.values) <= high, (problem.seed, what, why)


@pytest.mark.parametrize("family", list(families().values()), ids=lambda one: one.id)
def test_givens_are_those_of_a_crane(family: AnyFamily) -> None:
    look(family, 20)


@pytest.mark.slow
@pytest.mark.long
@pytest.mark.parametrize("family", list(families().values()), ids=lambda one: one.id)
def test_givens_of_three_hundred_problems_are_those_of_a_crane(family: AnyFamily) -> None:
    look(family, 150)


def test_every_row_and_ratio_is_used_and_has_a_reason() -> None:
    named = {
        (str(one.spread("metric").unit.si), one.words)
        for family in families().values() for one in family.givens
    }  # fmt: skip
    taken = {bounds_of(*one) for one in named}
    unused = [row for row in BOUNDS if row[2:] not in taken]
    assert unused == []
    assert all(len(row[-1]) > 10 and row[-3] < row[-2] for row in [*BOUNDS, *RATIOS])
    assert {row[0] for row in RATIOS} <= set(families())
