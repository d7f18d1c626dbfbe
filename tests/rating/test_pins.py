"""From pin to pin: legal moves, the fewest there are, with the boom's length after each."""

import json
from collections import deque
from dataclasses import replace
from itertools import pairwise, product

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Boom
from boomsim.rating.path.pins_sentences import tell_move, tell_pins
from boomsim.rating.path.pins_study import Sequence, pin_sequence
from boomsim.rating.strategies import pinned_configurations
from tests.making import invented_crane

State = tuple[float, ...]


def legal(before: State, after: State) -> bool:
    """One section changes, and every larger moving one is all the way in: the rule, once more."""
    changed = [k for k in range(len(before)) if before[k] != after[k]]
    return len(changed) == 1 and all(before[k] == 0.0 for k in range(changed[0]))


def states_of(found: Sequence) -> list[State]:
    first = tuple(float(one) for one in found.start)
    return [first, *(move.extension for move in found.moves)]


def length_by_hand(boom: Boom, state: State) -> float:
    """Base, then nose and what is out of each section, then the head [m]."""
    moving = boom.sections[1:]
    out = sum(s.nose + s.stroke * f for s, f in zip(moving, state, strict=True))
    return boom.sections[0].length + out + boom.head.ahead


def test_every_pair_of_configurations_of_the_pinned_crane_has_a_legal_sequence() -> None:
    boom = load_machine("yard60").boom
    every = pinned_configurations(boom)
    assert len(every) == 256
    # Every start, with a sixteenth of the ends, other ones for each start: 4 096 of 65 536 pairs.
    for number, start in enumerate(every):
        for end in every[number % 16 :: 16]:
            found = pin_sequence(boom, start=start, end=end)
            states = states_of(found)
            assert states[-1] == tuple(end)
            assert all(legal(a, b) for a, b in pairwise(states))
            wanted = [length_by_hand(boom, state) for state in states]
            assert found.lengths == pytest.approx(wanted, rel=1e-12)
            assert found.longest == max(found.lengths[0], found.lengths[-1])


def fewest_moves(locks: tuple[float, ...], sections: int, start: State) -> dict[State, int]:
    """Moves from one state to each other, by trying all: breadth first over legal moves."""
    every = list(product(locks, repeat=sections))
    moves, waiting = {start: 0}, deque([start])
    while waiting:
        here = waiting.popleft()
        for there in every:
            if there not in moves and legal(here, there):
                moves[there] = moves[here] + 1
                waiting.append(there)
    return moves


def test_no_sequence_of_a_small_boom_has_more_moves_than_the_fewest_that_trying_all_finds() -> None:
    locks = (0.0, 0.45, 1.0)
    boom = replace(invented_crane().boom, systems=("pinned",), lock_positions=locks)
    for start in product(locks, repeat=3):
        fewest = fewest_moves(locks, 3, start)
        assert len(fewest) == 27, "every state can be reached from every other"
        for end, moves in fewest.items():
            found = pin_sequence(boom, start=np.array(start), end=np.array(end))
            assert len(found.moves) == moves, (start, end)


def test_what_is_out_already_and_may_stay_is_moved_all_the_same_if_it_is_in_the_way() -> None:
    boom = load_machine("yard60").boom
    found = pin_sequence(boom, start=np.array([0, 0.45, 0, 0]), end=np.array([0, 0.45, 0, 0.9]))
    assert [move.section for move in found.moves] == [2, 4, 2]
    assert found.shortest == pytest.approx(length_by_hand(boom, (0, 0, 0, 0)))
    assert found.comes_back == pytest.approx(0.45 * 8.0)
    said = tell_pins(found, units="metric")
    assert said.endswith("must first come in from 15.1 m to 11.5 m, then go out to 22.3 m.")
    told = [tell_move(move) for move in found.moves]
    assert (
        told[0] == "unpin section 2, take it in from 45 to 0 % with sections 3 and 4 in it, pin it"
    )
    assert told[1] == "unpin section 4, let it out from 0 to 90 %, pin it"


def test_a_boom_that_only_grows_never_comes_in_and_is_said_not_to() -> None:
    boom = load_machine("yard60").boom
    found = pin_sequence(boom, start=np.zeros(4), end=np.array([0.45, 0.9, 0.9, 1.0]))
    assert [move.section for move in found.moves] == [4, 3, 2, 1]
    assert list(found.lengths) == sorted(found.lengths)
    assert found.comes_back == 0.0
    assert "never farther in or out" in tell_pins(found, units="metric")


def test_the_same_configuration_takes_no_move() -> None:
    boom = load_machine("yard60").boom
    found = pin_sequence(boom, start=np.full(4, 0.9), end=np.full(4, 0.9))
    assert found.moves == ()
    assert "nothing moves" in tell_pins(found, units="metric")


def test_a_boom_that_has_no_lock_all_the_way_in_is_refused_where_it_needs_one() -> None:
    boom = replace(invented_crane().boom, systems=("pinned",), lock_positions=(0.2, 0.6, 1.0))
    with pytest.raises(ValueError, match="section 1 must be all the way in"):
        pin_sequence(boom, start=np.array([0.2, 0.2, 0.2]), end=np.array([0.2, 0.6, 0.2]))
    alone = pin_sequence(boom, start=np.array([0.2, 0.2, 0.2]), end=np.array([0.6, 0.2, 0.2]))
    assert [move.section for move in alone.moves] == [1]


REFUSED = {
    "no pins": (["truck18", "--to", "0,0,0"], "it has no pins"),
    "no lock there": (["yard60", "--to", "0,0,0,50"], "cannot lock at 50 %"),
    "too few": (["yard60", "--to", "0,0"], "--to: '0,0' needs 4 percentages"),
    "no number": (["yard60", "--from", "in", "--to", "0,0,0,0"], "--from: 'in' is not a list"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_bad_input_is_refused_in_one_line(case: str, capsys: pytest.CaptureFixture[str]) -> None:
    words, said = REFUSED[case]
    assert main(["pins", *words]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err
    assert len(told.err.strip().splitlines()) == 1


def test_the_command_tells_prints_and_draws(tmp_path, capsys: pytest.CaptureFixture[str]) -> None:
    way = ["pins", "yard60", "--from", "0,0,45,45", "--to", "45,45,0,0"]
    picture = tmp_path / "pins.svg"
    assert main([*way, "--figure", str(picture)]) == 0
    assert "takes 4 moves" in capsys.readouterr().out
    assert picture.stat().st_size > 5_000
    assert main([*way, "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["schema"] == "boomsim.pins/4"
    assert [move["section"] for move in answer["moves"]] == [3, 4, 2, 1]
    assert answer["moves"][-1]["extension"] == answer["end"]
