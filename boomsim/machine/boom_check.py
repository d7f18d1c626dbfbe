"""What cannot be built or moved in a boom, whatever its structure in the file."""

import math
from collections.abc import Iterator

from boomsim.machine import nesting
from boomsim.machine.file_faults import Fault
from boomsim.machine.model import Boom, Profile, Section
from boomsim.machine.outline import plate_area
from boomsim.units import show

LEAST_MASS, MOST_MASS = 0.95, 4.0
"""Mass of a section over the mass of its plates: common practice is 1.2 to 1.6, no source [1]."""

TINY = 1e-9
"""Rounding, not a fault [m]."""


def profile_faults(profile: Profile) -> Iterator[Fault]:
    """Say why a profile is no closed convex box of plates, the same left and right."""
    flat = nesting.flat_plate(profile)
    if flat is not None:
        yield _fault(f"Corner {flat} and the next are one point. Take one of them out.")
    elif not nesting.is_convex(profile.corners):
        yield _fault(
            "The corners do not go once round a convex shape. Give them in order round it, "
            "and none that bends inwards."
        )
    elif not nesting.has_room(profile):
        yield _fault("The plates leave no room inside. Make them thinner or the section larger.")
    lone = nesting.lone_corner(profile)
    if flat is None and lone is not None:
        yield _fault(
            f"Corner {lone} or its plates have no mirror image: left and right must be the same. "
            "Give each corner [z, y] its partner [-z, y], with equal plates."
        )


def section_faults(section: Section) -> Iterator[Fault]:
    """Say why one section is out of proportion in itself."""
    plates = plate_area(section.profile) * section.material.density * section.length
    if not LEAST_MASS * plates <= section.mass <= MOST_MASS * plates:
        yield _fault(
            f"The section weighs {show(section.mass, 'mass')} and its plates alone "
            f"{show(plates, 'mass')}. Give {show(LEAST_MASS * plates, 'mass')} to "
            f"{show(MOST_MASS * plates, 'mass')}, or other plates.",
            "mass",
        )
    for name, pad in (("front_pad", section.front_pad), ("rear_pad", section.rear_pad)):
        width = nesting.outer_size(section.profile)[0]
        if pad and 2 * pad.width > width:
            yield _fault(
                f"Two pads of {_mm(pad.width)} are wider than the section, {_mm(width)}. "
                f"Give {_mm(width / 2)} or less.",
                f"{name}.width",
            )
        if pad and pad.length > section.least_overlap:
            yield _fault(
                f"The pad is {_mm(pad.length)} long and the least overlap only "
                f"{_mm(section.least_overlap)}. Shorten the pad or lengthen the overlap.",
                f"{name}.length",
            )


def boom_faults(boom: Boom) -> Iterator[Fault]:
    """Say why sections do not fit or move together, and what else cannot be in a boom."""
    for number in range(1, len(boom.sections)):
        outer, inner = boom.sections[number - 1], boom.sections[number]
        yield from _overlap_faults(inner, number=number)
        yield from _tail_faults(inner, outer=outer, number=number)
        yield from _fit_faults(inner, outer=outer, number=number)
    yield from _system_faults(boom)
    if not boom.least_angle < boom.greatest_angle:
        yield _fault(
            f"The boom angle ends at {show(boom.greatest_angle, 'angle')} and begins at "
            f"{show(boom.least_angle, 'angle')}. Make greatest_angle the larger.",
            "greatest_angle",
        )


def overlap_left(section: Section, *, fraction: float = 1.0) -> float:
    """Overlap of a moving section with its outer section.

    Parameters
    ----------
    fraction : float
        How far out it is [1]

    Returns
    -------
    float
        length - nose - stroke fraction: front of the outer minus tail of the inner [m]
    """
    return section.length - section.nose - section.stroke * fraction


def _overlap_faults(inner: Section, *, number: int) -> Iterator[Fault]:
    """Refuse a stroke that lets the overlap run out."""
    left, needed = overlap_left(inner), inner.least_overlap
    if left >= needed - TINY:
        return
    place = f"sections[{number}].least_overlap"
    most = inner.length - inner.nose - needed
    longer = f"make it {show(needed - left, 'length')} longer"
    if most <= 0:
        yield _fault(
            f"Section {number} is {show(inner.length, 'length')} long and needs an overlap of "
            f"{show(needed, 'length')} with section {number - 1}, which it never has. "
            f"Lower the overlap, or {longer}.",
            place,
        )
        return
    percent = math.floor(100 * most / inner.stroke + TINY)
    yield _fault(
        f"Section {number} overlaps section {number - 1} by {show(left, 'length')} and needs "
        f"{show(needed, 'length')}. Retract it to {percent} % or less, that is a stroke of "
        f"{show(math.floor(1000 * most + 1e-6) / 1000, 'small_length')}, or {longer}.",
        place,
    )


def _tail_faults(inner: Section, *, outer: Section, number: int) -> Iterator[Fault]:
    """Refuse a tail that would stick out behind the outer section."""
    behind = inner.length - inner.nose - outer.length
    if behind > TINY:
        yield _fault(
            f"Moved in, the tail of section {number} stands {show(behind, 'length')} behind the "
            f"tail of section {number - 1}. Make it {show(behind, 'length')} shorter, "
            "or its nose longer.",
            f"sections[{number}].length",
        )


def _fit_faults(inner: Section, *, outer: Section, number: int) -> Iterator[Fault]:
    """Refuse a section that does not fit into the outer one."""
    play = nesting.vertical_play(inner.profile, outer.profile)
    if play >= inner.clearance - TINY:
        return
    wide, high = nesting.outer_size(inner.profile)
    room_wide, room_high = nesting.inner_size(outer.profile)
    needs = high + inner.clearance
    if wide > room_wide:
        says = (
            f"is {_mm(wide)} wide outside and section {number - 1} leaves {_mm(room_wide)} inside."
        )
    elif needs > room_high:
        says = (
            f"needs {_mm(needs)} of height, clearance included, and section {number - 1} leaves "
            f"{_mm(room_high)} inside."
        )
    else:
        says = f"would touch the corners of section {number - 1}."
    yield _fault(f"Section {number} {says} Make it smaller.", f"sections[{number}]")


def _system_faults(boom: Boom) -> Iterator[Fault]:
    """Refuse boom systems and lock positions that contradict one another."""
    for i, system in enumerate(boom.systems):
        if system in boom.systems[:i]:
            yield _fault(f'"{system}" is there twice. Take one out.', f"systems[{i}]")
    pairs = zip(boom.lock_positions, boom.lock_positions[1:], strict=False)
    for i, (before, after) in enumerate(pairs, start=1):
        if not before < after:
            yield _fault(
                f"{show(after, 'share')} comes after {show(before, 'share')}. "
                "Write the positions from the smallest to the largest, each once.",
                f"lock_positions[{i}]",
            )
    for i, section in enumerate(boom.sections):
        if "pinned" in boom.systems and section.lock and section.lock.kind != "pins":
            yield _fault(
                'A pinned boom locks with pins and this is a drive. Write kind = "pins", '
                'or take "pinned" out of the systems.',
                f"sections[{i}].lock.kind",
            )


def _fault(says: str, path: str = "") -> Fault:
    return Fault(path=path, says=says)


def _mm(value: float) -> str:
    return show(value, "small_length")
