"""The same question asked of a crane that is set up a little differently."""

from dataclasses import replace

from boomsim.machine.model import Disturbances, Support, TurningMass
from boomsim.rating.setup import Setup, set_up


def with_sector(setup: Setup, *, slew: float | str) -> Setup:
    """Ask at another slew angle or in another sector.

    Parameters
    ----------
    slew : float or str
        [rad], or "around" or "rear"
    """
    # A sector's slew angles follow from the supports in use, which need not be the machine's usual.
    alone = replace(setup.machine, supports=(setup.support,))
    other = set_up(alone, slew=slew, disturbances=setup.disturbances)
    return replace(setup, slew=other.slew, sector=other.sector)


def same_sector(setup: Setup) -> Setup:
    """Work the sector's slew angles out again, after something that they depend on has changed.

    Returns
    -------
    Setup
        A single slew angle stays
    """
    if len(setup.slew) == 1:
        return setup
    return with_sector(setup, slew="rear" if setup.sector == "over the rear" else "around")


def with_support(setup: Setup, support: Support) -> Setup:
    """Ask of the crane on other supports, in the same sector.

    Returns
    -------
    Setup
        A single slew angle stays; a sector follows the supports
    """
    return same_sector(replace(setup, support=support))


def with_counterweight(setup: Setup, counterweight: TurningMass) -> Setup:
    """Ask of the crane with another counterweight."""
    return replace(setup, counterweight=counterweight)


def with_disturbances(setup: Setup, **changes: float | bool) -> Setup:
    """Ask of the crane with some disturbances set; the others stay.

    Parameters
    ----------
    **changes : float or bool
        Fields of :class:`boomsim.machine.model.Disturbances`
    """
    made: Disturbances = replace(setup.disturbances, **changes)  # type: ignore[arg-type]
    # What pushes across the boom tips it worst at a slew angle that is not square to a line.
    return same_sector(replace(setup, disturbances=made))
