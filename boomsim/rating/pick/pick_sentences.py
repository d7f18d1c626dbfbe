"""A pick in sentences, for a class: what each check found, and what the model makes of all.

Nothing here may read as leave to lift: the verdict is the model's, about an invented machine.
"""

from collections.abc import Callable

import numpy as np

from boomsim.machine.part_names import support_names
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.charts.blank_cells import words_of
from boomsim.rating.charts.deductions import falls_words
from boomsim.rating.charts.hoist_line import parts_of_column
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.mass_sums import in_steps, scale_of
from boomsim.rating.parts_reeved import parts_said
from boomsim.rating.pick.pick_asked import leaves_rear
from boomsim.rating.pick.pick_checks import BEYOND, NOTED, UNKNOWN, WITHIN, Check, Found
from boomsim.rating.pick.pick_study import Pick
from boomsim.rating.strategies import label
from boomsim.units import display, listed, show, show_rated

NO_LEAVE = "A sum about an invented machine, for a class: it gives no leave to lift anything."
"""Said with every verdict."""


def tell_verdict(found: Pick, *, units: str) -> str:
    """Say what the model makes of all checks.

    Returns
    -------
    str
        Two sentences; the second says what the first is not
    """
    beyond, open_ones = found.of_state(BEYOND), found.of_state(UNKNOWN)
    if beyond:
        said = f"On this model: not within, by the check of {_named(beyond)}"
        return f"{said}. {NO_LEAVE}"
    if open_ones:
        return (
            f"On this model: undecided, for nobody has looked at {_named(open_ones)}. What is not "
            f"known is not within. {NO_LEAVE}"
        )
    return f"On this model: within, by every check. {NO_LEAVE}"


def _named(checks: tuple[Check, ...]) -> str:
    names = [f"the {check.title}" for check in checks]
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


def tell_margin(found: Pick, *, units: str) -> str:
    """Say how far the crane would be from turning over.

    Returns
    -------
    str
        Empty where the boom finds no equilibrium
    """
    if not found.tips_at > 0.0 or np.isinf(found.tips_at):
        return ""
    asked = found.asked
    known = [w for w, value in (("wind", asked.wind), ("level", asked.level)) if value is not None]
    given = f" and with the measured {' and '.join(known)} in the sum" if known else ""
    times = int(100.0 * found.tips_at) / 100.0
    return (
        f"Without any margin{given}, the crane would turn over at {times:.2f} times this gross "
        "load; whether something breaks before, boomsim overload tells."
    )


def tell_check(check: Check, found: Found, *, units: str) -> str:
    """Say what one check found, and what it is held against.

    Returns
    -------
    str
        One sentence or two
    """
    return _SAID[check.key](check, found, units)


def shown_values(check: Check, *, units: str) -> tuple[str, str, str]:
    """Write what was found, its limit, and the share of it, for a table.

    Returns
    -------
    tuple of str
        Empty where there is no figure
    """

    def write(value: float | None) -> str:
        if value is None or check.quantity is None:
            return ""
        if not np.isfinite(value):
            return "none"
        if check.quantity == "mass" and value is check.limit:
            return show_rated(value, units) if value > 0.0 else "nothing"
        return show(value, check.quantity, units)

    utilisation = check.utilisation
    has_utilisation = utilisation is not None and np.isfinite(utilisation) and check.key != "radius"
    share = f"{np.ceil(100.0 * (utilisation or 0.0) - 1e-7):.0f} %" if has_utilisation else ""
    return write(check.found), write(check.limit), share


def _radius(check: Check, found: Found, units: str) -> str:
    measured = show(found.asked.radius, "length", units)
    if not np.isfinite(found.radius):
        return (
            f"Measured {measured} with the hook empty; under this load the boom finds no "
            "equilibrium at that angle: it buckles."
        )
    fine = display("length", units, like=0.0)
    measured, grown = fine.text(found.asked.radius), fine.text(found.radius)
    # What a reader finds who subtracts the two as they are written.
    last = fine.factor * 10.0**-fine.digits
    steps = round(found.radius / last) - round(found.asked.radius / last)
    more = fine.text(last * steps)
    grows = f"grows by {more} to {grown}, unless the boom is raised"
    if grown == measured:
        grows = f"grows by less than shows: {grown}"
    said = (
        f"Measured {measured} with the hook empty. As the load comes on the boom bends and the "
        f"radius {grows}"
    )
    if found.reading is None:
        ends = [show(float(r), "length", units) for r in found.chart.radii[[0, -1]]]
        return f"{said}. This column has rows from {ends[0]} to {ends[1]} only."
    return f"{said}."


