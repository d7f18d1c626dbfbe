"""Shared by all tests: where test helpers lie, and the record for the verification page."""

import signal
import sys
from pathlib import Path

import pytest
from hypothesis import settings

HERE = Path(__file__).resolve().parent
for folder in (HERE, HERE / "reference"):
    if str(folder) not in sys.path:
        sys.path.insert(0, str(folder))

# One definition of the browser for all folders: a second browser beside the first cannot start.
pytest_plugins = ("verification_record", "browser_fixtures")

# A shell that runs tests in the background lets them ignore Ctrl-C, and what they start with them:
# nothing could be stopped. On other systems, and where it is not ignored, this changes nothing.
if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)

# The same draws in every run, and no clock: how fast a machine is, is no property of the code.
settings.register_profile("boomsim", deadline=None, derandomize=True)
settings.load_profile("boomsim")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--seeds", type=int, default=100, help="problems drawn of each family (study: 2000)"
    )


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Keep a file's tests on one worker, and all browsers on one: two at once starve each other.

    What is long is slow too: `-m "not slow"` takes the place of `-m "not long"`.

    The site is built first: it takes minutes, and at the end one worker would wait for the other.
    """
    items.sort(key=lambda item: not item.nodeid.startswith("tests/test_docs.py"))
    for item in items:
        if item.get_closest_marker("long"):
            item.add_marker(pytest.mark.slow)
        group = "browser" if item.get_closest_marker("browser") else item.nodeid.split("::")[0]
        item.add_marker(pytest.mark.xdist_group(group))
