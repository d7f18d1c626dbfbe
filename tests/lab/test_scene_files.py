"""Named scenes, their files, and a scene as code."""

import json

import numpy as np
import pytest
from scenes_to_try import random_scene

from boomsim.lab.scene.named_scenes import NamedScene, read_scenes, usual_scenes, write_scenes
from boomsim.lab.scene.scene import Scene
from boomsim.lab.scene.scene_code import as_code
from boomsim.lab.scene.scene_data import as_dict, from_dict
from boomsim.lab.solve.solved_scene import answer
from boomsim.lab.widgets.explorer import Explorer
from boomsim.machine.model import Disturbances


@pytest.mark.parametrize("number", range(12))
def test_three_lines_of_code_give_the_same_numbers(number):
    scene = random_scene(number)
    lines = as_code(scene)
    assert len(lines.splitlines()) == 3
    found = answer(scene)
    names: dict = {}
    if not found.solved:
        with pytest.raises(ValueError, match=r"\w"):
            exec(lines, names)
        return
    exec(lines, names)
    told = names["found"]
    assert np.isclose(told.radius, found.at.radius[0, 0], rtol=1e-9)
    assert np.isclose(told.capacity, found.capacity, rtol=3e-5, equal_nan=True)


def test_the_lines_carry_disturbances_too():
    scene = Scene(disturbances=Disturbances(wind_speed=10.0, side_pull=0.02))
    names: dict = {}
    exec(as_code(scene), names)
    assert np.isclose(names["found"].capacity, answer(scene).capacity, rtol=3e-5)


def test_the_lines_and_the_plain_form_carry_the_choice_of_allowances():
    scene = Scene(radius=5.0, allowances="rule")
    bare = answer(Scene(radius=5.0, allowances="none")).capacity
    names: dict = {}
    exec(as_code(scene), names)
    assert np.isclose(names["found"].capacity, answer(scene).capacity, rtol=3e-5)
    assert names["found"].capacity < 0.99 * bare
    assert from_dict(json.loads(json.dumps(as_dict(scene)))) == scene


def test_disturbances_survive_the_plain_form():
    scene = Scene(disturbances=Disturbances(wind_speed=9.0, lean=0.01, hoist_class=3))
    plain = json.loads(json.dumps(as_dict(scene)))
    assert plain["disturbances"] == {"wind_speed": 9.0, "lean": 0.01, "hoist_class": 3}
    assert from_dict(plain) == scene


@pytest.mark.parametrize("number", range(12))
def test_a_scene_survives_its_plain_form(number):
    scene = random_scene(number)
    again = from_dict(json.loads(json.dumps(as_dict(scene))))
    assert as_dict(again) == as_dict(scene)
    assert np.isclose(answer(again).capacity, answer(scene).capacity, rtol=1e-6, equal_nan=True)


def test_a_list_survives_its_file(tmp_path):
    listed = (*usual_scenes("yard60"), NamedScene(name="mine", scene=Scene(), note="why?"))
    path = write_scenes(listed, tmp_path / "class.json")
    assert read_scenes(path) == listed
    assert not list(tmp_path.glob("*.part"))


@pytest.mark.parametrize("machine", ["yard60", "truck18", "bench"])
def test_a_machine_begins_with_scenes_of_one_length(machine):
    listed = usual_scenes(machine)
    lengths = [float(answer(s.scene).boom.layout.boom_length[0]) for s in listed]
    assert len(listed) >= 3
    assert np.ptp(lengths) < 0.1
    assert len({s.scene.extension for s in listed}) >= 2


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{", "is not a list of scenes"),
        ("[]", "is not a list of scenes of the kind"),
        ('{"schema": "boomsim.scenes/1"}', 'has no list "scenes"'),
        ('{"schema": "boomsim.scenes/1", "scenes": [3]}', "Scene 1 .* cannot be read"),
        (
            '{"schema": "boomsim.scenes/1", "scenes": [{"name": "a", "scene": {"laod": 3}}]}',
            'Did you mean "load"',
        ),
        (
            '{"schema": "boomsim.scenes/1", "scenes": [{"name": "a", "scene": {"machine": "x"}}]}',
            "Scene 1",
        ),
        (
            '{"schema": "boomsim.scenes/1", "scenes": [{"name": "a", "scene": {"support": "x"}}]}',
            "Choose one of",
        ),
        (
            '{"schema": "boomsim.scenes/1", "scenes": [{"name": "a", "scene": {"load": "3 t"}}]}',
            "Scene 1",
        ),
    ],
)
def test_a_wrong_file_is_refused_in_words(tmp_path, text, says):
    path = tmp_path / "scenes.json"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ValueError, match=says):
        read_scenes(path)


