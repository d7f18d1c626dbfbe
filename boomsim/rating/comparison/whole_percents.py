"""Shares in whole percents that a reader can add up."""

from collections.abc import Mapping
from math import floor


def whole_percents(parts: Mapping[str, float]) -> dict[str, int]:
    """Write parts of a sum as whole percents of it that add up to 100.

    Each is rounded down, and what is then missing goes to those that lost most by it.

    Returns
    -------
    dict of str to int
        In the same order, without those of 0 %; none where the sum is nothing

    Examples
    --------
    >>> whole_percents({"load": 98.6, "own weight": 2.8, "hoist rope": -1.4})
    {'load': 99, 'own weight': 3, 'hoist rope': -2}
    """
    whole = sum(parts.values())
    if not whole:
        return {}
    exact = {name: 100.0 * part / whole for name, part in parts.items()}
    shown = {name: floor(share) for name, share in exact.items()}
    losers = sorted(exact, key=lambda name: shown[name] - exact[name])
    for name in losers[: 100 - sum(shown.values())]:
        shown[name] += 1
    return {name: share for name, share in shown.items() if share}
