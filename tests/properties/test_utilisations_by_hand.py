"""Every limit's use is what acts over what is allowed: each one by hand, section by section.

The forces are those of the state, which other tests hold against free bodies; the strengths are
worked here from the machine's own figures and the rule's factors.
"""

from dataclasses import replace
from functools import lru_cache
from math import sqrt

import numpy as np
import pytest
from making import invented_crane, set_up_by_hand

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM, Disturbances, Pad, Section
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.sections.effective_section import effective_section
from boomsim.mechanics.sections.elastic_stress import normal_stress, shear_stress
from boomsim.mechanics.sections.patch_loading import crushing_resistance
from boomsim.mechanics.sections.section_properties import Properties, properties
from boomsim.mechanics.sections.section_resistance import plate_utilisation
from boomsim.rating.lift_response import Response, bear, respond
from boomsim.rating.limits.plate_buckling import buckling_utilisation
from boomsim.rating.limits.shear_buckling import SHEAR_BUCKLING
from boomsim.rating.limits.yielding import stress_components

CRANE = invented_crane()
RESISTANCE = 1.5
"""Yield over 1.5: the rule named "share" [1]."""

PULLED = Disturbances(side_pull=0.03)
SECTIONS = range(len(CRANE.boom.sections))


@lru_cache
def hung(pulled: bool, angle: float = 1.0) -> Response:
    setup = set_up_by_hand(CRANE, disturbances=PULLED if pulled else CALM)
    boom = condense(CRANE, extension=np.array([[1.0, 0.6, 0.9]]))
    return respond(setup, boom=boom, load=np.array([[9000.0]]), angle=np.array([[angle]]))


@lru_cache
def thin_webbed(share: float, pulled: bool) -> Response:
    """The crane with webs of a share of their thickness, its masses left as they are."""

    def thinner(section: Section) -> Section:
        bottom, web, top, other = section.profile.thickness
        thickness = (bottom, share * web, top, share * other)
        return replace(section, profile=replace(section.profile, thickness=thickness))

    boom = replace(CRANE.boom, sections=tuple(thinner(s) for s in CRANE.boom.sections))
    setup = set_up_by_hand(replace(CRANE, boom=boom), disturbances=PULLED if pulled else CALM)
    cut = condense(setup.machine, extension=np.array([[1.0, 0.6, 0.9]]))
    return respond(setup, boom=cut, load=np.array([[9000.0]]), angle=np.array([[1.0]]))


def utilisation(at: Response, name: str, section: int | None = None) -> float:
    keys = [(limit.name, limit.section) for limit in at.limits]
    return float(at.utilisation[keys.index((name, section)), 0, 0])


def own(section: int) -> slice:
    return slice(section * PER_SECTION, (section + 1) * PER_SECTION)


def at_corners(shape: Properties) -> list[tuple[float, float]]:
    """Corners of the rectangle round a box."""
    return [(z, y) for z in (-shape.left, shape.right) for y in (-shape.bottom, shape.top)]


@pytest.mark.parametrize("angle", [0.9, 1.38])
@pytest.mark.parametrize("pulled", [False, True])
@pytest.mark.parametrize("section", SECTIONS)
def test_stress_is_that_of_the_worst_corner(section: int, pulled: bool, angle: float) -> None:
    # A steep boom is pressed so much that its bottom governs, thick as it is; a flatter one's top.
    at, cut = hung(pulled, angle), own(section)
    forces, made = at.factored_forces, CRANE.boom.sections[section]
    shape = properties(made.profile)
    normal = normal_stress(
        shape,
        axial=forces.axial[0, cut, 0],
        moment_y=forces.moment[0, cut, 0],
        moment_z=forces.moment_side[0, cut, 0],
        points=at_corners(shape),
    ).total
    # Two webs carry the shear force, the closed cell the torsion (Bredt); the thinnest wall counts.
    thinnest = min(plate.thickness for plate in shape.plates)
    bottom, web, top, _ = (plate.thickness for plate in shape.plates)
    webs = 2.0 * web * (shape.outer_height - (bottom + top) / 2.0)
    shear = np.abs(forces.shear[0, cut, 0]) / webs
    shear = shear + np.abs(forces.torsion[0, cut, 0]) / (2.0 * shape.enclosed_area * thinnest)
    worst = np.sqrt(np.max(np.abs(normal), axis=1) ** 2 + 3.0 * shear**2).max()
    allowed = made.material.yield_stress / RESISTANCE
    # A web counts from midline to midline here as there: rounding only.
    assert utilisation(at, "stress", section) == pytest.approx(worst / allowed, rel=1e-9)


