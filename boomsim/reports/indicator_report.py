"""What a study of a load-moment indicator says: what it shows beside what is."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.indicator.indicator_study import Indicated

FORMULA = (
    "A simulated indicator, no maker's: it measures the luffing cylinder's push, the boom angle "
    "against the plumb line and the boom length; it was told way out, counterweight, supports and "
    "parts of line, and taught the push under the empty hook and how far a load bends the boom. "
    "Load beyond the empty hook = (push - empty push) x cylinder's lever / (g x (load's lever - "
    "lead line's lever / advantage of the tackle)). Friction in the cylinder and errors of the "
    "sensors are left out. Each condition alone."
)
"""What it is."""


def as_json(found: "Indicated") -> dict[str, Any]:
    """SI numbers."""
    return {
        **setup_json(found.setup, extension=found.extension),
        "extension": found.extension,
        "boom_length": found.length,
        "radius": found.radius,
        "load": found.load,
        "rated": found.rated,
        "amounts": found.amounts,
        "swing_angle": found.swing_angle,
        "conditions": rows(found),
    }


def rows(found: "Indicated") -> list[dict[str, Any]]:
    """One row for each condition.

    Returns
    -------
    list of dict
        SI
    """
    return [
        {
            "condition": row.condition.key,
            "push": row.sensors.push,
            "angle": row.sensors.angle,
            "length": row.sensors.length,
            "shown_load": row.shown.load,
            "shown_radius": row.shown.radius,
            "shown_utilisation": row.shown_utilisation,
            "rated": row.rated,
            "utilisation": row.utilisation,
            "verdict": row.verdict,
        }
        for row in found.rows
    ]


def as_text(found: "Indicated", *, units: str) -> str:
    """The worst, a table, a sentence for each condition."""
    from boomsim.rating.indicator import indicator_sentences as telling
    from boomsim.rating.strategies import label
    from boomsim.units import show

    load, radius = show(found.load, "mass", units), show(found.radius, "length", units)
    head = (
        f"{load} hang at {radius}. "
        f"{setup_text(found.setup, units=units, extension=found.extension)} "
        f"Extension {label(found.extension)} % "
        f"(base side first), boom length {show(found.length, 'boom_length', units)}. {FORMULA}"
    )
    listed = [
        [
            telling.name_of(row, found, units=units),
            show(row.shown.load, "mass", units),
            show(row.shown.radius, "length", units),
            telling.percent(row.shown_utilisation),
            telling.percent(row.utilisation),
            row.verdict,
        ]
        for row in found.rows
    ]
    said = [paragraph(telling.tell_row(row, found, units=units)) for row in found.rows]
    pieces = [
        paragraph(telling.tell_worst(found, units=units)),
        paragraph(head),
        table(["condition", "it shows", "at", "of its chart", "it is", ""], listed),
        "\n".join(said),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def summary(found: "Indicated") -> str:
    """Say in a few words what was looked at."""
    from boomsim.rating.strategies import label
    from boomsim.units import show

    return (
        f"{found.setup.machine.name}, extension {label(found.extension)} %, "
        f"{show(found.load, 'mass')} at {show(found.radius, 'length')} under "
        f"{len(found.rows)} conditions"
    )


def figure(found: "Indicated", *, units: str) -> "Figure":
    """Draw what it shows beside what is."""
    from boomsim.figures.indicator.indicator_figure import figure_of_indicator

    return figure_of_indicator(found, units=units)
