"""``boomsim compare``: configurations of one boom length, rated side by side, and why."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import inputs
from boomsim.cli.answer import paragraph, table
from boomsim.cli.tell import refuse_picture, tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.comparison.compare import Comparison
    from boomsim.rating.comparison.explain import Account
    from boomsim.rating.setup import Setup
    from boomsim.rating.strategies import Configurations

HELP = "configurations of one boom length, rated side by side over radius: who wins where, and why"
EXAMPLE = "boomsim compare yard60 --length '18.9 m' --radius '6 m, 16 m' --figure compare.svg"
PICTURE = "boomsim-compare.png"

MOST_WRITTEN_OUT = 4
"""With more configurations than this, columns get letters and a key."""


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
        help="one configuration, as 0,0,46.5,46.5; repeat it to choose which to compare",
    )
    parser.add_argument("--system", metavar="NAME", help="boom system: pinned, sequenced, ...")
    parser.add_argument(
        "--radius", metavar="LENGTH", help="explain at these radii, such as '6 m, 16 m'"
    )
    parser.add_argument(
        "--radii", metavar="LENGTH", help="rate at these radii (default: every metre)"
    )
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
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
        configurations=None if length is not None else _named(chosen, setup),
        length=length,
        radii=radii if radii is not None else None,
        system=chosen.system,
    )
    at = _explained_at(found) if explained is None else [float(r) for r in explained]

    def figure() -> "Figure":
        from boomsim.figures.comparison.figure import figure_of_comparison

        return figure_of_comparison(found, units=chosen.units)

    tell(
        chosen,
        "compare",
        data=lambda: as_json(found, at),
        text=lambda: as_text(found, at, units=chosen.units),
        figure=figure,
        picture=PICTURE if demonstrates and not chosen.json else None,
    )


def _named(chosen: argparse.Namespace, setup: "Setup") -> "Configurations":
    """The configurations that were written out, or those of the demonstration."""
    import numpy as np

    from boomsim.rating.comparison.compare import demonstration
    from boomsim.rating.strategies import configurations_of

    if chosen.extension is None:
        return demonstration(setup.machine.boom)
    written = np.array([inputs.extension(text, setup.machine) for text in chosen.extension])
    return configurations_of(setup.machine.boom, extension=written)


def _explained_at(found: "Comparison") -> list[float]:
    """A near and a far radius: a quarter and nine tenths of the way out."""
    import numpy as np

    rated = np.flatnonzero(np.all(np.isfinite(found.rating.capacity), axis=0))
    if len(rated) == 0:
        return []
    picks = {rated[len(rated) // 4], rated[-1 - len(rated) // 10]}
    return [float(found.radii[k]) for k in sorted(picks)]


def as_json(found: "Comparison", at: list[float]) -> dict[str, Any]:
    """The comparison, SI."""
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
        "best": [int(b) if b >= 0 else None for b in found.best],
        "crossovers": [
            {"radius": x.radius, "from": x.before, "to": x.after, "capacity": x.capacity}
            for x in found.crossovers
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


def as_text(found: "Comparison", at: list[float], *, units: str) -> str:
    """The comparison as a table and its explanation in words."""
    from boomsim.rating.comparison.telling import tell_crossover
    from boomsim.rating.limits.telling import sign, signs_in_words
    from boomsim.rating.strategies import label
    from boomsim.units import show, show_rated

    setup, rating = found.setup, found.rating
    labels = [f"({label(row)})" for row in found.configurations.extension]
    columns, key = labels, ""
    if len(labels) > MOST_WRITTEN_OUT:
        columns = [chr(ord("A") + i) if i < 26 else f"#{i + 1}" for i in range(len(labels))]
        key = "  ".join(f"{c} {name}" for c, name in zip(columns, labels, strict=True))
    head = (
        f"{setup.machine.name} (invented): boom length "
        f"{show(float(found.configurations.length.mean()), 'boom_length', units)} reached in "
        f"{len(labels)} ways. Rated gross load {setup.sector}, counterweight "
        f"{setup.counterweight.name}, support {setup.support.name}, {setup.parts} parts of line; "
        f"rule {setup.rule.name}: {setup.rule.stability.source}; {setup.rule.strength.source}."
    )
    rows = []
    for k, radius in enumerate(found.radii):
        if not (rating.governing[:, k] >= 0).any():
            continue
        cells = []
        for i in range(len(labels)):
            governing = int(rating.governing[i, k])
            if governing < 0:
                cells.append("- ")
                continue
            said = show_rated(float(rating.capacity[i, k]), units)
            cells.append(f"{said}{sign(rating.limits[governing]) or ' '}")
        cells.append(columns[found.best[k]] if found.best[k] >= 0 else "")
        rows.append([show(float(radius), "length", units), *cells])
    if not rows:
        raise ValueError(
            "Nothing may be lifted at any of these radii by any of these configurations as the "
            "crane is set up. Choose other radii, another counterweight or another support."
        )
    legend = (
        "Extension of each moving section in percent, base side first. The last column names what "
        f"carries most. {signs_in_words()}"
    )
    pieces = [paragraph(head), paragraph(key), table(["radius", *columns, "carries most"], rows)]
    pieces.append(paragraph(legend))
    pieces += [paragraph(tell_crossover(found, x, units=units)) for x in found.crossovers]
    pieces += [_explained_text(found, radius, labels, units) for radius in at]
    pieces.append(paragraph(_deflection_text(found, units)))
    pieces.append(paragraph(CAUTION))
    return "\n\n".join(piece for piece in pieces if piece)


def _explained_text(found: "Comparison", radius: float, labels: list[str], units: str) -> str:
    from boomsim.rating.comparison.explain import difference
    from boomsim.rating.comparison.telling import tell_account, tell_difference
    from boomsim.units import show

    accounts = [(n.strip("()"), a) for n, a in zip(labels, _accounts(found, radius), strict=True)]
    known = sorted(
        [(name, one) for name, one in accounts if one is not None], key=lambda p: -p[1].capacity
    )
    if not known:
        return f"At {show(radius, 'length', units)} no configuration reaches."
    said = [f"Why, at {show(radius, 'length', units)}:"]
    told = known if len(known) <= MOST_WRITTEN_OUT else [*known[:3], known[-1]]
    said += [
        paragraph("- " + tell_account(name, one, units=units), indent="  ") for name, one in told
    ]
    best_name, best = known[0]
    for name, one in told[1:]:
        apart = difference(best, one, radius=radius)
        said.append(
            paragraph(
                "- " + " ".join(tell_difference(best_name, name, apart, units=units)), indent="  "
            )
        )
    return "\n".join(said)


def _deflection_text(found: "Comparison", units: str) -> str:
    """The other half of the answer: which deflects less under one and the same load."""
    from boomsim.rating.comparison.compare import deflections
    from boomsim.rating.strategies import label
    from boomsim.units import show

    load, radius, down = deflections(found)
    if load is None or radius is None or down is None:
        return ""
    order = sorted(range(len(down)), key=lambda i: down[i])
    listed = ", ".join(
        f"({label(found.configurations.extension[i])}) {show(float(down[i]), 'length', units)}"
        for i in order
    )
    return (
        f"Stiffness is another question. Under the same load of {show(load, 'mass', units)} "
        f"at {show(radius, 'length', units)} the tip deflects: {listed}."
    )
