"""Inks, patterns and type of the explorer. Nothing is told by colour alone."""

from functools import lru_cache

from boomsim.figures.colours_and_lines import (
    BEND,
    BLUE,
    DARK,
    FAINT,
    GLASS,
    INK,
    LOAD,
    PAPER,
    QUIET,
    STEEL,
    STEPS,
    WHEEL,
)
from boomsim.lab.scene.scene import Look

TYPE = "'Liberation Sans', Arial, Helvetica, sans-serif"
"""Three names of letters of one and the same width."""

LARGE = 1.55
"""Type in projector mode, over that on a desk [1]."""

LEVELS = ((0.5, "calm"), (0.85, "busy"), (1.0005, "full"), (float("inf"), "over"))
"""How much of a limit is used, in four steps told by lightness, hatching and a figure; a rated load
uses one limit fully, to within the search's closeness [1]."""

BOLD = BLUE
"""Ink of stability."""

HATCHES = {
    "calm": "",
    "busy": '<path d="M-2,2 l4,-4 M0,10 l10,-10 M8,12 l4,-4"/>',
    "full": '<path d="M-1,1 l2,-2 M0,5 l5,-5 M4,6 l2,-2"/>',
    "over": '<path d="M0,0 l6,6 M0,6 l6,-6"/>',
}
_PITCH = {"calm": 10, "busy": 10, "full": 5, "over": 6}


def level(utilisation: float) -> str:
    """Name of the step that a utilisation falls in.

    Parameters
    ----------
    utilisation : float
        [1]

    Returns
    -------
    str
        "calm", "busy", "full" or "over"
    """
    return next(name for most, name in LEVELS if not utilisation > most)


def type_scale(look: Look) -> float:
    """How large type is, over that on a desk [1]."""
    return LARGE if look.projector else 1.0


@lru_cache(maxsize=8)
def definitions(large: float, uid: str) -> str:
    """Style sheet and patterns that every picture begins with.

    Parameters
    ----------
    large : float
        Type scale [1]
    uid : str
        Prefix of the patterns' names, so that two pictures on one page do not share them

    Returns
    -------
    str
        SVG
    """
    patterns = "".join(_pattern(name, uid) for name in STEPS)
    return f"<defs><style>{_sheet(large, uid)}</style>{patterns}</defs>"


def _pattern(name: str, uid: str) -> str:
    pitch, ground = _PITCH[name], STEPS[name]
    stroke = PAPER if name == "over" else INK
    return (
        f'<pattern id="{uid}-{name}" width="{pitch}" height="{pitch}" '
        f'patternUnits="userSpaceOnUse"><rect width="{pitch}" height="{pitch}" fill="{ground}"/>'
        f'<g stroke="{stroke}" stroke-width="0.8" stroke-opacity="0.65" fill="none">'
        f"{HATCHES[name]}</g></pattern>"
    )


def _sheet(large: float, uid: str) -> str:
    sizes = {"xs": 10.0, "s": 11.5, "t": 13.0, "h": 14.0, "n": 19.0, "big": 26.0}
    kinds = "".join(
        f".{uid} .{name}{{font-size:{size * large:.1f}px}}" for name, size in sizes.items()
    )
    fills = "".join(f".{uid} .{name}{{fill:url(#{uid}-{name})}}" for name in STEPS)
    rules = {
        "text": f"font-family:{TYPE};fill:{INK}",
        ".xs,.s,.quiet": f"fill:{QUIET}",
        ".h,.n,.big,.b": "font-weight:bold",
        ".n,.big,.num": "font-variant-numeric:tabular-nums",
        ".e": "text-anchor:end",
        ".m": "text-anchor:middle",
        ".halo": f"paint-order:stroke;stroke:{PAPER};stroke-width:3px;stroke-linejoin:round",
        ".panel": f"fill:{PAPER};stroke:{FAINT};stroke-width:1",
        ".thin": f"stroke:{QUIET};stroke-width:0.8;fill:none",
        ".faint": f"stroke:{FAINT};stroke-width:1;fill:none",
        ".ink": f"stroke:{INK};stroke-width:1.2;fill:none",
        ".heavy": f"stroke:{INK};stroke-width:3;fill:none;stroke-linecap:round",
        ".collar": f"stroke:{INK};stroke-width:2.2",
        ".dots": f"stroke:{QUIET};stroke-width:1;fill:none;stroke-dasharray:2 3",
        ".axle": f"stroke:{QUIET};stroke-width:0.9;fill:none;stroke-dasharray:9 3 2 3",
        ".bend": f"stroke:{BEND};stroke-width:1.6;fill:none;stroke-dasharray:6 3",
        ".bend-word": f"fill:{BEND}",
        ".edge": f"stroke:{INK};stroke-width:1.1;stroke-linejoin:round",
        ".hidden": f"stroke:{INK};stroke-width:0.5;fill:none;stroke-dasharray:3 2",
        ".solid": f"fill:{INK}",
        ".paper": f"fill:{PAPER};stroke:{INK};stroke-width:1",
        ".load": f"fill:{LOAD};stroke:{INK};stroke-width:1",
        ".load-word": f"fill:{LOAD};font-weight:bold",
        ".push": f"stroke:{BOLD};stroke-width:1.8;fill:none",
        ".push-head": f"fill:{BOLD}",
        ".push-word,.tips-word": f"fill:{BOLD}",
        ".tips": f"fill:{BOLD}",
        ".trough": f"fill:{PAPER};stroke:{FAINT};stroke-width:1",
        ".first": f"fill:none;stroke:{INK};stroke-width:2.6",
        ".curve-structural": f"stroke:{INK};stroke-width:1.4;fill:none;stroke-dasharray:5 2.5",
        ".curve-stability": f"stroke:{INK};stroke-width:2.6;fill:none",
        ".mine": f"fill:none;stroke:{LOAD};stroke-width:2",
        ".boom": f"stroke:{DARK};fill:none;stroke-opacity:0.75",
        ".caution": f"fill:{QUIET}",
        ".sector": f"fill:{STEEL};stroke:none",
        ".body": f"fill:{STEEL};stroke:{INK};stroke-width:0.8",
        ".dark": f"fill:{DARK};stroke:{INK};stroke-width:0.8",
        ".glass": f"fill:{GLASS};stroke:{INK};stroke-width:0.6",
        ".wheel": f"fill:{WHEEL}",
    }
    listed = "".join(
        ",".join(f".{uid} {one}" for one in names.split(",")) + f"{{{what}}}"
        for names, what in rules.items()
    )
    return kinds + listed + fills
