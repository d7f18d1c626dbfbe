"""Configurations that were written out on a command line."""

import argparse
from typing import TYPE_CHECKING

from boomsim.cli import inputs

if TYPE_CHECKING:
    from boomsim.rating.setup import Setup
    from boomsim.rating.strategies import Configurations


def named(chosen: argparse.Namespace, setup: "Setup") -> "Configurations":
    """Give the configurations that were written out, or those of the demonstration.

    Parameters
    ----------
    chosen : argparse.Namespace
        With `extension` and `system`
    setup : Setup

    Returns
    -------
    Configurations
    """
    import numpy as np

    from boomsim.rating.comparison.compare import demonstration
    from boomsim.rating.strategies import configurations_of

    if chosen.extension is None:
        return demonstration(setup.machine.boom, system=chosen.system)
    written = np.array([inputs.extension(text, setup.machine) for text in chosen.extension])
    return configurations_of(setup.machine.boom, extension=written, system=chosen.system)
