"""What a study of losses says: what each effect takes, what a kilogram costs."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.losses.losses_study import Losses
    from boomsim.rating.losses.mass_sensitivity import Sensitivity


def as_json(found: "Losses", costs: "Sensitivity") -> dict[str, Any]:
    """SI numbers; one value for each place."""
    from boomsim.rating.losses.losses_sentences import tell_reason

    return {
        **setup_json(found.setup, extension=found.places.extension),
        "extension": found.places.extension,
        "radius": found.places.radius,
        "boom_length": found.length,
        "capacity": found.capacity,
        "governing": [limit.key if limit else None for limit in found.governing],
        "effects": [
            {
                "name": effect.name,
                "words": effect.words,
                "amount": effect.amount,
                "quantity": effect.quantity,
                "before": effect.before,
                "capacity": effect.capacity,
                "loss": effect.loss,
                "share": effect.share,
                "governing": [limit.key if limit else None for limit in effect.governing],
                "why_nothing": [tell_reason(effect, k) or None for k in range(len(effect.loss))],
                "allowance": effect.allowance,
                "slew": effect.slew,
                "corners": effect.corners,
            }
            for effect in found.effects
        ],
        "kilogram_costs": [
            {
                "part": name,
                "mass": costs.mass[k],
                "by_stability_sum": costs.by_sum[k],
                "by_rating": costs.by_rating[k],
                "limit_changes": costs.kink[k],
            }
            for k, name in enumerate(costs.name)
        ],
    }


def as_text(found: "Losses", costs: "Sensitivity", *, units: str) -> str:
    """Two tables and what they mean."""
    from boomsim.rating.losses.losses_sentences import (
        lettered_reasons,
        tell_corners,
        tell_effect,
        tell_governing,
        tell_lettered,
    )
    from boomsim.rating.strategies import label
    from boomsim.units import show, show_rated

    columns = range(len(found.capacity))
    heads = [show(float(found.places.radius[k]), "length", units) for k in columns]
    rows = [["rated", *(show_rated(float(c), units) for c in found.capacity)]]
    rows.append(["set by", *(tell_governing(limit) for limit in found.governing)])
    notes = lettered_reasons(found)
    for effect in found.effects:
        cells = [tell_lettered(effect, k, notes=notes, units=units) for k in columns]
        rows.append([tell_effect(effect, units=units), *cells])
    unit = "kg" if units == "metric" else "lb"
    masses = [
        [
            f"{name} ({show(float(costs.mass[k]), 'mass', units)})",
            *(_each(costs.best[k, n]) + " k" * bool(costs.kink[k, n]) for n in columns),
        ]
        for k, name in enumerate(costs.name)
    ]
    has_cylinder = found.setup.machine.boom.telescope_cylinder is not None
    apart = " (sections without the telescope cylinder)" if has_cylinder else ""
    said = (
        f"Rated load, in {unit}, that one {unit} more in each part gives or costs{apart}: from the "
        "sum of moments where stability governs, else from the machine rated again with a lighter "
        "and a heavier part (k: the governing limit changes on the way)."
    )
    head = (
        f"{setup_text(found.setup, units=units, extension=found.places.extension)} "
        f"Extension {label(found.places.extension[0])} % (base "
        f"side first), boom {show(float(found.length[0]), 'boom_length', units)}. Each "
        "effect on its own, with the boom angle unchanged; 'nothing' stands for less than 0.05 %."
    )
    pieces = [
        paragraph(head),
        table(["at a radius of", *heads], rows),
        "\n".join(paragraph(f"({letter}) {why}.") for why, letter in notes.items()),
        paragraph(tell_corners(found, units=units)),
        paragraph(said),
        table(["one more in", *heads], masses),
        paragraph(CAUTION),
    ]
    return "\n\n".join(piece for piece in pieces if piece)


def summary(found: "Losses") -> str:
    """Say in a few words what was looked at."""
    from boomsim.rating.strategies import label

    return (
        f"{found.setup.machine.name}, extension {label(found.places.extension[0])} %, "
        f"{len(found.effects)} effects at {len(found.capacity)} radii"
    )


def figure(found: "Losses", costs: "Sensitivity", *, units: str) -> "Figure":
    """Draw bars of the losses, and the costs of a kilogram."""
    from boomsim.figures.losses.losses_figure import figure_of_losses

    return figure_of_losses(found, costs, units=units)


def _each(value: float) -> str:
    """Write what one kilogram gives or costs; what is less than is shown has no sign."""
    return f"{value:+.3f}" if abs(value) >= 0.0005 else "0.000"
