"""EN 1993-1-5:2006 with corrigendum AC:2009, plated structural elements.

Table 4.1 (buckling factors, effective widths of internal plates), 4.4(2) (slenderness and
reduction), eq. (4.15) (utilisation), section 6 (patch loading), eq. (7.2). Formulas and the table's
factors were read in documents that quote the standard; values marked "worked" were computed by
hand from those formulas.

Tolerances: half a unit or one of the last worked figure; rounding where both sides are one formula.

Source: EN 1993-1-5:2006. Status: second-hand.
"""

from math import sqrt

import numpy as np
import pytest

from boomsim.machine.model import Pad
from boomsim.machine.shapes.box import box
from boomsim.machine.shapes.polygon import polygon
from boomsim.machine.shapes.tube import tube
from boomsim.mechanics.sections.effective_section import effective_section
from boomsim.mechanics.sections.patch_loading import (
    crushing_resistance,
    pad_pressure,
    web_crushing,
    with_bending,
)
from boomsim.mechanics.sections.plate_buckling_factor import (
    buckling_factor,
    effective_widths,
    plate_slenderness,
    reduction,
    stocky_limit,
)
from boomsim.mechanics.sections.section_properties import properties
from boomsim.mechanics.sections.section_resistance import plate_utilisation
from boomsim.mechanics.sections.shear_buckling_factor import (
    beside_bending,
    shear_reduction,
    shear_slenderness,
    shear_strengths,
)

# The table prints three or four figures; the formulas give the last of them.
PRINTED = 1e-4


@pytest.mark.parametrize(
    ("stress_ratio", "factor"),
    [
        (1.0, 4.0),  # Table 4.1
        (0.5, 5.2903),  # 8.2 / (1.05 + psi), worked
        (0.0, 7.81),  # Table 4.1
        (-0.5, 13.40),  # 7.81 - 6.29 psi + 9.78 psi^2, worked
        (-1.0, 23.9),  # Table 4.1
        (-2.0, 53.82),  # 5.98 (1 - psi)^2, worked
        (-3.0, 95.68),  # same, worked
    ],
)
def test_buckling_factor_is_that_of_table_4_1(stress_ratio: float, factor: float) -> None:
    assert buckling_factor(stress_ratio) == pytest.approx(factor, rel=PRINTED)


@pytest.mark.parametrize("stress_ratio", [1.001, -3.001, float("nan")])
def test_stress_ratio_outside_table_4_1_is_refused(stress_ratio: float) -> None:
    with pytest.raises(ValueError, match="from -3 to 1"):
        buckling_factor(stress_ratio)


@pytest.mark.parametrize("seam", [0.0, -1.0])
def test_buckling_factor_has_no_step_where_its_formulas_meet(seam: float) -> None:
    # The standard's own rounding leaves 0.1 % between the branches.
    below, above = buckling_factor(seam - 1e-9), buckling_factor(seam + 1e-9)
    assert below == pytest.approx(above, rel=2e-3)
    assert buckling_factor(seam) == pytest.approx(above, rel=2e-3)


@pytest.mark.parametrize(
    ("ratio", "yield_stress", "stress_ratio", "slenderness", "share"),
    [
        (60.0, 355e6, 1.0, 1.2983, 0.6397),  # 4.4(2), worked
        (50.0, 690e6, 1.0, 1.5084, 0.5663),  # 4.4(2), worked
        (40.0, 960e6, 1.0, 1.4234, 0.5940),  # 4.4(2), worked
        (100.0, 690e6, -1.0, 1.2342, 0.7380),  # 4.4(2), worked
    ],
)
def test_slender_plate_keeps_the_share_of_eq_4_2(
    ratio: float, yield_stress: float, stress_ratio: float, slenderness: float, share: float
) -> None:
    found = plate_slenderness(
        ratio * 0.005, thickness=0.005, yield_stress=yield_stress, stress_ratio=stress_ratio
    )
    # Four decimals were written down.
    assert found == pytest.approx(slenderness, abs=6e-5)
    assert reduction(found, stress_ratio=stress_ratio) == pytest.approx(share, abs=6e-5)


