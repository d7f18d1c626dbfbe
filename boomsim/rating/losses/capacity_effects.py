"""What can eat capacity, and the setups that each of it makes out of one."""

from dataclasses import dataclass, fields, replace

import numpy as np

from boomsim.machine.model import Machine, TurningMass
from boomsim.rating.losses.short_outrigger import short_corners, shorter_support
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_counterweight, with_disturbances
from boomsim.rating.strategies import range_of_length
from boomsim.units import FOOT, display, outside


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """How much of each effect.

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
    farther : float
        [m]
    """

    lean: float = float(np.radians(1.0))
    side_pull: float = 0.02
    wind: float = 10.0
    load_area: float = 1.2e-3
    hoist_speed: float = 0.3
    soft: float = 0.1
    farther: float = 1.0


USUAL = Amounts()
"""One degree, two percent, a fresh breeze's gusts, a tenth of the firm ground, one metre."""


FARTHER = {"metric": USUAL.farther, "us": 3.0 * float(FOOT)}
"""One metre, three feet [m]."""


def usual_amounts(machine: Machine, *, units: str = "metric") -> Amounts:
    """Take the usual amounts; on a tabletop a metre is past every boom, and a tenth will do."""
    unit = display("length", units).factor
    least = min(FARTHER[units], range_of_length(machine.boom)[1] / 10.0)
    return replace(USUAL, farther=unit * float(f"{least / unit:.1g}"))


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
class AskedEffect:
    """An effect as it is asked for: the setup and the radius without it, changed.

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
        What each of them is counted against; empty: the setup without the effect
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

    Raises
    ------
    ValueError
        If one is outside its range.
    """
    for field in fields(Amounts):
        value = getattr(amounts, field.name)
        least, most, quantity = BOUNDS[field.name]
        if not least <= value <= most:
            name = field.name.replace("_", "-")
            raise ValueError(
                f"--amount {name}: {outside(value, least, most, quantity)}. Give a value inside."
            )


def asked_effects(setup: Setup, amounts: Amounts) -> list[AskedEffect]:
    """List the effects that come before soft ground, which needs the load that it carries.

    Returns
    -------
    list of AskedEffect
        What the setup already has of a disturbance is added to
    """
    calm = setup.disturbances

    def disturbed(
        name: str, words: str, amount: float, quantity: str, **changes: float
    ) -> AskedEffect:
        added = {key: getattr(calm, key) + value for key, value in changes.items()}
        made = with_disturbances(setup, **added)
        return AskedEffect(name=name, words=words, amount=amount, quantity=quantity, setups=(made,))

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
        AskedEffect(
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


def last_effects(setup: Setup, amounts: Amounts) -> list[AskedEffect]:
    """List the effects that end a table: farther out, and several at once."""
    calm = setup.disturbances
    together = with_disturbances(
        setup,
        lean=calm.lean + amounts.lean,
        side_pull=calm.side_pull + amounts.side_pull,
        wind_speed=calm.wind_speed + amounts.wind,
        load_area=calm.load_area + amounts.load_area,
        hoist_speed=calm.hoist_speed + amounts.hoist_speed,
    )
    return [
        AskedEffect(
            name="farther",
            words="radius longer by",
            amount=amounts.farther,
            quantity="length",
            setups=(setup,),
            farther=amounts.farther,
        ),
        AskedEffect(
            name="together",
            words="downhill, side pull, wind and picking up fast at once",
            amount=None,
            quantity=None,
            setups=(together,),
        ),
    ]


def _lighter(setup: Setup) -> list[AskedEffect]:
    """Hang the next lighter counterweight by mistake."""
    usual = setup.counterweight
    lighter = [c for c in setup.machine.counterweights if c.mass < usual.mass]
    if not lighter:
        return []
    wrong: TurningMass = max(lighter, key=lambda c: c.mass)
    return [
        AskedEffect(
            name="counterweight",
            words="counterweight short by",
            amount=usual.mass - wrong.mass,
            quantity="mass",
            setups=(with_counterweight(setup, wrong),),
        )
    ]


def _short(setup: Setup) -> list[AskedEffect]:
    """Set one outrigger as short as on the next shorter way to stand; the worst corner counts."""
    shorter = shorter_support(setup)
    if shorter is None:
        return []
    trials = short_corners(setup, shorter=shorter)
    return [
        AskedEffect(
            name="outrigger",
            words="one outrigger short by",
            amount=max(trial.moved for trial in trials),
            quantity="length",
            setups=tuple(trial.after for trial in trials),
            against=tuple(trial.before for trial in trials),
            corners=tuple(trial.corner for trial in trials),
        )
    ]
