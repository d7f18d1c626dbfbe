"""The names that ``import boomsim`` offers, and how a refusal names what was given."""

import os
import re
from collections.abc import Callable, Sequence
from functools import wraps
from importlib import import_module
from typing import Any, ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")

OFFERED = {
    "load_machine": "boomsim.machine.machine_files",
    "set_up": "boomsim.face.crane",
    "rate": "boomsim.face.rate_result",
    "chart": "boomsim.face.chart_result",
    "compare": "boomsim.face.compare_result",
    "lift": "boomsim.face.lift_result",
    "pick": "boomsim.face.pick_result",
    "slabs": "boomsim.face.slabs_result",
    "dynamics": "boomsim.face.dynamics_result",
    "indicator": "boomsim.face.indicator_result",
    "around": "boomsim.face.around_result",
    "overload": "boomsim.face.overload_result",
    "losses": "boomsim.face.losses_result",
    "range": "boomsim.face.range_result",
    "reeving": "boomsim.face.reeving_result",
}
"""Where each name comes from."""

MOST_ECHOED = 80
"""So many characters of what was given does a refusal repeat, as far as the face can tell."""

_OPTION = re.compile(r"(?<![\w-])--([a-z]+(?:-[a-z]+)*)")


def offered(name: str) -> Any:
    """Import one of the names offered.

    Parameters
    ----------
    name : str
        A key of `OFFERED`
    """
    return in_python_words(getattr(import_module(OFFERED[name]), name))


def in_python_words(study: Callable[P, T]) -> Callable[P, T]:
    """Let a refusal say "side_pull" where the command says "--side-pull", and nothing else anew.

    Returns
    -------
    callable
        The same, with the sentence of a refusal in the names of arguments
    """

    @wraps(study)
    def named(*args: P.args, **keywords: P.kwargs) -> T:
        try:
            return study(*args, **keywords)
        except ValueError as error:
            given = [value for value in (*args, *keywords.values()) if isinstance(value, str)]
            error.args = tuple(map(_arguments, error.args))
            error.args = tuple(brief(said, given) for said in error.args)
            raise

    return named


def brief(said: Any, given: Sequence[str]) -> Any:
    """Cut what a refusal repeats of long things that were given; a path that leads somewhere stays.

    Parameters
    ----------
    said : str
        The refusal; what is no text stays as it is
    given : sequence of str
        What somebody wrote, whole

    Returns
    -------
    str
        With at most `MOST_ECHOED` characters of each
    """
    if not isinstance(said, str):
        return said
    half = (MOST_ECHOED - 1) // 2
    for text in sorted({*given, *(word.partition("=")[2] for word in given)}, key=len)[::-1]:
        for written in (text, repr(text)[1:-1]):
            if len(written) > MOST_ECHOED and not os.path.isdir(os.path.dirname(text) or " "):
                said = said.replace(written, f"{written[:half]}…{written[-half:]}")
    return said


def _arguments(said: object) -> object:
    """Write options as arguments."""
    if not isinstance(said, str):
        return said
    return _OPTION.sub(lambda found: found[1].replace("-", "_"), said)
