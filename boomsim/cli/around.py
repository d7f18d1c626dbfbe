"""``boomsim around``: capacity all around the crane, over the rear, and what the floats carry."""

import argparse
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import inputs, places
from boomsim.cli.answer import paragraph, table
from boomsim.cli.tell import refuse_picture, tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.mechanics.geometry import Array
    from boomsim.rating.around.floats import GroundLoads
    from boomsim.rating.around.sectors import Reason, Sectors
    from boomsim.rating.around.slew import Around
    from boomsim.rating.response import Response
    from boomsim.rating.setup import Setup

HELP = "all around the crane: capacity by slew angle, over the rear, float loads, ground pressure"
EXAMPLE = "boomsim around truck18 --extension 50,50,50 --radius '9 m' --mat '1 m2'"

MOST_RADII = 3
"""So many lines a polar figure bears."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    places.add_place(parser, several=True)
    parser.add_argument(
        "--load",
        metavar="MASS",
        help="gross load whose float loads are shown, at the last radius (default: the rated one)",
    )
    parser.add_argument("--mat", metavar="AREA", help="of the mat under each float, such as '1 m2'")
    places.add_ground(parser)
    inputs.add_setup(parser)
    inputs.add_output(parser)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    refuse_picture(chosen)
    found = _Answer(chosen)

    def figure() -> "Figure":
        from boomsim.figures.around.figure import figure_of_around

        return figure_of_around(
            found.around,
            at=found.at,
            ground=found.ground,
            sectors=found.sectors,
            units=chosen.units,
        )

    tell(
        chosen,
        "around",
        data=found.as_json,
        text=lambda: found.as_text(chosen.units),
        figure=figure,
    )


class _Answer:
    """Everything that the command tells, worked out once."""

    def __init__(self, chosen: argparse.Namespace) -> None:
        from boomsim.rating.around.floats import ground_loads
        from boomsim.rating.around.sectors import reasons, sectors
        from boomsim.rating.around.slew import around
        from boomsim.rating.empty_hook.study import empty_hook
        from boomsim.units import parse

        machine = inputs.machine(chosen)
        setup = places.on_ground(chosen, inputs.setup(chosen, machine))
        extension = places.extension(chosen.extension, machine)
        every = places.all_radii(setup, extension)
        radii = _radii(chosen, every)
        mat = None if chosen.mat is None else parse(chosen.mat, "area", what="--mat")
        load = None if chosen.load is None else parse(chosen.load, "mass", what="--load")
        self.around: Around = around(setup, extension=extension, radius=radii)
        self.setup: Setup = self.around.setup
        self.sectors: Sectors = sectors(setup, extension=extension, radius=every)
        self.at = _hung(self.around, load)
        self.ground: GroundLoads = ground_loads(self.at, slew=self.around.slew, mat=mat)
        self.empty_hook = empty_hook(self.setup, extension=self.around.extension)
        self.reasons: tuple[Reason, Reason] | None = reasons(
            setup, extension=extension, radius=float(radii[-1])
        )

    def as_json(self) -> dict[str, Any]:
        """SI numbers."""
        from boomsim.machine.naming import support_names
        from boomsim.rating.empty_hook.telling import plain_empty_hook

        found, names = self.around, [limit.key for limit in self.around.limits]
        around, rear = self.sectors.around, self.sectors.rear
        return {
            **places.setup_json(self.setup),
            "extension": found.extension,
            "radii": found.radius,
            "slew": found.slew,
            "capacity": found.capacity,
            "structure": found.structure,
            "structural_limit": [names[g] for g in found.governing],
            "stability": found.stability,
            "tyres": None if self.setup.support.strength is None else found.tyres,
            "sectors": {
                "radii": self.sectors.radius,
                "around": around.capacity[0],
                "around_by_stability": around.is_stability[0],
                "rear": rear.capacity[0],
                "rear_by_stability": rear.is_stability[0],
            },
            "empty_hook": plain_empty_hook(self.empty_hook),
            "reasons": dict(zip(("around", "rear"), self.reasons or (None, None), strict=True)),
            "floats": {
                "load": self.at.state.load[0, 0],
                "radius": self.at.radius[0, 0],
                "names": support_names(self.setup.support),
                "points": self.setup.support.points,
                "slew": self.ground.loads.slew,
                "force": self.ground.force,
                "mat_area": self.ground.area,
                "pressure": self.ground.pressure,
                "resultant_x": self.ground.loads.x[:, 0, 0],
                "resultant_y": self.ground.loads.y[:, 0, 0],
                "lean": self.ground.loads.lean[:, 0, 0],
            },
        }

    def as_text(self, units: str) -> str:
        """Tables and sentences."""
        from boomsim.rating.empty_hook.telling import tell_empty_hook
        from boomsim.rating.strategies import label

        head = (
            f"{places.setup_text(self.setup)} Extension {label(self.around.extension)} % "
            "(base side first)."
        )
        pieces = [
            paragraph(head),
            _slew_table(self.around, units),
            _sector_table(self.sectors, units),
            *_reason_text(self.setup, self.reasons, units),
            *_float_text(self, units),
            *(paragraph(s) for s in (tell_empty_hook(self.empty_hook, units=units),) if s),
            paragraph(CAUTION),
        ]
        return "\n\n".join(pieces)


def _radii(chosen: argparse.Namespace, every: "Array") -> "Array":
    radii = inputs.radii(chosen.radius)
    if radii is None:
        return places.picked(every, 0.25, 0.6)
    if chosen.figure is not None and len(radii) > MOST_RADII:
        raise ValueError(
            f"--radius: {len(radii)} radii are more than a figure bears. Give up to {MOST_RADII}, "
            "or leave out --figure."
        )
    return radii


def _hung(found: "Around", load: float | None) -> "Response":
    """Hang the load whose floats are looked at: the given one, or the one rated all around."""
    import numpy as np

    from boomsim.rating.around.centres import hung_at

    radius = float(found.radius[-1])
    if load is None:
        load = float(found.capacity[:, -1].min())
        if np.isnan(load):
            raise ValueError(
                f"There is no rated load at a radius of {radius:.2f} m with this boom. Choose a "
                "radius that it reaches."
            )
    if not 0.0 <= load < 1e7:
        raise ValueError(f"--load: {load:g} kg is no gross load. Give 0 kg or more.")
    return hung_at(found.setup, extension=found.extension, load=load, radius=radius)


def _slew_table(found: "Around", units: str) -> str:
    """Rated load every 30 degrees and where a sector ends."""
    import numpy as np

    from boomsim.rating.around.directions import direction
    from boomsim.rating.limits.telling import sign, signs_in_words
    from boomsim.rating.setup import rear_sector
    from boomsim.units import show

    edge = rear_sector(found.setup.support)
    wanted = np.unique(np.concatenate([np.radians(np.arange(0.0, 181.0, 30.0)), [edge]]))
    rows = []
    for angle in wanted:
        k = int(np.argmin(np.abs(found.slew - angle)))
        words = direction(float(found.slew[k]))
        if abs(angle - edge) < 1e-9:
            words += ", end of the rear sector"
        cells = [
            _rated(float(c), sign(found.limit(k, j)), units)
            for j, c in enumerate(found.capacity[k])
        ]
        rows.append([words, *cells])
    heads = [show(float(radius), "length", units) for radius in found.radius]
    note = f"{signs_in_words()} Positive slew angles are to the right."
    return f"{table(['rated load, boom', *heads], rows)}\n{note}"


def _rated(capacity: float, sign: str, units: str) -> str:
    from boomsim.units import show_rated

    if capacity != capacity:
        return "out of reach"
    return f"{show_rated(capacity, units)}{sign}" if capacity > 0.0 else "nothing"


def _sector_table(found: "Sectors", units: str) -> str:
    from boomsim.rating.limits.telling import sign
    from boomsim.units import show, show_rated

    rows = []
    step = max(1, -(-len(found.radius) // 16))
    for k in range(0, len(found.radius), step):
        one, other = float(found.around.capacity[0, k]), float(found.rear.capacity[0, k])
        more = f"{100 * (other / one - 1):.0f} %" if one > 0.0 else ""
        rows.append(
            [
                show(float(found.radius[k]), "length", units),
                f"{show_rated(one, units)}{sign(found.around.limit(0, k))}",
                f"{show_rated(other, units)}{sign(found.rear.limit(0, k))}",
                show(other - one, "mass", units) if other > 1.00001 * one else "nothing",
                more if other > 1.00001 * one else "",
            ]
        )
    return table(["radius", "all around", "over the rear", "more", "in percent"], rows)


def _reason_text(setup: "Setup", reasons: "tuple[Reason, Reason] | None", units: str) -> list[str]:
    """Moments of the masses in the governing directions of the two sectors, side by side."""
    from math import isfinite

    from boomsim.cli.holding import holding_rows
    from boomsim.rating.around.directions import direction
    from boomsim.units import show

    if reasons is None or not all(isfinite(reason.stability) for reason in reasons):
        return []
    moments = [reason.parts for reason in reasons]
    rows = [
        *holding_rows(setup, moments, mass=reasons[0].mass, units=units),
        ["lever of the load", "", *(show(r.lever, "length", units) for r in reasons)],
        ["stability allows", "", *(_allowed(r.stability, units) for r in reasons)],
        ["rated", "", *(_allowed(r.capacity, units) for r in reasons)],
    ]
    heads = [
        f"{name}: {direction(r.slew)}"
        for name, r in zip(("all around", "rear"), reasons, strict=True)
    ]
    return [
        paragraph("What holds the crane down at the last radius, in the worst direction of each:"),
        table(["moment about the tipping line", "mass", *heads], rows),
    ]


def _allowed(load: float, units: str) -> str:
    from boomsim.units import show_rated

    return show_rated(load, units) if load > 0.0 else "nothing"


def _float_text(answer: _Answer, units: str) -> list[str]:
    import numpy as np

    from boomsim.machine.naming import support_names
    from boomsim.rating.around.directions import direction
    from boomsim.units import show, show_rated

    ground, support = answer.ground, answer.setup.support
    load = show_rated(float(answer.at.state.load[0, 0]), units)
    radius = show(float(answer.at.radius[0, 0]), "length", units)
    tipped = ground.loads.reactions.tipped
    if np.all(tipped):
        return [
            f"With {load} at {radius} the crane turns over in every direction: the supports hold "
            "nothing."
        ]
    rows = []
    named = zip(support_names(support), ground.force, ground.pressure, strict=True)
    for name, force, pressure in named:
        known = np.nan_to_num(force, nan=-1.0)
        top, low = int(np.argmax(known)), float(np.nanmin(force))
        rows.append(
            [
                name,
                show(float(force[top]), "force", units),
                direction(float(ground.loads.slew[top])),
                show(float(pressure[top]), "pressure", units),
                "lifts" if low <= 0.0 else show(low, "force", units),
            ]
        )
    lean = float(np.degrees(np.nanmax(np.abs(ground.loads.lean))))
    said = (
        f"Supports all around with {load} at {radius}, each on {show(ground.area, 'area', units)}; "
        f"the floats' sinking leans the carrier by up to {lean:.2f}°."
    )
    if np.any(tipped):
        said += " In some directions the crane turns over under this load: these are left out."
    heads = ["support", "most", "then the boom is", "on the ground", "least"]
    return [paragraph(said), table(heads, rows)]
