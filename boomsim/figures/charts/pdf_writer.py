"""Sheets into a PDF, page by page, with the typeface embedded.

A book has hundreds of pages of a thousand small words each. A general typesetter kept 4 to 8 MB for
each until the end; here a page is on disk before the next begins. ISO 32000-1 is the reference:
text 9.4, composite fonts 9.7, outlines 12.3.3.
"""

import zlib
from collections.abc import Iterable
from functools import cache
from io import BytesIO
from typing import BinaryIO

from boomsim.caution import CAUTION
from boomsim.figures.charts.page_marks import INCH, Fill, Jump, Mark, Sheet, Stroke, Words
from boomsim.figures.charts.pdf_font import font_object
from boomsim.figures.charts.typeface import glyph

UNIT = 72.0 / INCH
"""Points in a millimetre."""

DATE = "D:20000101000000Z"
"""Fixed, so that the same book is the same file."""


def write_pdf(sheets: Iterable[Sheet], file: BinaryIO, *, title: str) -> int:
    """Write sheets as they come.

    Returns
    -------
    int
        Pages written
    """
    writer = _Writer(file)
    for sheet in sheets:
        writer.page(sheet)
    writer.finish(title)
    return len(writer.pages)


def pdf_bytes(sheets: Iterable[Sheet], *, title: str) -> bytes:
    """Make a PDF in memory."""
    made = BytesIO()
    write_pdf(sheets, made, title=title)
    return made.getvalue()


@cache
def _colour(colour: str) -> str:
    red, green, blue = (int(colour[k : k + 2], 16) / 255.0 for k in (1, 3, 5))
    if red == green == blue:
        return f"{red:.3g} g"
    return f"{red:.3g} {green:.3g} {blue:.3g} rg"


def _text(words: str) -> str:
    """Write a string for the document's frame: UTF-16 in hexadecimal."""
    marked = "\ufeff" + words
    return f"<{marked.encode('utf-16-be').hex()}>"


