"""What a live page is made of, without a browser; tests/browser/test_live_page.py opens one."""

import json
import marshal
import subprocess
import sys
from hashlib import sha256

import pytest
from scenes_to_try import random_scene

from boomsim.cli import main
from boomsim.figures.qr_code import qr_code
from boomsim.lab.live import python_runtime as runtime
from boomsim.lab.live.bytecode import PYTHON, Compiler
from boomsim.lab.live.live_model import Live
from boomsim.lab.live.live_package import own_files
from boomsim.lab.live.scene_address import from_address, to_address
from boomsim.lab.live.unused_modules import ROOMS_UNUSED, STDLIB_UNUSED
from boomsim.lab.scene.scene import Look, Scene
from boomsim.lab.solve import capacity_curve
from boomsim.lab.views import small_chart
from boomsim.machine.machine_files import builtin_text
from boomsim.machine.model import Disturbances


def refused(words: list[str], capsys) -> str:
    assert main(words) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    return said.err


# --- The runtime ---------------------------------------------------------------------------------


def test_without_a_runtime_one_sentence_says_what_to_fetch_and_nothing_is_written(tmp_path, capsys):
    said = refused(["page", "--live", str(tmp_path / "live.html")], capsys)
    assert "npm package pyodide 0.27.7" in said
    assert runtime.NUMPY in said
    assert "--runtime FOLDER" in said
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_lacks_a_file_is_refused_by_the_files_name(tmp_path, capsys):
    for name in runtime.PINNED:
        (tmp_path / name).write_bytes(b"")
    (tmp_path / "python_stdlib.zip").unlink()
    said = refused(
        ["page", "--live", str(tmp_path / "live.html"), "--runtime", str(tmp_path)], capsys
    )
    assert "lacks python_stdlib.zip." in said
    assert not (tmp_path / "live.html").exists()


def test_a_file_that_is_another_than_the_pinned_one_is_refused(tmp_path, monkeypatch, capsys):
    held = {name: name.encode() for name in runtime.PINNED}
    for name, content in held.items():
        (tmp_path / name).write_bytes(content)
    pinned = {name: sha256(content).hexdigest() for name, content in held.items()}
    monkeypatch.setattr(runtime, "PINNED", pinned)
    assert runtime.read_runtime(str(tmp_path)).files == held
    (tmp_path / "pyodide.js").write_bytes(b"pyodide.js, and something more")
    said = refused(
        ["page", "--live", str(tmp_path / "live.html"), "--runtime", str(tmp_path)], capsys
    )
    assert "is not the pyodide.js of Pyodide 0.27.7" in said
    assert not (tmp_path / "live.html").exists()


def test_a_runtime_without_a_live_page_is_refused(tmp_path, capsys):
    said = refused(["page", str(tmp_path / "ways.html"), "--runtime", str(tmp_path)], capsys)
    assert "--runtime goes with --live" in said


@pytest.mark.parametrize("address", ["crane.html", "ftp://example.org/a", "https://a.org/#load=1"])
def test_an_address_that_is_none_of_the_web_is_refused(address, tmp_path, capsys):
    words = ["page", "--live", str(tmp_path / "live.html"), "--address", address]
    assert "https://example.org/crane.html" in refused(words, capsys)


def test_a_code_has_its_three_corners_and_none_is_made_of_what_does_not_fit():
    """ISO/IEC 18004: a finder pattern, 7 by 7, in three corners, four modules of white around."""
    pytest.importorskip("segno")
    made = qr_code("https://example.org/crane.html#machine=bench")
    dark = {tuple(map(int, one.split("h")[0].split(","))) for one in made["path"].split("M")[1:]}
    finder = {(x, y) for x in range(7) for y in range(7) if max(abs(x - 3), abs(y - 3)) != 2}
    last = made["size"] - 11
    for left, top in ((4, 4), (last, 4), (4, last)):
        corner = {(left + x, top + y) for x in range(7) for y in range(7)}
        assert {(x - left, y - top) for x, y in dark & corner} == finder
    assert min(min(one) for one in dark) == 4
    assert qr_code("x" * 5000) == qr_code("") == {"size": 0, "path": ""}


# --- What is packed ------------------------------------------------------------------------------


