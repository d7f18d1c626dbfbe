"""What every run of a command must keep, whatever it was given.

A result, or a refusal by the project's own error with exit code 2 and a message on standard error;
never a traceback, a warning, a number that is none, or a file that is half written.
"""

import contextlib
import io
import os
import pkgutil
import random
import re
import sys
import tempfile
import traceback
import warnings
from collections.abc import Callable, Iterator, Sequence
from importlib import import_module
from pathlib import Path
from typing import Any

AS_SCRIPT = Path(sys.argv[0]).resolve().parent == Path(__file__).resolve().parent
"""Whether a fuzzer runs, which wants to see everything being imported, and not a test."""


def _import_everything() -> None:
    """The commands import late; the fuzzer watches only what it has seen being imported."""
    import atheris

    with atheris.instrument_imports(include=["boomsim", "tomllib"]):
        import boomsim

        for module in pkgutil.walk_packages(boomsim.__path__, "boomsim."):
            if not module.name.endswith("__main__"):
                import_module(module.name)


if AS_SCRIPT:
    _import_everything()

from boomsim import cli  # noqa: E402 after the fuzzer has seen it

PACKAGE = str(Path(cli.__file__).parents[1])
GO_ON = "BOOMSIM_FUZZ_GO_ON"
"""Set this variable to print findings, each kind once, instead of stopping at the first."""

_NO_NUMBER = re.compile(r"(?<![\w'\"-])[-+]?(?:nan|NaN|NAN|inf|Infinity)(?![\w'\"-])")
_told: set[str] = set()


class Broken(AssertionError):
    """The contract is broken."""


def run(words: Sequence[str], *, where: Path, given: str = "") -> tuple[int, str, str]:
    """Run a command in a folder of its own and hold it to the contract.

    What was given in a file may be shown again, be it "nan".
    """
    out, err = io.StringIO(), io.StringIO()
    before = _files(where)
    with _noted() as refusals, contextlib.chdir(where), warnings.catch_warnings():
        warnings.simplefilter("error")
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            try:
                code = cli.main(list(words))
            except SystemExit as stop:  # from the parser of arguments
                code = stop.code if isinstance(stop.code, int) else 2
    _check(code, out.getvalue(), err.getvalue(), refusals)
    _check_numbers(out.getvalue(), given)
    _check_files(code, _files(where) - before)
    return code, out.getvalue(), err.getvalue()


def _check(code: int, out: str, err: str, refusals: list[BaseException]) -> None:
    if code not in (0, 2):
        raise Broken(f"exit code {code}")
    if (code == 2) is not bool(err.strip()):
        raise Broken(f"exit code {code} and on standard error: {err[:300]!r}")
    if code == 2 and out:
        raise Broken(f"refused after an answer: {out[:200]!r} {err[:200]!r}")
    for error in refusals:
        _check_refusal(error)


def _check_numbers(out: str, given: str) -> None:
    found = _NO_NUMBER.search(out)
    if found and not _NO_NUMBER.search(given):
        start, end = max(0, found.start() - 200), found.end() + 50
        raise Broken(f"no number: …{out[start:end]}…")


def _check_refusal(error: BaseException) -> None:
    """An error of a library that only looks like a refusal is a finding."""
    last = traceback.extract_tb(error.__traceback__)[-1]
    if not last.filename.startswith(PACKAGE) or not (last.line or "").startswith("raise"):
        raise Broken(f"refused by {last.filename}:{last.lineno}: {error!r}"[:600]) from error


def _check_files(code: int, made: set[Path]) -> None:
    if code and made:
        raise Broken(f"refused, and left {sorted(made)[:5]}")
    for path in made:
        if path.name.startswith(".") or path.suffix in (".part", ".tmp"):
            raise Broken(f"left {path}")


def _files(where: Path) -> set[Path]:
    return {path for path in where.rglob("*") if path.is_file()}


@contextlib.contextmanager
def _noted() -> Iterator[list[BaseException]]:
    """Note what the commands raise, before `main` makes a sentence of it."""
    noted: list[BaseException] = []
    modules = [import_module(f"boomsim.cli.{name}_command") for name in cli.COMMANDS]
    usual = [module.run for module in modules]

    def noting(run: Callable[..., object]) -> Callable[..., object]:
        def noted_run(chosen: object) -> object:
            try:
                return run(chosen)
            except (ValueError, OSError) as error:
                noted.append(error)
                raise

        return noted_run

    for module, own in zip(modules, usual, strict=True):
        module.run = noting(own)  # type: ignore[attr-defined]
    try:
        yield noted
    finally:
        for module, own in zip(modules, usual, strict=True):
            module.run = own  # type: ignore[attr-defined]


@contextlib.contextmanager
def folder() -> Iterator[Path]:
    """Give a folder that is there for one run."""
    with tempfile.TemporaryDirectory(prefix="boomsim-fuzz-") as name:
        yield Path(name)


@contextlib.contextmanager
def no_server() -> Iterator[None]:
    """Let `boomsim lab` and `boomsim class` do everything but serve, and a game get no answers."""
    from boomsim.classroom.votes import class_server
    from boomsim.lab import notebook_server as serve

    usual, voting, typed = serve.serve, class_server.run, sys.stdin
    serve.serve = lambda command, folder, **_: 0
    class_server.run = lambda given_class, questions, **_: None
    sys.stdin = io.StringIO("")
    try:
        yield
    finally:
        serve.serve, class_server.run, sys.stdin = usual, voting, typed


def guarded(trial: Callable[[Any], object]) -> Callable[[bytes], None]:
    """Stop at the first finding; or, if asked to go on, tell each kind once."""
    import atheris

    def one(data: bytes) -> None:
        try:
            trial(atheris.FuzzedDataProvider(data))
        except Exception as error:
            if not os.environ.get(GO_ON):
                raise
            _tell(error, data)

    return one


def _tell(error: Exception, data: bytes) -> None:
    own = [f for f in traceback.extract_tb(error.__traceback__) if f.filename.startswith(PACKAGE)]
    words = re.sub(r"[\d.e+-]+", "#", str(error))[:90]
    kind = f"{type(error).__name__} {own[-1].filename if own else ''} {words}"
    if kind in _told:
        return
    _told.add(kind)
    print(f"FINDING {len(_told)}: {data!r}"[:3000], file=sys.__stderr__)
    traceback.print_exception(error, limit=-6, file=sys.__stderr__)


def fuzz(trial: Callable[[Any], object], *, seeds: Sequence[bytes] = ()) -> None:
    """Hand a trial to the fuzzer, with seeds and random draws in a folder of their own."""
    import atheris

    chance = random.Random(1)
    with folder() as corpus:
        for number, seed in enumerate([*seeds, *(chance.randbytes(120) for _ in range(200))]):
            (corpus / f"seed-{number}").write_bytes(seed)
        usual = ["-timeout=120", "-rss_limit_mb=3000", "-max_len=20000", "-len_control=0"]
        usual.append("-reduce_inputs=0")  # a short input draws the first of every choice
        atheris.Setup([sys.argv[0], *usual, *sys.argv[1:], str(corpus)], guarded(trial))
        atheris.Fuzz()
