"""Speed, as ratios in one run: print, never assert.

    python tests/benchmarks/run.py

Each side is used as its manual would: the finite-element program has its model built once for a
configuration and re-loaded for each state; boomsim condenses the configuration once and solves all
states in one call. One thread on each side.
"""

import os
import subprocess
import sys
import time
from pathlib import Path

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"
HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parent / "reference")]

import numpy as np  # noqa: E402

from boomsim.machine.files import load_machine  # noqa: E402
from boomsim.mechanics.condense import condense  # noqa: E402
from boomsim.mechanics.forces import section_forces  # noqa: E402
from boomsim.mechanics.state import solve_state  # noqa: E402
from boomsim.rating.capacity import rate  # noqa: E402
from boomsim.rating.setup import set_up  # noqa: E402
from boomsim.rating.strategies import pinned_configurations  # noqa: E402

ROUNDS = 5
STATES = 4000
REFERENCE_STATES = 400


def seconds(action) -> float:
    start = time.perf_counter()
    action()
    return time.perf_counter() - start


def spread(values: list[float], *, unit: str, scale: float) -> str:
    low, middle, high = np.array([min(values), float(np.median(values)), max(values)]) * scale
    return f"{middle:.3g} {unit} (from {low:.3g} to {high:.3g})"


def states() -> None:
    """Solved states of one configuration against a compiled finite-element program."""
    machine = load_machine("yard60")
    fractions = (0.465,) * 4
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
        return
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


def book() -> None:
    """The whole chart book of the pinned machine: every pin combination at forty radii."""
    machine = load_machine("yard60")
    setup = set_up(machine)
    extension = pinned_configurations(machine.boom)
    radii = np.linspace(3.0, 40.0, 40)

    def action() -> None:
        rate(setup, extension=extension, radius=radii)

    action()
    times = [seconds(action) for _ in range(ROUNDS)]
    cells = len(extension) * len(radii)
    print(f"book of {cells} cells: {spread(times, unit='s', scale=1.0)}")
    print(f"  {spread([cells / t for t in times], unit='cells a second', scale=1.0)}")


def commands() -> None:
    """Whole processes, imports included."""
    for arguments in (
        ["--help"],
        ["machines"],
        ["describe", "yard60"],
        ["lift", "yard60", "--radius", "8 m", "--load", "8 t"],
        ["compare", "yard60", "--length", "18.9 m"],
        ["compare", "--json"],
    ):
        line = [sys.executable, "-m", "boomsim", *arguments]
        action = lambda line=line: subprocess.run(line, stdout=subprocess.DEVNULL, check=True)  # noqa: E731
        action()
        times = [seconds(action) for _ in range(ROUNDS)]
        print(f"boomsim {' '.join(arguments)}: {spread(times, unit='s', scale=1.0)}")


if __name__ == "__main__":
    states()
    book()
    commands()
