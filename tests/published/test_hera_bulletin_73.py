"""HERA Steel Design & Construction Bulletin 73 (New Zealand, 2003): a telescopic platform boom.

Worked to NZS 3404 on a rolled hollow section 200 x 100 x 5. Here: what the section itself gives
(radii, torsion, utilisation of the bending capacity). The sharp corners of a welded box give 3 to
6 % more area and second moment than a rolled section with rounded corners.

Source: HERA Bulletin 73 (2003). Status: read.
"""

import pytest

from boomsim.machine.shapes.box import box
from boomsim.mechanics.sections.effective_section import (
    EffectiveBending,
    EffectiveSection,
    effective_section,
)
from boomsim.mechanics.sections.elastic_stress import shear_stress
from boomsim.mechanics.sections.section_properties import properties, torsion_shear_stress
from boomsim.mechanics.sections.section_resistance import plate_utilisation

SHAPE = properties(box(0.200, width=0.100, top=0.005, bottom=0.005, web=0.005))
YIELD = 350e6  # Bulletin: grade C350


def test_enclosed_area_is_that_of_the_midline() -> None:
    # Bulletin: A_e = 18.5e-3 m2, three figures.
    assert SHAPE.enclosed_area == pytest.approx(18.5e-3, rel=3e-3)


def test_torque_shears_the_wall_as_the_bulletin_says() -> None:
    # Bulletin: M_z 2.30 kN m gives 12.4 MPa, three figures.
    assert torsion_shear_stress(SHAPE, torque=2.30e3) == pytest.approx([12.4e6] * 4, rel=5e-3)
    made = shear_stress(SHAPE, torque=-2.30e3, shear_y=0.0, shear_z=0.0)
    assert made.total == pytest.approx([12.4e6] * 4, rel=5e-3)


def test_radii_of_gyration_are_those_of_the_rolled_section() -> None:
    # Bulletin: r_x 71.5, r_y 41.8 mm; rounded corners cost the rolled section up to 2 %.
    assert (SHAPE.i_y / SHAPE.area) ** 0.5 == pytest.approx(71.5e-3, rel=0.02)
    assert (SHAPE.i_z / SHAPE.area) ** 0.5 == pytest.approx(41.8e-3, rel=0.02)


def test_effective_share_of_the_area_agrees_with_the_form_factor() -> None:
    # Bulletin: k_f = 0.925, by NZS 3404 and for rounded corners; EN 1993-1-5 has another curve:
    # 2 %.
    made = effective_section(SHAPE, yield_stress=YIELD)
    assert made.area / made.gross_area == pytest.approx(0.925, rel=0.02)


def with_modulus(modulus: float) -> EffectiveBending:
    return EffectiveBending(
        shift=0.0,
        second_moment=modulus * 0.1,
        modulus_compressed=modulus,
        modulus_stretched=modulus,
        modulus=modulus,
        strips=(),
    )


def test_utilisation_of_the_bending_capacity_is_that_of_the_bulletin() -> None:
    # Bulletin: M_sx 62.8 and M_sy 31.6 kN m at yield, 0.60 of them allowed; moments 17.5 and
    # 4.30 kN m. Printed 0.464; and 0.226, which the unrounded 1.30 kN x 3.30 m = 4.29 gives.
    upright, across = with_modulus(62.8e3 / YIELD), with_modulus(31.6e3 / YIELD)
    section = EffectiveSection(
        gross_area=SHAPE.area,
        area=SHAPE.area,
        shift=0.0,
        compressed=(),
        drooping=upright,
        lifting=upright,
        sideways=across,
    )
    utilisation = plate_utilisation(
        section, axial=0.0, moment_y=-17.5e3, moment_z=1.30e3 * 3.30, strength=0.60 * YIELD
    )
    assert utilisation.luffing == pytest.approx(0.464, abs=6e-4)
    assert utilisation.sideways == pytest.approx(0.226, abs=6e-4)
