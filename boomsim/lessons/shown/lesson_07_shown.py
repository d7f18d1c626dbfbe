"""What lesson 07 shows: events in their order, both ends over radius, the boom built anew."""

from functools import lru_cache

from boomsim.figures.builds.builds_figure import figure_of_builds
from boomsim.figures.overload.overload_figure import figure_of_overload
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE
from boomsim.lessons.lesson_07_breaks_or_tips import FAR, NEAR, past_rated
from boomsim.lessons.lesson_display import Panel, Picture, Table, percent, picture, table
from boomsim.lessons.lesson_sliders import Slides, measured
from boomsim.lessons.shown.shown_parts import Shown, Stack
from boomsim.machine.machine_files import load_machine
from boomsim.rating.builds.builds_sentences import builds_in_short
from boomsim.rating.builds.builds_study import Builds, compare_builds, finely
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.limits.limit_kind import PERMISSIBLE
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.setup import set_up
from boomsim.units import show, show_rated

ALONG = (5.0, 6.0, 7.0, 9.0, 11.0, 12.0)
"""Radii from close in to far out [m]."""

BUILT = (0.8, 1.0, 1.3)
"""Plate thicknesses of the light boom, the boom as it is and the stout one [1]."""

BUILT_AT = (6.0, FAR)
"""Radii at which the builds are told apart [m]."""


def first(found: Overload) -> str:
    """Say which end comes first."""
    return "tips" if found.warns else "breaks"


def events(found: Overload, units: str) -> Table:
    """List what happens as the load grows, in the order of the load."""
    rows = [("rated load", show_rated(found.rated, units), "1.00", found.rated)]
    for e in found.events:
        words = f"{e.words}: permissible value passed" if e.kind == PERMISSIBLE else e.words
        rows.append((words, show(e.load, "mass", units), f"{e.multiple:.2f}", e.load))
    head = f"at {show(found.radius, 'length', units)} | load | times rated"
    return table(head, *(row[:3] for row in sorted(rows, key=lambda row: row[3])), capacity=True)


def in_order(units: str) -> Stack:
    """List what happens close in and far out."""
    return Stack(events(past_rated(NEAR), units), events(past_rated(FAR), units))


def ends(units: str) -> Table:
    """Say how far from either end the rated load stays."""
    rows = []
    for name, radius in (("close in", NEAR), ("far out", FAR)):
        one = past_rated(radius)
        assert one.failure is not None and one.tipping is not None
        both = [f"{e.multiple:.2f} x rated" for e in (one.failure, one.tipping)]
        rows.append((name, *both, first(one)))
    return table("where | would break at | would tip at | first it", *rows, capacity=True)


def heavy_out(units: str) -> Stack:
    """Put the heaviest section out instead, a metre farther out."""
    found = _heavy_past_rated()
    words = f"With the heaviest moving section out it {first(found)} first."
    return Stack(Panel(words=(words,)), events(found, units))


def along(units: str) -> Table:
    """Go from close in to far out."""
    rows = []
    for radius in ALONG:
        one = past_rated(radius)
        at = show(radius, "length", units)
        rows.append((at, one.governing.set_by, percent(one.ratio), first(one)))
    head = "radius | sets the figure | breaks at … of the tipping load | first it"
    return table(head, *rows, capacity=True)


@lru_cache(maxsize=1)
def _heavy_past_rated() -> Overload:
    setup = set_up(load_machine(MACHINE))
    heavy = demonstration(setup.machine.boom).extension[2]
    return overload(setup, extension=heavy, radius=NEAR + 1.0)


@lru_cache(maxsize=1)
def _built() -> Builds:
    setup = set_up(load_machine(MACHINE))
    light = demonstration(setup.machine.boom).extension[0]
    return compare_builds(setup, factors=BUILT, extension=light)


def builds(units: str) -> Stack:
    """Build the same boom light and stout."""
    found = _built()
    figure = figure_of_builds(finely(found), at=BUILT_AT, units=units)
    return Stack(
        picture(figure, "The same boom built light, as it is, and stout."),
        Panel(words=tuple(builds_in_short(found, at=BUILT_AT, units=units))),
    )


def live(units: str) -> Slides:
    """Let the load go in and out."""

    def view(radius: float) -> Picture:
        found = past_rated(float(radius))
        at = show(found.radius, "length", units)
        words = f"What happens at {at} as the load grows: first it {first(found)}."
        return picture(figure_of_overload(found, units=units), words)

    marks = {"m": (4, 16, 1, 8), "ft": (13, 52, 3, 25)}
    return Slides(view, radius=measured("radius", "length", units, **marks))


SHOWN = Shown(
    views={
        "in the order of the load": in_order,
        "both ends": ends,
        "another section out": heavy_out,
        "from close in to far out": along,
        "old against new": builds,
    },
    live=live,
)
