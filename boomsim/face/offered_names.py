"""The names that ``import boomsim`` offers, and how a refusal names what was given."""

import re
from collections.abc import Callable
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
}
"""Where each name comes from."""

_OPTION = re.compile(r"(?<![\w-])--([a-z]+(?:-[a-z]+)*)")


def offered(name: str) -> Any:
    """Import one of the names offered.

    Parameters
    ----------
    name : str
        A key of `OFFERED`

    Returns
    -------
    callable
    """
    return in_python_words(getattr(import_module(OFFERED[name]), name))


def in_python_words(study: Callable[P, T]) -> Callable[P, T]:
    """Let a refusal say "side_pull" where the command says "--side-pull", and nothing else anew.

    Parameters
    ----------
    study : callable

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
            error.args = tuple(map(_arguments, error.args))
            raise

    return named


def _arguments(said: object) -> object:
    """Write options as arguments."""
    if not isinstance(said, str):
        return said
    return _OPTION.sub(lambda found: found[1].replace("-", "_"), said)
