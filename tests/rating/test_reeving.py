"""Parts of line, rope and pull of a reeved boom, against what is counted by hand."""

from dataclasses import replace
from math import cos, hypot, pi, radians, sin

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reeving_by_hand import head_by_hand, lead_by_hand, parts_by_hand, rope_by_hand

import boomsim as bs
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Machine, Rigging
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import layout
from boomsim.mechanics.rope_reach import falls_mass, parts_reached, parts_reeved
from boomsim.rating.capacity import rate
from boomsim.rating.parts_reeved import hanging_mass, reeved
from boomsim.rating.reeving.reeving_sentences import (
    tell_fewest,
    tell_parts,
    tell_pull,
    tell_rope,
    tell_speed,
)
from boomsim.rating.reeving.reeving_study import longest_boom_for, reeve
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import range_of_length

YARD, TRUCK, BENCH = (load_machine(name) for name in ("yard60", "truck18", "bench"))


def test_a_rope_of_round_numbers_reaches_for_five_parts() -> None:
    """Boom 12 m at 90 deg from a heel 2 m up: 14 m of head, 12 m of lead line, 3 turns of 1 m.

    85 m - 12 m - 3 m = 70 m are five falls of 14 m; a millimetre less is but four.
    Source: lengths that are added up. Status: worked.
    """
    head = replace(YARD.boom.head, below=0.0, rope_above=0.0)
    boom = replace(YARD.boom, head=head, least_angle=radians(60.0), greatest_angle=radians(90.0))
    hoist = replace(
        YARD.hoist, winch_out=0.0, winch_up=2.0, rope_length=85.0, drum_diameter=1.0 / pi
    )
    machine = replace(YARD, boom=boom, heel_out=0.0, heel_up=2.0, hoist=hoist)
    assert parts_reached(machine, length=[12.0])[0] == 5
    short = replace(machine, hoist=replace(hoist, rope_length=84.999))
    assert parts_reached(short, length=[12.0])[0] == 4
    # A metre of rope weighs 1.2 kg.
    weighs = falls_mass(machine, parts=5, length=12.0, angle=radians(90.0))
    assert float(weighs) == pytest.approx(5 * 14.0 * 1.2)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from([YARD, TRUCK]), st.floats(0.0, 1.0), st.integers(1, 12), st.floats(0.6, 2.5))
def test_each_boom_has_the_most_parts_for_which_the_rope_is_enough(
    crane: Machine, share: float, most: int, longer: float
) -> None:
    shortest, longest = range_of_length(crane.boom)
    length = shortest + share * (longest - shortest)
    most = min(most, crane.hoist.parts[-1])
    assert crane.hoist.rope_length is not None
    hoist = replace(crane.hoist, rope_length=longer * crane.hoist.rope_length)
    machine = replace(crane, hoist=hoist)
    by_hand = parts_by_hand(machine, length=length, most=most)
    assert parts_reeved(machine, length=[length], most=most).tolist() == [by_hand]


@pytest.mark.parametrize("machine", [YARD, TRUCK], ids=["yard60", "truck18"])
def test_the_hook_comes_down_to_the_ground_at_every_boom_angle(machine: Machine) -> None:
    assert machine.hoist.rope_length is not None
    lengths = np.linspace(*range_of_length(machine.boom), 23)
    parts = parts_reeved(machine, length=lengths, most=machine.hoist.parts[-1])
    assert np.all(np.diff(parts) <= 0)
    for length, own in zip(lengths, parts, strict=True):
        for angle in np.linspace(machine.boom.least_angle, machine.boom.greatest_angle, 57):
            needs = rope_by_hand(machine, parts=int(own), length=float(length), angle=float(angle))
            # Between two of the angles that are looked at the need may be a hair more: 1 mm.
            assert needs <= machine.hoist.rope_length + 1e-3


def test_built_in_cranes_have_few_parts_on_long_booms_and_the_bench_always_its_two() -> None:
    """Rope of 260 m: 12 falls of 16.8 m and 14 m of lead line; 4 of 45.6 m and 43 m. Rope of 95 m
    likewise, in 7 to 2 parts; the bench has no rope's length."""
    for machine, most, least in ((YARD, 12, 4), (TRUCK, 7, 2)):
        ends = range_of_length(machine.boom)
        assert reeved(set_up(machine), length=ends).tolist() == [most, least]
    assert reeved(set_up(BENCH), length=range_of_length(BENCH.boom)).tolist() == [2, 2]
    assert np.all(np.isinf(parts_reached(BENCH, length=[0.9, 2.0])))


