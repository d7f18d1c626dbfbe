"""``boomsim compare --plates``: one crane built light and built stout, side by side."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.mechanics.geometry import Array
    from boomsim.rating.builds.builds_study import Builds
    from boomsim.rating.setup import Setup

RULE = (
    "All plates of a boom are as many times as thick as its heading says, and the sections measure "
    "the same outside. The plates' mass follows; what a section weighs beyond its plates "
    "(stiffeners, pads, pins) stays as it is, and so do the head, the cylinders, the locks and the "
    "rest of the crane."
)
"""What is changed and what is not."""


def run_builds(chosen: argparse.Namespace) -> None:
    """Answer.

    Parameters
    ----------
    chosen : argparse.Namespace
        Of ``compare``
    """
    from boomsim.rating.builds.builds_study import compare_builds, near_and_far

    refuse_picture(chosen)
    if chosen.every_way:
        raise ValueError(
            "--every-way lists the ways to a length, and --plates compares builds in one of them. "
            "Leave one of the two out."
        )
    setup = inputs.setup(chosen, inputs.machine(chosen))
    found = compare_builds(
        setup,
        factors=factors(chosen.plates),
        extension=_one_way(chosen, setup),
        radii=inputs.radii(chosen.radii, what="--radii"),
    )
    asked = inputs.radii(chosen.radius)
    at = near_and_far(found) if asked is None else tuple(float(radius) for radius in asked)

    def figure() -> "Figure":
        from boomsim.figures.builds.builds_figure import figure_of_builds
        from boomsim.rating.builds.builds_study import finely

        return figure_of_builds(finely(found), at=at, units=chosen.units)

    tell(
        chosen,
        "compare-plates",
        data=lambda: as_json(found, at),
        text=lambda: as_text(found, at, units=chosen.units),
        figure=figure,
    )


def factors(text: str) -> list[float]:
    """Read factors such as "0.8, 1, 1.3" [1]."""
    from boomsim.machine.plate_thickness import checked_factor

    try:
        given = [float(part) for part in text.split(",")]
    except ValueError:
        raise ValueError(
            f"--plates: {text!r} is not a list of factors. Write how many times as thick the "
            "plates are, parted by commas, as '0.8, 1, 1.3'."
        ) from None
    return [checked_factor(factor, what="--plates: a factor") for factor in given]


def _one_way(chosen: argparse.Namespace, setup: "Setup") -> "Array":
    """Choose the configuration: the one that was named, or the demonstration's first."""
    import numpy as np

    from boomsim.cli.configuration_options import named
    from boomsim.rating.strategies import configurations_of_length, label
    from boomsim.units import parse

    if chosen.length is None:
        ways = named(chosen, setup)
    else:
        length = parse(chosen.length, "length", what="--length")
        ways = configurations_of_length(setup.machine.boom, length=length, system=chosen.system)
    if len(ways.extension) > 1 and (chosen.length or chosen.extension):
        example = label(ways.extension[0]).replace(" ", "")
        raise ValueError(
            f"--plates compares builds in one configuration, and here are {len(ways.extension)}. "
            f"Name one, as --extension {example}, without --length."
        )
    return np.asarray(ways.extension[0])


def as_json(found: "Builds", at: tuple[float, ...]) -> dict[str, Any]:
    """Give the builds side by side, SI.

    Parameters
    ----------
    at : tuple of float
        Radii at which each is overloaded [m]
    """
    from boomsim.rating.builds.builds_sentences import stability_from

    builds = []
    for build in found.builds:
        rating = build.rating
        limits = [rating.limit(0, column) for column in range(len(found.radii))]
        builds.append(
            {
                "plates": build.factor,
                "machine": build.setup.machine.name,
                "section_masses": [s.mass for s in build.setup.machine.boom.sections],
                "boom_mass": build.boom_mass,
                "capacity": rating.capacity[0],
                "governing": [limit.key if limit else None for limit in limits],
                "set_by": [limit.set_by if limit else None for limit in limits],
                "tipping_load": rating.tipping_load[0],
                "sets": [{"from": s.near, "to": s.far, "set_by": s.what} for s in build.sets],
                "stability_from": stability_from(build),
                "within_model_range": rating.valid[0],
            }
        )
    return {
        **setup_json(found.setup, extension=found.extension),
        "extension": found.extension,
        "length": found.length,
        "radii": found.radii,
        "builds": builds,
        "leads": [{"from": s.near, "to": s.far, "builds": s.what} for s in found.leads],
        "overloaded": [_overloaded_json(found, radius) for radius in at],
    }


