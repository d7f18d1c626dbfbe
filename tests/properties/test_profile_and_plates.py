"""What holds for any profile: scaling, mirror images, limits, and sums of stresses."""

from math import pi

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boomsim.machine.model import Profile
from boomsim.machine.shapes.box import box
from boomsim.machine.shapes.polygon import polygon
from boomsim.machine.shapes.tube import tube
from boomsim.mechanics.sections.effective_section import effective_section
from boomsim.mechanics.sections.elastic_stress import (
    fibre_points,
    normal_stress,
    shear_stress,
    von_mises,
)
from boomsim.mechanics.sections.patch_loading import crushing_resistance
from boomsim.mechanics.sections.plate_buckling_factor import (
    buckling_factor,
    effective_widths,
    plate_slenderness,
    reduction,
)
from boomsim.mechanics.sections.section_properties import properties, torsion_shear_stress
from boomsim.mechanics.sections.section_resistance import plate_utilisation

thickness = st.floats(0.004, 0.02)
size = st.floats(0.25, 1.2)
yields = st.sampled_from([235e6, 460e6, 690e6, 960e6])
boxes = st.builds(box, size, width=size, top=thickness, bottom=thickness, web=thickness)
forces = st.floats(-1e6, 1e6)


def scaled(profile: Profile, by: float) -> Profile:
    corners = tuple((by * z, by * y) for z, y in profile.corners)
    return Profile(corners=corners, thickness=tuple(by * t for t in profile.thickness))


def upside_down(profile: Profile) -> Profile:
    return Profile(corners=tuple((z, -y) for z, y in profile.corners), thickness=profile.thickness)


def moved(profile: Profile, z: float, y: float) -> Profile:
    return Profile(
        corners=tuple((a + z, b + y) for a, b in profile.corners), thickness=profile.thickness
    )


@given(boxes, st.floats(0.1, 10.0))
def test_scaling_a_profile_scales_each_property_by_its_power(profile: Profile, by: float) -> None:
    one, other = properties(profile), properties(scaled(profile, by))
    assert other.area == pytest.approx(one.area * by**2)
    assert other.i_y == pytest.approx(one.i_y * by**4)
    assert other.modulus_top == pytest.approx(one.modulus_top * by**3)
    assert other.torsion_constant == pytest.approx(one.torsion_constant * by**4)
    assert other.plates[1].slenderness == pytest.approx(one.plates[1].slenderness)


@given(boxes, st.floats(0.5, 2.0), yields)
def test_plate_buckling_does_not_know_the_scale(
    profile: Profile, by: float, yield_stress: float
) -> None:
    one = effective_section(properties(profile), yield_stress=yield_stress)
    other = effective_section(properties(scaled(profile, by)), yield_stress=yield_stress)
    assert other.area == pytest.approx(one.area * by**2)
    assert other.drooping.modulus == pytest.approx(one.drooping.modulus * by**3)
    assert other.sideways.modulus == pytest.approx(one.sideways.modulus * by**3)


@given(boxes, yields)
def test_turning_a_profile_over_swaps_top_and_bottom(profile: Profile, yield_stress: float) -> None:
    one, other = properties(profile), properties(upside_down(profile))
    assert (other.top, other.bottom) == pytest.approx((one.bottom, one.top))
    first = effective_section(one, yield_stress=yield_stress)
    second = effective_section(other, yield_stress=yield_stress)
    assert second.lifting.modulus == pytest.approx(first.drooping.modulus)
    assert second.drooping.modulus == pytest.approx(first.lifting.modulus)
    assert second.shift == pytest.approx(-first.shift, abs=1e-12)
    assert second.area == pytest.approx(first.area)
    on_top = crushing_resistance(
        one, side="top", bearing=0.1, yield_stress=yield_stress, factor=1.1
    )
    below = crushing_resistance(
        other, side="bottom", bearing=0.1, yield_stress=yield_stress, factor=1.1
    )
    assert below.resistance == pytest.approx(on_top.resistance)


