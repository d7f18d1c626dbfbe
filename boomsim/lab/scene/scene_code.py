"""A scene as three lines of code that anyone can run."""

from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.machine.model import CALM
from boomsim.rating.setup import DEFAULT_ALLOWANCES


def as_code(scene: Scene) -> str:
    """Write the lines that work a scene out again.

    Returns
    -------
    str
        After them `found` is the scene's :class:`boomsim.rating.lift.lift_study.Lift`

    Examples
    --------
    >>> print(as_code(Scene()).splitlines()[2])
    found = lift(setup, extension=[0.0, 0.0, 0.45, 0.45], load=8000.0, radius=10.0)
    """
    setup, disturbances = setup_of(scene), scene.disturbances
    slew = repr(scene.slew if scene.rated_for == "here" else scene.rated_for)
    rigging = (
        f"Rigging(counterweight={setup.counterweight.name!r}, support={setup.support.name!r}, "
        f"parts={setup.parts})"
    )
    calm = disturbances == CALM
    names = "Rigging, lift, load_machine, set_up"
    disturbed = "" if calm else f", disturbances={disturbances!r}"
    machine = f"load_machine({scene.machine!r})"
    if scene.plates != 1.0:
        machine, names = f"with_plates({machine}, factor={scene.plates!r})", f"{names}, with_plates"
    usual = scene.allowances == DEFAULT_ALLOWANCES
    allowed = "" if usual else f", allowances={scene.allowances!r}"
    return "\n".join(
        [
            f"from boomsim.lab import {names if calm else 'Disturbances, ' + names}",
            f"setup = set_up({machine}, rigging={rigging}, slew={slew}, "
            f"rule={scene.rule!r}{allowed}{disturbed})",
            f"found = lift(setup, extension={list(scene.extension)}, load={scene.load!r}, "
            f"{scene.held}={getattr(scene, scene.held)!r})",
        ]
    )
