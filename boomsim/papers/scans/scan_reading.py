"""Scanned answer sheets of a class: a file of answers out, and a list of what a person must read.

The file is the one that :func:`boomsim.papers.marking.mark_class.mark` takes. A doubtful answer
stands in it behind a question mark, which is refused when it is marked: it is never guessed.
"""

import csv
import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from PIL import Image

from boomsim.files.work_progress import Told, counted
from boomsim.papers.marking.answer_sheets import short
from boomsim.papers.marking.marking_key import Key, questions_of, read_key
from boomsim.papers.numbers.number_reading import decimal_sign
from boomsim.papers.paper_errors import AnswerError, PaperError
from boomsim.papers.scans.bubble_reading import Answer, answers_in, strip_in
from boomsim.papers.scans.scan_images import scanned_pages
from boomsim.papers.scans.sheet_finding import Found, Grey, find, turned
from boomsim.papers.scans.sheet_layout import (
    PAGES,
    Field,
    SheetPage,
    paper_name,
    sheet_pages,
)  # fmt: skip

UNREAD = "unread"
"""How a row is named whose candidate is not known for certain."""
DOUBTFUL = "?"
"""Stands before an answer that a person has to look at."""
AROUND = 3.0
"""What is shown around a field [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Doubt:
    """Something that a person has to look at.

    Attributes
    ----------
    where : str
        "scans.pdf, page 2"
    candidate : str
        As the file of answers names the row; "" for a page that gave no row
    label : str
        "1a"; "candidate"; "" for the page as a whole
    picture : bytes
        PNG of the field; b"" where there is none
    """

    where: str
    candidate: str
    label: str
    reason: str
    picture: bytes = b""


@dataclass(slots=True, kw_only=True, eq=False)
class Row:
    """Answers of one candidate as far as pages came.

    Attributes
    ----------
    answers : dict of str to str
        By label; blank ones are left out
    pages : dict of int to str
        Where each page of the sheet was
    """

    candidate: str
    variant: str
    code: str
    answers: dict[str, str] = field(default_factory=dict)
    pages: dict[int, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ScansRead:
    """What a stack of scans gave.

    Attributes
    ----------
    rows : tuple of Row
        By candidate
    pages, certain : int
        Pages looked at, and answers read for certain [1]
    """

    rows: tuple[Row, ...]
    doubts: tuple[Doubt, ...]
    pages: int
    certain: int

    def csv(self) -> str:
        """Write the file of answers.

        Returns
        -------
        str
            CSV with the columns candidate, variant, code, 1a, 1b, 2 …
        """
        labels = sorted({label for row in self.rows for label in row.answers}, key=_in_order)
        buffer = io.StringIO()
        writer = csv.writer(buffer, lineterminator="\n")
        writer.writerow(["candidate", "variant", "code", *labels])
        for row in self.rows:
            cells = (row.answers.get(label, "") for label in labels)
            writer.writerow([row.candidate, row.variant, row.code, *cells])
        return buffer.getvalue()


def read_scans(
    key_path: str | Path,
    scans: Iterable[str | Path],
    *,
    locale: str | None = None,
    told: Told | None = None,
) -> ScansRead:
    """Read the scanned answer sheets of a class.

    Parameters
    ----------
    key_path : str or Path
        The key.json written with the papers
    scans : iterable of str or Path
        PDF, PNG, JPEG or TIFF
    locale : str or None
        As it will be named to the marking: with "de" numbers are written with a comma
    told : callable, optional
        Hears what is done

    Raises
    ------
    PaperError
        If the key or a file cannot be read, or all sheets are of another sitting
    """
    key = read_key(key_path)
    stack = _Stack(key, decimal_sign(locale, system=key.units) or ".")
    for path in counted(list(scans), what="reading scans", told=told):
        for where, grey in scanned_pages(path):
            stack.add(where, grey)
    return stack.finished()


class _Stack:
    """Pages of a class, as they come."""

    def __init__(self, key: Key, sign: str) -> None:
        self.key, self.sign = key, sign
        self.rows: dict[tuple[str, str], Row] = {}
        self.doubts: list[Doubt] = []
        self.plans: dict[str, tuple[SheetPage, ...]] = {}
        self.count = self.unread = self.certain = 0
        self.strangers: list[str] = []

    def add(self, where: str, grey: Grey) -> None:
        """Read one page."""
        self.count += 1
        try:
            found, code, number = sheet_in(grey, PAGES[paper_name(self.key.units)])
        except AnswerError as error:
            self.doubts.append(Doubt(where=where, candidate="", label="", reason=str(error)))
            return
        variant = self.key.variant_with(code)
        if not variant:
            self.strangers.append(code)
            reason = f"this sheet has the code {code}, which is that of another sitting"
            self.doubts.append(Doubt(where=where, candidate="", label="", reason=reason))
            return
        plan = self._plan(variant)
        if number > len(plan):
            reason = f"this is page {number} of a sheet of {len(plan)}"
            self.doubts.append(Doubt(where=where, candidate="", label="", reason=reason))
            return
        page = plan[number - 1]
        self._keep(where, found, page, variant, code, answers_in(found, page, sign=self.sign))

    def _plan(self, variant: str) -> tuple[SheetPage, ...]:
        """Where the bubbles of a variant are."""
        if variant not in self.plans:
            questions = questions_of(self.key, variant)
            self.plans[variant] = sheet_pages(questions, units=self.key.units)
        return self.plans[variant]

    def _keep(
        self, where: str, found: Found, page: SheetPage, variant: str, code: str,
        answers: Sequence[Answer],
    ) -> None:  # fmt: skip
        """Put the answers of a page to those of its candidate."""
        who, *others = answers
        doubt = who.doubt
        row = self.rows.get((who.text, code))
        if not doubt and row and page.number in row.pages:
            doubt = (
                f"page {page.number} of candidate {who.text} came already, {row.pages[page.number]}"
            )
        name = who.text
        if doubt:
            self.unread += 1
            name = f"{UNREAD} {self.unread}"
            self._doubt(where, name, page.fields[0], doubt, found)
        row = self.rows.setdefault((name, code), Row(candidate=name, variant=variant, code=code))
        row.pages[page.number] = where
        for one, place in zip(others, page.fields[1:], strict=True):
            if one.doubt:
                self._doubt(where, name, place, one.doubt, found)
                row.answers[one.label] = f"{DOUBTFUL} {one.text}".strip()
                continue
            self.certain += bool(one.text)
            if one.text:
                row.answers[one.label] = one.text

    def _doubt(self, where: str, name: str, place: Field, reason: str, found: Found) -> None:
        """Refer a field to a person, with its picture."""
        self.doubts.append(
            Doubt(
                where=where, candidate=name, label=place.label, reason=reason,
                picture=_picture(found, place),
            )
        )  # fmt: skip

    def finished(self) -> ScansRead:
        """Say what is missing, and hand all of it over."""
        if self.strangers and not self.rows:
            raise PaperError(
                f"These sheets are for papers with the code {self.strangers[0]}, and this key is "
                f'for "{short(self.key.title)}" with the code {self.key.variants[0].code}: read '
                "them with the key of their own sitting."
            )
        rows = sorted(self.rows.values(), key=lambda row: (row.candidate, row.code))
        for row in rows:
            wanted = range(1, len(self._plan(row.variant)) + 1)
            missing = [str(number) for number in wanted if number not in row.pages]
            if missing and not row.candidate.startswith(UNREAD):
                reason = f"page {' and '.join(missing)} of this candidate's sheet did not come"
                where = next(iter(row.pages.values()))
                self.doubts.append(
                    Doubt(where=where, candidate=row.candidate, label="", reason=reason)
                )
        return ScansRead(
            rows=tuple(rows), doubts=tuple(self.doubts), pages=self.count, certain=self.certain
        )


def sheet_in(grey: Grey, size: tuple[float, float]) -> tuple[Found, str, int]:
    """Find the sheet in a scan, whichever way it lies.

    Parameters
    ----------
    grey : array (height, width)
        From 0, black, to 1 [1]
    size : tuple of two float
        Of the sheet [mm]

    Returns
    -------
    Found, str, int
        Check code and number of the page

    Raises
    ------
    AnswerError
        If there is none, or its strip cannot be read for certain
    """
    reason = ""
    for one in turned(grey):
        try:
            found = find(one, size=size)
        except AnswerError as error:
            reason = reason or str(error)
            continue
        code, number = strip_in(found)
        if code:
            return found, code, number
        reason = reason or "the strip of black squares at its head cannot be read for certain"
    raise AnswerError(reason)


def _picture(found: Found, place: Field) -> bytes:
    """PNG of a field and a little of what is around it."""
    left, top, width, height = place.box
    x = np.array([left - AROUND, left + width + AROUND])
    y = np.array([top - AROUND, top + height + AROUND])
    columns, rows = found.pixels(*(one.ravel() for one in np.meshgrid(x, y)))
    part = found.dark[max(rows.min(), 0) : rows.max(), max(columns.min(), 0) : columns.max()]
    buffer = io.BytesIO()
    Image.fromarray(np.rint(255 * (1 - part)).astype(np.uint8)).save(buffer, "PNG")
    return buffer.getvalue()


def _in_order(label: str) -> tuple[int, str]:
    """Sort labels as a paper does."""
    digits = label.rstrip("abcdefghij")
    return int(digits), label[len(digits) :]
