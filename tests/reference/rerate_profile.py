"""A section's cross-section once more: faces, clear plates, and what plate buckling leaves.

EN 1993-1-5, 4.4 with Table 4.1, for internal plates: flanges from the gross section's stresses,
webs from those of effective flanges and gross webs, as 4.4(3) says.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import hypot, sqrt

import numpy as np

from boomsim.machine.model import Profile


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Wall:
    """One plate: ends of its clear width on the midline from the centroid [m], thickness [m]."""

    ends: np.ndarray
    thick: float

    @property
    def clear(self) -> float:
        return float(np.hypot(*(self.ends[1] - self.ends[0])))

    @property
    def way(self) -> np.ndarray:
        return (self.ends[1] - self.ends[0]) / self.clear


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outline:
    """Of the solid wall: area [m2], second moments about the centroid [m4], extent [m]."""

    area: float
    luffing: float
    sideways: float
    top: float
    bottom: float
    side: float
    outer: np.ndarray
    walls: tuple[Wall, ...]
    enclosed: float
    upright: float
    across: float

    @property
    def height(self) -> float:
        return self.top + self.bottom

    @property
    def width(self) -> float:
        return float(np.ptp(self.outer[:, 0]))


@lru_cache
def outline_of(profile: Profile) -> Outline:
    """Area and second moments of what lies between outer and inner face."""
    corners = np.array(profile.corners)
    thick = np.array(profile.thickness)
    if _area(corners) < 0.0:
        corners, thick = corners[::-1], np.roll(thick[::-1], -1)
    outer, inner = (_face(corners, sign * thick / 2) for sign in (1.0, -1.0))
    whole, hole = _integrals(outer), _integrals(inner)
    area, z, y, zz, yy = (a - b for a, b in zip(whole, hole, strict=True))
    centre = np.array([z / area, y / area])
    walls = tuple(
        Wall(ends=_clear(corners, outer, inner, k) - centre, thick=float(thick[k]))
        for k in range(len(corners))
    )
    lengths = np.hypot(*(np.roll(corners, -1, axis=0) - corners).T)
    ways = np.array([wall.way for wall in walls])
    outer = outer - centre
    return Outline(
        area=area,
        luffing=yy - area * centre[1] ** 2,
        sideways=zz - area * centre[0] ** 2,
        top=float(outer[:, 1].max()),
        bottom=float(-outer[:, 1].min()),
        side=float(np.abs(outer[:, 0]).max()),
        outer=outer,
        walls=walls,
        enclosed=abs(_area(corners)),
        upright=float(np.sum(thick * lengths * ways[:, 1] ** 2)),
        across=float(np.sum(thick * lengths * ways[:, 0] ** 2)),
    )


def _area(points: np.ndarray) -> float:
    (z, y), (w, v) = points.T, np.roll(points, -1, axis=0).T
    return float(np.sum(z * v - w * y)) / 2


def _face(corners: np.ndarray, out: np.ndarray) -> np.ndarray:
    """Corners of a face: where the plates' own faces meet."""
    ways = np.roll(corners, -1, axis=0) - corners
    ways /= np.hypot(*ways.T)[:, None]
    normals = np.stack([ways[:, 1], -ways[:, 0]], axis=1)
    met = []
    for k in range(len(corners)):
        both = np.array([normals[k - 1], normals[k]])
        met.append(corners[k] + np.linalg.solve(both, [out[k - 1], out[k]]))
    return np.array(met)


def _clear(corners: np.ndarray, outer: np.ndarray, inner: np.ndarray, k: int) -> np.ndarray:
    """Ends of a plate's clear width: what both of its faces leave between its neighbours."""
    following = (k + 1) % len(corners)
    start, way = corners[k], corners[following] - corners[k]
    length = hypot(*way)
    way = way / length
    first = max(0.0, *(float((face[k] - start) @ way) for face in (outer, inner)))
    last = min(length, *(float((face[following] - start) @ way) for face in (outer, inner)))
    return np.array([start + first * way, start + last * way])


