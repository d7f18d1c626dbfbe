"""The strip of black cells at the head of an answer sheet: whose sheet it is, for the reader.

It holds the check code of the paper and the number of the page, with a checksum of sixteen bits. A
page that lies upside down, or is of another plan, does not pass the checksum.
"""

import binascii
from collections.abc import Sequence

from boomsim.papers.check_code import LENGTH, LETTERS
from boomsim.papers.scans.sheet_layout import CELL, CELL_ROWS, STRIP, VERSION

CODE_BITS, PAGE_BITS, SUM_BITS = 26, 4, 16
BITS = CODE_BITS + PAGE_BITS + SUM_BITS
"""Cells of the strip [1]."""


def cells_of(code: str, page: int) -> tuple[bool, ...]:
    """Write a strip.

    Parameters
    ----------
    code : str
        Check code of the paper
    page : int
        From 1 [1]

    Returns
    -------
    tuple of bool
        Which cells are black
    """
    if not 0 < page < 1 << PAGE_BITS:
        raise ValueError(f"Page {page} of a sheet; a strip has room for 1 to 15.")
    number = 0
    for letter in code:
        number = number * len(LETTERS) + LETTERS.index(letter)
    told = number << PAGE_BITS | page
    whole = told << SUM_BITS | _sum(told)
    return tuple(bool(whole >> place & 1) for place in reversed(range(BITS)))


def read_cells(cells: Sequence[bool]) -> tuple[str, int]:
    """Read a strip.

    Parameters
    ----------
    cells : sequence of bool
        Which cells are black

    Returns
    -------
    (str, int)
        Check code and page; ("", 0) if the checksum does not fit
    """
    whole = 0
    for black in cells:
        whole = whole << 1 | int(black)
    told, found = whole >> SUM_BITS, whole & (1 << SUM_BITS) - 1
    number, page = told >> PAGE_BITS, told & (1 << PAGE_BITS) - 1
    if found != _sum(told) or number >= len(LETTERS) ** LENGTH or not page:
        return "", 0
    letters = []
    for _ in range(LENGTH):
        number, place = divmod(number, len(LETTERS))
        letters.append(LETTERS[place])
    return "".join(reversed(letters)), page


def places() -> tuple[tuple[float, float], ...]:
    """Find the centres of the cells.

    Returns
    -------
    tuple of (float, float)
        In the order of the bits [mm]
    """
    long = -(-BITS // CELL_ROWS)
    return tuple(
        (STRIP[0] + CELL * (place % long + 0.5), STRIP[1] + CELL * (place // long + 0.5))
        for place in range(BITS)
    )


def _sum(told: int) -> int:
    """Checksum of what a strip tells, begun with the version of the plan."""
    return binascii.crc_hqx(told.to_bytes(4, "big"), VERSION)
