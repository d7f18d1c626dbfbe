"""Scans as grey pictures: PDF, PNG, JPEG and TIFF, page by page."""

import io
from collections.abc import Iterator
from pathlib import Path

import numpy as np
from PIL import Image, ImageSequence, UnidentifiedImageError

from boomsim.files.file_errors import FileError
from boomsim.files.text_reading import read_bytes
from boomsim.papers.paper_errors import PaperError
from boomsim.papers.scans.sheet_finding import Grey

LARGEST_FILE = 1_000_000_000
PER_INCH = 200
"""Resolution at which the pages of a PDF are drawn [1/in]."""
MOST_PIXELS = 120_000_000
LEAST_WIDTH = 800
"""A bubble is then some thirteen pixels wide [px]."""


def scanned_pages(path: str | Path) -> Iterator[tuple[str, Grey]]:
    """Read all pages of a file.

    Yields
    ------
    (str, array (height, width))
        "scans.pdf, page 2" and how bright each pixel is, from 0 to 1

    Raises
    ------
    PaperError
        If it is no file of scans
    """
    source = Path(path)
    try:
        data = read_bytes(source, most=LARGEST_FILE)
    except FileError as error:
        raise PaperError(str(error)) from None
    pages = _of_pdf(data, source.name) if data[:5] == b"%PDF-" else _of_picture(data, source.name)
    for number, picture in enumerate(pages, start=1):
        if picture.width < LEAST_WIDTH:
            raise PaperError(
                f"{source.name}, page {number} is {picture.width} pixels wide, and {LEAST_WIDTH} "
                "are needed. Scan it with 150 dots an inch or more."
            )
        grey = np.asarray(picture.convert("L"), dtype=np.float32) / 255.0
        yield f"{source.name}, page {number}", grey


def _of_picture(data: bytes, name: str) -> Iterator[Image.Image]:
    """Frames of a picture; a TIFF may have many."""
    try:
        with Image.open(io.BytesIO(data)) as opened:
            for frame in ImageSequence.Iterator(opened):
                _refuse_giants(frame.width * frame.height, name)
                yield frame.copy()
    except (UnidentifiedImageError, OSError, SyntaxError, ValueError, Image.DecompressionBombError):
        raise PaperError(
            f"{name} is no picture that can be read. Save the scans as PDF, PNG, JPEG or TIFF."
        ) from None


def _of_pdf(data: bytes, name: str) -> Iterator[Image.Image]:
    """Pages of a PDF, drawn."""
    try:
        import pypdfium2
    except ImportError:
        raise PaperError(
            f"To read {name}, install boomsim[papers], which brings pypdfium2; or save the scans "
            "as PNG, JPEG or TIFF."
        ) from None
    try:
        document = pypdfium2.PdfDocument(data)
        pages = len(document)
    except pypdfium2.PdfiumError:
        raise PaperError(f"{name} is no PDF that can be read. Scan the sheets again.") from None
    for number in range(pages):
        page = document[number]
        scale = PER_INCH / 72
        _refuse_giants(page.get_width() * page.get_height() * scale**2, name)
        yield page.render(scale=scale, grayscale=True).to_pil()


def _refuse_giants(pixels: float, name: str) -> None:
    """Refuse a page that would fill the memory."""
    if not pixels <= MOST_PIXELS:
        raise PaperError(
            f"{name} has a page of {pixels / 1e6:.0f} million pixels, and at most "
            f"{MOST_PIXELS // 1_000_000} million are read. Scan with 200 to 300 dots an inch."
        )