def _overloaded_json(found: "Builds", radius: float) -> dict[str, Any]:
    from boomsim.rating.builds.builds_study import overloaded

    rows = [
        None
        if past is None
        else {
            "rated": past.rated,
            "failure": past.failure.load if past.failure else None,
            "tipping": past.tipping.load if past.tipping else None,
            "warns": past.warns,
            "within_model_range": past.is_valid,
        }
        for past in overloaded(found, radius=radius)
    ]
    return {"radius": radius, "builds": rows}


def as_text(found: "Builds", at: tuple[float, ...], *, units: str) -> str:
    """Give the builds side by side: three sentences, then tables.

    Parameters
    ----------
    at : tuple of float
        Radii at which each is overloaded [m]
    """
    from boomsim.rating.builds.builds_sentences import builds_in_short
    from boomsim.rating.limits.limit_sentences import signs_in_words
    from boomsim.rating.strategies import label
    from boomsim.units import show

    spoken = builds_in_short(found, at=at, units=units)
    names = [build.name for build in found.builds]
    head = (
        f"{setup_text(found.setup, units=units, extension=found.extension)} "
        f"Extension {label(found.extension)} % (base side first), boom "
        f"length {show(found.length, 'boom_length', units)}. {RULE}"
    )
    pieces = [
        "\n".join(paragraph(sentence) for sentence in spoken),
        paragraph(head),
        table(["", *names], _masses(found, units)),
        table(["radius", *names, "most"], _rows(found, units)),
        paragraph(f"Rated gross loads. {signs_in_words()} tie: several carry the same, and most."),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def _masses(found: "Builds", units: str) -> list[list[str]]:
    from boomsim.units import show

    def row(words: str, values: list[float]) -> list[str]:
        return [words, *(show(value, "mass", units) for value in values)]

    machines = [build.setup.machine for build in found.builds]
    sections = [sum(s.mass for s in machine.boom.sections) for machine in machines]
    return [
        row("sections weigh", sections),
        row("boom with head and telescope cylinder", [build.boom_mass for build in found.builds]),
    ]


def _rows(found: "Builds", units: str) -> list[list[str]]:
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.units import show, show_rated

    rows = []
    for column, radius in enumerate(found.radii):
        limits = [build.rating.limit(0, column) for build in found.builds]
        if any(limits):
            cells = [
                "- " if limit is None else f"{show_rated(float(load), units)}{sign(limit) or ' '}"
                for limit, load in zip(limits, found.capacity[:, column], strict=True)
            ]
            rows.append([show(float(radius), "length", units), *cells, _most(found, column, units)])
    if not rows:
        raise ValueError(
            "Nothing may be lifted at any of these radii by any of these builds. Choose other "
            "radii or another configuration."
        )
    return rows


def _most(found: "Builds", column: int, units: str) -> str:
    """Name the build that carries most; those whose figures read the same tie."""
    from boomsim.units import show_rated

    loads = {
        build.name: float(load)
        for build, load in zip(found.builds, found.capacity[:, column], strict=True)
        if load > 0.0
    }
    most = show_rated(max(loads.values()), units) if loads else ""
    level = [name for name, load in loads.items() if show_rated(load, units) == most]
    return "tie" if len(level) > 1 else "".join(level)
