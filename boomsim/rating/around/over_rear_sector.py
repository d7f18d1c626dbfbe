"""All around the crane and over the rear, side by side, and why they differ: the masses."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.around.centres_of_gravity import GROUPS
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.comparison.difference_account import Account, account
from boomsim.rating.empty_hook.less_than_the_hook import under_hook
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_sector


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Sectors:
    """One configuration all around the crane and over the rear, side by side.

    Attributes
    ----------
    extension : ndarray, shape (moving sections,)
    radius : ndarray, shape (radii,)
        [m]
    around, rear : Rating
        Arrays of shape (1, radii)
    """

    extension: Array
    radius: Array
    around: Rating
    rear: Rating

    @property
    def less(self) -> tuple[np.ndarray, np.ndarray]:
        """Where less is rated than hangs there already, all around and over the rear, (radii,)."""
        return under_hook(self.around)[0], under_hook(self.rear)[0]

    @property
    def gain(self) -> Array:
        """Rated over the rear less rated all around, shape (radii,) [kg]."""
        return np.asarray(self.rear.capacity[0] - self.around.capacity[0])


def sectors(setup: Setup, *, extension: Array, radius: Array) -> Sectors:
    """Rate one configuration all around the crane and over the rear.

    Parameters
    ----------
    setup : Setup
    extension : ndarray, shape (moving sections,)
        [1]
    radius : ndarray, shape (radii,)
        [m]
    """
    around_it, over = (
        rate(with_sector(setup, slew=sector), extension=extension, radius=radius)
        for sector in ("around", "rear")
    )
    return Sectors(
        extension=around_it.boom.layout.extension[0],
        radius=around_it.radius[0],
        around=around_it,
        rear=over,
    )


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Reason:
    """Why one sector rates as it does: what holds the crane down, and what the load turns.

    Attributes
    ----------
    slew : float
        Governing direction [rad]
    lever : float
        Of the load beyond the tipping line [m]
    holds, parts : dict of str to float
        Moment of each group of masses, and of each mass, about the tipping line, righting
        positive [N m]
    mass : dict of str to float
        Of each mass [kg]
    stability : float
        What the stability rule alone allows [kg]
    capacity : float
        [kg]
    """

    slew: float
    lever: float
    holds: dict[str, float]
    parts: dict[str, float]
    mass: dict[str, float]
    stability: float
    capacity: float


def reasons(setup: Setup, *, extension: Array, radius: float) -> tuple[Reason, Reason] | None:
    """Set the moments all around against those over the rear.

    Parameters
    ----------
    setup : Setup
    extension : ndarray, shape (moving sections,)
        [1]
    radius : float
        [m]

    Returns
    -------
    tuple of Reason, or None
        All around, over the rear; None out of reach
    """
    found = []
    for sector in ("around", "rear"):
        chosen = with_sector(setup, slew=sector)
        one = account(chosen, extension=extension, radius=radius)
        if one is None:
            return None
        found.append(_reason(chosen, one))
    return found[0], found[1]


def _reason(setup: Setup, found: Account) -> Reason:
    holds = dict.fromkeys(GROUPS, 0.0)
    for name, moment in found.parts.items():
        group = group_of(setup, name)
        holds[group] = holds.get(group, 0.0) + moment
    return Reason(
        slew=found.slew,
        lever=found.lever,
        holds=holds,
        parts=found.parts,
        mass=found.mass,
        stability=found.stability,
        capacity=found.capacity,
    )


def group_of(setup: Setup, name: str) -> str:
    """Which group of masses a part belongs to.

    Parameters
    ----------
    setup : Setup
    name : str
        As in :class:`boomsim.mechanics.stability.masses.Masses`

    Returns
    -------
    str
        One of `GROUPS`, or the name itself for what is no mass
    """
    if name == setup.counterweight.name:
        return "counterweight"
    if name in {part.name for part in setup.machine.superstructure}:
        return "superstructure"
    if name in {part.name for part in setup.machine.carrier}:
        return "carrier"
    boom = ("base section", "section ", "head", "cylinder")
    return "boom" if name.startswith(boom) else name
