"""From what is asked to what is found: cells in blocks, each iterated to its equilibrium."""

from itertools import pairwise
from typing import Any

import numpy as np

from boomsim.mechanics.boom.fixed_point_iteration import Sweeps, relax
from boomsim.mechanics.boom.load_cases import AtStations, Lifts
from boomsim.mechanics.boom.luffing_plane import LuffingPlane
from boomsim.mechanics.boom.side_plane import Sideways
from boomsim.mechanics.boom.starting_guess import Between, between
from boomsim.mechanics.geometry import Array

LARGEST_ROTATION = 0.5
"""A boom bent further than this has long left the model, and the series for its sine [rad]."""

MOST_AT_ONCE = 4096
"""Cells solved together: what is kept of their stations fills some 10 MB."""

Found = dict[str, Any]
"""What a cell has one of: fields of :class:`boomsim.mechanics.boom.boom_state.State` by name."""

BESIDE = ("head_left", "head_moment_side", "head_torsion")
"""Results that are zero without side load."""


def solve(
    lifts: Lifts, *, start: Array | None = None, start_side: Array | None = None
) -> tuple[AtStations, Found]:
    """Solve block by block, each in room of its own, and put them side by side.

    Parameters
    ----------
    start, start_side : ndarray, optional
        Rotations to start from, in the luffing plane and sideways, shape (configurations, K,
        cells) [rad]

    Returns
    -------
    AtStations, dict
        What is found at stations, and what each cell has one of; NaN where there is no solution
    """
    configurations, cells = lifts.load.shape
    blocks = _blocks(cells, most=max(1, MOST_AT_ONCE // configurations))
    with np.errstate(all="ignore"):
        near = between(lifts) if start is None else None
        if len(blocks) == 1:
            return _solve(lifts, start, start_side, near)
        whole, pieces = AtStations.empty(lifts), []
        for block in blocks:
            here = None if start is None else start[:, :, block]
            aside = None if start_side is None else start_side[:, :, block]
            kept, found = _solve(lifts.some(block), here, aside, near)
            whole.put(block, kept)
            pieces.append(found)
            del kept  # The next block takes this memory while it is warm.
        return whole, _joined(pieces)


def _blocks(cells: int, *, most: int) -> list[slice]:
    """Cut cells into blocks as even as can be."""
    count = max(1, -(-cells // most))
    ends = [cells * k // count for k in range(count + 1)]
    return [slice(*pair) for pair in pairwise(ends)]


def _joined(pieces: list[Found]) -> Found:
    """Put cells that were solved apart side by side."""
    whole = {
        name: np.concatenate([piece[name] for piece in pieces], axis=-1)
        for name in pieces[0]
        if name != "sweeps"
    }
    return {**whole, "sweeps": max(piece["sweeps"] for piece in pieces)}


def _solve(
    lifts: Lifts, start: Array | None, start_side: Array | None, near: Between | None
) -> tuple[AtStations, Found]:
    """Start where told, else between solved states, else from the first order; then sweep."""
    kept = AtStations.empty(lifts)
    plane = LuffingPlane(lifts, kept)
    if near is not None:
        near.start(lifts, out=kept.rotation)
    else:
        kept.rotation[...] = plane.start() if start is None else start
    bent = relax(plane.turned, start=kept.rotation)
    good, found = _believed(bent) & plane.reaches, _in_plane(plane)
    if lifts.is_pushed_sideways:
        side = Sideways(lifts, plane, kept)
        kept.rotation_side[...] = 0.0 if start_side is None else start_side
        good &= _believed(relax(side.turned, start=kept.rotation_side))
        found |= _sideways(side)
    if not good.all():
        kept.forget(~good)
        found = {name: _where(good, values) for name, values in found.items()}
    known = {"load": lifts.load, "line_pull": plane.pull, "sweeps": bent.count}
    straight = dict.fromkeys(BESIDE, np.zeros_like(lifts.load))
    return kept, {**straight, **found, **known, "converged": good}


def _believed(bent: Sweeps) -> np.typing.NDArray[np.bool_]:
    """True where rotations have converged to what the model is made for."""
    straight: np.typing.NDArray[np.bool_] = bent.squares < LARGEST_ROTATION**2
    if not straight.all():
        straight = np.max(np.abs(bent.rotation), axis=1) < LARGEST_ROTATION
    return bent.converged & straight


def _where(good: np.typing.NDArray[np.bool_], values: Array) -> Array:
    """Leave no number where there is no solution; cells are the last axis."""
    kept = good if values.ndim == good.ndim else good[:, None]
    return np.where(kept, values, np.nan)


def _in_plane(plane: LuffingPlane) -> dict[str, Array]:
    head, end, cylinder = plane.last.head, plane.last.end, plane.last.cylinder
    return {
        "angle": plane.angle,
        "strain": plane.stretching.strain,
        "head_along": head.sheave[0],
        "head_above": head.sheave[1],
        "head_moment": end.moment,
        "lug_moment": cylinder.moment,
        "cylinder": plane.cylinder,
        "lug_along": cylinder.along,
        "lug_above": plane.lug_above,
    }


def _sideways(side: Sideways) -> dict[str, Array]:
    return dict(zip(BESIDE, (side.head_left, side.head_moment, side.head_torsion), strict=True))