@given(boxes, st.floats(-2.0, 2.0), st.floats(-2.0, 2.0))
def test_moving_a_profile_moves_its_centroid_and_nothing_else(
    profile: Profile, z: float, y: float
) -> None:
    one, other = properties(profile), properties(moved(profile, z, y))
    assert other.centroid == pytest.approx((one.centroid[0] + z, one.centroid[1] + y), abs=1e-9)
    assert other.i_y == pytest.approx(one.i_y, rel=1e-7)
    assert other.i_z == pytest.approx(one.i_z, rel=1e-7)


@given(boxes)
def test_corners_given_the_other_way_round_make_the_same_section(profile: Profile) -> None:
    back = Profile(
        corners=profile.corners[::-1],
        thickness=(*profile.thickness[-2::-1], profile.thickness[-1]),
    )
    one, other = properties(profile), properties(back)
    assert other.area == pytest.approx(one.area)
    assert other.i_y == pytest.approx(one.i_y)
    assert other.inner_height == pytest.approx(one.inner_height)
    assert np.array(other.corners[::-1]) == pytest.approx(np.array(one.corners), abs=1e-12)


@given(size, size, thickness, thickness, thickness)
def test_box_is_its_outside_rectangle_less_its_hole(
    height: float, width: float, top: float, bottom: float, web: float
) -> None:
    made = properties(box(height, width=width, top=top, bottom=bottom, web=web))
    clear, inside = height - top - bottom, width - 2 * web
    assert made.area == pytest.approx(height * width - clear * inside)
    assert made.i_z == pytest.approx((height * width**3 - clear * inside**3) / 12)
    assert made.outer_height == pytest.approx(height)
    assert made.inner_height == pytest.approx(clear)
    assert made.outer_width == pytest.approx(width)
    assert made.inner_width == pytest.approx(inside)
    assert made.shear_area_y == pytest.approx(2 * web * (height - (top + bottom) / 2))


@given(st.floats(0.1, 1.5), st.floats(0.005, 0.1))
def test_tube_has_the_area_and_second_moment_of_a_round_one(diameter: float, part: float) -> None:
    wall = part * diameter
    made, bore = properties(tube(diameter, wall=wall)), diameter - 2 * wall
    assert made.area == pytest.approx(pi / 4 * (diameter**2 - bore**2))
    assert made.i_y == pytest.approx(pi / 64 * (diameter**4 - bore**4))
    assert made.i_z == pytest.approx(made.i_y)
    # Flats instead of an arc: 0.3 % in diameter, and twice 0.3 % in the enclosed area.
    assert made.outer_height == pytest.approx(diameter, rel=4e-3)
    assert made.enclosed_area == pytest.approx(pi / 4 * (diameter - wall) ** 2, rel=7e-3)
    assert made.shear_area_y == pytest.approx(made.area / 2, rel=1e-9)


def test_plate_made_of_two_thicknesses_steps_where_they_meet() -> None:
    # Webs 6 mm below and 10 mm above the middle; checked as rectangles between sharp corners.
    corners = [(-0.2, -0.3), (0.2, -0.3), (0.2, 0.0), (0.2, 0.3), (-0.2, 0.3), (-0.2, 0.0)]
    t = [0.008, 0.006, 0.010, 0.008, 0.010, 0.006]
    made = properties(polygon(corners, thickness=t))
    flanges = 0.008 * (0.406 + 0.410)
    webs = 2 * (0.006 + 0.010) * 0.296
    assert made.area == pytest.approx(flanges + webs)
    assert made.outer_width == pytest.approx(0.410)
    # The corner where they meet is on the thicker plate.
    assert made.corners[2] == pytest.approx((0.205, -made.centroid[1]), abs=1e-12)
    assert [p.width for p in made.plates] == pytest.approx(
        [0.394, 0.296, 0.296, 0.390, 0.296, 0.296]
    )