def test_the_lead_line_pulls_with_the_parts_that_each_boom_has() -> None:
    """Two booms solved together, in 12 and in 4 parts: load over E + E2 + ... + EN each."""
    boom = condense(YARD, extension=np.array([[0.0] * 4, [1.0] * 4]))
    parts = reeved(set_up(YARD), length=boom.layout.boom_length)
    assert parts.tolist() == [12, 4]
    state = solve_state(boom, load=np.array([[5e3]]), parts=parts, angle=np.array([[1.2]]))
    for row, number in enumerate(parts):
        gain = sum(0.98**k for k in range(1, number + 1))
        assert state.line_pull[row, 0] == pytest.approx(5e3 * 9.80665 / gain)
        alone = solve_state(
            condense(YARD, extension=boom.layout.extension[row]), load=np.array([[5e3]]),
            parts=int(number), angle=np.array([[1.2]]),
        )  # fmt: skip
        # Sweeps end when a turn changes rotations by some 1e-9.
        assert state.head_along[row, 0] == pytest.approx(alone.head_along[0, 0], rel=1e-8)


def test_no_boom_is_rated_more_than_its_own_parts_carry() -> None:
    """11 parts of 55 kN at 18.7 m of boom close in, where all 12 would carry 4.4 t more."""
    setup = set_up(YARD)
    out = np.array([0.45, 0.0, 0.45, 0.0])
    rating = rate(setup, extension=out, radius=np.array([3.0]))
    limit = rating.limit(0, 0)
    assert limit is not None and limit.name == "line pull"
    carried = 55e3 * sum(0.98**k for k in range(1, 12)) / 9.80665
    assert rating.capacity[0, 0] == pytest.approx(carried, rel=1e-6)


def test_fewer_parts_may_be_wanted_and_never_more_than_the_rope_reaches_for() -> None:
    for wanted, length, parts in ((6, 20.0, 6), (12, 20.0, 10), (6, 43.0, 4)):
        setup = set_up(YARD, rigging=Rigging(parts=wanted))
        assert reeved(setup, length=[length]).tolist() == [parts]


def test_without_a_rope_in_the_machine_file_nothing_hangs_and_nothing_is_short() -> None:
    hoist = replace(YARD.hoist, rope_mass=0.0, rope_length=None, drum_diameter=None)
    setup = set_up(replace(YARD, hoist=hoist))
    lengths = np.array([12.0, 43.0])
    assert reeved(setup, length=lengths).tolist() == [12, 12]
    hung = hanging_mass(setup, length=lengths, angle=np.array([[0.5, 1.2]]))
    assert np.all(hung == YARD.hook_block + YARD.slings)


def test_the_rope_of_a_reeved_boom_adds_up() -> None:
    found = reeve(set_up(YARD), extension=np.array([0.9, 0.9, 0.9, 0.0]), radius=12.0)
    rope, machine = found.rope, found.setup.machine
    assert rope.left is not None and machine.hoist.drum_diameter is not None
    place = {"length": found.length, "angle": found.angle}
    assert found.height == pytest.approx(head_by_hand(machine, **place))
    assert rope.falls == pytest.approx(found.parts * head_by_hand(machine, **place))
    assert rope.lead == pytest.approx(lead_by_hand(machine, **place))
    assert rope.kept == pytest.approx(3 * pi * machine.hoist.drum_diameter)
    assert rope.lead + rope.falls + rope.left == pytest.approx(260.0)
    assert found.falls_mass == pytest.approx(1.2 * rope.falls)
    # The rated load hangs in the parts, each with a sheave's loss less than the one before.
    pulls = [found.pull_in_part(k) for k in range(1, found.parts + 1)]
    assert sum(pulls) == pytest.approx(found.rated * 9.80665, rel=1e-6)


