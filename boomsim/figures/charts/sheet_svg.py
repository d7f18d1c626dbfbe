"""A sheet as SVG, with real text in it."""

from html import escape

from boomsim.caution import CAUTION
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Sheet, Stroke, Words
from boomsim.figures.charts.typeface import FAMILY
from boomsim.figures.colours_and_lines import PAPER

FACES = f"{FAMILY}, 'STIX Two Text', 'Times New Roman', 'Liberation Serif', serif"
"""Where the first is missing, the next have figures of the same width."""

ANCHORS = {"left": "start", "center": "middle", "right": "end"}


def svg_text(sheet: Sheet) -> str:
    """Draw a sheet.

    Returns
    -------
    str
        A whole SVG document; a millimetre is a unit
    """
    size = f'width="{sheet.width:g}mm" height="{sheet.height:g}mm"'
    marks = "\n".join(line for line in map(_mark, sheet.marks) if line)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} role="img" '
        f'viewBox="0 0 {sheet.width:g} {sheet.height:g}" '
        f'font-family="{FACES}">\n'
        f"<title>{escape(sheet.title)}</title>\n<desc>{escape(CAUTION)}</desc>\n"
        f'<rect width="100%" height="100%" fill="{PAPER}"/>\n{marks}\n</svg>\n'
    )


def _mark(mark: Mark) -> str:
    if isinstance(mark, Words):
        weight = ' font-weight="bold"' if mark.bold else ""
        return (
            f'<text x="{mark.x:.3f}" y="{mark.y:.3f}" font-size="{mark.size * POINT:.3f}" '
            f'text-anchor="{ANCHORS[mark.align]}" fill="{mark.colour}"{weight}>'
            f"{escape(mark.text)}</text>"
        )
    if isinstance(mark, Fill):
        return f'<polygon points="{_points(mark)}" fill="{mark.colour}"/>'
    if isinstance(mark, Stroke):
        dash = f' stroke-dasharray="{" ".join(map(str, mark.dash))}"' if mark.dash else ""
        return (
            f'<polyline points="{_points(mark)}" fill="none" stroke="{mark.colour}" '
            f'stroke-width="{mark.width * POINT:.3f}"{dash}/>'
        )
    return ""


def _points(mark: Stroke | Fill) -> str:
    return " ".join(f"{x:.3f},{y:.3f}" for x, y in mark.points)
