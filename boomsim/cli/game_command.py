"""``boomsim game``: a pick is stated, you choose the way out, and the model answers."""

import argparse
import secrets
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import paragraph

if TYPE_CHECKING:
    from boomsim.game.player_progress import Played
    from boomsim.game.stated_pick import Pick

HELP = "a game: a pick is stated, you choose which sections are out, and the model answers why"
EXAMPLE = "boomsim game yard60 --picks 6 --seed 7 --progress mine.json"

SEEDS = 10_000
"""Where no seed is given, one below this is drawn, short enough to be called out in class [1]."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    parser.add_argument("--picks", metavar="N", type=int, default=6, help="how many (default: 6)")
    parser.add_argument(
        "--seed", metavar="N", type=int, help="draw the same picks again (default: new ones)"
    )
    parser.add_argument(
        "--answers", metavar="LETTERS", help="answer all at once, as B,A,N,C (default: one by one)"
    )
    parser.add_argument(
        "--progress", metavar="FILE.json", help="keep what you have played in this file of yours"
    )
    parser.add_argument(
        "--page",
        metavar="FILE.html",
        help="write the game for a class as one HTML file without network, and play nothing",
    )
    inputs.add_setup(parser)
    inputs.add_output(parser, figure=False)


def run(chosen: argparse.Namespace) -> None:
    """Play."""
    from boomsim.game.picks_by_seed import draw
    from boomsim.game.player_progress import read_progress, tell_progress, write_progress

    seed = secrets.randbelow(SEEDS) if chosen.seed is None else chosen.seed
    before = read_progress(Path(chosen.progress)) if chosen.progress else []
    setup = inputs.setup(chosen, inputs.machine(chosen))
    with Bar() as bar:
        picks = draw(setup, picks=chosen.picks, seed=seed, units=chosen.units, told=bar.tell)
    if chosen.page:
        _write_page(chosen, picks, seed)
        return
    if chosen.json:
        _print_json(picks, seed, chosen.units)
        return
    given = None if chosen.answers is None else _letters(chosen.answers, picks)
    print(f"{paragraph(_head(picks, seed, chosen.units))}\n\n{paragraph(CAUTION)}")
    played: list[Played] = []
    for number, (pick, letter) in enumerate(_played(picks, given, chosen.units), start=1):
        played.append(_tell(pick, letter, seed, number, chosen.units))
    if not played:
        return
    print(f"\n{paragraph(_score(played, len(picks)))}")
    if chosen.progress:
        every = [*before, *played]
        write_progress(Path(chosen.progress), every)
        print(paragraph(tell_progress(every)))
    print(f"\n{paragraph(CAUTION)}")


def _head(picks: "list[Pick]", seed: int, units: str) -> str:
    from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
    from boomsim.units import in_words

    setup = picks[0].setup
    said = (
        f"{len(picks)} {'pick' if len(picks) == 1 else 'picks'}, seed {seed}: the same again with "
        f"--seed {seed}. "
        f"{machine_words(setup)}; {setup_words(setup, units=units)}. "
        f"{allowance_words(setup.rule, units=units)}"
    )
    return in_words(said.rstrip(), units)


def _played(
    picks: "list[Pick]", given: list[str] | None, units: str
) -> "Iterator[tuple[Pick, str]]":
    """State one pick after the other, and give each with what was chosen; end where input ends."""
    for number, pick in enumerate(picks):
        print(f"\n{_stated(pick, number + 1, len(picks), units)}")
        if given is not None:
            yield pick, given[number]
            continue
        letter = _asked(pick)
        if letter is None:
            print("\nStopped here.")
            return
        yield pick, letter


def _stated(pick: "Pick", number: int, picks: int, units: str) -> str:
    from boomsim.game.pick_verdict import ask, options

    asked = paragraph(f"Pick {number} of {picks}. {ask(pick, units=units)}")
    listed = "\n".join(f"  {letter}  {words}" for letter, words in options(pick))
    return f"{asked}\n{listed}"


def _asked(pick: "Pick") -> str | None:
    """Ask until a letter of the pick is given; None where nothing more comes."""
    wanted = ", ".join(pick.letters)
    while True:
        print(f"Your choice ({wanted}): ", end="", flush=True)
        try:
            line = sys.stdin.readline(200)
        except KeyboardInterrupt:  # what has been played counts, and is kept
            return None
        if not line:
            return None
        letter = line.strip().upper()
        if letter in pick.letters:
            return letter
        # "none of them" would be an answer: the last letter of every pick says so.
        said = f"{line.strip()[:40]!r} is no choice here" if line.strip() else "Nothing was typed"
        print(f"{said}. Type one of {wanted}.")


def _tell(pick: "Pick", letter: str, seed: int, number: int, units: str) -> "Played":
    from boomsim.game.pick_verdict import judge
    from boomsim.game.player_progress import played

    said = judge(pick, letter, units=units)
    points = "1 point" if said.points == 1 else f"{said.points} points"
    print(paragraph(f"{said.first} {points}."))
    for way in said.ways:
        print(paragraph(way, indent="    "))
    print(paragraph(f"Why: {said.why}"))
    return played(pick, seed=seed, number=number, chosen=letter)


def _score(played: "list[Played]", picks: int) -> str:
    from boomsim.game.stated_pick import BEST

    got = sum(one.points for one in played)
    stopped = f", {len(played)} of {picks} picks played" if len(played) < picks else ""
    return f"Score: {got} of {BEST * len(played)} points{stopped}."


def _letters(text: str, picks: "list[Pick]") -> list[str]:
    """Read answers to all picks, or refuse them."""
    given = [one.strip().upper() for one in text.split(",")]
    if len(given) != len(picks):
        raise ValueError(
            f"--answers: {len(given)} answers for {len(picks)} picks. Give one letter for each, "
            "with commas between."
        )
    for number, (letter, pick) in enumerate(zip(given, picks, strict=True), start=1):
        if letter not in pick.letters:
            raise ValueError(
                f"--answers: {letter[:40]!r} is no answer to pick {number}. Choose one of "
                f"{', '.join(pick.letters)}."
            )
    return given


def _print_json(picks: "list[Pick]", seed: int, units: str) -> None:
    from boomsim.cli.json_printing import print_json

    print_json("game", as_json(picks, seed, units))


def as_json(picks: "list[Pick]", seed: int, units: str) -> dict[str, Any]:
    """Give the picks with their answers, SI.

    Parameters
    ----------
    units : str
        Of the sentences
    """
    from boomsim.game.pick_verdict import ask, judge
    from boomsim.reports.setup_head import setup_json

    return {
        **setup_json(picks[0].setup),
        "seed": seed,
        "picks": [
            {
                "asked": ask(pick, units=units),
                "length": pick.length,
                "radius": pick.radius,
                "load": pick.load,
                "letters": pick.letters,
                "extension": pick.extension,
                "capacity": pick.capacity,
                "governing": [limit.key for limit in pick.limits],
                "set_by": [limit.set_by for limit in pick.limits],
                "right": pick.right,
                "points": [pick.points(letter) for letter in pick.letters],
                "why": judge(pick, pick.right[0], units=units).why,
            }
            for pick in picks
        ],
    }


def _write_page(chosen: argparse.Namespace, picks: "list[Pick]", seed: int) -> None:
    from boomsim.files.text_file import refuse_ending, write_whole
    from boomsim.game.game_page import game_page

    refuse_ending(chosen.page, ending=".html")
    made = game_page(picks, head=_head(picks, seed, chosen.units), units=chosen.units)
    target = write_whole(made, chosen.page, ending=".html")
    print(f"{target}: open it in any browser; it needs no network.\n\n{paragraph(CAUTION)}")
