"""From a scan to the plan of the sheet: paper white, corner marks, and where a point lies.

The scan may be turned by some degrees, larger or smaller, skewed, grey or unevenly lit. Four corner
marks fix a projective map; what lies between them follows.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from boomsim.papers.paper_errors import AnswerError
from boomsim.papers.scans.sheet_layout import SQUARE, corners_of

Grey = NDArray[np.float32]

WINDOW = 0.24
"""Share of width and height in which a corner mark is looked for [1]."""
SIZES = (0.86, 0.92, 0.98, 1.04, 1.1)
"""Sizes of a corner mark that are tried, against the one that the width of the scan tells [1]."""
LEAST = 0.5
"""Darkness by which a corner mark must stand out from the paper around it [1]."""
UNEVEN = 0.05
"""Largest relative difference of opposite sides, and of width to height from the sheet's [1]."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Found:
    """A scan with its corner marks.

    Attributes
    ----------
    dark : array (height, width)
        From 0, paper, to 1, the black of the corner marks [1]
    onto : array (3, 3)
        From millimetres on the sheet to pixels, in homogeneous coordinates
    """

    dark: Grey
    onto: NDArray[np.float64]

    def at(self, x: NDArray[np.float64], y: NDArray[np.float64]) -> Grey:
        """Darkness at points of the sheet.

        Parameters
        ----------
        x, y : array
            [mm]

        Returns
        -------
        array
            Of the shape of x; outside the scan it is 0 [1]
        """
        column, row = self.pixels(x, y)
        height, width = self.dark.shape
        inside = (column >= 0) & (row >= 0) & (column < width) & (row < height)
        return np.where(
            inside, self.dark[row.clip(0, height - 1), column.clip(0, width - 1)], 0.0
        ).astype(np.float32)

    def pixels(
        self, x: NDArray[np.float64], y: NDArray[np.float64]
    ) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
        """Column and row of points of the sheet [px]."""
        u, v, w = np.tensordot(self.onto, np.stack([x, y, np.ones_like(x)]), axes=1)
        return np.rint(u / w).astype(np.intp), np.rint(v / w).astype(np.intp)


def turned(grey: Grey) -> Iterator[Grey]:
    """Give a scan as it lies, and turned by a half, a quarter and three quarters."""
    for quarters in (0, 2, 1, 3):
        yield np.rot90(grey, quarters)


def find(grey: Grey, *, size: tuple[float, float]) -> Found:
    """Find the sheet in a scan that lies the right way up.

    Parameters
    ----------
    grey : array (height, width)
        From 0, black, to 1 [1]
    size : tuple of two float
        Width and height of the sheet [mm]

    Raises
    ------
    AnswerError
        If the four corner marks are not all there, or make no sheet of this shape
    """
    dark = 1.0 - grey / paper_white(grey)
    marks = [_corner(dark, size, place) for place in range(4)]
    spots = np.array([spot for spot, _ in marks])
    if min(strength for _, strength in marks) < LEAST:
        raise AnswerError("not all four corner marks can be seen; scan the whole page, flat")
    _refuse_other_shapes(spots, size)
    black = float(np.median([dark[int(y), int(x)] for x, y in spots]))
    scaled = np.clip(dark / np.float32(max(black, 0.2)), 0.0, 1.0)
    return Found(dark=_smoothed(scaled), onto=_projective(np.array(corners_of(size)), spots))


def _smoothed(dark: Grey) -> Grey:
    """Mean of each pixel and its neighbours: strokes of a pencil run together, as to the eye."""
    framed = np.pad(dark, 1, mode="edge")
    rows = framed[:-2] + framed[1:-1] + framed[2:]
    mean = (rows[:, :-2] + rows[:, 1:-1] + rows[:, 2:]) / np.float32(9.0)
    return np.asarray(mean, dtype=np.float32)


