"""The lift that each lesson asks about, as a scene of the live page."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np

from boomsim.lab.live.scene_address import to_address
from boomsim.lab.scene.scene import Look, Scene, first_scene, machine_of, setup_of
from boomsim.lab.scene.scene_check import checked
from boomsim.lab.scene.slider_ranges import rounded
from boomsim.lessons import lesson_03_why_not_half as half
from boomsim.lessons import lesson_04_strong_close_in as close_in
from boomsim.lessons import lesson_05_turns_over as over
from boomsim.lessons import lesson_06_reading_a_chart as chart
from boomsim.lessons import lesson_07_breaks_or_tips as breaks
from boomsim.lessons import lesson_08_gross_to_net as net
from boomsim.lessons import lesson_09_what_eats_capacity as eats
from boomsim.lessons import tabletop_prediction as tabletop
from boomsim.lessons.lesson_01_what_a_section_is import last_out
from boomsim.lessons.lesson_02_same_length import ASKED
from boomsim.lessons.lesson_parts import Lesson
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate
from boomsim.rating.comparison.comparison_study import demonstration

PART_LOAD = 0.6
"""Of the rated load there, where a lesson names no load of its own [1]."""


def lesson_scene(lesson: Lesson) -> Scene:
    """Set up what a lesson asks about.

    Returns
    -------
    Scene
        A lift that stands, within its rated load
    """
    chosen = _CHOSEN[lesson.number](lesson)
    if "load" not in chosen:
        chosen["load"] = 0.0
        bare = checked(replace(first_scene(lesson.machine), **chosen))
        out, radius = np.array(bare.extension), np.array([bare.radius])
        rated = rate(setup_of(bare), extension=out, radius=radius)
        chosen["load"] = rounded(PART_LOAD * float(rated.capacity[0, 0]))
    return checked(replace(first_scene(lesson.machine), **chosen))


def lesson_address(lesson: Lesson, *, units: str) -> str:
    """Write a lesson's scene as the part of a live page's address after its # sign.

    Parameters
    ----------
    units : str
        "metric" or "us"
    """
    return to_address(lesson_scene(lesson), Look(units=units))


def _row(extension: Array) -> tuple[float, ...]:
    return tuple(float(one) for one in extension)


def _shown(lesson: Lesson, row: int) -> tuple[float, ...]:
    """One of the ways that a machine's demonstration shows."""
    return _row(demonstration(machine_of(lesson.machine).boom).extension[row])


def _section(lesson: Lesson) -> dict[str, Any]:
    return {"extension": _row(last_out())}


def _same_length(lesson: Lesson) -> dict[str, Any]:
    return {"extension": _shown(lesson, 1), "radius": ASKED}


def _half(lesson: Lesson) -> dict[str, Any]:
    out = _row(half.half_ways().extension[0])
    return {"extension": out, "radius": half.AT, "load": half.LOAD}


def _close_in(lesson: Lesson) -> dict[str, Any]:
    return {"extension": _shown(lesson, 0), "radius": close_in.CLOSE, "load": close_in.HEAVY}


def _over(lesson: Lesson) -> dict[str, Any]:
    return {
        "extension": _row(over.half_out()),
        "radius": over.RADIUS,
        "load": over.LOAD,
        "slew": round(over.DIRECTIONS["side"], 9),
        "rated_for": "here",
    }


def _chart(lesson: Lesson) -> dict[str, Any]:
    """The column that is read: the next longer boom."""
    ways = chart.few_ways()
    longer = int(np.argmax(ways.length >= chart.LENGTH))
    return {"extension": _row(ways.extension[longer]), "radius": chart.RADIUS}


def _breaks(lesson: Lesson) -> dict[str, Any]:
    return {"extension": _shown(lesson, 0), "radius": breaks.NEAR}


def _net(lesson: Lesson) -> dict[str, Any]:
    out = _row(chart.few_ways().extension[net.COLUMN])
    return {"extension": out, "radius": net.NET_RADIUS, "parts": net.NET_PARTS}


def _eats(lesson: Lesson) -> dict[str, Any]:
    return {"extension": _shown(lesson, 0), "radius": eats.NEAR}


def _tabletop(lesson: Lesson) -> dict[str, Any]:
    return {
        "extension": tabletop.WAYS["A"],
        "radius": tabletop.RADIUS,
        "load": tabletop.BOTTLE,
        "slew": round(tabletop.SIDE, 9),
        "rated_for": "here",
    }


_CHOSEN: dict[str, Callable[[Lesson], dict[str, Any]]] = {
    "01": _section,
    "02": _same_length,
    "03": _half,
    "04": _close_in,
    "05": _over,
    "06": _chart,
    "07": _breaks,
    "08": _net,
    "09": _eats,
    "10": _tabletop,
}
"""What a lesson sets besides its machine's first scene, by its number."""
