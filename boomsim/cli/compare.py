"""``boomsim compare``: configurations of one boom length, rated side by side, and why."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.cli import inputs
from boomsim.cli.tell import refuse_picture, tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.comparison.compare import Comparison
    from boomsim.rating.comparison.explain import Account

HELP = "configurations of one boom length, rated side by side over radius: who wins where, and why"
EXAMPLE = "boomsim compare yard60 --length '18.7 m' --radius '6 m, 16 m' --figure compare.svg"
PICTURE = "boomsim-compare.png"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument(
        "--length", metavar="LENGTH", help="boom length; all legal configurations of it are rated"
    )
    parser.add_argument(
        "--extension",
        metavar="PERCENT",
        action="append",
        help="one configuration, as 0,0,45,45; repeat it to choose which to compare",
    )
    parser.add_argument("--system", metavar="NAME", help="boom system: pinned, sequenced, ...")
    parser.add_argument(
        "--radius", metavar="LENGTH", help="explain at these radii, such as '6 m, 16 m'"
    )
    parser.add_argument(
        "--radii", metavar="LENGTH", help="rate at these radii (default: every metre)"
    )
    parser.add_argument(
        "--every-way",
        action="store_true",
        help="list every way to the length (default: those that lead somewhere, the one that "
        "carries least close in and the one that does far out)",
    )
    parser.add_argument(
        "--plates",
        metavar="FACTORS",
        help="instead: one configuration of the same crane with plates so many times as thick, "
        "side by side, as '0.8, 1, 1.3'",
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    if chosen.plates is not None:
        from boomsim.cli.builds import run_builds

        run_builds(chosen)
    else:
        _run_ways(chosen)


def _run_ways(chosen: argparse.Namespace) -> None:
    from boomsim.cli.compared import as_text
    from boomsim.cli.ways import named
    from boomsim.rating.comparison.compare import compare
    from boomsim.units import parse

    machine = inputs.machine(chosen)
    setup = inputs.setup(chosen, machine)
    refuse_picture(chosen)
    demonstrates = chosen.length is None and chosen.extension is None
    length = None if chosen.length is None else parse(chosen.length, "length", what="--length")
    radii = inputs.radii(chosen.radii, what="--radii")
    explained = inputs.radii(chosen.radius)
    found = compare(
        setup,
        configurations=None if length is not None else named(chosen, setup),
        length=length,
        radii=radii if radii is not None else None,
        system=chosen.system,
    )
    at = _explained_at(found) if explained is None else [float(r) for r in explained]

    def figure() -> "Figure":
        from boomsim.figures.comparison.figure import figure_of_comparison
        from boomsim.rating.comparison.compare import finely

        return figure_of_comparison(finely(found), units=chosen.units)

    tell(
        chosen,
        "compare",
        data=lambda: as_json(found, at),
        text=lambda: as_text(found, at, units=chosen.units, every=chosen.every_way),
        figure=figure,
        picture=PICTURE if demonstrates and not chosen.json else None,
    )


def _explained_at(found: "Comparison") -> list[float]:
    """A near and a far radius: a quarter and nine tenths of the way out."""
    import numpy as np

    rated = np.flatnonzero(np.all(np.isfinite(found.rating.capacity), axis=0))
    if len(rated) == 0:
        return []
    picks = {rated[len(rated) // 4], rated[-1 - len(rated) // 10]}
    return [float(found.radii[k]) for k in sorted(picks)]


def as_json(found: "Comparison", at: list[float]) -> dict[str, Any]:
    """The comparison, SI; always with every way."""
    from boomsim.rating.comparison.spans import most_at

    setup, rating = found.setup, found.rating
    names = [limit.key for limit in rating.limits]
    families = [limit.set_by for limit in rating.limits]
    rows = [
        {
            "extension": found.configurations.extension[i],
            "system": found.configurations.system[i],
            "length": found.configurations.length[i],
            "capacity": rating.capacity[i],
            "governing": [names[g] if g >= 0 else None for g in rating.governing[i]],
            "set_by": [families[g] if g >= 0 else None for g in rating.governing[i]],
            "tipping_load": rating.tipping_load[i],
            "boom_angle": rating.angle[i],
            "tip_deflection": rating.tip_deflection[i],
            "within_model_range": rating.valid[i],
        }
        for i in range(len(rating.capacity))
    ]
    return {
        "machine": setup.machine.name,
        "length": found.configurations.length.mean(),
        "rule": setup.rule,
        "sector": setup.sector,
        "counterweight": setup.counterweight.name,
        "support": setup.support.name,
        "parts": setup.parts,
        "disturbances": setup.disturbances,
        "radii": found.radii,
        "configurations": rows,
        "level": most_at(found),
        "best": [int(b) if b >= 0 else None for b in found.best],
        "crossovers": [
            {"radius": x.radius, "from": x.before, "to": x.after, "capacity": x.capacity}
            for x in found.crossovers
        ],
        "leads": [
            {"from": x.near, "to": x.far, "ways": x.ways, "limit": x.limit} for x in found.leads
        ],
        "explained": [_explained_json(found, radius) for radius in at],
    }


def _accounts(found: "Comparison", radius: float) -> list["Account | None"]:
    from boomsim.rating.comparison.explain import accounts

    return accounts(found.setup, extension=found.configurations.extension, radius=radius)


def _explained_json(found: "Comparison", radius: float) -> dict[str, Any]:
    from boomsim.rating.comparison.explain import difference

    accounts = _accounts(found, radius)
    known = [i for i, one in enumerate(accounts) if one is not None]
    pairs = []
    for k, i in enumerate(known):
        for j in known[k + 1 :]:
            first, second = accounts[i], accounts[j]
            assert first is not None and second is not None
            apart = difference(first, second, radius=radius)
            pairs.append(
                {
                    "first": i,
                    "second": j,
                    "by_part": apart.by_part,
                    "by_structure": apart.by_structure,
                    "total": apart.total,
                }
            )
    return {"radius": radius, "accounts": accounts, "differences": pairs}
