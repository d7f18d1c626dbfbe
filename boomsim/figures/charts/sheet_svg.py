"""A sheet as SVG, with real text in it."""

from html import escape

from boomsim.caution import CAUTION
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Sheet, Stroke, Words
from boomsim.figures.charts.typeface import FAMILY
from boomsim.figures.colours_and_lines import PAPER
from boomsim.figures.svg_elements import document, element, point_list

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
    lines = [
        "",
        element("title", escape(sheet.title)),
        element("desc", escape(CAUTION)),
        element("rect", width="100%", height="100%", fill=PAPER),
        *(line for line in map(_mark, sheet.marks) if line),
        "",
    ]
    drawn = document(
        "\n".join(lines), width=f"{sheet.width:g}mm", height=f"{sheet.height:g}mm", role="img",
        viewBox=f"0 0 {sheet.width:g} {sheet.height:g}", font_family=FACES,
    )  # fmt: skip
    return f"{drawn}\n"


def _mark(mark: Mark) -> str:
    if isinstance(mark, Words):
        return element(
            "text", escape(mark.text), x=f"{mark.x:.3f}", y=f"{mark.y:.3f}",
            font_size=f"{mark.size * POINT:.3f}", text_anchor=ANCHORS[mark.align],
            fill=mark.colour, font_weight="bold" if mark.bold else None,
        )  # fmt: skip
    if isinstance(mark, Fill):
        return element("polygon", points=point_list(mark.points, ".3f"), fill=mark.colour)
    if isinstance(mark, Stroke):
        return element(
            "polyline", points=point_list(mark.points, ".3f"), fill="none", stroke=mark.colour,
            stroke_width=f"{mark.width * POINT:.3f}",
            stroke_dasharray=" ".join(map(str, mark.dash)) or None,
        )  # fmt: skip
    return ""
