"""The same machine with thicker or thinner plates in its boom: built stout, or built light.

What a section measures outside stays, so that the sections still nest as they did and the outer
ones' pads still meet the inner ones: plates grow inwards. What is no plate stays as well: the head,
pads, pins, locks, cylinders, the rest of the crane, and in each section whatever it weighs beyond
its plates.
"""

from collections.abc import Iterator
from dataclasses import replace

from boomsim.machine.boom_check import boom_faults, profile_faults, section_faults
from boomsim.machine.file_faults import Fault
from boomsim.machine.model import Boom, Machine, Profile, Section
from boomsim.machine.outline import offset_edges, plate_area
from boomsim.machine.plausible_ranges import THICKNESS
from boomsim.units import show

LEAST, MOST = 0.6, 1.8
"""Thickness over that of the machine's own plates: beyond these it is another boom [1]."""

LONGEST_NAME = 40
"""A machine file takes no longer name [1]."""


def with_plates(machine: Machine, *, factor: float) -> Machine:
    """Build a machine's boom of plates that are so many times as thick.

    Parameters
    ----------
    factor : float
        New thickness over old, 0.6 to 1.8; 1 gives the machine itself [1]

    Returns
    -------
    Machine
        Its name and title say so

    Raises
    ------
    ValueError
        If the factor is outside its range, or the sections would not fit with such plates.
    """
    checked_factor(factor)
    if factor == 1.0:
        return machine
    made = _made(machine.boom, factor)
    _refuse(machine, made, factor)
    label = factor_label(factor)
    return replace(
        machine,
        name=f"{machine.name[: LONGEST_NAME - len(label) - 2].rstrip()}, {label}",
        title=f"{machine.title}; {label}",
        boom=made,
    )


def checked_factor(factor: float, *, what: str = "A factor on the plates' thickness") -> float:
    """Refuse a factor that makes another boom of it.

    Parameters
    ----------
    factor : float
        [1]
    what : str
        What it is called where it was given

    Returns
    -------
    float
        The same [1]
    """
    if not LEAST <= factor <= MOST:
        raise ValueError(
            f"{what} of {factor:g} is not between {LEAST:g} and {MOST:g}. Give 1.3 for plates a "
            "third thicker than the machine's, 0.8 for plates a fifth thinner."
        )
    return factor


def factor_label(factor: float) -> str:
    """Name a build by its plates.

    Parameters
    ----------
    factor : float
        [1]

    Returns
    -------
    str
        Such as "plates x 1.3"
    """
    return f"plates x {factor:g}"


def plate_mass(section: Section) -> float:
    """Mass of a section's plates alone.

    Returns
    -------
    float
        Area times density times length [kg]
    """
    return plate_area(section.profile) * section.material.density * section.length


def _section(section: Section, factor: float) -> Section:
    """One section with other plates; what it weighs beyond its plates stays."""
    made = replace(section, profile=_profile(section.profile, factor))
    return replace(made, mass=section.mass - plate_mass(section) + plate_mass(made))


def _profile(profile: Profile, factor: float) -> Profile:
    """Move each plate's midline in by half of what it grows: its outer face stays."""
    grown = [(factor - 1.0) * t for t in profile.thickness]
    edges = offset_edges(profile.corners, [-0.5 * more for more in grown])
    # Two plates that meet in a step leave two points; the corner lies halfway between them.
    corners = tuple(
        ((edges[k - 1][1][0] + start[0]) / 2, (edges[k - 1][1][1] + start[1]) / 2)
        for k, (start, _) in enumerate(edges)
    )
    return replace(profile, corners=corners, thickness=tuple(factor * t for t in profile.thickness))


def _refuse(machine: Machine, made: Boom, factor: float) -> None:
    fault = next(_faults(made), None)
    if fault is not None:
        # A fault's first sentence says what is wrong; its second, how to mend a machine's file.
        wrong = f"{fault}".split(". ")[0]
        raise ValueError(
            f"{machine.name} cannot be built with {factor_label(factor)}: {wrong}. Give a factor "
            f"nearer to 1: {factor_label(_nearest(machine.boom, factor))} fits."
        )


def _nearest(boom: Boom, factor: float) -> float:
    """Factor in steps of a hundredth, from one that does not fit towards 1, that does."""
    way = -1 if factor > 1.0 else 1
    tried = (k / 100 for k in range(round(100 * factor), 100, way))
    return next((one for one in tried if next(_faults(_made(boom, one)), None) is None), 1.0)


def _made(boom: Boom, factor: float) -> Boom:
    return replace(boom, sections=tuple(_section(one, factor) for one in boom.sections))


def _faults(boom: Boom) -> Iterator[Fault]:
    """What is wrong with a boom, in the words that a machine file is refused with."""
    for number, section in enumerate(boom.sections):
        found = (*_thickness_faults(section), *profile_faults(section.profile))
        for fault in (*found, *section_faults(section)):
            yield Fault(path=f"section {number}", says=fault.says)
    yield from (Fault(path="", says=fault.says) for fault in boom_faults(boom))


def _thickness_faults(section: Section) -> Iterator[Fault]:
    least, most = THICKNESS.ends
    for thickness in section.profile.thickness:
        if not least <= thickness <= most:
            yield Fault(
                path="",
                says=f"A plate of {show(thickness, 'small_length')} is outside {THICKNESS.least} "
                f"to {THICKNESS.most}.",
            )
