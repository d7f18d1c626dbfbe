"""Effective box sections, put together from rectangles, against the package's polygons.

Written apart from the package from EN 1993-1-5:2006, 4.4: a box's flanges and webs are summed
as rectangles that stay, not as strips that go.

Source: EN 1993-1-5 put together from rectangles. Status: reference program.
"""

import random
from math import sqrt

import pytest

from boomsim.machine.shapes.box import box
from boomsim.mechanics.sections.effective_section import effective_section
from boomsim.mechanics.sections.section_properties import properties


def share(ratio: float, psi: float, f_y: float) -> float:
    """Rho of an internal plate."""
    if psi == 1:
        k = 4.0
    elif psi > 0:
        k = 8.2 / (1.05 + psi)
    elif psi > -1:
        k = 7.81 - 6.29 * psi + 9.78 * psi**2
    else:
        k = 5.98 * (1 - psi) ** 2
    slenderness = ratio / 28.4 / sqrt(235e6 / f_y) / sqrt(k)
    if slenderness <= 0.5 + sqrt(0.085 - 0.055 * psi):
        return 1.0
    return (slenderness - 0.055 * (3 + psi)) / slenderness**2


def add_up(rectangles: list[tuple[float, float, float]]) -> tuple[float, float, float]:
    """Area, centroid and own second moment of (width, low, high) rectangles."""
    area = sum(w * (b - a) for w, a, b in rectangles)
    centre = sum(w * (b - a) * (a + b) / 2 for w, a, b in rectangles) / area
    second = sum(
        w * (b - a) ** 3 / 12 + w * (b - a) * ((a + b) / 2 - centre) ** 2 for w, a, b in rectangles
    )
    return area, centre, second


def bent(
    height: float, width: float, near: float, far: float, web: float, f_y: float
) -> tuple[float, float, float, float]:
    """Centroid above the compressed face, second moment and both moduli; y from that face."""
    inside = width - 2 * web
    ends = [(2 * web, 0.0, near), (2 * web, height - far, height), (inside, height - far, height)]
    kept = share(inside / near, 1.0, f_y) * inside
    whole_web = [(2 * web, near, height - far)]
    _, gross, _ = add_up([*ends, *whole_web, (inside, 0.0, near)])
    assert gross > near, "the near plate must be a flange"
    _, middle, _ = add_up([*ends, *whole_web, (kept, 0.0, near)])
    compressed, clear = middle - near, height - near - far
    psi = -(clear - compressed) / compressed
    effective = share(clear / web, max(psi, -3.0), f_y) * compressed
    webs = [
        (2 * web, near, near + 0.4 * effective),
        (2 * web, middle - 0.6 * effective, height - far),
    ]
    _, centre, second = add_up([*ends, *webs, (kept, 0.0, near)])
    return centre, second, second / centre, second / (height - centre)


@pytest.mark.parametrize("seed", range(12))
def test_effective_box_is_the_sum_of_the_rectangles_that_stay(seed: int) -> None:
    draw = random.Random(seed)
    height, width = draw.uniform(0.3, 1.0), draw.uniform(0.3, 0.8)
    top, bottom, web = (draw.uniform(0.004, 0.014) for _ in range(3))
    f_y = draw.choice([235e6, 460e6, 690e6, 960e6])
    shape = properties(box(height, width=width, top=top, bottom=bottom, web=web))
    made = effective_section(shape, yield_stress=f_y)

    centre, second, compressed, stretched = bent(height, width, bottom, top, web, f_y)
    assert made.drooping.shift == pytest.approx(centre - shape.bottom, abs=1e-12)
    assert made.drooping.second_moment == pytest.approx(second)
    assert made.drooping.modulus_compressed == pytest.approx(compressed)
    assert made.drooping.modulus_stretched == pytest.approx(stretched)
    assert made.drooping.modulus == pytest.approx(min(compressed, stretched))

    centre, second, compressed, stretched = bent(height, width, top, bottom, web, f_y)
    assert made.lifting.shift == pytest.approx(shape.top - centre, abs=1e-12)
    assert made.lifting.modulus_compressed == pytest.approx(compressed)
    assert made.lifting.modulus_stretched == pytest.approx(stretched)


@pytest.mark.parametrize("seed", range(6))
def test_box_lying_on_its_side_bends_sideways_as_it_bent_upright(seed: int) -> None:
    draw = random.Random(seed)
    height, width = draw.uniform(0.3, 1.0), draw.uniform(0.3, 0.8)
    flange, web = draw.uniform(0.004, 0.014), draw.uniform(0.004, 0.014)
    upright = properties(box(height, width=width, top=flange, bottom=flange, web=web))
    made = effective_section(upright, yield_stress=690e6).sideways
    # Swap the sides; the clear widths and the rectangles are the same.
    _, second, compressed, stretched = bent(width, height, web, web, flange, 690e6)
    assert made.second_moment == pytest.approx(second)
    assert made.modulus == pytest.approx(min(compressed, stretched))


@pytest.mark.parametrize("seed", range(6))
def test_compressed_box_keeps_the_rectangles_of_all_four_plates(seed: int) -> None:
    draw = random.Random(seed)
    height, width = draw.uniform(0.3, 1.0), draw.uniform(0.3, 0.8)
    top, bottom, web = (draw.uniform(0.004, 0.014) for _ in range(3))
    shape = properties(box(height, width=width, top=top, bottom=bottom, web=web))
    made = effective_section(shape, yield_stress=690e6)
    inside, clear = width - 2 * web, height - top - bottom
    kept = share(clear / web, 1.0, 690e6) * clear
    area, centre, _ = add_up(
        [
            (2 * web, 0.0, bottom),
            (2 * web, height - top, height),
            (share(inside / bottom, 1.0, 690e6) * inside, 0.0, bottom),
            (share(inside / top, 1.0, 690e6) * inside, height - top, height),
            (2 * web, bottom, bottom + kept / 2),
            (2 * web, height - top - kept / 2, height - top),
        ]
    )
    assert made.area == pytest.approx(area)
    assert made.shift == pytest.approx(centre - shape.bottom, abs=1e-12)