def _way_out(check: Check, found: Found, units: str) -> str:
    length = show(float(found.boom.layout.boom_length[0]), "boom_length", units)
    own = label(found.boom.layout.extension[0])
    if found.legal is None:
        return f"No chart has a column for ({own}) %: this boom is never out that way."
    said = f"({own}) % out, base side first, is {length} of boom."
    if not len(found.legal):
        return f"{said} It is the only way to that length, and the column is this one."
    count = len(found.legal)
    others = "is another way" if count == 1 else f"are {count} other ways"
    return f"{said} There {others} to the same length: only the column of this one counts."


def _sector(check: Check, found: Found, units: str) -> str:
    swing, rear = found.asked.swing, found.setup.sector == "over the rear"
    if swing is None:
        path = f"The load may come {found.setup.sector}"
    elif len(swing) == 1 or swing[0] == swing[1]:
        path = f"The boom stays {_where(swing[0])}"
    else:
        path = f"The boom begins {_where(swing[0])} and ends {_where(swing[1])}"
    if leaves_rear(found.setup, found.asked):
        left = "that is not all within the sector over the rear"
        if rear:
            return f"{path}: {left}, and the chart in hand holds over the rear only."
        return f"{path}: {left}, so the chart for all around counts."
    chart = found.setup.sector
    return f"{path}, within the sector over the rear; the chart in hand holds {chart}."


def _where(angle: float) -> str:
    return direction(float(np.angle(np.exp(1j * angle))))


def _supports(check: Check, found: Found, units: str) -> str:
    support = found.setup.support
    stands = f"The crane stands on {support.kind} {support.name}".replace("tyres tyres", "tyres")
    ground = found.ground
    if found.turns_over or ground is None:
        return f"{stands}: under this load it would turn over."
    names = support_names(support)
    up = [n for n, force in zip(names, ground.force, strict=True) if np.any(force <= 0.0)]
    if up:
        return f"{stands}. On the way {listed(up)} would leave the ground: a warning."
    return f"{stands}, and the chart is for these. None of them leaves the ground on the way."


def _ground(check: Check, found: Found, units: str) -> str:
    ground = found.ground
    if found.turns_over or ground is None:
        return "What turns over has no pressure to speak of."
    number, turn = np.unravel_index(int(np.argmax(ground.pressure)), ground.pressure.shape)
    name = support_names(found.setup.support)[number]
    force = show(float(ground.force[number, turn]), "force", units)
    area, pressure = show(ground.area, "area", units), show(found.pressure, "pressure", units)
    when = _where(float(ground.loads.slew[turn]))
    said = f"{name.capitalize()} presses most, {force} with the boom {when}: {pressure} on {area}"
    bearing = found.asked.bearing
    if bearing is None:
        return f"{said}. What the ground bears, nobody has said."
    bears = show(bearing, "pressure", units)
    if check.state == WITHIN:
        return f"{said}, of {bears} that the ground bears."
    most = float(ground.force[number, turn]) / bearing
    return f"{said}; the ground bears {bears}, so it takes {_up(most, units)} under that float."


def _up(area: float, units: str) -> str:
    """Write an area that must not be less, rounded up to a hundredth of a square metre."""
    return show(float(np.ceil(100.0 * area - 1e-9) / 100.0), "area", units)


