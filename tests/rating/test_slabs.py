"""A crane lifts its own counterweight: by hand, and as its own rating says."""

import json
from dataclasses import replace
from math import radians

import numpy as np
import pytest
from making import RIGID, bare_machine, even_bar, set_up_by_hand
from reeving_by_hand import falls_by_hand

import boomsim as bs
from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass, Deck, Machine, TurningMass
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import set_up
from boomsim.rating.slabs.slab_stages import at_stage, stages
from boomsim.rating.slabs.slabs_sentences import chosen_way, tell_bands, tell_first
from boomsim.rating.slabs.slabs_study import Bands, Slabs, slabs
from boomsim.rating.strategies import configurations_of

STEP = 0.1
"""Between radii that are tried for a crane with rows of a metre [m]."""

LENGTH, SPREAD, CARRIER = 30.0, 3.0, 12_000.0
"""Boom of the bare crane, its tipping lines from the axis [m], its carrier [kg]."""

AHEAD = -2.0
"""Its deck, ahead of the axis [m]."""


def bare_crane(deck: Deck | None) -> Machine:
    """A rigid bar without mass over the axis, too strong to break, with slabs of 1 t and 2 t."""
    strong = [
        replace(section, material=replace(section.material, yield_stress=1e13))
        for section in even_bar(LENGTH, stiffness=RIGID)
    ]
    carrier = (CarrierMass(name="carrier", mass=CARRIER, x=0.0, y=0.0, z=1.0),)
    machine = bare_machine(tuple(strong), lug=1.0, carrier=carrier)
    boom = replace(machine.boom, greatest_angle=radians(89.0))
    choices = [
        TurningMass(name=name, mass=mass, out=-1.0, up=1.0)
        for name, mass in (("all", 3000.0), ("one", 1000.0), ("none", 0.0))
    ]
    return replace(machine, boom=boom, counterweights=tuple(choices), deck=deck)


def bands_by_hand(deck: Deck | None) -> tuple[Bands, ...]:
    setup = set_up_by_hand(bare_crane(deck))
    ways = configurations_of(setup.machine.boom, extension=np.zeros((1, 5)))
    return slabs(setup, ways=ways).bands


def test_a_bare_crane_lifts_its_slabs_as_far_as_the_sum_of_moments_by_hand_says() -> None:
    """0.85 M d = m (R - d): carrier M, slab m. With the first slab s on the deck, 2 m ahead, the
    weakest line is the one in front: 0.85 (M d + s (d - 2)) = m (R - d). It turns over at the same
    without 0.85.

    Tolerance: radii are told in steps of 0.1 m, the greatest rounded down.
    Source: balance of moments. Status: worked.
    """
    first, second = bands_by_hand(Deck(x=AHEAD, y=0.0, z=1.0))
    held = ((first, 1000.0, CARRIER * SPREAD),
            (second, 2000.0, CARRIER * SPREAD + 1000.0 * (SPREAD + AHEAD)))  # fmt: skip
    for bands, slab, moment in held:
        assert bands.stage.gross == slab
        for found, share in ((bands.far[0], 0.85), (bands.tips[0], 1.0)):
            by_hand = SPREAD + share * moment / slab
            if by_hand > LENGTH:
                continue
            assert by_hand - STEP - 1e-6 <= found <= by_hand + 1e-6
    assert bands.far[0] < LENGTH - 1.0


def test_without_a_deck_the_first_slab_hangs_on_the_superstructure_and_pulls_back() -> None:
    """0.85 (M d + c (d + 1)) = m (R - d), with the first slab c one metre behind the axis.

    Tolerance: as above.
    Source: balance of moments. Status: worked.
    """
    second = bands_by_hand(None)[1]
    by_hand = SPREAD + 0.85 * (CARRIER * SPREAD + 1000.0 * (SPREAD + 1.0)) / 2000.0
    assert second.stage.counterweight.name == "one"
    assert by_hand - STEP - 1e-6 <= second.far[0] <= by_hand + 1e-6


@pytest.fixture(scope="module", params=["yard60", "truck18"])
def found(request) -> Slabs:
    return slabs(set_up(load_machine(request.param)))


def gross_by_hand(found: Slabs, bands: Bands, way: int, radius: float) -> float:
    """The slab, hook block and slings, and the falls from the straight boom's head [kg]."""
    setup, length = bands.setup, float(found.ways.length[way])
    rope = falls_by_hand(setup.machine, length=length, radius=float(radius), most=setup.parts)
    return bands.stage.slab + setup.machine.hook_block + setup.machine.slings + rope


