"""``boomsim telescope``: how far the boom may be run out with a load, and what pushes it."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture, tell
from boomsim.cli.lower_command import mark_json, place_json
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.mechanics.geometry import Array
    from boomsim.rating.path.largest_telescoped import Largest
    from boomsim.rating.path.telescoping_study import Telescoping

HELP = "run the boom out with a load: how far, what pushes it, how much at each angle"
EXAMPLE = "boomsim telescope yard60 --load '8 t' --angle '60 deg' --figure telescope.svg"

ANGLES = 9
"""Boom angles of the table of the largest loads [1]."""

EVERY = 4
"""Of the places on a stage, so many are passed from row to row [1]."""

ASSUMED = (
    "The load and the boom angle are kept; the boom runs out slowly and the rope follows, with the "
    "line pull of hoisting. Between two locks a section is judged as if it were held there; the "
    "push that moves it balances the weights and the rope along the boom, and the friction of its "
    "own pads."
)
"""What the way takes for granted."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        help="where it begins, base side first, as 0,0,45,45 (default: all in)",
    )
    parser.add_argument(
        "--load", metavar="MASS", required=True, help="gross load that is kept, such as '8 t'"
    )
    parser.add_argument(
        "--angle", metavar="ANGLE", default="60 deg", help="boom angle, kept (default: 60 deg)"
    )
    parser.add_argument("--system", metavar="NAME", help="boom system: pinned, sequenced, ...")
    parser.add_argument(
        "--friction",
        metavar="NUMBER",
        default="0.1",
        help="coefficient of friction of the pads (default: 0.1, assumed)",
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.rating.path.telescoping_study import telescope
    from boomsim.units import parse

    refuse_picture(chosen)
    machine = inputs.machine(chosen)
    found = telescope(
        inputs.setup(chosen, machine),
        extension=inputs.from_retracted(chosen, machine),
        load=parse(chosen.load, "mass", what="--load"),
        angle=parse(chosen.angle, "angle", what="--angle"),
        friction=_friction(chosen.friction),
        system=chosen.system,
    )
    system = chosen.system or machine.boom.systems[0]
    largest = _largest(found)

    def figure() -> "Figure":
        from boomsim.figures.path.telescoping_figure import figure_of_telescoping

        return figure_of_telescoping(found, units=chosen.units)

    tell(
        chosen,
        "telescope",
        data=lambda: as_json(found, largest, system),
        text=lambda: as_text(found, largest, system, units=chosen.units),
        figure=figure,
    )


def _friction(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise ValueError(
            f"--friction: {text!r} is no number. Give the coefficient of friction of the pads, "
            "such as 0.1."
        ) from None


def _largest(found: "Telescoping") -> "list[Largest]":
    import numpy as np

    from boomsim.rating.path.largest_telescoped import largest_moved

    boom = found.setup.machine.boom
    angles = np.linspace(boom.greatest_angle, boom.least_angle, ANGLES)
    return [
        largest_moved(found.setup, stage=stage, angle=angles, friction=found.friction)
        for stage in found.stages
    ]


def as_json(found: "Telescoping", largest: "list[Largest]", system: str) -> dict[str, Any]:
    """Give the way and the largest loads, SI.

    Parameters
    ----------
    largest : list of Largest
        Of its stages
    """
    return {
        **setup_json(found.setup),
        "system": system,
        "load": found.load,
        "angle": found.angle,
        "friction": found.friction,
        "start": {**place_json(found.start), "length": found.length_at(0.0)},
        "end": {**place_json(found.end), "length": found.length_at(found.end.at)},
        **{name: _mark_json(found, name) for name in ("rated", "fails", "tips")},
        "empty_hook_tips": None
        if found.empty_tips is None
        else {
            **place_json(found.empty_tips.place),
            "length": found.length_at(found.empty_tips.place.at),
        },
        "way": found.line,
        "stages": [
            {
                "sections": one.stage.moving,
                "start": one.stage.start,
                "end": one.stage.end,
                "angle": one.angle,
                "pushed": one.pushed,
                "hangs": one.hangs,
                "moved": one.moved,
            }
            for one in largest
        ],
    }


def _mark_json(found: "Telescoping", name: str) -> dict[str, Any] | None:
    mark = getattr(found.marks, name)
    told = mark_json(mark)
    return None if told is None else {**told, "length": found.length_at(mark.place.at)}


def as_text(found: "Telescoping", largest: "list[Largest]", system: str, *, units: str) -> str:
    """Give the way: sentences to be spoken, the places, and the largest loads at each angle."""
    from boomsim.rating.path.lowering_sentences import tell_what_sets
    from boomsim.rating.path.telescoping_sentences import (
        stage_words,
        tell_empty_out,
        tell_last_lock,
        tell_telescoping,
    )

    rated = found.marks.rated
    spoken = [tell_telescoping(found, units=units)]
    spoken += [tell_what_sets(rated)] if rated and not found.is_held_by_push else []
    spoken += [tell_last_lock(found, system=system, units=units)]
    spoken += [tell_empty_out(found, units=units)]
    pieces = [
        "\n".join(paragraph(sentence) for sentence in spoken if sentence),
        paragraph(
            f"{setup_text(found.setup, units=units)} "
            f"{ASSUMED} Friction of the pads {found.friction:g}, assumed."
        ),
        table(["boom", "radius", "rated", "rated to run out"], _way_rows(found, units)),
        *(
            f"Largest load that is rated to be run out, {stage_words(one.stage)}:\n\n"
            + table(["boom angle", "the push moves", "rated", "the smaller"], _rows(one, units))
            for one in largest
        ),
        paragraph(
            "Gross loads. Rated: as charts have it, where the boom stands still. Rated to run out: "
            "no more than is rated, and no more than the push moves. The largest loads are the "
            "least of the places on the way."
        ),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def _way_rows(found: "Telescoping", units: str) -> list[list[str]]:
    from boomsim.rating.path.telescoping_study import ON_A_STAGE
    from boomsim.units import show

    line, rows = found.line, []
    for k in range(len(line.out)):
        # The last place of a stage is the first of the next: told once.
        if k % ON_A_STAGE % EVERY or (k and not k % ON_A_STAGE):
            continue
        rows.append(
            [
                show(float(line.length[k]), "boom_length", units),
                show(float(line.radius[k]), "length", units),
                _load(line.rated[k], units),
                _load(line.moved[k], units),
            ]
        )
    return rows


def _rows(one: "Largest", units: str) -> list[list[str]]:
    from boomsim.units import show

    columns: list[Array] = [one.pushed, one.hangs, one.moved]
    return [
        [show(float(angle), "angle", units), *(_load(column[k], units) for column in columns)]
        for k, angle in enumerate(one.angle)
    ]


def _load(value: float, units: str) -> str:
    from math import isnan

    from boomsim.units import show_rated

    if isnan(value):
        return "-"
    return show_rated(float(value), units) if value < float("inf") else "any"
