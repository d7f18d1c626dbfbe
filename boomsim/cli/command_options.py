"""What commands have in common: their options, and these options read into frozen inputs."""

import argparse
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, cast

from boomsim.face.crane import DEMONSTRATION, Choices
from boomsim.face.crane import slew as slew
from boomsim.face.given_values import extension as extension
from boomsim.face.given_values import radii as radii
from boomsim.units import quoted

if TYPE_CHECKING:
    from boomsim.machine.model import Disturbances, Machine
    from boomsim.mechanics.geometry import Array
    from boomsim.rating.setup import Setup


def add_machine(parser: argparse.ArgumentParser) -> None:
    """Give a command its machine."""
    parser.add_argument(
        "machine",
        metavar="MACHINE",
        nargs="?",
        default=DEMONSTRATION,
        help=f"built-in name or TOML file (default: {DEMONSTRATION})",
    )


CLOSE_IN = "1.5 m/s, less very close in"
"""Speed of the boom head that is taken where none is given."""

SLEW = "around, rear, or a slew angle such as '90 deg' (0 is over the rear)"


def add_rigging(
    parser: argparse.ArgumentParser, *, slew: str = SLEW, counterweight: bool = True
) -> "argparse._ArgumentGroup":
    """Give a command the options of rigging and rule.

    Parameters
    ----------
    slew : str
        How --slew is explained
    counterweight : bool
        Whether one is chosen

    Returns
    -------
    argument group
        For more of them
    """
    rig = parser.add_argument_group("rigging")
    if counterweight:
        about = "one of the machine's counterweights"
        rig.add_argument("--counterweight", metavar="NAME", help=about)
    rig.add_argument("--support", metavar="NAME", help="one of the machine's ways to stand")
    rig.add_argument(
        "--parts",
        metavar="N",
        type=whole,
        help="most parts of line; a longer boom has as many as the rope on the drum reaches for",
    )
    rig.add_argument("--slew", metavar="WHERE", default="around", help=slew)
    rig.add_argument(
        "--rule", metavar="RULE", default="share", help="share, test-load or limit-states"
    )
    return rig


def add_setup(parser: argparse.ArgumentParser) -> None:
    """Give a command the options of rigging, rule and disturbances."""
    rig = add_rigging(parser)
    rig.add_argument(
        "--allowances",
        choices=("rule", "none"),
        default="rule",
        help="what strength carries on top of the load: the rule's allowances (default), or none, "
        "as in a calculation by hand",
    )
    off = parser.add_argument_group("disturbances, all off by default")
    off.add_argument("--wind", metavar="SPEED", help="gust from behind, such as '9 m/s'")
    off.add_argument("--wind-across", action="store_true", help="the wind blows across the boom")
    off.add_argument(
        "--load-area", metavar="AREA", help="wind area of each tonne of load, such as '1 m2'"
    )
    off.add_argument("--side-pull", metavar="SHARE", help="share of the load, such as '2 %%'")
    off.add_argument("--hoist-speed", metavar="SPEED", help="of picking up, such as '0.3 m/s'")
    off.add_argument("--hoist-class", metavar="N", type=whole, default=2, help="1 soft to 4 stiff")
    off.add_argument("--lean", metavar="ANGLE", help="downhill ahead of the boom, such as '1 deg'")
    off.add_argument("--lean-across", metavar="ANGLE", help="downhill to the left of the boom")


def whole(text: str) -> int:
    """Read a whole number."""
    try:
        return int(text)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"{quoted(text)} is not a whole number. Write one, such as 2."
        ) from None


def add_output(parser: argparse.ArgumentParser, *, figure: bool = True) -> None:
    """Give a command its ways to answer."""
    out = parser.add_argument_group("output")
    out.add_argument(
        "--units", choices=("metric", "us"), default="metric", help="of the output, and its words"
    )
    out.add_argument("--json", action="store_true", help="SI numbers as JSON and nothing else")
    if figure:
        out.add_argument("--figure", metavar="FILE", help="draw to a .png, .svg or .pdf file")


def machine(chosen: argparse.Namespace) -> "Machine":
    """Load the machine that was named."""
    from boomsim.machine.machine_files import load_machine

    return load_machine(chosen.machine)


def from_retracted(chosen: argparse.Namespace, machine: "Machine") -> "Array":
    """Read a configuration; without one take the retracted boom [1]."""
    return extension(chosen.extension or ",".join("0" for _ in machine.boom.sections[1:]), machine)


def choices(chosen: argparse.Namespace) -> Choices:
    """Gather the options of rigging, rule and disturbances."""
    return cast(Choices, {name: getattr(chosen, name) for name in Choices.__annotations__})


def asked(chosen: argparse.Namespace, study: Callable[..., Any]) -> dict[str, Any]:
    """Gather the options that a function of the face takes by name."""
    from inspect import signature

    _, *names = signature(study).parameters
    return {name: getattr(chosen, name) for name in names}


def add_amounts(
    group: "argparse._ArgumentGroup", amounts: tuple[tuple[str, str, str | None, str], ...]
) -> None:
    """Add options with a default each.

    Parameters
    ----------
    amounts : tuple of (str, str, str or None, str)
        Name, kind, default, words; without a default it is :data:`CLOSE_IN`
    """
    for name, kind, usual, words in amounts:
        told = (usual or CLOSE_IN).replace("%", "%%")
        group.add_argument(name, metavar=kind, default=usual, help=f"{words} (default: {told})")


def setup(chosen: argparse.Namespace, machine: "Machine") -> "Setup":
    """Settle rigging, rule and disturbances."""
    from boomsim.face.crane import set_up

    return set_up(machine, **choices(chosen))


def disturbances(chosen: argparse.Namespace) -> "Disturbances":
    """Read the disturbance options."""
    from boomsim.face import crane

    return crane.disturbances(choices(chosen))