def test_slenderness_is_the_root_of_yield_over_elastic_critical_stress() -> None:
    # sigma_cr = k pi^2 E / (12 (1 - nu^2)) (t / b)^2; the standard rounds its constant to 28.4.
    critical = 4.0 * np.pi**2 * 70e9 / (12.0 * (1.0 - 0.3**2)) / 50.0**2
    found = plate_slenderness(0.25, thickness=0.005, yield_stress=250e6, modulus=70e9)
    assert found == pytest.approx(sqrt(250e6 / critical), rel=1e-3)


@pytest.mark.parametrize(("stress_ratio", "limit"), [(1.0, 0.6732), (0.0, 0.7915), (-1.0, 0.8742)])
def test_plate_below_the_stocky_limit_is_whole(stress_ratio: float, limit: float) -> None:
    # 0.5 + sqrt(0.085 - 0.055 psi), worked to four decimals.
    assert stocky_limit(stress_ratio) == pytest.approx(limit, abs=6e-5)
    assert reduction(limit - 1e-3, stress_ratio=stress_ratio) == 1.0
    assert 0.99 < reduction(limit + 1e-3, stress_ratio=stress_ratio) < 1.0


def test_effective_widths_lie_as_table_4_1_draws_them() -> None:
    assert effective_widths(0.4, stress_ratio=1.0, share=0.5) == pytest.approx((0.1, 0.1))
    # psi = 0.5: b_e1 = 2 b_eff / 4.5
    assert effective_widths(0.45, stress_ratio=0.5, share=0.5) == pytest.approx((0.1, 0.125))
    # psi = -1: b_eff = 0.5 x 0.4 / 2, of which 0.4 lies at the edge
    assert effective_widths(0.4, stress_ratio=-1.0, share=0.5) == pytest.approx((0.04, 0.06))


def test_slender_box_in_compression_keeps_its_effective_widths() -> None:
    # Plates 60 t wide, fy 355: rho 0.6397 (worked above), so 4 x 0.3603 x 60 t^2 go.
    shape = properties(box(0.31, width=0.31, top=0.005, bottom=0.005, web=0.005))
    made = effective_section(shape, yield_stress=355e6)
    assert made.gross_area - made.area == pytest.approx(4 * 0.3603 * 60 * 0.005**2, rel=3e-4)
    assert made.shift == pytest.approx(0.0, abs=1e-12)


def test_thin_bottom_plate_moves_the_compressed_centroid_up() -> None:
    shape = properties(box(0.5, width=0.4, top=0.02, bottom=0.005, web=0.01))
    assert effective_section(shape, yield_stress=690e6).shift > 0.0


def test_shift_of_the_centroid_bends_a_compressed_section() -> None:
    # 4.3(3), 4.6(1): the moment n e_N is added, unless it relieves.
    shape = properties(box(0.5, width=0.4, top=0.02, bottom=0.005, web=0.01))
    made = effective_section(shape, yield_stress=690e6)
    utilisation = plate_utilisation(
        made, axial=[-1e6, 1e6], moment_y=0.0, moment_z=0.0, strength=500e6
    )
    by_hand = 1e6 * made.shift / (made.drooping.modulus * 500e6)
    assert utilisation.luffing == pytest.approx([by_hand, 0.0])
    relieved = plate_utilisation(made, axial=-1e5, moment_y=1e5, moment_z=0.0, strength=500e6)
    assert relieved.luffing == pytest.approx(1e5 / (made.lifting.modulus * 500e6))


