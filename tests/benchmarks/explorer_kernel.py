"""Kernel time of one step of each of the explorer's sliders: printed, never asserted.

    python tests/benchmarks/explorer_kernel.py

A step is everything that the kernel does between a new slider value and the new picture: mechanics,
rating, drawing, and bringing the other controls along. Processor time, so that a busy machine
counts less; a fixed loop of plain Python beside it says how fast the machine was meanwhile.
"""

import os
import time

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import numpy as np  # noqa: E402

from boomsim.lab.scene.scene import Scene  # noqa: E402
from boomsim.lab.solve.capacity_curve import _place, condensed, curve  # noqa: E402
from boomsim.lab.solve.solved_scene import answer  # noqa: E402
from boomsim.lab.widgets.explorer import Explorer  # noqa: E402

STEPS = 60


def loop() -> None:
    """A piece of plain Python that takes some 5 ms on a machine of 2024."""
    total = 0
    for k in range(100_000):
        total += k * k


def timed(action) -> float:
    start = time.process_time()
    action()
    return 1e3 * (time.process_time() - start)


def told(name: str, times: list[float]) -> None:
    fast, middle, slow = np.percentile(times, [10, 50, 95])
    print(f"  {name:34s} {fast:6.1f} {middle:6.1f} {slow:6.1f}")


def steps(explorer: Explorer, name: str, values) -> list[float]:
    def move(value: float) -> None:
        explorer.sliders[name].value = value

    return [timed(lambda value=value: move(value)) for value in values]


def forget() -> None:
    for kept in (answer, curve, _place, condensed):
        kept.cache_clear()


def main() -> None:
    print("plain loop [ms]:", np.round(np.median([timed(loop) for _ in range(30)]), 1))
    print("milliseconds of the kernel a step:     10 %   half   95 %")
    start = Scene()
    explorer = Explorer(start)
    told("load", steps(explorer, "load", 4.0 + 0.1 * np.arange(STEPS)))
    told("radius", steps(explorer, "radius", 7.0 + 0.1 * np.arange(STEPS)))
    told("slew angle", steps(explorer, "slew", np.arange(1.0, STEPS)))
    told("boom angle", steps(explorer, "angle", 20.0 + np.arange(STEPS)))
    told("lean, each a new setup", steps(explorer, "lean", 0.1 * np.arange(1, 30)))
    forget()
    explorer = Explorer(start)
    locks = [0.0, 0.45, 0.9, 1.0]
    first, again = [], []
    for found in (first, again):
        for one in locks:
            found += steps(explorer, "section 1", [one])
            for two in [0.9, 1.0, 0.0, 0.45]:
                found += steps(explorer, "section 2", [two])
    told("section, pinned, first visit", first)
    told("section, pinned, seen before", again)
    explorer.choices["system"].value = "free"
    told("section, free", steps(explorer, "section 2", 10.0 + 0.5 * np.arange(STEPS)))
    explorer = Explorer(start)
    for _ in range(3):
        explorer.hold()
    told("load, three scenes held", steps(explorer, "load", 4.0 + 0.1 * np.arange(STEPS)))
    print("picture:", len(explorer.svg()), "characters")
    print("plain loop [ms]:", np.round(np.median([timed(loop) for _ in range(30)]), 1))


if __name__ == "__main__":
    main()
