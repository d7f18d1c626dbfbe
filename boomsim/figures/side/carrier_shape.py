"""A crane without its boom, seen from its left side: our own plain shapes from a machine's data.

Only the pins, the supports, the masses' places and the ring are data; all else is drawn in
proportion to the height of the heel pin, so that a tabletop model looks as right as a crane.
The boom stands over the rear: carrier x and superstructure `out` both point to the right.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.footprint import axles, chassis_ends, half_width
from boomsim.machine.model import Machine, Support, TurningMass
from boomsim.mechanics.geometry import Array

DENSITY = 7850.0
"""Counterweights are drawn as steel as wide as the crane [kg/m3]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Piece:
    """One plain shape.

    Attributes
    ----------
    tone : str
        "body", "dark", "glass" or "wheel"
    corners : ndarray, shape (points, 2)
        (out, up), closed by the last side [m]
    """

    name: str
    tone: str
    corners: Array


def pieces(
    machine: Machine, *, counterweight: TurningMass | None = None, support: Support | None = None
) -> tuple[Piece, ...]:
    """Everything but the boom, the luffing cylinder and the load.

    Parameters
    ----------
    counterweight : TurningMass, optional
        Default: the usual one
    support : Support, optional
        Default: the usual one

    Returns
    -------
    tuple of Piece
        Back to front
    """
    return (
        *carrier_pieces(machine, support=support),
        *turning_pieces(machine, counterweight=counterweight),
    )


def turning_pieces(
    machine: Machine, *, counterweight: TurningMass | None = None
) -> tuple[Piece, ...]:
    """What turns with the boom.

    Parameters
    ----------
    counterweight : TurningMass, optional
        Default: the usual one

    Returns
    -------
    tuple of Piece
        Back to front
    """
    hung = counterweight or machine.counterweights[0]
    return (*_superstructure(machine, hung), *_counterweight(machine, hung))


def carrier_pieces(
    machine: Machine, *, support: Support | None = None, slew: float = 0.0
) -> tuple[Piece, ...]:
    """Chassis, wheels and jacks, looked at across the boom.

    Parameters
    ----------
    support : Support, optional
        Default: the usual one
    slew : float
        Where the boom points; 0 over the rear [rad]

    Returns
    -------
    tuple of Piece
        Back to front
    """
    stands_on = support or machine.supports[0]
    if abs(np.sin(slew)) < ASKEW:
        own = (
            *_chassis(machine),
            *_wheels(machine),
            *(_jacks(machine, stands_on) if stands_on.kind == "outriggers" else ()),
        )
        return own if np.cos(slew) > 0.0 else tuple(_mirrored(piece) for piece in own)
    return tuple(_askew(machine, stands_on, slew))


ASKEW = 0.1
"""A carrier that is turned by less than this is drawn from its side: sine of the angle [1]."""


def _mirrored(piece: Piece) -> Piece:
    return Piece(name=piece.name, tone=piece.tone, corners=piece.corners * (-1.0, 1.0))


def _askew(machine: Machine, support: Support, slew: float) -> list[Piece]:
    """A carrier that stands askew or end on: plain boxes as wide as they look from there."""
    along, across = np.cos(slew), np.sin(slew)

    def seen(x: float, y: float) -> float:
        return float(x * along + y * across)

    places, radius = axles(machine)
    half, (front, rear) = half_width(machine), chassis_ends(machine)
    low = 0.9 * radius if places else 0.3 * machine.ring.up
    ends = [seen(x, y) for x in (front, rear) for y in (-half, half)]
    found = []
    if places:
        cab = [seen(x, y) for x in (front, front + 2.2 * radius) for y in (-half, half)]
        body = _box(min(cab), 0.75 * radius, max(cab), 0.95 * machine.heel_up)
        found.append(Piece(name="driver's cab", tone="body", corners=body))
    frame = _box(min(ends), low, max(ends), 0.88 * machine.ring.up)
    found.append(Piece(name="chassis", tone="body", corners=frame))
    wide = radius * abs(along) + 0.3 * radius * abs(across)
    for x in places:
        for y in (-0.85 * half, 0.85 * half):
            tyre = _disc(0.0, radius, radius) * (wide / radius, 1.0) + (seen(x, y), 0.0)
            found.append(Piece(name="tyre", tone="wheel", corners=tyre))
    if support.kind == "outriggers":
        spots = sorted({round(seen(x, y), 3) for x, y in support.points})
        up = 0.7 * machine.ring.up
        beam = _box(spots[0], up, spots[-1], up + 0.08 * machine.heel_up)
        found.append(Piece(name="beam", tone="dark", corners=beam))
        found += _jacks_at(machine, spots)
    return found


def _jacks_at(machine: Machine, places: list[float]) -> list[Piece]:
    size, top = machine.heel_up, 0.8 * machine.ring.up
    found = []
    for x in places:
        leg = _box(x - 0.035 * size, 0.03 * size, x + 0.035 * size, top)
        plate = _box(x - 0.13 * size, 0.0, x + 0.13 * size, 0.04 * size)
        found.append(Piece(name="jack", tone="dark", corners=leg))
        found.append(Piece(name="float", tone="dark", corners=plate))
    return found


def _box(left: float, bottom: float, right: float, top: float) -> Array:
    return np.array([[left, bottom], [right, bottom], [right, top], [left, top]])


def _disc(out: float, up: float, radius: float) -> Array:
    turn = np.linspace(0.0, 2.0 * np.pi, 40, endpoint=False)
    return np.stack([out + radius * np.cos(turn), up + radius * np.sin(turn)], axis=1)