@pytest.mark.parametrize("angle", [0.9, 1.38])
@pytest.mark.parametrize("pulled", [False, True])
@pytest.mark.parametrize("section", SECTIONS)
def test_shares_of_a_stress_are_those_at_the_worst_corner(
    section: int, pulled: bool, angle: float
) -> None:
    at, made = hung(pulled, angle), CRANE.boom.sections[section]
    shape, allowed = properties(made.profile), made.material.yield_stress / RESISTANCE
    for station in range(own(section).start, own(section).stop):
        shares = stress_components(
            at.factored_forces, station=station, section=section, bear=bear(at.setup)
        )
        n, m_y, m_z = (
            float(force[0, station, 0])
            for force in (
                at.factored_forces.axial,
                at.factored_forces.moment,
                at.factored_forces.moment_side,
            )
        )
        normal = normal_stress(
            shape, axial=n, moment_y=m_y, moment_z=m_z, points=at_corners(shape)
        ).total
        worst = float(np.abs(normal).max()) / allowed
        # What shear adds is what is left, so that the shares add up.
        told = shares["axial force"] + shares["bending"] + shares["sideways bending"]
        assert told == pytest.approx(worst, rel=1e-9)
        assert shares["shear"] >= -1e-12
        assert abs(shares["axial force"]) == pytest.approx(abs(n) / shape.area / allowed)


@pytest.mark.parametrize("pulled", [False, True])
@pytest.mark.parametrize("section", SECTIONS)
def test_plate_buckling_is_eq_4_15_at_the_worst_station(section: int, pulled: bool) -> None:
    at, cut = hung(pulled), own(section)
    forces, made = at.factored_forces, CRANE.boom.sections[section]
    left = effective_section(
        properties(made.profile),
        yield_stress=made.material.yield_stress,
        modulus=made.material.modulus,
    )
    worked = plate_utilisation(
        left,
        axial=forces.axial[0, cut, 0],
        moment_y=forces.moment[0, cut, 0],
        moment_z=forces.moment_side[0, cut, 0],
        strength=made.material.yield_stress / RESISTANCE,
    )
    # One formula on both sides: rounding only.
    assert utilisation(at, "plate buckling", section) == pytest.approx(worked.total.max())


@pytest.mark.parametrize("thin", [1.0, 0.4])
@pytest.mark.parametrize("pulled", [False, True])
@pytest.mark.parametrize("section", SECTIONS)
def test_shear_buckling_is_that_of_the_worst_plate_or_of_what_bending_leaves_of_it(
    section: int, pulled: bool, thin: float
) -> None:
    at = thin_webbed(thin, pulled)
    cut, made = own(section), at.setup.machine.boom.sections[section]
    shape, forces = properties(made.profile), at.factored_forces
    stress = shear_stress(
        shape,
        torque=forces.torsion[0, cut, 0],
        shear_y=forces.shear[0, cut, 0],
        shear_z=forces.shear_side[0, cut, 0],
    ).total
    yielding = made.material.yield_stress / RESISTANCE / sqrt(3.0)
    epsilon = sqrt(235e6 / made.material.yield_stress)
    borne = [
        yielding * min(1.0, 0.83 * 37.4 * epsilon * sqrt(5.34) * plate.thickness / plate.width)
        for plate in shape.plates
    ]
    sheared = (stress / borne).max(axis=1)
    bent = buckling_utilisation(forces, bear=bear(at.setup))[0, cut, 0]
    both = np.where(sheared > 0.5, bent + (2.0 * sheared - 1.0) ** 2, 0.0)
    found = utilisation(at, "shear buckling", section)
    # One formula on both sides: rounding only.
    assert found == pytest.approx(np.maximum(sheared, both).max())
    worst = int(np.argmax(np.maximum(sheared, both))) + cut.start
    shares = SHEAR_BUCKLING.components(forces, station=worst, section=section, bear=bear(at.setup))
    assert sum(shares.values()) == pytest.approx(found)


def bearing(pad: Pad | None) -> float:
    """What a pair of pads bears [N]."""
    assert pad is not None
    return 2.0 * pad.length * pad.width * pad.pressure


