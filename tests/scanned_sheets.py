"""Answer sheets filled in with a pencil and scanned, for tests: pictures of known answers."""

from dataclasses import dataclass

import numpy as np
import pypdfium2
from PIL import Image, ImageDraw, ImageFilter

from boomsim.papers.paper import Paper
from boomsim.papers.scans.sheet_drawing import answer_sheet_pdf
from boomsim.papers.scans.sheet_layout import CANDIDATE, LETTER, RADIUS, Bubble, Field, sheet_pages

DPI = 200
MM = DPI / 25.4


@dataclass(frozen=True, kw_only=True)
class Scanner:
    """How a scan goes wrong: degrees, size, skew, brightness, a slope of light, noise."""

    turn: float = 0.0
    size: float = 1.0
    skew: float = 0.0
    bright: float = 1.0
    slope: float = 0.0
    noise: float = 0.0
    blur: float = 0.0
    quarters: int = 0


def printed(paper: Paper) -> list[Image.Image]:
    """Empty pages, as printed."""
    document = pypdfium2.PdfDocument(answer_sheet_pdf(paper))
    return [page.render(scale=DPI / 72, grayscale=True).to_pil().convert("L") for page in document]


def fields(paper: Paper, page: int) -> dict[str, Field]:
    return {
        one.label: one for one in sheet_pages(paper.questions, units=paper.plan.units)[page].fields
    }


def bubble(column: tuple[Bubble, ...], says: str) -> Bubble:
    return next(one for one in column if one.says == says)


def bubbles_for(field: Field, text: str) -> list[Bubble]:
    """What a candidate fills in for an answer: "B", "004217" or "-12.5 kN*m"."""
    if not text:
        return []
    if field.kind == LETTER:
        return [bubble(field.columns[0], text)]
    if field.kind == CANDIDATE:
        return [bubble(field.columns[place], one) for place, one in enumerate(text)]
    number, _, unit = text.partition(" ")
    filled = [bubble(field.columns[0], "-")] if number.startswith("-") else []
    filled += [bubble(field.columns[1], unit)] if unit else []
    digits = number.removeprefix("-")
    return filled + [bubble(field.columns[2 + place], one) for place, one in enumerate(digits)]


def fill(
    image: Image.Image,
    one: Bubble,
    dice: np.random.Generator,
    *,
    share: float = 0.0,
    grey: int = -1,
) -> None:
    """A pencil: strokes to and fro within the bubble, not quite on its centre."""
    draw = ImageDraw.Draw(image)
    grey = int(dice.integers(20, 110)) if grey < 0 else grey
    radius = RADIUS * MM * (share or dice.uniform(0.85, 1.1))
    x, y = one.x * MM + dice.normal(0, 0.1 * MM), one.y * MM + dice.normal(0, 0.1 * MM)
    for level in np.arange(-radius, radius, 1.6):
        half = np.sqrt(max(radius**2 - level**2, 0))
        draw.line(
            [x - half, y + level + dice.normal(0, 0.5), x + half, y + level + dice.normal(0, 0.5)],
            fill=grey, width=2,
        )  # fmt: skip


def cross(image: Image.Image, one: Bubble) -> None:
    """Crossed out: two thick strokes over and beyond the bubble."""
    draw, reach = ImageDraw.Draw(image), 1.5 * RADIUS * MM
    x, y = one.x * MM, one.y * MM
    for way in (1, -1):
        draw.line([x - reach, y - way * reach, x + reach, y + way * reach], fill=30, width=4)


def scan(image: Image.Image, how: Scanner, dice: np.random.Generator) -> Image.Image:
    """Lay a page on the glass."""
    wide, high = image.size
    matrix = (1.0, how.skew, -how.skew * high / 2, 0.0, 1.0, 0.0)
    made = image.transform(image.size, Image.Transform.AFFINE, matrix, fillcolor=255,
                           resample=Image.Resampling.BICUBIC)  # fmt: skip
    made = made.rotate(how.turn, resample=Image.Resampling.BICUBIC, fillcolor=255)
    made = made.resize((round(wide * how.size), round(high * how.size)))
    if how.blur:
        made = made.filter(ImageFilter.GaussianBlur(how.blur))
    grey = np.asarray(made, dtype=float) / 255
    light = how.bright * (1 - how.slope * np.linspace(0, 1, grey.shape[1])[None, :])
    grey = grey * light + dice.normal(0, how.noise or 1e-9, grey.shape)
    out = Image.fromarray((np.clip(grey, 0, 1) * 255).astype(np.uint8))
    return out.rotate(90 * how.quarters, expand=True)