def _integrals(points: np.ndarray) -> tuple[float, ...]:
    """Of 1, z, y, z2 and y2 over a polygon, triangle by triangle from the origin."""
    (a, b), (c, d) = points.T, np.roll(points, -1, axis=0).T
    twice = a * d - c * b
    return tuple(
        float(np.sum(twice * what))
        for what in (
            np.full_like(a, 0.5),
            (a + c) / 6,
            (b + d) / 6,
            (a * a + a * c + c * c) / 12,
            (b * b + b * d + d * d) / 12,
        )
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What buckling leaves for an action: area [m2], centroid [m], least modulus [m3]."""

    area: float
    shift: float
    modulus: float


@lru_cache
def left_over(profile: Profile, *, steel: float, modulus: float) -> dict[str, Left]:
    """Effective section in compression ("pressed") and in bending each way.

    "up": top compressed. "down": bottom compressed. "side": one side compressed.
    """
    made = outline_of(profile)
    strain = sqrt(235e6 / steel * modulus / 210e9)
    holes = [_hole(wall, (1.0, 1.0), strain) for wall in made.walls]
    area, shift, _ = _without(made, holes, axis=1)
    bent = {
        name: _bent(made, axis, sign, strain)
        for name, axis, sign in (("up", 1, 1.0), ("down", 1, -1.0), ("side", 0, 1.0))
    }
    return {"pressed": Left(area=area, shift=shift, modulus=0.0), **bent}


def _bent(made: Outline, axis: int, sign: float, strain: float) -> Left:
    """Two steps: flanges first, then webs with the neutral axis that the flanges leave."""

    def is_flange(wall: Wall) -> bool:
        return bool(np.all(sign * wall.ends[:, axis] >= 0.0))

    def stresses(wall: Wall, neutral: float) -> tuple[float, float]:
        first, last = sign * (wall.ends[:, axis] - neutral)
        return float(first), float(last)

    flanges = [_hole(w, stresses(w, 0.0), strain) for w in made.walls if is_flange(w)]
    _, neutral, _ = _without(made, flanges, axis=axis)
    webs = [_hole(w, stresses(w, neutral), strain) for w in made.walls if not is_flange(w)]
    area, shift, second = _without(made, [*flanges, *webs], axis=axis)
    ends = (made.top, -made.bottom) if axis else (made.side, -made.side)
    return Left(area=area, shift=shift, modulus=min(second / abs(e - shift) for e in ends))


Hole = tuple[np.ndarray, float] | None


def _hole(wall: Wall, pressed: tuple[float, float], strain: float) -> Hole:
    """Strip that buckling takes out of a plate; compression at its ends is positive."""
    ends = wall.ends
    if pressed[1] > pressed[0]:
        ends, pressed = ends[::-1], pressed[::-1]
    if pressed[0] <= 0.0:
        return None
    psi = round(pressed[1] / pressed[0], 12)
    least = max(psi, -3.0)
    slender = wall.clear / wall.thick / (28.4 * strain * sqrt(_k_sigma(least)))
    if slender <= 0.5 + sqrt(0.085 - 0.055 * least):
        return None
    rho = (slender - 0.055 * (3.0 + least)) / slender**2
    if rho >= 1.0:
        return None
    if psi >= 0.0:
        near = rho * 2.0 / (5.0 - psi)
        gap = 1.0 - rho
    else:
        squeezed = 1.0 / (1.0 - psi)
        near, gap = 0.4 * rho * squeezed, (1.0 - rho) * squeezed
    way = ends[1] - ends[0]
    return np.array([ends[0] + near * way, ends[0] + (near + gap) * way]), wall.thick


def _k_sigma(psi: float) -> float:
    if psi == 1.0:
        return 4.0
    if psi > 0.0:
        return 8.2 / (1.05 + psi)
    if psi > -1.0:
        return 7.81 - 6.29 * psi + 9.78 * psi * psi
    return 23.9 if psi == -1.0 else 5.98 * (1.0 - psi) ** 2


def _without(made: Outline, holes: list[Hole], *, axis: int) -> tuple[float, float, float]:
    """Area, place of the centroid and second moment about it, less what the holes take."""
    area, first = made.area, 0.0
    second = made.luffing if axis else made.sideways
    for hole in filter(None, holes):
        (start, end), thick = hole
        length = hypot(*(end - start))
        a, b = start[axis], end[axis]
        lean = (end - start)[1 - axis] / length
        area -= thick * length
        first -= thick * length * (a + b) / 2
        # A straight strip about its own middle, as long as it rises and as thick as it leans.
        own = length * thick / 12 * ((b - a) ** 2 + (thick * lean) ** 2)
        second -= own + thick * length * ((a + b) / 2) ** 2
    shift = first / area
    return area, shift, second - area * shift**2
