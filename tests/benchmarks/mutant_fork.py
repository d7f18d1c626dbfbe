"""One mutant, tried in a fork: the changed module imported in place of the true one, tests run."""

import json
import os
import signal
import sys
import tempfile
import time
from collections.abc import Iterable
from dataclasses import dataclass
from importlib import import_module
from importlib.abc import MetaPathFinder
from importlib.machinery import SourceFileLoader
from importlib.util import spec_from_file_location
from pathlib import Path

import pytest
from hypothesis import Phase, settings
from mutations import Mutation, mutated

QUIET = ("-q", "-x", "--tb=no", "-p", "no:cacheprovider", "-m", "not browser")
FATES = {0: "survived", 1: "seen", 2: "seen at import", 5: "survived"}
"""What pytest's exit codes mean here."""


@dataclass(frozen=True, slots=True)
class Trial:
    """A mutation of a file, and the tests of each part that look for it."""

    path: str
    mutation: Mutation
    tests: tuple[tuple[str, ...], ...]


class Chosen:
    """Runs only the chosen tests, in their order, and keeps the name of the one that fails."""

    def __init__(self, tests: Iterable[str]) -> None:
        self.place, self.failed = {test: k for k, test in enumerate(tests)}, ""

    def pytest_sessionstart(self) -> None:
        # A failure need not be made small: that it fails is enough.
        phases = (Phase.explicit, Phase.generate)
        settings.register_profile("mutants", settings.default, phases=phases)
        settings.load_profile("mutants")

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items) -> None:
        items[:] = [item for item in items if item.nodeid in self.place]
        items.sort(key=lambda item: self.place[item.nodeid])

    def pytest_runtest_logreport(self, report) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid


class Changed(MetaPathFinder):
    """Imports one module with a mutation in it."""

    def __init__(self, path: str, number: int) -> None:
        self.name, self.file = path.removesuffix(".py").replace("/", "."), Path(path).resolve()
        source = self.file.read_text("utf-8")
        self.code = mutated(source, number=number, path=str(self.file))

    def find_spec(self, name, path=None, target=None):
        if name != self.name:
            return None
        loader = SourceFileLoader(name, str(self.file))
        loader.get_code = lambda _: self.code
        return spec_from_file_location(name, self.file, loader=loader)


SHARED = (
    "matplotlib.figure", "scipy.interpolate", "scipy.optimize", "sympy",
    "boomsim.machine.machine_files", "boomsim.units",
)  # fmt: skip
"""What every fork needs and no mutant changes: imported once."""


def attempt(trial: Trial, told: Path) -> None:
    """In a fork: run the tests on the mutant, write what became of it, and end."""
    os.setsid()
    with open(os.devnull, "w") as nowhere:
        os.dup2(nowhere.fileno(), 1)
        os.dup2(nowhere.fileno(), 2)
    sys.meta_path.insert(0, Changed(trial.path, trial.mutation.number))
    code, failed = 0, ""
    for part in trial.tests:
        chosen = Chosen(part)
        files = sorted({test.split("::")[0] for test in part})
        code, failed = int(pytest.main([*QUIET, *files], plugins=[chosen])), chosen.failed
        if code not in (0, 5):
            break
    told.write_text(json.dumps([FATES.get(code, f"pytest ended with {code}"), failed]))


def try_all(trials: list[Trial], *, jobs: int, limit: float) -> dict[Trial, tuple[str, str]]:
    """What became of each mutant, and the test that saw it; a fork has so many seconds."""
    for name in SHARED:
        import_module(name)
    queue, running, fates = list(reversed(trials)), {}, {}
    with tempfile.TemporaryDirectory() as folder:
        while queue or running:
            while queue and len(running) < jobs:
                trial = queue.pop()
                told = Path(folder) / str(len(queue))
                child = _forked(trial, told)
                running[child] = trial, told, time.monotonic() + limit
            trial, told, _ = running.pop(_ended(running))
            fate = json.loads(told.read_text()) if told.exists() else ["ran for too long", ""]
            fates[trial] = fate[0], fate[1]
            print(f"{len(fates)}/{len(trials)} {fate[0]}: {trial.path}:{trial.mutation.line}")
    return fates


def _forked(trial: Trial, told: Path) -> int:
    child = os.fork()
    if child:
        return child
    try:
        attempt(trial, told)
    finally:
        os._exit(0)


def _ended(running: dict[int, tuple[Trial, Path, float]]) -> int:
    """Wait for a fork to end, and end those that have run for too long."""
    while True:
        for child, (_, _, until) in running.items():
            if os.waitpid(child, os.WNOHANG)[0]:
                return child
            if time.monotonic() > until:
                os.killpg(child, signal.SIGKILL)
        time.sleep(0.02)
