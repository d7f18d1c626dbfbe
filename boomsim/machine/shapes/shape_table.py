"""The table of shapes: a row for each; a polygon can stand for any of them."""

from typing import Any

from boomsim.machine.model import Profile
from boomsim.machine.shapes.box import BOX
from boomsim.machine.shapes.folded import FOLDED
from boomsim.machine.shapes.polygon import polygon_shape
from boomsim.machine.shapes.tube import TUBE

_BY_SIZES = (BOX, FOLDED, TUBE)
POLYGON = polygon_shape([shape.name for shape in _BY_SIZES])

SHAPES = {shape.name: shape for shape in (*_BY_SIZES, POLYGON)}
"""By the key in a machine file."""


def as_given(profile: Profile) -> dict[str, Any]:
    """Give a profile the way it was given; corner by corner if no sizes make it exactly.

    Returns
    -------
    dict
        A section's key and its sizes [m]
    """
    shape = SHAPES[profile.kind]
    sizes = shape.sizes(profile)
    return {shape.name: sizes} if sizes else {POLYGON.name: POLYGON.sizes(profile)}
