"""An outrigger set short: the corner that gives way is the one that it stands at.

All around, the least rated load may be over another side altogether, and it then looks as if a
short outrigger took nothing. So the crane is rated before and after with its boom square to the
tipping lines that run to the short jack, whatever the sector that was asked for.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.machine.model import Support
from boomsim.machine.part_names import support_names
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_sector, with_support


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ShortCorner:
    """One outrigger set short, the boom square to one tipping line that it moves.

    Attributes
    ----------
    before, after : Setup
        With all outriggers out and with this one short, at the same slew angle
    corner : str
        Which outrigger
    moved : float
        How far short [m]
    """

    before: Setup
    after: Setup
    corner: str
    moved: float


def short_corners(setup: Setup, *, shorter: Support) -> list[ShortCorner]:
    """Set each outrigger short in turn, and turn the boom square to each line that moves.

    Parameters
    ----------
    shorter : Support
        As short as on this one

    Returns
    -------
    list of ShortCorner
        Those over which the crane stands narrower come first
    """
    used, names = setup.support, support_names(setup.support)
    found = []
    for which, corner in enumerate(names):
        short = short_outrigger(used, shorter=shorter, which=which)
        moved = float(np.hypot(*np.subtract(short.points[which], used.points[which])))
        for slew in moved_directions(used, short):
            before = with_sector(setup, slew=slew)
            after = with_support(before, short)
            found.append(ShortCorner(before=before, after=after, corner=corner, moved=moved))
    return sorted(found, key=_base)


def _base(one: ShortCorner) -> float:
    """How far the polygon reaches in the boom's direction, over what it did: 1 as before."""
    ahead = np.array([np.cos(one.before.slew[0]), np.sin(one.before.slew[0])])
    had, has = (np.array(s.support.points) @ ahead for s in (one.before, one.after))
    return float(np.round(has.max() / had.max(), 9))


def moved_directions(used: Support, short: Support) -> list[float]:
    """Directions square to the tipping lines that are not what they were.

    Returns
    -------
    list of float
        Slew angles: of the two lines that meet at the short jack, or of the one that passes it
        where it no longer is a corner [rad]
    """
    old, new = tipping_lines(used), tipping_lines(short)
    kept = {(*start, *end) for start, end in zip(old.start, old.end, strict=True)}
    square = np.arctan2(new.normal[:, 1], new.normal[:, 0])
    pairs = zip(new.start, new.end, square, strict=True)
    return [float(slew) for start, end, slew in pairs if (*start, *end) not in kept]


def shorter_support(setup: Setup) -> Support | None:
    """Find the widest way to stand that is narrower than the one in use, on as many outriggers."""
    used = setup.support

    def spread(support: Support) -> float:
        return sum(abs(y) for _, y in support.points)

    narrower = [
        s
        for s in setup.machine.supports
        if s.kind == used.kind == "outriggers"
        and len(s.points) == len(used.points)
        and spread(s) < spread(used)
    ]
    return max(narrower, key=spread, default=None)


def short_outrigger(support: Support, *, shorter: Support, which: int) -> Support:
    """Set one outrigger as on another support.

    Parameters
    ----------
    which : int
        Index of the outrigger
    """
    point = np.array(support.points[which])
    nearest = min(shorter.points, key=lambda p: float(np.hypot(*(np.array(p) - point))))
    points = tuple(nearest if k == which else p for k, p in enumerate(support.points))
    return replace(support, name=f"{support.name}, one short", points=points)
