"""Units that a platform may read besides the printed one, with the numbers they stand for."""

from collections.abc import Iterator

from boomsim.papers.numbers.printed_units import FACTORS, Unit, unit

_UP = {"^2": "²", "^3": "³", "^4": "⁴"}


def units_of(base: Unit) -> tuple[tuple[str, float], ...]:
    """List the ways to write a unit and others of its quantity.

    Parameters
    ----------
    base : Unit
        In which the answer is asked

    Returns
    -------
    tuple of (str, float)
        Spelling, and how many of it are one of the base; the base first. None for a plain number

    Examples
    --------
    >>> units_of(unit("kN"))[:3]
    (('kN', 1.0), ('N', 1000.0), ('MN', 0.001))
    """
    if not base.name:
        return ()
    others = [name for name in FACTORS[base.si] if name and name != base.name]
    found: dict[str, float] = {}
    for name in (base.name, *others):
        times = float(base.factor / unit(name).factor)
        found |= {spelling: times for spelling in _spellings(name) if spelling not in found}
    return tuple(found.items())


def _spellings(name: str) -> Iterator[str]:
    """Ways to write one unit: as printed first, and as a keyboard allows it."""
    if name == "deg":
        yield from ("°", "deg")
        return
    printed = name
    for plain, small in _UP.items():
        printed = printed.replace(plain, small)
    for gap in (" ", "", "*", "·"):
        yield from (one.replace("*", gap) for one in (printed, name, name.replace("^", "")))
