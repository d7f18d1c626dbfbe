"""The page for home or a phone: the numbers of `boomsim compare`, and no network."""

import json
import re
from html.parser import HTMLParser
from xml.etree import ElementTree

import numpy as np
import pytest

from boomsim.caution import CAUTION
from boomsim.lab.page.page_file import page
from boomsim.lab.page.page_states import PICTURE, page_data, ways_of
from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.rating.capacity import rate
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.comparison.difference_account import account, difference
from boomsim.rating.strategies import configurations_of
from boomsim.units import show_rated

BENCH = Scene(machine="bench", system="free", extension=(0.0, 0.0), radius=0.5, load=1.0)


@pytest.fixture(scope="module")
def ways():
    return ways_of(BENCH, demonstration(setup_of(BENCH).machine.boom))


@pytest.fixture(scope="module")
def written(ways):
    return page(ways)


@pytest.mark.slow
def test_capacities_and_what_gives_way_are_the_rated_ones(ways):
    data, setup = page_data(ways), setup_of(BENCH)
    again = rate(setup, extension=ways.configurations.extension, radius=ways.radii)
    seen = 0
    for i, row in enumerate(data["states"]):
        for k, state in enumerate(row):
            capacity = again.capacity[i, k]
            assert (state is None) == (not np.isfinite(capacity))
            if state is not None:
                assert state["carries"] == show_rated(float(capacity))
                limit = again.limits[again.governing[i, k]]
                assert state["set_by"] == limit.set_by
                seen += 1
    assert seen > 20


def test_differences_are_the_explained_ones_and_add_up(ways):
    data, setup, k = page_data(ways), setup_of(BENCH), len(ways.radii) // 2
    accounts = [
        account(setup, extension=e, radius=float(ways.radii[k]))
        for e in ways.configurations.extension[:2]
    ]
    told = difference(*accounts, radius=float(ways.radii[k]))
    rows = data["why"]["01"][k]
    assert np.isclose(rows[-1][1], told.total, rtol=1e-3)
    assert np.isclose(sum(row[1] for row in rows[:-1]), told.total, atol=0.02 * abs(told.total))


def test_the_page_asks_nothing_of_the_network(written):
    assert "default-src 'none'" in written
    assert not re.search(r"""(?:src|href)\s*=\s*["'](?!#)""", written.replace("xmlns", ""))
    assert "http" not in re.sub(r"http-equiv", "", written)
    assert "@import" not in written
    assert "url(" not in re.sub(r"url\(#[\w-]+\)", "", written)


def test_the_page_is_whole_html_with_the_caution_beside_the_capacities(written):
    stack: list[str] = []

    class Walk(HTMLParser):
        def handle_starttag(self, tag, attrs):
            if tag not in {"meta", "input", "rect", "line", "circle", "path", "polygon"}:
                stack.append(tag)

        def handle_startendtag(self, tag, attrs):
            pass

        def handle_endtag(self, tag):
            assert stack.pop() == tag

    Walk().feed(written)
    assert stack == []
    assert CAUTION.replace("'", "&#x27;") in written
    assert not re.search(r"@[A-Z]+@", written)


def test_the_data_survive_the_script_element(written):
    data = re.search(r'<script type="application/json" id="data">(.*?)</script>', written, re.S)
    again = json.loads(data.group(1))
    assert len(again["ways"]) == 3
    drawn = again["states"][0][0]["picture"]
    ElementTree.fromstring(f'<svg xmlns="http://www.w3.org/2000/svg">{drawn}</svg>')
    assert again["box"] == f"0 0 {PICTURE.width:g} {PICTURE.height:g}"


def test_it_fits_in_a_message(written):
    assert len(written.encode()) < 500_000


def test_the_best_way_is_named_at_every_radius(ways):
    data = page_data(ways)
    for k, best in enumerate(data["best"]):
        shares = [row[k] for row in data["share"]]
        assert shares[best] >= max(shares) - 1e-4


@pytest.mark.parametrize("count", [1, 7])
def test_too_few_and_too_many_ways_are_refused(count):
    boom = setup_of(BENCH).machine.boom
    out = np.linspace(0.0, 1.0, count)[:, None] * np.ones((1, 2))
    with pytest.raises(ValueError, match="2 to 6 ways"):
        ways_of(BENCH, configurations_of(boom, extension=out))
