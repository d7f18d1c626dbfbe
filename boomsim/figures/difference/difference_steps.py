"""A difference of two capacities as a row of steps that add up to the whole.

From what the second carries: add what its strength held back, shift every section's weight to
where it lies in the first, take away what the first's strength holds back.
"""

from dataclasses import dataclass

from boomsim.gravity import GRAVITY
from boomsim.rating.comparison.difference_account import Difference
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.mass_sums import in_steps, scale_of
from boomsim.rating.setup import Setup
from boomsim.units import show

SMALLEST = 0.02
"""Parts below this share of the largest are shown as one step, "all other weights" [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One row of the picture.

    Attributes
    ----------
    kind : str
        "rated" for the two ends, "weight" or "strength" for a step between
    start, end : float
        [kg]
    written : str
        The figure beside it; those of one picture add up as they are written
    """

    words: str
    kind: str
    start: float
    end: float
    written: str

    @property
    def value(self) -> float:
        """Gain, negative for a cost; of the ends: the whole [kg]."""
        return self.end - self.start


def steps_of(
    difference: Difference,
    *,
    setup: Setup,
    letters: tuple[str, str] = ("A", "B"),
    units: str = "metric",
) -> tuple[Step, ...]:
    """Break a difference into rows, the second configuration's capacity first.

    Parameters
    ----------
    setup : Setup
        That it was rated with
    letters : (str, str)
        Names of the first and the second configuration

    Returns
    -------
    tuple of Step
        Each starts where the one before ends; the last is the first configuration's capacity
    """
    first, second = difference.first, difference.second
    rows = [(f"{letters[1]} is rated", "rated", second.capacity)]
    taken_first, given_second = difference.by_structure
    if not difference.by_part:
        words = "strength alone decides: no load tips the crane here"
        rows.append((words, "strength", taken_first + given_second))
    else:
        # Where stability governs, what is left is only how closely the rating was searched for.
        left = 0.0
        before = f"held back by {letters[1]}'s strength:\n{second.limit.words}"
        after = f"held back by {letters[0]}'s strength:\n{first.limit.words}"
        if second.limit.set_by != STABILITY:
            rows.append((before, "strength", given_second))
        else:
            left += given_second
        left += taken_first if first.limit.set_by == STABILITY else 0.0
        rows += [(w, "weight", v) for w, v in _weights(difference, setup, units, left)]
        if first.limit.set_by != STABILITY:
            rows.append((after, "strength", taken_first))
    scale = scale_of(max(first.capacity, second.capacity), units)
    total = scale.down(first.capacity) - scale.down(second.capacity)
    shown = in_steps({str(k): row[2] for k, row in enumerate(rows[1:])}, total=total, scale=scale)
    written = [scale.text(scale.down(second.capacity)), *map(scale.signed, shown.values())]
    steps, level = [], 0.0
    for (words, kind, value), figure in zip(rows, written, strict=True):
        figure = figure.replace("-", "\u2212")
        steps.append(Step(words=words, kind=kind, start=level, end=level + value, written=figure))
        level += value
    whole = Step(
        words=f"{letters[0]} is rated",
        kind="rated",
        start=0.0,
        end=first.capacity,
        written=scale.text(scale.down(first.capacity)),
    )
    return (*steps, whole)


def total_in_words(difference: Difference, *, units: str) -> str:
    """Difference of the two rated loads, as they are written."""
    rated = difference.first.capacity, difference.second.capacity
    scale = scale_of(max(rated), units)
    return scale.text(abs(scale.down(rated[0]) - scale.down(rated[1])))


def _weights(
    difference: Difference, setup: Setup, units: str, left: float
) -> list[tuple[str, float]]:
    """List parts whose weight lies elsewhere, sections in their order, the small ones as one."""
    parts = difference.by_part
    least = SMALLEST * max(abs(value) for value in parts.values())
    large = [name for name, value in parts.items() if abs(value) > least]
    masses = {
        "base section" if i == 0 else f"section {i}": mass
        for i, mass in enumerate(setup.machine.boom.section_masses)
    }
    rows = []
    for name in large:
        mass = masses.get(name)
        words = name if mass is None else f"{name}, {show(mass, 'mass', units)}"
        moved = None if mass is None else _moved(difference, name, mass)
        if moved is not None:
            way = "nearer" if moved > 0.0 else "further out"
            words += f", {show(abs(moved), 'length', units)} {way}"
        rows.append((words, parts[name]))
    rest = sum(value for name, value in parts.items() if name not in large)
    return [*rows, ("all other weights", rest + left)]


def _moved(difference: Difference, name: str, mass: float) -> float | None:
    """How much nearer to the crane a part's weight lies in the first configuration [m].

    Only where both would tip over the same line at the same slew angle.
    """
    first, second = difference.first, difference.second
    if (first.line, first.slew) != (second.line, second.slew):
        return None
    return (first.parts.get(name, 0.0) - second.parts.get(name, 0.0)) / (mass * GRAVITY)
