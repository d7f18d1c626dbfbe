"""What plate buckling leaves of a section, EN 1993-1-5:2006 sections 4.3 to 4.6.

Every plate of the cell is an internal plate. Shear lag (section 3) is left out: half a boom
plate's width is far below a fiftieth of the length between points of zero moment. So is
column-like buckling (4.5.3): a boom has no close transverse stiffeners. The stress is taken
up to yield; the reduction for lower stress, 4.4(4), is not used.

Derived in docs/theory.md, section 4.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from math import sqrt

from boomsim.mechanics.sections.flat_plates import Plate
from boomsim.mechanics.sections.plate_buckling_factor import (
    LEAST_STRESS_RATIO,
    effective_widths,
    plate_slenderness,
    reduction,
)
from boomsim.mechanics.sections.section_properties import Properties


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """The part of a plate that buckling takes out.

    Attributes
    ----------
    start, end : (float, float)
        (z, y) on the midline, from the gross centroid [m]
    thickness : float
        t [m]
    """

    start: tuple[float, float]
    end: tuple[float, float]
    thickness: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EffectiveBending:
    """The section that resists bending alone, one way round.

    Attributes
    ----------
    shift : float
        Of the neutral axis from the gross centroid, towards positive y or z [m]
    second_moment : float
        About the shifted axis [m4]
    modulus_compressed, modulus_stretched : float
        At the compressed and the stretched outer surface [m3]
    modulus : float
        The smaller of the two, W_eff [m3]
    strips : tuple of Strip
        What is taken out
    """

    shift: float
    second_moment: float
    modulus_compressed: float
    modulus_stretched: float
    modulus: float
    strips: tuple[Strip, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EffectiveSection:
    """What buckling leaves of a section, for each action alone as 4.6 asks.

    Attributes
    ----------
    gross_area : float
        A, carries tension [m2]
    area : float
        A_eff in uniform compression [m2]
    shift : float
        e_N, centroid of A_eff above the gross centroid [m]
    compressed : tuple of Strip
        What is taken out in uniform compression
    drooping : EffectiveBending
        Luffing plane, m_y < 0: top stretched, bottom compressed
    lifting : EffectiveBending
        Luffing plane, m_y > 0: top compressed
    sideways : EffectiveBending
        Left compressed; by symmetry also right
    """

    gross_area: float
    area: float
    shift: float
    compressed: tuple[Strip, ...]
    drooping: EffectiveBending
    lifting: EffectiveBending
    sideways: EffectiveBending


def effective_section(
    shape: Properties, *, yield_stress: float, modulus: float = 210e9
) -> EffectiveSection:
    """Effective sections for compression and for bending each way.

    Bending goes in the two steps of 4.4(3): plates wholly compressed on the gross section are
    flanges and take their stress ratio from it; the other plates are webs and take theirs from
    effective flanges with gross webs. No further iteration. 4.3(3), one action at a time.

    Assumes the folds between plates hold the plates' edges straight. Between plates that turn
    by a few degrees only they may not, and the polygon is then weaker than computed.

    Parameters
    ----------
    shape : Properties
        Of the profile [m]
    yield_stress : float
        f_y [Pa]
    modulus : float
        E [Pa]

    Returns
    -------
    EffectiveSection
        SI units, see there [m]

    Raises
    ------
    ValueError
        If a tube has d / t over 90 epsilon^2, class 3 of EN 1993-1-1:2005 Table 5.2

    Examples
    --------
    Plates of b/t = 20 do not buckle in mild steel:

    >>> from boomsim.machine.shapes.box import box
    >>> from boomsim.mechanics.sections.section_properties import properties
    >>> stocky = properties(box(0.22, width=0.22, top=0.01, bottom=0.01, web=0.01))
    >>> made = effective_section(stocky, yield_stress=235e6)
    >>> made.area == stocky.area, made.shift
    (True, 0.0)
    """
    _refuse_thin_tube(shape, yield_stress=yield_stress)
    taken = [
        _strip(plate, 1.0, 1.0, yield_stress=yield_stress, modulus=modulus)
        for plate in shape.plates
    ]
    compressed = tuple(strip for strip in taken if strip)
    area, shift, _ = _left_over(shape, compressed, axis=1)

    def bending(axis: int, side: float) -> EffectiveBending:
        return _bending(shape, axis, side, yield_stress=yield_stress, modulus=modulus)

    return EffectiveSection(
        gross_area=shape.area,
        area=area,
        shift=shift,
        compressed=compressed,
        drooping=bending(1, -1.0),
        lifting=bending(1, 1.0),
        sideways=bending(0, -1.0),
    )


def _refuse_thin_tube(shape: Properties, *, yield_stress: float) -> None:
    """Stop at a tube that would buckle as a shell, which flat plates do not show."""
    ratio = shape.outer_height / shape.plates[0].thickness
    limit = 90.0 * 235e6 / yield_stress
    if shape.kind == "tube" and not ratio <= limit:
        raise ValueError(
            f"A tube with d / t = {ratio:.0f} buckles as a shell, which is not computed; at a "
            f"yield stress of {yield_stress / 1e6:.0f} MPa d / t may be {limit:.0f}. Take a wall "
            f"of {shape.outer_height / limit * 1e3:.1f} mm or more, or a lower yield stress."
        )


def _bending(
    shape: Properties, axis: int, side: float, *, yield_stress: float, modulus: float
) -> EffectiveBending:
    """Two steps of 4.4(3); `side` is the sign of the compressed coordinate on `axis`."""

    def strips(plates: Iterable[Plate], stress: Callable[[float], float]) -> list[Strip]:
        made = (
            _strip(
                plate,
                stress(plate.start[axis]),
                stress(plate.end[axis]),
                yield_stress=yield_stress,
                modulus=modulus,
            )
            for plate in plates
        )
        return [strip for strip in made if strip]

    flanges = [p for p in shape.plates if min(side * p.start[axis], side * p.end[axis]) >= 0.0]
    webs = [plate for plate in shape.plates if plate not in flanges]
    taken = strips(flanges, lambda c: side * c)
    _, middle, _ = _left_over(shape, taken, axis=axis)
    taken += strips(webs, lambda c: side * (c - middle))
    _, shift, second_moment = _left_over(shape, taken, axis=axis)
    ahead, behind = (shape.top, shape.bottom) if axis == 1 else (shape.right, shape.left)
    high, low = second_moment / (ahead - shift), second_moment / (behind + shift)
    return EffectiveBending(
        shift=shift,
        second_moment=second_moment,
        modulus_compressed=high if side > 0 else low,
        modulus_stretched=low if side > 0 else high,
        modulus=min(high, low),
        strips=tuple(taken),
    )


def _strip(
    plate: Plate, at_start: float, at_end: float, *, yield_stress: float, modulus: float
) -> Strip | None:
    """What buckling takes out of a plate; stresses at its ends, compression positive."""
    first, last = plate.start, plate.end
    if at_end > at_start:
        first, last, at_start, at_end = last, first, at_end, at_start
    if not at_start > 0.0:
        return None
    # Table 4.1 has small steps at 0 and -1: rounding of coordinates must not pick the side.
    psi = round(at_end / at_start, 12)
    bounded = max(psi, LEAST_STRESS_RATIO)
    lambda_p = plate_slenderness(
        plate.width,
        thickness=plate.thickness,
        yield_stress=yield_stress,
        stress_ratio=bounded,
        modulus=modulus,
    )
    rho = reduction(lambda_p, stress_ratio=bounded)
    if rho == 1.0:
        return None
    b_e1, b_e2 = effective_widths(plate.width, stress_ratio=psi, share=rho)
    u1 = b_e1 / plate.width
    u2 = u1 + (b_e1 + b_e2) / plate.width * (1.0 / rho - 1.0)
    (z1, y1), (z2, y2) = first, last
    return Strip(
        start=(z1 + u1 * (z2 - z1), y1 + u1 * (y2 - y1)),
        end=(z1 + u2 * (z2 - z1), y1 + u2 * (y2 - y1)),
        thickness=plate.thickness,
    )


def _left_over(
    shape: Properties, strips: Iterable[Strip], *, axis: int
) -> tuple[float, float, float]:
    """Area, centroid and second moment about it, of the gross section without its strips."""
    area, first, second = shape.area, 0.0, shape.i_y if axis == 1 else shape.i_z
    for strip in strips:
        along = [b - a for a, b in zip(strip.start, strip.end, strict=True)]
        length, t = sqrt(along[0] ** 2 + along[1] ** 2), strip.thickness
        low, high = strip.start[axis], strip.end[axis]
        through = t * along[1 - axis] / length
        area -= t * length
        first -= t * length * (low + high) / 2.0
        second -= t * length * ((low**2 + low * high + high**2) / 3.0 + through**2 / 12.0)
    shift = first / area
    return area, shift, second - area * shift**2
