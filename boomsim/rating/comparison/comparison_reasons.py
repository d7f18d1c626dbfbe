"""Why one way carries more than another, in one clause: its weight, or what sets a figure."""

from collections.abc import Sequence

import numpy as np

from boomsim.machine.part_names import section_name
from boomsim.mechanics.geometry import Array
from boomsim.rating.comparison.difference_account import Difference
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.mass_sums import REST, Scale, in_steps, scale_of, with_rest
from boomsim.units import listed

MOSTLY = 0.8
"""What makes so much of a difference is its reason; where neither does, both are told [1]."""


NEARER = 1e-6
"""Less than this is rounding [m]."""


def tell_pair(
    apart: Difference,
    *,
    names: tuple[str, str],
    letters: tuple[str, str],
    kept: Sequence[str],
    units: str,
) -> str:
    """Say what two ways carry, how far that is apart, and why.

    Parameters
    ----------
    apart : Difference
        The first carries more
    names, letters : tuple of str
        Of the two, in full and where they come up again
    kept : sequence of str
        Sections that the first keeps further in

    Returns
    -------
    str
        A sentence without its full stop
    """
    scale = scale_of(apart.first.capacity, units)
    most, less = scale.down(apart.first.capacity), scale.down(apart.second.capacity)
    why = reason(apart, letters, kept, total=most - less, scale=scale)
    return (
        f"{names[0]} carries {scale.text(most)} and {names[1]} {scale.text(less)}, "
        f"{scale.text(most - less)} less: {why}"
    )


def further_in(front: Array) -> list[str]:
    """Name the sections that the first of two ways holds nearer to the heel pin.

    Parameters
    ----------
    front : ndarray, shape (2, sections)
        Where each section's front is [m]
    """
    return [section_name(int(k)) for k in np.flatnonzero(front[0] < front[1] - NEARER)]


def reason(
    apart: Difference, names: tuple[str, str], kept: Sequence[str], *, total: int, scale: Scale
) -> str:
    """Say what makes most of a difference: where weight lies, or what sets the figures.

    Parameters
    ----------
    apart : Difference
        The first carries more
    names : tuple of str
        Of the two
    kept : sequence of str
        Sections that the first keeps further in
    total : int
        The difference as it is told [1]

    Returns
    -------
    str
        A clause
    """
    if not apart.by_part:
        sets = what_sets(apart.second.limit)
        return f"no load can tip the crane there, and for {names[1]} {sets}"
    weight, held = sum(apart.by_part.values()), sum(apart.by_structure)
    first, second = (
        scale.below(each.capacity, each.structure_takes) for each in (apart.first, apart.second)
    )
    steps = {"held": second - first, "weight": total - (second - first)}
    if weight >= MOSTLY * apart.total:
        said = weight_reason(apart, names[0], kept, total=steps["weight"], scale=scale)
        return said + _beside_weight(steps["held"], scale)
    said = held_reason(apart, names[1], scale=scale)
    if held >= MOSTLY * apart.total:
        return said
    return f"{said}; the place of its weight costs it another {scale.text(steps['weight'])}"


def _beside_weight(held: int, scale: Scale) -> str:
    if held < 0:
        return f"; what sets the figures takes {scale.text(-held)} of it back"
    return f"; what sets the figures makes another {scale.text(held)}" if held else ""


def held_reason(apart: Difference, name: str, *, scale: Scale) -> str:
    """Say what sets the smaller figure, and how far below what stability allows."""
    second = apart.second
    said = f"for {name} {what_sets(second.limit)}"
    if second.limit.set_by == STABILITY:
        return said
    below = scale.text(scale.below(second.capacity, second.structure_takes))
    return f"{said}, {below} below what stability allows"


def weight_reason(
    apart: Difference, name: str, kept: Sequence[str], *, total: int, scale: Scale
) -> str:
    """Say which sections lie further in, what that is worth, and what all else makes."""
    steps = in_steps(with_rest(apart.by_part), total=total, scale=scale)
    inside = {part: steps[part] for part in kept if steps.get(part, 0) > 0}
    rest = total - sum(inside.values())
    if abs(rest) > (1.0 - MOSTLY) * total:
        lines = (apart.first.slew, apart.first.line), (apart.second.slew, apart.second.line)
        each = "each is rated about another tipping line, and " if lines[0] != lines[1] else ""
        return f"{each}the place of the weights is worth {scale.text(total)}"
    values = " + ".join(scale.number(count) for count in inside.values())
    if rest:
        values += f" {'+' if rest > 0 else '-'} {scale.number(abs(rest))} for {REST}"
    whole = f"{values} = {scale.text(total)}" if len(inside) > 1 or rest else scale.text(total)
    return f"{name} keeps {sections(list(inside))} further in, which is worth {whole}"


def sections(names: Sequence[str]) -> str:
    """Write "section 3" or "sections 1, 2 and 3"."""
    numbers = [name.removeprefix("section ") for name in names]
    return f"section{'s' if len(numbers) > 1 else ''} {listed(numbers)}"
