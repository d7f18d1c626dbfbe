"""What setting up says: where each slab is rated, with which way out and on which supports."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.slabs.slab_stages import Stage
    from boomsim.rating.slabs.slabs_study import Bands, Slabs

ASSUMED = (
    "The slab hangs still and clear. Rated means the rule with its margins and allowances, the "
    "least of all slew angles asked for; how slabs are pinned on, and how a deck bears them, is "
    "not in the model."
)
"""What it takes for granted."""


def as_json(found: "Slabs") -> dict[str, Any]:
    """SI numbers."""
    return {
        **setup_json(found.setup),
        "deck": {"radius": found.deck, "slew": found.deck_slew} if found.deck else None,
        "extensions": found.ways.extension,
        "boom_length": found.ways.length,
        "slabs": [
            {
                "number": stage.number,
                "slab": stage.slab,
                "gross": stage.gross,
                "on_deck": stage.on_deck,
                "counterweight": stage.counterweight.name,
                "supports": [_support(found, bands) for bands in found.bands_of(stage)],
            }
            for stage in found.stages
        ],
    }


def _support(found: "Slabs", bands: "Bands") -> dict[str, Any]:
    return {
        "support": bands.support.name,
        "near": bands.near,
        "far": bands.far,
        "turns_over_from": bands.tips,
        "ends_with": [limit.key if limit else None for limit in bands.beyond],
        "reaches_deck": found.reaches_deck(bands),
    }


def rows(found: "Slabs") -> list[dict[str, Any]]:
    """One row for each slab, support and way out.

    Returns
    -------
    list of dict
        SI
    """
    return [
        {
            "slab": bands.stage.number,
            "gross": bands.stage.gross,
            "support": bands.support.name,
            "boom_length": length,
            "near": bands.near[k],
            "far": bands.far[k],
            "turns_over_from": bands.tips[k],
            "reaches_deck": bool(found.reaches_deck(bands)[k]),
        }
        for bands in found.bands
        for k, length in enumerate(found.ways.length)
    ]


def as_text(found: "Slabs", *, units: str) -> str:
    """A sentence, then for each slab sentences and a table."""
    from boomsim.figures.setup_words import allowance_words
    from boomsim.rating.parts_reeved import parts_words
    from boomsim.rating.slabs.slabs_sentences import tell_first

    setup = found.setup
    rope = "The falls of the rope count besides. " if setup.machine.hoist.rope_mass else ""
    head = (
        f"{setup.machine.name} (invented), {setup.sector}, {parts_words(setup)}, rule "
        f"{setup.rule.name}. {rope}{allowance_words(setup.rule, units=units)} {ASSUMED}"
    )
    pieces = [paragraph(tell_first(found, units=units)), paragraph(head)]
    for stage in found.stages:
        pieces += _stage(found, stage, units)
    pieces += [paragraph(_signs(found)), paragraph(CAUTION)]
    return "\n\n".join(pieces)


def _stage(found: "Slabs", stage: "Stage", units: str) -> list[str]:
    from boomsim.rating.slabs.slabs_sentences import stands_on, tell_bands, tell_stage

    own = found.bands_of(stage)
    said = [f"{tell_stage(stage, units=units)}.", *(tell_bands(found, b, units=units) for b in own)]
    heads = ["boom", "extension", *(stands_on(b).removeprefix("On ") for b in own)]
    return ["\n".join(map(paragraph, said)), table(heads, _rows(found, own, units))]


def _rows(found: "Slabs", own: "list[Bands]", units: str) -> list[list[str]]:
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.rating.slabs.slabs_sentences import far_radii
    from boomsim.rating.strategies import label
    from boomsim.units import show

    rows = []
    for k, length in enumerate(found.ways.length):
        cells = []
        for bands in own:
            if bands.far[k] != bands.far[k]:
                cells.append("-  ")
                continue
            near, far = far_radii(bands, k, units=units)
            deck = "d" if found.reaches_deck(bands)[k] else " "
            cells.append(f"{near} to {far}{sign(bands.beyond[k]) or ' '}{deck}")
        way = label(found.ways.extension[k])
        rows.append([show(float(length), "boom_length", units), way, *cells])
    return rows


def _signs(found: "Slabs") -> str:
    said = "Beyond the greatest radius: * strength is used up, † a maker's permissible value is, "
    said += "without a sign stability is or the boom reaches no farther; -: rated nowhere."
    return f"{said} d: the slab can be set down on the deck as well." if found.deck else said


def summary(found: "Slabs") -> str:
    """Say in a few words what was looked at."""
    count, ways = len(found.stages), len(found.ways.length)
    return (
        f"{found.setup.machine.name}, {count} slab{'s' * (count > 1)}, {ways} "
        f"way{'s' * (ways > 1)} out"
    )


def figure(found: "Slabs", *, units: str) -> "Figure":
    """Draw the radii as bands."""
    from boomsim.figures.slabs.slabs_figure import figure_of_slabs

    return figure_of_slabs(found, units=units)
