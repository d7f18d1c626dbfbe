"""What commands have in common: their options, and these options read into frozen inputs."""

import argparse
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boomsim.machine.model import Disturbances, Machine, Rigging
    from boomsim.mechanics.geometry import Array
    from boomsim.rating.setup import Setup

DEMONSTRATION = "yard60"
"""The machine that a command takes when none is named."""

SNAP = 0.01
"""A typed extension this near to a lock position means that position [1]."""


def add_machine(parser: argparse.ArgumentParser) -> None:
    """Give a command its machine."""
    parser.add_argument(
        "machine",
        metavar="MACHINE",
        nargs="?",
        default=DEMONSTRATION,
        help=f"built-in name or TOML file (default: {DEMONSTRATION})",
    )


def add_setup(parser: argparse.ArgumentParser) -> None:
    """Give a command the options of rigging, rule and disturbances."""
    rig = parser.add_argument_group("rigging")
    rig.add_argument("--counterweight", metavar="NAME", help="one of the machine's counterweights")
    rig.add_argument("--support", metavar="NAME", help="one of the machine's ways to stand")
    rig.add_argument("--parts", metavar="N", type=int, help="parts of line")
    rig.add_argument(
        "--slew",
        metavar="WHERE",
        default="around",
        help="around, rear, or a slew angle such as '90 deg' (0 is over the rear)",
    )
    rig.add_argument(
        "--rule", metavar="RULE", default="share", help="share, test-load or limit-states"
    )
    rig.add_argument(
        "--allowances",
        choices=("rule", "none"),
        default="rule",
        help="disturbances that strength bears without their being given: the rule's (default), or "
        "none, as in a calculation by hand",
    )
    off = parser.add_argument_group("disturbances, all off by default")
    off.add_argument("--wind", metavar="SPEED", help="gust from behind, such as '9 m/s'")
    off.add_argument("--wind-across", action="store_true", help="the wind blows across the boom")
    off.add_argument(
        "--load-area", metavar="AREA", help="wind area of each tonne of load, such as '1 m2'"
    )
    off.add_argument("--side-pull", metavar="SHARE", help="share of the load, such as '2 %%'")
    off.add_argument("--hoist-speed", metavar="SPEED", help="lifting off, such as '0.3 m/s'")
    off.add_argument("--hoist-class", metavar="N", type=int, default=2, help="1 soft to 4 stiff")
    off.add_argument("--lean", metavar="ANGLE", help="downhill ahead of the boom, such as '1 deg'")
    off.add_argument("--lean-across", metavar="ANGLE", help="downhill to the left of the boom")


def add_output(parser: argparse.ArgumentParser, *, figure: bool = True) -> None:
    """Give a command its ways to answer."""
    out = parser.add_argument_group("output")
    out.add_argument("--units", choices=("metric", "us"), default="metric", help="of the output")
    out.add_argument("--json", action="store_true", help="SI numbers as JSON and nothing else")
    if figure:
        out.add_argument("--figure", metavar="FILE", help="draw to a .png, .svg or .pdf file")


def machine(chosen: argparse.Namespace) -> "Machine":
    """Load the machine that was named."""
    from boomsim.machine.files import load_machine

    return load_machine(chosen.machine)


def setup(chosen: argparse.Namespace, machine: "Machine") -> "Setup":
    """Settle rigging, rule and disturbances."""
    from boomsim.rating.setup import set_up

    return set_up(
        machine,
        rigging=rigging(chosen),
        slew=slew(chosen.slew),
        rule=chosen.rule,
        disturbances=disturbances(chosen),
        allowances=chosen.allowances,
    )


def rigging(chosen: argparse.Namespace) -> "Rigging":
    """Read the rigging options."""
    from boomsim.machine.model import Rigging

    return Rigging(counterweight=chosen.counterweight, support=chosen.support, parts=chosen.parts)


def slew(text: str) -> float | str:
    """Read a slew angle, or pass on the name of a sector."""
    from boomsim.units import parse

    if any(sign.isdigit() for sign in text):
        return parse(text, "angle", what="--slew")
    return text


