"""``boomsim losses``: what eats capacity, and what a kilogram in a section costs."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import inputs, places
from boomsim.cli.answer import paragraph, table
from boomsim.cli.progress import Bar
from boomsim.cli.tell import refuse_picture, tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.machine.model import Machine
    from boomsim.rating.losses.sensitivity import Sensitivity
    from boomsim.rating.losses.study import Losses
    from boomsim.rating.losses.takers import Amounts
    from boomsim.rating.places import Places
    from boomsim.rating.setup import Setup

HELP = "what eats capacity: slope, side pull, wind, lifting off, soft ground, and each kilogram"
EXAMPLE = "boomsim losses yard60 --radius '8 m, 16 m' --amount wind='14 m/s'"

MOST_PLACES = 4
"""So many columns a page bears."""

QUANTITIES = {
    "lean": "angle",
    "side-pull": "share",
    "wind": "speed",
    "load-area": "area",
    "hoist-speed": "speed",
    "soft": "share",
    "farther": "length",
}
"""Amounts that can be named, and what they measure."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=True)
    parser.add_argument(
        "--amount",
        metavar="NAME=VALUE",
        action="append",
        default=[],
        help=f"how much of a taker: {', '.join(QUANTITIES)}; such as lean='2 deg' or soft='5 %%'",
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.rating.losses.sensitivity import sensitivity
    from boomsim.rating.losses.study import losses

    refuse_picture(chosen)
    machine = inputs.machine(chosen)
    setup = inputs.setup(chosen, machine)
    wanted = _places(chosen, setup, machine)
    with Bar() as bar:
        found = losses(setup, places=wanted, amounts=amounts(chosen.amount), told=bar.tell)
        costs = sensitivity(setup, places=wanted)

    def figure() -> "Figure":
        from boomsim.figures.losses.figure import figure_of_losses

        return figure_of_losses(found, costs, units=chosen.units)

    tell(
        chosen,
        "losses",
        data=lambda: as_json(found, costs),
        text=lambda: as_text(found, costs, units=chosen.units),
        figure=figure,
    )


def _places(chosen: argparse.Namespace, setup: "Setup", machine: "Machine") -> "Places":
    import numpy as np

    from boomsim.rating.places import Places

    extension = places.extension(chosen.extension, machine)
    radii = inputs.radii(chosen.radius)
    if radii is None:
        radii = places.picked(places.all_radii(setup, extension), 0.15, 0.5, 0.85)
    if len(radii) > MOST_PLACES:
        raise ValueError(
            f"--radius: {len(radii)} radii are more than a page bears. Give up to {MOST_PLACES}."
        )
    return Places(extension=np.tile(extension, (len(radii), 1)), radius=radii)


def amounts(written: list[str]) -> "Amounts":
    """Read amounts such as "lean=2 deg" over the usual ones."""
    from dataclasses import replace

    from boomsim.rating.losses.takers import USUAL
    from boomsim.units import did_you_mean, parse

    found = {}
    for text in written:
        name, sign, value = text.partition("=")
        name = name.strip().replace("_", "-")
        if not sign or name not in QUANTITIES:
            raise ValueError(
                f"--amount: {text!r} names no taker.{did_you_mean(name, QUANTITIES)} Write "
                f"NAME=VALUE with one of {', '.join(QUANTITIES)}."
            )
        number = parse(value.strip(), QUANTITIES[name], what=f"--amount {name}")
        # The area of the load is typed for each tonne.
        found[name.replace("-", "_")] = number / 1000.0 if name == "load-area" else number
    return replace(USUAL, **found)


def as_json(found: "Losses", costs: "Sensitivity") -> dict[str, Any]:
    """SI numbers; one value for each place."""
    from boomsim.rating.losses.telling import tell_reason

    return {
        **places.setup_json(found.setup),
        "extension": found.places.extension,
        "radius": found.places.radius,
        "boom_length": found.length,
        "capacity": found.capacity,
        "governing": [limit.key if limit else None for limit in found.governing],
        "takers": [
            {
                "name": taker.name,
                "words": taker.words,
                "amount": taker.amount,
                "quantity": taker.quantity,
                "before": taker.before,
                "capacity": taker.capacity,
                "loss": taker.loss,
                "share": taker.share,
                "governing": [limit.key if limit else None for limit in taker.governing],
                "why_nothing": [tell_reason(taker, k) or None for k in range(len(taker.loss))],
                "allowance": taker.allowance,
                "slew": taker.slew,
                "corners": taker.corners,
            }
            for taker in found.takers
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
    from boomsim.rating.losses.telling import (
        lettered_reasons,
        tell_corners,
        tell_governing,
        tell_lettered,
        tell_taker,
    )
    from boomsim.rating.strategies import label
    from boomsim.units import show, show_rated

    columns = range(len(found.capacity))
    heads = [show(float(found.places.radius[k]), "length", units) for k in columns]
    rows = [["rated", *(show_rated(float(c), units) for c in found.capacity)]]
    rows.append(["by", *(tell_governing(limit) for limit in found.governing)])
    notes = lettered_reasons(found)
    for taker in found.takers:
        cells = [tell_lettered(taker, k, notes=notes, units=units) for k in columns]
        rows.append([tell_taker(taker, units=units), *cells])
    unit = "kg" if units == "metric" else "lb"
    masses = [
        [
            f"{name} ({show(float(costs.mass[k]), 'mass', units)})",
            *(f"{costs.best[k, n]:+.3f}" + " k" * bool(costs.kink[k, n]) for n in columns),
        ]
        for k, name in enumerate(costs.name)
    ]
    said = (
        f"Rated load, in {unit}, that one {unit} more in each part gives or costs: from the sum of "
        "moments where stability governs, else from the machine rated anew with a lighter and a "
        "heavier part (k: another limit takes over on the way)."
    )
    head = (
        f"{places.setup_text(found.setup)} Extension {label(found.places.extension[0])} % (base "
        f"side first), boom {show(float(found.length[0]), 'boom_length', units)}. Each taker "
        "alone, at the boom angle that was set without it; nothing is less than 0.05 %."
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
