"""Memory of one process that works on and on: printed, never asserted.

    python tests/benchmarks/memory.py [CALLS] [MOVES]

First `losses --figure` again and again as a PNG, then moves of the explorer, each to a scene that
was not there before. What grows only until the explorer's stores of answers are full is no leak:
the second half of each run is what counts.
"""

import contextlib
import io
import os
import sys
import tempfile
from pathlib import Path

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import numpy as np  # noqa: E402

from boomsim.cli import main as run  # noqa: E402

CALLS, MOVES, ROWS = 30, 10_000, 10
MIB = 2.0**20


def held() -> float:
    """Resident memory of this process [MiB]."""
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / MIB


def figures(calls: int) -> None:
    with tempfile.TemporaryDirectory() as folder:
        words = ["losses", "--figure", str(Path(folder) / "losses.png")]
        for k in range(calls + 1):
            with contextlib.redirect_stdout(io.StringIO()):
                assert run(words) == 0
            if k % max(1, calls // ROWS) == 0:
                print(f"  {k:6d} calls of losses --figure: {held():6.1f} MiB", flush=True)


def moves(count: int) -> None:
    from boomsim.lab.widgets.explorer import Explorer

    explorer, rng, been = Explorer(), np.random.default_rng(1), 0
    for k in range(count + 1):
        last = explorer.scene
        name = str(rng.choice(["load", "radius", "slew", "section 3", "lean", "angle"]))
        slider = explorer.sliders[name]
        options = getattr(slider, "options", None)
        if options is None:
            slider.value = float(rng.uniform(slider.min, slider.max))
        else:
            slider.value = options[int(rng.integers(len(options)))][1]
        been += explorer.scene != last
        if k % max(1, count // ROWS) == 0:
            print(f"  {k:6d} moves of the explorer: {held():6.1f} MiB, {been} scenes", flush=True)
    print(f"  refused: {len(explorer.errors)}")


def main() -> None:
    given = [int(word) for word in sys.argv[1:]]
    calls, count = [*given, *(CALLS, MOVES)[len(given) :]]
    figures(calls)
    moves(count)


if __name__ == "__main__":
    main()