@pytest.mark.slow
def test_a_slab_is_rated_at_its_greatest_radius_and_no_farther(found):
    for bands in found.bands:
        for way in np.flatnonzero(np.isfinite(bands.far))[::4]:
            radius = np.array([bands.far[way], bands.far[way] + STEP])
            own = rate(bands.setup, extension=found.ways.extension[way], radius=radius)
            inside, outside = own.capacity[0]
            # Both searches are good to a millionth.
            assert inside >= gross_by_hand(found, bands, way, radius[0]) * (1.0 - 1e-5)
            assert not outside > gross_by_hand(found, bands, way, radius[1]) * (1.0 + 1e-5)


def test_from_where_it_turns_over_the_slab_is_the_tipping_load(found):
    for bands in found.bands:
        for way in np.flatnonzero(np.isfinite(bands.tips))[::4]:
            boom = condense(bands.setup.machine, extension=found.ways.extension[way][None])
            radius = np.array([bands.tips[way], bands.tips[way] + STEP + 1e-6])
            hung = np.array([gross_by_hand(found, bands, way, r) for r in radius])
            at = respond(bands.setup, boom=boom, load=hung[None], radius=radius[None])
            stands, falls = at.balance.least[0] - hung
            # A millionth of the load, for the two angles are found by formulas of their own.
            assert stands >= -1e-6 * hung[0]
            assert falls <= 1e-6 * hung[1]


def test_the_nearest_radius_is_where_the_boom_is_at_its_steepest(found):
    bands = found.bands[0]
    for way in np.flatnonzero(np.isfinite(bands.near))[::4]:
        boom = condense(bands.setup.machine, extension=found.ways.extension[way][None])
        radius = np.array([[bands.near[way], bands.near[way] - STEP]])
        at = respond(bands.setup, boom=boom, load=np.array([[bands.stage.gross]]), radius=radius)
        assert list(at.in_range[0]) == [True, False]


def test_slabs_make_up_the_heaviest_counterweight_and_lie_on_deck_meanwhile():
    setup = set_up(load_machine("yard60"))
    first, second = stages(setup)
    assert (first.slab, second.slab) == (6000.0, 4000.0)
    assert (first.on_deck, second.on_deck) == (0.0, 6000.0)
    own = at_stage(setup, second, support=setup.support)
    assert own.counterweight.mass == 0.0
    assert own.machine.carrier[-1].mass == 6000.0
    assert own.machine.carrier[-1].x == -3.0


def test_a_crane_with_one_counterweight_has_no_slabs():
    machine = load_machine("yard60")
    alone = replace(machine, counterweights=machine.counterweights[:1])
    with pytest.raises(ValueError, match="but one counterweight"):
        slabs(set_up(alone))


def test_the_sentence_names_the_radius_of_a_way_that_reaches_the_deck_too(found):
    said = tell_first(found, units="metric")
    heaviest = max(found.stages, key=lambda stage: stage.slab)
    for bands in found.bands_of(heaviest):
        way = chosen_way(found, bands)
        assert way is not None
        assert bands.near[way] <= found.deck <= bands.far[way]
        assert bands.far[way] == np.nanmax(bands.far[found.reaches_deck(bands)])
        # 12.1 m is told with one decimal, 9.6 m with two.
        digits = 1 if bands.far[way] > 9.99 else 2
        assert f"{bands.far[way]:.{digits}f} m on " in said
        assert tell_bands(found, bands, units="us").endswith((".",))


def test_on_half_outriggers_a_slab_goes_no_farther_than_on_full_ones(found):
    for stage in found.stages:
        full, half, *_ = found.bands_of(stage)
        assert np.all(half.far <= full.far)


def test_the_command_answers_with_the_caution_and_keys(capsys):
    assert main(["slabs", "--support", "half", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["caution"] == CAUTION
    assert [slab["slab"] for slab in told["slabs"]] == [6000.0, 4000.0]
    assert [one["support"] for one in told["slabs"][0]["supports"]] == ["half"]
    assert bs.slabs(support="half").to_dict()["slabs"] == told["slabs"]
    assert main(["slabs", "bench"]) == 0


def test_a_tabletop_crane_has_finer_radii():
    found = slabs(set_up(load_machine("bench")))
    assert found.step < 0.011
    assert 0.3 < np.nanmax(found.bands[0].far) < 2.0