def disturbances(chosen: argparse.Namespace) -> "Disturbances":
    """Read the disturbance options."""
    from boomsim.machine.model import Disturbances
    from boomsim.units import parse

    def read(name: str, quantity: str) -> float:
        text = getattr(chosen, name)
        what = "--" + name.replace("_", "-")
        return 0.0 if text is None else parse(text, quantity, what=what)

    if chosen.hoist_class not in (1, 2, 3, 4):
        raise ValueError(
            f"--hoist-class {chosen.hoist_class} is not a class. Give 1 for a soft hoist, 2, 3, or "
            "4 for a stiff one."
        )
    found = Disturbances(
        wind_speed=read("wind", "speed"),
        wind_across=chosen.wind_across,
        load_area=read("load_area", "area") / 1000.0,
        side_pull=read("side_pull", "share"),
        hoist_speed=read("hoist_speed", "speed"),
        hoist_class=chosen.hoist_class,
        lean=read("lean", "angle"),
        lean_across=read("lean_across", "angle"),
    )
    _refuse_absurd(found)
    return found


def _refuse_absurd(found: "Disturbances") -> None:
    bounds = {
        "wind_speed": (0.0, 60.0, "--wind", "m/s"),
        "load_area": (0.0, 0.1, "--load-area", "m2 for each kilogram"),
        "side_pull": (0.0, 0.3, "--side-pull", "of the load"),
        "hoist_speed": (0.0, 3.0, "--hoist-speed", "m/s"),
        "lean": (-0.18, 0.18, "--lean", "rad, some ten degrees"),
        "lean_across": (-0.18, 0.18, "--lean-across", "rad, some ten degrees"),
    }
    for name, (least, most, option, unit) in bounds.items():
        value = getattr(found, name)
        if not least <= value <= most:
            raise ValueError(
                f"{option}: {value:g} is outside {least:g} to {most:g} {unit}, beyond which this "
                "model says nothing. Give a value inside."
            )


def extension(text: str, machine: "Machine", *, what: str = "--extension") -> "Array":
    """Read percentages such as "0, 0, 45, 45", base side first.

    A pinned boom takes the lock position within a hundredth of the stroke.
    """
    import numpy as np

    fields = [field.strip().removesuffix("%").strip() for field in text.split(",")]
    moving = len(machine.boom.sections) - 1
    try:
        fractions = np.array([float(field) for field in fields]) / 100.0
    except ValueError:
        raise ValueError(
            f"{what}: {text!r} is not a list of percentages. Write one for each of the "
            f"{moving} moving sections, base side first, as '{', '.join(['0'] * moving)}'."
        ) from None
    if len(fractions) != moving or not np.all((fractions >= 0.0) & (fractions <= 1.0)):
        raise ValueError(
            f"{what}: {text!r} needs {moving} percentages from 0 to 100, one for each moving "
            f"section, base side first, as '{', '.join(['0'] * moving)}'."
        )
    return _locked(fractions, machine, what) if machine.boom.systems == ("pinned",) else fractions


def _locked(fractions: "Array", machine: "Machine", what: str) -> "Array":
    import numpy as np

    locks = np.array(machine.boom.lock_positions)
    nearest = locks[np.abs(fractions[:, None] - locks).argmin(axis=1)]
    off = np.flatnonzero(np.abs(nearest - fractions) > SNAP)
    if len(off):
        offered = ", ".join(f"{100 * p:g}" for p in locks)
        raise ValueError(
            f"{what}: section {off[0] + 1} cannot lock at {100 * fractions[off[0]]:g} %. This "
            f"pinned boom locks at {offered} %. Choose one of these."
        )
    return np.asarray(nearest)


def radii(text: str | None, *, what: str = "--radius") -> "Array | None":
    """Read one radius, or several parted by commas ("6 m, 8 m, 10 m")."""
    import numpy as np

    from boomsim.units import parse

    if text is None:
        return None
    return np.array([parse(part.strip(), "length", what=what) for part in text.split(",")])
