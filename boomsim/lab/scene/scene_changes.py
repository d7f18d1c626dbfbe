"""Moves: a scene and what one control does to it in, the next scene out. No widgets here."""

from dataclasses import replace

from boomsim.lab.scene.scene import FREE, Scene, first_scene, machine_of
from boomsim.machine.boom_systems import BOOM_SYSTEMS, fractions_with
from boomsim.machine.model import Boom

_USUAL = Scene()


def move_section(scene: Scene, *, section: int, fraction: float) -> Scene:
    """Move one section and, in a boom system that couples them, the others with it.

    Parameters
    ----------
    section : int
        1 is the largest that moves
    fraction : float
        Wanted share of its stroke [1]
    """
    boom, wanted = machine_of(scene.machine).boom, min(max(float(fraction), 0.0), 1.0)
    system = BOOM_SYSTEMS[scene.system]
    if system.path is not None:
        stroke = [s.stroke for s in boom.sections[1:]]
        coupled = fractions_with(system.path, stroke, section=section, fraction=wanted)
        return replace(scene, extension=coupled)
    now = list(scene.extension)
    now[section - 1] = locked(boom, wanted) if system.locks else wanted
    return replace(scene, extension=tuple(now))


def locked(boom: Boom, fraction: float) -> float:
    """Lock position that is nearest [1].

    Parameters
    ----------
    fraction : float
        [1]
    """
    return min(boom.lock_positions, key=lambda position: abs(position - fraction))


def choose_system(scene: Scene, *, system: str) -> Scene:
    """Change the boom system and bring the sections to where it allows them.

    Parameters
    ----------
    system : str
        One of the boom's systems, or "free", which leaves all as they are
    """
    boom, out, chosen = machine_of(scene.machine).boom, scene.extension, BOOM_SYSTEMS[system]
    stroke = [s.stroke for s in boom.sections[1:]]
    if chosen.locks:
        out = tuple(locked(boom, fraction) for fraction in out)
    elif chosen.path is not None:
        out = chosen.path(stroke, sum(f * s for f, s in zip(out, stroke, strict=True)))
    return replace(scene, system=system, extension=tuple(round(f, 9) for f in out))


def systems_of(boom: Boom) -> tuple[str, ...]:
    """Boom systems to choose from: the machine's own, and free for exploring."""
    return boom.systems if FREE in boom.systems else (*boom.systems, FREE)


def hold_radius(scene: Scene, *, radius: float) -> Scene:
    """Hold a loaded radius; the boom angle follows.

    Parameters
    ----------
    radius : float
        [m]
    """
    return replace(scene, held="radius", radius=radius, angle=_USUAL.angle)


def hold_angle(scene: Scene, *, angle: float) -> Scene:
    """Hold a boom angle; the loaded radius follows.

    Parameters
    ----------
    angle : float
        [rad]
    """
    return replace(scene, held="angle", angle=angle, radius=_USUAL.radius)


def choose_machine(scene: Scene, *, machine: str) -> Scene:
    """Change the machine and begin with its demonstration; the rule and its allowances stay."""
    return replace(
        first_scene(machine),
        rule=scene.rule,
        allowances=scene.allowances,
        rated_for=scene.rated_for,
    )


def follow(held: Scene, *, live: Scene) -> Scene:
    """Put a held scene at the live one's radius or angle, load and slew, so that they compare.

    Returns
    -------
    Scene
        `held` itself if the machines differ
    """
    if held.machine != live.machine:
        return held
    return replace(
        held, held=live.held, radius=live.radius, angle=live.angle, load=live.load, slew=live.slew
    )
