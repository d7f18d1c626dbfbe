"""A limit in a sentence."""

from boomsim.rating.limits.kind import STABILITY, Limit


def what_gives_way(limit: Limit) -> str:
    """Whether the crane tips or something breaks, in words.

    Parameters
    ----------
    limit : Limit

    Returns
    -------
    str
    """
    return "tips" if limit.family == STABILITY else f"breaks: {limit.words}"