def test_utilisation_is_the_sum_of_eq_4_15() -> None:
    shape = properties(box(0.5, width=0.4, top=0.006, bottom=0.006, web=0.006))
    made = effective_section(shape, yield_stress=690e6)
    n, m_y, m_z = -2e5, -3e5, 1e5
    utilisation = plate_utilisation(made, axial=n, moment_y=m_y, moment_z=m_z, strength=600e6)
    expected = (
        2e5 / (made.area * 600e6)
        + 3e5 / (made.drooping.modulus * 600e6)
        + 1e5 / (made.sideways.modulus * 600e6)
    )
    assert utilisation.total == pytest.approx(expected)


def test_thin_round_tube_is_refused_because_it_buckles_as_a_shell() -> None:
    # EN 1993-1-1:2005 Table 5.2: class 3 ends at d / t = 90 epsilon^2, 30.7 at 690 MPa.
    stocky = properties(tube(0.30, wall=0.0105))
    assert effective_section(stocky, yield_stress=690e6).area == stocky.area
    with pytest.raises(ValueError, match="buckles as a shell"):
        effective_section(properties(tube(0.30, wall=0.009)), yield_stress=690e6)


def test_patch_load_away_from_the_end_is_type_a() -> None:
    # Worked: h_w 500, t_w 6, t_f 8, b_f 120, s_s 200 mm, f_y 460 MPa, gamma_M1 1.1, no stiffeners.
    # k_F = 6; F_cr = 0.9 x 6 x 210000 x 216 / 500 = 489 888 N; m_1 = 20; m_2 = 78.125;
    # l_y = 200 + 16 (1 + sqrt(98.125)) = 374.493 mm; lambda_F = 1.45254; chi_F = 0.344225;
    # F_Rd = 0.344225 x 374.493 x 6 x 460 / 1.1 = 323 446 N
    made = web_crushing(
        0.5,
        web=0.006,
        flange=0.008,
        flange_width=0.12,
        bearing=0.2,
        yield_stress=460e6,
        factor=1.1,
    )
    assert made.loaded_length == pytest.approx(0.374493, rel=1e-5)
    assert made.slenderness == pytest.approx(1.45254, rel=1e-5)
    assert made.resistance == pytest.approx(323_446, rel=1e-4)


def test_patch_load_at_an_unstiffened_end_is_type_c_and_weaker() -> None:
    # Worked, same web with c = 0: k_F = 2 + 6 x 200 / 500 = 4.4;
    # l_e = 4.4 x 210000 x 36 / (2 x 460 x 500) = 72.3130 mm; by (6.11) 72.3130 + 8 sqrt(10 +
    # 81.7052 + 78.125) = 176.568 mm, by (6.12) 72.3130 + 8 sqrt(98.125) = 151.560 mm: the least.
    made = web_crushing(
        0.5,
        web=0.006,
        flange=0.008,
        flange_width=0.12,
        bearing=0.2,
        yield_stress=460e6,
        factor=1.1,
        from_end=0.0,
    )
    assert made.loaded_length == pytest.approx(0.151560, rel=1e-5)


def test_stocky_web_crushes_at_yield_over_its_loaded_length() -> None:
    # lambda_F below 0.5: m_2 = 0 and chi_F = 1. l_y = 100 + 40 (1 + sqrt(4)) = 220 mm.
    made = web_crushing(
        0.1,
        web=0.02,
        flange=0.02,
        flange_width=0.08,
        bearing=0.1,
        yield_stress=235e6,
        factor=1.0,
    )
    assert made.reduction == 1.0
    assert made.resistance == pytest.approx(0.22 * 0.02 * 235e6)