def test_the_longest_boom_for_a_number_of_parts_is_where_the_rope_is_just_enough() -> None:
    for parts in range(5, 12):
        length = longest_boom_for(YARD, parts=parts)
        needs = rope_by_hand(YARD, parts=parts, length=length, angle=YARD.boom.greatest_angle)
        assert needs == pytest.approx(260.0, abs=1e-6)
    assert longest_boom_for(YARD, parts=4) == pytest.approx(range_of_length(YARD.boom)[1])
    none = replace(YARD, hoist=replace(YARD.hoist, parts=(*YARD.hoist.parts, 24)))
    assert np.isnan(longest_boom_for(none, parts=24))


def test_the_fewest_parts_for_a_load_carry_it_with_their_own_falls() -> None:
    setup, out = set_up(YARD), np.array([0.9, 0.9, 0.0, 0.0])
    for load in (2e3, 5e3, 5.2e3, 9e3, 15e3):
        found = reeve(setup, extension=out, radius=8.0, load=load)
        height = head_by_hand(YARD, length=found.length, angle=found.angle)

        def enough(parts: int, load: float = load, height: float = height) -> bool:
            hung = load + YARD.hook_block + YARD.slings + parts * 1.2 * height
            return 55e3 * sum(0.98**k for k in range(1, parts + 1)) / 9.80665 >= hung

        assert found.fewest is not None
        assert found.fewest.parts == next(n for n in range(1, 13) if enough(n))
        assert found.is_allowed == (found.gross <= found.rated)


def test_what_is_said_is_what_was_found() -> None:
    found = reeve(set_up(YARD), extension=np.array([0.9, 0.9, 0.0, 0.9]), radius=10.0, load=5e3)
    more = rope_by_hand(YARD, parts=7, length=found.length, angle=YARD.boom.greatest_angle)
    assert tell_parts(found, units="metric") == (
        f"With 33.1 m of boom the rope is reeved in 6 parts of line: 7 would take {more:.1f} m, "
        "and the drum has 260.0 m."
    )
    assert tell_speed(found) == (
        "The hook runs at 1/6 of the line's speed: the drum takes in 6 times what the hook rises."
    )
    assert f"{found.rope.left:.1f} m are left on the drum" in tell_rope(found, units="metric")
    share = 100.0 * found.line_pull / 55e3
    assert f"{share:.0f} % of the permissible 55.0 kN" in tell_pull(found, units="metric")
    assert tell_fewest(found, units="metric") == "This load wants 2 parts of line at least."
    heavy = reeve(set_up(YARD), extension=found.extension, radius=10.0, load=30e3)
    assert not heavy.is_allowed
    assert "more than is rated" in tell_fewest(heavy, units="metric")
    asked = reeve(
        set_up(YARD, rigging=Rigging(parts=2)), extension=found.extension, radius=10.0, load=5e3
    )
    assert asked.parts == 2
    assert "as it was asked for" in tell_parts(asked, units="metric")


REFUSED = {
    "no length": ({"length": "50 m"}, "longest|long"),
    "both": ({"length": "33.1 m", "extension": "0,0,0,0"}, "not allowed with"),
    "a load of nothing": ({"length": "33.1 m", "load": -1.0}, "Give 0 kg or more"),
    "out of reach": ({"length": "33.1 m", "radius": "60 m"}, "Nothing is rated at 60.0 m"),
    "behind": ({"length": "33.1 m", "radius": -3.0}, "above 0 m"),
    "parts": ({"length": "33.1 m", "parts": 13}, "cannot be reeved here"),
}


@pytest.mark.parametrize(("given", "said"), REFUSED.values(), ids=REFUSED)
def test_bad_input_is_refused(given: dict[str, object], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        bs.reeving("yard60", **given)  # type: ignore[arg-type]


def test_a_boom_hangs_its_rope_from_the_head_by_hand() -> None:
    """The triangle of heel, head and ground: 15.1 m of boom at 60 deg.

    Source: plane geometry. Status: worked.
    """
    setup, out = set_up(YARD), np.array([0.0, 0.0, 0.0, 0.45])
    length = float(layout(YARD.boom, extension=out).boom_length[0])
    angle = radians(60.0)
    height = YARD.heel_up + length * sin(angle) - YARD.boom.head.below * cos(angle)
    hung = hanging_mass(setup, length=[length], angle=np.array([[angle]]))[0, 0]
    assert hung == pytest.approx(YARD.hook_block + YARD.slings + 12 * 1.2 * height)
    assert hypot(length * cos(angle), length * sin(angle)) == pytest.approx(length)
