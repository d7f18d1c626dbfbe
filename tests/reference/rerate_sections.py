"""Use of what each section is judged by, from its forces and its plates, worked once more.

EN 1993-1-5: section 4 (plate buckling), 5 (shear), 6 (a force across a plate's edge), 7 (both at
once). Two pads share a joint's force.
"""

from math import sqrt

import numpy as np
from rerate_cells import Bent
from rerate_profile import Outline, Wall, left_over, outline_of

from boomsim.machine.model import Pad, Section

PER_SECTION = 9


class At:
    """What one section carries at its stations, in one cell; compression is negative."""

    def __init__(self, bent: Bent, section: int, row: int) -> None:
        own, forces = (
            slice(section * PER_SECTION, (section + 1) * PER_SECTION),
            bent.factored_forces,
        )
        self.axial, self.up, self.aside, self.shear, self.across, self.twist = (
            np.array(force[row, own, 0])
            for force in (
                forces.axial,
                forces.moment,
                forces.moment_side,
                forces.shear,
                forces.shear_side,
                forces.torsion,
            )
        )


def allowed(bent: Bent, section: Section) -> float:
    return section.material.yield_stress / bent.cells.ruling.resistance


def yielding(bent: Bent, section: Section, at: At) -> float:
    """Von Mises' stress at the corners of the rectangle round the section, at every station."""
    made = outline_of(section.profile)
    shear = np.abs(at.shear) / made.upright
    shear = shear + np.abs(at.twist) / (2 * made.enclosed * min(w.thick for w in made.walls))
    worst = 0.0
    for y in (made.top, -made.bottom):
        for z in (made.side, -made.side):
            normal = at.axial / made.area - at.up * y / made.luffing - at.aside * z / made.sideways
            worst = max(worst, float(np.sqrt(normal**2 + 3 * shear**2).max()))
    return worst / allowed(bent, section)


def yielding_at_corners(bent: Bent, section: Section, at: At) -> float:
    """The same at the corners that are there, with the shear of the plates that meet in each."""
    made = outline_of(section.profile)
    sheared = [wall_shear(made, wall, at) for wall in made.walls]
    worst = 0.0
    for k, (z, y) in enumerate(made.outer):
        normal = at.axial / made.area - at.up * y / made.luffing - at.aside * z / made.sideways
        shear = np.maximum(sheared[k], sheared[k - 1])
        worst = max(worst, float(np.sqrt(normal**2 + 3 * shear**2).max()))
    return worst / allowed(bent, section)


def wall_shear(made: Outline, wall: Wall, at: At) -> np.ndarray:
    """Shear stress along a plate: both forces as averages, and Bredt's flow [Pa]."""
    across, upright = np.abs(wall.way)
    return (
        np.abs(at.shear) * upright / made.upright
        + np.abs(at.across) * across / made.across
        + np.abs(at.twist) / (2 * made.enclosed * wall.thick)
    )


def plates(bent: Bent, section: Section, at: At) -> np.ndarray:
    """Sum of eq. (4.15) at every station; a shift of the centroid that helps is left out."""
    steel, made = section.material, outline_of(section.profile)
    left = left_over(section.profile, steel=steel.yield_stress, modulus=steel.modulus)
    strength, used = allowed(bent, section), []
    for n, up, aside in zip(at.axial, at.up, at.aside, strict=True):
        area = left["pressed"].area if n < 0.0 else made.area
        shifted = up + min(n, 0.0) * left["pressed"].shift

        def bending(moment: float) -> float:
            return abs(moment) / left["up" if moment > 0.0 else "down"].modulus

        stress = abs(n) / area + max(bending(up), bending(shifted))
        used.append((stress + abs(aside) / left["side"].modulus) / strength)
    return np.array(used)


