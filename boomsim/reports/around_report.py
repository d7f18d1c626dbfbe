"""What a study all around the crane says: slew angles, sectors, what the floats carry."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.setup_head import setup_json, setup_text
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.mechanics.geometry import Array
    from boomsim.rating.around.direction_margins import Margins
    from boomsim.rating.around.float_loads import GroundLoads
    from boomsim.rating.around.over_rear_sector import Reason, Sectors
    from boomsim.rating.around.slew_study import Around
    from boomsim.rating.empty_hook.empty_hook_study import EmptyHook
    from boomsim.rating.lift_response import Response
    from boomsim.rating.setup import Setup

MOST_RADII = 3
"""Maximum number of curves of a polar figure."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class AroundStudy:
    """Everything that is told all around the crane, worked out once.

    Attributes
    ----------
    around : Around
        Rated loads by slew angle
    sectors : Sectors
        All around and over the rear, at every radius
    at : Response
        The load whose floats are looked at, hung
    margins : Margins
        Of that load, in each direction
    reasons : tuple of Reason, optional
        What holds the crane down at the last radius in each sector
    """

    around: "Around"
    sectors: "Sectors"
    at: "Response"
    ground: "GroundLoads"
    margins: "Margins"
    empty_hook: "EmptyHook"
    reasons: "tuple[Reason, Reason] | None"

    @property
    def setup(self) -> "Setup":
        """How the crane is set up."""
        return self.around.setup


def as_json(found: AroundStudy) -> dict[str, Any]:
    """SI numbers."""
    from boomsim.machine.part_names import support_names
    from boomsim.rating.empty_hook.empty_hook_sentences import plain_empty_hook

    by_slew, sectors = found.around, found.sectors
    names = [limit.key for limit in by_slew.limits]
    around, rear = sectors.around, sectors.rear
    return {
        **setup_json(found.setup, extension=found.around.extension),
        "extension": by_slew.extension,
        "radii": by_slew.radius,
        "slew": by_slew.slew,
        "capacity": by_slew.capacity,
        "structure": by_slew.structure,
        "structural_limit": [names[g] for g in by_slew.governing],
        "stability": by_slew.stability,
        "tyres": None if found.setup.support.strength is None else by_slew.tyres,
        "sectors": {
            "radii": sectors.radius,
            "around": around.capacity[0],
            "around_by_stability": around.is_stability[0],
            "rear": rear.capacity[0],
            "rear_by_stability": rear.is_stability[0],
        },
        "margins": {
            "load": found.margins.load,
            "radius": found.margins.radius,
            "share_of_rated": found.margins.share,
            "tips_at": found.margins.tips,
            "rated_between": found.margins.spans,
        },
        "empty_hook": plain_empty_hook(found.empty_hook),
        "reasons": dict(zip(("around", "rear"), found.reasons or (None, None), strict=True)),
        "floats": {
            "load": found.at.state.load[0, 0],
            "radius": found.at.radius[0, 0],
            "names": support_names(found.setup.support),
            "points": found.setup.support.points,
            "slew": found.ground.loads.slew,
            "force": found.ground.force,
            "mat_area": found.ground.area,
            "pressure": found.ground.pressure,
            "resultant_x": found.ground.loads.x[:, 0, 0],
            "resultant_y": found.ground.loads.y[:, 0, 0],
            "lean": found.ground.loads.lean[:, 0, 0],
        },
    }


def as_text(found: AroundStudy, *, units: str) -> str:
    """Tables and sentences."""
    from boomsim.rating.empty_hook.empty_hook_sentences import tell_empty_hook
    from boomsim.rating.strategies import label

    head = (
        f"{setup_text(found.setup, units=units, extension=found.around.extension)} "
        f"Extension {label(found.around.extension)} % (base side first)."
    )
    pieces = [
        paragraph(head),
        _slew_table(found.around, units),
        _sector_table(found.sectors, units),
        *_margin_text(found, units),
        *_reason_text(found.setup, found.reasons, units, hangs=float(found.around.hangs[-1])),
        *_float_text(found, units),
        *(paragraph(s) for s in (tell_empty_hook(found.empty_hook, units=units),) if s),
        paragraph(CAUTION),
    ]
    return "\n\n".join(pieces)


def why(found: AroundStudy, *, radius: float, units: str) -> str:
    """Tell what holds the crane down at a radius, in the worst direction of each sector.

    Parameters
    ----------
    radius : float
        [m]
    """
    from boomsim.rating.around.over_rear_sector import reasons
    from boomsim.rating.parts_reeved import hanging_at
    from boomsim.units import show

    both = reasons(found.setup, extension=found.around.extension, radius=radius)
    hangs = hanging_at(found.setup, extension=found.around.extension, radius=radius)
    told = _reason_text(found.setup, both, units, hangs=hangs, at=show(radius, "length", units))
    if not told:
        raise ValueError(
            f"Nothing tips the crane at a radius of {radius:.2f} m with this boom, or it is out of "
            "reach. Choose another radius."
        )
    return "\n\n".join([*told, paragraph(CAUTION)])


