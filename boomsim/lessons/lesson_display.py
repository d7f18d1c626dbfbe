"""What a lesson's cells show: panels, tables and pictures, in a notebook and as plain text."""

from base64 import b64encode
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from textwrap import fill
from typing import TYPE_CHECKING

from boomsim.caution import CAUTION
from boomsim.figures.colours_and_lines import BLUE, GREEN, PLUM, QUIET, RUST
from boomsim.reports.html_of_text import FIGURE
from boomsim.reports.text_tables import glued

if TYPE_CHECKING:
    from matplotlib.figure import Figure

MARKS = {
    "question": ("Question", BLUE),
    "guess": ("Your guess", BLUE),
    "right": ("Right", GREEN),
    "slip": ("Not yet", RUST),
    "wrong": ("Not yet", RUST),
    "refused": ("Once more", PLUM),
    "empty": ("Over to you", BLUE),
    "working": ("Working", QUIET),
    "note": ("", QUIET),
}
"""Heading and colour of each kind of panel; the heading says all that the colour says."""

PROSE = 3
"""A column with a field of more words than this is read as prose."""


@dataclass(frozen=True, slots=True, kw_only=True, repr=False)
class Panel:
    """Sentences in a box.

    Attributes
    ----------
    words : tuple of str
        Paragraphs
    mark : str
        A key of `MARKS`
    small : str
        Printed small below
    """

    words: tuple[str, ...]
    mark: str = "note"
    small: str = ""

    def __repr__(self) -> str:
        head = MARKS[self.mark][0]
        first = f"{head}: {self.words[0]}" if head else self.words[0]
        return "\n".join([first, *self.words[1:], *([self.small] if self.small else [])])

    def _repr_html_(self) -> str:
        head, colour = MARKS[self.mark]
        title = f'<b style="color:{colour}">{escape(head)}</b><br>' if head else ""
        body = "<br>".join(escape(glued(paragraph)) for paragraph in self.words)
        return (
            f'<div class="lesson-{self.mark}" style="border-left:5px solid {colour};'
            'padding:0.4em 0.9em;margin:0.3em 0;max-width:54em;line-height:1.5">'
            f"{title}{body}{_small(self.small)}</div>"
        )


@dataclass(frozen=True, slots=True, kw_only=True, repr=False)
class Table:
    """Columns of text: the first and all prose to the left, figures to the right.

    Attributes
    ----------
    small : str
        Printed small below
    """

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    small: str = ""

    def __repr__(self) -> str:
        lines = (self.head, *self.rows)
        wide = [max(len(line[k]) for line in lines) for k in range(len(self.head))]
        text = [
            "  ".join(
                line[k].ljust(wide[k]) if self._is_prose(k) else line[k].rjust(wide[k])
                for k in range(len(line))
            )
            for line in lines
        ]
        return "\n".join([line.rstrip() for line in text] + ([self.small] if self.small else []))

    def _is_prose(self, column: int) -> bool:
        longest = max((len(row[column].split()) for row in self.rows), default=0)
        return column == 0 or longest > PROSE

    def _repr_html_(self) -> str:
        sides = ["left" if self._is_prose(k) else "right" for k in range(len(self.head))]
        head = _cells("th", self.head, sides)
        rows = "".join(f"<tr>{_cells('td', row, sides)}</tr>" for row in self.rows)
        return (
            '<div class="lesson-table" style="max-width:60em;line-height:1.4">'
            '<table style="font-size:1em">'
            f"<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>{_small(self.small)}</div>"
        )


_WRAP = {"left": "white-space:normal", "right": "white-space:nowrap"}
"""Prose may be broken into lines; a number and its unit may not."""


def _cells(tag: str, texts: Sequence[str], sides: Sequence[str]) -> str:
    return "".join(_cell(tag, text, side) for text, side in zip(texts, sides, strict=True))


def _cell(tag: str, text: str, side: str) -> str:
    if side == "right" or FIGURE.fullmatch(text):
        wrap, said = _WRAP["right"], text
    else:
        wrap, said = _WRAP["left"], glued(text)
    style = f"text-align:{side};padding:0.2em 0.9em;{wrap}"
    return f'<{tag} style="{style}">{escape(said)}</{tag}>'


def _small(text: str) -> str:
    style = "font-size:0.8em;opacity:0.75;margin-top:0.4em;max-width:54em"
    return f'<div style="{style}">{escape(text)}</div>' if text else ""


def table(head: str, *rows: Sequence[object], capacity: bool = False) -> Table:
    """Lay out a table.

    Parameters
    ----------
    head : str
        Headings, parted by bars: "section | mass"
    *rows : sequence
        As many fields as headings; what is no text yet is written plainly
    capacity : bool
        Whether a capacity is among the fields: then the caution stands below

    Raises
    ------
    ValueError
        If a row has more or fewer fields than there are headings
    """
    names = tuple(name.strip() for name in head.split("|"))
    made = tuple(tuple(str(field) for field in row) for row in rows)
    for row in made:
        if len(row) != len(names):
            raise ValueError(
                f"The row {row} has {len(row)} fields and the table has {len(names)} headings: "
                f"{', '.join(names)}. Give one field for each heading."
            )
    return Table(head=names, rows=made, small=CAUTION if capacity else "")


def tell(words: object, *, width: int = 88) -> None:
    """Print sentences, broken between words.

    Parameters
    ----------
    words : object
        Text, or an error that teaches
    width : int
        Longest line [characters]
    """
    for line in str(words).splitlines() or [""]:
        deep = " " * (len(line) - len(line.lstrip()))
        print(fill(line.strip(), width=width, initial_indent=deep, subsequent_indent=deep))


def percent(share: float) -> str:
    """Write a share in whole percents.

    Parameters
    ----------
    share : float
        [1]

    Examples
    --------
    >>> percent(0.284), percent(-0.001)
    ('28 %', '0 %')
    """
    return f"{round(100 * float(share)) + 0:d} %"


@dataclass(frozen=True, slots=True, kw_only=True, repr=False)
class Picture:
    """A drawing with its text alternative.

    Attributes
    ----------
    words : str
        What can be seen, for whoever cannot see it
    """

    svg: bytes
    words: str

    def __repr__(self) -> str:
        return f"[Picture: {self.words}]"

    def _repr_html_(self) -> str:
        data = b64encode(self.svg).decode()
        return (
            f'<img class="lesson-picture" alt="{escape(self.words)}" '
            'style="width:100%;max-width:60em;background:white" '
            f'src="data:image/svg+xml;base64,{data}">'
        )


def picture(figure: "Figure", words: str) -> Picture:
    """Show a figure; figures of this package are not shown by themselves.

    Parameters
    ----------
    words : str
        What can be seen, for whoever cannot see it
    """
    from boomsim.figures.figure_page import picture as drawn

    return Picture(svg=drawn(figure, kind="svg"), words=words)