def paper_white(grey: Grey) -> Grey:
    """Find how bright the paper is around every pixel.

    Parameters
    ----------
    grey : array (height, width)
        From 0, black, to 1 [1]

    Returns
    -------
    array (height, width)
        [1]
    """
    height, width = grey.shape
    side = max(width // 40, 4)
    rows, columns = -(-height // side), -(-width // side)
    padded = np.pad(grey, ((0, rows * side - height), (0, columns * side - width)), mode="edge")
    blocks = padded.reshape(rows, side, columns, side).transpose(0, 2, 1, 3)
    few = blocks.reshape(rows, columns, -1)[..., ::7]  # every seventh pixel says as much
    bright = np.partition(few, int(0.8 * few.shape[-1]), axis=-1)[..., int(0.8 * few.shape[-1])]
    framed = np.pad(bright, 2, mode="edge")
    # The brightest of 5 x 5 blocks: whatever is printed in a block, some neighbour is paper.
    near = np.max(
        [framed[i : i + rows, j : j + columns] for i in range(5) for j in range(5)], axis=0
    )
    middle_x, middle_y = ((np.arange(count) + 0.5) * side - 0.5 for count in (columns, rows))
    wide = np.array([np.interp(np.arange(width), middle_x, row) for row in near])
    place = np.interp(np.arange(height), middle_y, np.arange(rows))
    low = place.astype(int).clip(0, max(rows - 2, 0))
    share = (place - low)[:, None]
    high = (low + 1).clip(0, rows - 1)
    full = (1 - share) * wide[low] + share * wide[high]
    return np.asarray(np.maximum(full, 0.05), dtype=np.float32)


def _corner(dark: Grey, size: tuple[float, float], place: int) -> tuple[tuple[float, float], float]:
    """Centre of a corner mark [px], and by how much it stands out [1]."""
    height, width = dark.shape
    tall, wide = int(WINDOW * height), int(WINDOW * width)
    top = 0 if place < 2 else height - tall
    left = 0 if place in (0, 3) else width - wide
    part = dark[top : top + tall, left : left + wide].clip(0.0, 1.0)
    sums = np.pad(part.astype(np.float64).cumsum(0).cumsum(1), ((1, 0), (1, 0)))
    best: tuple[float, float, float, int] = (-1.0, 0.0, 0.0, 1)
    for times in SIZES:
        side = round(SQUARE * width / size[0] * times)
        best = max(best, (*_strongest(sums, side), side))
    strength, x, y, side = best
    x, y = _centred(part, x, y, side)
    return (left + x, top + y), strength


def _strongest(sums: NDArray[np.float64], side: int) -> tuple[float, float, float]:
    """How much the darkest square stands out from the ring around it, and its centre [px]."""
    ring = round(0.4 * side)
    whole = side + 2 * ring
    if min(sums.shape) <= whole + 1:
        return -1.0, 0.0, 0.0
    outer = _boxes(sums, whole)
    rows, columns = outer.shape
    inner = _boxes(sums, side)[ring : ring + rows, ring : ring + columns]
    stands = inner / side**2 - 2.0 * (outer - inner) / (whole**2 - side**2)
    row, column = np.unravel_index(int(np.argmax(stands)), stands.shape)
    return float(stands[row, column]), float(column + whole / 2), float(row + whole / 2)


def _boxes(sums: NDArray[np.float64], side: int) -> NDArray[np.float64]:
    """Sum over every square of so many pixels a side, from sums over rows and columns."""
    right = sums[:, side:] - sums[:, :-side]
    return np.asarray(right[side:] - right[:-side])


def _centred(part: Grey, x: float, y: float, side: int) -> tuple[float, float]:
    """Centre of gravity of what is dark around a spot [px]."""
    reach = 0.75 * side
    left, top = max(int(x - reach), 0), max(int(y - reach), 0)
    near = part[top : int(y + reach), left : int(x + reach)]
    weight = np.where(near > 0.4, near, 0.0)
    total = float(weight.sum())
    if not total > 0:
        return x, y
    return (
        left + float(weight.sum(0) @ np.arange(weight.shape[1])) / total,
        top + float(weight.sum(1) @ np.arange(weight.shape[0])) / total,
    )


def _refuse_other_shapes(spots: NDArray[np.float64], size: tuple[float, float]) -> None:
    """Refuse four dark spots that are not the corners of this sheet."""
    sides = np.linalg.norm(np.roll(spots, -1, axis=0) - spots, axis=1)
    across, down = (sides[0] + sides[2]) / 2, (sides[1] + sides[3]) / 2
    corners = np.array(corners_of(size))
    wanted = (corners[1, 0] - corners[0, 0]) / (corners[2, 1] - corners[1, 1])
    off = (
        abs(sides[0] / sides[2] - 1), abs(sides[1] / sides[3] - 1), abs(across / down / wanted - 1),
    )  # fmt: skip
    if not max(off) < UNEVEN:
        raise AnswerError("the four darkest corners make no sheet of this shape")


def _projective(places: NDArray[np.float64], spots: NDArray[np.float64]) -> NDArray[np.float64]:
    """Solve for the projective map that takes four places onto four spots."""
    rows, right = [], []
    for (x, y), (u, v) in zip(places, spots, strict=True):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        right += [u, v]
    return np.append(np.linalg.solve(np.array(rows), np.array(right)), 1.0).reshape(3, 3)
