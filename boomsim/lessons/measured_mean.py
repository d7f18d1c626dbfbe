"""What readings say: their mean, how sure it is, and whether it agrees with a prediction.

As in the Guide to the expression of uncertainty in measurement (JCGM 100:2008): the standard
uncertainty of a mean is s/sqrt(n) (4.2.3), that of a result is the root of the sum of squares of
what each input's uncertainty shifts it by (5.1.2, uncorrelated inputs).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from boomsim.units import parse


def combined(parts: dict[str, float]) -> float:
    """Root of the sum of squares.

    Returns
    -------
    float
        In their unit
    """
    return math.sqrt(sum(part**2 for part in parts.values()))


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """The mean of some readings.

    Attributes
    ----------
    mean, spread, uncertainty : float
        Mean, standard deviation of one reading, standard uncertainty of the mean [kg]
    count : int
        Readings
    """

    mean: float
    spread: float
    uncertainty: float
    count: int


def mean_of(readings: Sequence[str]) -> Measured:
    """Take the mean of readings with their units.

    Parameters
    ----------
    readings : sequence of str
        Such as "1.46 kg"

    Raises
    ------
    ValueError
        If there are fewer than two, or one is no mass
    """
    if len(readings) < 2:
        raise ValueError(
            f"{len(readings)} reading says nothing about its own spread. Take at least two."
        )
    values = [parse(text, "mass", what=f"reading {k + 1}") for k, text in enumerate(readings)]
    mean = sum(values) / len(values)
    spread = math.sqrt(sum((v - mean) ** 2 for v in values) / (len(values) - 1))
    return Measured(
        mean=mean, spread=spread, uncertainty=spread / math.sqrt(len(values)), count=len(values)
    )


def apart(predicted: float, measured: float, *, uncertainties: Sequence[float]) -> float:
    """How far prediction and measurement are apart, in combined standard uncertainties.

    Parameters
    ----------
    uncertainties : sequence of float
        Standard uncertainty of each

    Returns
    -------
    float
        Up to two is agreement, beyond three is not [1]
    """
    together = math.sqrt(sum(u**2 for u in uncertainties))
    return abs(predicted - measured) / together


def verdict(off: float) -> str:
    """Say whether prediction and measurement agree.

    Parameters
    ----------
    off : float
        From :func:`apart` [1]
    """
    return "agree" if off < 2.0 else "may agree" if off < 3.0 else "do not agree"