def test_box_has_two_webs_against_crushing_and_sloping_ones_carry_their_vertical_part() -> None:
    upright = properties(box(0.5, width=0.4, top=0.008, bottom=0.008, web=0.006))
    made = crushing_resistance(upright, side="bottom", bearing=0.2, yield_stress=460e6, factor=1.1)
    # b_f of one web: 15 epsilon t_f on the inside, and the web itself.
    one = web_crushing(
        0.484,
        web=0.006,
        flange=0.008,
        flange_width=15.0 * sqrt(235 / 460) * 0.008 + 0.006,
        bearing=0.2,
        yield_stress=460e6,
        factor=1.1,
    )
    assert made.resistance == pytest.approx(2.0 * one.resistance)
    corners = [(-0.1, -0.2), (0.1, -0.2), (0.25, 0.2), (-0.25, 0.2)]
    sloping = properties(polygon(corners, thickness=0.006))
    web = sloping.plates[1]
    assert web.rise == pytest.approx(0.4 / sqrt(0.4**2 + 0.15**2))
    made = crushing_resistance(sloping, side="bottom", bearing=0.2, yield_stress=460e6, factor=1.1)
    flange = sloping.plates[0]
    one = web_crushing(
        web.width,
        web=0.006,
        flange=0.006,
        flange_width=15.0 * sqrt(235 / 460) * 0.006 + 0.006,
        bearing=0.2,
        yield_stress=460e6,
        factor=1.1,
    )
    assert flange.width > 2 * 15.0 * sqrt(235 / 460) * 0.006
    assert made.resistance == pytest.approx(2.0 * one.resistance * web.rise)


def test_crushing_and_bending_share_the_web_by_eq_7_2() -> None:
    # eta_2 + 0.8 eta_1 <= 1.4
    assert with_bending(0.6, bending_utilisation=1.0) == pytest.approx(1.0)


def test_box_that_a_pad_presses_where_it_is_bent_uses_what_eq_7_2_makes_of_both() -> None:
    # Worked: a box of 220 x 220 x 10 mm, S235, gamma 1. No plate buckles (b/t = 20), so
    # eta_1 = M / (W f_y) with W = (220^4 - 200^4) / 12 / 110 = 562 545 mm3: 66.1 kN m: 0.500008.
    # One web: m_1 = 110 / 10, lambda_F = 0.278 < 0.5, l_y = 100 + 20 (1 + sqrt(11)) = 186.332 mm,
    # F_Rd = 186.332 x 10 x 235 = 437 881 N; a pair of pads with 700.6 kN uses 0.799989 of both.
    # (0.799989 + 0.8 x 0.500008) / 1.4 = 0.857139
    shape = properties(box(0.22, width=0.22, top=0.01, bottom=0.01, web=0.01))
    webs = crushing_resistance(shape, side="bottom", bearing=0.1, yield_stress=235e6, factor=1.0)
    made = effective_section(shape, yield_stress=235e6)
    bent = plate_utilisation(made, axial=0.0, moment_y=-66.1e3, moment_z=0.0, strength=235e6).total
    used = with_bending(700.6e3 / webs.resistance, bending_utilisation=bent)
    # Six figures were written down.
    assert used == pytest.approx(0.857139, abs=1e-6)


def test_pair_of_pads_shares_the_force_of_the_joint() -> None:
    pad = Pad(length=0.2, width=0.1, pressure=20e6)
    assert pad_pressure([-80e3, 80e3], pad=pad) == pytest.approx([2e6, 2e6])


def test_close_stiffeners_stiffen_the_web_and_bound_the_loaded_length() -> None:
    # Worked, the web of type (a) above with a = 250 mm: k_F = 6 + 2 (500 / 250)^2 = 14;
    # F_cr = 0.9 x 14 x 210000 x 216 / 500 = 1 143 072 N; l_y = a; lambda_F = sqrt(690 000 /
    # 1 143 072) = 0.776941; F_Rd = 0.5 x 690 000 / 0.776941 / 1.1 = 403 682 N
    made = web_crushing(
        0.5,
        web=0.006,
        flange=0.008,
        flange_width=0.12,
        bearing=0.2,
        yield_stress=460e6,
        factor=1.1,
        spacing=0.25,
    )
    assert made.loaded_length == 0.25
    assert made.resistance == pytest.approx(403_682, rel=1e-5)