def summary(found: AroundStudy) -> str:
    """Say in a few words what was looked at."""
    from boomsim.rating.strategies import label
    from boomsim.units import show

    radii = ", ".join(show(float(radius), "length", "metric") for radius in found.around.radius)
    return (
        f"{found.setup.machine.name}, extension {label(found.around.extension)} %, all around at "
        f"{radii}"
    )


def figure(found: AroundStudy, *, units: str) -> "Figure":
    """Draw the study; more lines than a polar figure bears are refused."""
    from boomsim.figures.around.around_figure import figure_of_around

    refuse_radii(len(found.around.radius))
    return figure_of_around(
        found.around, at=found.at, ground=found.ground, sectors=found.sectors, units=units
    )


def refuse_radii(count: int) -> None:
    """Refuse more radii than a polar figure bears."""
    if count > MOST_RADII:
        raise ValueError(
            f"{count} radii are too many for one figure. Give up to {MOST_RADII}, or ask for no "
            "figure."
        )


def _slew_table(found: "Around", units: str) -> str:
    """Rated load every 30 degrees and where a sector ends."""
    from boomsim.rating.around.slew_directions import direction
    from boomsim.rating.limits.limit_sentences import sign, signs_in_words
    from boomsim.rating.setup import rear_sector
    from boomsim.units import show

    edge = rear_sector(found.setup.support)
    rows = []
    for k in _turns(found):
        words = direction(float(found.slew[k]))
        if abs(found.slew[k] - edge) < 1e-9:
            words += ", end of the rear sector"
        cells = [
            _rated(float(c), sign(found.limit(k, j)), units, hangs=float(found.hangs[j]))
            for j, c in enumerate(found.capacity[k])
        ]
        rows.append([words, *cells])
    heads = [show(float(radius), "length", units) for radius in found.radius]
    less = _less(found.setup, bool((found.capacity < found.hangs).any()))
    note = paragraph(f"{signs_in_words()}{less} Positive slew angles are to the right.")
    return f"{table(['rated load, with the boom', *heads], rows)}\n{note}"


def _margin_text(found: AroundStudy, units: str) -> list[str]:
    """One load all around: its room in each direction, and the float that carries least."""
    import numpy as np

    from boomsim.machine.part_names import support_names
    from boomsim.rating.around.margin_sentences import percent_of_rated, tell_margins, times
    from boomsim.rating.around.slew_directions import direction
    from boomsim.units import display

    margins, force = found.margins, found.ground.force
    unit = display("force", units, like=_largest(force))
    names = support_names(found.setup.support)
    rows = []
    for k in _turns(found.around):
        carried = force[:, k]
        least = int(np.argmin(carried)) if np.all(np.isfinite(carried)) else None
        rows.append(
            [
                direction(float(margins.slew[k])),
                percent_of_rated(float(margins.share[k])),
                times(float(margins.tips[k])),
                "it turns over"
                if least is None
                else f"{names[least]} lifts"
                if carried[least] <= 0.0
                else f"{names[least]} {unit.text(float(carried[least]))}",
            ]
        )
    heads = ["this load, boom", "of the rated", "to tipping", "lightest support"]
    return [paragraph(tell_margins(margins, units=units)), table(heads, rows)]


def _largest(force: "Array") -> float:
    """Largest force of all, whose unit the others beside it have; 0 where none is known [N]."""
    import numpy as np

    return float(np.nan_to_num(force).max(initial=0.0))


def _turns(found: "Around") -> list[int]:
    """Places of every 30 degrees on the right side, and of the end of the rear sector."""
    import numpy as np

    from boomsim.rating.setup import rear_sector

    edge = rear_sector(found.setup.support)
    wanted = np.unique(np.concatenate([np.radians(np.arange(0.0, 181.0, 30.0)), [edge]]))
    return [int(np.argmin(np.abs(found.slew - angle))) for angle in wanted]


LESS = "–"
"""Where less is rated than hangs there already; as on charts."""


def _less(setup: "Setup", is_so: bool) -> str:
    from boomsim.rating.empty_hook.empty_hook_sentences import under_hook_words

    return f" {LESS}: {under_hook_words(setup.machine)}." if is_so else ""


def _rated(capacity: float, sign: str, units: str, *, hangs: float) -> str:
    from boomsim.units import show_rated

    if capacity != capacity:
        return "out of reach"
    if capacity < hangs:
        return LESS
    return f"{show_rated(capacity, units)}{sign}" if capacity > 0.0 else "nothing"


