"""One boom reeved: how many parts, where the rope is, what pulls in it, how fast the hook runs."""

from dataclasses import dataclass

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.hoist_rope import angles_between, head_height, kept_on_drum, lead_line
from boomsim.machine.model import Hoist, Machine
from boomsim.mechanics.geometry import Array, layout
from boomsim.mechanics.rope_reach import falls_mass, parts_reached
from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.charts.rows_and_rounding import chart_radii
from boomsim.rating.empty_hook.less_than_the_hook import blank_under_hook, refuse_under_hook
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.limits.line_pull import LINE_PULL
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.nearest_radius import nearest_radius
from boomsim.rating.parts_reeved import reeved
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import range_of_length
from boomsim.units import show

HALVINGS = 60
"""Of the range of boom lengths, until the longest boom for a number of parts is found."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rope:
    """Where the rope is with the hook on the ground at one boom angle [m].

    Attributes
    ----------
    whole : float or None
        All of it; None where the machine does not say
    kept : float
        On the drum, and never off it
    lead, falls : float
        From the drum to the head, and all falls between head and hook together
    """

    whole: float | None
    kept: float
    lead: float
    falls: float

    @property
    def left(self) -> float | None:
        """On the drum, with what is kept there [m]."""
        return None if self.whole is None else self.whole - self.lead - self.falls


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One number of parts that the machine can be reeved in.

    Attributes
    ----------
    parts : int
        [1]
    carries : float
        Gross load at the permissible line pull [kg]
    falls, hangs : float
        Mass of the falls, and with hook block and slings, at the boom angle that is looked at [kg]
    rope : float or None
        That it takes with the hook on the ground, at the boom angle that takes most, with what is
        kept on the drum; None where the rope's length is not known [m]
    reaches : bool
        Whether the drum has so much
    longest : float
        Longest boom for which it reaches, up to the boom's own longest; NaN where for none [m]
    """

    parts: int
    carries: float
    falls: float
    hangs: float
    rope: float | None
    reaches: bool
    longest: float


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Reeving:
    """How one boom is reeved; SI, angles in rad, loads in kg.

    Attributes
    ----------
    extension : ndarray, shape (moving sections,)
        The way out that is rated most at the radius; the reeving is the same for all of one length
    length : float
        Boom length
    radius, angle, height : float
        Of the rated load: where it hangs, the boom angle, the head above the ground
    rated : float
        Gross load that is rated there
    limit : Limit
        What sets it
    load : float or None
        Net load that is asked about
    parts : int
        Parts of line that the boom is reeved in
    reached : float
        Most parts that the rope reaches for; infinite where its length is not known
    line_pull : float
        In the lead line at the gross load: the rated one, or that of the load asked about [N]
    rope : Rope
        At that boom angle
    """

    setup: Setup
    extension: Array
    length: float
    radius: float
    angle: float
    height: float
    rated: float
    limit: Limit
    load: float | None
    parts: int
    reached: float
    line_pull: float
    rope: Rope
    choices: tuple[Choice, ...]

    @property
    def hoist(self) -> Hoist:
        """Of the machine."""
        return self.setup.machine.hoist

    @property
    def own(self) -> Choice:
        """The number of parts that the boom is reeved in."""
        return next(choice for choice in self.choices if choice.parts == self.parts)

    @property
    def falls_mass(self) -> float:
        """Mass of the falls, with the hook on the ground [kg]."""
        return self.own.falls

    @property
    def gross(self) -> float:
        """Load asked about with all that hangs besides, or the rated load [kg]."""
        return self.rated if self.load is None else self.load + self.own.hangs

    @property
    def is_allowed(self) -> bool:
        """True where the gross load is neither more than is rated nor than the rope carries."""
        return self.gross <= min(self.rated, self.own.carries) * (1.0 + 1e-9)

    @property
    def fewest(self) -> Choice | None:
        """Fewest parts that carry the gross load, and for which the rope reaches; None if none do.

        More parts weigh more: each is asked for what hangs on itself.
        """
        enough = [
            choice
            for choice in self.choices
            if choice.reaches and choice.carries * (1.0 + 1e-6) >= self._wanted(choice)
        ]
        return min(enough, key=lambda choice: choice.parts, default=None)

    def _wanted(self, choice: Choice) -> float:
        return self.rated if self.load is None else self.load + choice.hangs

    def pull_in_part(self, number: int) -> float:
        """Pull in one part of the falls, counted from the lead line's side [N].

        Parameters
        ----------
        number : int
            From 1 to `parts`; the last one is made fast

        Returns
        -------
        float
            Less by a sheave's loss for each sheave, while the load is hoisted
        """
        return self.line_pull * self.hoist.sheave_efficiency**number


