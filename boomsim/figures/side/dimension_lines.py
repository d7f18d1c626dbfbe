"""Dimensions on a side view: radius, boom angle, head height, deflection, what is out."""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.text import Annotation, Text

from boomsim.figures.colours_and_lines import INK, PAPER, QUIET, SMALL, LineStyle, type_of
from boomsim.figures.side.boom_shape import BoomShape, outline
from boomsim.figures.side.side_artists import load_side
from boomsim.mechanics.geometry import Array
from boomsim.units import show


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Dimensions:
    """Artists of the dimensions.

    Attributes
    ----------
    axis, arc, angle_arm : Line2D
        Axis of rotation, boom angle and the horizontal it starts from
    radius, height : Annotation
        Arrows
    load_text : Annotation
        Beside the hook line
    sections : list of Annotation
        One beside each section
    """

    ax: Axes
    units: str
    axis: Line2D
    arc: Line2D
    angle_arm: Line2D
    radius: Annotation
    height: Annotation
    radius_text: Text
    height_text: Text
    angle_text: Text
    load_text: Annotation
    bend_text: Text
    sections: list[Annotation]


def draw_dimensions(
    ax: Axes, shape: BoomShape, *, radius: float, angle: float, bend: float, units: str = "metric"
) -> Dimensions:
    """Write the dimensions of a lift on its side view.

    Parameters
    ----------
    ax : Axes
        Of the side view
    radius, angle, bend : float
        Loaded radius [m], boom angle [rad], tip deflection [m]
    """

    def thin(style: LineStyle) -> Line2D:
        made = Line2D([], [], color=QUIET, linewidth=0.6, linestyle=style, zorder=1.5)
        ax.add_line(made)
        return made

    def words(**place: str) -> Text:
        made = ax.text(0.0, 0.0, "", **place, **type_of(SMALL), zorder=7.0)  # type: ignore[arg-type]
        made.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 1.0})
        return made

    def arrow() -> Annotation:
        look = {"arrowstyle": "<|-|>", "color": INK, "linewidth": 0.6, "shrinkA": 0, "shrinkB": 0}
        return ax.annotate(
            "", (0, 0), (0, 0), arrowprops={**look, "mutation_scale": 6}, annotation_clip=False
        )

    artists = Dimensions(
        ax=ax,
        units=units,
        axis=thin((0.0, (8.0, 2.0, 1.5, 2.0))),
        arc=thin("solid"),
        angle_arm=thin("solid"),
        radius=arrow(),
        height=arrow(),
        radius_text=words(ha="center", va="center"),
        height_text=words(ha="center", va="center", rotation="vertical"),
        angle_text=words(ha="left", va="center"),
        load_text=ax.annotate(
            "",
            (0.0, 0.0),
            (-4.0, 0.0),
            textcoords="offset points",
            ha="right",
            va="center",
            zorder=7.0,
            **type_of(SMALL),
        ),
        bend_text=words(ha="right", va="bottom"),
        sections=[
            ax.annotate(
                "",
                (0.0, 0.0),
                (0.0, 0.0),
                textcoords="offset points",
                ha="center",
                va="center",
                rotation_mode="anchor",
                zorder=7.0,
                **type_of(SMALL, colour=QUIET),
            )
            for _ in shape.axis
        ],
    )
    update_dimensions(artists, shape, radius=radius, angle=angle, bend=bend)
    return artists


def update_dimensions(
    artists: Dimensions, shape: BoomShape, *, radius: float, angle: float, bend: float
) -> None:
    """Show another lift; see :func:`draw_dimensions`.

    Parameters
    ----------
    radius, angle, bend : float
        [m], [rad], [m]
    """
    size, units = shape.machine.heel_up, artists.units
    out, up = (float(x) for x in shape.sheave)
    level = -0.035 * max(out, 3.0 * size)
    artists.axis.set_data([0.0, 0.0], [1.6 * level, 1.9 * size])
    _stretch(artists.radius, (0.0, level), (out, level))
    _put(artists.radius_text, out / 2, level, f"radius {show(radius, 'length', units)}")
    side = out + 0.2 * size + load_side(shape) / 2 + 0.03 * max(out, up)
    _stretch(artists.height, (side, 0.0), (side, up))
    _put(artists.height_text, side, up / 2, f"head height {show(up, 'length', units)}")
    _place_angle(artists, shape, angle)
    loaded = shape.load > 0.0
    artists.load_text.xy = (out, 0.35 * up)
    hung = f"gross load {show(shape.load, 'mass', units)}" if loaded else ""
    artists.load_text.set_text(hung)
    quantity = "length" if abs(bend) >= 0.1 else "small_length"
    bent = f"tip deflection {show(bend, quantity, units)}"
    if shape.exaggeration != 1.0:
        bent += f", drawn x {shape.exaggeration:g}"
    above = max(up, float(shape.rope[1])) - level / 2
    _put(artists.bend_text, side, above, bent if loaded else "")
    _name_sections(artists, shape, angle)


def _put(text: Text, x: float, y: float, words: str) -> None:
    text.set_position((x, y))
    text.set_text(words)


def _stretch(arrow: Annotation, start: tuple[float, float], end: tuple[float, float]) -> None:
    arrow.set_position(start)
    arrow.xy = end


def _place_angle(artists: Dimensions, shape: BoomShape, angle: float) -> None:
    reach = 0.42 * shape.machine.cylinder.attach_along + 1.2 * shape.machine.heel_up
    turn = np.linspace(0.0, angle, 40)
    out, up = shape.heel
    artists.arc.set_data(out + reach * np.cos(turn), up + reach * np.sin(turn))
    artists.angle_arm.set_data([out, out + 1.15 * reach], [up, up])
    middle = angle / 2
    x, y = out + 1.04 * reach * np.cos(middle), up + 1.04 * reach * np.sin(middle)
    _put(artists.angle_text, x, y, f"boom angle {show(angle, 'angle', artists.units)}")


def _name_sections(artists: Dimensions, shape: BoomShape, angle: float) -> None:
    """Beside the part that shows, on the boom's upper side, along the boom."""
    strokes = [s.stroke for s in shape.machine.boom.sections]
    noses = [s.nose for s in shape.machine.boom.sections]
    for i, text in enumerate(artists.sections):
        length = float(shape.along[i][-1])
        shown = length - shape.inside[i] - noses[i]
        words = f"section {i}: {100 * shown / strokes[i]:.3g} % out" if i else "base section"
        if i and shown < 0.02 * length:
            words = ""
        middle = (length + shape.inside[i]) / 2
        normal = np.array([-np.sin(angle), np.cos(angle)])
        edge = outline(shape, i, start=middle, end=middle + 1e-3)[0]
        text.xy = tuple(_above(shape, edge, normal))
        text.set_position(tuple(8.0 * normal))
        text.set_text(words)
        text.set_rotation(float(np.degrees(angle)))


def _above(shape: BoomShape, edge: Array, normal: Array) -> Array:
    """Outermost, square to the boom, of its upper edge, the lead line and the unbent axis."""
    hoist = shape.machine.hoist
    winch = np.array([hoist.winch_out, hoist.winch_up])
    lift = 0.0
    for start, end in ((winch, shape.rope), (shape.straight[0], shape.straight[1])):
        # edge + lift * normal = start + share * (end - start)
        both = np.stack([normal, start - end], axis=1)
        if abs(np.linalg.det(both)) > 1e-9:
            found, share = np.linalg.solve(both, start - edge)
            lift = max(lift, float(found)) if -0.05 <= share <= 1.05 else lift
    return edge + lift * normal
