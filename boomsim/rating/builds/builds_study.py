"""The same crane with thinner and with thicker plates in its boom, rated side by side."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from boomsim.machine.plate_thickness import factor_label, with_plates
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.builds.builds_leads import Stretch, followed, leading, setting
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.charts.rows_and_rounding import row_step
from boomsim.rating.comparison.comparison_study import DRAWN, default_radii
from boomsim.rating.empty_hook.less_than_the_hook import blank_under_hook
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import configurations_of

MOST = 6
"""So many builds are told apart in a picture and in a sentence [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Build:
    """One of them.

    Attributes
    ----------
    factor : float
        Thickness of its plates over that of the machine's own [1]
    setup : Setup
        With the machine built so
    rating : Rating
        Of one configuration at the radii of the study, shape (1, radii)
    sets : tuple of Stretch
        What sets its figures, from which radius to which
    """

    factor: float
    setup: Setup
    rating: Rating
    sets: tuple[Stretch, ...]

    @property
    def name(self) -> str:
        """What it is called: "plates x 1.3"."""
        return factor_label(self.factor)

    @property
    def boom_mass(self) -> float:
        """Sections, what lies in them of the telescope cylinder, and head [kg]."""
        boom = self.setup.machine.boom
        return sum(boom.section_masses) + boom.head.mass


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Builds:
    """One machine built in several ways, in one configuration.

    Attributes
    ----------
    setup : Setup
        Of the machine as it is
    extension : ndarray, shape (moving sections,)
        [1]
    length : float
        Boom length [m]
    radii : ndarray, shape (radii,)
        [m]
    builds : tuple of Build
        From the thinnest plates to the thickest
    leads : tuple of Stretch
        Who carries most from where to where, at all radii that all of them reach, whatever `radii`
        are: numbers of builds, several where they are level
    """

    setup: Setup
    extension: Array
    length: float
    radii: Array
    builds: tuple[Build, ...]
    leads: tuple[Stretch, ...]

    @property
    def capacity(self) -> Array:
        """Of every build at every radius, NaN out of reach, shape (builds, radii) [kg]."""
        return np.array([build.rating.capacity[0] for build in self.builds])


def compare_builds(
    setup: Setup,
    *,
    factors: Sequence[float],
    extension: Array,
    radii: Array | None = None,
) -> Builds:
    """Rate a machine with several thicknesses of plates side by side over radius.

    Parameters
    ----------
    setup : Setup
        Of the machine as it is
    factors : sequence of float
        New thickness over old, two to six, each once, in any order [1]
    extension : ndarray, shape (moving sections,)
        [1]
    radii : ndarray, optional
        Default: every metre within reach [m]

    Raises
    ------
    ValueError
        If a machine cannot be built so, or there are too few factors or too many.
    """
    setups = [_built(setup, factor) for factor in _checked(factors)]
    ways = configurations_of(setup.machine.boom, extension=np.array([extension]))
    radii = default_radii(setup, ways) if radii is None else np.asarray(radii, float)
    found = followed(setups, extension=ways.extension)
    ratings = [_rated(one, ways.extension, radii) for one in setups]
    builds = [
        Build(factor=factor, setup=one, rating=rating, sets=setting(found, row))
        for row, (factor, one, rating) in enumerate(
            zip(sorted(factors), setups, ratings, strict=True)
        )
    ]
    return Builds(
        setup=setup,
        extension=ways.extension[0],
        length=float(ways.length[0]),
        radii=radii,
        builds=tuple(builds),
        leads=leading(found),
    )


def _checked(factors: Sequence[float]) -> list[float]:
    if not 2 <= len(factors) <= MOST or len(set(factors)) < len(factors):
        raise ValueError(
            f"Builds are compared two to {MOST} at a time, each thickness once; here are "
            f"{', '.join(f'{factor:g}' for factor in factors) or 'none'}. Give factors such as "
            "0.8, 1, 1.3."
        )
    return sorted(factors)


def _built(setup: Setup, factor: float) -> Setup:
    return replace(setup, machine=with_plates(setup.machine, factor=factor))


def _rated(setup: Setup, extension: Array, radii: Array) -> Rating:
    boom = condense(setup.machine, extension=extension)
    return blank_under_hook(rate(setup, extension=extension, radius=radii, boom=boom))


def finely(found: Builds) -> Builds:
    """Rate the same builds closer together, so that a line drawn through them has its true shape.

    Returns
    -------
    Builds
        From the first to the last of its radii, and with these among its own
    """
    step = row_step(found.setup.machine, length=np.array([found.length])) / DRAWN
    even = step * np.arange(np.ceil(found.radii.min() / step), found.radii.max() / step)
    even = even[np.abs(even[:, None] - found.radii).min(axis=1) > step / 2]
    every = np.sort(np.concatenate([even, found.radii]))
    extension = found.extension[None]
    builds = tuple(
        replace(build, rating=_rated(build.setup, extension, every)) for build in found.builds
    )
    return replace(found, radii=every, builds=builds)


def overloaded(found: Builds, *, radius: float) -> tuple[Overload | None, ...]:
    """Raise the load of every build past its own rated load at one radius.

    Parameters
    ----------
    found : Builds
    radius : float
        [m]

    Returns
    -------
    tuple of (Overload or None)
        None for a build that has no rated load there
    """
    return tuple(_overloaded(build, found.extension, radius) for build in found.builds)


def _overloaded(build: Build, extension: Array, radius: float) -> Overload | None:
    rated = _rated(build.setup, extension, np.array([radius])).capacity[0, 0]
    return overload(build.setup, extension=extension, radius=radius) if rated > 0.0 else None


def near_and_far(found: Builds) -> tuple[float, ...]:
    """A radius close in and one far out: a quarter and nine tenths of the way out.

    Returns
    -------
    tuple of float
        Of those at which every build carries something; none where there is none [m]
    """
    carried = np.flatnonzero((np.nan_to_num(found.capacity) > 0.0).all(axis=0))
    if len(carried) == 0:
        return ()
    picks = sorted({carried[len(carried) // 4], carried[-1 - len(carried) // 10]})
    return tuple(float(found.radii[k]) for k in picks)
