"""Text with units or SI numbers, and refusals in the command's sentence with Python's names."""

import pytest

import boomsim as bs
from boomsim.cli import main

REFUSED = {
    "a radius without unit": (lambda: bs.around(radius="6"), ["around", "--radius", "6"]),
    "too short a way": (lambda: bs.overload(extension="0,0"), ["overload", "--extension", "0,0"]),
    "no lock there": (lambda: bs.range(extension="0,0,0,30"), ["range", "--extension", "0,0,0,30"]),
    "too steep": (lambda: bs.losses(lean_across="20 deg"), ["losses", "--lean-across", "20 deg"]),
    "no such class": (lambda: bs.set_up(hoist_class=7), ["around", "--hoist-class", "7"]),
    "too much pull": (lambda: bs.set_up(side_pull=0.5), ["around", "--side-pull", "50 %"]),
    "soft as nothing": (lambda: bs.around(ground=1.0), ["around", "--ground", "1 N/m"]),
    "no such machine": (lambda: bs.load_machine("yard6"), ["around", "yard6"]),
    "no such support": (lambda: bs.set_up(support="ful"), ["around", "--support", "ful"]),
    "two radii": (lambda: bs.overload(radius=(6, 8)), ["overload", "--radius", "6 m, 8 m"]),
    "five radii": (
        lambda: bs.losses(radius=(4, 5, 6, 7, 8)),
        ["losses", "--radius", "4 m, 5 m, 6 m, 7 m, 8 m"],
    ),
    "a negative load": (lambda: bs.around(load=-1.0), ["around", "--load", "-1 kg"]),
    "no such effect": (lambda: bs.losses(amounts={"win": 3}), ["losses", "--amount", "win"]),
}  # fmt: skip


@pytest.mark.parametrize("case", REFUSED)
def test_a_refusal_is_the_commands_sentence_with_the_arguments_name(case, capsys):
    study, command = REFUSED[case]
    assert main(command) == 2
    said = capsys.readouterr().err.strip().removeprefix(f"boomsim {command[0]}: ")
    for option in ("--radius", "--extension", "--ground", "--load", "--amount"):
        said = said.replace(option, option[2:])
    for option, argument in (
        ("--lean-across", "lean_across"),
        ("--hoist-class", "hoist_class"),
        ("--side-pull", "side_pull"),
    ):
        said = said.replace(option, argument)
    with pytest.raises(ValueError) as refused:
        study()
    assert str(refused.value) == said
    assert "--" not in said


@pytest.mark.slow
@pytest.mark.parametrize(
    ("text", "number"),
    [
        ({"radius": "8 m"}, {"radius": 8}),
        ({"radius": "26 ft", "load": "2 t"}, {"radius": 26 * 0.3048, "load": 2000.0}),
        ({"slew": "90 deg"}, {"slew": 1.5707963267948966}),
        ({"extension": "0,0,45,45"}, {"extension": (0, 0, 0.45, 0.45)}),
        ({"wind": "9 m/s", "side_pull": "2 %"}, {"wind": 9, "side_pull": 0.02}),
        ({"mat": "1 m2", "ground": "6 MN/m"}, {"mat": 1.0, "ground": 6e6}),
    ],
    ids=lambda given: ", ".join(given),
)
def test_text_and_si_numbers_mean_the_same(text, number):
    assert bs.around(**text).to_dict() == bs.around(**number).to_dict()


@pytest.mark.slow
def test_a_machine_may_be_a_name_a_file_a_machine_or_a_crane_set_up(tmp_path):
    from boomsim.machine.machine_files import builtin_text

    path = tmp_path / "truck18.toml"
    path.write_text(builtin_text("truck18"), encoding="utf-8")
    machine = bs.load_machine("truck18")
    cranes = ("truck18", path, str(path), machine, bs.set_up(machine))
    found = [bs.overload(crane, radius=6.0).to_dict() for crane in cranes]
    assert all(one == found[0] for one in found)


@pytest.mark.parametrize("value", [True, float("nan"), float("inf"), [3.0, None], {}, []])
def test_what_is_no_radius_is_refused(value):
    with pytest.raises(ValueError, match=r"^radius: "):
        bs.around(radius=value)


@pytest.mark.parametrize(
    "value", [(0, 0, 45, 45), (0.45,), "x", (0, 0, float("nan"), 0), (0, None)]
)
def test_what_is_no_extension_is_refused(value):
    with pytest.raises(ValueError, match=r"^extension: "):
        bs.around(extension=value)


def test_fractions_in_text_are_no_percentages_unless_it_says_so():
    with pytest.raises(ValueError, match=r"Write 0,0,45,45 for these fractions, or 0%,0%,0\.45%"):
        bs.lift("yard60", extension="0,0,0.45,0.45")
    all_in, nearly = (bs.lift("yard60", extension=e).to_dict() for e in ("0,0,0,0", "1%,1%,0%,0%"))
    assert all_in == nearly  # the lock position within a hundredth


def test_a_boom_that_stops_anywhere_goes_out_by_less_than_a_percent():
    assert bs.lift("truck18", extension="0.5,0,0").to_dict() == (
        bs.lift("truck18", extension=(0.005, 0, 0)).to_dict()
    )


def test_a_crane_that_is_set_up_is_not_set_up_anew():
    with pytest.raises(ValueError, match="set up already, so slew cannot be chosen"):
        bs.around(bs.set_up(), slew="rear")


def test_a_choice_that_there_is_not_is_refused_with_the_nearest():
    with pytest.raises(TypeError, match="counterweight"):
        bs.set_up(counterwieght="10 t")


def test_units_that_are_none_are_refused():
    with pytest.raises(ValueError, match="'metric' or 'us'"):
        bs.overload().text("imperial")
