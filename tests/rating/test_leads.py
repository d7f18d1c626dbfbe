"""Who leads where: the corners of the envelope of all ways, against a grid rated one by one.

The grid is a hundredth of a row of the table, a centimetre for a crane; it is rated on its own,
with none of the shortcuts by which the envelope is found.
"""

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine, machine_names
from boomsim.machine.model import Rigging
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.charts.rows_and_rounding import reach, row_step
from boomsim.rating.comparison.comparison_leads import Leads, leads_of
from boomsim.rating.comparison.comparison_study import compare, demonstration
from boomsim.rating.nearest_radius import nearest_radius
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import (
    Configurations,
    configurations_of,
    configurations_of_length,
    pinned_configurations,
    range_of_length,
)

FALLS_SHORT = 1e-4
"""Where a tie ends is known to 0.2 mm, and there two capacities part by up to 0.3 of themselves
in a metre, which makes 0.6e-4; where curves cross, better; what is level is so to 1e-5 [1]."""

EDGE = 4
"""Where a reach begins or ends is known to two steps of this grid, and there a lead over one more
may be left out [1]."""


def lengths(machine) -> list[float]:
    """All lengths of a pinned boom to 0.1 m, some of another."""
    boom = machine.boom
    if "pinned" in boom.systems:
        every = configurations_of(boom, extension=pinned_configurations(boom)).length
        return np.unique(every.round(1)).tolist()
    return np.linspace(*range_of_length(boom), 9)[1:-1].tolist()


def on_a_grid(setup: Setup, ways: Configurations) -> tuple[np.ndarray, np.ndarray, float]:
    near, far = reach(setup.machine, length=ways.length)
    step = row_step(setup.machine, length=ways.length) / 100
    # Beside the machine, and where more is rated than hangs on the empty hook already.
    radii = np.arange(max(near.min(), nearest_radius(setup)), far.max() + step, step)
    parts = [radii[k : k + 60] for k in range(0, len(radii), 60)]
    rated = [_more_than_hangs(setup, ways, part) for part in parts]
    return radii, np.concatenate(rated, axis=1), step


def _more_than_hangs(setup: Setup, ways: Configurations, radii: np.ndarray) -> np.ndarray:
    """Rated loads; 0 where there is none, or less than hook block, slings and falls."""
    found = rate(setup, extension=ways.extension, radius=radii)
    hangs = hanging_mass(setup, length=ways.length, angle=found.angle)
    capacity = np.nan_to_num(found.capacity)
    return np.where(capacity >= np.nan_to_num(hangs), capacity, 0.0)


def check(setup: Setup, length: float) -> tuple[int, int]:
    """Compare one length; how many radii and crossovers were compared."""
    ways = configurations_of_length(setup.machine.boom, length=length)
    found = leads_of(setup, boom=condense(setup.machine, extension=ways.extension))
    radii, capacity, step = on_a_grid(setup, ways)
    return (
        no_lead_is_missed(found, radii, capacity),
        no_crossover_is_false(found, setup, ways, step),
    )


def no_lead_is_missed(found: Leads, radii: np.ndarray, capacity: np.ndarray) -> int:
    carries = capacity > 0.0
    edges = (carries[:, 1:] != carries[:, :-1]).any(axis=0)
    near_edge = np.convolve(np.pad(edges, (1, 0)), np.ones(2 * EDGE), "same") > 0
    checked = np.flatnonzero(carries.any(axis=0) & ~near_edge)
    for column in checked:
        named = [lead for lead in found.leads if lead.near <= radii[column] <= lead.far]
        assert named, f"nobody is named at {radii[column]:.3f} m"
        least = min(capacity[list(lead.ways), column].min() for lead in named)
        assert least >= (1.0 - FALLS_SHORT) * capacity[:, column].max(), radii[column]
    return len(checked)


def no_crossover_is_false(found: Leads, setup: Setup, ways: Configurations, step: float) -> int:
    for crossover in found.crossovers:
        # Closer than the shortest lead that is told, a step, and beyond what a corner is off.
        sides = crossover.radius + 0.4 * step * np.array([-1.0, 1.0])
        capacity = np.nan_to_num(rate(setup, extension=ways.extension, radius=sides).capacity)
        assert capacity.argmax(axis=0).tolist() == [crossover.before, crossover.after]
        # Capacities change by up to 0.4 of themselves in a metre, which here is 4 mm.
        assert crossover.capacity == pytest.approx(capacity.max(axis=0), rel=2e-3)
    return len(found.crossovers)


