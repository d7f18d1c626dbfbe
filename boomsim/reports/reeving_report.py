"""What a reeved boom says: parts, rope out and left, pull, weight of the falls, hook speed."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.reeving.reeving_study import Reeving


def as_json(found: "Reeving") -> dict[str, Any]:
    """Everything about the reeving, SI."""
    return {
        **setup_json(found.setup, extension=found.extension),
        "extension": found.extension,
        "length": found.length,
        "radius": found.radius,
        "boom_angle": found.angle,
        "head_height": found.height,
        "rated": found.rated,
        "governing": found.limit.key,
        "set_by": found.limit.set_by,
        "load": found.load,
        "gross": found.gross,
        "allowed": found.is_allowed,
        "most_parts_reached": found.reached,
        "fewest_parts_of_line": None if found.fewest is None else found.fewest.parts,
        "line_pull": found.line_pull,
        "permissible_line_pull": found.hoist.line_pull,
        "dead_end_pull": found.pull_in_part(found.parts),
        "hook_speed_over_line_speed": 1.0 / found.parts,
        "rope": {
            "whole": found.rope.whole,
            "lead_line": found.rope.lead,
            "falls": found.rope.falls,
            "left_on_drum": found.rope.left,
            "kept_on_drum": found.rope.kept,
        },
        "falls_mass": found.falls_mass,
        "choices": found.choices,
    }


def as_text(found: "Reeving", *, units: str) -> str:
    """Sentences to be spoken, then the choice of parts as a table."""
    from boomsim.rating.reeving.reeving_sentences import (
        tell_fewest,
        tell_parts,
        tell_pull,
        tell_rope,
        tell_speed,
    )
    from boomsim.rating.strategies import label

    spoken = [
        tell_parts(found, units=units),
        tell_rope(found, units=units),
        tell_pull(found, units=units),
        tell_fewest(found, units=units),
        tell_speed(found),
    ]
    head = (
        f"{setup_text(found.setup, units=units, extension=found.extension)} Extension "
        f"{label(found.extension)} % (base side first)."
    )
    rules = (
        "Carries: gross load at the permissible line pull. Net: without hook block, slings and "
        "falls, these at the boom angle above."
    )
    if found.rope.whole is not None:
        rules += (
            " Rope: with the hook on the ground, at the boom angle that takes most, with three "
            "turns that stay on the drum."
        )
    pieces = [
        *(paragraph(sentence) for sentence in spoken),
        paragraph(head),
        table(*_choices(found, units)),
        paragraph(rules),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def _choices(found: "Reeving", units: str) -> tuple[list[str], list[list[str]]]:
    """A row for each number of parts; without the rope's length no columns about it."""
    from boomsim.units import show, show_rated

    knows = found.rope.whole is not None
    head = ["parts of line", "carries", "net", "hook speed"]
    rows = []
    for choice in found.choices:
        net = max(choice.carries - choice.hangs, 0.0)
        row = [
            f"{choice.parts}{' <' if choice.parts == found.parts else ''}",
            show_rated(choice.carries, units),
            show_rated(net, units) if net > 0.0 else "none",
            "line" if choice.parts == 1 else f"1/{choice.parts}",
        ]
        if knows:
            assert choice.rope is not None
            longest = choice.longest
            row += [
                show(choice.rope, "length", units),
                "reaches" if choice.reaches else "too short",
                "none" if longest != longest else _down(longest, units),
            ]
        rows.append(row)
    return head + ["rope wanted", "drum", "boom up to"] * knows, rows


def _down(length: float, units: str) -> str:
    from boomsim.units import display

    return display("boom_length", units, like=length).text_down(length)


def summary(found: "Reeving") -> str:
    """Say in a few words what was reeved."""
    from boomsim.rating.parts_reeved import parts_said
    from boomsim.units import show

    length = show(found.length, "boom_length", "metric")
    return f"{found.setup.machine.name}, {length} of boom in {parts_said(found.parts)}"


def figure(found: "Reeving", *, units: str) -> "Figure":
    """Draw the reeving."""
    from boomsim.figures.reeving.reeving_figure import figure_of_reeving

    return figure_of_reeving(found, units=units)
