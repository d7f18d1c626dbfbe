"""How well the tests watch `mechanics/` and `rating/`: mutants tried, and how many were seen.

    pip install coverage
    python tests/benchmarks/mutants.py [--sample 500] [--seed 6] [--jobs 2] [--out build/mutants]

First the tests run once under coverage, each as a context of its own (kept in the folder: delete
`lines` to count anew). Then each mutant of a seeded sample, drawn from every file in proportion to
what can be changed in it, is tried in a fork that imports the changed module in place of the true
one; nothing on the disk changes. Tests that run the changed lines come first, the quickest of them
before the others, then those in the same test files and those that touch the changed file, as far
as the seconds reach; the golden charts come last, since they are our own numbers. The first failure
ends it. What survives is tried once more with twelve times the seconds. Forks want a POSIX system.
"""

import argparse
import json
import os
import random
import signal
import sys
from collections import Counter
from functools import cache
from pathlib import Path

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"
HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(ROOT), str(HERE)]

import coverage  # noqa: E402
import pytest  # noqa: E402
from mutant_fork import QUIET, Trial, try_all  # noqa: E402
from mutations import Mutation, count, told  # noqa: E402
from scipy.stats import binomtest  # noqa: E402

ROOMS = ("boomsim/mechanics", "boomsim/rating")
PARTS = (
    ("tests/properties/", "tests/published/", "tests/rating/"),
    ("tests/cli/",),
    ("tests/reference/",),
    ("tests/golden/",),
)
"""Tests in the order in which they are tried, each part with the same seconds."""
AGAIN = 12


class Watch:
    """Tells coverage which test runs, and keeps how long each took."""

    def __init__(self, counting: coverage.Coverage) -> None:
        self.counting, self.seconds = counting, {}

    @pytest.hookimpl(hookwrapper=True, tryfirst=True)
    def pytest_runtest_protocol(self, item):
        self.counting.switch_context(item.nodeid)
        start = os.times().user
        yield
        self.seconds[item.nodeid] = os.times().user - start
        self.counting.switch_context("")


def count_lines(folder: Path) -> None:
    """Run the tests under coverage, in a fork, so that this process imports nothing of ours."""
    if (folder / "lines").exists():
        return
    child = os.fork()
    if child:
        if os.waitpid(child, 0)[1]:
            raise SystemExit("The tests fail without a mutant: mend them first.")
        return
    counting = coverage.Coverage(
        data_file=str(folder / "lines"), branch=True, source=list(ROOMS), config_file=False
    )
    watch = Watch(counting)
    counting.start()
    code = pytest.main([*QUIET, *(room for part in PARTS for room in part)], plugins=[watch])
    counting.stop()
    if code == 0:
        (folder / "seconds.json").write_text(json.dumps(watch.seconds))
        with (folder / "lines.txt").open("w") as table:
            counting.report(file=table, show_missing=True)
        counting.save()
    os._exit(int(code))


def sample(size: int, *, seed: int) -> list[tuple[str, Mutation]]:
    """Mutants from every file in proportion, at least four of each."""
    draw = random.Random(seed)
    paths = sorted(str(p.relative_to(ROOT)) for room in ROOMS for p in (ROOT / room).rglob("*.py"))
    text = {path: (ROOT / path).read_text("utf-8") for path in paths}
    sizes = {path: count(source) for path, source in text.items()}
    share = size / sum(sizes.values())
    taken = [
        (path, told(text[path], number))
        for path, every in sizes.items()
        for number in draw.sample(range(every), min(every, max(4, round(share * every))))
    ]
    draw.shuffle(taken)
    return taken


@cache
def took(folder: Path) -> dict[str, float]:
    """How long each test took [s]."""
    return json.loads((folder / "seconds.json").read_text())


@cache
def tests_by_line(folder: Path, path: str) -> dict[int, list[str]]:
    """Which tests run each line of a file."""
    data = coverage.CoverageData(str(folder / "lines"))
    data.read()
    return data.contexts_by_lineno(str(ROOT / path))


