"""Colours, line styles and hatches of every figure, in one place.

Nothing is told by colour alone. The family of a limit is told by the line itself (broken: strength
governs, the boom would break; whole: stability governs, the crane would tip). Which configuration
a line belongs to is told by its marker and its label; the colours differ in lightness too, so that
they part in grey scale and for colour-blind eyes.
"""

from dataclasses import dataclass
from typing import Any, Literal

INK = "#1b1b1f"
QUIET = "#5d636c"
FAINT = "#c3c8d0"
STEEL = "#dde1e7"
PAPER = "#ffffff"
LOAD = "#a3241b"
"""Ink for what matters, three greys for what does not, paper, and the colour of the load."""

MIDDLE, PALE, WASH = "#9aa1ab", "#b3bac5", "#f3e9e2"
"""Areas: two greys between ink and steel, and a warm one under what is worth a look."""

DARK, GLASS, WHEEL = "#8f96a1", "#f4f6f9", "#4a4f57"
"""Of a crane's body: what lies behind, a window, a tyre."""

BLUE, RUST, PLUM, GREEN = "#12355b", "#c4531d", "#8d4a86", "#2f7d5b"
"""Four that differ in lightness too."""

SKY, AMBER, JADE, SAND = "#5b87b5", "#d08a3c", "#5cb8a5", "#b8912b"
"""Lighter ones: a gain and a cost, and further configurations."""

STEPS = {"calm": "#d9dfe6", "busy": "#f1dba6", "full": "#de9448", "over": "#74182c"}
"""Grounds of how much of a limit is used."""

BEND = "#7a3f86"
"""Ink of the exaggerated deflection."""

VERDICTS = {"right": "#1b6b3a", "wrong": "#8a3b12", "error": "#b00020"}
"""Ink of what is said to an answer."""

FONT = "DejaVu Sans"
"""Comes with matplotlib, so that a figure is the same everywhere."""

TITLE, BODY, SMALL, TINY = 10.0, 7.5, 6.5, 5.5
"""Sizes of type [pt]."""

LineStyle = Literal["solid", "dashed", "dotted", "none"] | tuple[float, tuple[float, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyStyle:
    """How the limits of one family look.

    Attributes
    ----------
    line : LineStyle
        Line style
    width : float
        [pt]
    hatch : str
        For areas and bars
    words : str
        How the key reads
    """

    line: LineStyle
    width: float
    hatch: str
    words: str


FAMILIES = {
    "structural": FamilyStyle(
        line=(0.0, (3.0, 1.3)),
        width=1.3,
        hatch="/////",
        words="broken line: strength or maker's value",
    ),
    "stability": FamilyStyle(
        line="solid", width=2.3, hatch="", words="whole, heavy line: stability sets it"
    ),
}
"""Styles of the two families of :mod:`boomsim.rating.limits`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Identity:
    """What tells one configuration from the next: colour and marker."""

    colour: str
    marker: str


IDENTITIES = (
    Identity(colour=BLUE, marker="o"),
    Identity(colour=RUST, marker="s"),
    Identity(colour=JADE, marker="^"),
    Identity(colour=PLUM, marker="D"),
    Identity(colour=SAND, marker="v"),
    Identity(colour=SKY, marker="P"),
)
"""In the order of use; they repeat after the last."""


def identity(number: int) -> Identity:
    """Style of the configuration with this number.

    Parameters
    ----------
    number : int
        Place among the configurations, from 0 [1]
    """
    return IDENTITIES[number % len(IDENTITIES)]


def ink_on(colour: str) -> str:
    """Colour of type that can be read on a ground of this colour.

    Parameters
    ----------
    colour : str
        "#rrggbb"

    Returns
    -------
    str
        Ink on light grounds, paper on dark ones
    """
    red, green, blue = (int(colour[k : k + 2], 16) / 255.0 for k in (1, 3, 5))
    return INK if 0.299 * red + 0.587 * green + 0.114 * blue > 0.55 else PAPER


def type_of(size: float = BODY, *, colour: str = INK, bold: bool = False) -> dict[str, Any]:
    """Keywords for a text: names may hold a dollar sign, so no text is read as mathematics.

    Parameters
    ----------
    size : float
        [pt]
    """
    return {
        "fontsize": size,
        "color": colour,
        "fontweight": "bold" if bold else "normal",
        "fontfamily": FONT,
        "parse_math": False,
    }
