"""Two threads that move the same explorer leave right pictures.

Sliders call back on the thread that sets them, and a notebook may do that beside a running cell.
"""

import re
from threading import Barrier, Thread

import pytest

from boomsim.lab.scene.scene import Scene
from boomsim.lab.views.draw_scene import draw
from boomsim.lab.widgets.explorer import Explorer

MOVES = 40


@pytest.mark.slow
def test_every_picture_belongs_to_one_scene_and_the_last_to_the_last():
    explorer, start, seen = Explorer(Scene()), Barrier(2), []
    explorer.panel.picture.observe(lambda change: seen.append(change["new"]), names="value")

    def load_moves():
        start.wait()
        for k in range(MOVES):
            explorer.sliders["load"].value = 2.0 + 0.1 * k

    def radius_moves():
        start.wait()
        for k in range(MOVES):
            explorer.sliders["radius"].value = 8.0 + 0.1 * k

    threads = [Thread(target=load_moves), Thread(target=radius_moves)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(120)
    explorer.check()
    assert len(seen) >= MOVES
    for picture in {*seen}:
        assert picture == draw(scene_in(picture))
    assert explorer.svg() == draw(explorer.scene)
    assert abs(explorer.sliders["load"].value - explorer.scene.load / 1000) < 1e-9


def test_no_move_is_lost_when_threads_move_different_sliders():
    explorer, start = Explorer(Scene()), Barrier(2)

    def move(name, value):
        start.wait()
        explorer.sliders[name].value = value

    threads = [
        Thread(target=move, args=("load", 5.0)),
        Thread(target=move, args=("slew", 45.0)),
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    assert explorer.scene.load == 5000.0
    assert abs(explorer.scene.slew - 0.785398) < 1e-5
    explorer.check()


def scene_in(picture: str) -> Scene:
    """Scene that a picture says it shows."""
    found = [re.search(rf'data-{name}="([^"]+)"', picture) for name in ("load", "radius")]
    load, radius = (float(one.group(1)) for one in found)
    return Scene(load=load, radius=radius)