def suite(path: str, mutation: Mutation, *, folder: Path, budget: float) -> list[list[str]]:
    """Tests of each part: that run the changed lines, those beside them, any that use the file."""
    seconds, by_line = took(folder), tests_by_line(folder, path)
    span = range(mutation.line, mutation.last_line + 1)
    on_line = {test for line in span for test in by_line.get(line, [])} & set(seconds)
    in_file = {test for tests in by_line.values() for test in tests} & set(seconds)
    # What a fixture or a cache holds was computed in the first test that asked for it.
    files = {test.split("::")[0] for test in on_line}
    beside = {test for test in seconds if test.split("::")[0] in files} - on_line
    ordered = [
        test
        for tests in (on_line, beside, in_file - on_line - beside)
        for test in sorted(tests, key=seconds.__getitem__)
    ]
    parts = ([test for test in ordered if test.startswith(part)] for part in PARTS)
    return [chosen for part in parts if (chosen := _within(part, seconds, budget))]


def _within(ordered: list[str], seconds: dict[str, float], budget: float) -> list[str]:
    chosen, spent = [], 0.0
    for test in ordered:
        if spent + seconds[test] <= budget or not chosen:
            chosen.append(test)
            spent += seconds[test]
    return chosen


def attempts(taken: list[tuple[str, Mutation]], folder: Path, budget: float) -> list[Trial]:
    """Each mutant with the tests that look for it."""
    return [
        Trial(
            path, mutation, tuple(map(tuple, suite(path, mutation, folder=folder, budget=budget)))
        )
        for path, mutation in taken
    ]


def score(what: str, among: list[tuple[str, str]]) -> str:
    """How many were seen, with the exact binomial 95 % interval."""
    seen = sum(fate != "survived" for fate, _ in among)
    golden = sum(by.startswith(PARTS[-1]) for _, by in among)
    span = binomtest(seen, len(among)).proportion_ci(0.95)
    return (
        f"{what}: {seen} of {len(among)} seen, {seen / len(among):.1%} "
        f"({span.low:.1%} to {span.high:.1%}), {golden} of them by the golden charts alone; "
        f"{dict(Counter(fate for fate, _ in among))}"
    )


def tell(fates: dict[Trial, tuple[str, str]]) -> None:
    """Print the score of what is computed in each room, that of words, and the survivors."""
    for room in ("boomsim/", *ROOMS):
        own = {t: f for t, f in fates.items() if t.path.startswith(room)}
        for what, are_words in (("what is computed", False), ("words", True)):
            among = [f for t, f in own.items() if (t.mutation.kind == "words") is are_words]
            if among:
                print(score(f"{room}, {what}", among))
    left = (trial for trial, (fate, _) in fates.items() if fate == "survived")
    for trial in sorted(left, key=lambda trial: (trial.path, trial.mutation.line)):
        one = trial.mutation
        print(f"{trial.path}:{one.line} {one.kind}: {one.before}  =>  {one.after}")


def main() -> None:
    """Count, draw, try, try what survived once more, and tell."""
    parser = argparse.ArgumentParser(
        description="How well the tests watch: mutants, and how many were seen."
    )
    parser.add_argument("--sample", type=int, default=500, help="mutants to try")
    parser.add_argument("--seed", type=int, default=6)
    parser.add_argument("--jobs", type=int, default=2, help="forks at once")
    parser.add_argument("--seconds", type=float, default=2.5, help="of tests of each part")
    parser.add_argument("--out", type=Path, default=ROOT / "build" / "mutants")
    asked = parser.parse_args()
    os.chdir(ROOT)
    # Started in the background it would pass on that these are ignored, and tests send them.
    for request in (signal.SIGINT, signal.SIGHUP):
        signal.signal(request, signal.SIG_DFL)
    asked.out.mkdir(parents=True, exist_ok=True)
    count_lines(asked.out)
    taken, fates = sample(asked.sample, seed=asked.seed), {}
    for budget in (asked.seconds, AGAIN * asked.seconds):
        trials = attempts(taken, asked.out, budget)
        found = try_all(trials, jobs=asked.jobs, limit=20.0 * budget + 240.0)
        fates = {t: f for t, f in fates.items() if f[0] != "survived"} | found
        taken = [(t.path, t.mutation) for t, (fate, _) in found.items() if fate == "survived"]
    tell(fates)


if __name__ == "__main__":
    main()
