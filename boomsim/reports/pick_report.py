"""What a judged pick says: the verdict, every check, what mistakes would have given."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.pick.pick_study import Pick


def as_json(found: "Pick") -> dict[str, Any]:
    """SI numbers."""
    inside = found.found
    reading, ground = inside.reading, inside.ground
    return {
        **setup_json(found.setup, extension=inside.boom.layout.extension),
        "extension": inside.boom.layout.extension[0],
        "boom_length": float(inside.boom.layout.boom_length[0]),
        "asked": found.asked,
        "state": found.state,
        "checks": rows(found),
        "boom_angle": inside.angle,
        "radius_loaded": inside.radius,
        "gross": inside.gross,
        "chart": None
        if reading is None
        else {
            "row": reading.row_radius,
            "capacity": None if reading.blank else reading.cell,
            "governing": reading.limit,
            "net": reading.net,
        },
        "floats": None
        if ground is None
        else {
            "slew": ground.loads.slew,
            "force": ground.force,
            "pressure": ground.pressure,
            "mat_area": ground.area,
        },
        "tips_at": found.tips_at,
        "mistakes": found.mistakes,
    }


def rows(found: "Pick") -> list[dict[str, Any]]:
    """One row for each check, in their order.

    Returns
    -------
    list of dict
        SI
    """
    return [
        {
            "check": check.key,
            "state": check.state,
            "quantity": check.quantity,
            "found": check.found,
            "limit": check.limit,
            "utilisation": check.utilisation,
        }
        for check in found.checks
    ]


def as_text(found: "Pick", *, units: str) -> str:
    """The verdict, a table, a sentence for each check, the mistakes."""
    from boomsim.rating.charts.reading_sentences import tell_misreading
    from boomsim.rating.pick.pick_sentences import SIGNS, shown_values, tell_check
    from boomsim.rating.pick.pick_sentences import tell_margin as margin
    from boomsim.rating.pick.pick_sentences import tell_verdict as verdict

    rows = [
        [f"{k}. {check.title}", *shown_values(check, units=units), SIGNS[check.state]]
        for k, check in enumerate(found.checks, start=1)
    ]
    said = [
        paragraph(f"{k}. {check.title.capitalize()}. {tell_check(check, found.found, units=units)}")
        for k, check in enumerate(found.checks, start=1)
    ]
    reading = found.found.reading
    wrong = [
        paragraph(f"- {tell_misreading(one, reading, units=units)}", width=94)
        for one in found.mistakes
        if reading is not None
    ]
    pieces = [
        paragraph(verdict(found, units=units)),
        paragraph(
            setup_text(found.setup, units=units, extension=found.found.boom.layout.extension)
        ),
        table(["check", "found", "limit", "utilisation", "on this model"], rows),
        "\n".join(said),
        "\n".join(["What a mistake would have given:", *wrong]) if wrong else "",
        paragraph(margin(found, units=units)),
        paragraph(CAUTION),
    ]
    return "\n\n".join(piece for piece in pieces if piece)


def summary(found: "Pick") -> str:
    """Say in a few words what was looked at."""
    from boomsim.rating.strategies import label
    from boomsim.units import show

    way = label(found.found.boom.layout.extension[0])
    return (
        f"{found.setup.machine.name}, extension {way} %, {show(found.asked.load, 'mass')} at "
        f"{show(found.asked.radius, 'length')}: {found.state}"
    )


def figure(found: "Pick", *, units: str) -> "Figure":
    """Draw the checks, and the crane from above."""
    from boomsim.figures.pick.pick_figure import figure_of_pick

    return figure_of_pick(found, units=units)
