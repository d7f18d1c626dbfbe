"""Configurations that were written out on a command line."""

import argparse
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boomsim.rating.setup import Setup
    from boomsim.rating.strategies import Configurations


def named(chosen: argparse.Namespace, setup: "Setup") -> "Configurations":
    """Give the configurations that were written out, or those of the demonstration.

    Parameters
    ----------
    chosen : argparse.Namespace
        With `extension` and `system`
    """
    from boomsim.face.default_places import ways

    return ways(chosen.extension, setup, system=chosen.system)
