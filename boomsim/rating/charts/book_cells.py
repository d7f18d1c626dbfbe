"""All cells of a chart book: booms that bend alike are bent once, and processes share the work."""

from collections.abc import Callable, Hashable, Iterator, Sequence
from typing import NamedTuple

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate_each
from boomsim.rating.charts.rated_cells import Cells
from boomsim.rating.charts.rows_and_rounding import checked_radii
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.lift_response import bends_alike
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import Configurations

TOGETHER = 32
"""Configurations rated together; so many fit a processor's cache."""

KEPT = ("capacity", "governing", "tipping_load", "angle", "valid")
"""What the cells of a book keep of a rating."""


Found = dict[str, np.ndarray]
"""Of one set-up: arrays by the names in `KEPT`, or the attributes of an :class:`EmptyHook`."""


class Asked(NamedTuple):
    """What every piece of the work is part of."""

    setups: tuple[Setup, ...]
    extension: Array
    radii: Array


class Piece(NamedTuple):
    """Set-ups, by number, to rate some configurations in; or whose empty hook to lower."""

    setups: tuple[int, ...]
    rows: np.ndarray | None


def cells_of_book(
    setups: Sequence[Setup],
    *,
    configurations: Configurations,
    radii: Array,
    processes: int = 1,
    progress: Callable[[int, int], None] | None = None,
) -> list[Cells]:
    """Rate configurations at radii in every set-up, each as :func:`rate_cells` does.

    Parameters
    ----------
    setups : sequence of Setup
        Of one machine
    radii : array_like, shape (rows,)
        [m]
    processes : int
        That share the work
    progress : callable, optional
        Told how many of how many pieces of the work are done

    Raises
    ------
    ValueError
        If a radius is no number above zero.
    """
    asked = Asked(tuple(setups), configurations.extension, checked_radii(radii))
    shape = (len(asked.extension), len(asked.radii))
    rated, hooks = [_blank(shape) for _ in setups], list[EmptyHook | None](None for _ in setups)
    pieces = _pieces(asked, length=configurations.length)
    if progress:
        progress(0, len(pieces))
    for done, (piece, found) in enumerate(_done(asked, pieces, processes=processes), start=1):
        for number, one in zip(piece.setups, found, strict=True):
            if piece.rows is None:
                hooks[number] = EmptyHook(setup=setups[number], **one)
            else:
                for name in KEPT:
                    rated[number][name][piece.rows] = one[name]
        if progress:
            progress(done, len(pieces))
    return [
        Cells(
            setup=setup,
            configurations=configurations,
            radii=asked.radii,
            limits=limits_of(setup.machine, kinds=setup.kinds),
            capacity=cells["capacity"],
            governing=cells["governing"],
            tipping_load=cells["tipping_load"],
            angle=cells["angle"],
            within_range=cells["valid"],
            hanging=hanging_mass(setup, length=configurations.length, angle=cells["angle"]),
            empty_hook=hook,
        )
        for setup, cells, hook in zip(setups, rated, hooks, strict=True)
        if hook is not None
    ]


def _blank(shape: tuple[int, int]) -> Found:
    kinds = {"governing": -1, "valid": False}
    return {name: np.full(shape, kinds.get(name, np.nan)) for name in KEPT}


def _pieces(asked: Asked, *, length: Array) -> list[Piece]:
    """Cut the work up: neighbours in length reach the same radii, and are rated together."""
    order = np.argsort(length, kind="stable")
    batches = np.array_split(order, -(-len(order) // TOGETHER))
    return [
        *(Piece(alike, rows) for alike in _grouped(asked.setups, bends_alike) for rows in batches),
        *(Piece(alike, None) for alike in _grouped(asked.setups, _stands_alike)),
    ]


def _grouped(
    setups: Sequence[Setup], key: Callable[[Setup], Hashable]
) -> Iterator[tuple[int, ...]]:
    groups: dict[Hashable, list[int]] = {}
    for number, setup in enumerate(setups):
        groups.setdefault(key(setup), []).append(number)
    return map(tuple, groups.values())


def _stands_alike(setup: Setup) -> Hashable:
    """What decides how far down a crane can lower its empty hook: no rule has a part in it."""
    support, counterweight = setup.support.name, setup.counterweight.name
    return support, counterweight, setup.slew.tobytes(), setup.parts, setup.disturbances


def _do(asked: Asked, piece: Piece) -> list[Found]:
    setups = [asked.setups[number] for number in piece.setups]
    if piece.rows is None:
        hook = empty_hook(setups[0], extension=asked.extension)
        return [{name: getattr(hook, name) for name in ("load", "angle", "radius")}] * len(setups)
    each = rate_each(setups, extension=asked.extension[piece.rows], radius=asked.radii)
    return [{name: getattr(rating, name) for name in KEPT} for rating in each]


def _done(
    asked: Asked, pieces: list[Piece], *, processes: int
) -> Iterator[tuple[Piece, list[Found]]]:
    """Do pieces of the work, and hand each over when it is done."""
    if processes < 2 or len(pieces) < 2 * processes:
        yield from ((piece, _do(asked, piece)) for piece in pieces)
        return
    # Where there are no processes, as in a browser, this module must still be importable.
    from multiprocessing import get_context

    with get_context().Pool(processes, _begin, (asked,)) as pool:
        yield from pool.imap_unordered(_do_here, pieces)


_here: Asked
"""In a process that shares the work: all of it, handed over once."""


def _begin(asked: Asked) -> None:
    """Leave it to the process that shares the work out to say what happens when it is stopped."""
    import signal

    global _here
    _here = asked
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, signal.SIG_DFL)


def _do_here(piece: Piece) -> tuple[Piece, list[Found]]:
    return piece, _do(_here, piece)