def test_an_instructor_steps_through_the_list():
    explorer = Explorer()
    names = [s.scene for s in explorer.shelf.scenes]
    for wanted in [*names, names[-1]]:
        explorer.shelf.buttons["next"].click()
        assert explorer.scene == wanted
    explorer.shelf.buttons["previous"].click()
    assert explorer.scene == names[-2]
    explorer.buttons["undo"].click()
    assert explorer.scene == names[-1], "each step through the list is undone by itself"
    # The arrow keys on the list set its value.
    explorer.shelf.listed.value = 0
    assert explorer.scene == names[0]
    explorer.check()


def test_scenes_are_added_named_saved_and_opened_again(tmp_path):
    explorer = Explorer(Scene(load=7000.0), scenes=())
    shelf = explorer.shelf
    shelf.name.value = "the question"
    shelf.buttons["add"].click()
    shelf.file.value = str(tmp_path / "mine.json")
    shelf.buttons["write"].click()
    shelf.buttons["remove"].click()
    assert shelf.scenes == ()
    shelf.buttons["read"].click()
    assert [s.name for s in shelf.scenes] == ["the question"]
    assert shelf.scenes[0].scene == Scene(load=7000.0)
    explorer.check()


def test_stepping_through_an_empty_list_says_so():
    explorer = Explorer(scenes=())
    explorer.shelf.buttons["next"].click()
    assert "no scenes yet" in explorer.panel.error.value
    assert len(explorer.errors) == 1


def test_the_picture_can_be_saved_and_downloaded(tmp_path):
    explorer = Explorer()
    path = explorer.save_picture(tmp_path / "lift.svg")
    assert path.read_text(encoding="utf-8").startswith("<svg")
    with pytest.raises(ValueError, match=r"should end in \.svg"):
        explorer.save_picture(tmp_path / "lift.png")
    explorer.buttons["save"].click()
    assert 'download="boomsim-yard60.svg"' in explorer.panel.output.value
    explorer.buttons["code"].click()
    assert "found = lift(" in explorer.panel.output.value
    explorer.check()


def test_saving_a_list_overwrites_lists_only(tmp_path):
    path = tmp_path / "settings.json"
    path.write_text('{"mine": 1}')
    with pytest.raises(ValueError, match="not a list of scenes"):
        write_scenes(usual_scenes("yard60"), path)
    assert path.read_text() == '{"mine": 1}'
    path.unlink()
    write_scenes(usual_scenes("yard60"), path)
    assert len(read_scenes(write_scenes(usual_scenes("yard60")[:1], path))) == 1


def test_a_note_from_a_file_is_text_and_never_runs(tmp_path):
    note = '<img src=x onerror="alert(1)">'
    path = write_scenes([NamedScene(name="one", scene=Scene(), note=note)], tmp_path / "a.json")
    shelf = Explorer(scenes=read_scenes(path)).shelf
    shelf.show(0)
    assert "<" not in shelf.note.value
    assert "onerror" in shelf.note.value


@pytest.mark.parametrize("machine", ["yard60", "truck18", "bench"])
def test_the_list_ends_with_the_same_boom_built_stout_and_light(machine):
    *_, old, new = usual_scenes(machine)
    assert "old: built stout" in old.name
    assert "new: built light" in new.name
    stout, light = answer(old.scene), answer(new.scene)
    weights = [sum(one.setup.machine.boom.section_masses) for one in (stout, light)]
    assert weights[0] > weights[1]
    assert old.scene.extension == new.scene.extension


@pytest.mark.parametrize("machine", ["yard60", "truck18"])
def test_a_scene_hangs_the_first_slab_on_a_crane_that_has_none_on(machine):
    (slab,) = (s for s in usual_scenes(machine) if s.name.startswith("setting up"))
    found = answer(slab.scene)
    lightest = min(choice.mass for choice in found.setup.machine.counterweights)
    assert found.setup.counterweight.mass == lightest
    heavier = sorted({choice.mass for choice in found.setup.machine.counterweights})[1]
    hook = found.setup.machine.hook_block + found.setup.machine.slings
    # Besides, the falls of the rope: some ten kilograms each.
    rope = slab.scene.load - (heavier - lightest + hook)
    assert 0.0 < rope < 250.0
    out = found.boom.layout.boom_length[0] * found.setup.parts * found.setup.machine.hoist.rope_mass
    assert rope < out
    assert slab.note.endswith("?")


def test_in_the_first_look_strength_sets_the_light_booms_figure_and_stability_the_stout_ones():
    *_, old, new = usual_scenes("yard60")
    assert answer(new.scene).first.set_by == "strength"
    assert answer(old.scene).first.set_by == "stability"
