"""Why one configuration carries more than another: a sum whose parts add up to the whole.

rated A - rated B = (what stability allows A - what it allows B)
                  - (what A's structure takes away) + (what B's structure takes away)

The first bracket is a sum over all masses, because the tipping load is a sum of moments about the
tipping line over the load's lever arm.

Derived in docs/theory.md, section 8.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.overturning import ON_THE_LINE
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.comparison.bending_causes import moment_by_cause
from boomsim.rating.lift_response import Response, bear, respond
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.limits.tipping import boom_at_head, rated_share
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class GaveWay:
    """What happens at the place that governs a structural cell, in the state that governs it.

    That state bears the rule's allowances and partial factors.

    Attributes
    ----------
    place : float or None
        Along that section from its tail [m]
    components : dict of str to float
        Shares of the use by stress component: axial force, bending, sideways bending, shear [1]
    causes : dict of str to float
        Bending moment there by cause: load, own weight, hoist rope, wind, cylinder lug; sums to
        `moment` [N m]
    moment : float or None
        Bending moment there in the luffing plane [N m]
    """

    limit: Limit
    section: int | None
    place: float | None
    components: dict[str, float]
    causes: dict[str, float]
    moment: float | None


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Account:
    """One configuration at one radius, at its rated load.

    Attributes
    ----------
    capacity : float
        [kg]
    limit : Limit
        That governs
    stability : float
        What the stability rule alone would allow; infinite where no load can tip the crane [kg]
    structure_takes : float
        `stability` less `capacity` [kg]
    line, slew : int, float
        Governing tipping line and slew angle [rad]
    lever : float
        Load's lever arm beyond the tipping line [m]
    parts, mass : dict of str to float
        Moment of each mass about the tipping line, righting positive [N m], and what it is [kg]
    worth : dict of str to float
        What each part is worth in rated load, as stability goes; sums to `stability` [kg]
    gave_way : GaveWay or None
        For a structural cell
    """

    capacity: float
    limit: Limit
    stability: float
    structure_takes: float
    line: int
    slew: float
    lever: float
    parts: dict[str, float]
    mass: dict[str, float]
    worth: dict[str, float]
    gave_way: GaveWay | None


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Difference:
    """Configuration `first` against `second` at one radius.

    Attributes
    ----------
    radius : float
        [m]
    by_part : dict of str to float
        Rated load that the shift of each part's weight costs (-) or gains (+) [kg]
    by_structure : tuple of float
        What the structure takes from the first (-) and from the second (+) [kg]
    total : float
        Capacity of the first less that of the second; the sum of all the above [kg]
    """

    radius: float
    first: Account
    second: Account
    by_part: dict[str, float]
    by_structure: tuple[float, float]
    total: float


def account(setup: Setup, *, extension: Array, radius: float) -> Account | None:
    """Account for one configuration's capacity at one radius.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    radius : float
        [m]

    Returns
    -------
    Account or None
        None where the boom does not reach
    """
    return accounts(setup, extension=extension, radius=radius)[0]


def accounts(setup: Setup, *, extension: Array, radius: float) -> list[Account | None]:
    """Account for the capacity of several configurations at one radius, rated together.

    Parameters
    ----------
    extension : array_like, shape (configurations, moving sections)
        [1]
    radius : float
        [m]

    Returns
    -------
    list of Account or None
        None where the boom does not reach
    """
    ways = np.atleast_2d(np.asarray(extension, dtype=float))
    rating = rate(setup, extension=ways, radius=np.array([radius]))
    return [account_of(rating, configuration=way, cell=0) for way in range(len(ways))]


def account_of(rating: Rating, *, configuration: int, cell: int) -> Account | None:
    """Account for a capacity that is rated already, with what is condensed already.

    Parameters
    ----------
    configuration, cell : int
        Which of its cells

    Returns
    -------
    Account or None
        None where the boom does not reach
    """
    limit = rating.limit(configuration, cell)
    capacity = float(rating.capacity[configuration, cell])
    if limit is None or not np.isfinite(capacity):
        return None
    at = respond(
        rating.setup,
        boom=pick(rating.boom, np.array([configuration])),
        load=np.array([[capacity]]),
        radius=rating.radius[configuration, cell].reshape(1, 1),
    )
    return _account(rating.setup, at, capacity, limit)


def _account(setup: Setup, at: Response, capacity: float, limit: Limit) -> Account:
    balance = at.balance
    least = balance.tipping_load[:, :, 0, 0]
    turn, line = np.unravel_index(np.argmin(least), least.shape)
    lever = float(balance.lever[turn, line, 0, 0]) / GRAVITY
    parts = righting_by_part(at, turn=int(turn), line=int(line))
    worth = _worth(setup, at, parts, lever)
    stability = sum(worth.values()) if lever > ON_THE_LINE else np.inf
    return Account(
        capacity=capacity,
        limit=limit,
        stability=stability,
        structure_takes=stability - capacity,
        line=int(line),
        slew=float(balance.slew[turn]),
        lever=lever,
        parts=parts,
        mass=mass_by_part(at),
        worth=worth,
        gave_way=_gave_way(setup, at, limit) if limit.set_by != STABILITY else None,
    )


def righting_by_part(at: Response, *, turn: int, line: int) -> dict[str, float]:
    """What holds the crane down about a tipping line, mass by mass, and what wind and lean do.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    turn, line : int
        Slew angle and tipping line, as indices into its balance

    Returns
    -------
    dict of str to float
        Moments without the load, righting positive; masses of one name together [N m]
    """
    righting = float(at.balance.righting[turn, line, 0, 0])
    parts = _moments(at, turn, line)
    parts["wind and lean"] = righting - sum(parts.values())
    if abs(parts["wind and lean"]) < 1e-9 * abs(righting):
        # Rounding only: put it where it is lost, so that the sum stays the whole.
        largest = max(parts, key=lambda name: abs(parts[name]))
        parts[largest] += parts.pop("wind and lean")
    return parts


def mass_by_part(at: Response) -> dict[str, float]:
    """Mass of each part that holds the crane down; masses of one name together.

    Returns
    -------
    dict of str to float
        With the names of :func:`righting_by_part`, without what is no mass [kg]
    """
    found: dict[str, float] = {}
    for name, mass in zip(at.placed.name, at.placed.mass, strict=True):
        found[name] = found.get(name, 0.0) + float(mass)
    return found


def _moments(at: Response, turn: int, line: int) -> dict[str, float]:
    """Moment of each mass about one tipping line, righting positive [N m]."""
    placed, lines, slew = at.placed, at.balance.lines, at.balance.slew[turn]
    normal, distance = lines.normal[line], float(lines.distance[line])
    ahead = float(normal @ [np.cos(slew), np.sin(slew)])
    across = float(normal @ [-np.sin(slew), np.cos(slew)])
    turning = [
        distance - ahead * float(out) - across * float(left)
        for out, left in zip(placed.out[:, 0, 0], placed.left[:, 0, 0], strict=True)
    ]
    fixed = [distance - float(normal @ [x, y]) for x, y in zip(placed.x, placed.y, strict=True)]
    found: dict[str, float] = {}
    for name, mass, arm in zip(placed.name, placed.mass, [*turning, *fixed], strict=True):
        found[name] = found.get(name, 0.0) + GRAVITY * float(mass) * arm
    return found


def _worth(setup: Setup, at: Response, parts: dict[str, float], lever: float) -> dict[str, float]:
    rule = setup.rule.stability
    if not lever > ON_THE_LINE:
        return {}
    scale = rated_share(
        rule, tipping_load=np.array(1.0), support_kind=setup.support.kind, at_head=np.array(0.0)
    )
    worth = {name: float(scale) * moment / (GRAVITY * lever) for name, moment in parts.items()}
    if rule.kind != "share":
        at_head = float(boom_at_head(setup.machine, placed=at.placed)[0, 0])
        worth["boom weight in the rule"] = -rule.boom_share * at_head / rule.load_factor
    return worth


def difference(first: Account, second: Account, *, radius: float) -> Difference:
    """Account for the difference of two capacities.

    Parameters
    ----------
    first, second : Account
        At the same radius
    radius : float
        [m]

    Returns
    -------
    Difference
        Without parts where no load can tip the crane, so that strength alone decides
    """
    names = [*first.worth, *(n for n in second.worth if n not in first.worth)]
    by_part = {n: first.worth.get(n, 0.0) - second.worth.get(n, 0.0) for n in names}
    finite = np.isfinite(first.stability) and np.isfinite(second.stability)
    if not finite:
        by_part = {}
    taken = (
        (-first.structure_takes, second.structure_takes)
        if finite
        else (first.capacity, -second.capacity)
    )
    return Difference(
        radius=radius,
        first=first,
        second=second,
        by_part=by_part,
        by_structure=taken,
        total=first.capacity - second.capacity,
    )


def _gave_way(setup: Setup, at: Response, limit: Limit) -> GaveWay:
    kind, section, strength = limit.kind, limit.section, bear(setup)
    if kind.along is None or kind.components is None or section is None:
        return GaveWay(
            limit=limit, section=section, place=None, components={}, causes={}, moment=None
        )
    own = slice(section * PER_SECTION, (section + 1) * PER_SECTION)
    used = kind.along(at.factored_forces, bear=strength, boom=at.boom)[0, own, 0]
    station = own.start + int(np.argmax(used))
    return GaveWay(
        limit=limit,
        section=section,
        place=float(at.boom.stations.position.reshape(-1)[station]),
        components=kind.components(
            at.factored_forces, station=station, section=section, bear=strength
        ),
        causes=moment_by_cause(at, station),
        moment=float(at.factored_forces.moment[0, station, 0]),
    )
