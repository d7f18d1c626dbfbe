"""Slips of a unit: a power of ten, mass for weight, feet for inches.

They are known by the factor between answer and truth, whatever the problem. What a unit slip costs
is for :mod:`boomsim.papers.marking.mark_question` and its policy to say.
"""

from boomsim.gravity import GRAVITY
from boomsim.papers.problems.step_solving import close
from boomsim.units import FOOT, INCH

UNIT_SLIPS = {
    1e3: "took a unit a thousand times too small or too large",
    1e6: "took a unit a million times too small or too large",
    10.0: "slipped by one decimal place",
    100.0: "slipped by two decimal places, or took percent for the number itself",
    GRAVITY: "mixed up mass and weight: a factor of 9.81",
    float(FOOT / INCH): "mixed up feet and inches: a factor of 12",
}
"""By the factor, or by one over it."""

OTHER_SLIPS = {2.0: "lost or added a factor of 2"}
"""Known by the factor too, but of no unit; tried after those of a unit."""


def slip_by_factor(value: float, *, truth: float, tolerance: float) -> tuple[float, str]:
    """Find a slip that is known by its factor alone.

    Parameters
    ----------
    tolerance : float
        Relative, as for a right answer [1]

    Returns
    -------
    float, str
        Factor between answer and truth [1] and the slip; 0 without a factor, "" where it is none
    """
    for factor, words in (UNIT_SLIPS | OTHER_SLIPS).items():
        for times in (factor, 1 / factor):
            if close(value, truth * times, tolerance=tolerance):
                return times, words
    return 0.0, "lost the sign" if close(-value, truth, tolerance=tolerance) else ""
