"""The comparison and its explanation in sentences, with units."""

from boomsim.rating.comparison.comparison_leads import Crossover
from boomsim.rating.comparison.comparison_study import Comparison
from boomsim.rating.comparison.difference_account import Account, Difference
from boomsim.rating.comparison.whole_percents import whole_percents
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.mass_sums import Scale, in_steps, scale_of, with_rest
from boomsim.rating.strategies import label
from boomsim.units import show, show_rated

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
    crossover : Crossover
        Of the comparison
    """
    near = label(comparison.configurations.extension[crossover.before])
    far = label(comparison.configurations.extension[crossover.after])
    return (
        f"Up to {show(crossover.radius, 'length', units)} ({near}) carries more, beyond it "
        f"({far}); there both carry {show_rated(crossover.capacity, units)}."
    )


def tell_account(name: str, account: Account, *, units: str) -> str:
    """One sentence on what limits a configuration, and how.

    Parameters
    ----------
    name : str
        Of the configuration
    """
    said = f"{name} carries {show_rated(account.capacity, units)}"
    said += f"; {what_sets(account.limit)}"
    if account.limit.set_by == STABILITY:
        return f"{said}."
    if account.structure_takes < float("inf"):
        scale = scale_of(account.capacity, units)
        below = scale.text(scale.below(account.capacity, account.structure_takes))
        said += f", {below} below what stability allows"
    gave = account.gave_way
    if gave is None or gave.place is None or gave.moment is None:
        return said + "."
    said += (
        f". {show(gave.place, 'length', units)} from that section's tail the utilisation is made "
        f"up of {_summed(whole_percents(gave.components))}"
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
    first_name: str, second_name: str, difference: Difference, *, units: str
) -> list[str]:
    """Why the first carries more or less than the second, in sentences whose numbers add up."""
    first, second = difference.first, difference.second
    scale = scale_of(max(first.capacity, second.capacity), units)
    one, other = scale.down(first.capacity), scale.down(second.capacity)
    more = "more" if one >= other else "less"
    told = [
        f"At {show(difference.radius, 'length', units)} {first_name} carries "
        f"{scale.text(abs(one - other))} {more} than {second_name}."
    ]
    if not difference.by_part:
        return [*told, "No load can tip the crane at this radius, so strength alone decides."]
    held = [scale.below(each.capacity, each.structure_takes) for each in (first, second)]
    lies = one + held[0] - other - held[1]
    told.append(
        _where_weight_lies(in_steps(with_rest(difference.by_part), total=lies, scale=scale), scale)
    )
    if any(held):
        told.append(
            f"{first_name} is held {scale.text(held[0])} and {second_name} "
            f"{scale.text(held[1])} below what stability would allow: "
            f"{scale.signed(held[1] - held[0])}."
        )
    return told


def _where_weight_lies(steps: dict[str, int], scale: Scale) -> str:
    shares = [f"{name} {scale.signed(count)}" for name, count in steps.items() if count]
    said = "What each part's weight is worth, by where it lies about the tipping line: "
    if len(shares) < 2:
        return f"{said}{shares[0] if shares else 'nothing to speak of'}."
    return f"{said}{', '.join(shares)}; in all {scale.signed(sum(steps.values()))}."
