"""The live page's controls as plain data: what each is called, how far it goes, where it stands."""

from typing import Any

from boomsim.lab.live.drag_grips import keeps_of
from boomsim.lab.scene.scene import Look, Scene, setup_of
from boomsim.lab.scene.scene_changes import systems_of
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.widgets.control_map import shown_values, spans_of
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.machine_files import machine_names
from boomsim.machine.part_names import section_name
from boomsim.rating.rules import RULES
from boomsim.units import SYSTEMS, in_words

PLACES = {
    "load": "gross load",
    "radius": "radius, load on",
    "angle": "boom angle",
    "slew": "slew angle",
}
"""Sliders that have a unit, in their order, and what they are called."""

EATS = {
    "wind_speed": ("wind, m/s", 0.0, 20.0, 0.5),
    "lean": ("lean ahead, °", -3.0, 3.0, 0.1),
    "lean_across": ("lean to the left, °", -3.0, 3.0, 0.1),
    "side_pull": ("side pull, % of the load", 0.0, 5.0, 0.1),
}
"""Sliders of what eats capacity: words, least, most, step."""

KEPT_WORDS = {"length": "the length", "radius": "the radius", "angle": "the boom angle"}
"""What can stay while something is dragged."""

Control = dict[str, Any]


def offered(scene: Scene, look: Look, *, now: Answer, keep: str) -> list[Control]:
    """Give every control, in its order.

    Parameters
    ----------
    now : Answer
        To `scene`
    keep : str
        What stays while something is dragged

    Returns
    -------
    list of dict
        Each with `name`, `words`, `kind` ("slider", "stops", "choice" or "switch"), `group` and
        `value`; a slider with `least`, `most`, `step` and `digits`; stops and a choice with
        `options`, pairs of value and words
    """
    stands = shown_values(scene, look=look, now=now)
    return [
        *_places(scene, look, now, stands),
        *_sections(scene, stands),
        *_choices(scene, look, keep),
        *_eats(scene, stands),
    ]


def _places(scene: Scene, look: Look, now: Answer, stands: dict[str, Any]) -> list[Control]:
    spans = spans_of(scene, look=look, now=now)
    return [
        _slider(name, f"{in_words(words, look.units)}, {span.shown.symbol}", "place", stands[name])
        | {"least": span.least, "most": span.most, "step": span.step, "digits": span.digits}
        for name, words in PLACES.items()
        for span in [spans[name]]
    ]


def _slider(name: str, words: str, group: str, value: float) -> Control:
    return {"name": name, "words": words, "kind": "slider", "group": group, "value": value}


def _sections(scene: Scene, stands: dict[str, Any]) -> list[Control]:
    locks = sorted(setup_of(scene).machine.boom.lock_positions)
    pinned, found = BOOM_SYSTEMS[scene.system].locks, []
    for k in range(1, len(scene.extension) + 1):
        name, words = f"section {k}", f"{section_name(k)}, % out"
        one = _slider(name, words, "section", stands[name])
        if pinned:
            options = [[place, f"{100 * place:g}"] for place in locks]
            found.append({**one, "kind": "stops", "options": options})
        else:
            found.append({**one, "least": 0.0, "most": 100.0, "step": 0.5, "digits": 1})
    return found


def _choices(scene: Scene, look: Look, keep: str) -> list[Control]:
    setup = setup_of(scene)
    machine = setup.machine
    rows: list[tuple[str, str, Any, list[Any]]] = [
        ("machine", "machine", scene.machine, [*dict.fromkeys((*machine_names(), scene.machine))]),
        ("keep", "keep", keep, [(one, KEPT_WORDS[one]) for one in keeps_of(scene)]),
        ("system", "boom system", scene.system, [*systems_of(machine.boom)]),
        (
            "counterweight",
            "counterweight",
            setup.counterweight.name,
            [c.name for c in machine.counterweights],
        ),
        ("support", "support", setup.support.name, [s.name for s in machine.supports]),
        ("parts", "parts of line", setup.parts, [*machine.hoist.parts]),
        (
            "rated_for",
            "rated for",
            scene.rated_for,
            [("around", "all around"), ("rear", "over the rear"), ("here", "this slew angle")],
        ),
        ("rule", "rule", scene.rule, [*RULES]),
        (
            "allowances",
            "allowances",
            scene.allowances,
            [("rule", "the rule's"), ("none", "none")],
        ),
        ("units", "units", look.units, [*SYSTEMS]),
    ]
    return [
        {
            "name": name,
            "words": in_words(words, look.units),
            "kind": "choice",
            "group": "drag" if name == "keep" else "choice",
            "value": value,
            "options": [
                (value, in_words(str(shown), look.units))
                for one in options
                for value, shown in [one if isinstance(one, tuple) else (one, one)]
            ],
        }
        for name, words, value, options in rows
    ]


def _eats(scene: Scene, stands: dict[str, Any]) -> list[Control]:
    sliders = [
        _slider(name, words, "eats", stands[name])
        | {"least": least, "most": most, "step": step, "digits": 1}
        for name, (words, least, most, step) in EATS.items()
    ]
    words = "wind from the side"
    across = _slider("wind_across", words, "eats", stands["wind_across"])
    return [*sliders, {**across, "kind": "switch"}]
