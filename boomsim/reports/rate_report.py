"""What rated loads say: a table of ways to extend over radius."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from boomsim.rating.capacity import Rating


def as_json(found: "Rating") -> dict[str, Any]:
    """SI; rows are ways to extend, columns radii."""
    rows, columns = found.capacity.shape
    limits = [[found.limit(i, k) for k in range(columns)] for i in range(rows)]
    return {
        **setup_json(found.setup),
        "extension": found.boom.layout.extension,
        "length": found.boom.layout.boom_length,
        "radii": found.radius[0],
        "capacity": found.capacity,
        "governing": [[limit.key if limit else None for limit in row] for row in limits],
        "set_by": [[limit.set_by if limit else None for limit in row] for row in limits],
        "tipping_load": found.tipping_load,
        "boom_angle": found.angle,
        "tip_deflection": found.tip_deflection,
        "within_model_range": found.valid,
    }


def as_text(found: "Rating", *, units: str) -> str:
    """Lay out rated loads, a column for each way to extend."""
    from boomsim.rating.limits.limit_sentences import signs_in_words
    from boomsim.rating.strategies import label
    from boomsim.units import show

    ways = found.boom.layout.extension
    heads = [f"({label(way)})" for way in ways]
    rows = []
    for k, radius in enumerate(found.radius[0]):
        cells = [_cell(found, way, k, units) for way in range(len(heads))]
        rows.append([show(float(radius), "length", units), *cells])
    return "\n\n".join(
        [
            paragraph(f"{setup_text(found.setup, units=units, extension=ways)} Rated gross loads."),
            table(["radius", *heads], rows),
            paragraph(
                f"Extension of each moving section in percent, base side first. {signs_in_words()}"
            ),
            paragraph(CAUTION),
        ]
    )


def _cell(found: "Rating", way: int, column: int, units: str) -> str:
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.units import show_rated

    limit = found.limit(way, column)
    if limit is None:
        return "- "
    return f"{show_rated(float(found.capacity[way, column]), units)}{sign(limit) or ' '}"


def summary(found: "Rating") -> str:
    """Say in a few words what was rated."""
    rows, columns = found.capacity.shape
    return f"{found.setup.machine.name}, {rows} ways to extend x {columns} radii"
