"""The tables of a machine file, key by key.

Each key says how its value is read, the plausible range of its figure, and what it means; the
meaning serves the message when the key is missing and the comment when a file is written.
"""

from collections.abc import Mapping
from typing import Any

from boomsim.machine import model
from boomsim.machine.boom_check import boom_faults, section_faults
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.file_tables import Key, Named, NameOf, Table
from boomsim.machine.machine_check import hoist_faults, machine_faults, support_faults
from boomsim.machine.plausible_ranges import (
    AHEAD,
    ANGLE,
    COEFFICIENT,
    DENSITY,
    DRUM,
    EFFICIENCY,
    FORCE,
    GROUND_AREA,
    HEIGHT,
    LENGTH,
    MASS,
    MASS_OR_NONE,
    MODULUS,
    MOMENT,
    NAME,
    NOSE,
    OIL_MODULUS,
    OVERLAP,
    PAD_PRESSURE,
    PLACE,
    PLAY,
    ROPE_LENGTH,
    ROPE_MASS,
    SHARE,
    SIZE,
    STIFFNESS,
    TRAVEL,
    YIELD_STRESS,
)
from boomsim.machine.shapes.shape_table import SHAPES
from boomsim.machine.value_readers import Choice, Reader, Several, Text, Whole

MOST_SECTIONS = 10
MATERIAL = Table(
    model.Material,
    {
        "yield_stress": Key(YIELD_STRESS, "stress at which it yields"),
        "modulus": Key(MODULUS, "Young's modulus: stress over strain"),
        "density": Key(DENSITY, "to compare a section's mass with its plates"),
        "shear_modulus": Key(MODULUS, "shear stress over strain; usually modulus / 2.6", None),
    },
)

PAD = Table(
    model.Pad,
    {
        "length": Key(SIZE, "along the boom"),
        "width": Key(SIZE, "across the boom"),
        "pressure": Key(PAD_PRESSURE, "allowable pressure"),
    },
)

LOCK = Table(
    model.Lock,
    {
        "kind": Key(Choice(("pins", "drive")), '"pins" or "drive"'),
        "strength": Key(FORCE, "largest force along the boom that it holds"),
    },
)


def _section(**values: Any) -> model.Section:
    """Make a section from the one shape it has."""
    given = [values.pop(name) for name in SHAPES]
    shapes = [shape for shape in given if shape]
    if len(shapes) != 1:
        raise ValueError(
            f"A section needs one shape and has {len(shapes)}. Give it one of {', '.join(SHAPES)}."
        )
    return model.Section(profile=shapes[0], **values)


_EVERY_SECTION: Mapping[str, Key] = {
    "material": Key(NameOf("materials"), "one of the names under [materials]"),
    "length": Key(LENGTH, "from its tail to its front"),
    "mass": Key(MASS, "plates, stiffeners, pads, pins and ropes"),
    **{shape.name: Key(shape.table, shape.about, None) for shape in SHAPES.values()},
}
_ONLY_MOVING: Mapping[str, Key] = {
    "stroke": Key(TRAVEL, "how far it can move out"),
    "nose": Key(NOSE, "stands ahead of the outer section's front when moved in"),
    "least_overlap": Key(OVERLAP, "overlap with the outer section that must remain"),
    "clearance": Key(PLAY, "play of the pads, up and down"),
    "front_pad": Key(PAD, "one of the two at the outer section's mouth"),
    "rear_pad": Key(PAD, "one of the two at this section's tail"),
    "lock": Key(LOCK, "what keeps it from sliding"),
}
BASE_SECTION = Table(
    _section,
    _EVERY_SECTION,
    check=section_faults,
    not_here=dict.fromkeys(_ONLY_MOVING, "The base section does not move: take this out."),
)
MOVING_SECTION = Table(_section, {**_EVERY_SECTION, **_ONLY_MOVING}, check=section_faults)


class Sections(Several):
    """The sections: the base section first, then those that move."""

    def reader_at(self, number: int) -> Reader:
        """Read the first as the base section."""
        return MOVING_SECTION if number else BASE_SECTION


HEAD = Table(
    model.Head,
    {
        "ahead": Key(AHEAD, "sheave centre ahead of the last section's front"),
        "below": Key(PLACE, "sheave centre below the boom's axis"),
        "rope_above": Key(PLACE, "line to the winch above the boom's axis"),
        "mass": Key(MASS, "head with its sheaves"),
    },
)

TELESCOPE_CYLINDER = Table(
    model.TelescopeCylinder,
    {
        "mass": Key(MASS, "with its oil"),
        "moving_share": Key(SHARE, "share of it that goes out with section 1", 0.5),
        "push": Key(FORCE, "most force with which it moves a section", None),
    },
)

BOOM = Table(
    model.Boom,
    {
        "systems": Key(
            Several(Choice(BOOM_SYSTEMS), 1, 4),
            "how the sections move; the first is the usual one",
        ),
        "lock_positions": Key(
            Several(SHARE, 1, 12), "shares of the stroke at which a pinned boom locks", (0.0, 1.0)
        ),
        "least_angle": Key(ANGLE, "lowest boom angle above horizontal"),
        "greatest_angle": Key(ANGLE, "steepest boom angle"),
        "wind_shape": Key(COEFFICIENT, "force coefficient of the boom in wind"),
        "telescope_cylinder": Key(
            TELESCOPE_CYLINDER, "pushes the sections out, from inside the boom", None
        ),
        "head": Key(HEAD, "the boom head"),
        "sections": Key(Sections(MOVING_SECTION, 2, MOST_SECTIONS), "the base section first"),
    },
    check=boom_faults,
)

