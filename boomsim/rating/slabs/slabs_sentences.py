"""Where a crane lifts its own slabs, in sentences for a class."""

from math import ceil

import numpy as np

from boomsim.rating.empty_hook.empty_hook_sentences import near_radius
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.slabs.slab_stages import Stage
from boomsim.rating.slabs.slabs_study import Bands, Slabs
from boomsim.rating.strategies import label
from boomsim.units import display, show

ENDS = {
    STABILITY: "beyond it stability is used up",
    "strength": "beyond it strength is used up",
    "permissible value": "beyond it a maker's permissible value is used up",
}
"""What comes to its limit at the greatest radius."""


def chosen_way(found: Slabs, bands: Bands) -> int | None:
    """Way out with the greatest radius among those that reach the deck, or among all without one.

    Returns
    -------
    int or None
        The shortest of several; None where there is none
    """
    if found.deck is None:
        return bands.best
    reaching = found.reaches_deck(bands)
    if not reaching.any():
        return None
    return int(np.nanargmax(np.where(reaching, bands.far, np.nan)))


def tell_stage(stage: Stage, *, units: str) -> str:
    """Say what is picked, and what the crane has on meanwhile."""
    unit = display("mass", units, like=stage.gross)
    on = (
        f"counterweight {stage.counterweight.name} on"
        if stage.counterweight.mass > 0.0
        else "no counterweight on"
    )
    deck = f" and {show(stage.on_deck, 'mass', units)} on its deck" if stage.on_deck else ""
    return (
        f"Slab {stage.number}: {unit.text(stage.slab)}, {unit.text(stage.gross)} with hook block "
        f"and slings; the crane has {on}{deck}"
    )


def tell_bands(found: Slabs, bands: Bands, *, units: str) -> str:
    """Say from where to where a slab is rated on one sort of supports.

    Returns
    -------
    str
        A sentence or two
    """
    stands = stands_on(bands)
    way = chosen_way(found, bands)
    if bands.best is None:
        return f"{stands} it is rated nowhere."
    if way is None:
        where = _deck(found, units)
        return f"{stands} no way out has it rated on the deck as well, {where} from the axis."
    near, far = far_radii(bands, way, units=units)
    out = f"({label(found.ways.extension[way])}) % out"
    both = ", the deck among them" if found.deck is not None else ""
    limit = bands.beyond[way]
    end = "the boom reaches no farther" if limit is None else ENDS[limit.set_by]
    said = f"{stands}, {out}, it is rated from {near} to {far}{both}; {end}"
    tips = float(bands.tips[way])
    if np.isnan(tips):
        return f"{said}, and nowhere does it turn the crane over."
    return (
        f"{said}. Without any margin it would turn over from {near_radius(tips, units=units)} on."
    )


def stands_on(bands: Bands) -> str:
    """Begin a sentence with what the crane stands on."""
    return f"On {bands.support.kind} {bands.support.name}".replace("tyres tyres", "tyres")


def far_radii(bands: Bands, way: int, *, units: str) -> tuple[str, str]:
    """Write both radii of a band to the safe side: the nearer up, the farther down."""
    near = float(bands.near[way])
    unit = display("length", units, like=near)
    step = 10.0**-unit.digits * unit.factor
    return unit.text(step * ceil(near / step - 1e-6)), near_radius(
        float(bands.far[way]) * (1.0 + 1e-12), units=units
    )


def tell_first(found: Slabs, *, units: str) -> str:
    """Say in one sentence how far out the heaviest slab may lie for the crane to lay it on deck."""
    heaviest = max(found.stages, key=lambda stage: stage.slab)
    listed = []
    for bands in found.bands:
        way = chosen_way(found, bands)
        if bands.stage is not heaviest or way is None:
            continue
        stands = stands_on(bands).replace("On ", "on ", 1)
        listed.append(f"{far_radii(bands, way, units=units)[1]} {stands}")
    mass, deck = show(heaviest.slab, "mass", units), ""
    begun = f"Without its counterweight {found.setup.machine.name} lifts its own slab of {mass}"
    if not listed:
        return f"{begun} nowhere."
    if found.deck is not None:
        deck = f", and with the same way out lays it on its deck at {_deck(found, units)}"
    return f"{begun} out to {', '.join(listed)}{deck}."


def _deck(found: Slabs, units: str) -> str:
    assert found.deck is not None
    return show(found.deck, "length", units)
