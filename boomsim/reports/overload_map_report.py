"""What an overload map says: what would come first, all over a chart."""

from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.overload.overload_map import OverloadMap


def as_json(found: "OverloadMap") -> dict[str, Any]:
    """The map, SI; rows are radii, columns are boom lengths."""
    chart = found.chart
    names = [limit.key for limit in found.limits]
    return {
        **setup_json(chart.setup),
        "radii": chart.radii,
        "lengths": chart.length,
        "extensions": [
            [chart.configurations.extension[i] if i >= 0 else None for i in row]
            for row in chart.used
        ],
        "rated": chart.exact,
        "rated_by_strength": chart.structural,
        "failure": found.failure,
        "gives_way": [[names[i] if i >= 0 else None for i in row] for row in found.gives_way],
        "tipping": found.tipping,
        "ratio": found.ratio,
    }


def as_text(found: "OverloadMap", *, units: str) -> str:
    """For each boom length up to which radius the crane breaks first."""
    import numpy as np

    from boomsim.rating.charts.reading_sentences import which_chart
    from boomsim.rating.overload.overload_map import meeting_radii, ratio_words
    from boomsim.units import show

    chart, rows = found.chart, []
    for column, length in enumerate(chart.length):
        known = np.flatnonzero(~np.isnan(found.ratio[:, column]))
        if not len(known):
            continue
        ratio = found.ratio[known, column]
        met = meeting_radii(found, column)
        inside = ", ".join(show(radius, "length", units) for radius in met)
        if not met:
            inside = "everywhere" if np.all(ratio < 1.0) else "nowhere"
        rows.append(
            [
                show(float(length), "boom_length", units),
                f"{show(float(chart.radii[known[0]]), 'length', units)} to "
                f"{show(float(chart.radii[known[-1]]), 'length', units)}",
                inside,
                ratio_words(float(ratio.min())),
                f"{np.min(found.breaks_at[known, column]):.2f}",
            ]
        )
    head = ["boom length", "radii", "breaks first within", "least ratio", "breaks from x rated"]
    breaks, rated = int(found.breaks_first.sum()), int(chart.rated.sum())
    said = (
        f"In {breaks} of {rated} cells something gives way before the crane tips. The chart is the "
        f"one with {which_chart(chart)}. "
        "The ratio is the load of the first failure over the tipping load, both without "
        "margins, at the boom angle of the rated load."
    )
    about = paragraph(setup_text(chart.setup, units=units))
    text = [about, table(head, rows), paragraph(said), paragraph(CAUTION)]
    return "\n\n".join(text)


def summary(found: "OverloadMap") -> str:
    """Say in a few words what was looked at."""
    breaks, rated = int(found.breaks_first.sum()), int(found.chart.rated.sum())
    return f"{found.chart.setup.machine.name}, breaks first in {breaks} of {rated} rated cells"


def figure(found: "OverloadMap", *, units: str) -> "Figure":
    """Draw what would come first in every cell."""
    from boomsim.figures.overload.overload_map_figure import figure_of_overload_map

    return figure_of_overload_map(found, units=units)
