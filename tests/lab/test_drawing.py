"""The picture itself: well formed, of one size, readable without colour and without eyes."""

import re
from html import unescape
from itertools import pairwise
from xml.etree import ElementTree

import numpy as np
import pytest
from scenes_to_try import random_scene

from boomsim.caution import CAUTION
from boomsim.figures.colours_and_lines import STEPS
from boomsim.figures.side.bent_axis import bent
from boomsim.lab.scene.scene import BESIDE, Look, Scene, machine_of
from boomsim.lab.solve.capacity_curve import condensed
from boomsim.lab.solve.solved_scene import answer
from boomsim.lab.views.draw_scene import HEIGHT, WIDTH, draw
from boomsim.lab.views.label_places import spread
from boomsim.lab.views.small_chart_cells import short
from boomsim.lab.views.stylesheet import level
from boomsim.lab.views.svg_text import Box, text, view

SVG = "{http://www.w3.org/2000/svg}"
LOOKS = [
    Look(),
    Look(units="us", exaggeration=1.0),
    *(Look(projector=True, beside=beside) for beside in BESIDE),
]


@pytest.mark.parametrize("number", range(24))
def test_any_scene_in_any_look_is_well_formed_and_of_one_size(number):
    look = LOOKS[number % len(LOOKS)]
    picture = ElementTree.fromstring(draw(random_scene(number), look=look))
    assert picture.get("viewBox") == f"0 0 {WIDTH:g} {HEIGHT:g}"
    assert (picture.get("width"), picture.get("height")) == (f"{WIDTH:g}", f"{HEIGHT:g}")
    written = re.sub(r'data-[a-z]+="nan"', "", ElementTree.tostring(picture, encoding="unicode"))
    assert not re.search(r"\bnan\b", written), "a figure that is none is drawn as a dash"


def test_equal_scenes_give_equal_strings():
    assert draw(Scene()) == draw(Scene(load=8000.0))


@pytest.mark.parametrize("look", LOOKS)
def test_the_caution_is_in_every_picture(look):
    assert CAUTION in unescape(draw(Scene(), look=look))


def test_every_view_has_a_text_in_its_place():
    picture = ElementTree.fromstring(draw(Scene()))
    groups = [g for g in picture.iter(f"{SVG}g") if g.get("role") == "img"]
    views = {g.get("data-view"): g.get("aria-label") for g in groups}
    assert set(views) == {"numbers", "side", "limits", "moments", "chart", "plan"}
    assert all(len(words) > 40 for words in views.values())


def test_every_limit_has_a_bar_and_the_first_to_give_way_is_framed():
    scene = Scene()
    picture = ElementTree.fromstring(draw(scene))
    drawn = [r for r in picture.iter(f"{SVG}rect") if r.get("data-limit")]
    bars = {r.get("data-limit"): float(r.get("data-utilisation")) for r in drawn}
    found = answer(scene)
    on = found.setup.support
    told = {k: limit for k, limit in enumerate(found.at.limits) if limit.kind.is_about(on)}
    assert set(bars) == {limit.key for limit in told.values()}
    for limit, utilisation in ((limit, found.at.utilisation[k, 0, 0]) for k, limit in told.items()):
        assert np.isclose(bars[limit.key], utilisation, atol=1e-4)
    frames = [r for r in picture.iter(f"{SVG}rect") if r.get("data-part") == "first"]
    assert len(frames) == 1


def test_utilisation_is_told_by_hatching_and_figures_beside_colour():
    names = [level(utilisation) for utilisation in (0.2, 0.7, 0.95, 1.2)]
    assert names == list(STEPS)
    picture = draw(Scene(extension=(1.0, 1.0, 1.0, 1.0), radius=25.0, load=3000.0))
    for k in range(1, 5):
        assert re.search(rf">section {k} \d+ %<", picture)


def test_steps_of_utilisation_part_in_grey_scale():
    """Relative luminance falls from step to step by a fifth and more."""

    def light(colour: str) -> float:
        red, green, blue = (int(colour[k : k + 2], 16) / 255.0 for k in (1, 3, 5))
        return 0.2126 * red**2.2 + 0.7152 * green**2.2 + 0.0722 * blue**2.2

    order = [light(STEPS[name]) for name in ("busy", "full", "over")]
    assert all(after < 0.8 * before for before, after in pairwise(order))


@pytest.mark.parametrize("number", range(12))
def test_the_drawn_head_stands_where_the_mechanics_put_it(number):
    found = answer(random_scene(number))
    if found.at is None:
        pytest.skip("the boom cannot be there")
    at = found.at
    shape = bent(found.boom, angle=float(at.state.angle[0, 0]), rotation=at.state.rotation[0, :, 0])
    assert np.isclose(shape.sheave[0], at.radius[0, 0], atol=1e-4)
    assert np.isclose(shape.sheave[1], at.placed.head_up[0, 0], atol=1e-4)


def test_a_straight_boom_is_as_long_as_its_sections_reach():
    machine = machine_of("yard60")
    boom = condensed(machine, (0.0, 0.45, 0.9, 1.0))
    shape = bent(boom, angle=0.0, rotation=None)
    assert np.isclose(shape.axis[-1, -1, 0] - machine.heel_out, boom.layout.front[0, -1])
    assert np.allclose(shape.axis[:, 0, 0] - machine.heel_out, boom.layout.tail[0])


def test_words_cannot_break_the_picture():
    made = view("side", 'a "quoted" <label>', [text(0, 0, "<b>&amp", "t")])
    group = ElementTree.fromstring(made)
    assert group.get("aria-label") == 'a "quoted" <label>'
    assert group[0].text == "<b>&amp"


def test_labels_never_cover_one_another():
    box = Box(x=0, y=0, width=600, height=400)
    placed = spread([(300.0, 200.0)] * 6, [90.0] * 6, high=15.0, box=box)
    heights = sorted(y for _, y in placed)
    assert all(b - a >= 15.0 - 1e-9 for a, b in pairwise(heights))


@pytest.mark.parametrize(
    ("value", "words"), [(9.44, "9.44"), (9.996, "10.0"), (59.16, "59.2"), (120217, "120,000")]
)
def test_cells_show_three_figures(value, words):
    assert short(value) == words
