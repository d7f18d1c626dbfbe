"""What a comparison says: three sentences, the table, and the account in full."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import counterweight_words, setup_json
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.comparison.comparison_study import Comparison

BLANK = "-"
"""Where a way has no rated load."""

ACCOUNTED = 3
"""So many ways are accounted for at a radius: the two that carry most and the one least [1]."""


def as_text(found: "Comparison", at: list[float], *, units: str, every: bool = False) -> str:
    """The comparison in short, as a table and in full.

    Parameters
    ----------
    at : list of float
        Radii at which differences are explained [m]
    every : bool
        Whether to list every way, not only those that matter
    """
    from boomsim.rating.comparison.comparison_in_short import in_short
    from boomsim.rating.comparison.lead_spans import ways_that_matter
    from boomsim.rating.strategies import letter

    count = len(found.configurations.extension)
    names = [letter(way) for way in range(count)]
    ways = list(range(count)) if every else ways_that_matter(found)
    rows = _rows(found, ways, names, units)
    spoken = in_short(found, names=names, radius=at[-1], units=units) if at else []
    pieces = [
        "\n".join(paragraph(sentence) for sentence in spoken),
        paragraph(_head(found, units)),
        paragraph(_key(found, ways, names)),
        table(["radius", *(names[way] for way in ways), "most"], rows),
        paragraph(_legend(found, rows, count - len(ways))),
        paragraph(_passing(found, names, units)),
        *(_why(found, radius, ways, names, units) for radius in at),
        paragraph(_deflections(found, ways, names, units)),
        paragraph(CAUTION),
    ]
    return "\n\n".join(piece for piece in pieces if piece)


def _head(found: "Comparison", units: str) -> str:
    from boomsim.figures.setup_words import allowance_words
    from boomsim.rating.parts_reeved import parts_words
    from boomsim.units import show

    setup, count = found.setup, len(found.configurations.extension)
    length = show(float(found.configurations.length.mean()), "boom_length", units)
    return (
        f"{setup.machine.name} (invented): boom length {length} reached in "
        f"{'one way' if count == 1 else f'{count} ways'}. Rated gross load {setup.sector}, "
        f"{counterweight_words(setup, units=units)}, support {setup.support.name}, "
        f"{parts_words(setup, extension=found.configurations.extension)}; "
        f"rule {setup.rule.name}: {setup.rule.stability.source}; "
        f"{setup.rule.strength.source}. {allowance_words(setup.rule, units=units)}"
    )


def _key(found: "Comparison", ways: list[int], names: list[str]) -> str:
    from boomsim.rating.strategies import label

    extension = found.configurations.extension
    return "  ".join(f"{names[way]} ({label(extension[way])})" for way in ways)


def _rows(found: "Comparison", ways: list[int], names: list[str], units: str) -> list[list[str]]:
    from boomsim.units import show

    rows = []
    for column in range(len(found.radii)):
        if (found.rating.governing[:, column] >= 0).any():
            radius = show(float(found.radii[column]), "length", units)
            cells = [_cell(found, way, column, units) for way in ways]
            rows.append([radius, *cells, _most(found, column, names, units)])
    if not rows:
        raise ValueError(
            "Nothing may be lifted at any of these radii by any of these configurations as the "
            "crane is set up. Choose other radii, another counterweight or another support."
        )
    return rows


def _most(found: "Comparison", column: int, names: list[str], units: str) -> str:
    """Name the way that carries most; those whose figures read the same tie."""
    from boomsim.units import show_rated

    loads = [
        (name, float(load))
        for name, load in zip(names, found.rating.capacity[:, column], strict=True)
        if load > 0.0
    ]
    most = show_rated(max((load for _, load in loads), default=0.0), units)
    level = [name for name, load in loads if show_rated(load, units) == most]
    return "tie" if len(level) > 1 else "".join(level)


def _cell(found: "Comparison", way: int, column: int, units: str) -> str:
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.units import show_rated

    limit = found.rating.limit(way, column)
    if limit is None:
        return f"{BLANK} "
    said = show_rated(float(found.rating.capacity[way, column]), units)
    return f"{said}{sign(limit) or ' '}"


def _legend(found: "Comparison", rows: list[list[str]], left_out: int) -> str:
    from boomsim.rating.empty_hook.empty_hook_sentences import under_hook_words
    from boomsim.rating.limits.limit_sentences import signs_in_words

    count = len(found.configurations.extension)

    said = (
        "Extension of each moving section in percent, base side first. The last column names the "
        f"way that carries most; tie: several carry the same. {signs_in_words()}"
    )
    if any(cell.strip() == BLANK for row in rows for cell in row):
        less = under_hook_words(found.setup.machine)
        said += f" {BLANK}: this way does not reach there with a load, or {less}."
    if not left_out:
        return said
    return (
        f"{said} {left_out} of the {count} ways are left out: they lead nowhere, and are neither "
        "the one that carries least close in nor the one that carries least far out. --every-way "
        "lists them."
    )


def _passing(found: "Comparison", names: list[str], units: str) -> str:
    """Where the lead passes, and what both carry there."""
    from boomsim.units import show, show_rated

    told = [
        f"{names[one.before]} carries most up to {show(one.radius, 'length', units)} and "
        f"{names[one.after]} beyond it, with {show_rated(one.capacity, units)} for both there"
        for one in found.crossovers
    ]
    return f"{'; '.join(told)}." if told else ""


def _why(found: "Comparison", radius: float, ways: list[int], names: list[str], units: str) -> str:
    from boomsim.rating.comparison.comparison_sentences import tell_account, tell_difference
    from boomsim.rating.comparison.comparison_study import account_at, capacities_at
    from boomsim.rating.comparison.difference_account import difference
    from boomsim.units import show

    carried = capacities_at(found, radius=radius)
    order = sorted((way for way in ways if carried[way] > 0.0), key=lambda way: -carried[way])
    if not order:
        return f"At {show(radius, 'length', units)} no configuration carries anything."
    chosen = order if len(order) <= ACCOUNTED else [*order[: ACCOUNTED - 1], order[-1]]
    every = [(names[way], account_at(found, way=way, radius=radius)) for way in chosen]
    told = [(name, one) for name, one in every if one is not None]
    said = [tell_account(name, one, units=units) for name, one in told]
    first, best = told[0]
    for name, one in told[1:]:
        apart = difference(best, one, radius=radius)
        said.append(" ".join(tell_difference(first, name, apart, units=units)))
    lines = [paragraph(f"- {sentence}", indent="  ") for sentence in said]
    return "\n".join([f"Why, at {show(radius, 'length', units)}:", *lines])


def _deflections(found: "Comparison", ways: list[int], names: list[str], units: str) -> str:
    """The other half of the answer: which deflects less under one and the same load."""
    from boomsim.rating.comparison.comparison_study import deflections
    from boomsim.units import show

    load, radius, down = deflections(found)
    if load is None or radius is None or down is None:
        return ""
    order = sorted(ways, key=lambda way: down[way])
    listed = ", ".join(
        f"{names[way]} {show(float(down[way]), 'small_length', units)}" for way in order
    )
    return (
        f"Stiffness is another question. Under the same load of {show(load, 'mass', units)} "
        f"at {show(radius, 'length', units)} the tip deflects: {listed}."
    )


def why(found: "Comparison", *, radius: float, units: str) -> str:
    """Say why the ways differ at a radius.

    Parameters
    ----------
    radius : float
        [m]
    """
    from boomsim.rating.comparison.lead_spans import ways_that_matter
    from boomsim.rating.strategies import letter

    names = [letter(way) for way in range(len(found.configurations.extension))]
    told = _why(found, radius, ways_that_matter(found), names, units)
    return f"{told}\n\n{paragraph(CAUTION)}"


def summary(found: "Comparison") -> str:
    """Say in a few words what was compared."""
    from boomsim.units import show

    count = len(found.configurations.extension)
    length = show(float(found.configurations.length.mean()), "boom_length", "metric")
    return (
        f"{found.setup.machine.name}, boom length {length} reached in "
        f"{'one way' if count == 1 else f'{count} ways'}, {len(found.radii)} radii"
    )


def figure(found: "Comparison", *, units: str) -> "Figure":
    """Draw rated load over radius, a line for each way."""
    from boomsim.figures.comparison.comparison_figure import figure_of_comparison
    from boomsim.rating.comparison.comparison_study import finely

    return figure_of_comparison(finely(found), units=units)


def explained_at(found: "Comparison") -> list[float]:
    """A near and a far radius: a quarter and nine tenths of the way out."""
    import numpy as np

    rated = np.flatnonzero(np.all(np.isfinite(found.rating.capacity), axis=0))
    if len(rated) == 0:
        return []
    picks = {rated[len(rated) // 4], rated[-1 - len(rated) // 10]}
    return [float(found.radii[k]) for k in sorted(picks)]


def as_json(found: "Comparison", at: list[float]) -> dict[str, Any]:
    """The comparison, SI; always with every way."""
    from boomsim.rating.comparison.lead_spans import most_at

    rating = found.rating
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
        **setup_json(found.setup, extension=found.configurations.extension),
        "length": found.configurations.length.mean(),
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


def _explained_json(found: "Comparison", radius: float) -> dict[str, Any]:
    from boomsim.rating.comparison.comparison_study import account_at
    from boomsim.rating.comparison.difference_account import difference

    ways = range(len(found.configurations.extension))
    accounts = [account_at(found, way=way, radius=radius) for way in ways]
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
