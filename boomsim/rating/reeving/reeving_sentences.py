"""Sentences on a reeved boom."""

from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.parts_reeved import parts_said, what_hangs
from boomsim.rating.reeving.reeving_study import Reeving
from boomsim.units import display, listed, show, show_rated


def tell_parts(found: Reeving, *, units: str) -> str:
    """Say how many parts the boom is reeved in, and why not more.

    Returns
    -------
    str
        A sentence to be spoken
    """
    begun = (
        f"With {show(found.length, 'boom_length', units)} of boom the rope is reeved in "
        f"{parts_said(found.parts)}"
    )
    more = [choice for choice in found.choices if choice.parts > found.parts]
    if not more:
        return f"{begun}, the most that this machine is reeved in."
    if more[0].reaches:
        return f"{begun}, as it was asked for; the rope on the drum would reach for more."
    assert more[0].rope is not None and found.rope.whole is not None
    return (
        f"{begun}: {more[0].parts} would take {show(more[0].rope, 'length', units)}, and the drum "
        f"has {show(found.rope.whole, 'length', units)}."
    )


def tell_pull(found: Reeving, *, units: str) -> str:
    """Say what pulls in the rope."""
    of = "the rated load of " + show_rated(found.rated, units)
    if found.load is not None:
        net, gross = (show(mass, "mass", units) for mass in (found.load, found.gross))
        of = f"a load of {net}, {gross} gross,"
    share = 100.0 * found.line_pull / found.hoist.line_pull
    unit = display("force", units, like=found.hoist.line_pull)
    return (
        f"At {show(found.radius, 'length', units)} {of} pulls "
        f"{unit.text(found.line_pull)} in the lead line, {share:.0f} % of the "
        f"permissible {unit.text(found.hoist.line_pull)}; {what_sets(found.limit)}."
    )


def tell_fewest(found: Reeving, *, units: str) -> str:
    """Say how many parts the load wants at least, and whether it may be lifted at all."""
    what = "The rated load" if found.load is None else "This load"
    if found.gross > found.rated * (1.0 + 1e-9):
        return (
            f"{what} is more than is rated: with {listed(what_hangs(found.setup.machine))} it is "
            f"{show(found.gross, 'mass', units)}, and {show_rated(found.rated, units)} is rated "
            "here. No number of parts changes that."
        )
    if found.fewest is None:
        return f"{what} is more than the rope carries in any number of parts for which it reaches."
    fewest = found.fewest.parts
    if fewest > found.parts:
        return f"{what} wants {parts_said(fewest)} at least: {found.parts} do not carry it."
    return f"{what} wants {parts_said(fewest)} at least."


def tell_speed(found: Reeving) -> str:
    """Say how fast the hook runs."""
    if found.parts == 1:
        return "The hook runs as fast as the line."
    return (
        f"The hook runs at 1/{found.parts} of the line's speed: the drum takes in {found.parts} "
        "times what the hook rises."
    )


def tell_rope(found: Reeving, *, units: str) -> str:
    """Say where the rope is with the hook on the ground.

    Returns
    -------
    str
        Without the rope's length, only what is out
    """
    rope = found.rope
    out = show(rope.lead + rope.falls, "length", units)
    said = f"With the hook on the ground {out} of rope are out"
    if rope.left is not None:
        left, kept = (show(value, "length", units) for value in (rope.left, rope.kept))
        said += f" and {left} are left on the drum, of which {kept} always stay there"
    if found.falls_mass > 0.0:
        said += f"; the falls weigh {show(found.falls_mass, 'mass', units)}"
    return f"{said}."