def test_thick_flange_at_an_end_spreads_by_eq_6_11() -> None:
    # Worked: h_w 800, t_w 4, t_f 16, b_f 200, s_s 20 mm, c = 0, f_y 960 MPa: k_F = 2.15;
    # l_e = 4.7031 mm; m_1 = 50; m_2 = 50; l_y = 4.7031 + 16 sqrt(25 + 0.0864 + 50) = 143.346 mm,
    # less than 372.0 mm by (6.10) and 164.7 mm by (6.12)
    made = web_crushing(
        0.8,
        web=0.004,
        flange=0.016,
        flange_width=0.2,
        bearing=0.02,
        yield_stress=960e6,
        factor=1.1,
        from_end=0.0,
    )
    assert made.loaded_length == pytest.approx(0.143346, rel=1e-4)


def test_stiff_bearing_longer_than_the_web_is_high_counts_as_high() -> None:
    # 6.3(1): s_s is not more than h_w.
    shape = properties(box(0.3, width=0.3, top=0.008, bottom=0.008, web=0.006))
    long, high = (
        crushing_resistance(shape, side="top", bearing=s_s, yield_stress=460e6, factor=1.1)
        for s_s in (0.5, 0.284)
    )
    assert long.resistance == pytest.approx(high.resistance)


@pytest.mark.parametrize(
    ("slenderness", "share"), [(0.4, 1.0), (0.83, 1.0), (1.0, 0.83), (1.66, 0.5), (4.15, 0.2)]
)
def test_slender_web_bears_the_share_of_table_5_1_in_shear(
    slenderness: float, share: float
) -> None:
    # Non-rigid end posts, eta = 1: 1 up to 0.83, then 0.83 / lambda_w.
    assert shear_reduction(slenderness) == pytest.approx(share)


def test_long_web_without_stiffeners_buckles_in_shear_at_its_elastic_stress() -> None:
    # lambda_w = 0.76 sqrt(f_y / tau_cr), eq. (5.3), with tau_cr = 5.34 sigma_E and
    # sigma_E = 190 000 (t / h_w)^2 MPa, Annex A.1: two ways that the standard gives for one number,
    # with constants of two and three figures (0.76, 190 000, 37.4).
    web = 600.0 / 6.0
    critical = 5.34 * 190_000.0 / web**2
    made = shear_slenderness(0.6, thickness=0.006, yield_stress=690e6)
    assert made == pytest.approx(0.76 * sqrt(690.0 / critical), rel=2e-3)


def test_each_plate_of_a_box_bears_its_own_shear_stress() -> None:
    # Worked: webs 500 x 5 mm between the plates, S690, gamma 1.1: epsilon = sqrt(235 / 690) =
    # 0.583592; lambda_w = 100 / (37.4 x 0.583592 x 2.310844) = 1.98266; chi = 0.83 / 1.98266 =
    # 0.418630; 0.418630 x 690 / (1.732051 x 1.1) = 151.61 MPa. Top and bottom 190 x 10 mm:
    # lambda_w = 0.3767, whole, 362.16 MPa.
    shape = properties(box(0.52, width=0.2, top=0.01, bottom=0.01, web=0.005))
    borne = shear_strengths(shape, yield_stress=690e6, factor=1.1)
    assert sorted(borne / 1e6) == pytest.approx([151.61, 151.61, 362.16, 362.16], rel=1e-4)


@pytest.mark.parametrize(
    ("sheared", "bent", "used"), [(0.5, 0.9, 0.0), (0.75, 0.6, 0.85), (1.0, 0.3, 1.3)]
)
def test_bending_and_shear_share_the_section_by_eq_7_1(
    sheared: float, bent: float, used: float
) -> None:
    # eta_1 + (1 - M_f,Rd / M_pl,Rd)(2 eta_3 - 1)^2 with no flanges; only above eta_3 = 0.5.
    found = beside_bending(np.array(sheared), bending_utilisation=np.array(bent))
    assert found == pytest.approx(used)
