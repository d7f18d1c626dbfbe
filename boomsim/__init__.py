"""boomsim: a physics teaching simulator of a telescoping boom.

It shows why a boom of one length lifts differently depending on which sections are out.
A teaching model with invented machines: see :data:`boomsim.caution.CAUTION`.

>>> import boomsim as bs
>>> bs.around("truck18", extension="50,50,50", radius="9 m")
<boomsim around: truck18, extension 50, 50, 50 %, all around at 9.00 m>
"""

from typing import TYPE_CHECKING, Any

from boomsim.version import __version__ as __version__

if TYPE_CHECKING:
    from boomsim.face.around_result import around as around
    from boomsim.face.chart_result import chart as chart
    from boomsim.face.compare_result import compare as compare
    from boomsim.face.crane import set_up as set_up
    from boomsim.face.dynamics_result import dynamics as dynamics
    from boomsim.face.indicator_result import indicator as indicator
    from boomsim.face.lift_result import lift as lift
    from boomsim.face.losses_result import losses as losses
    from boomsim.face.overload_result import overload as overload
    from boomsim.face.pick_result import pick as pick
    from boomsim.face.range_result import range as range
    from boomsim.face.rate_result import rate as rate
    from boomsim.face.reeving_result import reeving as reeving
    from boomsim.face.slabs_result import slabs as slabs
    from boomsim.machine.machine_files import load_machine as load_machine


def __getattr__(name: str) -> Any:
    """Import a study when it is first asked for: what only names boomsim stays fast."""
    from boomsim.face.offered_names import OFFERED, offered

    if name not in OFFERED:
        raise AttributeError(f"boomsim has no {name!r}. It offers {', '.join(OFFERED)}.")
    found = globals()[name] = offered(name)
    return found


def __dir__() -> list[str]:
    from boomsim.face.offered_names import OFFERED

    return sorted([*globals(), *OFFERED])
