"""``boomsim describe``: every number of a machine that the mechanics uses."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli import standard_streams as streams
from boomsim.cli.json_printing import print_json
from boomsim.reports.text_in_trade_words import in_trade_words
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from boomsim.machine.model import Boom, Machine, Support
    from boomsim.mechanics.geometry import Array

HELP = "every number of a machine that the mechanics uses, derived section properties included"
EXAMPLE = "boomsim describe yard60 --toml > mine.toml"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        help="place the sections and pads for this configuration (default: all in)",
    )
    parser.add_argument(
        "--rule", metavar="RULE", default="share", help="share, test-load or limit-states"
    )
    parser.add_argument(
        "--toml", action="store_true", help="as a machine file, to edit and use as your own"
    )
    inputs.add_output(parser, figure=False)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    if chosen.toml and chosen.json:
        raise ValueError(
            "--toml and --json are two ways to write the machine down. Choose one of them."
        )
    if chosen.toml:
        text = _as_toml(chosen.machine)
        streams.in_utf_8()
        print(text, end="")
        return
    machine = inputs.machine(chosen)
    extension = inputs.from_retracted(chosen, machine)
    if chosen.json:
        print_json("describe", as_json(machine, extension=extension, rule=chosen.rule))
    else:
        text = as_text(machine, extension=extension, units=chosen.units)
        print(in_trade_words(text, chosen.units))


def _as_toml(name: str) -> str:
    """The file of a built-in machine with its comments, or any machine written anew."""
    from boomsim.machine.machine_files import builtin_text, load_machine, machine_names
    from boomsim.machine.machine_text import machine_to_toml

    return builtin_text(name) if name in machine_names() else machine_to_toml(load_machine(name))


def as_json(machine: "Machine", *, extension: "Array", rule: str) -> dict[str, Any]:
    """Enough for an outsider to rebuild the model in another program, SI."""
    from boomsim.gravity import GRAVITY
    from boomsim.mechanics.geometry import layout
    from boomsim.mechanics.rope_tackle import tackle_advantage
    from boomsim.mechanics.sections.section_properties import properties
    from boomsim.mechanics.stability.tipping_lines import (
        tipping_lines,
    )
    from boomsim.rating.limits.limit_table import limits_of
    from boomsim.rating.limits.strengths import strengths
    from boomsim.rating.setup import set_up

    setup = set_up(machine, rule=rule)
    placed = layout(machine.boom, extension=extension)
    bear = strengths(machine, rule=setup.rule)
    efficiency = machine.hoist.sheave_efficiency
    sections = []
    for i, section in enumerate(machine.boom.sections):
        front, tail = float(placed.front[0, i]), float(placed.tail[0, i])
        moving = i > 0
        sections.append(
            {
                "given": section,
                "properties": properties(section.profile),
                "bending_stiffness": section.material.modulus * properties(section.profile).i_y,
                "side_stiffness": section.material.modulus * properties(section.profile).i_z,
                "front": front,
                "tail": tail,
                "overlap": float(placed.overlap[0, i]) if moving else None,
                "front_pad_at": float(placed.front[0, i - 1]) if moving else None,
                "rear_pad_at": tail if moving else None,
                "effective_section": bear.effective[i],
                "allowed_stress": bear.stress[i],
                "front_pad_strength": bear.front_pad[i],
                "rear_pad_strength": bear.rear_pad[i],
                "web_crushing_strength": bear.crushing[i],
                "web_crushing_strength_outer": bear.crushing_outer[i],
                "lock_strength": bear.lock[i],
            }
        )
    return {
        "machine": machine.name,
        "title": machine.title,
        "note": machine.note,
        "gravity": GRAVITY,
        "extension": placed.extension[0],
        "boom_length": float(placed.boom_length[0]),
        "sections": sections,
        "head": machine.boom.head,
        "boom_systems": machine.boom.systems,
        "lock_positions": machine.boom.lock_positions,
        "boom_angle_range": (machine.boom.least_angle, machine.boom.greatest_angle),
        "wind_shape": machine.boom.wind_shape,
        "heel": {"out": machine.heel_out, "up": machine.heel_up},
        "luffing_cylinder": machine.cylinder,
        "hoist": machine.hoist,
        "tackle_advantage": {
            str(n): tackle_advantage(n, sheave_efficiency=efficiency) for n in machine.hoist.parts
        },
        "slewing_ring": machine.ring,
        "carrier": machine.carrier,
        "superstructure": machine.superstructure,
        "counterweights": machine.counterweights,
        "supports": [{"given": s, "tipping_lines": tipping_lines(s)} for s in machine.supports],
        "hook_block": machine.hook_block,
        "slings": machine.slings,
        "rule": setup.rule,
        "limits": [
            {"name": limit.key, "set_by": limit.set_by, "words": limit.words}
            for limit in limits_of(machine)
        ],
    }


def as_text(machine: "Machine", *, extension: "Array", units: str) -> str:
    """The machine as tables."""
    from boomsim.machine.part_names import section_name
    from boomsim.mechanics.geometry import layout
    from boomsim.mechanics.sections.section_properties import properties
    from boomsim.rating.strategies import label, range_of_length
    from boomsim.units import show

    def said(value: float, quantity: str) -> str:
        return show(value, quantity, units)

    placed = layout(machine.boom, extension=extension)
    shortest, longest = range_of_length(machine.boom)
    boom_mass = sum(machine.boom.section_masses) + machine.boom.head.mass
    crane = sum(p.mass for p in machine.carrier) + sum(p.mass for p in machine.superstructure)
    total = crane + boom_mass + machine.cylinder.mass + machine.counterweights[0].mass
    has_cylinder = machine.boom.telescope_cylinder is not None
    facts = [
        ["boom length", f"{said(shortest, 'boom_length')} to {said(longest, 'boom_length')}"],
        ["boom systems", ", ".join(machine.boom.systems)],
        ["locks at", ", ".join(f"{100 * p:g} %" for p in machine.boom.lock_positions)],
        [
            "boom angle",
            f"{said(machine.boom.least_angle, 'angle')} to "
            f"{said(machine.boom.greatest_angle, 'angle')}",
        ],
        [f"boom mass{', telescope cylinder included' * has_cylinder}", said(boom_mass, "mass")],
        *_telescope_cylinder(machine.boom, units),
        [f"whole crane, counterweight {machine.counterweights[0].name}", said(total, "mass")],
        [
            "heel pin",
            f"{said(machine.heel_out, 'length')} out, {said(machine.heel_up, 'length')} up",
        ],
        ["luffing cylinder", said(machine.cylinder.strength, "force")],
        ["slewing ring", said(machine.ring.moment, "moment")],
        ["line pull", said(machine.hoist.line_pull, "force")],
        ["parts of line", ", ".join(map(str, machine.hoist.parts))],
        *_rope(machine, units),
        *_deck(machine, units),
        [
            "deductions: hook block, slings",
            f"{said(machine.hook_block, 'mass')}, {said(machine.slings, 'mass')}",
        ],
    ]
    given, derived = [], []
    for i, section in enumerate(machine.boom.sections):
        shape = properties(section.profile)
        sides = shape.outer_height, shape.outer_width
        size = " x ".join(said(side, "small_length") for side in sides)
        given.append(
            [
                section_name(i),
                said(section.length, "length"),
                said(section.mass, "mass"),
                size,
                said(section.material.yield_stress, "stress"),
                said(section.stroke, "length") if i else "",
                said(float(placed.front[0, i]), "length"),
                said(float(placed.tail[0, i]), "length"),
                said(float(placed.overlap[0, i]), "length") if i else "",
            ]
        )
        derived.append(
            [
                section_name(i),
                said(shape.area, "section_area"),
                said(shape.i_y, "second_moment"),
                said(shape.i_z, "second_moment"),
                said(shape.modulus_top, "section_modulus"),
                said(shape.modulus_bottom, "section_modulus"),
                f"{max(p.slenderness for p in shape.plates):.0f}",
            ]
        )
    choices = [
        *(["counterweight", c.name, said(c.mass, "mass")] for c in machine.counterweights),
        *(["support", s.name, _stands(s, units)] for s in machine.supports),
    ]
    where = f"place at ({label(placed.extension[0])}) %"
    head = ["section", "length", "mass", "height x width", "yields at", "stroke"]
    return "\n\n".join(
        [
            paragraph(f"{machine.name}: {machine.title}. {' '.join(machine.note.split())}"),
            table(["machine", ""], facts),
            f"Front, tail and overlap: {where}.",
            table([*head, "front", "tail", "overlap"], given),
            *([paragraph(_without_cylinder(machine.boom, units))] if has_cylinder else []),
            table(
                ["section", "area", "I upright", "I sideways", "W top", "W bottom", "widest b/t"],
                derived,
            ),
            table(["choice", "name", ""], choices),
            paragraph(CAUTION),
        ]
    )


def _stands(support: "Support", units: str) -> str:
    """What a crane stands on, and what is permitted there."""
    from boomsim.units import show

    said = f"{len(support.points)} {support.kind}"
    if support.strength is not None:
        said += f", up to {show(support.strength, 'force', units)} each"
    if support.longest_boom is not None:
        said += f", boom up to {show(support.longest_boom, 'boom_length', units)}"
    return said


def _deck(machine: "Machine", units: str) -> list[list[str]]:
    """Where counterweight slabs wait on the carrier, where a machine says it."""
    from math import hypot

    from boomsim.units import show

    deck = machine.deck
    if deck is None:
        return []
    where = show(hypot(deck.x, deck.y), "length", units)
    return [["slabs on deck", f"{where} from the axis of rotation"]]


def _without_cylinder(boom: "Boom", units: str) -> str:
    """Say that sections are weighed here without the telescope cylinder."""
    from boomsim.reports.holding_moments import cylinder_words

    return f"Each section by itself; besides, {cylinder_words(boom, units=units)}."


def _rope(machine: "Machine", units: str) -> list[list[str]]:
    """What is known of the hoist rope; nothing of a rope without length or weight."""
    from boomsim.units import show

    hoist, rows = machine.hoist, []
    if hoist.rope_mass > 0.0:
        rows.append(["hoist rope weighs", show(hoist.rope_mass, "mass_per_length", units)])
    if hoist.rope_length is not None and hoist.drum_diameter is not None:
        drum = show(hoist.drum_diameter, "small_length", units)
        rows.append(
            ["rope on the drum", f"{show(hoist.rope_length, 'length', units)}, drum {drum}"]
        )
    return rows


def _telescope_cylinder(boom: "Boom", units: str) -> list[list[str]]:
    """What pushes the sections out, where a machine has it apart from its sections."""
    from boomsim.units import show

    cylinder = boom.telescope_cylinder
    if cylinder is None:
        return []
    share = f"{100 * cylinder.moving_share:.0f} % of it goes out with section 1"
    return [["telescope cylinder", f"{show(cylinder.mass, 'mass', units)}, {share}"]]
