"""The picture of `slabs`: for each slab, the radii at which the crane lifts it."""

from matplotlib.figure import Figure

from boomsim.figures.figure_page import new_page
from boomsim.figures.figure_panels import heading
from boomsim.figures.setup_words import allowance_words, machine_words, rule_words
from boomsim.figures.slabs.slab_bands import draw_bands, draw_key
from boomsim.rating.slabs.slabs_sentences import tell_first, tell_stage
from boomsim.rating.slabs.slabs_study import Slabs

WIDTH = 0.19
ROW, AROUND = 0.0064, 0.052
"""Height of a way out, and of all that is above and below them [m]."""

NAMES, BETWEEN, KEY = 0.013, 0.006, 0.0085
"""Room for the names of the ways out, between panels, and for the key [m]."""


def figure_of_slabs(found: Slabs, *, units: str = "metric") -> Figure:
    """Draw the picture of `slabs`."""
    setup, count = found.setup, len(found.ways.length)
    page = new_page(
        width=WIDTH,
        height=AROUND + ROW * max(count, 6),
        title=tell_first(found, units=units),
        subtitle=f"{machine_words(setup)}, {setup.sector}, a row for each boom length; "
        f"{rule_words(setup.rule, support_kind=setup.support.kind)}",
        foot=allowance_words(setup.rule, units=units),
    )
    top, panels = page.room[1], len(found.stages)
    draw_key(page.axes(left=NAMES, bottom=top - KEY, width=page.room[0] - NAMES, height=KEY), found)
    wide = (page.room[0] - NAMES - BETWEEN * (panels - 1)) / panels
    for number, stage in enumerate(found.stages):
        left = NAMES + number * (wide + BETWEEN)
        words, _, note = tell_stage(stage, units=units).partition("; ")
        heading(page, words, left=left, top=top - KEY, width=wide, note=note)
        ax = page.axes(left=left, bottom=0.0095, width=wide, height=top - KEY - 0.0095 - 0.0085)
        draw_bands(ax, found, found.bands_of(stage), units=units, names=number == 0)
    return page.figure
