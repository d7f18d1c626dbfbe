"""What is written for other programs to read: stable keys, units, and the chart cell by cell."""

from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane

from boomsim.rating.capacity import rate
from boomsim.rating.charts.chart_book import Book, make_book
from boomsim.rating.charts.chart_tables import plain_book, plain_chart, table_head, table_rows
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of

RADII = np.arange(3.0, 30.0, 3.0)
WAYS = np.array([[0.0, 0.0, 0.0], [0.5, 0.5, 0.5], [1.0, 1.0, 0.0], [0.0, 1.0, 1.0]])


@lru_cache
def book() -> Book:
    crane = invented_crane()
    setups = [set_up(crane, slew=sector) for sector in ("around", "rear")]
    ways = configurations_of(crane.boom, extension=WAYS)
    return make_book(setups, configurations=ways, radii=RADII, step=100.0)


def test_a_chart_is_told_cell_by_cell_as_it_is_rated() -> None:
    chart = book().chapters[0].best
    told = plain_chart(chart)
    assert list(told["radii"]) == list(chart.radii)
    for column, length in zip(told["columns"], chart.length, strict=True):
        assert column["boom_length"] == length
        ways = np.array(column["extensions"])
        for radius, cell in zip(told["radii"], column["cells"], strict=True):
            rating = rate(chart.setup, extension=ways, radius=np.array([radius]))
            most = np.nanmax(np.nan_to_num(rating.capacity[:, 0], nan=-1.0))
            if cell is None:
                assert most == -1.0
                continue
            # Where several ways lift equal steps, the told one need not be the one with most.
            assert most - told["step"] < cell["before_rounding"] <= most * (1.0 + 1e-6)
            assert cell["capacity"] == told["step"] * np.floor(most / told["step"])
            way = int(np.argmin(np.abs(ways - cell["extension"]).sum(axis=1)))
            assert ways[way] == pytest.approx(cell["extension"])
            limit = rating.limits[rating.governing[way, 0]]
            assert (cell["set_by"], cell["governing"]) == (limit.set_by, limit.key)
            assert cell["tipping_load"] == pytest.approx(rating.tipping_load[way, 0], rel=1e-5)
            assert cell["boom_angle"] == pytest.approx(rating.angle[way, 0], rel=1e-5)


def test_a_book_is_told_in_steps_for_every_configuration() -> None:
    told = plain_book(book())
    assert told["schema"] == "boomsim.book/3"
    assert np.array(told["extensions"]) == pytest.approx(WAYS)
    for chapter, sector in zip(told["chapters"], ("around", "rear"), strict=True):
        assert chapter["rule"]["name"] == "share"
        assert (chapter["counterweight"], chapter["support"]) == ("usual", "full")
        setup = set_up(invented_crane(), slew=sector)
        assert chapter["sector"] == setup.sector
        rating = rate(setup, extension=WAYS, radius=RADII)
        first = chapter["first_radius"]
        steps = np.array(chapter["capacity_steps"])
        shown = rating.capacity[:, first : first + steps.shape[1]]
        assert steps == pytest.approx(np.floor(np.nan_to_num(shown, nan=-1.0) / told["step"]))
        names = [limit["name"] for limit in told["limits"]]
        for way in range(len(WAYS)):
            for k in np.flatnonzero(steps[way] >= 0):
                governing = rating.limits[rating.governing[way, first + k]]
                assert names[chapter["governing"][way][k]] == governing.key


@pytest.mark.parametrize(
    ("units", "metre", "kilogram"), [("metric", 1, 1), ("us", 3.28084, 2.20462)]
)
def test_a_table_holds_the_rated_cells_in_the_units_that_its_head_names(
    units: str, metre: float, kilogram: float
) -> None:
    chart = book().chapters[0].stated
    head, rows = table_head(units), list(table_rows(chart, units=units))
    shown = {name: [row[k] for row in rows] for k, name in enumerate(head)}
    length, mass = ("m", "kg") if units == "metric" else ("ft", "lb")
    columns, cells = np.nonzero(chart.rated.T)
    # Written with three and four decimals of a metre or foot, and in pounds to the sixth.
    assert np.array(shown[f"boom_length_{length}"]) == pytest.approx(
        chart.length[columns] * metre, abs=1e-3
    )
    assert np.array(shown[f"radius_{length}"]) == pytest.approx(
        chart.radii[cells] * metre, abs=1e-3
    )
    assert np.array(shown[f"gross_capacity_{mass}"]) == pytest.approx(
        chart.capacity[cells, columns] * kilogram, rel=1e-5
    )
    assert shown["limit"] == [
        chart.limits[chart.governing[r, c]].key for r, c in zip(cells, columns, strict=True)
    ]
