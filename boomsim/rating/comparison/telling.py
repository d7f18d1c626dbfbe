"""The comparison and its explanation in sentences, with units."""

from boomsim.rating.comparison.compare import Comparison
from boomsim.rating.comparison.explain import Account, Difference
from boomsim.rating.comparison.leads import Crossover
from boomsim.rating.comparison.shares import whole_percents
from boomsim.rating.limits.kind import STABILITY
from boomsim.rating.strategies import label
from boomsim.units import show, show_rated

WORTH_SAYING = 5.0
"""Smaller shares of a difference are summed up as "the rest" [kg]."""


TOLD = {
    "load": "the load",
    "own weight": "the boom's own weight",
    "hoist rope": "the hoist rope along the boom",
    "wind": "the wind",
    "cylinder lug": "the luffing cylinder's push along the boom",
}
"""What bends a boom, in a sentence."""


def tell_crossover(comparison: Comparison, crossover: Crossover, *, units: str) -> str:
    """One sentence on where the best configuration changes.

    Parameters
    ----------
    comparison : Comparison
    crossover : Crossover
        Of the comparison
    units : str
        "metric" or "us"

    Returns
    -------
    str
    """
    near = label(comparison.configurations.extension[crossover.before])
    far = label(comparison.configurations.extension[crossover.after])
    return (
        f"At a radius of {show(crossover.radius, 'length', units)} the lead passes from ({near}) "
        f"to ({far}); both carry {show_rated(crossover.capacity, units)} there."
    )


def tell_account(extension_label: str, account: Account, *, units: str) -> str:
    """One sentence on what limits a configuration, and how.

    Parameters
    ----------
    extension_label : str
    account : Account
    units : str

    Returns
    -------
    str
    """

    def mass(value: float) -> str:
        return show(value, "mass", units)

    said = f"({extension_label}) carries {show_rated(account.capacity, units)}"
    if account.limit.set_by == STABILITY:
        return f"{said}; it would tip first."
    said += f"; {account.limit.words} comes first"
    if account.structure_takes < float("inf"):
        said += f", {mass(account.structure_takes)} before the stability limit"
    gave = account.gave_way
    if gave is None or gave.place is None or gave.moment is None:
        return said + "."
    said += (
        f". {show(gave.place, 'length', units)} from that section's tail the use is "
        f"{_summed(whole_percents(gave.components))}"
    )
    causes = [f"{TOLD[name]} {share} %" for name, share in whole_percents(gave.causes).items()]
    if not causes:
        return said + "."
    listed = " and ".join([", ".join(causes[:-1]), causes[-1]] if causes[1:] else causes)
    return f"{said}; of the bending moment there: {listed}."


def _summed(shares: dict[str, int]) -> str:
    """Write a sum of percents: "axial force 8 % + bending 92 %"."""
    (name, first), *rest = shares.items()
    more = (f" {'+' if share > 0 else '-'} {name} {abs(share)} %" for name, share in rest)
    return f"{name} {first} %" + "".join(more)


def tell_difference(
    first_label: str, second_label: str, difference: Difference, *, units: str
) -> list[str]:
    """Why the first carries more or less than the second, in sentences whose numbers add up.

    Parameters
    ----------
    first_label, second_label : str
    difference : Difference
    units : str

    Returns
    -------
    list of str
    """

    def mass(value: float) -> str:
        return show(abs(value), "mass", units)

    more = "more" if difference.total >= 0.0 else "less"
    told = [
        f"At {show(difference.radius, 'length', units)} ({first_label}) carries "
        f"{mass(difference.total)} {more} than ({second_label})."
    ]
    if not difference.by_part:
        told.append("No load can tip the crane at this radius, so strength alone decides.")
        return told
    shifts = {n: v for n, v in difference.by_part.items() if abs(v) >= WORTH_SAYING}
    shares = [f"{name} {'+' if v > 0 else '-'}{mass(v)}" for name, v in shifts.items()]
    told.append(
        "Where each part's weight lies is worth, about the tipping line: "
        + (", ".join(shares) if shares else "nothing to speak of")
        + f"; in all {_signed(sum(difference.by_part.values()), units)}."
    )
    first, second = difference.by_structure
    if abs(first) >= WORTH_SAYING or abs(second) >= WORTH_SAYING:
        told.append(
            f"Strength takes {mass(first)} from the first and {mass(second)} from the second: "
            f"{_signed(first + second, units)}."
        )
    return told


def _signed(value: float, units: str) -> str:
    return f"{'+' if value >= 0 else '-'}{show(abs(value), 'mass', units)}"
