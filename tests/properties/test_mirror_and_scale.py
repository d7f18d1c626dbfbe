"""What must not depend on which side is left, nor on the units of length and force.

Scaling: with all lengths times k and all forces times f (so stresses times f/k2, moments times f k;
masses times f, gravity being what it is), every angle and every utilisation stays and capacities
grow by f.
"""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from making import invented_crane, set_up_by_hand

from boomsim.machine.model import (
    CALM,
    Boom,
    Disturbances,
    Machine,
    Material,
    Pad,
    Section,
    Support,
)
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import Response, respond

few = settings(max_examples=12, deadline=None, derandomize=True)
CRANE = invented_crane()
fractions = st.lists(st.floats(0.0, 1.0), min_size=3, max_size=3)


def lifted(
    out: list[float], slew: float, *, load: float = 3000.0, change: Disturbances = CALM
) -> Response:
    setup = set_up_by_hand(CRANE, slew=slew, disturbances=change)
    boom = condense(CRANE, extension=np.array([out]))
    return respond(setup, boom=boom, load=np.array([[load]]), angle=np.array([[0.9]]))


@few
@given(fractions, st.floats(-np.pi, np.pi))
def test_right_and_left_of_a_symmetric_crane_are_the_same(out: list[float], slew: float) -> None:
    right, left = lifted(out, slew), lifted(out, -slew)
    assert left.utilisation == pytest.approx(right.utilisation, rel=1e-12)
    assert left.balance.least == pytest.approx(right.balance.least, rel=1e-12)


@few
@given(fractions, st.floats(-np.pi, np.pi), st.floats(0.01, 0.05), st.floats(0.005, 0.02))
def test_a_pull_and_a_lean_to_the_other_side_mirror_everything(
    out: list[float], slew: float, pull: float, lean: float
) -> None:
    here = Disturbances(side_pull=pull, lean_across=lean, lean=0.01)
    there = replace(here, side_pull=-pull, lean_across=-lean)
    one_way, other_way = lifted(out, slew, change=here), lifted(out, -slew, change=there)
    assert other_way.utilisation == pytest.approx(one_way.utilisation, rel=1e-9)
    for name in ("moment_side", "front_pad_side", "rear_pad_side", "torsion", "shear_side"):
        mirrored = -getattr(other_way.forces, name)
        assert mirrored == pytest.approx(getattr(one_way.forces, name), rel=1e-9, abs=1e-6)
    assert other_way.state.head_left == pytest.approx(-one_way.state.head_left, rel=1e-9)


def test_front_and_rear_of_this_crane_are_not_the_same() -> None:
    # So that the mirror tests above are no accident of a crane that is the same all around.
    over_rear, over_front = lifted([0.5, 0.5, 0.5], 0.0), lifted([0.5, 0.5, 0.5], np.pi)
    assert over_rear.balance.least[0, 0] != pytest.approx(over_front.balance.least[0, 0], rel=1e-3)


def scaled(machine: Machine, k: float, f: float) -> Machine:
    """All lengths times k, all forces and masses times f."""
    cylinder, hoist, ring = machine.cylinder, machine.hoist, machine.ring
    return replace(
        machine,
        boom=_boom(machine.boom, k, f),
        heel_out=k * machine.heel_out,
        heel_up=k * machine.heel_up,
        cylinder=replace(
            cylinder,
            base_out=k * cylinder.base_out,
            base_up=k * cylinder.base_up,
            attach_along=k * cylinder.attach_along,
            attach_below=k * cylinder.attach_below,
            strength=f * cylinder.strength,
            mass=f * cylinder.mass,
        ),
        hoist=replace(
            hoist,
            winch_out=k * hoist.winch_out,
            winch_up=k * hoist.winch_up,
            line_pull=f * hoist.line_pull,
        ),
        ring=replace(ring, moment=f * k * ring.moment, up=k * ring.up),
        carrier=tuple(
            replace(p, mass=f * p.mass, x=k * p.x, y=k * p.y, z=k * p.z) for p in machine.carrier
        ),
        superstructure=tuple(
            replace(p, mass=f * p.mass, out=k * p.out, up=k * p.up) for p in machine.superstructure
        ),
        counterweights=tuple(
            replace(p, mass=f * p.mass, out=k * p.out, up=k * p.up) for p in machine.counterweights
        ),
        supports=tuple(_support(s, k) for s in machine.supports),
    )


def _boom(boom: Boom, k: float, f: float) -> Boom:
    head = boom.head
    return replace(
        boom,
        sections=tuple(_section(s, k, f) for s in boom.sections),
        head=replace(
            head,
            ahead=k * head.ahead,
            below=k * head.below,
            rope_above=k * head.rope_above,
            mass=f * head.mass,
        ),
    )


def _section(section: Section, k: float, f: float) -> Section:
    stress, profile = f / k**2, section.profile
    return replace(
        section,
        profile=replace(
            profile,
            corners=tuple((k * z, k * y) for z, y in profile.corners),
            thickness=tuple(k * t for t in profile.thickness),
        ),
        material=Material(
            yield_stress=stress * section.material.yield_stress,
            modulus=stress * section.material.modulus,
        ),
        length=k * section.length,
        mass=f * section.mass,
        stroke=k * section.stroke,
        nose=k * section.nose,
        least_overlap=k * section.least_overlap,
        clearance=k * section.clearance,
        front_pad=section.front_pad and _pad(section.front_pad, k, stress),
        rear_pad=section.rear_pad and _pad(section.rear_pad, k, stress),
        lock=section.lock and replace(section.lock, strength=f * section.lock.strength),
    )


def _pad(pad: Pad, k: float, stress: float) -> Pad:
    return Pad(length=k * pad.length, width=k * pad.width, pressure=stress * pad.pressure)


def _support(support: Support, k: float) -> Support:
    return replace(support, points=tuple((k * x, k * y) for x, y in support.points))


@pytest.mark.slow
@few
@given(st.floats(0.2, 5.0), st.floats(0.1, 10.0), fractions)
def test_a_model_of_the_crane_is_rated_like_the_crane(k: float, f: float, out: list[float]) -> None:
    # Yield and modulus enter plate buckling as a ratio only, so their limits scale too.
    model, radii = scaled(CRANE, k, f), np.array([6.0, 11.0, 16.0, 22.0])
    for rule in ("share", "limit-states"):
        full = rate(set_up_by_hand(CRANE, rule=rule), extension=np.array([out]), radius=radii)
        small = rate(set_up_by_hand(model, rule=rule), extension=np.array([out]), radius=k * radii)
        # Both are found to 1e-6 of themselves.
        assert small.capacity == pytest.approx(f * full.capacity, rel=5e-6, nan_ok=True)
        assert small.angle == pytest.approx(full.angle, abs=1e-5, nan_ok=True)
        assert small.tip_deflection == pytest.approx(
            k * full.tip_deflection, rel=2e-5, abs=k * 1e-5, nan_ok=True
        )
        assert small.utilisation == pytest.approx(full.utilisation, rel=1e-5, abs=1e-6, nan_ok=True)
        assert np.isfinite(full.capacity).any()
