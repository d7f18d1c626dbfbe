"""Which slabs a counterweight is made of, and how the crane is set up while each is picked."""

from dataclasses import dataclass, replace
from itertools import pairwise

from boomsim.machine.model import CarrierMass, Support, TurningMass
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_counterweight, with_support


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Stage:
    """One slab to be picked.

    Attributes
    ----------
    number : int
        From 1, the first that is laid down
    slab, gross : float
        Its mass, and with hook block and slings, the falls of the rope left out [kg]
    on_deck : float
        Slabs that lie on the carrier already [kg]
    counterweight : TurningMass
        On the superstructure meanwhile
    """

    number: int
    slab: float
    gross: float
    on_deck: float
    counterweight: TurningMass


def stages(setup: Setup) -> tuple[Stage, ...]:
    """Take a machine's counterweights apart into slabs: from each choice to the next heavier one.

    On a machine with a deck the slabs are laid on it, one on another, while the superstructure has
    its lightest choice on; without one each is hung on before the next is picked.

    Returns
    -------
    tuple of Stage
        From the first slab

    Raises
    ------
    ValueError
        If the machine has but one counterweight.
    """
    choices = sorted(setup.machine.counterweights, key=lambda choice: choice.mass)
    heavier = [pair for pair in pairwise(choices) if pair[1].mass > pair[0].mass]
    if not heavier:
        raise ValueError(
            f"{setup.machine.name} has but one counterweight, so that nothing says which slabs it "
            "is made of. Give it a lighter choice under [[counterweights]], such as none."
        )
    deck = setup.machine.deck is not None
    return tuple(
        Stage(
            number=k,
            slab=after.mass - before.mass,
            gross=after.mass - before.mass + setup.machine.hook_block + setup.machine.slings,
            on_deck=before.mass - choices[0].mass if deck else 0.0,
            counterweight=choices[0] if deck else before,
        )
        for k, (before, after) in enumerate(heavier, start=1)
    )


def at_stage(setup: Setup, stage: Stage, *, support: Support) -> Setup:
    """Set the crane up as it is while a slab is picked.

    Returns
    -------
    Setup
        The slabs on deck are a mass of its carrier
    """
    bare = with_support(with_counterweight(setup, stage.counterweight), support)
    deck = setup.machine.deck
    if deck is None or not stage.on_deck > 0.0:
        return bare
    lying = CarrierMass(name="slabs on deck", mass=stage.on_deck, x=deck.x, y=deck.y, z=deck.z)
    machine = replace(bare.machine, carrier=(*bare.machine.carrier, lying))
    return replace(bare, machine=machine)
