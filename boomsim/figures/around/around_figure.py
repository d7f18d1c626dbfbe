"""Picture of all around the crane: capacity, plan, what the floats carry, the two sectors."""

from matplotlib.figure import Figure

from boomsim.figures.around.float_load_lines import draw_reaction_key, draw_reactions
from boomsim.figures.around.sector_lines import draw_sectors
from boomsim.figures.around.slew_polar import draw_polar
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.figure_panels import heading
from boomsim.figures.plan.plan_shape import plan_of
from boomsim.figures.plan.plan_view import CENTRE_WORDS, draw_plan
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.machine.part_names import foot_name
from boomsim.rating.around.float_loads import GroundLoads
from boomsim.rating.around.over_rear_sector import Sectors
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.around.slew_study import Around
from boomsim.rating.lift_response import Response
from boomsim.rating.strategies import label
from boomsim.units import show, show_rated

WIDTH, HEIGHT = 0.19, 0.176
"""Of the page [m]."""

HALF, LOWER = 0.0895, 0.064
"""Width of a panel, height of the lower ones with their headings [m]."""


def figure_of_around(
    found: Around,
    *,
    at: Response,
    ground: GroundLoads,
    sectors: Sectors,
    units: str = "metric",
) -> Figure:
    """Draw all around the crane.

    Parameters
    ----------
    found : Around
        At a few radii
    at : Response
        One lift, seen from above
    ground : GroundLoads
        Of that lift through a whole turn
    sectors : Sectors
        Over many radii
    """
    load = show_rated(float(at.state.load[0, 0]), units)
    where = show(float(at.radius[0, 0]), "length", units)
    length = show(float(at.boom.layout.boom_length[0]), "boom_length", units)
    page = new_page(
        width=WIDTH,
        height=HEIGHT,
        title=f"{machine_words(found.setup)} all around: {load} at {where}, boom {length}",
        subtitle=f"extension {label(found.extension)} %; "
        + setup_words(found.setup, units=units, extension=found.extension),
        foot=allowance_words(found.setup.rule, units=units),
    )
    _upper(page, found, at, units)
    _lower(page, ground, sectors, at, units)
    return page.figure


def _upper(page: Page, found: Around, at: Response, units: str) -> None:
    top, bottom = page.room[1], LOWER
    heading(
        page,
        "Rated load against where the boom points",
        left=0.0,
        top=top,
        width=HALF,
        note="whole, heavy: stability sets it; broken: strength or a permissible value; dotted: "
        "the load",
    )
    high = top - bottom - 0.0085
    draw_polar(
        page.axes(left=0.0, bottom=bottom, width=HALF, height=high),
        found,
        units=units,
        load=float(at.state.load[0, 0]),
    )
    shape = plan_of(at)
    left = page.room[0] - HALF
    heading(
        page,
        f"From above, {direction(shape.slew)}",
        left=left,
        top=top,
        width=HALF,
        note=f"forces of the {foot_name(at.setup.support)}s; ring: the resultant's path all "
        f"around, dotted: hook empty; {CENTRE_WORDS}",
    )
    draw_plan(
        page.axes(left=left, bottom=bottom, width=HALF, height=high - 0.006), shape, units=units
    )


def _lower(page: Page, ground: GroundLoads, sectors: Sectors, at: Response, units: str) -> None:
    top, support = LOWER - 0.004, at.setup.support
    area = show(ground.area, "area", units)
    foot = foot_name(support)
    what = "mats" if ground.area > support.area else f"{foot}s"
    heading(page, f"What each {foot} carries, on {what} of {area}", left=0.0, top=top, width=HALF)
    key = page.axes(left=0.006, bottom=top - 0.0125, width=HALF - 0.012, height=0.0085)
    draw_reaction_key(key, support)
    high = top - 0.0175 - 0.0095
    draw_reactions(
        page.axes(left=0.0085, bottom=0.0095, width=HALF - 0.020, height=high),
        ground,
        support,
        units=units,
    )
    left = page.room[0] - HALF
    heading(page, "All around and over the rear", left=left, top=top, width=HALF)
    draw_sectors(
        page.axes(
            left=left + 0.0085, bottom=0.0095, width=HALF - 0.0105, height=top - 0.009 - 0.0095
        ),
        sectors,
        units=units,
    )
