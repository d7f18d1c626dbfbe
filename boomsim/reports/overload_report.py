"""What an overload study says: one lift past its rated load."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.overload.overload_study import Overload


def as_json(found: "Overload") -> dict[str, Any]:
    """One lift past its rated load, SI."""
    return {
        **setup_json(found.setup, extension=found.extension),
        "extension": found.extension,
        "radius": found.radius,
        "hold": found.hold,
        "boom_angle": found.angle,
        "rated": found.rated,
        "governing": found.governing.key,
        "events": [
            {
                "kind": event.kind,
                "name": event.limit.key if event.limit else event.name,
                "words": event.words,
                "load": event.load,
                "multiple": event.multiple,
                "slew": event.slew,
                "place": event.place,
            }
            for event in found.events
        ],
        "failure": found.failure.load if found.failure else None,
        "tipping": found.tipping.load if found.tipping else None,
        "ratio": found.ratio,
        "warns": found.warns,
        "within_model_range": found.is_valid,
        "lightens": found.lightens,
        "feel": found.feel,
        "fall": found.fall,
    }


def as_text(found: "Overload", *, units: str) -> str:
    """One lift past its rated load as a table and sentences."""
    from boomsim.machine.part_names import foot_name
    from boomsim.rating.limits.limit_sentences import what_sets
    from boomsim.rating.load_search import FLOAT
    from boomsim.rating.overload.overload_sentences import (
        tell_event,
        tell_fall,
        tell_feel,
        tell_kept,
        tell_ultimates,
        tell_verdict,
    )
    from boomsim.rating.strategies import label
    from boomsim.units import show, show_rated

    head = (
        f"{setup_text(found.setup, units=units, extension=found.extension)} "
        f"Extension {label(found.extension)} % (base side first); "
        f"{show_rated(found.rated, units)} is rated at {show(found.radius, 'length', units)} "
        f"({what_sets(found.governing)}). {tell_kept(found)} while the load is raised; no "
        f"safety margins are applied. {tell_ultimates(found)}"
    )
    rows = [
        [
            tell_event(event),
            foot_name(found.setup.support) if event.kind == FLOAT else event.kind,
            show(event.load, "mass", units),
            f"{event.multiple:.2f}",
        ]
        for event in found.events
    ]
    pieces = [
        paragraph(head),
        table(["what happens", "kind", "gross load", "x rated"], rows),
        *(paragraph(text) for text in tell_verdict(found, units=units)),
        paragraph(tell_feel(found, units=units)),
        paragraph(tell_fall(found, units=units)),
    ]
    if not found.is_valid:
        pieces.append(
            paragraph(
                "The boom bends further than the model is meant for before it ends: take these "
                "numbers as a sketch."
            )
        )
    return "\n\n".join([*pieces, paragraph(CAUTION)])


def summary(found: "Overload") -> str:
    """Say in a few words what was looked at."""
    from boomsim.rating.strategies import label
    from boomsim.units import show, show_rated

    return (
        f"{found.setup.machine.name}, extension {label(found.extension)} %, "
        f"{show_rated(found.rated, 'metric')} rated at {show(found.radius, 'length', 'metric')}, "
        f"{len(found.events)} events"
    )


def figure(found: "Overload", *, units: str) -> "Figure":
    """Draw the load over what it uses."""
    from boomsim.figures.overload.overload_figure import figure_of_overload

    return figure_of_overload(found, units=units)
