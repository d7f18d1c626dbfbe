"""What a page for home or a phone chooses from: every state of a few ways, worked out before."""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from boomsim.figures.colours_and_lines import identity, ink_on
from boomsim.files.work_progress import Told, counted
from boomsim.lab.scene.scene import Look, Scene, setup_of
from boomsim.lab.scene.slider_ranges import nice_step
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer, answer
from boomsim.lab.views.held_scenes import apart, difference_rows, written
from boomsim.lab.views.side_elevation import side_view
from boomsim.lab.views.svg_text import Box
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.comparison.comparison_study import best_of, default_radii
from boomsim.rating.empty_hook.empty_hook_sentences import tell_empty_hook
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.limits.limit_sentences import what_happens
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.mass_sums import scale_of
from boomsim.rating.strategies import Configurations, label, letter
from boomsim.units import display, show, show_rated

MOST_WAYS, MOST_RADII = 6, 40
"""A page is for looking at a few ways, radius by radius [1]."""

PICTURE = Box(x=0.0, y=0.0, width=420.0, height=330.0)
"""Of the side view [px]."""

CRANE = "side-crane"
"""Name of the crane without its boom, which all pictures share."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Ways:
    """What a page is made of.

    Attributes
    ----------
    scene : Scene
        Whose setup holds for all
    radii : ndarray, shape (radii,)
        [m]
    empty_hook : EmptyHook
        How far down and out each way stands
    """

    scene: Scene
    configurations: Configurations
    radii: Array
    rating: Rating
    look: Look
    empty_hook: EmptyHook

    @property
    def lies(self) -> np.ndarray:
        """True where the crane lies on its side, shape (ways, radii)."""
        return self.empty_hook.lies_over(radius=self.radii[:, None]).T


def ways_of(scene: Scene, configurations: Configurations, *, units: str = "metric") -> Ways:
    """Rate all ways at all radii of a page, in one call.

    Parameters
    ----------
    scene : Scene
        Whose setup holds for all
    configurations : Configurations
        Two to six

    Raises
    ------
    ValueError
        If there are fewer or more, or none carries anything.
    """
    count = len(configurations.extension)
    if not 2 <= count <= MOST_WAYS:
        raise ValueError(
            f"A page compares 2 to {MOST_WAYS} ways to extend, and here are {count}. Choose with "
            "--extension, once for each way."
        )
    setup, unit = setup_of(scene), display("length", units).factor
    refuse_too_long(setup, length=configurations.length)
    reach = setup.machine.heel_out + float(configurations.length.max())
    step = nice_step(reach / unit, most=MOST_RADII) * unit
    radii = default_radii(setup, configurations, step=step)
    rating = rate(setup, extension=configurations.extension, radius=radii)
    carried = np.flatnonzero(np.nan_to_num(rating.capacity).max(axis=0) > 0.0)
    if len(carried) == 0:
        raise ValueError(
            "None of these ways carries anything as the crane is set up. Choose other ways, "
            "another counterweight or another support."
        )
    kept = radii[carried[0] : carried[-1] + 1]
    return Ways(
        scene=scene,
        configurations=configurations,
        radii=kept,
        rating=rate(setup, extension=configurations.extension, radius=kept),
        look=Look(units=units),
        empty_hook=empty_hook(setup, extension=configurations.extension),
    )


def page_data(ways: Ways, *, told: Told | None = None) -> dict[str, Any]:
    """Gather what the page chooses from.

    Parameters
    ----------
    told : callable, optional
        Hears what is done

    Returns
    -------
    dict
        Plain values; `states` by way, then by radius; null out of reach and where the crane `lies`
        on its side; `never` says of each way how low it must not come
    """
    capacity, most = ways.rating.capacity, float(np.nanmax(ways.rating.capacity))
    lies = ways.lies
    known = np.isfinite(capacity) & ~lies
    states = [
        [_state(ways, i, k) if there else None for k, there in enumerate(row)]
        for i, row in counted(list(enumerate(known.tolist())), what="drawing ways", told=told)
    ]
    return {
        "ways": [_way(row, i) for i, row in enumerate(ways.configurations.extension)],
        "radii": [show(float(r), "length", ways.look.units) for r in ways.radii],
        "best": best_of(capacity).tolist(),
        "share": np.nan_to_num(capacity / most).round(4).tolist(),
        "states": states,
        "lies": lies.tolist(),
        "never": [
            tell_empty_hook(ways.empty_hook, units=ways.look.units, row=i)
            for i in range(len(capacity))
        ],
        "why": _whys(ways),
        "box": f"0 0 {PICTURE.width:g} {PICTURE.height:g}",
        "start": len(ways.radii) // 3,
    }


def _way(extension: Array, number: int) -> dict[str, str]:
    colour = identity(number).colour
    return {
        "letter": letter(number),
        "label": label(extension),
        "colour": colour,
        "ink": ink_on(colour),
    }


def _lifted(ways: Ways, way: int, radius: int) -> Answer:
    """Answer a way at a radius with its rated load on the hook."""
    configurations = ways.configurations
    scene = replace(
        ways.scene,
        extension=tuple(float(f) for f in configurations.extension[way]),
        system=configurations.system[way],
        held="radius",
        radius=float(ways.radii[radius]),
        load=_hung(float(ways.rating.capacity[way, radius]), ways.look.units),
    )
    return answer(scene, unit=display("length", ways.look.units).factor)


def _hung(capacity: float, units: str) -> float:
    """The rated load as it is written, which is never more than the rated one [kg]."""
    if not capacity > 0.0:
        return 0.0
    scale = scale_of(capacity, units)
    return scale.down(capacity) * scale.step


def _picture(found: Answer, look: Look) -> str:
    drawn = side_view(found, look, PICTURE, uid="side", keyed=False)
    return drawn.replace(fixed(found.setup).crane, f'<use href="#{CRANE}"/>')


def _state(ways: Ways, way: int, radius: int) -> dict[str, str]:
    found, units = _lifted(ways, way, radius), ways.look.units
    governing = ways.rating.limits[int(ways.rating.governing[way, radius])]
    at = found.at
    assert at is not None
    return {
        "carries": show_rated(float(ways.rating.capacity[way, radius]), units),
        "set_by": governing.set_by,
        "first": what_happens(governing),
        "angle": show(float(at.state.angle[0, 0]), "angle", units),
        "bend": show(float(at.tip_deflection[0, 0]), "small_length", units),
        "picture": _picture(found, ways.look),
    }


def _whys(ways: Ways) -> dict[str, list[Any]]:
    """For every pair of ways and every radius: what each part makes of the difference."""
    count = len(ways.configurations.length)
    return {
        f"{i}{j}": [_why(ways, i, j, k) for k in range(len(ways.radii))]
        for i in range(count)
        for j in range(count)
        if i != j
    }


def _why(ways: Ways, first: int, second: int, radius: int) -> list[list[Any]] | None:
    capacity = ways.rating.capacity[[first, second], radius]
    if not np.all(np.isfinite(capacity)) or np.any(ways.lies[[first, second], radius]):
        return None
    found = apart(_lifted(ways, first, radius), _lifted(ways, second, radius))
    if found is None:
        return None
    rows = difference_rows(found, [letter(first), letter(second)])
    figures = written(found, rows, ways.look.units)
    return [
        [words, float(f"{kg:.5g}"), said, kind]
        for (words, kg, kind), said in zip(rows, figures, strict=True)
    ]
