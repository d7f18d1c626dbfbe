"""What really gives way at a multiple of a maker's permissible value: ring, cylinder and rope.

A maker permits less than what a part bears. How much less is seldom published: the multiples are
assumed, and used only where a load is raised past its rating.
"""

from dataclasses import replace
from functools import lru_cache

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import GIVES_WAY, STRENGTH, Case, Kind


def with_ultimates(kinds: tuple[Kind, ...]) -> tuple[Kind, ...]:
    """Let each kind that has an ultimate value be followed, at the end, by what then gives way.

    Returns
    -------
    tuple of Kind
        The same kinds at the same places, and more
    """
    return (*kinds, *(ultimate_of(kind) for kind in kinds if kind.ultimate is not None))


@lru_cache
def ultimate_of(kind: Kind) -> Kind:
    """Make the limit at which a part with a permissible value gives way.

    Parameters
    ----------
    kind : Kind
        With an ultimate value

    Returns
    -------
    Kind
        One and the same for the same kind
    """
    end = kind.ultimate
    if end is None:
        raise ValueError(f"{kind.words} has no ultimate value. Give its Kind one.")
    times = end.times

    def utilisation(case: Case) -> Array:
        return kind.utilisation(case) / times

    return replace(
        kind,
        name=f"{kind.name} ultimate",
        words=end.words,
        short=end.words,
        code="",
        utilisation=utilisation,
        set_by=STRENGTH,
        passed=GIVES_WAY,
        ultimate=None,
    )