@pytest.mark.slow
@pytest.mark.parametrize("name", machine_names())
def test_at_every_centimetre_the_one_that_is_said_to_lead_leads(name: str) -> None:
    machine = load_machine(name)
    setup, some = set_up(machine), lengths(machine)
    done = [check(setup, length) for length in (some[2], some[len(some) // 2])]
    assert sum(radii for radii, _ in done) > 500


@pytest.mark.slow
@pytest.mark.long
@pytest.mark.parametrize("name", machine_names())
def test_at_every_length_no_lead_is_missed_and_no_crossover_is_false(name: str) -> None:
    machine = load_machine(name)
    setup = set_up(machine)
    done = [check(setup, length) for length in lengths(machine)]
    assert sum(radii for radii, _ in done) > 500 * len(done)
    assert name != "yard60" or sum(crossovers for _, crossovers in done) > 40


@pytest.fixture(scope="module")
def many():
    """The length of the demonstration, in all ways that the boom can reach it."""
    machine = load_machine("yard60")
    return set_up(machine), float(demonstration(machine.boom).length[0])


@pytest.mark.slow
def test_who_leads_does_not_depend_on_the_radii_that_are_printed(many) -> None:
    setup, length = many
    usual = compare(setup, length=length)
    for radii in ([6.0, 16.0], [6.0, 9.0, 16.0], [40.0]):
        few = compare(setup, length=length, radii=np.array(radii))
        assert [(x.radius, x.before, x.after) for x in few.crossovers] == [
            (x.radius, x.before, x.after) for x in usual.crossovers
        ]
        assert [lead.ways for lead in few.leads] == [lead.ways for lead in usual.leads]


def test_what_the_rope_holds_is_a_tie_and_its_end_no_crossover(many) -> None:
    setup, length = many
    found = compare(setup, length=length)
    ties = [lead for lead in found.leads if lead.leader is None]
    assert ties
    rope = setup.machine.hoist.line_pull
    for tie in ties:
        assert tie.limit is not None
        assert tie.limit.name == "line pull"
        assert tie.capacity[0] == pytest.approx(tie.capacity[1], rel=1e-5)
        # No more than all parts of line would carry without friction.
        assert tie.capacity[0] < rope * setup.parts / 9.8
    end = max(tie.far for tie in ties)
    assert all(crossover.radius > end for crossover in found.crossovers)


def test_with_one_part_of_line_nobody_leads_until_far_out(many) -> None:
    setup, length = many
    one_part = set_up(setup.machine, rigging=Rigging(parts=1))
    found = compare(one_part, length=length)
    longest = max(found.leads, key=lambda lead: lead.far - lead.near)
    assert len(longest.ways) == len(found.configurations.extension)


def test_the_same_way_twice_never_leads_itself(many) -> None:
    setup, _ = many
    twice = np.array([[0.0, 0.0, 0.0, 1.0]] * 2)
    found = leads_of(setup, boom=condense(setup.machine, extension=twice))
    assert {lead.ways for lead in found.leads} == {(0, 1)}
    assert found.crossovers == ()


def test_one_way_leads_alone_wherever_it_reaches(many) -> None:
    setup, _ = many
    alone = np.array([[0.0, 0.0, 0.0, 1.0]])
    found = leads_of(setup, boom=condense(setup.machine, extension=alone))
    assert [lead.ways for lead in found.leads] == [(0,)]
    assert found.least == (0, 0)


def test_leads_follow_one_another_and_meet_where_curves_cross(many) -> None:
    setup, length = many
    found = compare(setup, length=length)
    meets = {lead.far for lead in found.leads}
    assert all(one.far <= two.near for one, two in zip(found.leads, found.leads[1:], strict=False))
    assert all(one.ways != two.ways for one, two in zip(found.leads, found.leads[1:], strict=False))
    assert all(crossover.radius in meets for crossover in found.crossovers)


def test_those_that_carry_least_do_so_close_in_and_far_out(many) -> None:
    setup, length = many
    found = compare(setup, length=length)
    shared = np.flatnonzero((found.rating.capacity > 0.0).all(axis=0))
    close, far = found.least
    # The grid's first shared radius lies nearer than the table's, its last farther out.
    assert far == found.rating.capacity[:, shared[-1]].argmin()
    assert close != far
    ranks = found.rating.capacity[:, shared[0]].argsort()
    assert close in ranks[:2]