class _Writer:
    """Numbers objects, remembers where each begins, and what must wait for the end."""

    CATALOG, PAGES, FONTS, INFO = 1, 2, 3, 4
    FIRST = 5

    def __init__(self, file: BinaryIO) -> None:
        self.file, self.at = file, 0
        self.starts: dict[int, int] = {}
        self.next = self.FIRST
        self.pages: list[int] = []
        self.jumps: list[tuple[int, Jump, float]] = []
        self.outline: list[tuple[str, int, int]] = []
        self.texts: dict[tuple[str, bool], tuple[str, float]] = {}
        self.glyphs: dict[bool, dict[int, tuple[str, float]]] = {False: {}, True: {}}
        # The comment of four high bytes tells transfer programs that the file is binary (7.5.2).
        self._put(b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")

    def _put(self, raw: bytes) -> None:
        self.file.write(raw)
        self.at += len(raw)

    def _new(self) -> int:
        self.next += 1
        return self.next - 1

    def _object(self, number: int, body: str | bytes) -> int:
        self.starts[number] = self.at
        raw = body if isinstance(body, bytes) else body.encode("ascii")
        self._put(b"%d 0 obj\n" % number + raw + b"\nendobj\n")
        return number

    def _stream(self, raw: bytes, entries: str = "") -> int:
        packed = zlib.compress(raw, 6)
        head = f"<< /Length {len(packed)} /Filter /FlateDecode {entries}>>\nstream\n"
        return self._object(self._new(), head.encode("ascii") + packed + b"\nendstream")

    def page(self, sheet: Sheet) -> None:
        """Write one page."""
        drawn = "\n".join(self._mark(m, sheet.height) for m in sheet.marks if type(m) is not Jump)
        content = self._stream(drawn.encode("ascii"))
        number = self._new()
        links = [self._new() for m in sheet.marks if type(m) is Jump]
        jumps = [m for m in sheet.marks if type(m) is Jump]
        self.jumps += [(n, j, sheet.height) for n, j in zip(links, jumps, strict=True)]
        size = f"[0 0 {sheet.width * UNIT:.3f} {sheet.height * UNIT:.3f}]"
        notes = f"/Annots [{' '.join(f'{n} 0 R' for n in links)}] " if links else ""
        self._object(
            number,
            f"<< /Type /Page /Parent {self.PAGES} 0 R /MediaBox {size} {notes}"
            f"/Resources << /Font {self.FONTS} 0 R >> /Contents {content} 0 R >>",
        )
        if sheet.level:
            self.outline.append((sheet.title, sheet.level, len(self.pages)))
        self.pages.append(number)

    def _mark(self, mark: Mark, height: float) -> str:
        if type(mark) is Words:
            return self._words(mark, height)
        assert isinstance(mark, Stroke | Fill)
        at = [f"{x * UNIT:.2f} {(height - y) * UNIT:.2f}" for x, y in mark.points]
        path = f"{at[0]} m {' l '.join(at[1:])} l"
        if type(mark) is Fill:
            return f"{_colour(mark.colour)} {path} h f"
        assert isinstance(mark, Stroke)
        dash = " ".join(f"{d * UNIT:.2f}" for d in mark.dash)
        colour = _colour(mark.colour).upper()
        return f"{colour} {mark.width:.3g} w [{dash}] 0 d {path} S"

    def _words(self, mark: Words, height: float) -> str:
        x, y, text, size, align, bold, colour = mark
        shown, width = self._encoded(text, bold)
        if align != "left":
            x -= width * size / UNIT * (1.0 if align == "right" else 0.5)
        return (
            f"BT {_colour(colour)} /{'B' if bold else 'R'} {size:.3g} Tf "
            f"{x * UNIT:.2f} {(height - y) * UNIT:.2f} Td <{shown}> Tj ET"
        )

    def _encoded(self, text: str, bold: bool) -> tuple[str, float]:
        """Write a text as numbers of glyphs, and its width [em]; most texts come often."""
        found = self.texts.get((text, bold))
        if found is None:
            known, shown, wide = self.glyphs[bold], "", 0.0
            for character in text:
                number, width = glyph(character, bold=bold)
                known[number] = character, width
                shown += f"{number:04x}"
                wide += width
            found = self.texts[text, bold] = shown, wide
        return found

    def finish(self, title: str) -> None:
        """Write what points at pages, the fonts, and the table of objects."""
        for number, jump, height in self.jumps:
            self._link(number, jump, height)
        fonts = {
            name: font_object(self._new, self._object, self._stream, used=used, bold=bold)
            for name, bold, used in (
                ("R", False, self.glyphs[False]),
                ("B", True, self.glyphs[True]),
            )
        }
        listed = " ".join(f"/{name} {number} 0 R" for name, number in fonts.items())
        self._object(self.FONTS, f"<< {listed} >>")
        kids = " ".join(f"{n} 0 R" for n in self.pages)
        self._object(self.PAGES, f"<< /Type /Pages /Kids [{kids}] /Count {len(self.pages)} >>")
        outlines = self._outlines()
        self._object(
            self.CATALOG,
            f"<< /Type /Catalog /Pages {self.PAGES} 0 R /Lang (en) {outlines}"
            "/ViewerPreferences << /DisplayDocTitle true >> >>",
        )
        self._object(
            self.INFO,
            f"<< /Title {_text(title)} /Subject {_text(CAUTION)} /Creator (boomsim) "
            f"/Producer (boomsim) /CreationDate ({DATE}) /ModDate ({DATE}) >>",
        )
        self._trailer()

    def _link(self, number: int, jump: Jump, height: float) -> None:
        left, top = jump.left * UNIT, (height - jump.top) * UNIT
        place = (
            f"{left:.2f} {top - jump.height * UNIT:.2f} {left + jump.width * UNIT:.2f} {top:.2f}"
        )
        target = self.pages[jump.page]
        self._object(
            number,
            f"<< /Type /Annot /Subtype /Link /Rect [{place}] /Border [0 0 0] "
            f"/Dest [{target} 0 R /Fit] >>",
        )

    def _outlines(self) -> str:
        """Write bookmarks, nested by their levels."""
        if not self.outline:
            return ""
        root, numbers = self._new(), [self._new() for _ in self.outline]
        parents, children = [root] * len(numbers), {n: list[int]() for n in [root, *numbers]}
        last: dict[int, int] = {0: root}
        for k, (_, level, _) in enumerate(self.outline):
            parents[k] = last[max(at for at in last if at < level)]
            last = {at: n for at, n in last.items() if at < level} | {level: numbers[k]}
            children[parents[k]].append(numbers[k])
        for k, (title, _, page) in enumerate(self.outline):
            beside = children[parents[k]]
            here = beside.index(numbers[k])
            entries = f"/Title {_text(title)} /Parent {parents[k]} 0 R "
            entries += f"/Dest [{self.pages[page]} 0 R /Fit] "
            entries += f"/Prev {beside[here - 1]} 0 R " if here else ""
            entries += f"/Next {beside[here + 1]} 0 R " if here + 1 < len(beside) else ""
            entries += _kids(children[numbers[k]], closed=True)
            self._object(numbers[k], f"<< {entries}>>")
        self._object(root, f"<< /Type /Outlines {_kids(children[root], closed=False)}>>")
        return f"/Outlines {root} 0 R /PageMode /UseOutlines "

    def _trailer(self) -> None:
        start = self.at
        rows = [f"{self.starts[n]:010d} 00000 n \n" for n in range(1, self.next)]
        self._put(f"xref\n0 {self.next}\n0000000000 65535 f \n{''.join(rows)}".encode("ascii"))
        self._put(
            f"trailer\n<< /Size {self.next} /Root {self.CATALOG} 0 R /Info {self.INFO} 0 R >>\n"
            f"startxref\n{start}\n%%EOF\n".encode("ascii")
        )


def _kids(numbers: list[int], *, closed: bool) -> str:
    if not numbers:
        return ""
    count = -len(numbers) if closed else len(numbers)
    return f"/First {numbers[0]} 0 R /Last {numbers[-1]} 0 R /Count {count} "
