"""Lesson 10: build the tabletop boom, predict, measure, compare."""

import math

import numpy as np

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_02_same_length import MIDDLE
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.measured_mean import combined, mean_of
from boomsim.lessons.self_check import Check
from boomsim.lessons.tabletop_prediction import (
    MACHINE,
    RADIUS,
    SIDE,
    SMALL,
    WAYS,
    bench,
    reading_text,
    shifts,
    small_mass,
    tips_at,
)
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import label
from boomsim.units import parse, show

OFFSETS = (-0.02, 0.01, 0.03, -0.01, 0.02)
"""Of the invented readings of the self-check from the prediction [kg]."""

BOTTLE = 0.5
"""A load for the picture [kg]."""


def _bench_guess(units: str) -> Guess:
    listed = "; ".join(f"{k}: {label(np.array(out))} %" for k, out in WAYS.items())
    return Guess(
        question=(
            "The tabletop boom is run out to one length in three ways (percent of stroke, the "
            f"larger tube first). {listed}. A bottle hangs over the side, "
            f"{show(RADIUS, 'length', units)} from the axis. Water is poured in until a foot lifts "
            "and the crane tips. Which way takes most water, and at which load does that one tip?"
        ),
        parts=2,
        answers=_bench_truths,
        units=units,
    )


def _bench_truths() -> tuple[Truth, Truth]:
    found = {way: tips_at(bench(), way) for way in WAYS}
    most = max(found.values())
    line = max(y for _, y in bench().supports[0].points)
    return (
        Truth(
            what="takes most",
            answer=max(found, key=lambda way: found[way]),
            slips={
                MIDDLE: "B",
                "thought that the strong tube should be the one that is out: but nothing is near "
                "breaking": "C",
            },
        ),
        Truth(
            what="tips at",
            answer=most,
            quantity="mass",
            slips={
                "took the load's lever arm from the axis, not from the line between the feet":
                    most * (RADIUS - line) / RADIUS,
            },
        ),
    )  # fmt: skip


def check_readings(units: str) -> list[str]:
    """Invent the readings of the self-check."""
    usual = tips_at(bench(), "B")
    return [reading_text(usual + offset, units) for offset in OFFSETS]


def _bench_check(units: str) -> Check:
    readings = check_readings(units)
    found = mean_of(readings)
    n = found.count
    values = [parse(text, "mass") for text in readings]
    return Check(
        question=(
            f"Invented readings of B: {', '.join(readings)}. What is the standard uncertainty of "
            "their mean?"
        ),
        answer=found.uncertainty,
        quantity="mass",
        unit=SMALL[units],
        slips={
            "gave the standard deviation of one reading: divide by the root of their number":
                found.spread,
            "divided by the number of readings, not by its root": found.spread / n,
            "divided the squares by n instead of n - 1": found.spread * math.sqrt((n - 1) / n**2),
            "gave half the range of the readings": (max(values) - min(values)) / 2.0,
            "gave the mean itself": found.mean,
        },
        working=(
            f"The readings spread by s = {small_mass(found.spread, units)}; their mean by s / root "
            f"of {n}."
        ),
        tolerance=0.03,
        units=units,
    )  # fmt: skip


def _bench_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_lifts

    machine = bench()
    at = hung_at(
        set_up(machine, slew=SIDE), extension=np.array(WAYS["B"]), load=BOTTLE, radius=RADIUS
    )
    rows: list[tuple[str | Blank, ...]] = []
    for way, out in WAYS.items():
        predicted = tips_at(machine, way)
        spread = combined(shifts(machine, way))
        rows.append((
            f"{way}: {label(np.array(out))} %",
            show(predicted, "mass", units),
            small_mass(spread, units),
            *(Blank(text="") for _ in range(6)),
        ))  # fmt: skip
    return Sheet(
        given=(
            "The tabletop boom: three square tubes, two bottles of water as a counterweight, four "
            "feet. Hang an empty bottle over the side and pour in water, a little at a time, until "
            "the crane tips. Weigh all that hung: bottle, water, cord and hook. Keep hands from "
            "under it."
        ),
        figure=lambda: figure_of_lifts([at], units=units),
        seen="The tabletop boom from the side with its dimensions and a load.",
        head=("way", "predicted", "± of it", "1st", "2nd", "3rd", "4th", "mean", "± of it"),
        rows=tuple(rows),
        task="Measure each way four times. Are prediction and mean less than two of their ± apart?",
        why="What would you measure more carefully to make the prediction better?",
        because=(
            "Whatever shifts the predicted load most: for this boom how far the feet stand apart, "
            "for their line is what the crane turns over about."
        ),
    )


BENCH = Lesson(
    number="10",
    name="tabletop-boom",
    title="Does a tabletop boom do what the model says?",
    able=(
        "predict a tipping load and say how sure the prediction is",
        "measure it several times and give the mean with its uncertainty",
        "judge whether prediction and measurement agree",
    ),
    machine=MACHINE,
    guess=_bench_guess,
    check=_bench_check,
    sheet=_bench_sheet,
)
