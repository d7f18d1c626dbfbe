"""Some of the configurations that were condensed together, without condensing them anew."""

from dataclasses import fields, replace
from typing import Any

import numpy as np

from boomsim.mechanics.boom.condense import Condensed

_PARTS = ("layout", "stations", "up", "side", "stretch")
_OF_ALL = ("machine", "stiffness", "soft")
"""What has no axis of configurations."""


def pick(boom: Condensed, rows: np.ndarray) -> Condensed:
    """Take some configurations out of many.

    Parameters
    ----------
    rows : ndarray of int, shape (picked,)
        Which [1]

    Returns
    -------
    Condensed
        In the order of `rows`
    """
    parts = {name: _taken(getattr(boom, name), rows) for name in _PARTS}
    taken: Condensed = replace(_taken(boom, rows, but=_PARTS), **parts)
    return taken


def _taken(whole: Any, rows: np.ndarray, *, but: tuple[str, ...] = ()) -> Any:
    names = [f.name for f in fields(whole) if f.name not in (*_OF_ALL, *but)]
    return replace(whole, **{name: getattr(whole, name)[rows] for name in names})
