"""SVG as text: how an element and its attributes are written, once for every drawing made so."""

import re
from collections.abc import Iterable
from functools import cache
from html import escape


def element(tag: str, *inside: str, **attributes: object) -> str:
    """Write an element.

    Parameters
    ----------
    inside : str
        SVG, or words that :func:`html.escape` went over
    attributes : str or number, or None to leave one out
        In their order; ``font_size`` is written font-size, and ``class_`` class

    Examples
    --------
    >>> element("circle", class_="pin", r=4, stroke_width=0.8, fill=None)
    '<circle class="pin" r="4" stroke-width="0.8"/>'
    >>> element("text", escape("A < B"), x="1.0", aria_label='"A"')
    '<text x="1.0" aria-label="&quot;A&quot;">A &lt; B</text>'
    """
    written = [
        f'{_spelled(name)}="{value if _is_plain(value) else _escaped(value)}"'
        for name, value in attributes.items()
        if value is not None
    ]
    start = " ".join([tag, *written])
    return f"<{start}>{''.join(inside)}</{tag}>" if inside else f"<{start}/>"


def document(*inside: str, **attributes: object) -> str:
    """Write the element that holds a whole drawing."""
    return element("svg", *inside, xmlns="http://www.w3.org/2000/svg", **attributes)


def point_list(points: Iterable[tuple[float, float]], form: str) -> str:
    """Write points for a polygon or a line, each number in a form such as ``.1f``."""
    return " ".join([f"{x:{form}},{y:{form}}" for x, y in points])


_ENDS = re.compile('[&<>"]').search
"""What an attribute between double quotes may not hold as it is."""


@cache
def _spelled(name: str) -> str:
    return name.rstrip("_").replace("_", "-")


def _is_plain(value: object) -> bool:
    return not isinstance(value, str) or not _ENDS(value)


def _escaped(value: object) -> str:
    return escape(str(value), quote=False).replace('"', "&quot;")
