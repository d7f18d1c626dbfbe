"""The names that ``import boomsim`` offers, what they cost, and what results give besides."""

import subprocess
import sys
from types import SimpleNamespace

import pytest

import boomsim as bs
from boomsim.caution import CAUTION


def test_importing_boomsim_imports_nothing_that_computes():
    code = (
        "import sys, boomsim as bs\n"
        "names = [bs.around, bs.overload, bs.losses, bs.range, bs.set_up, bs.load_machine]\n"
        "heavy = {'numpy', 'scipy', 'matplotlib', 'pint', 'pandas'}\n"
        "print('HEAVY', sorted(heavy & set(sys.modules)))"
    )
    plain = code.replace(code.splitlines(True)[1], "")
    for text in (plain, code.replace(", bs.load_machine", "")):
        done = subprocess.run(
            [sys.executable, "-c", text], capture_output=True, text=True, check=True, timeout=60
        )
        assert done.stdout.strip() == "HEAVY []"


def test_all_names_are_listed_and_others_are_refused_with_them():
    offered = {"load_machine", "set_up", "compare", "lift", "around", "overload", "losses", "range"}
    assert offered <= set(dir(bs))
    with pytest.raises(AttributeError, match="It offers load_machine"):
        bs.lifts  # noqa: B018 the question is whether it is refused


def test_asking_again_gives_the_same_function_and_its_own_docstring():
    assert bs.losses is bs.losses
    assert bs.losses.__doc__.startswith("Find what each effect alone takes")


def test_without_pandas_the_way_out_is_told(monkeypatch):
    monkeypatch.setitem(sys.modules, "pandas", None)
    with pytest.raises(ImportError, match=r"pip install pandas.*rows\(\)"):
        bs.overload(radius=8.0).to_dataframe()


def test_a_data_frame_is_made_of_the_rows_with_none_for_what_is_no_number(monkeypatch):
    monkeypatch.setitem(sys.modules, "pandas", SimpleNamespace(DataFrame=list))
    frame = bs.around("truck18", extension="50,50,50", radius=(60.0, 6.0)).to_dataframe()
    assert frame[0]["capacity"] is None
    assert frame[0]["governing"] is None
    assert frame[0]["radius"] == 60.0


def test_around_explains_any_radius_and_says_the_caution():
    said = bs.around("truck18", extension="50,50,50", radius="9 m").explain(radius="7 m")
    assert said.startswith("What holds the crane down at 7.00 m")
    assert " ".join(said.split()).endswith(CAUTION)
    assert repr(said) == str(said)


def test_an_account_out_of_reach_is_refused():
    found = bs.around("truck18", extension="50,50,50", radius="9 m")
    with pytest.raises(ValueError, match=r"radius of 99\.00 m"):
        found.explain(radius=99)


def test_a_map_is_all_over_the_chart():
    from boomsim.face.overload import overload_map

    found = overload_map("truck18")
    assert "breaks first in" in repr(found)
    blank = [row for row in found.rows() if row["rated"] != row["rated"]]
    assert blank
    assert {row["governing"] for row in blank} == {None}


def test_compare_explains_a_radius_that_it_did_not_explain_before():
    ways = ["90,0,0,0", "0,0,45,45"]
    said = bs.compare(extension=ways, radii=(6.0, 12.0), radius=6.0).explain("12 m")
    assert said.startswith("Why, at 12.0 m:")
    whole = bs.compare(extension=ways, radii=(6.0, 12.0), radius=12.0).text()
    assert said.split("\n\n")[0] in whole.split("\n\n")
    assert " ".join(said.split()).endswith(CAUTION)


def test_a_lift_has_no_figure_and_says_what_has():
    with pytest.raises(ValueError, match="range"):
        bs.lift(radius=8.0).plot()


def test_a_lift_is_placed_by_radius_or_by_angle():
    with pytest.raises(ValueError, match=r"^radius and angle both place the load"):
        bs.lift(radius=8.0, angle=1.0)


def test_the_most_used_limit_of_a_lift_comes_first():
    rows = bs.lift(radius=8.0, load="20 t").rows()
    assert rows[0]["use"] == max(row["use"] for row in rows)
    assert rows[0]["limit"] == bs.lift(radius=8.0, load="20 t").to_dict()["governing"]