def _deductions(check: Check, found: Found, units: str) -> str:
    machine, asked = found.setup.machine, found.asked
    falls = found.gross - asked.load - machine.hook_block - machine.slings - asked.jib
    listed = (
        ("load", asked.load),
        ("hook block", machine.hook_block),
        ("slings", machine.slings),
        (falls_words(parts_of_column(found.chart, column=0)), max(falls - 1e-6, 0.0)),
        ("stowed jib", asked.jib),
    )
    # One unit in the whole sum.
    scale = scale_of(found.gross, units)
    whole = scale.nearest(found.gross)
    some = {name: mass for name, mass in listed if mass > 0.0}
    shown = in_steps(some, total=whole, scale=scale)
    parts = " + ".join(f"{name} {scale.text(steps)}" for name, steps in shown.items())
    return f"All that hangs counts: {parts} = {scale.text(whole)} gross."


def _wind(check: Check, found: Found, units: str) -> str:
    asked, limit = found.asked, show(found.wind_limit, "speed", units)
    if found.setup.rule.allowances is None:
        begun = "This chart has no wind in it"
    else:
        chart = found.setup.rule.allowances
        begun = f"The chart has gusts of {show(chart.wind_speed.value, 'speed', units)} in it"
    missing = [
        words
        for words, value in (("the gusts", asked.wind), ("the load's wind area", asked.load_area))
        if value is None
    ]
    if missing:
        return f"{begun}. Nobody has measured {' or '.join(missing)}."
    large = found.setup.rule.allowances is not None and found.wind_limit < chart.wind_speed.value
    less = f"; this load shows so much to the wind that they count to {limit} only" if large else ""
    return f"{begun}{less}. Measured: {show(asked.wind or 0.0, 'speed', units)}."


def _level(check: Check, found: Found, units: str) -> str:
    limit = show(found.level_limit, "angle", units)
    begun = (
        "This chart is for a level crane and nothing else"
        if found.setup.rule.allowances is None
        else f"The chart is for a level crane; strength has {limit} in it, "
        "stability only its margin"
    )
    level = found.asked.level
    if level is None:
        return f"{begun}. Nobody has read the level."
    return f"{begun}. Read: {show(level, 'angle', units)}."


def _chart(check: Check, found: Found, units: str) -> str:
    reading = found.reading
    if reading is None:
        return "The chart has no row for this radius, and where it has none it holds nothing."
    row = show(reading.row_radius, "length", units)
    if reading.blank:
        assert reading.reason is not None
        why = words_of(reading.reason, found.setup.machine)
        return f"The row of the next larger radius, {row}, is blank in this column: {why}."
    assert reading.limit is not None
    scale = scale_of(max(reading.cell, found.gross), units)
    cell, gross = scale.down(reading.cell), scale.nearest(found.gross)
    left = scale.text(abs(cell - gross))
    more = "more" if reading.cell > found.gross else "less"
    rest = f"{left} {more} than" if cell != gross else "just"
    return (
        f"Never between two rows: the next larger, {row}, says {scale.text(cell)} gross ("
        f"{what_sets(reading.limit)}), {rest} the {scale.text(gross)} that hang."
    )


def _rope(check: Check, found: Found, units: str) -> str:
    parts = parts_of_column(found.chart, column=0)
    assert check.limit is not None
    verb = "carries" if parts == 1 else "carry"
    return (
        f"{parts_said(parts)} {verb} {show_rated(check.limit, units)} gross, rounded down as the "
        "chart is."
    )


def _block(check: Check, found: Found, units: str) -> str:
    assert check.found is not None
    hung = show(check.found, "mass", units)
    if found.asked.block is None:
        return f"{hung} hang on the hook. What is stamped on the block, nobody has read."
    stamped = show_rated(found.asked.block, units)
    return f"{hung} hang on the hook; {stamped} are stamped on the block."


_SAID: dict[str, Callable[[Check, Found, str], str]] = {
    "radius": _radius,
    "way out": _way_out,
    "sector": _sector,
    "supports": _supports,
    "ground": _ground,
    "deductions": _deductions,
    "wind": _wind,
    "level": _level,
    "chart": _chart,
    "rope": _rope,
    "block": _block,
}

SIGNS = {WITHIN: "within", BEYOND: "NOT WITHIN", UNKNOWN: "not looked at", NOTED: ""}
"""How a state is written in a table."""
