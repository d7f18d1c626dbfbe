"""What a shape of section must bring: how it is read from a file, and its way back."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from boomsim.machine.file_tables import Table
from boomsim.machine.model import Profile


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Shape:
    """One way to give a section's shape.

    Attributes
    ----------
    name : str
        Key in a machine file, and `kind` of the profiles that it makes
    about : str
        What it is, for messages and comments
    table : Table
        Its sizes: how each is read, and the function that makes a profile of them
    sizes : callable
        Sizes that make exactly this profile; None if none do
    """

    name: str
    about: str
    table: Table[Profile]
    sizes: Callable[[Profile], dict[str, Any] | None]


def least_rounded(
    profile: Profile,
    *,
    make: Callable[..., Profile],
    sizes: Callable[[int], dict[str, float]],
) -> dict[str, float] | None:
    """Find sizes that make exactly this profile, with as few decimals as will do.

    Parameters
    ----------
    make : callable
        Profile from sizes
    sizes : callable
        Sizes rounded to so many decimals [m]

    Returns
    -------
    dict of str to float, or None
        [m]
    """
    tries = (sizes(digits) for digits in range(4, 17))
    return next((one for one in tries if make(**one) == profile), None)
