"""An explorer that is moved all day keeps its last scenes for undo, its stores of answers, no more.

The long version, 10,000 moves, is tests/benchmarks/memory.py.
"""

import gc
import sys
import tracemalloc

import pytest

from boomsim.lab.widgets.explorer import Explorer

MOVES = 40

A_SCENE = 2_000
"""What undo may keep of a move [bytes]: a scene is some 15 numbers and names. A picture that were
kept by mistake has 30,000 letters and more, an answer's arrays are larger still."""


@pytest.mark.slow
def test_a_move_leaves_a_scene_for_undo_and_nothing_else():
    explorer = Explorer()
    move(explorer, start=6.0)  # whatever is made once
    forget()
    tracemalloc.start()
    try:
        before = tracemalloc.get_traced_memory()[0]
        move(explorer, start=7.0)
        forget()
        grown = tracemalloc.get_traced_memory()[0] - before
    finally:
        tracemalloc.stop()
    assert len(explorer.svg()) > 10 * A_SCENE
    assert grown < MOVES * A_SCENE
    explorer.check()


def move(explorer, *, start):
    """Move to scenes that were not there before, by turns of two sliders: each can be undone."""
    for k in range(MOVES // 2):
        explorer.sliders["radius"].value = start + 0.02 * k
        explorer.sliders["load"].value = start + 0.02 * k


def forget():
    """Empty every store of answers, which are bounded, and collect."""
    for name, module in list(sys.modules.items()):
        if name.startswith("boomsim."):
            for one in list(vars(module).values()):
                if hasattr(one, "cache_clear"):
                    one.cache_clear()
    gc.collect()
