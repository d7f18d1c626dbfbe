"""A tackle as questions on reeving show it: winch, boom head, hook block, and the parts between."""

from boomsim.figures.colours_and_lines import LOAD
from boomsim.papers.sketches.sketch_svg import Sketch


def tackle(parts: int, *, weight: str = "W", pull: str = "F") -> str:
    """Draw a rope in so many parts of line.

    Parameters
    ----------
    parts : int
        [1]
    weight, pull : str
        Letters of the load and of the pull in the lead line

    Returns
    -------
    str
        SVG
    """
    gap = 11.0
    left, wide = 150.0, gap * (parts - 1)
    top, low = 112.0, 56.0
    sketch = Sketch(max(left + wide + 60, 260), height=138)
    sketch.shape([(left - 14, top), (left + wide + 10, top), (left + wide + 10, top + 14),
                  (left - 14, top + 14)])  # fmt: skip
    sketch.shape([(left - 8, low - 14), (left + wide + 8, low - 14), (left + wide + 8, low),
                  (left - 8, low)])  # fmt: skip
    for part in range(parts):
        sketch.line((left + gap * part, low), (left + gap * part, top), width=1.0)
    sketch.line((left - 10, top + 7), (46, 74), width=1.0).circle((left - 8, top + 7), radius=4)
    sketch.circle((40, 68), radius=9).arrow((104, 94.5), (78, 84.5))
    sketch.label((86, 98), letter=pull, anchor="end").label((40, 44), value="winch", size=8)
    middle = left + wide / 2
    sketch.arrow((middle, low - 14), (middle, 12), color=LOAD)
    sketch.label((middle + 7, 20), letter=weight, anchor="start")
    sketch.label((left + wide + 16, 80), value=f"{parts} parts", anchor="start", size=8)
    return sketch.svg()
