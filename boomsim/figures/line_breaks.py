"""Where to break a text into lines, whatever measures the type."""

from typing import Protocol


class Measure(Protocol):
    """Width of one line of type."""

    def __call__(self, text: str, /, *, size: float, bold: bool = False) -> float:
        """Measure, in a unit of its own."""
        ...


def lines_that_fit(
    text: str, *, width: float, size: float, measure: Measure, bold: bool = False
) -> list[str]:
    """Break a text into lines no wider than `width`, in the unit of `measure`.

    Parameters
    ----------
    width : float
        Of the room
    size : float
        [pt]
    measure : callable
        Width of a text

    Returns
    -------
    list of str
        A word wider than the line stands alone on one
    """
    space = measure("n n", size=size, bold=bold) - measure("nn", size=size, bold=bold)
    lines: list[str] = []
    used = 0.0
    for word in text.split():
        wide = measure(word, size=size, bold=bold)
        if lines and used + space + wide <= width:
            lines[-1] += f" {word}"
            used += space + wide
        else:
            lines.append(word)
            used = wide
    return lines
