"""What the most loaded tyre carries, by another way than letting go of tyres that would pull.

Of all pushes that hold the crane, equal springs choose those whose squares add up to least, none of
them negative (least complementary energy): a problem of least squares for scipy.
"""

import numpy as np
from rerate_cells import GRAVITY, Bent
from rerate_masses import Placed
from rerate_whole import leaning, slews, square_to
from scipy.optimize import nnls

FIRM = 1e5
"""By how much balance counts more than least squares: pushes come out to its inverse square [1]."""


def tyres(bent: Bent, placed: Placed, row: int) -> float:
    """Largest push on a tyre over the slew angles that count, over the permissible one."""
    support, machine = bent.cells.support, bent.cells.machine
    spots, load = np.array(support.points), float(bent.load[row])
    pull, hook = leaning(bent, placed, row)
    turning = pull + load * hook
    still = sum(part.mass * np.array([part.x, part.y]) for part in machine.carrier)
    mass = sum(m for m, _ in placed.masses) + sum(part.mass for part in machine.carrier) + load
    turns = slews(bent)
    if turns is None:
        over = np.arctan2(spots[:, 1], spots[:, 0])
        even = np.radians(np.arange(0.0, 360.0, 0.5))
        turns = np.concatenate([square_to(support.points), over, even])
    cos, sin = np.cos(turns), np.sin(turns)
    middles = np.stack(
        [cos * turning[0] - sin * turning[1], sin * turning[0] + cos * turning[1]], axis=1
    )
    middles = (middles + still) / mass
    most = max(shares(spots, middle).max() for middle in middles)
    return float(most) * mass * GRAVITY / float(support.strength or np.inf)


def shares(spots: np.ndarray, middle: np.ndarray) -> np.ndarray:
    """Share of a weight that each of equal springs takes; infinite where none can hold it."""
    balance = np.vstack([np.ones(len(spots)), spots.T])
    wanted = np.array([1.0, *middle])
    taken = np.linalg.lstsq(balance, wanted, rcond=None)[0]
    if taken.min() >= 0.0:
        return taken
    rows = np.vstack([FIRM * balance, np.eye(len(spots))])
    taken, _ = nnls(rows, np.concatenate([FIRM * wanted, np.zeros(len(spots))]))
    held = np.abs(balance @ taken - wanted).max() < 1e-6
    return taken if held else np.full(len(spots), np.inf)
