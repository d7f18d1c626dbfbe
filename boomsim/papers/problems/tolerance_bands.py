"""How near an answer must be: as near as the rounding that the paper asks for lets it be.

A paper asks for so many significant figures, or for a value to the nearest step of a chart. What is
rounded so is right; and so is what follows from intermediate results that were rounded to three
figures, where the paper does not ask for them. A step's own tolerance, which stands for other
sensible ways and constants, is a least one.
"""

from collections.abc import Iterable, Iterator
from decimal import ROUND_HALF_UP, Decimal

from boomsim.papers.numbers.amounts import Amount, result
from boomsim.papers.problems.family import Family, Slip, Step, Values
from boomsim.papers.problems.step_solving import close, evaluate, needed_by, solve

USUAL_FIGURES = 3
"""What a paper asks for where an answer line says nothing else [1]."""

_SLACK = 1.0 + 1e-6
"""A value that lies halfway may be rounded to either side."""


def asked_figures(step: Step) -> int:
    """Significant figures that a paper asks for: more than usual only where they are needed [1]."""
    if step.whole:
        return 1
    widest = 0.5 * 10.0 ** (1 - USUAL_FIGURES)  # what rounding hides of 1.00
    return USUAL_FIGURES if step.tolerance >= widest else max(step.figures, USUAL_FIGURES)


def asked_of(step: Step, *, system: str) -> str:
    """Say what rounding an answer line asks for; "" for the usual one."""
    if step.whole:
        return "a whole number"
    if by := step.by(system):
        return f"to {by:f} {step.unit(system).shown}"
    figures = asked_figures(step)
    return "" if figures == USUAL_FIGURES else f"to {figures} figures"


def result_of(step: Step, value: float, *, system: str) -> Amount:
    """Make the amount of a step as it is printed.

    Parameters
    ----------
    value : float
        [SI]
    """
    unit, by = step.unit(system), step.by(system)
    if by is None:
        return result(value, unit, figures=step.figures, down=step.rated)
    steps = Decimal(f"{value / float(unit.factor):.11e}") / by
    return Amount(number=steps.quantize(Decimal(1), ROUND_HALF_UP) * by, unit=unit, value=value)


def half_unit(step: Step, value: float, *, system: str, figures: int | None = None) -> float:
    """Most that rounding as asked may hide of a value [SI].

    Parameters
    ----------
    value : float
        [SI]
    figures : int, optional
        Default: those that the paper asks for [1]
    """
    factor = float(step.unit(system).factor)
    if by := step.by(system):
        return 0.5 * float(by) * factor
    number = Decimal(f"{value / factor:.11e}")
    last = number.adjusted() - (figures or asked_figures(step)) + 1
    share = 1.0 if step.rated else 0.5  # a load that is rounded down hides up to a whole unit
    return share * float(Decimal(1).scaleb(last)) * factor


def tolerance_of(step: Step, value: float, *, system: str, carried: float = 0.0) -> float:
    """Find the largest relative difference from a value that counts as right [1].

    Parameters
    ----------
    value : float
        What would be right [SI]
    carried : float
        See :func:`carried_rounding` [1]
    """
    if not value > 0 or step.whole:
        return step.tolerance
    rounding = half_unit(step, value, system=system) / value
    if step.by(system):
        return 0.99 * rounding  # halfway between two figures of a chart belongs to neither
    return max(step.tolerance, (rounding + carried) * _SLACK)


def carried_rounding(
    family: Family, values: Values, step: Step, *, system: str, unasked: Iterable[str]
) -> float:
    """How far rounded intermediate results, which the paper does not ask for, may lead astray.

    Parameters
    ----------
    values : mapping of str to float
        Givens and steps [SI]
    unasked : iterable of str
        Letters of steps that have no answer line

    Returns
    -------
    float
        Sum over the steps, of the value [1]
    """
    names = needed_by(family, step.name) & set(unasked)
    moved = (
        _moved(family, values, one, step, system=system)
        for one in family.steps
        if one.name in names
    )
    return sum(moved) / values[step.name]


def _moved(family: Family, values: Values, rounded: Step, step: Step, *, system: str) -> float:
    """How far a step moves when an earlier one is rounded to the usual figures [SI]."""
    if rounded.is_reading:
        return 0.0
    value = values[rounded.name]
    by = half_unit(rounded, value, system=system, figures=USUAL_FIGURES)
    ends = (_follow(family, values, rounded, value + way * by, step) for way in (-1, 1))
    return max(abs(end - values[step.name]) for end in ends)


def _follow(family: Family, values: Values, changed: Step, value: float, step: Step) -> float:
    """Work on with another value of one step [SI]."""
    own = dict(values)
    for one in family.steps:
        own[one.name] = value if one is changed else evaluate(one.formula, own)
        if one is step:
            break
    return own[step.name]


def final_tolerance(family: Family, values: Values, *, system: str) -> float:
    """Largest relative difference of the answer when nothing else is asked for [1].

    Parameters
    ----------
    values : mapping of str to float
        Givens and steps [SI]
    """
    last, names = family.steps[-1], [step.name for step in family.steps[:-1]]
    names = [] if family.by_check else names  # each of them has an answer line
    carried = carried_rounding(family, values, last, system=system, unasked=names)
    return tolerance_of(last, values[last.name], system=system, carried=carried)


def slips_taken_for_right(family: Family, givens: Values, *, system: str) -> Iterator[Slip]:
    """Find the slips whose value a marker would take for right.

    Parameters
    ----------
    givens : mapping of str to float
        [SI]
    """
    truth = solve(family, givens)
    last, widest = family.steps[-1].name, final_tolerance(family, truth, system=system)
    for slip in family.slips:
        wrong = solve(family, givens, slip=slip)
        step = next(one for one in family.steps if one.letter == slip.step)
        near = tolerance_of(step, truth[step.name], system=system)
        own = close(wrong[step.name], truth[step.name], tolerance=near) and not step.whole
        same_end = close(wrong[last], truth[last], tolerance=widest) and not family.by_check
        if own or same_end:
            yield slip