def _wheels(machine: Machine) -> list[Piece]:
    places, radius = axles(machine)
    found = []
    for x in places:
        found.append(Piece(name="tyre", tone="wheel", corners=_disc(x, radius, radius)))
        found.append(Piece(name="rim", tone="body", corners=_disc(x, radius, 0.5 * radius)))
    return found


def _chassis(machine: Machine) -> list[Piece]:
    places, radius = axles(machine)
    low = 0.9 * radius if places else 0.3 * machine.ring.up
    left, right = chassis_ends(machine)
    frame = Piece(
        name="chassis", tone="body", corners=_box(left, low, right, 0.88 * machine.ring.up)
    )
    return [*_cab(places[0], radius, machine), frame] if places else [frame]


def _cab(front_axle: float, radius: float, machine: Machine) -> list[Piece]:
    """Driver's cab over the front axle, with a slanting windscreen."""
    low, high = 0.75 * radius, 0.95 * machine.heel_up
    nose, back = front_axle - 1.9 * radius, front_axle + 1.15 * radius
    sill, slant = low + 0.45 * (high - low), 0.22 * radius
    body = [[nose, low], [back, low], [back, high], [nose + 2 * slant, high], [nose, sill]]
    inset = 0.2 * radius
    glass = [
        [nose + 1.4 * slant + inset / 3, sill + inset / 2],
        [back - 2 * inset, sill + inset / 2],
        [back - 2 * inset, high - inset],
        [nose + 2 * slant + inset, high - inset],
    ]
    return [
        Piece(name="driver's cab", tone="body", corners=np.array(body)),
        Piece(name="window", tone="glass", corners=np.array(glass)),
    ]


def _jacks(machine: Machine, support: Support) -> list[Piece]:
    return _jacks_at(machine, sorted({x for x, _ in support.points}))


def _superstructure(machine: Machine, counterweight: TurningMass) -> list[Piece]:
    size, ring = machine.heel_up, machine.ring.up
    floor, deck = 0.88 * ring, ring + 0.14 * size
    masses = [mass.out for mass in machine.superstructure]
    if counterweight.mass > 0.0:
        masses.append(counterweight.out)
    back = min([machine.hoist.winch_out, machine.heel_out, *masses]) - 0.06 * size
    front = max([machine.cylinder.base_out, *masses]) + 0.12 * size
    heel = machine.heel_out, machine.heel_up
    bracket = [
        [heel[0] - 0.28 * size, ring],
        [heel[0] - 0.09 * size, heel[1] + 0.06 * size],
        [heel[0] + 0.07 * size, heel[1] + 0.06 * size],
        [max(machine.cylinder.base_out, heel[0] + 0.3 * size), ring + 0.1 * size],
        [max(machine.cylinder.base_out, heel[0] + 0.3 * size), ring],
    ]
    found = [
        Piece(
            name="slewing ring",
            tone="dark",
            corners=_box(-0.28 * size, floor, 0.28 * size, ring + 0.02 * size),
        ),
        *_operators_cab(machine),
        Piece(name="platform", tone="body", corners=_box(back, ring, front, deck)),
        Piece(name="bracket", tone="body", corners=np.array(bracket)),
    ]
    out, up = machine.hoist.winch_out, machine.hoist.winch_up - 0.09 * size
    post = [[out - 0.1 * size, ring], [out + 0.1 * size, ring], [out + 0.04 * size, up]]
    return [
        *found,
        Piece(name="winch post", tone="body", corners=np.array([*post, [out - 0.04 * size, up]])),
        Piece(name="winch", tone="dark", corners=_disc(out, up, 0.09 * size)),
    ]


def _operators_cab(machine: Machine) -> list[Piece]:
    size = machine.heel_up
    found = []
    for mass in machine.superstructure:
        if "cab" in mass.name or "stand" in mass.name:
            low, high = machine.ring.up + 0.04 * size, mass.up + 0.2 * size
            left, right = mass.out - 0.2 * size, mass.out + 0.22 * size
            body = [[left, low], [right, low], [right - 0.05 * size, high], [left, high]]
            sill = low + 0.4 * (high - low)
            glass = _box(left + 0.07 * size, sill, right - 0.08 * size, high - 0.05 * size)
            found.append(Piece(name="operator's cab", tone="body", corners=np.array(body)))
            found.append(Piece(name="window", tone="glass", corners=glass))
    return found


def _counterweight(machine: Machine, counterweight: TurningMass) -> list[Piece]:
    if not counterweight.mass > 0.0:
        return []
    area = counterweight.mass / (DENSITY * 0.92 * machine.heel_up)
    high = min(1.15 * np.sqrt(area), 2.0 * (counterweight.up - machine.ring.up))
    high = max(high, 0.5 * np.sqrt(area))
    wide = area / high
    out, up = counterweight.out, counterweight.up
    corners = _box(out - wide / 2, up - high / 2, out + wide / 2, up + high / 2)
    foot = _box(out - wide / 5, machine.ring.up, out + wide / 5, up)
    return [
        Piece(name="hanger", tone="body", corners=foot),
        Piece(name="counterweight", tone="dark", corners=corners),
    ]


def extent(machine: Machine, *, counterweight: TurningMass | None = None) -> tuple[float, float]:
    """How far the crane without its boom reaches, for axis limits.

    Returns
    -------
    float, float
        Least and greatest `out` [m]
    """
    corners = np.concatenate([p.corners for p in pieces(machine, counterweight=counterweight)])
    return float(corners[:, 0].min()), float(corners[:, 0].max())
