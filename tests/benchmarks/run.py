"""Speed, as ratios in one run: print, never assert.

    python tests/benchmarks/run.py [--write FILE]

`--write tests/verification/speed.json` keeps what the verification page shows.

Each side is used as its manual would: the finite-element program has its model built once for a
configuration and re-loaded for each state; boomsim condenses the configuration once and solves all
states in one call. One thread on each side, and processor time, which other work on the machine
hardly changes; a book, which threads share, and whole commands are timed by the clock.
"""

import json
import os
import platform
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"
HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parent / "reference")]

import numpy as np  # noqa: E402

from boomsim.machine.machine_files import load_machine  # noqa: E402
from boomsim.mechanics.boom.boom_state import solve_state  # noqa: E402
from boomsim.mechanics.boom.condense import condense  # noqa: E402
from boomsim.mechanics.boom.internal_forces import section_forces  # noqa: E402
from boomsim.rating.capacity import rate  # noqa: E402
from boomsim.rating.setup import set_up  # noqa: E402
from boomsim.rating.strategies import pinned_configurations  # noqa: E402

ROUNDS = 5
STATES = 4000
REFERENCE_STATES = 400
BUSY = os.getloadavg()[0] if hasattr(os, "getloadavg") else None
"""Processes that wanted a core in the minute before."""


Measured = dict[str, str | float | bool | None]


def measured(
    what: str, values: list[float], *, unit: str, promise: float | None = None, here: bool = False
) -> Measured:
    """A row of the verification page; `here` where it depends on the machine it ran on."""
    low, middle, high = min(values), float(np.median(values)), max(values)
    return {
        "what": what, "unit": unit, "promise": promise, "here": here,
        "low": low, "median": middle, "high": high,
    }  # fmt: skip


def seconds(action) -> float:
    start = time.process_time()
    action()
    return time.process_time() - start


def seconds_by_the_clock(action) -> float:
    start = time.perf_counter()
    action()
    return time.perf_counter() - start


def seconds_of_child(action) -> tuple[float, float]:
    """By the clock, and of processor time of the process that the action starts and ends."""
    start, children = time.perf_counter(), sum(os.times()[2:4])
    action()
    return time.perf_counter() - start, sum(os.times()[2:4]) - children


def spread(values: list[float], *, unit: str, scale: float) -> str:
    low, middle, high = np.array([min(values), float(np.median(values)), max(values)]) * scale
    return f"{middle:.3g} {unit} (from {low:.3g} to {high:.3g})"


def states() -> tuple[list[Measured], float]:
    """Solved states of one configuration against a compiled finite-element program.

    Also gives that program's time for a state with P-delta elements [s].
    """
    machine = load_machine("yard60")
    fractions = (0.45,) * 4
    rng = np.random.default_rng(0)
    loads = rng.uniform(1000.0, 9000.0, STATES)
    angles = np.radians(rng.uniform(10.0, 75.0, STATES))
    parts = machine.hoist.parts[-1]

    def ours() -> None:
        boom = condense(machine, extension=np.array([fractions]))
        state = solve_state(boom, load=loads[None], angle=angles[None], parts=parts)
        section_forces(boom, state=state)

    ours()
    own = [seconds(ours) / STATES for _ in range(ROUNDS)]
    print(f"boomsim, a state with all section forces: {spread(own, unit='us', scale=1e6)}")
    try:
        from opensees_states import COROTATIONAL, P_DELTA, time_states
    except ImportError as error:
        print(f"the finite-element program is not here ({error}): no ratio")
        return [], float("nan")
    rows, times = [], {}
    few = slice(0, REFERENCE_STATES)
    for transform in (P_DELTA, COROTATIONAL):
        theirs, ratios = [], []
        for _ in range(ROUNDS):
            here = seconds(ours) / STATES
            there = time_states(
                machine, fractions, angles[few], loads[few], transform=transform
            ).seconds
            theirs.append(there)
            ratios.append(there / here)
        print(f"compiled program, {transform}: {spread(theirs, unit='ms', scale=1e3)} a state")
        print(f"  ratio: {spread(ratios, unit='times as many states a second', scale=1.0)}")
        what = "states a second with all section forces, over the compiled program's, with"
        what = f"{what} {'corotational' if transform == COROTATIONAL else 'P-delta'} elements"
        promise = 100.0 if transform == P_DELTA else None
        rows.append(measured(what, ratios, unit="times", promise=promise))
        times[transform] = float(np.median(theirs))
    return rows, times[P_DELTA]


def book(one_state: float) -> list[Measured]:
    """The whole chart book of the pinned machine: every pin combination at forty radii."""
    machine = load_machine("yard60")
    setup = set_up(machine)
    extension = pinned_configurations(machine.boom)
    radii = np.linspace(3.0, 40.0, 40)

    def action() -> None:
        rate(setup, extension=extension, radius=radii)

    action()
    times = [seconds_by_the_clock(action) for _ in range(ROUNDS)]
    cells = len(extension) * len(radii)
    print(f"book of {cells} cells: {spread(times, unit='s', scale=1.0)}")
    print(f"  {spread([cells / t for t in times], unit='cells a second', scale=1.0)}")
    rows = [
        measured(f"whole chart book, {cells} rated cells", times, unit="s", promise=1.0, here=True)
    ]
    if one_state > 0.0:
        shares = [one_state * cells / t for t in times]
        what = "rated cells of the book, on all processors, in the time of one such P-delta state"
        rows.insert(0, measured(what, shares, unit="cells"))
    return rows


def commands() -> list[Measured]:
    """Whole processes, imports included; the slowest is kept."""
    slowest: list[tuple[float, float]] = [(0.0, 0.0)]
    for arguments in (
        ["--help"],
        ["machines"],
        ["describe", "yard60"],
        ["lift", "yard60", "--radius", "8 m", "--load", "8 t"],
        ["compare", "yard60", "--length", "18.7 m"],
        ["compare", "--json"],
    ):
        line = [sys.executable, "-m", "boomsim", *arguments]
        action = lambda line=line: subprocess.run(line, stdout=subprocess.DEVNULL, check=True)  # noqa: E731
        action()
        runs = [seconds_of_child(action) for _ in range(ROUNDS)]
        clock, processor = (list(one) for one in zip(*runs, strict=True))
        print(f"boomsim {' '.join(arguments)}: {spread(clock, unit='s', scale=1.0)}")
        print(f"  of processor time {spread(processor, unit='s', scale=1.0)}")
        slowest = max(slowest, runs, key=lambda runs: np.median([run[0] for run in runs]))
    clock, processor = (list(one) for one in zip(*slowest, strict=True))
    what = "the slowest of six commands that draw no picture, imports included"
    return [
        measured(f"{what}, by the clock", clock, unit="s", promise=1.0, here=True),
        measured(f"{what}, of processor time", processor, unit="s", here=True),
    ]


def kept(rows: list[Measured]) -> str:
    """What the verification page shows, as JSON."""
    about = {
        "date": date.today().isoformat(),
        "python": platform.python_version(),
        "numpy": np.__version__,
        "rounds": ROUNDS,
        "load": BUSY,
        "cores": os.cpu_count(),
    }
    return json.dumps({**about, "rows": rows}, indent=1) + "\n"


def main() -> None:
    rows, one_state = states()
    rows += [*book(one_state), *commands()]
    if sys.argv[1:2] == ["--write"]:
        Path(sys.argv[2]).write_text(kept(rows), encoding="utf-8")


if __name__ == "__main__":
    main()