@pytest.mark.parametrize("section", SECTIONS[1:])
def test_pads_and_locks_bear_the_forces_of_the_joint(section: int) -> None:
    at, made = hung(False), CRANE.boom.sections[section]
    front, rear = (abs(f[0, section, 0]) for f in (at.forces.front_pad, at.forces.rear_pad))
    assert utilisation(at, "front pad", section) == pytest.approx(front / bearing(made.front_pad))
    assert utilisation(at, "rear pad", section) == pytest.approx(rear / bearing(made.rear_pad))
    assert made.lock is not None
    thrust = abs(at.forces.lock[0, section, 0])
    assert utilisation(at, "lock", section) == pytest.approx(
        thrust * RESISTANCE / made.lock.strength
    )


@pytest.mark.parametrize("section", SECTIONS[1:])
def test_a_front_pad_crushes_the_bottom_inside_and_a_rear_pad_the_top_outside(section: int) -> None:
    at, made = hung(False), CRANE.boom.sections[section]
    crushing = []
    for carried, side, pad, force in (
        (made, "bottom", made.front_pad, at.forces.front_pad),
        (CRANE.boom.sections[section - 1], "top", made.rear_pad, at.forces.rear_pad),
    ):
        assert pad is not None
        strength = crushing_resistance(
            properties(carried.profile),
            side=side,
            bearing=pad.length,
            yield_stress=carried.material.yield_stress,
            factor=RESISTANCE,
        )
        crushing.append(abs(force[0, section, 0]) / strength.resistance)
    assert utilisation(at, "web crushing", section) == pytest.approx(max(crushing))


@pytest.mark.parametrize("pulled", [False, True])
@pytest.mark.parametrize("section", SECTIONS[1:])
def test_a_front_pad_presses_the_plate_that_bending_compresses(section: int, pulled: bool) -> None:
    # EN 1993-1-5 (7.2) at the mouth, where a drooping section is bent most: eta_1 is the largest of
    # the whole section there. The rear pad presses the outer section's top, which is stretched.
    at, made = hung(pulled), CRANE.boom.sections[section]
    cut, mouth = own(section), at.boom.stations.at_mouth[0, section]
    moment = at.factored_forces.moment[0, cut, 0]
    assert moment[mouth - cut.start] == moment.min() < 0.0
    front, rear = (
        float(f[0, section, 0]) for f in (at.factored_forces.front_pad, at.factored_forces.rear_pad)
    )
    assert min(front, rear) > 0.0
    assert made.front_pad is not None
    webs = crushing_resistance(
        properties(made.profile),
        side="bottom",
        bearing=made.front_pad.length,
        yield_stress=made.material.yield_stress,
        factor=RESISTANCE,
    ).resistance
    bending = utilisation(at, "plate buckling", section)
    if pulled:  # sideways the largest use may stand elsewhere
        bending = max(
            buckling_utilisation(at.factored_forces, bear=bear(at.setup))[0, mouth : mouth + 2, 0]
        )
    found = utilisation(at, "crushing with bending", section)
    assert found == pytest.approx((front / webs + 0.8 * bending) / 1.4)
    assert utilisation(at, "web crushing", section) <= found * 1.4


def test_what_a_maker_permits_is_compared_with_what_acts() -> None:
    at, load = hung(False), 9000.0
    cylinder, line = float(at.forces.cylinder[0, 0]), float(at.state.line_pull[0, 0])
    assert utilisation(at, "luffing cylinder") == pytest.approx(
        abs(cylinder) / CRANE.cylinder.strength
    )
    assert utilisation(at, "line pull") == pytest.approx(line / CRANE.hoist.line_pull)
    turning = sum(
        float(mass) * float(out[0, 0])
        for mass, out in zip(at.placed.mass[: at.placed.turning], at.placed.out, strict=True)
    )
    moment = GRAVITY * (turning + load * float(at.placed.head_out[0, 0]))
    assert utilisation(at, "slewing ring") == pytest.approx(abs(moment) / CRANE.ring.moment)


@pytest.mark.parametrize("pulled", [False, True])
def test_tipping_is_used_by_the_load_over_85_percent_of_the_least_tipping_load(
    pulled: bool,
) -> None:
    at = hung(pulled)
    assert utilisation(at, "tipping") == pytest.approx(
        9000.0 / (0.85 * at.balance.tipping_load.min())
    )
