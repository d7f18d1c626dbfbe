"""One comparison, one lift and one difference of a built-in machine, for all figure tests."""

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import layout
from boomsim.rating.comparison.comparison_study import compare
from boomsim.rating.comparison.difference_account import account, difference
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import Configurations

THREE_WAYS = np.array([[0, 0, 0, 0.9], [0, 0, 0.45, 0.45], [0.9, 0, 0, 0]])


@pytest.fixture(scope="session")
def setup():
    return set_up(load_machine("yard60"))


@pytest.fixture(scope="session")
def comparison(setup):
    lengths = layout(setup.machine.boom, extension=THREE_WAYS).boom_length
    ways = Configurations(extension=THREE_WAYS, length=lengths, system=("pinned",) * 3)
    return compare(setup, configurations=ways)


@pytest.fixture(scope="session")
def many(setup, comparison):
    """All configurations of the length that two long strokes give."""
    length = float(comparison.configurations.length[0]) + 0.9 * 8.0
    return compare(setup, length=length)


@pytest.fixture(scope="session")
def lift(setup):
    boom = condense(setup.machine, extension=THREE_WAYS)
    return respond(setup, boom=boom, load=np.array([[4000.0]]), radius=np.array([[9.0, 14.0]]))


def differ(setup, radius):
    accounts = [account(setup, extension=e, radius=radius) for e in THREE_WAYS[[0, 2]]]
    return difference(*accounts, radius=radius)


@pytest.fixture(scope="session", params=[5.0, 9.0, 14.0])
def why(request, setup):
    """Light section out against heavy section out, close in, halfway and far out."""
    return differ(setup, request.param)


@pytest.fixture(scope="session")
def explained(setup):
    """The same where the light one's strength holds it back."""
    return differ(setup, 6.0)
