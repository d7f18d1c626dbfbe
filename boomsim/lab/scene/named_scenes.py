"""Named scenes: a list that an instructor steps through, kept as JSON."""

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from os import PathLike
from pathlib import Path
from typing import Any

import numpy as np

from boomsim.files.text_file import write_whole
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.lab.scene.scene import Scene, first_scene, machine_of, setup_of
from boomsim.lab.scene.scene_data import as_dict, from_dict
from boomsim.machine.plate_thickness import factor_label
from boomsim.mechanics.geometry import layout
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.parts_reeved import falls_at_radius
from boomsim.rating.slabs.slab_stages import stages
from boomsim.rating.strategies import label

SCHEMA = "boomsim.scenes/1"
MOST_BYTES = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedScene:
    """A scene with what the instructor calls it, and a note."""

    name: str
    scene: Scene
    note: str = ""


def usual_scenes(machine: str) -> tuple[NamedScene, ...]:
    """Scenes of a machine: one length in several ways, to the side, setting up, old and new."""
    start = first_scene(machine)
    ways = demonstration(machine_of(machine).boom)
    found = [
        NamedScene(
            name=f"one length: {label(row)} %",
            scene=replace(start, extension=tuple(float(f) for f in row), system=system),
        )
        for row, system in zip(ways.extension, ways.system, strict=True)
    ]
    side = replace(start, rated_for="here", slew=round(3.141592653589793 / 2, 9))
    lightest_out = found[0].scene
    return (
        *found,
        NamedScene(name="over the side", scene=side),
        *_setting_up(start),
        *_old_and_new(lightest_out),
    )


def _setting_up(start: Scene) -> tuple[NamedScene, ...]:
    """The first slab of a counterweight on the hook while none of it is on the crane."""
    setup = setup_of(start)
    if len({choice.mass for choice in setup.machine.counterweights}) < 2:
        return ()
    first, extension = stages(setup)[0], np.array([start.extension])
    length = layout(setup.machine.boom, extension=extension).boom_length
    # What hangs counts the falls of the rope too.
    falls = falls_at_radius(setup, length=length, radius=np.array([[start.radius]]))
    load = float(round(first.gross + float(falls[0, 0]), 1))
    scene = replace(start, counterweight=first.counterweight.name, load=load)
    return (NamedScene(name="setting up: its own first slab", scene=scene, note=ASK_SLAB),)


ASK_SLAB = (
    "No counterweight on, the first slab on the hook. How far out may the lorry stand, beams full "
    "out and half out? Which way out reaches the deck as well?"
)
"""What a class is asked about it."""


OLD, NEW = 1.3, 0.8
"""Plates of a stout boom, as many an older crane has, and of a light one, as a newer has [1]."""


def _old_and_new(start: Scene) -> tuple[NamedScene, ...]:
    """One boom built stout and built light, for a class to say what sets the figure in each."""
    built = ((OLD, "old: built stout"), (NEW, "new: built light"))
    return tuple(
        NamedScene(
            name=f"{words}, {factor_label(factor)}",
            scene=replace(start, plates=factor),
            note=ASK,
        )
        for factor, words in built
    )


ASK = (
    "Hold the old one, then show the new one. What sets the figure in each, here, closer in and "
    "farther out? Which boom weighs more?"
)
"""What a class is asked about these two."""


def write_scenes(scenes: Iterable[NamedScene], path: str | PathLike[str]) -> Path:
    """Save a list; a list that is there is replaced as a whole, another file never.

    Parameters
    ----------
    path : str or path
        A .json file

    Raises
    ------
    ValueError
        If the file is there and is no list of scenes.
    """
    if Path(path).exists():
        try:
            _plain_list(path)
        except ValueError:
            raise ValueError(
                f'"{Path(path).name}" is there already and is not a list of scenes. Choose another '
                "name."
            ) from None
    plain = [{"name": s.name, "note": s.note, "scene": as_dict(s.scene)} for s in scenes]
    text = json.dumps({"schema": SCHEMA, "scenes": plain}, indent=1, ensure_ascii=False)
    return write_whole(text + "\n", path, ending=".json")


def read_scenes(path: str | PathLike[str]) -> tuple[NamedScene, ...]:
    """Read a list that was saved.

    Raises
    ------
    ValueError
        If the file is not such a list, or names what is not there.
    """
    plain, name = _plain_list(path), Path(path).name
    return tuple(_named(k, one, name) for k, one in enumerate(_listed(plain, name)))


def _plain_list(path: str | PathLike[str]) -> dict[str, Any]:
    """What a file of scenes holds, its scenes not yet read."""
    target = Path(path)
    text = text_of(read_bytes(target, most=MOST_BYTES), name=target.name)
    try:
        plain = json.loads(text)
    except (ValueError, RecursionError) as fault:
        raise ValueError(
            f'"{target.name}" is not a list of scenes: {fault}. Choose a file that was saved here.'
        ) from None
    if not isinstance(plain, dict) or plain.get("schema") != SCHEMA:
        raise ValueError(
            f'"{target.name}" is not a list of scenes of the kind {SCHEMA}. Choose a file that was '
            "saved with this version."
        )
    return plain


def _listed(plain: dict[str, Any], file: str) -> Sequence[Any]:
    listed = plain.get("scenes")
    if not isinstance(listed, list):
        raise ValueError(f'"{file}" has no list "scenes". Choose a file that was saved here.')
    return listed


def _named(number: int, plain: Any, file: str) -> NamedScene:
    try:
        scene = from_dict(plain["scene"])
        return NamedScene(name=str(plain["name"]), scene=scene, note=str(plain.get("note", "")))
    except (ValueError, TypeError, KeyError, AttributeError) as fault:
        raise ValueError(f'Scene {number + 1} of "{file}" cannot be read: {fault}') from None