def shearing(bent: Bent, section: Section, at: At) -> float:
    """Shear buckling, or with bending where more than half of the shear strength is used."""
    steel, made = section.material, outline_of(section.profile)
    strain = sqrt(235e6 / steel.yield_stress * steel.modulus / 210e9)
    eta = np.zeros(PER_SECTION)
    for wall in made.walls:
        slender = wall.clear / wall.thick / (37.4 * strain * sqrt(5.34))
        chi = 1.0 if slender < 0.83 else 0.83 / slender
        eta = np.maximum(eta, wall_shear(made, wall, at) / (chi * allowed(bent, section)) * sqrt(3))
    both = np.where(eta > 0.5, plates(bent, section, at) + (2 * eta - 1) ** 2, 0.0)
    return float(np.maximum(eta, both).max())


def pressed(force: float, pad: Pad | None) -> float:
    """Pressure of two pads over what their maker permits."""
    return 0.0 if pad is None else abs(force) / 2 / (pad.length * pad.width) / pad.pressure


def crushing_strength(bent: Bent, section: Section, *, side: float, bearing: float) -> float:
    """What both webs beside a loaded plate bear, type (a) of 6.1, their upright parts [N]."""
    steel, made = section.material, outline_of(section.profile)
    strain = sqrt(235e6 / steel.yield_stress * steel.modulus / 210e9)
    heights = [side * wall.ends[:, 1].mean() for wall in made.walls]
    k = int(np.argmax(heights))
    flange, strength = made.walls[k], 0.0
    for web in (made.walls[k - 1], made.walls[(k + 1) % len(made.walls)]):
        breadth = min(flange.clear / 2, 15 * strain * flange.thick) + web.thick
        one = _web(steel, web, flange.thick, breadth=breadth, bearing=min(bearing, web.clear))
        strength += one * abs(web.way[1]) / bent.cells.ruling.resistance
    return strength


def _web(steel, web: Wall, flange: float, *, breadth: float, bearing: float) -> float:
    """chi l t f of one web: m2 of the spread counts for slender webs only."""
    critical = 0.9 * 6.0 * steel.modulus * web.thick**3 / web.clear
    for stretched in (0.02 * (web.clear / flange) ** 2, 0.0):
        spread = bearing + 2 * flange * (1 + sqrt(breadth / web.thick + stretched))
        plastic = spread * web.thick * steel.yield_stress
        slender = sqrt(plastic / critical)
        if slender > 0.5:
            break
    return plastic * min(1.0, 0.5 / slender)


def crushed(bent: Bent, number: int, row: int) -> tuple[float, float]:
    """Use of web crushing at the mouth around a section, and at its tail in the section around."""
    inner, outer = (bent.cells.machine.boom.sections[k] for k in (number, number - 1))
    front = float(bent.factored_forces.front_pad[row, number, 0])
    rear = float(bent.factored_forces.rear_pad[row, number, 0])
    found = []
    for section, force, pad, side in (
        (inner, front, inner.front_pad, -1.0),
        (outer, rear, inner.rear_pad, 1.0),
    ):
        if pad is None:
            found.append(0.0)
            continue
        # A force that presses the other way presses on the plate across.
        towards = side if force >= 0.0 else -side
        found.append(
            abs(force) / crushing_strength(bent, section, side=towards, bearing=pad.length)
        )
    return found[0], found[1]


def at_mouth(bent: Bent, number: int, row: int) -> int:
    """Station of a section that the mouth around it touches."""
    along = bent.boom.stations.position[row, number]
    return int(np.argmin(np.abs(along - bent.boom.layout.overlap[row, number])))


def lock(bent: Bent, number: int, row: int) -> float:
    """Thrust on the pins; a section that is all in stands on its stop and can only be pulled."""
    section = bent.cells.machine.boom.sections[number]
    if section.lock is None:
        return 0.0
    thrust = float(bent.factored_forces.lock[row, number, 0])
    if bent.cells.extension[row, number - 1] == 0.0:
        thrust = min(thrust, 0.0)
    return abs(thrust) / section.lock.strength * bent.cells.ruling.resistance