def _sector_table(found: "Sectors", units: str) -> str:
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.units import display, parse, show, show_rated

    rows, less = [], found.less
    step = max(1, -(-len(found.radius) // 16))
    for k in range(0, len(found.radius), step):
        one, other = float(found.around.capacity[0, k]), float(found.rear.capacity[0, k])
        if less[0][k] or less[1][k]:
            rows.append(_less_row(found, k, units))
            continue
        # The difference of what the two columns show, so that a reader who subtracts finds it.
        shown = [parse(show_rated(each, units).replace(",", ""), "mass") for each in (one, other)]
        more = shown[1] - shown[0]
        rows.append(
            [
                show(float(found.radius[k]), "length", units),
                f"{show_rated(one, units)}{sign(found.around.limit(0, k))}",
                f"{show_rated(other, units)}{sign(found.rear.limit(0, k))}",
                display("mass", units, like=other).text(more) if more > 0.0 else "nothing",
                f"{100 * more / shown[0]:.0f} %" if more > 0.0 and shown[0] > 0.0 else "",
            ]
        )
    return table(["radius", "all around", "over the rear", "more", "in percent"], rows)


def _less_row(found: "Sectors", place: int, units: str) -> list[str]:
    """One or both of the sectors rate less than hangs there already: no difference is told."""
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.units import show, show_rated

    cells = [
        LESS
        if less[place]
        else f"{show_rated(float(rating.capacity[0, place]), units)}{sign(rating.limit(0, place))}"
        for rating, less in zip((found.around, found.rear), found.less, strict=True)
    ]
    return [show(float(found.radius[place]), "length", units), *cells, "", ""]


def _reason_text(
    setup: "Setup",
    reasons: "tuple[Reason, Reason] | None",
    units: str,
    *,
    hangs: float,
    at: str = "the last radius",
) -> list[str]:
    """Moments of the masses in the governing directions of the two sectors, side by side."""
    from math import isfinite

    from boomsim.rating.around.slew_directions import direction
    from boomsim.reports.holding_moments import holding_note, holding_rows
    from boomsim.units import show

    if reasons is None or not all(isfinite(reason.stability) for reason in reasons):
        return []
    moments = [reason.parts for reason in reasons]
    rows = [
        *holding_rows(setup, moments, mass=reasons[0].mass, units=units),
        ["lever of the load", "", *(show(r.lever, "length", units) for r in reasons)],
        ["stability allows", "", *(_allowed(r.stability, units, hangs) for r in reasons)],
        ["rated", "", *(_allowed(r.capacity, units, hangs) for r in reasons)],
    ]
    heads = [
        f"{name}: {direction(r.slew)}"
        for name, r in zip(("all around", "rear"), reasons, strict=True)
    ]
    return [
        paragraph(f"What holds the crane down at {at}, in the worst direction of each:"),
        table(["moment about the tipping line", "mass", *heads], rows),
        *([paragraph(note)] if (note := holding_note(setup.machine.boom, units=units)) else []),
    ]


def _allowed(load: float, units: str, hangs: float) -> str:
    from boomsim.units import show_rated

    if load < hangs:
        return LESS
    return show_rated(load, units) if load > 0.0 else "nothing"


def _float_text(answer: AroundStudy, units: str) -> list[str]:
    import numpy as np

    from boomsim.machine.part_names import foot_name, support_names
    from boomsim.rating.around.slew_directions import direction
    from boomsim.units import display, show, show_rated

    ground, support = answer.ground, answer.setup.support
    load = show_rated(float(answer.at.state.load[0, 0]), units)
    radius = show(float(answer.at.radius[0, 0]), "length", units)
    tipped = ground.loads.reactions.tipped
    if np.all(tipped):
        return [
            f"With {load} at {radius} the crane turns over in every direction: the supports hold "
            "nothing."
        ]
    rows, unit = [], display("force", units, like=_largest(ground.force))
    named = zip(support_names(support), ground.force, ground.pressure, strict=True)
    for name, force, pressure in named:
        known = np.nan_to_num(force, nan=-1.0)
        top, low = int(np.argmax(known)), float(np.nanmin(force))
        rows.append(
            [
                name,
                unit.text(float(force[top])),
                direction(float(ground.loads.slew[top])),
                show(float(pressure[top]), "pressure", units),
                "lifts" if low <= 0.0 else unit.text(low),
            ]
        )
    lean = float(np.degrees(np.nanmax(np.abs(ground.loads.lean))))
    said = (
        f"Supports all around with {load} at {radius}, each on {show(ground.area, 'area', units)}; "
        f"the {foot_name(support)}s' sinking leans the carrier by up to {lean:.2f}°."
    )
    if np.any(tipped):
        said += " In some directions the crane turns over under this load: these are left out."
    heads = ["support", "most", "then the boom is", "on the ground", "least"]
    return [paragraph(said), table(heads, rows)]
