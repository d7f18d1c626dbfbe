"""The names that ``import boomsim`` offers, what they cost, and what results give besides."""

import re
import subprocess
import sys
from pathlib import Path
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
    studies = {
        "rate",
        "lift",
        "compare",
        "chart",
        "around",
        "overload",
        "losses",
        "range",
        "pick",
        "slabs",
        "reeving",
    }
    offered = studies | {"load_machine", "set_up"}
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


def test_a_real_data_frame_has_the_rows_and_counts_a_blank_as_missing():
    pandas = pytest.importorskip("pandas")
    found = bs.around("truck18", extension="50,50,50", radius=(60.0, 6.0))
    frame = found.to_dataframe()
    assert isinstance(frame, pandas.DataFrame)
    assert list(frame.columns) == list(found.rows()[0])
    assert frame["capacity"].isna().tolist() == [row["radius"] == 60.0 for row in found.rows()]


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
    from boomsim.face.overload_result import overload_map

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
    assert rows[0]["utilisation"] == max(row["utilisation"] for row in rows)
    assert rows[0]["limit"] == bs.lift(radius=8.0, load="20 t").to_dict()["governing"]


def test_a_blank_cell_of_a_rating_has_none_for_its_limit_and_the_others_have_theirs():
    found = bs.rate(radius=(6.0, 80.0), extension=(0, 0, 0.45, 0.45))
    near, far = found.governing[0]
    assert far is None
    assert near.key == found.to_dict()["governing"][0][0]
    assert found.to_dict()["capacity"][0][1] is None
    assert found.to_dict()["set_by"][0][1] is None


def test_rate_tells_the_rated_load_that_compare_tells():
    ways = ["90,0,0,0", "0,0,45,45"]
    compared = bs.compare(extension=ways, radii=(6.0, 12.0)).to_dict()
    rated = bs.rate(extension=ways, radius=(6.0, 12.0)).to_dict()
    for k, way in enumerate(compared["configurations"]):
        assert rated["capacity"][k] == pytest.approx(way["capacity"], rel=1e-9)  # one search
        assert rated["governing"][k] == way["governing"]


def test_a_chart_speaks_in_the_units_that_it_was_made_in(capsys):
    from boomsim.cli import main

    assert main(["chart", "truck18", "--units", "us"]) == 0
    assert f"{bs.chart('truck18', units='us').text()}\n" == capsys.readouterr().out


def test_the_lines_of_the_readme_run_and_tell_what_they_were_asked(capsys):
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    (lines,) = re.findall(r"```python\n(.*?)```", readme, re.S)
    exec(lines, {})
    said = capsys.readouterr().out
    assert "counterweight none" in said
    assert "Why, at 6.00 m:" in said
    assert " lb" in said


def test_a_setup_and_a_machine_say_themselves_in_one_short_line():
    setup = bs.set_up("truck18", support="half", slew="rear")
    for said in map(repr, (setup, setup.machine)):
        assert "\n" not in said
        assert len(said) < 200
        assert "truck18" in said
    assert "support half" in repr(setup)
    assert setup.sector in repr(setup)