def test_the_model_needs_numpy_and_nothing_else_that_is_heavy_and_nothing_left_out():
    code = (
        "import json, sys\n"
        "from boomsim.lab.live.live_model import Live\n"
        "Live().tell()\n"
        "print(json.dumps(sorted(sys.modules)))"
    )
    words = [sys.executable, "-c", code]
    done = subprocess.run(words, capture_output=True, text=True, check=True, timeout=120)
    names = json.loads(done.stdout)
    assert not {"matplotlib", "scipy", "pint", "sympy", "ipywidgets"} & set(names)
    ours = [
        name.split(".", 1)[1].replace(".", "/") for name in names if name.startswith("boomsim.")
    ]
    assert len(ours) > 100
    assert not [name for name in ours if f"{name}/".startswith(ROOMS_UNUSED)]
    # Modules that Linux needs for starting a program, and a browser's Python does not.
    theirs = [name.replace(".", "/") for name in names if name.split(".")[0] in NEEDED]
    assert len(theirs) > 20
    assert not [name for name in theirs if f"{name}.".startswith(STDLIB_UNUSED)]


NEEDED = ("json", "html", "urllib", "tomllib", "dataclasses", "importlib", "re", "textwrap", "math")
NEEDED += ("graphlib", "contextlib", "fractions", "decimal", "numbers", "pathlib", "tempfile")
NEEDED += ("secrets", "shutil", "encodings", "collections", "functools", "difflib", "string")
"""What the model itself imports of Python's library, and what comes with it."""


def test_own_files_are_sources_and_machines_without_examinations():
    packed = dict(own_files())
    assert {"boomsim/__init__.py", "boomsim/lab/live/live_model.py"} <= packed.keys()
    assert "boomsim/machine/builtin/yard60.toml" in packed
    assert not [
        name for name in packed if "/papers/" in name or not name.endswith((".py", ".toml"))
    ]


def test_a_compiler_puts_bytecode_in_the_place_of_sources_and_leaves_the_rest():
    entries = [("one.py", b"answer = 6 * 7\n"), ("one.so", b"\0")]
    (name, code), rest = Compiler(python=sys.executable).compiled(entries, level=0)
    found: dict[str, object] = {}
    exec(marshal.loads(code[16:]), found)  # after a magic number, flags and a hash of 8 bytes
    assert (name, found["answer"]) == ("one.pyc", 42)
    assert rest == ("one.so", b"\0")


def test_only_a_python_of_the_runtimes_version_fits():
    own = ".".join(map(str, sys.version_info[:2]))
    assert Compiler(python=sys.executable).fits() == (own == PYTHON)
    assert not Compiler(python="/no/such/python").fits()


# --- The model -----------------------------------------------------------------------------------


@pytest.mark.parametrize("number", range(24))
def test_a_scene_goes_into_an_address_and_comes_back(number):
    scene, look = random_scene(number), Look(units=("metric", "us")[number % 2])
    disturbed = Disturbances(wind_speed=7.5, wind_across=True, lean=-0.01)
    for one in (scene, Scene(disturbances=disturbed)):
        again, again_look, keeps = from_address(to_address(one, look))
        assert keeps
        assert not from_address(to_address(one, look, keep=one.held))[2]
        assert to_address(again, again_look) == to_address(one, look)
        assert again_look.units == look.units
        assert again.disturbances == one.disturbances
        assert again.extension == pytest.approx(one.extension, abs=1e-11)
        held = again.held
        assert (held, getattr(again, held)) == (one.held, getattr(one, held))
        assert (again.load, again.slew, again.rule) == (one.load, one.slew, one.rule)


@pytest.mark.parametrize(
    ("address", "says"),
    [
        ("machine=yard61", "yard61"),
        ("lode=3", 'Did you mean "load"'),
        ("load=heavy", '"heavy" for load'),
        ("load=-1", "load of -1"),
        ("load=NaN", "load"),
        ("extension=0,0", "2 fractions"),
        ("extension=0,a,0,0", "extension"),
        ("parts=3.5", "3.5"),
        ("counterweight=lead", "lead"),
        ("units=imperial", "imperial"),
        ("keep=everything", "everything"),
        ("wind_speed=900", "wind_speed"),
        ("x" * 3000, "3000 letters"),
        ("machine=../secret.toml", "secret"),
    ],
)
def test_an_address_that_cannot_be_is_refused_in_words_and_changes_nothing(address, says):
    live = Live()
    before = live.told()
    told = json.loads(live.ask(json.dumps({"do": "go", "address": address})))
    assert says in told["trouble"]
    assert {**told, **json.loads(live.rest()), "trouble": ""} == json.loads(json.dumps(before))