@given(boxes, yields)
def test_buckling_only_takes_away(profile: Profile, yield_stress: float) -> None:
    shape = properties(profile)
    made = effective_section(shape, yield_stress=yield_stress)
    assert 0.0 < made.area <= shape.area
    assert 0.0 < made.drooping.second_moment <= shape.i_y * (1 + 1e-12)
    assert 0.0 < made.sideways.modulus <= shape.modulus_right * (1 + 1e-12)
    # Removing area from the compressed side can only move the axis away from it.
    assert made.drooping.shift >= 0.0 >= made.lifting.shift


@given(st.floats(0.1, 0.4), yields)
def test_stocky_box_is_whole_and_its_utilisation_is_its_worst_corner_stress(
    height: float, yield_stress: float
) -> None:
    t = height / 15
    shape = properties(box(height, width=height, top=t, bottom=t, web=t))
    made = effective_section(shape, yield_stress=yield_stress)
    assert made.area == shape.area
    assert made.drooping.modulus == pytest.approx(shape.modulus_bottom)
    utilisation = plate_utilisation(
        made, axial=-2e5, moment_y=-3e4, moment_z=1e4, strength=yield_stress
    )
    stress = normal_stress(shape, axial=-2e5, moment_y=-3e4, moment_z=1e4)
    assert utilisation.total * yield_stress == pytest.approx(-stress.total.min())


@given(st.floats(-3.0, 1.0), st.floats(20.0, 200.0), yields)
def test_thicker_plate_keeps_a_larger_share(psi: float, ratio: float, yield_stress: float) -> None:
    def kept(b_over_t: float) -> float:
        slenderness = plate_slenderness(
            b_over_t, thickness=1.0, yield_stress=yield_stress, stress_ratio=psi
        )
        return reduction(slenderness, stress_ratio=psi)

    assert 0.0 < kept(ratio) <= kept(0.9 * ratio) <= 1.0


@given(st.floats(-2.9, 0.9), st.floats(0.01, 0.1))
def test_more_stretch_makes_a_plate_harder_to_buckle(psi: float, less: float) -> None:
    # The standard rounds at psi = -1, hence a thousandth.
    assert buckling_factor(psi - less) > buckling_factor(psi) * 0.999


@given(st.floats(-3.0, 1.0), st.floats(0.1, 1.0))
def test_effective_widths_add_up_to_the_share_of_the_compressed_width(
    psi: float, rho: float
) -> None:
    compressed = 1.0 if psi >= 0 else 1.0 / (1.0 - psi)
    widths = effective_widths(1.0, stress_ratio=psi, share=rho)
    assert sum(widths) == pytest.approx(rho * compressed)
    assert min(widths) > 0.0


@given(boxes, forces, forces, forces)
def test_normal_stress_holds_the_forces_it_came_from(
    profile: Profile, n: float, m_y: float, m_z: float
) -> None:
    # At a fibre and its opposite, weighted by their distances, bending cancels.
    shape = properties(profile)
    made = normal_stress(shape, axial=n, moment_y=m_y, moment_z=m_z, points=fibre_points(shape))
    top, bottom, left, right = made.total
    mean = (top * shape.bottom + bottom * shape.top) / shape.outer_height
    assert mean * shape.area == pytest.approx(n, abs=1e-3)
    curl = (bottom - top) / shape.outer_height
    assert curl * shape.i_y == pytest.approx(m_y, abs=1e-3)
    assert (left - right) / shape.outer_width * shape.i_z == pytest.approx(m_z, abs=1e-3)


@given(boxes, forces)
def test_torsion_flow_round_the_cell_balances_the_torque(profile: Profile, torque: float) -> None:
    # Sum of tau t times twice the swept area, over midline corners and any point: 2 A_e q.
    shape = properties(profile)
    stress = torsion_shear_stress(shape, torque=torque)
    flow = [tau * t for tau, t in zip(stress, profile.thickness, strict=True)]
    ends = zip(profile.corners, [*profile.corners[1:], profile.corners[0]], strict=True)
    swept = [a[0] * b[1] - b[0] * a[1] for a, b in ends]
    assert np.dot(flow, swept) == pytest.approx(torque, abs=1e-6)


