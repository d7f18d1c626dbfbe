"""The lab: the explorer for notebooks, and the names that a scene's code lines need.

Importing this package loads no widgets; :func:`explore` does.
"""

from typing import TYPE_CHECKING, Any

from boomsim.lab.scene.scene import Look as Look
from boomsim.lab.scene.scene import Scene as Scene
from boomsim.machine.machine_files import load_machine as load_machine
from boomsim.machine.model import Disturbances as Disturbances
from boomsim.machine.model import Rigging as Rigging
from boomsim.machine.plate_thickness import with_plates as with_plates
from boomsim.rating.lift.lift_study import lift as lift
from boomsim.rating.setup import set_up as set_up

if TYPE_CHECKING:
    from boomsim.lab.widgets.explorer import Explorer as Explorer
    from boomsim.lab.widgets.explorer import explore as explore

_LATER = ("Explorer", "explore")


def __getattr__(name: str) -> Any:
    if name in _LATER:
        from boomsim.lab.widgets import explorer

        return getattr(explorer, name)
    raise AttributeError(f"boomsim.lab has no {name!r}.")
