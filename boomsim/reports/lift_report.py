"""What one lift says: angle, deflection, section forces, every limit, margin, supports."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import counterweight_words, setup_json
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from boomsim.rating.lift.lift_study import Lift


def as_json(found: "Lift") -> dict[str, Any]:
    """Everything about the lift, SI."""
    from boomsim.rating.empty_hook.empty_hook_sentences import plain_empty_hook

    return {
        **setup_json(found.setup, extension=found.extension),
        "extension": found.extension,
        "load": found.load,
        "boom_length": found.boom_length,
        "boom_angle": found.boom_angle,
        "radius": found.radius,
        "head_height": found.head_height,
        "tip_deflection": found.tip_deflection,
        "side_deflection": found.side_deflection,
        "in_angle_range": found.in_angle_range,
        "within_model_range": found.is_valid,
        "cylinder_push": found.cylinder_push,
        "line_pull": found.line_pull,
        "rope_falls": found.falls,
        "sections": found.sections,
        "limits": [
            {"name": u.limit.key, "set_by": u.limit.set_by, "utilisation": u.utilisation}
            for u in found.limits
        ],
        "governing": found.governing.key,
        "capacity": found.capacity,
        "capacity_governing": found.capacity_governing.key if found.capacity_governing else None,
        "tipping_load": found.tipping_load,
        "tipping_lines": found.margins,
        "holds_down": [
            {"part": name, "mass": found.mass.get(name), "moment": moment}
            for name, moment in found.holds.items()
        ],
        "supports": found.supports,
        "supports_slew": found.supports_slew,
        "empty_hook": plain_empty_hook(found.empty_hook),
        "lies_over": found.lies_over,
    }


def as_text(found: "Lift", *, units: str) -> str:
    """The lift as tables and sentences."""
    import numpy as np

    from boomsim.figures.setup_words import allowance_words
    from boomsim.rating.empty_hook.empty_hook_sentences import tell_empty_hook
    from boomsim.rating.parts_reeved import parts_words, tell_fewer_parts
    from boomsim.rating.strategies import label
    from boomsim.reports.holding_moments import holding_note, holding_rows
    from boomsim.units import display, show

    def said(value: float, quantity: str) -> str:
        return show(value, quantity, units)

    setup = found.setup
    head = (
        f"{setup.machine.name} (invented), {setup.sector}, "
        f"{counterweight_words(setup, units=units)}, "
        f"support {setup.support.name}, {parts_words(setup, extension=found.extension)}, "
        f"rule {setup.rule.name}. Extension {label(found.extension)} % (base side first): boom "
        f"length {said(found.boom_length, 'boom_length')}. "
        f"{allowance_words(setup.rule, units=units)}"
    )
    facts = [
        ["boom angle", said(found.boom_angle, "angle")],
        ["radius, load on", said(found.radius, "length")],
        ["head height", said(found.head_height, "length")],
        ["tip deflection", said(found.tip_deflection, "small_length")],
        ["gross load", said(found.load, "mass")],
        *_hanging(found, units),
        ["rated capacity at this radius", _capacity(found, units)],
        ["tipping load at this radius", _tipping(found, units)],
        ["luffing cylinder", said(found.cylinder_push, "force")],
        ["line pull", said(found.line_pull, "force")],
    ]
    # What stands in one table is in one unit.
    moment = display("moment", units, like=max(abs(s.moment_max) for s in found.sections))
    forces = [(s.axial_max, s.front_pad or 0.0, s.rear_pad or 0.0) for s in found.sections]
    force = display("force", units, like=max(abs(one) for three in forces for one in three))
    sections = [
        [
            s.name,
            moment.text(s.moment_max),
            force.text(s.axial_max),
            "" if s.front_pad is None else force.text(s.front_pad),
            "" if s.rear_pad is None else force.text(s.rear_pad),
        ]
        for s in found.sections
    ]
    limits = [
        [u.limit.words, _share(u.utilisation, digits=1), u.limit.set_by]
        for u in sorted(found.limits, key=lambda u: -u.utilisation)[:12]
    ]
    lines = [
        [
            m.name,
            said(m.righting, "moment"),
            said(m.overturning, "moment"),
            _share(m.overturning_ratio),
        ]
        for m in found.margins
    ]
    largest = max((s.force for s in found.supports if s.force == s.force), default=0.0)
    carried = display("force", units, like=largest)
    supports = [
        [
            s.name,
            said(s.x, "length"),
            said(s.y, "length"),
            "lifted" if s.lifted else carried.text(s.force),
            said(s.ground_pressure, "pressure"),
        ]
        for s in found.supports
    ]
    holds = holding_rows(setup, [found.holds], mass=found.mass, units=units)
    pieces = [
        paragraph(head),
        table(["lift", ""], facts),
        table(["section", "largest moment", "largest axial", "front pad", "rear pad"], sections),
        table(["limit", "utilisation", "what sets it"], limits),
        table(
            ["tipping line", "righting moment", "overturning moment", "tips at 100 %"],
            lines,
        ),
        table(["what holds the crane down", "mass", "moment"], holds),
        paragraph(
            "Moments without the load, about the tipping line and in the direction in which "
            "the crane is nearest to tipping; minus helps to turn it over. "
            f"{holding_note(setup.machine.boom, units=units)}"
        ),
        *(
            [table(["support", "to the rear", "to the right", "force", "on the ground"], supports)]
            if np.all(np.isfinite([s.force for s in found.supports]))
            else []
        ),
        paragraph(_facing(found, units)),
        *(paragraph(note) for note in (tell_empty_hook(found.empty_hook, units=units),) if note),
        *(paragraph(note) for note in found.notes),
        *(
            paragraph(note)
            for note in tell_fewer_parts(setup, length=found.boom_length, units=units)
        ),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def summary(found: "Lift") -> str:
    """Say in a few words what was lifted."""
    from boomsim.rating.strategies import label
    from boomsim.units import show

    return (
        f"{found.setup.machine.name}, extension {label(found.extension)} %, "
        f"{show(found.load, 'mass', 'metric')} at {show(found.radius, 'length', 'metric')}"
    )


def _hanging(found: "Lift", units: str) -> list[list[str]]:
    """What of the gross load always hangs there, one row each; nothing of what weighs nothing."""
    from boomsim.rating.charts.deductions import falls_words
    from boomsim.units import show

    machine = found.setup.machine
    listed = {
        "hook block": machine.hook_block,
        "slings": machine.slings,
        falls_words(found.parts): found.falls,
    }
    return [
        [f"of it {name}", show(mass, "mass", units)] for name, mass in listed.items() if mass > 0.0
    ]


def _capacity(found: "Lift", units: str) -> str:
    import numpy as np

    from boomsim.rating.empty_hook.empty_hook_sentences import under_hook_words
    from boomsim.rating.limits.limit_sentences import what_sets
    from boomsim.rating.longest_boom import tell_longest, too_long
    from boomsim.units import show_rated

    if found.lies_over:
        return "none: the crane turns over with the empty hook"
    if too_long(found.setup, length=np.array([found.boom_length]))[0]:
        return f"none: {tell_longest(found.setup)}"
    if found.capacity_governing is None:
        return "none: outside the boom's reach or angles"
    machine = found.setup.machine
    if found.capacity < machine.hook_block + machine.slings + found.falls:
        return f"not rated: {under_hook_words(found.setup.machine)}"
    why = what_sets(found.capacity_governing)
    return f"{show_rated(found.capacity, units)} ({why})"


def _facing(found: "Lift", units: str) -> str:
    """Say where the boom is while the supports carry what is told."""
    from math import isnan

    from boomsim.rating.around.slew_directions import direction
    from boomsim.units import show

    strength, boom = found.setup.support.strength, f"the boom {direction(found.supports_slew)}"
    if any(isnan(s.force) for s in found.supports):
        return f"With {boom} the supports hold nothing: there the crane turns over."
    if strength is None:
        return f"Supports with {boom}, where the crane is nearest to tipping."
    return (
        f"Supports with {boom}, where one tyre position carries "
        f"most; {show(strength, 'force', units)} are permitted."
    )


def _tipping(found: "Lift", units: str) -> str:
    from boomsim.units import show

    if found.tipping_load == 0.0:
        return "none: it turns over without a load"
    if found.tipping_load == float("inf"):
        return "none: no load tips it here"
    return show(found.tipping_load, "mass", units)


def _share(utilisation: float, *, digits: int = 0) -> str:
    """How much of something is used; it may be past all bounds."""
    return f"{100 * utilisation:.{digits}f} %" if utilisation < float("inf") else "turns over"
