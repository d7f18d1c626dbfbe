"""``boomsim lower``: how far the boom may come down with a load on its hook."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.path.lowering_study import Lowering
    from boomsim.rating.path.path_marks import Mark, Place

HELP = "lower the boom with a load: how far, until it is more than is rated, breaks or tips"
EXAMPLE = "boomsim lower yard60 --extension 0,0,45,45 --load '8 t' --figure lower.svg"

ASSUMED = (
    "The load is kept and hangs clear, the boom comes down slowly: nothing swings and nothing is "
    "stopped. Breaking and tipping are told without any margin."
)
"""What the way takes for granted."""

NOT_KEPT = "-: nothing is rated here, for any load would bend the boom beyond this radius."


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        help="of each moving section, base side first, as 0,0,45,45 (default: all in)",
    )
    parser.add_argument(
        "--load", metavar="MASS", required=True, help="gross load that is kept, such as '8 t'"
    )
    where = parser.add_mutually_exclusive_group()
    where.add_argument("--radius", metavar="LENGTH", help="where the way begins, such as '6 m'")
    where.add_argument(
        "--angle", metavar="ANGLE", help="where it begins, as '70 deg' (default: the steepest)"
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.rating.path.lowering_study import lower
    from boomsim.units import parse

    refuse_picture(chosen)
    machine = inputs.machine(chosen)
    found = lower(
        inputs.setup(chosen, machine),
        extension=inputs.from_retracted(chosen, machine),
        load=parse(chosen.load, "mass", what="--load"),
        radius=None if chosen.radius is None else parse(chosen.radius, "length", what="--radius"),
        angle=None if chosen.angle is None else parse(chosen.angle, "angle", what="--angle"),
    )

    def figure() -> "Figure":
        from boomsim.figures.path.lowering_figure import figure_of_lowering

        return figure_of_lowering(found, units=chosen.units)

    tell(
        chosen,
        "lower",
        data=lambda: as_json(found),
        text=lambda: as_text(found, units=chosen.units),
        figure=figure,
    )


def as_json(found: "Lowering") -> dict[str, Any]:
    """Give the way, SI."""
    from boomsim.rating.empty_hook.empty_hook_sentences import plain_empty_hook
    from boomsim.rating.path.lowering_study import steps_of

    steps = steps_of(found)
    limits = [steps.rating.limit(0, k) for k in range(len(steps.radius))]
    return {
        **setup_json(found.setup, extension=found.extension),
        "extension": found.extension,
        "length": found.length,
        "load": found.load,
        "start": place_json(found.start),
        "end": place_json(found.end),
        "rated_at_start": found.is_rated_at_start,
        "rated": mark_json(found.marks.rated),
        "fails": mark_json(found.marks.fails),
        "tips": mark_json(found.marks.tips),
        "empty_hook": plain_empty_hook(found.empty),
        "way": {
            "angle": steps.angle,
            "radius": steps.radius,
            "capacity": steps.rating.capacity[0],
            "set_by": [limit.set_by if limit else None for limit in limits],
        },
    }


def place_json(place: "Place") -> dict[str, Any]:
    """Give a place on a way, SI."""
    return {
        "angle": place.angle,
        "radius": place.radius,
        "within_model_range": place.is_valid,
    }


def mark_json(mark: "Mark | None") -> dict[str, Any] | None:
    """Give what is met on a way, SI; nothing where it is not met."""
    if mark is None:
        return None
    return {**place_json(mark.place), "limit": mark.limit.key, "set_by": mark.limit.set_by}


def as_text(found: "Lowering", *, units: str) -> str:
    """Give the way: a sentence to be spoken, then places."""
    from boomsim.rating.empty_hook.empty_hook_sentences import tell_empty_hook
    from boomsim.rating.limits.limit_sentences import signs_in_words
    from boomsim.rating.path.lowering_sentences import tell_lowering, tell_what_sets
    from boomsim.rating.strategies import label
    from boomsim.units import show

    rated = found.marks.rated
    spoken = [tell_lowering(found, units=units)]
    spoken += [tell_what_sets(rated)] if rated else []
    spoken += [tell_empty_hook(found.empty, units=units)]
    head = (
        f"{setup_text(found.setup, units=units, extension=found.extension)} "
        f"Extension {label(found.extension)} % (base side first), boom "
        f"length {show(found.length, 'boom_length', units)}. {ASSUMED}"
    )
    pieces = [
        "\n".join(paragraph(sentence) for sentence in spoken if sentence),
        paragraph(head),
        table(["boom angle", "radius", "rated", "load is"], _rows(found, units)),
        paragraph(f"Rated gross loads. {signs_in_words()} {NOT_KEPT}"),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def _rows(found: "Lowering", units: str) -> list[list[str]]:
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.rating.path.lowering_study import steps_of
    from boomsim.units import show, show_rated

    steps, rows = steps_of(found), []
    for k, capacity in enumerate(steps.rating.capacity[0]):
        limit = steps.rating.limit(0, k)
        rated = f"{show_rated(float(capacity), units)}{sign(limit) or ' '}" if limit else "- "
        rows.append(
            [
                show(float(steps.angle[k]), "angle", units),
                show(float(steps.radius[k]), "length", units),
                rated,
                _share(found.load, float(capacity)),
            ]
        )
    return rows


def _share(load: float, rated: float) -> str:
    """How much of the rated load hangs; rounded up, so that 100 % is never too much."""
    from math import ceil

    if rated == 0.0:
        return "too much"
    return f"{ceil(100.0 * load / rated - 1e-6)} % of it" if rated > 0.0 else ""
