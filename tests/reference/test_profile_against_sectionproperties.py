"""Section properties against the sectionproperties library, which meshes the solid wall.

The wall is built here from half planes, apart from the package's own outlines: the outside is
what lies within every plate's outer face, the inside what lies within every inner face.

Source: sectionproperties: meshed cross-sections. Status: reference program.
"""

import math
import random
from functools import cache

import numpy as np
import pytest
from programs import program

from boomsim.machine.model import Profile
from boomsim.machine.shapes.box import box
from boomsim.machine.shapes.polygon import polygon
from boomsim.machine.shapes.tube import tube
from boomsim.mechanics.sections.elastic_stress import normal_stress, shear_stress
from boomsim.mechanics.sections.section_properties import properties

Section = program("sectionproperties.analysis").Section
Geometry = program("sectionproperties.pre").Geometry
Polygon = program("shapely").Polygon
rectangle = program("shapely.geometry").box

# Six-node triangles integrate straight-sided areas and second moments to rounding.
ROUNDING = 1e-9


def half_plane(start: tuple[float, float], end: tuple[float, float], offset: float) -> Polygon:
    """Large rectangle on the left of a line moved to its right."""
    along = np.subtract(end, start) / math.dist(start, end)
    right = np.array([along[1], -along[0]])
    base = np.array(start) + offset * right
    far = 100.0
    low, high = base - far * along, base + far * along
    return Polygon([low, high, high - far * right, low - far * right])


def wall(profile: Profile) -> Polygon:
    """Solid wall of a convex profile whose corners run anticlockwise."""
    outside, inside = rectangle(-50, -50, 50, 50), rectangle(-50, -50, 50, 50)
    corners = profile.corners
    for k, t in enumerate(profile.thickness):
        ends = corners[k], corners[(k + 1) % len(corners)]
        outside = outside.intersection(half_plane(*ends, t / 2.0))
        inside = inside.intersection(half_plane(*ends, -t / 2.0))
    return outside.difference(inside)


@cache
def meshed(profile: Profile, *, warping: bool = False) -> Section:
    solid = wall(profile)
    geometry = Geometry(solid).create_mesh(mesh_sizes=[solid.area / 400.0])
    section = Section(geometry)
    section.calculate_geometric_properties()
    if warping:
        section.calculate_warping_properties()
    return section


def random_box(draw: random.Random) -> Profile:
    height = draw.uniform(0.2, 1.2)
    return box(
        height,
        width=height * draw.uniform(0.4, 1.2),
        top=height * draw.uniform(0.008, 0.03),
        bottom=height * draw.uniform(0.008, 0.03),
        web=height * draw.uniform(0.006, 0.02),
    )


def random_polygon(draw: random.Random, *, even: bool) -> Profile:
    """Symmetric, with a flat top and bottom and folds on both sides; one thickness if even."""
    half_height, half_width = draw.uniform(0.15, 0.5), draw.uniform(0.15, 0.4)
    plates = draw.randint(3, 6)
    turns = np.cumsum([0.0, *(draw.uniform(6.0, 30.0) for _ in range(plates))])
    turns = np.radians(-80.0 + 160.0 * turns / turns[-1])
    right = [(half_width * math.cos(a), half_height * math.sin(a)) for a in turns]
    left = [(-z, y) for z, y in reversed(right)]
    lower, upper = (0.012, 0.012) if even else (0.008, 0.016)
    side = [half_height * 2 * draw.uniform(lower, upper) for _ in range(plates)]
    if even:
        return polygon([*right, *left], thickness=side[0])
    top, bottom = side[0], side[-1]
    return polygon([*right, *left], thickness=[*side, top, *reversed(side), bottom])


def of_seeds(kind: str, count: int) -> list[Profile]:
    draws = [random.Random(f"{kind} {seed}") for seed in range(count)]
    if kind == "box":
        return [random_box(draw) for draw in draws]
    return [random_polygon(draw, even=kind == "even") for draw in draws]


MITRED = [*of_seeds("box", 5), *of_seeds("even", 4), tube(0.6, wall=0.012)]
STEPPED = of_seeds("uneven", 4)


@pytest.mark.parametrize("profile", MITRED)
def test_area_and_second_moments_are_those_of_the_meshed_wall(profile: Profile) -> None:
    made, section = properties(profile), meshed(profile)
    i_y, i_z, _ = section.get_ic()
    assert made.area == pytest.approx(section.get_area(), rel=ROUNDING)
    assert made.centroid == pytest.approx(section.get_c(), abs=ROUNDING)
    assert made.i_y == pytest.approx(i_y, rel=ROUNDING)
    assert made.i_z == pytest.approx(i_z, rel=ROUNDING)
    assert abs(made.product_of_inertia) < ROUNDING * made.i_y


