"""A report in the words that go with its units: tables laid out again, paragraphs refilled."""

import re
from collections.abc import Iterator
from itertools import pairwise

from boomsim.reports.text_tables import WIDTH, glued, paragraph, table
from boomsim.units import in_words

RULE = re.compile(r"-+(?:  -+)*")
"""Under the head of a table."""


def in_trade_words(text: str, units: str) -> str:
    """Say a report in the words of one system of units.

    Parameters
    ----------
    text : str
        Of paragraphs and tables from :mod:`boomsim.reports.text_tables`, parted by blank lines
    """
    if units != "us":
        return text
    return "\n\n".join(map(_block, text.split("\n\n")))


def _block(block: str) -> str:
    lines = block.split("\n")
    if len(lines) > 1 and RULE.fullmatch(lines[1]):
        head, rows, below = table_of(lines)
        if any(map(_differs, [*head, *(field for row in rows for field in row)])):
            told = [[in_words(field, "us") for field in row] for row in (head, *rows)]
            lines = [*table(told[0], told[1:]).split("\n"), *below]
        below = lines[len(lines) - len(below) :]
        return "\n".join([*lines[: len(lines) - len(below)], *_refilled(below)])
    return "\n".join(_refilled(lines))


def table_of(lines: list[str]) -> tuple[list[str], list[list[str]], list[str]]:
    """Cut a table where its rule has its gaps.

    Parameters
    ----------
    lines : list of str
        The second is the rule

    Returns
    -------
    head : list of str
    rows : list of list of str
        Blanks behind a figure are kept: signs stand there
    below : list of str
        Lines under the table that belong to none of its rows
    """
    columns = [match.span() for match in re.finditer("-+", lines[1])]
    gaps = [(a[1], b[0]) for a, b in pairwise(columns)]
    end = next((k for k, line in enumerate(lines) if _crosses(line, gaps)), len(lines))

    def cut(line: str) -> list[str]:
        (a, b), *others = columns
        whole = line.ljust(columns[-1][1])
        return [whole[a:b].rstrip(), *(whole[c:d].lstrip() for c, d in others)]

    return cut(lines[0]), [cut(line) for line in lines[2:end]], lines[end:]


def _crosses(line: str, gaps: list[tuple[int, int]]) -> bool:
    """Whether a line writes where a table's row is blank."""
    return any(line[a:b].strip() for a, b in gaps)


def _differs(text: str) -> bool:
    return in_words(text, "us") != text


def _refilled(lines: list[str]) -> Iterator[str]:
    """Change the words of paragraphs; those that have none to change stay as they are filled."""
    for group in _paragraphs(lines):
        indent = group[0][: len(group[0]) - len(group[0].lstrip())]
        whole = " ".join(line.strip() for line in group)
        if _differs(whole):
            yield paragraph(in_words(whole, "us"), indent=indent)
        else:
            yield from group


def _paragraphs(lines: list[str]) -> Iterator[list[str]]:
    """Part lines where the next one's first word would have had room: there a paragraph ended."""
    group: list[str] = []
    for line in lines:
        if group and len(group[-1]) + 1 + len(glued(line.strip()).split(" ")[0]) <= WIDTH:
            yield group
            group = []
        group.append(line)
    if group:
        yield group