@given(boxes, forces, forces)
def test_transverse_stress_adds_up_to_the_shear_force(
    profile: Profile, shear_y: float, shear_z: float
) -> None:
    shape = properties(profile)
    made = shear_stress(shape, torque=0.0, shear_y=shear_y, shear_z=shear_z)
    low, high = profile.corners[0], profile.corners[2]
    bottom, web, top, _ = profile.thickness
    _, in_web, _, _ = made.total
    assert in_web * 2 * web * (high[1] - low[1]) == pytest.approx(abs(shear_y), abs=1e-6)
    assert made.total[0] * (top + bottom) * (high[0] - low[0]) == pytest.approx(
        abs(shear_z), abs=1e-6
    )


@pytest.mark.parametrize(
    ("normal", "shear", "equivalent"),
    [
        (-5.0, 0.0, 5.0),
        (0.0, 1.0, 1.7320508),  # Shear alone yields at f/sqrt(3), von Mises.
        (3.0, -4.0, 7.5498344),  # sqrt(9 + 48)
    ],
)
def test_the_equivalent_stress_of_one_normal_and_one_shear_stress(
    normal: float, shear: float, equivalent: float
) -> None:
    assert von_mises(normal, shear=shear) == pytest.approx(equivalent, rel=1e-7)


@settings(max_examples=20)
@given(boxes, yields)
def test_arrays_give_what_single_values_give(profile: Profile, yield_stress: float) -> None:
    shape = properties(profile)
    made = effective_section(shape, yield_stress=yield_stress)
    n, m_y, m_z = np.array([-1e5, 2e5]), np.array([[3e4], [-3e4], [0.0]]), 1e4
    utilisation = plate_utilisation(made, axial=n, moment_y=m_y, moment_z=m_z, strength=3e8)
    stress = normal_stress(shape, axial=n, moment_y=m_y, moment_z=m_z)
    tau = shear_stress(shape, torque=n, shear_y=m_y, shear_z=m_z).total
    combined = von_mises(stress.total, shear=tau)
    assert utilisation.total.shape == (3, 2)
    assert stress.total.shape == tau.shape == combined.shape == (3, 2, 4)
    alone = plate_utilisation(made, axial=2e5, moment_y=-3e4, moment_z=1e4, strength=3e8)
    assert utilisation.total[1, 1] == pytest.approx(float(alone.total))
    one = normal_stress(shape, axial=2e5, moment_y=-3e4, moment_z=1e4)
    assert stress.total[1, 1] == pytest.approx(one.total)


@pytest.mark.parametrize(
    ("profile", "word"),
    [
        (polygon([(0, 0), (1, 0)], thickness=0.01), "at least 3 corners"),
        (polygon([(0, 0), (1, 0), (1, 1)], thickness=[0.01, 0.01]), "one thickness"),
        (polygon([(0, 0), (1, 0), (1, 1), (0, 1)], thickness=0.0), "must be positive"),
        (polygon([(0, 0), (1, 0), (1, 1), (0, 1)], thickness=float("nan")), "must be positive"),
        (polygon([(0, 0), (1, 0), (1, 0), (0, 1)], thickness=0.01), "two corners that differ"),
        (polygon([(0, 0), (1, 1), (1, 0), (0, 1)], thickness=0.01), "crosses itself"),
        (box(0.1, width=0.1, top=0.06, bottom=0.06, web=0.01), "no clear width|crosses itself"),
        (box(0.1, width=0.1, top=0.01, bottom=0.01, web=0.06), "no clear width"),
        (polygon([(0, 0), (1, 0), (1, 1), (0.3, 1)], thickness=0.01), "not symmetric"),
        (
            polygon([(0, 0), (1, 0), (1, 1), (0, 1)], thickness=[0.01, 0.01, 0.01, 0.02]),
            "not symmetric",
        ),
    ],
)
def test_what_is_no_boom_section_is_refused_with_a_reason(profile: Profile, word: str) -> None:
    with pytest.raises(ValueError, match=word):
        properties(profile)
