"""What lesson 10 shows: what the model predicts, what was measured, whether they agree."""

import re
from collections.abc import Sequence

import numpy as np

from boomsim.figures.side.side_figure import figure_of_lift
from boomsim.lessons.lesson_10_tabletop import BOTTLE
from boomsim.lessons.lesson_display import Panel, Picture, Table, picture, table
from boomsim.lessons.lesson_sliders import Slides, measured
from boomsim.lessons.measured_mean import Measured, apart, combined, mean_of, verdict
from boomsim.lessons.shown.shown_parts import Shown, Stack
from boomsim.lessons.tabletop_prediction import (
    RADIUS,
    SIDE,
    WAYS,
    bench,
    rehearsal,
    shifts,
    small_mass,
    tips_at,
)
from boomsim.machine.model import Rigging
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.setup import set_up
from boomsim.units import show

INVENTED = "Nothing measured yet: these readings are invented, to rehearse with."

TRIED, LIGHT = (0.7, 0.8, 0.9, 1.0), 0.3
"""Radii of the shaky crane [m], a load to look for tipping from [kg]."""


def with_bottle(units: str) -> Picture:
    """Draw the tabletop boom with a bottle."""
    at = hung_at(
        set_up(bench(), slew=SIDE), extension=np.array(WAYS["B"]), load=BOTTLE, radius=RADIUS
    )
    return picture(figure_of_lift(at, units=units), "The tabletop boom with a bottle.")


def predicted(units: str) -> Table:
    """List at which load each way tips."""
    rows = [(way, show(tips_at(bench(), way), "mass", units)) for way in WAYS]
    return table("way | tips at", *rows, capacity=True)


def agree(units: str, **readings: Sequence[str]) -> Stack:
    """Set prediction and measurement side by side.

    Parameters
    ----------
    units : str
    **readings : sequence of str
        For each way, with their units; all empty: invented ones
    """
    invented = not any(readings.values())
    taken = {way: rehearsal(way, units=units) for way in WAYS} if invented else readings
    means = {way: mean_of(texts) for way, texts in taken.items() if texts}
    unsure = combined(shifts(bench(), "B"))
    rows = [_row(way, one, unsure, units) for way, one in means.items()]
    head = "way | mean of readings | ± | readings | predicted | apart, in ± | they"
    shown = table(head, *rows, capacity=True)
    return Stack(Panel(words=(INVENTED,)), shown) if invented else Stack(shown)


def _row(way: str, one: Measured, unsure: float, units: str) -> tuple[object, ...]:
    said = tips_at(bench(), way)
    off = apart(said, one.mean, uncertainties=(unsure, one.uncertainty))
    mean, spread = show(one.mean, "mass", units), small_mass(one.uncertainty, units)
    return way, mean, spread, one.count, show(said, "mass", units), f"{off:.1f}", verdict(off)


def unsure_of(units: str) -> Table:
    """List what each input shifts the prediction by."""
    parts = shifts(bench(), "B")
    rows = [(_amount(what, units), small_mass(shift, units)) for what, shift in parts.items()]
    return table(
        "unsure of | shifts B by", *rows, ("together ±", small_mass(combined(parts), units))
    )


def _amount(words: str, units: str) -> str:
    """Name what is changed with its amount, "2 mm" or "10 g", in a lesson's units."""
    if units == "metric":
        return words
    number, unit = re.findall(r"(\d+) (mm|g)\b", words)[0]
    value = float(number) / 1000.0
    said = small_mass(value, units) if unit == "g" else show(value, "small_length", units)
    return words.replace(f"{number} {unit}", said)


def shaky(units: str) -> Stack:
    """Take the counterweight away, put the feet close together, and read only once."""
    setup = set_up(bench(), rigging=Rigging(counterweight="none", support="narrow"), slew=SIDE)
    rows = []
    for radius in TRIED:
        found = lift(setup, extension=np.array([1.0, 1.0]), load=0.0, radius=radius)
        at = show(radius, "length", units)
        left = found.tipping_load
        rows.append((at, show(left, "mass", units) if left > 0.0 else "nothing"))
    shown = table("radius | tips at", *rows, capacity=True)
    try:
        mean_of(["1 kg"])
    except ValueError as refused:
        return Stack(shown, Panel(words=tuple(str(refused).splitlines())))
    raise AssertionError("One reading was enough.")


def live(units: str) -> Slides:
    """Take bottles of counterweight away and move the bottle out."""
    names = [one.name for one in bench().counterweights[::-1]]
    most = len(names) - 1

    def view(bottles_of_counterweight: int, radius: float) -> Stack:
        rigging = Rigging(counterweight=names[bottles_of_counterweight])
        setup = set_up(bench(), rigging=rigging, slew=SIDE)
        rows = []
        for way, out in WAYS.items():
            one = lift(setup, extension=np.array(out), load=LIGHT, radius=radius)
            rows.append((way, show(one.tipping_load, "mass", units)))
        at = hung_at(setup, extension=np.array(WAYS["B"]), load=LIGHT, radius=radius)
        words = f"The tabletop boom with {bottles_of_counterweight} bottles of counterweight."
        return Stack(
            table("way | tips at", *rows, capacity=True),
            picture(figure_of_lift(at, units=units), words),
        )

    marks = {"m": (0.7, 0.9, 0.05, RADIUS), "ft": (2.3, 2.9, 0.1, 2.6)}
    return Slides(
        view,
        bottles_of_counterweight=(0, most, 1, most),
        radius=measured("radius", "length", units, **marks),
    )


SHOWN = Shown(
    views={
        "the boom with a bottle": with_bottle,
        "what the model predicts": predicted,
        "whether they agree": agree,
        "what is unsure": unsure_of,
        "a shaky crane": shaky,
    },
    live=live,
)
