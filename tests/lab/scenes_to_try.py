"""Random scenes that a person could set up, alike in every run; what a command says of one."""

import contextlib
import io
import json
import tempfile
from pathlib import Path

import numpy as np

from boomsim.cli import main
from boomsim.lab.scene.scene import Scene, machine_of
from boomsim.lab.scene.scene_changes import systems_of
from boomsim.machine.machine_text import machine_to_toml
from boomsim.machine.plate_thickness import with_plates

MACHINES = ("yard60", "truck18", "bench")


def random_scene(number: int, *, legal: bool = False) -> Scene:
    """Choose everything at random, loads and radii from sensible to far too large.

    `legal` keeps to the machine's own boom systems, which the commands insist on.
    """
    rng = np.random.default_rng(number)
    name = MACHINES[number % len(MACHINES)]
    machine = machine_of(name)
    systems = machine.boom.systems if legal else systems_of(machine.boom)
    system = str(rng.choice(systems))
    extension = _extension(rng, system, len(machine.boom.sections) - 1, machine.boom.lock_positions)
    length = sum(s.stroke * f for s, f in zip(machine.boom.sections[1:], extension, strict=True))
    reach = machine.boom.sections[0].length + length + machine.heel_out
    heaviest = 0.5 * sum(s.mass for s in machine.boom.sections) * machine.boom.sections[0].length
    return Scene(
        machine=name,
        system=system,
        extension=extension,
        held=str(rng.choice(["radius", "angle"])),
        radius=round(float(rng.uniform(0.25, 1.0)) * reach, 3),
        angle=round(float(rng.uniform(0.1, 1.3)), 4),
        load=round(float(rng.uniform(0.0, 1.0)) * heaviest / reach, 1),
        slew=round(float(rng.uniform(-3.1, 3.1)), 3),
        rated_for=str(rng.choice(["around", "rear", "here"])),
        counterweight=str(rng.choice([c.name for c in machine.counterweights])),
        support=str(rng.choice([s.name for s in machine.supports])),
        parts=int(rng.choice(machine.hoist.parts)),
        rule=str(rng.choice(["share", "test-load", "limit-states"])),
        plates=round(float(rng.choice([1.0, 1.0, 0.8, 1.2])), 2),
    )


def _extension(
    rng: np.random.Generator, system: str, moving: int, locks: tuple[float, ...]
) -> tuple[float, ...]:
    if system == "pinned":
        return tuple(float(f) for f in rng.choice(locks, size=moving))
    if system == "synchronised":
        return (round(float(rng.uniform()), 3),) * moving
    if system == "sequenced":
        out = rng.uniform(0.0, moving)
        return tuple(round(float(np.clip(out - k, 0.0, 1.0)), 3) for k in range(moving))
    return tuple(round(float(f), 3) for f in rng.uniform(size=moving))


def by_command(scene: Scene) -> dict | None:
    """What `boomsim lift --json` says; None where it refuses. Other plates come from a file."""
    if scene.plates == 1.0:
        return _said(_words(scene, scene.machine))
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "built.toml"
        built = with_plates(machine_of(scene.machine), factor=scene.plates)
        path.write_text(machine_to_toml(built), encoding="utf-8")
        return _said(_words(scene, str(path)))


def by_compare(scene: Scene, extensions: list[tuple[float, ...]]) -> list[float | None] | None:
    """Capacities that `boomsim compare --json` gives ways at a scene's radius; None: it refuses."""
    words = ["compare", scene.machine, "--json", "--radii", f"{scene.radius!r} m"]
    for extension in extensions:
        words += ["--extension", ",".join(repr(100 * f) for f in extension)]
    slew = f"{scene.slew!r} rad" if scene.rated_for == "here" else scene.rated_for
    words += [f"--slew={slew}", f"--rule={scene.rule}", "--parts", str(scene.parts)]
    words += [f"--counterweight={scene.counterweight}", f"--support={scene.support}"]
    told = _said(words)
    return None if told is None else [one["capacity"][0] for one in told["configurations"]]


def _words(scene: Scene, machine: str) -> list[str]:
    """What a person would type for a scene."""
    held = f"{scene.radius!r} m" if scene.held == "radius" else f"{scene.angle!r} rad"
    slew = f"{scene.slew!r} rad" if scene.rated_for == "here" else scene.rated_for
    words = ["lift", machine, "--json", f"--slew={slew}", f"--rule={scene.rule}"]
    words += ["--extension", ",".join(repr(100 * f) for f in scene.extension)]
    words += [f"--{scene.held}", held, "--load", f"{scene.load!r} kg"]
    words += [f"--counterweight={scene.counterweight}", f"--support={scene.support}"]
    return [*words, "--parts", str(scene.parts)]


def _said(words: list[str]) -> dict | None:
    out = io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(io.StringIO()):
        code = main(words)
    return json.loads(out.getvalue()) if code == 0 else None
