"""Fuzz the command line: options of every command with good, bad and strange values.

pip install atheris
python tests/fuzz/command_line.py -max_total_time=60
"""

import argparse
from pathlib import Path
from typing import Any

import contract

from boomsim import cli

EXERCISES = sorted((Path(__file__).parents[2] / "exercises").glob("*.toml"))
VALUES = (
    "", " ", "0", "1", "-1", "2", "7", "12", "nan", "inf", "-inf", "1e999", "1e-999", "x", "ü", "%",
    "%s", "%(prog)s", "{}", "=", ",", ",,", "\x00", "\udc80", "-", "--", "@file", "../..", ".", "/",
    "0 m", "1 m", "3 m", "6 m", "12 m", "18.7 m", "43 m", "1e-9 m", "1e9 m", "-3 m", "nan m",
    "20 ft", "6 m, 16 m", "6 m,", "6 m, 6 m", "16 m, 6 m", "6 m, 8 m, 10 m, 12 m", "11.3 m, 25 m",
    "11.3 m, 18.7 m", "0 kg", "1 kg", "100 kg", "8 t", "1e30 kg", "-1 t", "1e-300 kg", "11000 lb",
    "0 deg", "1 deg", "45 deg", "60 deg", "90 deg", "180 deg", "-720 deg", "1e300 deg", "9 m/s",
    "1e-320 m/s", "60 m/s", "0.3 m/s", "1 m2", "0 m2", "1e9 m2", "1e-12 m2", "2 %", "30 %", "-1 %",
    "6 MN/m", "1 N/m", "1e300 N/m", "0,0,45,45", "0,0,45,47", "90,90,90,90", "100,100,100,100",
    "0,0,0,0", "50,50,50", "0,0", "50,50", "nan,0,0,0", "1e3,0,0,0", "0;0;0;0", "around", "rear",
    "share", "test-load", "limit-states", "pinned", "sequenced", "synchronised", "free", "full",
    "half", "10 t", "0 t", "wind=9 m/s", "lean=2 deg", "soft=5 %", "farther=0 m", "lean=", "=2 deg",
    "load-area=1e9 m2", "pdf", "html", "md", "json", "qti", "de", "en-US", "02", "same-length",
    "a.png", "a.svg", "a.pdf", "a.csv", "a.html", "a.doc", "out", "no/such/a.png", "ö 😀.svg",
)  # fmt: skip
MACHINES = ("yard60", "truck18", "bench", "yard6", "", "no.toml", ".", "\x00")
FIXED = {
    "machine": MACHINES,
    "blueprint": (*map(str, EXERCISES), "no.toml", "."),
    "key": ("no.json", "."),
    "file": ("a.html", "a.txt", "no/a.html", ""),
    "folder": ("out", "no/such/out", "\x00"),
    "variants": ("1", "2", "0", "-1", "x", "99999999999"),
    "port": ("8888", "-1", "x", "99999999999"),
    "format": ("md", "json", "html", "pdf", "qti", "moodle", "pfd", ""),
}


def trial(draw: Any) -> None:
    """A command, its positional arguments, and a few of its options."""
    name = _pick(draw, cli.COMMANDS)
    command = _subcommand(name)
    words = [name]
    for action in command._actions:
        if not action.option_strings and draw.ConsumeIntInRange(0, 7):
            words.append(_value(action, draw))
    options = [action for action in command._actions if action.option_strings]
    for _ in range(draw.ConsumeIntInRange(0, 4)):
        action = _pick(draw, options)
        words.append(_pick(draw, action.option_strings))
        if action.nargs != 0:
            words[-1] += f"={_value(action, draw)}"
    if name == "paper":
        words += ["--variants=1"] if not any("--variants" in word for word in words) else []
    with contract.folder() as where, contract.no_server():
        contract.run(words, where=where, given=" ".join(words))


def _subcommand(name: str) -> argparse.ArgumentParser:
    top = cli.parser()
    found = next(a for a in top._actions if isinstance(a, argparse._SubParsersAction))
    command: argparse.ArgumentParser = found.choices[name]
    return command


def _value(action: argparse.Action, draw: Any) -> str:
    """Mostly a value from the lists, seldom any text."""
    if not draw.ConsumeIntInRange(0, 15):
        return str(draw.ConsumeUnicode(20))
    if action.choices and draw.ConsumeIntInRange(0, 7):
        return str(_pick(draw, list(action.choices)))
    return str(_pick(draw, FIXED.get(action.dest, VALUES)))


def _pick(draw: Any, options: Any) -> Any:
    return options[draw.ConsumeIntInRange(0, len(options) - 1)]


if __name__ == "__main__":
    contract.fuzz(trial)