@pytest.mark.slow
def test_every_control_stands_at_one_of_its_own_values_after_every_choice():
    live = Live()
    for machine in ("bench", "truck18", "yard60"):
        live.ask(json.dumps({"do": "move", "name": "machine", "value": machine}))
        for one in live.told()["controls"]:
            for value, _ in one.get("options", []) if one["name"] != "machine" else []:
                move = {"do": "move", "name": one["name"], "value": value}
                told = json.loads(live.ask(json.dumps(move)))
                assert told["trouble"] == "", move
                controls = {c["name"]: c for c in told["controls"]}
                assert controls[one["name"]]["value"] == value
                _stand_well(told["controls"])


def _stand_well(controls):
    for one in controls:
        if one["kind"] == "slider":
            assert one["least"] <= one["value"] <= one["most"], one
        elif one["kind"] in ("stops", "choice"):
            assert one["value"] in [value for value, _ in one["options"]], one


def test_a_move_can_be_undone_and_the_start_comes_back():
    live = Live()
    start = live.told()["address"]
    for name, value in (("load", 3.0), ("slew", 40.0), ("rule", "test-load")):
        live.ask(json.dumps({"do": "move", "name": name, "value": value}))
    moved = live.told()["address"]
    assert "rule=test-load" in moved
    live.ask('{"do": "undo"}')
    assert "rule" not in live.told()["address"]
    live.ask('{"do": "reset"}')
    assert live.told()["address"] == start


def test_a_machine_file_is_opened_by_its_name_alone(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    live, mine = Live(), builtin_text("bench").replace('name = "bench"', 'name = "mine"')
    told = json.loads(live.ask(json.dumps({"do": "open", "name": "a/../mine.toml", "text": mine})))
    assert told["trouble"] == ""
    assert "machine=mine.toml" in told["address"]
    assert [one.name for one in tmp_path.iterdir()] == ["mine.toml"]


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("mine.txt", "", "should end in .toml"),
        ("mine.toml", "name = ", "mine.toml"),
        ("mine.toml", "#" * 300_000, "300000 letters"),
    ],
)
def test_a_file_that_is_no_machine_is_refused_and_not_kept(name, text, says, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    told = json.loads(Live().ask(json.dumps({"do": "open", "name": name, "text": text})))
    assert says in told["trouble"]
    assert list(tmp_path.iterdir()) == []


def test_an_answer_and_what_follows_it_are_all_that_is_told():
    live, steps = Live(), [("radius", 9.0), ("section 4", 1.0), ("slew", 40.0), ("radius", 8.0)]
    for name, value in [*steps, ("rated_for", "here"), ("slew", 50.0), ("machine", "truck18")]:
        at_once = json.loads(live.ask(json.dumps({"do": "move", "name": name, "value": value})))
        assert at_once["trouble"] == ""
        assert "below" not in at_once
        afterwards = json.loads(live.rest())
        assert {**at_once, **afterwards} == json.loads(live.tell())


def test_a_step_does_not_wait_for_the_chart_of_a_configuration_that_is_new(monkeypatch):
    made = []
    curve = capacity_curve.curve
    monkeypatch.setattr(small_chart, "curve", lambda *given: made.append(given) or curve(*given))
    live = Live()
    live.ask(json.dumps({"do": "move", "name": "section 4", "value": 1.0}))
    assert not made
    live.rest()
    assert made


@pytest.mark.parametrize(("layout", "staged"), [("desk", 2), ("phone", 1), ("wall", 2)])
def test_every_layout_shows_the_same_numbers_and_a_desk_and_a_phone_every_view(layout, staged):
    told = Live(layout=layout).told()
    views = ["side", "limits", "chart", "moments", "plan"]
    assert [one for one in views if f'data-view="{one}"' in told["stage"]] == views[:staged]
    below = [one for one in views if f'data-view="{one}"' in told["below"]]
    assert below == ([] if layout == "wall" else views[staged:])
    assert told["numbers"] == Live().told()["numbers"]
