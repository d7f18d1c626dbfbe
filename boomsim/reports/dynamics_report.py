"""What a study of moving loads says: as how much each way to move a load counts."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.dynamics.dynamics_study import Dynamics

ASSUMED = (
    "A point load on a spring without mass; the boom's own mass does not move with it, nothing is "
    "damped, one thing at a time. A blow lasts a moment: whether a crane has the time to turn over "
    "is not in the model."
)
"""What all of it takes for granted."""


def as_json(found: "Dynamics") -> dict[str, Any]:
    """SI numbers."""
    return {
        **setup_json(found.setup, extension=found.extension),
        "extension": found.extension,
        "boom_length": found.length,
        "radius": found.radius,
        "boom_angle": found.angle,
        "load": found.load,
        "rated": found.rated,
        "motion": found.motion,
        "sag": {
            "boom": found.sag.boom,
            "rope": found.sag.rope,
            "floats": found.sag.floats,
            "whole": found.sag.whole,
            "rope_length": found.sag.rope_length,
            "lead_line": found.sag.lead,
            "parts_of_line": found.sag.parts,
        },
        "swing_angle": found.swing_angle,
        "swing_radius": found.swing_radius,
        "tips_at": found.tipping,
        "breaks_at": found.breaking,
        "effects": rows(found),
    }


def rows(found: "Dynamics") -> list[dict[str, Any]]:
    """One row for each way to move the load.

    Returns
    -------
    list of dict
        SI
    """
    return [
        {
            "effect": effect.key,
            "factor": effect.factor,
            "outwards": effect.outwards,
            "sideways": effect.sideways,
            "equivalent": effect.equivalent,
            "by": effect.by,
            "share_of_rated": effect.share,
            "of_tipping": effect.tips,
            "of_breaking": effect.breaks,
            "part": effect.part.key,
            "source": effect.source,
        }
        for effect in found.effects
    ]


def as_text(found: "Dynamics", *, units: str) -> str:
    """A sentence, a table, a paragraph for each effect with its formula."""
    from boomsim.rating.dynamics import dynamics_sentences as telling
    from boomsim.rating.strategies import label
    from boomsim.units import show

    head = (
        f"{setup_text(found.setup, units=units, extension=found.extension)} "
        f"Extension {label(found.extension)} % (base side first), boom "
        f"length {show(found.length, 'boom_length', units)}. {ASSUMED}"
    )
    listed = [
        [
            telling.name_of(effect),
            show(effect.equivalent, "mass", units),
            telling.percent(effect.share),
            telling.percent(effect.tips),
            telling.percent(effect.breaks),
        ]
        for effect in found.effects
    ]
    said = [
        paragraph(f"{telling.tell_effect(effect, found, units=units)} [{effect.source}]")
        for effect in found.effects
    ]
    pieces = [
        paragraph(telling.tell_worst(found, units=units)),
        paragraph(head),
        table(["the load", "counts as", "of the rated", "of tipping", "of breaking"], listed),
        "\n".join(said),
        paragraph(telling.tell_sag(found, units=units)),
        paragraph(telling.tell_rope(found, units=units)),
        paragraph(telling.tell_in_rating(found)),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def summary(found: "Dynamics") -> str:
    """Say in a few words what was looked at."""
    from boomsim.rating.strategies import label
    from boomsim.units import show, show_rated

    return (
        f"{found.setup.machine.name}, extension {label(found.extension)} %, "
        f"{show_rated(found.load, 'metric')} at {show(found.radius, 'length')} moved in "
        f"{len(found.effects)} ways"
    )


def figure(found: "Dynamics", *, units: str) -> "Figure":
    """Draw the equivalent loads as bars."""
    from boomsim.figures.dynamics.dynamics_figure import figure_of_dynamics

    return figure_of_dynamics(found, units=units)
