"""Shared by all tests: where test helpers lie, and the record for the verification page."""

import gc
import signal
import sys
from collections import Counter
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


FIRST = ("tests/test_docs.py", "browser")
"""Groups of minutes: begun last, one worker would wait for the other at the end."""


def pytest_configure(config: pytest.Config) -> None:
    """Hand out groups in the order below; xdist would begin with those of the most tests."""
    if hasattr(config.option, "loadscopereorder"):
        config.option.loadscopereorder = False


def _group(item: pytest.Item) -> str:
    return "browser" if item.get_closest_marker("browser") else item.nodeid.split("::")[0]


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Keep a file's tests on one worker, and all browsers on one: two at once starve each other.

    What is long is slow too: `-m "not slow"` takes the place of `-m "not long"`.

    The groups that take minutes begin, then come those of slow tests, then those of the most tests.
    """
    slow: Counter[str] = Counter()
    size: Counter[str] = Counter()
    for item in items:
        size[_group(item)] += 1
        slow[_group(item)] += item.get_closest_marker("slow") is not None

    def rank(item: pytest.Item) -> tuple[int, int, int]:
        group = _group(item)
        first = FIRST.index(group) if group in FIRST else len(FIRST)
        return first, -slow[group], -size[group]

    items.sort(key=rank)
    for item in items:
        if item.get_closest_marker("long"):
            item.add_marker(pytest.mark.slow)
        item.add_marker(pytest.mark.xdist_group(_group(item)))


def pytest_collection_finish() -> None:
    """What collecting made stays to the end: the collector need not look through it again."""
    gc.collect()
    gc.freeze()
