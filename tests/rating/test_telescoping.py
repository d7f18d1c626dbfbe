"""A load kept while the boom is run out: what pushes a section, how far it goes, what is met."""

import json
import re
from dataclasses import replace
from itertools import pairwise
from math import cos, radians, sin

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass, Lock, Machine, TelescopeCylinder
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.boom.internal_forces import section_forces
from boomsim.mechanics.geometry import layout
from boomsim.rating.capacity import rate
from boomsim.rating.empty_hook.empty_hook_study import empty_hook
from boomsim.rating.lift_response import respond
from boomsim.rating.path.largest_telescoped import largest_moved
from boomsim.rating.path.telescope_drive import PUSH, push_out, with_push
from boomsim.rating.path.telescoping_sentences import last_lock, tell_telescoping
from boomsim.rating.path.telescoping_stages import run_out
from boomsim.rating.path.telescoping_study import Telescoping, telescope
from boomsim.rating.setup import set_up
from tests.making import RIGID, bare_machine, set_up_by_hand, stiff_section

INNER, STROKE, OUTER = 8.0, 5.0, 10.0
"""Lengths of the section that moves, of its stroke and of the base section [m]."""

MASS, LOAD, FRICTION = 900.0, 2_500.0, 0.12
"""Of the section that moves and of what hangs on it [kg], of its pads [1]."""


def two_sections(*, strength: float = 1e9) -> Machine:
    """Two rigid sections without a head, moved by a drive; a rope that hardly pulls."""
    base = stiff_section(OUTER, stiffness=RIGID)
    inner = stiff_section(INNER, stiffness=RIGID, mass=MASS, stroke=STROKE)
    drive = Lock(kind="drive", strength=strength)
    strong = [
        replace(one, material=replace(one.material, yield_stress=1e13)) for one in (base, inner)
    ]
    heavy = (CarrierMass(name="carrier", mass=1e6, x=0.0, y=0.0, z=1.0),)
    sections = strong[0], replace(strong[1], lock=drive)
    machine = bare_machine(sections, lug=2.0, carrier=heavy)
    # 10 N in each of 100 000 parts: loads are looked for up to 2 500 t, and no farther.
    return replace(machine, hoist=replace(machine.hoist, line_pull=10.0))


def by_hand(angle: float, out: float, *, load: float, friction: float) -> float:
    """Push on the section: weights along the boom, and friction of both pads [N].

    The section's tail stands L - s behind the mouth: its overlap c. Moments about the tail:
    N_f c = (m L/2 + W L) g cos a. Across the boom: N_r = N_f - (m + W) g cos a.
    """
    overlap = INNER - out
    across, along = GRAVITY * cos(angle), GRAVITY * sin(angle)
    front = (MASS * INNER / 2 + load * INNER) * across / overlap
    rear = front - (MASS + load) * across
    return (MASS + load) * along + friction * (front + abs(rear))


@pytest.mark.parametrize("degrees", [0.0, 25.0, 50.0, 75.0])
@pytest.mark.parametrize("out", [1.0, 3.0, 5.0])
def test_the_push_is_weight_along_the_boom_and_friction_of_two_pads_by_hand(
    degrees: float, out: float
) -> None:
    """Tolerance: the rope, reeved 100 000 times, pulls 1e-5 of the load; twice that is allowed.

    Source: statics of a beam in two pads, with dry friction. Status: worked.
    """
    angle, machine = radians(degrees), two_sections()
    boom = condense(machine, extension=np.array([[out / STROKE]]))
    parts = machine.hoist.parts[-1]
    cell = {"load": np.array([[LOAD]]), "angle": np.array([[angle]])}
    forces = section_forces(boom, state=solve_state(boom, parts=parts, **cell))
    wanted = by_hand(angle, out, load=LOAD, friction=FRICTION)
    found = push_out(forces, friction=FRICTION)[0, :, 0]
    rope = 2e-5 * LOAD * GRAVITY
    assert found[1] == pytest.approx(wanted, abs=rope)
    assert found[0] == 0.0


def test_the_largest_load_that_is_telescoped_is_the_one_by_hand() -> None:
    """The push is linear in the load, so two loads by hand give the one that uses a drive up.

    The rule divides a drive's strength by 1.5. Friction and thrust are largest where the section
    is farthest out. Tolerance as above. Source: statics. Status: worked.
    """
    strength = 90e3
    machine = two_sections(strength=strength)
    setup = set_up_by_hand(machine)
    stage = run_out(machine.boom, extension=np.zeros(1))[0]
    degrees = np.array([0.0, 30.0, 60.0, 85.0])
    found = largest_moved(setup, stage=stage, angle=np.radians(degrees), friction=FRICTION)
    for angle, pushed, moved in zip(np.radians(degrees), found.pushed, found.moved, strict=True):
        none, tonne = (by_hand(angle, STROKE, load=w, friction=FRICTION) for w in (0.0, 1e3))
        wanted = 1e3 * (strength / 1.5 - none) / (tonne - none)
        assert pushed == pytest.approx(wanted, rel=3e-5)
        assert moved <= pushed