@pytest.mark.parametrize("profile", MITRED)
def test_fibres_and_section_moduli_are_those_of_the_meshed_wall(profile: Profile) -> None:
    made, section = properties(profile), meshed(profile)
    above, below, right, left = section.get_z()
    found = made.modulus_top, made.modulus_bottom, made.modulus_right, made.modulus_left
    assert found == pytest.approx((above, below, right, left), rel=ROUNDING)
    across, low, far, high = wall(profile).bounds
    assert made.outer_width == pytest.approx(far - across, rel=ROUNDING)
    assert made.outer_height == pytest.approx(high - low, rel=ROUNDING)
    hole = Polygon(wall(profile).interiors[0]).bounds
    assert made.inner_width == pytest.approx(hole[2] - hole[0], rel=ROUNDING)
    assert made.inner_height == pytest.approx(hole[3] - hole[1], rel=ROUNDING)


@pytest.mark.parametrize("profile", STEPPED)
def test_step_between_unequal_plates_changes_the_section_little(profile: Profile) -> None:
    # At a gentle fold of unequal plates the package steps where the half planes run to a long
    # mitre: a sliver of the thickness difference, a thousandth of the section.
    made, section = properties(profile), meshed(profile)
    i_y, i_z, _ = section.get_ic()
    assert made.area == pytest.approx(section.get_area(), rel=1e-3)
    assert made.i_y == pytest.approx(i_y, rel=1e-3)
    assert made.i_z == pytest.approx(i_z, rel=1e-3)


@pytest.mark.slow
@pytest.mark.parametrize("profile", [*MITRED, *STEPPED])
def test_bredt_is_a_little_under_the_warping_solution_of_the_wall(profile: Profile) -> None:
    # Thin-wall theory leaves out the plates' own torsion and the solid corners: order t / h.
    share = properties(profile).torsion_constant / meshed(profile, warping=True).get_j()
    assert 0.98 < share < 1.0


def at_neutral_axis(profile: Profile, stress: str, **action: float) -> float:
    """Mean stress of the mesh across the webs at the centroid's height."""
    section = meshed(profile, warping=True)
    height = section.get_c()[1]
    near = np.abs(section.mesh["vertices"][:, 1] - height) < 0.02 * properties(profile).outer_height
    found = np.abs(section.calculate_stress(**action).get_stress()[0][stress][near])
    return float(found.mean())


@pytest.mark.slow
def test_shear_force_peaks_over_the_average_of_a_box_by_no_more_than_a_quarter() -> None:
    # The average V / (2 h t) leaves out the parabola: the narrower the flange, the steeper.
    for profile in of_seeds("box", 5):
        peak = at_neutral_axis(profile, "sig_zxy_v", vy=1e5)
        made = shear_stress(properties(profile), torque=0.0, shear_y=1e5, shear_z=0.0)
        assert 1.0 < peak / made.total[1] < 1.25


def test_shear_force_on_a_thin_tube_peaks_at_the_stress_of_its_upright_plates() -> None:
    # tau = V / (pi R t) at the sides; a wall of D / 50 is thin to about 1 %.
    profile = tube(0.6, wall=0.012)
    peak = at_neutral_axis(profile, "sig_zxy_v", vy=1e5)
    made = shear_stress(properties(profile), torque=0.0, shear_y=1e5, shear_z=0.0)
    assert made.total.max() == pytest.approx(peak, rel=0.01)


def test_torque_on_a_box_shears_the_wall_by_bredt() -> None:
    # On the mean through the wall; the stress at the faces differs by t / h, up to 2 %.
    for profile in of_seeds("box", 3):
        mean = at_neutral_axis(profile, "sig_zxy_mzz", mzz=1e5)
        made = shear_stress(properties(profile), torque=1e5, shear_y=0.0, shear_z=0.0)
        assert made.total[1] == pytest.approx(mean, rel=0.02)


@pytest.mark.parametrize("profile", MITRED[:7])
def test_normal_stress_at_the_corners_is_that_of_the_mesh(profile: Profile) -> None:
    # The library counts m_xx as stretching positive y, m_yy as compressing positive x; here
    # both moments compress the positive side. A millionth, and a pascal where it is nought.
    made, section = properties(profile), meshed(profile)
    stress = section.calculate_stress(n=2e5, mxx=3e5, myy=-1e5)
    found = stress.get_stress()[0]["sig_zz"]
    vertices = section.mesh["vertices"]
    corners = np.add(made.corners, made.centroid)
    nearest = [int(np.argmin(np.hypot(*(vertices - corner).T))) for corner in corners]
    ours = normal_stress(made, axial=2e5, moment_y=-3e5, moment_z=-1e5)
    assert ours.total == pytest.approx(found[nearest], rel=1e-6, abs=1.0)