CYLINDER = Table(
    model.LuffingCylinder,
    {
        "base_out": Key(PLACE, "lower pin ahead of the axis of rotation"),
        "base_up": Key(HEIGHT, "lower pin above the ground"),
        "attach_along": Key(LENGTH, "upper pin, along the boom from the heel pin"),
        "attach_below": Key(PLACE, "upper pin, below the boom's axis"),
        "strength": Key(FORCE, "largest push"),
        "mass": Key(MASS, "half of it goes with each pin"),
        "bore": Key(SIZE, "inside diameter; how its trapped oil gives way", None),
        "oil_modulus": Key(OIL_MODULUS, "bulk modulus of its oil", 1.5e9),
    },
)

HOIST = Table(
    model.Hoist,
    {
        "winch_out": Key(PLACE, "winch ahead of the axis of rotation"),
        "winch_up": Key(HEIGHT, "winch above the ground"),
        "line_pull": Key(FORCE, "permissible pull in one part of the rope"),
        "sheave_efficiency": Key(EFFICIENCY, "pull off over pull on, one sheave"),
        "parts": Key(Several(Whole(1, 24), 1, 24), "parts of line; the last is the usual number"),
        "rope_mass": Key(ROPE_MASS, "of the rope by its length; without it, no weight", 0.0),
        "rope_length": Key(
            ROPE_LENGTH, "all the rope on the drum; without it, it always reaches", None
        ),
        "drum_diameter": Key(DRUM, "over the centres of the rope's first layer", None),
    },
    check=hoist_faults,
)

RING = Table(
    model.SlewingRing,
    {
        "moment": Key(MOMENT, "overturning moment the slewing ring can take"),
        "up": Key(HEIGHT, "above the ground"),
    },
)

CARRIER = Table(
    model.CarrierMass,
    {
        "name": Key(NAME, "what it is"),
        "mass": Key(MASS, "its mass"),
        "x": Key(PLACE, "to the rear of the axis of rotation"),
        "y": Key(PLACE, "to the right"),
        "z": Key(HEIGHT, "above the ground"),
    },
)


def _turning(mass: Reader, about: str) -> "Table[model.TurningMass]":
    """Table of a mass that turns; a counterweight may be none."""
    return Table(
        model.TurningMass,
        {
            "name": Key(NAME, "what it is"),
            "mass": Key(mass, about),
            "out": Key(PLACE, "ahead of the axis of rotation, towards the boom head"),
            "up": Key(HEIGHT, "above the ground"),
        },
    )


SUPPORT = Table(
    model.Support,
    {
        "name": Key(NAME, "how the crane stands"),
        "kind": Key(Choice(("outriggers", "tyres")), '"outriggers" or "tyres"'),
        "points": Key(
            Several(Several(PLACE, 2, 2), 3, 40), "[to the rear, to the right] of each jack or tyre"
        ),
        "stiffness": Key(STIFFNESS, "of one jack or tyre with the ground under it"),
        "area": Key(GROUND_AREA, "of one float or tyre on the ground"),
        "strength": Key(FORCE, "permissible load of one tyre position, for tyres only", None),
        "longest_boom": Key(LENGTH, "longest boom that is rated, for tyres only", None),
    },
    check=support_faults,
)


DECK = Table(
    model.Deck,
    {
        "x": Key(PLACE, "behind the axis of rotation"),
        "y": Key(PLACE, "to its right"),
        "z": Key(HEIGHT, "above the ground"),
    },
)


def _machine(**values: Any) -> model.Machine:
    """Make the machine; the materials are in its sections by now."""
    del values["materials"]
    return model.Machine(**values)


MACHINE = Table(
    _machine,
    {
        "name": Key(NAME, "short name of the machine"),
        "title": Key(Text(longest=200), "the machine in one line"),
        "note": Key(Text(longest=4000, lines=True), "what it is for, and that it is invented", ""),
        "heel_out": Key(PLACE, "heel pin ahead of the axis of rotation"),
        "heel_up": Key(HEIGHT, "heel pin above the ground"),
        "hook_block": Key(MASS_OR_NONE, "mass of the hook block"),
        "slings": Key(MASS_OR_NONE, "mass of the slings and shackles usually hung on"),
        "materials": Key(Named(MATERIAL, "materials", 20), "what the sections are made of"),
        "boom": Key(BOOM, "the telescoping boom"),
        "cylinder": Key(CYLINDER, "the luffing cylinder, which raises the boom"),
        "hoist": Key(HOIST, "winch, rope and reeving"),
        "ring": Key(RING, "the slewing ring, which carries the superstructure"),
        "carrier": Key(Several(CARRIER, 1, 40), "masses that stay with the carrier"),
        "superstructure": Key(
            Several(_turning(MASS, "its mass"), 1, 40),
            "masses that turn with the boom, without the hoist rope",
        ),
        "counterweights": Key(
            Several(_turning(MASS_OR_NONE, "its mass; 0 kg for none"), 1, 20),
            "the choices; the first is the usual one",
        ),
        "supports": Key(Several(SUPPORT, 1, 20), "the ways to stand; the first is the usual one"),
        "deck": Key(DECK, "where slabs lie on the carrier before they are taken up", None),
    },
    check=machine_faults,
)