def test_more_friction_moves_less_and_none_moves_as_much_as_a_drive_holds() -> None:
    setup = set_up_by_hand(two_sections(strength=90e3))
    stage = run_out(setup.machine.boom, extension=np.zeros(1))[0]
    angle = np.radians([10.0, 45.0])
    loads = [
        largest_moved(setup, stage=stage, angle=angle, friction=f).pushed for f in (0.0, 0.1, 0.2)
    ]
    assert np.all(np.diff(loads, axis=0) < 0.0)
    # Without friction (m + W) g sin a is all: a drive that holds a load also moves it.
    wanted = 60e3 / (GRAVITY * np.sin(angle)) - MASS
    # The rope's 1e-5 of the load counts against that part of it that lies along the boom.
    assert loads[0] == pytest.approx(wanted, rel=2e-5 / np.sin(angle[0]))


def yard(load: float, degrees: float, extension=(0.0, 0.0, 0.0, 0.0)) -> Telescoping:
    return telescope(
        set_up(load_machine("yard60")),
        extension=np.array(extension),
        load=load,
        angle=radians(degrees),
    )


WAYS = {
    "strength ends it": (8e3, 60.0),
    "the push ends it": (15.5e3, 78.0),
    "stability ends it": (1e3, 20.0),
}


@pytest.mark.parametrize("case", WAYS)
def test_where_the_way_must_end_the_load_is_rated_or_the_push_used_up(case: str) -> None:
    found = yard(*WAYS[case])
    rated = found.marks.rated
    assert rated is not None
    extension = found.extension_at(rated.place.at)
    hangs = rate(found.setup, extension=extension, radius=np.array([rated.place.radius]))
    if not found.is_held_by_push:
        # A rated load is good to a millionth of its use.
        assert hangs.capacity[0, 0] == pytest.approx(found.load, rel=1e-5)
        assert hangs.limit(0, 0) == rated.limit
        return
    assert hangs.capacity[0, 0] > found.load
    at = respond(
        found.setup,
        boom=condense(found.setup.machine, extension=extension),
        load=np.array([[found.load]]),
        angle=np.array([[found.angle]]),
    )
    push = push_out(at.strained_forces, friction=found.friction)[0, rated.limit.section, 0]
    cylinder = found.setup.machine.boom.telescope_cylinder
    assert cylinder is not None
    assert push == pytest.approx(cylinder.push, rel=1e-5)


@pytest.mark.parametrize("case", WAYS)
def test_the_sentence_is_true_to_the_last_figure(case: str) -> None:
    found = yard(*WAYS[case])
    said = tell_telescoping(found, units="metric")
    length, radius = re.findall(
        r"out to ([\d.]+) m of boom, ([\d.]+) m radius: (?:there|bey)", said
    )[0]
    rated = found.marks.rated
    assert rated is not None
    true = float(
        layout(found.setup.machine.boom, extension=found.extension_at(rated.place.at)).boom_length[
            0
        ]
    )
    assert 0.0 <= true - float(length) < 0.1 + 1e-9
    step = 10.0 ** -len(radius.partition(".")[2])
    assert 0.0 <= rated.place.radius - float(radius) < step + 1e-9
    assert ("push is used up" in said) is (rated.limit.name == PUSH)
    assert ("more than is rated" in said) is (rated.limit.name != PUSH)


def test_on_the_way_nothing_is_more_than_rated_and_just_beyond_something_is() -> None:
    found = yard(*WAYS["strength ends it"])
    rated = found.marks.rated
    assert rated is not None
    # 1 mm of boom: the search's own end lies some 1e-8 m from the crossing.
    for out, beyond in (
        (0.5 * rated.place.at, False),
        (rated.place.at - 1e-3, False),
        (rated.place.at + 1e-3, True),
    ):
        number = next(k for k in range(4) if out <= sum(s.travel for s in found.stages[: k + 1]))
        judged = with_push(found.setup, moving=found.stages[number].moving, friction=found.friction)
        at = respond(
            judged,
            boom=condense(judged.machine, extension=found.extension_at(out)),
            load=np.array([[found.load]]),
            angle=np.array([[found.angle]]),
        )
        assert bool(at.utilisation.max() > 1.0) is beyond


