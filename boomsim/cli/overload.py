"""``boomsim overload``: what happens first past the rated load, and where a float goes light."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import inputs, places
from boomsim.cli.answer import paragraph, table
from boomsim.cli.progress import Bar
from boomsim.cli.tell import refuse_picture, tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.overload.map import OverloadMap
    from boomsim.rating.overload.study import Overload

HELP = "raise the load past the rated one: does the crane tip first, or does something break?"
EXAMPLE = "boomsim overload yard60 --extension 0,0,45,45 --radius '8 m'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=False)
    parser.add_argument(
        "--hold",
        choices=("angle", "radius"),
        default="angle",
        help="what stays while the load grows (default: the boom angle; nobody luffs meanwhile)",
    )
    places.add_ground(parser)
    parser.add_argument("--map", action="store_true", help="all over the chart instead of one lift")
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    refuse_picture(chosen)
    if chosen.map:
        _run_map(chosen)
    else:
        _run_one(chosen)


def _run_one(chosen: argparse.Namespace) -> None:
    from boomsim.rating.overload.study import overload

    machine = inputs.machine(chosen)
    setup = places.on_ground(chosen, inputs.setup(chosen, machine))
    extension = places.extension(chosen.extension, machine)
    radii = inputs.radii(chosen.radius)
    if radii is None:
        radii = places.picked(places.all_radii(setup, extension), 0.4)
    if len(radii) != 1:
        raise ValueError("--radius: one lift is raised at a time. Give one radius, as '12 m'.")
    found = overload(setup, extension=extension, radius=float(radii[0]), hold=chosen.hold)

    def figure() -> "Figure":
        from boomsim.figures.overload.figure import figure_of_overload

        return figure_of_overload(found, units=chosen.units)

    tell(
        chosen,
        "overload",
        data=lambda: as_json(found),
        text=lambda: as_text(found, units=chosen.units),
        figure=figure,
    )


def _run_map(chosen: argparse.Namespace) -> None:
    from boomsim.rating.charts.chart import best_chart
    from boomsim.rating.overload.map import overload_map

    if chosen.extension or chosen.radius or chosen.hold == "radius":
        raise ValueError(
            "--map takes every boom length and radius of the chart at a kept boom angle. Leave out "
            "--extension, --radius and --hold, or leave out --map."
        )
    setup = inputs.setup(chosen, inputs.machine(chosen))
    with Bar() as bar:
        found = overload_map(best_chart(setup, units=chosen.units), told=bar.tell)

    def figure() -> "Figure":
        from boomsim.figures.overload.map import figure_of_overload_map

        return figure_of_overload_map(found, units=chosen.units)

    tell(
        chosen,
        "overload-map",
        data=lambda: map_as_json(found),
        text=lambda: map_as_text(found, units=chosen.units),
        figure=figure,
    )


def as_json(found: "Overload") -> dict[str, Any]:
    """One lift past its rated load, SI."""
    return {
        **places.setup_json(found.setup),
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
    from boomsim.rating.limits.telling import what_sets
    from boomsim.rating.overload.telling import (
        tell_event,
        tell_fall,
        tell_feel,
        tell_ultimates,
        tell_verdict,
    )
    from boomsim.rating.strategies import label
    from boomsim.units import show, show_rated

    kept = "boom angle" if found.hold == "angle" else "radius"
    head = (
        f"{places.setup_text(found.setup)} Extension {label(found.extension)} % (base side first); "
        f"{show_rated(found.rated, units)} is rated at {show(found.radius, 'length', units)} "
        f"({what_sets(found.governing)}). The {kept} is kept while the load is raised; yield "
        f"stress and balance stand without their margins. {tell_ultimates(found)}"
    )
    rows = [
        [
            tell_event(event),
            event.kind,
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


def map_as_json(found: "OverloadMap") -> dict[str, Any]:
    """Give the map, SI; rows are radii, columns are boom lengths."""
    chart = found.chart
    names = [limit.key for limit in found.limits]
    return {
        **places.setup_json(chart.setup),
        "radii": chart.radii,
        "lengths": chart.length,
        "extensions": [
            [chart.configurations.extension[i] if i >= 0 else None for i in row]
            for row in chart.used
        ],
        "rated": chart.exact,
        "rated_by_strength": chart.structural,
        "failure": found.failure,
        "gives_way": [[names[i] if i >= 0 else None for i in row] for row in found.gives_way],
        "tipping": found.tipping,
        "ratio": found.ratio,
    }


def map_as_text(found: "OverloadMap", *, units: str) -> str:
    """For each boom length up to which radius the crane breaks first."""
    import numpy as np

    from boomsim.rating.overload.map import meeting_radii
    from boomsim.units import show

    chart, rows = found.chart, []
    for column, length in enumerate(chart.length):
        known = np.flatnonzero(~np.isnan(found.ratio[:, column]))
        if not len(known):
            continue
        ratio = found.ratio[known, column]
        met = meeting_radii(found, column)
        inside = ", ".join(show(radius, "length", units) for radius in met)
        if not met:
            inside = "everywhere" if np.all(ratio < 1.0) else "nowhere"
        rows.append(
            [
                show(float(length), "boom_length", units),
                f"{show(float(chart.radii[known[0]]), 'length', units)} to "
                f"{show(float(chart.radii[known[-1]]), 'length', units)}",
                inside,
                f"{ratio.min():.2f}",
                f"{np.min(found.breaks_at[known, column]):.2f}",
            ]
        )
    head = ["boom length", "radii", "breaks first within", "least ratio", "breaks from x rated"]
    breaks, rated = int(found.breaks_first.sum()), int(chart.rated.sum())
    said = (
        f"In {breaks} of {rated} cells something gives way before the crane tips. "
        "The ratio is the load of the first failure over the tipping load, both without "
        "margins, at the boom angle of the rated load."
    )
    text = [places.setup_text(chart.setup), table(head, rows), paragraph(said), paragraph(CAUTION)]
    return "\n\n".join(text)
