"""Which parts of a chart page are drawn, and its measures."""

from dataclasses import dataclass

from boomsim.figures.colours_and_lines import PALE, STEEL

MARGIN = 9.0
"""White round a page [mm]."""

LABEL = 9.0
"""Width of a column of radii [mm]."""

NARROWEST, WIDEST = 9.2, 26.0
"""Of a column of capacities [mm]."""

TALLEST = 5.4
"""Row [mm]."""

TINT = STEEL
"""Behind the figures that strength or a maker's value sets: steel."""

TITLE, BODY, SMALL, TINY = 10.5, 8.0, 7.0, 6.2
"""Sizes of type; a book face looks smaller than a sans serif of the same size [pt]."""

LINE = 1.32
"""From one line of type to the next [em]."""

BOLD, SECOND = 1.7, 1.0
"""Widths of the bold line and of the second line [pt]."""

DASH = (1.1, 0.6)
"""Of the second line [mm]."""

BREAKS = PALE
"""Behind the figures of cells in which something would break before the crane tips."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """What a page shows.

    Attributes
    ----------
    bold_line, shading, codes : bool
        The line between the families, the tint of structural cells, the code of each limit
    second_line : bool
        Also the line between what would break first and what would tip first
    task : str
        What a class is asked to do with the page
    answers : bool
        Tell in the key where the bold line runs
    note : str
        At the head, such as "answer sheet"
    """

    bold_line: bool = True
    shading: bool = True
    codes: bool = True
    second_line: bool = False
    task: str = ""
    answers: bool = False
    note: str = ""


FULL = Look()

CLASS = Look(
    bold_line=False,
    shading=False,
    codes=False,
    task="Draw the line along cell edges that parts the figures that strength or a maker's "
    "permissible value sets from those that stability sets. For three cells of your choice, say "
    "which part sets the figure, and why there. Would that part also give way before the crane "
    "tips, if the load were raised? Say what you would need to know.",
    note="class version",
)

ANSWERS = Look(answers=True, note="answer sheet to the class version")