def test_a_pinned_boom_is_left_at_the_last_lock_that_it_passed() -> None:
    found = yard(*WAYS["strength ends it"])
    rated = found.marks.rated
    assert rated is not None
    last = last_lock(found)
    assert last is not None
    assert set(last) <= set(found.setup.machine.boom.lock_positions)
    length = layout(found.setup.machine.boom, extension=last).boom_length[0]
    assert length <= found.length_at(rated.place.at)
    locks = found.setup.machine.boom.lock_positions
    moved = int(np.argmax(found.extension_at(rated.place.at) - last > 1e-9))
    higher = last.copy()
    higher[moved] = locks[locks.index(last[moved]) + 1]
    after = layout(found.setup.machine.boom, extension=higher).boom_length[0]
    assert after > found.length_at(rated.place.at)


def test_run_out_low_the_empty_hook_turns_the_crane_over_where_the_boom_says_so_too() -> None:
    setup = set_up(load_machine("yard60"))
    light = replace(setup, counterweight=setup.machine.counterweights[-1])
    angle = radians(20.0)
    found = telescope(light, extension=np.zeros(4), load=2e3, angle=angle)
    assert found.empty_tips is not None
    extension = found.extension_at(found.empty_tips.place.at)
    # The boom is reeved for the end of its way, in fewer parts than it could be at this length.
    light = replace(light, parts=found.setup.parts)
    # Both searches end some 1e-6 rad, or 1e-8 m, from where it is.
    assert float(empty_hook(light, extension=extension).angle[0]) == pytest.approx(angle, abs=1e-5)


@pytest.mark.parametrize(
    ("name", "extension", "system", "moves"),
    [
        ("yard60", (0.0, 0.0, 0.0, 0.0), None, [(4,), (3,), (2,), (1,)]),
        ("yard60", (0.0, 0.45, 0.9, 0.45), None, [(2,), (1,)]),
        ("truck18", (0.4, 0.4, 0.4), None, [(1, 2, 3)]),
        ("truck18", (1.0, 0.5, 0.0), "sequenced", [(2,), (3,)]),
        ("bench", (0.5, 0.0), None, [(1,), (2,)]),
    ],
)
def test_sections_run_out_in_the_order_of_their_boom_system(
    name: str, extension: tuple[float, ...], system: str | None, moves: list[tuple[int, ...]]
) -> None:
    boom = load_machine(name).boom
    stages = run_out(boom, extension=np.array(extension), system=system)
    assert [stage.moving for stage in stages] == moves
    for before, after in pairwise(stages):
        assert np.array_equal(before.end, after.start)
    lengths = layout(boom, extension=np.array([stages[0].start, stages[-1].end])).boom_length
    assert sum(s.travel for s in stages) == pytest.approx(float(np.diff(lengths)[0]))


@pytest.mark.slow
def test_the_command_tells_prints_and_draws(tmp_path, capsys: pytest.CaptureFixture[str]) -> None:
    way = ["telescope", "truck18", "--load", "3 t", "--angle", "60 deg"]
    picture = tmp_path / "out.png"
    assert main([*way, "--figure", str(picture)]) == 0
    assert capsys.readouterr().out.startswith("With 3.00 t at 60.0° this boom is rated out to ")
    assert picture.stat().st_size > 5_000
    assert main([*way, "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["schema"] == "boomsim.telescope/4"
    assert answer["rated"]["length"] < answer["tips"]["length"]
    one = answer["stages"][0]
    assert one["moved"] == [min(p, h) for p, h in zip(one["pushed"], one["hangs"], strict=True)]


REFUSED = {
    "no push known": (["bench", "--load", "1 kg"], "Write push"),
    "all out": (["truck18", "--load", "1 t", "--extension", "100,100,100"], "begin with less"),
    "must come in first": (
        ["yard60", "--load", "1 t", "--extension", "100,0,0,0"],
        "boomsim pins tells the order",
    ),
    "off its way": (["truck18", "--load", "1 t", "--extension", "50,20,50"], "never (50, 20, 50)"),
    "below its range": (["yard60", "--load", "1 t", "--angle", "-20 deg"], "outside this boom's"),
    "sticky": (["yard60", "--load", "1 t", "--friction", "0.9"], "no coefficient of friction"),
    "no number": (["yard60", "--load", "1 t", "--friction", "oil"], "is no number"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_bad_input_is_refused_in_one_line(case: str, capsys: pytest.CaptureFixture[str]) -> None:
    words, said = REFUSED[case]
    assert main(["telescope", *words]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err
    assert len(told.err.strip().splitlines()) == 1


def test_a_machine_without_the_key_is_read_as_before_and_with_it_is_written_back() -> None:
    assert TelescopeCylinder(mass=1.0).push is None
    cylinder = load_machine("yard60").boom.telescope_cylinder
    assert cylinder is not None
    assert cylinder.push == pytest.approx(240e3)
