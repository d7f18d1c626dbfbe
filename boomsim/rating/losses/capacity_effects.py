"""What can eat capacity, and the setups that each of it makes out of one."""

from dataclasses import dataclass, fields

import numpy as np

from boomsim.machine.model import TurningMass
from boomsim.rating.losses.short_outrigger import short_corners, shorter_support
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_counterweight, with_disturbances
from boomsim.rating.strategies import range_of_length
from boomsim.units import outside


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """How much of each taker.

    Attributes
    ----------
    lean : float
        Ground out of level, ahead or across [rad]
    side_pull : float
        Share of the load [1]
    wind : float
        Gust from behind or across [m/s]
    load_area : float
        Wind area of the load for each kilogram of it [m2/kg]
    hoist_speed : float
        [m/s]
    soft : float
        Stiffness of the floats on the boom's side over their usual stiffness [1]
    farther : float or None
        None: one metre, or a tenth of the longest boom where that is less [m]
    """

    lean: float = float(np.radians(1.0))
    side_pull: float = 0.02
    wind: float = 10.0
    load_area: float = 1.2e-3
    hoist_speed: float = 0.3
    soft: float = 0.1
    farther: float | None = None


USUAL = Amounts()
"""One degree, two percent, a fresh breeze's gusts, a tenth of the firm ground."""

BOUNDS = {
    "lean": (0.0, float(np.radians(7.0)), "angle"),
    "side_pull": (0.0, 0.3, "share"),
    "wind": (0.0, 40.0, "speed"),
    "load_area": (0.0, 0.1, "area_per_mass"),
    "hoist_speed": (0.0, 3.0, "speed"),
    "soft": (0.01, 1.0, "share"),
    "farther": (0.0, 100.0, "length"),
}
"""Least, most, and what is measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taking:
    """A taker as it is asked for: the setup and the radius without it, changed.

    Attributes
    ----------
    name : str
        Stable key
    words : str
        How it reads, without its amount
    amount : float or None
        [SI unit of the quantity]
    quantity : str or None
        In `boomsim.units.QUANTITIES`
    setups : tuple of Setup
        The one that takes most counts
    against : tuple of Setup
        What each of them is counted against; empty: the setup without the taker
    corners : tuple of str
        Which support each of them is about; empty where it is about none
    farther : float
        Added to the radius [m]
    """

    name: str
    words: str
    amount: float | None
    quantity: str | None
    setups: tuple[Setup, ...]
    against: tuple[Setup, ...] = ()
    corners: tuple[str, ...] = ()
    farther: float = 0.0


def check_amounts(amounts: Amounts) -> None:
    """Refuse an amount that means nothing here.

    Parameters
    ----------
    amounts : Amounts

    Raises
    ------
    ValueError
        If one is outside its range.
    """
    for field in fields(Amounts):
        value = getattr(amounts, field.name)
        least, most, quantity = BOUNDS[field.name]
        if value is None:
            continue
        if not least <= value <= most:
            name = field.name.replace("_", "-")
            raise ValueError(
                f"--amount {name}: {outside(value, least, most, quantity)}. Give a value inside."
            )


def takings(setup: Setup, amounts: Amounts) -> list[Taking]:
    """List the takers that come before soft ground, which needs the load that it carries.

    Parameters
    ----------
    setup : Setup
    amounts : Amounts

    Returns
    -------
    list of Taking
        What the setup already has of a disturbance is added to
    """
    calm = setup.disturbances

    def disturbed(name: str, words: str, amount: float, quantity: str, **changes: float) -> Taking:
        added = {key: getattr(calm, key) + value for key, value in changes.items()}
        made = with_disturbances(setup, **added)
        return Taking(name=name, words=words, amount=amount, quantity=quantity, setups=(made,))

    gust, area = amounts.wind, amounts.load_area
    across = with_disturbances(
        setup, wind_speed=calm.wind_speed + gust, load_area=calm.load_area + area, wind_across=True
    )
    return [
        disturbed("lean", "downhill ahead", amounts.lean, "angle", lean=amounts.lean),
        disturbed(
            "lean across", "downhill across", amounts.lean, "angle", lean_across=amounts.lean
        ),
        disturbed(
            "side pull", "side pull", amounts.side_pull, "share", side_pull=amounts.side_pull
        ),
        disturbed("wind", "wind from behind", gust, "speed", wind_speed=gust, load_area=area),
        Taking(
            name="wind across",
            words="wind across",
            amount=gust,
            quantity="speed",
            setups=(across,),
        ),
        disturbed(
            "hoisting",
            f"picking up fast, hoist class {setup.disturbances.hoist_class}, at",
            amounts.hoist_speed,
            "speed",
            hoist_speed=amounts.hoist_speed,
        ),
        *_lighter(setup),
        *_short(setup),
    ]


def last_takings(setup: Setup, amounts: Amounts) -> list[Taking]:
    """List the takers that end a table: farther out, and several at once.

    Parameters
    ----------
    setup : Setup
    amounts : Amounts

    Returns
    -------
    list of Taking
    """
    calm = setup.disturbances
    together = with_disturbances(
        setup,
        lean=calm.lean + amounts.lean,
        side_pull=calm.side_pull + amounts.side_pull,
        wind_speed=calm.wind_speed + amounts.wind,
        load_area=calm.load_area + amounts.load_area,
        hoist_speed=calm.hoist_speed + amounts.hoist_speed,
    )
    farther = _usual_step(setup) if amounts.farther is None else amounts.farther
    return [
        Taking(
            name="farther",
            words="radius longer by",
            amount=farther,
            quantity="length",
            setups=(setup,),
            farther=farther,
        ),
        Taking(
            name="together",
            words="downhill, side pull, wind and picking up fast at once",
            amount=None,
            quantity=None,
            setups=(together,),
        ),
    ]


def _usual_step(setup: Setup) -> float:
    """How much farther out: a metre, but on a tabletop a metre is past every boom [m]."""
    return float(f"{min(1.0, range_of_length(setup.machine.boom)[1] / 10.0):.1g}")


def _lighter(setup: Setup) -> list[Taking]:
    """Hang the next lighter counterweight by mistake."""
    usual = setup.counterweight
    lighter = [c for c in setup.machine.counterweights if c.mass < usual.mass]
    if not lighter:
        return []
    wrong: TurningMass = max(lighter, key=lambda c: c.mass)
    return [
        Taking(
            name="counterweight",
            words="counterweight short by",
            amount=usual.mass - wrong.mass,
            quantity="mass",
            setups=(with_counterweight(setup, wrong),),
        )
    ]


def _short(setup: Setup) -> list[Taking]:
    """Set one outrigger as short as on the next shorter way to stand; the worst corner counts."""
    shorter = shorter_support(setup)
    if shorter is None:
        return []
    trials = short_corners(setup, shorter=shorter)
    return [
        Taking(
            name="outrigger",
            words="one outrigger short by",
            amount=max(trial.moved for trial in trials),
            quantity="length",
            setups=tuple(trial.after for trial in trials),
            against=tuple(trial.before for trial in trials),
            corners=tuple(trial.corner for trial in trials),
        )
    ]