def reeve(
    setup: Setup,
    *,
    extension: Array,
    radius: float | None = None,
    load: float | None = None,
    units: str = "metric",
) -> Reeving:
    """Reeve a boom, and look at its rope under the rated load.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,) or (ways, moving sections)
        Ways to one boom length [1]
    radius : float, optional
        Of the load; default: where most is rated [m]
    load : float, optional
        Net load; default: the rated gross load is looked at [kg]
    units : str
        "metric" or "us": of the radii among which the default one is

    Raises
    ------
    ValueError
        If the load is none, or nothing is rated at the radius.
    """
    _refuse(radius, load)
    machine, ways = setup.machine, np.atleast_2d(extension)
    length = layout(machine.boom, extension=ways).boom_length[:1]
    refuse_too_long(setup, length=length)
    if radius is None:
        radii = chart_radii(machine, length=length, units=units)
        radii = radii[radii > nearest_radius(setup)]
    else:
        radii = np.array([radius])
    rating = rate(setup, extension=ways, radius=radii)
    if radius is not None and len(ways) == 1:
        refuse_under_hook(rating)
    rating = blank_under_hook(rating)
    way, cell = _most(rating, float(length[0]), radius)
    angle, rated = (float(v[way, cell]) for v in (rating.angle, rating.capacity))
    parts = int(reeved(setup, length=length)[0])
    choices = tuple(_choice(setup, n, float(length[0]), angle) for n in machine.hoist.parts)
    own = next(choice for choice in choices if choice.parts == parts)
    gross = rated if load is None else load + own.hangs
    limit = rating.limit(way, cell)
    assert limit is not None
    return Reeving(
        setup=setup,
        extension=ways[way],
        length=float(length[0]),
        radius=float(radii[cell]),
        angle=angle,
        height=_height(machine, float(length[0]), angle),
        rated=rated,
        limit=limit,
        load=load,
        parts=parts,
        reached=float(parts_reached(machine, length=length)[0]),
        line_pull=_line_pull(rating, way, cell) * gross / rated,
        rope=_rope(machine, parts=parts, length=float(length[0]), angle=angle),
        choices=choices,
    )


def _refuse(radius: float | None, load: float | None) -> None:
    if radius is not None and not 0.0 < radius < 1e4:
        raise ValueError(
            f"--radius: {radius:g} m is not one. Give it above 0 m, from the axis of rotation."
        )
    if load is not None and not 0.0 <= load < 1e7:
        raise ValueError(f"--load: {load:g} kg is not one. Give 0 kg or more.")


def _most(rating: Rating, length: float, radius: float | None) -> tuple[int, int]:
    """Way and cell with the largest rated load."""
    known = np.nan_to_num(rating.capacity)
    if not known.max() > 0.0:
        where = "at any radius" if radius is None else f"at {show(radius, 'length')}"
        raise ValueError(
            f"Nothing is rated {where} with {show(length, 'boom_length')} of boom as the crane is "
            "set up. Choose another boom length, radius, counterweight or support."
        )
    way, cell = np.unravel_index(int(np.argmax(known)), known.shape)
    return int(way), int(cell)


def _line_pull(rating: Rating, way: int, cell: int) -> float:
    """Pull in the lead line at the rated load, in proportion to which it grows [N]."""
    row = next(k for k, limit in enumerate(rating.limits) if limit.kind is LINE_PULL)
    return float(rating.utilisation[row, way, cell]) * rating.setup.machine.hoist.line_pull


def _height(machine: Machine, length: float, angle: float) -> float:
    return head_height(machine, length=length, cos=float(np.cos(angle)), sin=float(np.sin(angle)))


def _rope(machine: Machine, *, parts: int, length: float, angle: float) -> Rope:
    cos, sin = float(np.cos(angle)), float(np.sin(angle))
    return Rope(
        whole=machine.hoist.rope_length,
        kept=kept_on_drum(machine),
        lead=lead_line(machine, length=length, cos=cos, sin=sin),
        falls=parts * _height(machine, length, angle),
    )


def _choice(setup: Setup, parts: int, length: float, angle: float) -> Choice:
    machine, hoist = setup.machine, setup.machine.hoist
    advantage = tackle_advantage(parts, sheave_efficiency=hoist.sheave_efficiency)
    falls = float(falls_mass(machine, parts=parts, length=length, angle=angle))
    ends = machine.boom.least_angle, machine.boom.greatest_angle
    ropes = [_rope(machine, parts=parts, length=length, angle=one) for one in angles_between(*ends)]
    needed = max(rope.kept + rope.lead + rope.falls for rope in ropes)
    return Choice(
        parts=parts,
        carries=hoist.line_pull * advantage / GRAVITY,
        falls=falls,
        hangs=machine.hook_block + machine.slings + falls,
        rope=None if hoist.rope_length is None else needed,
        reaches=bool(parts_reached(machine, length=length)[0] >= parts),
        longest=longest_boom_for(machine, parts=parts),
    )


def longest_boom_for(machine: Machine, *, parts: int) -> float:
    """Longest boom for which the rope reaches in so many parts.

    Parameters
    ----------
    parts : int
        [1]

    Returns
    -------
    float
        Up to the boom's own longest; NaN where it does not reach for the shortest [m]
    """
    short, long = range_of_length(machine.boom)

    def reaches(length: float) -> bool:
        return bool(parts_reached(machine, length=length)[0] >= parts)

    if not reaches(short):
        return float("nan")
    if reaches(long):
        return long
    for _ in range(HALVINGS):
        middle = (short + long) / 2.0
        short, long = (middle, long) if reaches(middle) else (short, middle)
    return short
