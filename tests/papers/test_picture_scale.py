"""What a picture shows has the proportions of its numbers, or the picture says that it has not."""

import re
from math import cos, dist, sin

import pytest

from boomsim.papers.family_registry import families
from boomsim.papers.problems.family import AnyFamily, Family
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import make_problem

PICTURED = [one for one in families().values() if one.picture]
LETTER = re.compile(
    r'<tspan font-style="italic">(\w+)</tspan>(?:<tspan dy="2" font-size="[\d.]+">(\w+)</tspan>)?'
)
LINE = re.compile(r'<line x1="(\S+)" y1="(\S+)" x2="(\S+)" y2="(\S+)" [^>]*data-of="(\w+)"')
EDGE = re.compile(r'<polygon points="(\S+),(\S+) (\S+),(\S+) [^>]*data-of="(\w+)"')
NOTE = re.compile(r">([^<]*)not to scale</text>")

EXCEPT = {
    "plates": {"s", "t"},
    "radius": {"R"},
    "heights": set(),
    "droop": {"g"},
    "boom": set(),
}
"""Lengths that a note takes out; heights, and a boom without a length, carry no letter."""

PLACED = {"e_x", "e_y"}
"""Lengths without a dimension line: where V lies is measured apart."""


def named(family: AnyFamily) -> str:
    return family.id


def note(problem: Problem) -> str | None:
    """What a picture says is not to scale: a part, or "" for all of it."""
    found = NOTE.search(problem.picture)
    return found[1].strip() if found else None


def lengths(problem: Problem) -> dict[str, float]:
    """Known lengths by letter [m]."""
    known = problem.givens | problem.results
    return {name: one.value for name, one in known.items() if one.unit.si == "m"}


def measured(problem: Problem) -> dict[str, float]:
    """Lengths on the picture by letter [pt]."""
    found = LINE.findall(problem.picture) + EDGE.findall(problem.picture)
    return {
        letter: dist((float(x), float(y)), (float(u), float(v))) for x, y, u, v, letter in found
    }


def lettered(problem: Problem) -> set[str]:
    """Letters that the picture writes."""
    return {f"{base}_{low}" if low else base for base, low in LETTER.findall(problem.picture)}


def draws(family: AnyFamily) -> list[Problem]:
    return [
        make_problem(family, seed=str(seed), system=system)
        for seed in range(12) for system in ("metric", "us")
    ]  # fmt: skip


@pytest.mark.parametrize("family", PICTURED, ids=named)
def test_lengths_on_a_picture_are_in_proportion_or_said_not_to_be(family: AnyFamily) -> None:
    for problem in draws(family):
        said, drawn, known = note(problem), measured(problem), lengths(problem)
        if said == "":
            continue
        left_out = EXCEPT[said] if said else set()
        held = (drawn.keys() & known.keys()) - left_out
        # Whatever length has its letter on the picture was measured: nothing escapes.
        assert (lettered(problem) & known.keys()) - left_out - PLACED <= held
        scales = [drawn[letter] / known[letter] for letter in held]
        # Ends are written to 0.01 pt: 0.02 pt of the 1.5 pt that the shortest of them has.
        assert not scales or max(scales) / min(scales) < 1.015, (problem.seed, drawn, known)


@pytest.mark.parametrize("family", PICTURED, ids=named)
def test_no_answer_can_be_measured(family: AnyFamily) -> None:
    """A length asked for is not drawn to scale: a ruler would find it as well as a formula."""
    if not isinstance(family, Family):
        return
    steps = {step.name for step in family.steps}
    for problem in draws(family)[:4]:
        said = note(problem)
        if said != "":
            assert not (measured(problem).keys() & steps) - EXCEPT.get(said or "", set())


def test_the_resultant_lies_where_its_numbers_say() -> None:
    problem = make_problem(families()["stability_float_reactions"], seed="3")
    values, drawn = problem.values, measured(problem)
    dots = re.findall(r'<circle cx="(\S+)" cy="(\S+)"', problem.picture)
    (u, v), (x, y) = ((float(one), float(other)) for one, other in dots)
    scale = drawn["L_x"] / values["L_x"]
    assert (x - u) / scale == pytest.approx(values["e_x"], abs=0.01)
    assert (y - v) / scale == pytest.approx(values["e_y"], abs=0.01)


def test_all_ways_of_the_check_occur() -> None:
    """Pictures to scale, in part and not at all: else a change of a note would go unseen."""
    said = {family.id: note(make_problem(family, seed="1")) for family in PICTURED}
    assert set(said.values()) == {None, "", *EXCEPT}
    to_scale = [name for name, words in said.items() if words is None]
    assert len(to_scale) >= len(said) // 3
    assert {"geometry_radius", "geometry_overlap", "geometry_boom_angle"} <= {
        name for name, words in said.items() if words == ""
    }


def test_a_level_boom_shows_where_weight_acts() -> None:
    """Where the cosine of the boom angle counts, the load leans on a boom that is drawn level."""
    for seed in range(6):
        problem = make_problem(families()["statics_mouth_moment"], seed=str(seed))
        arrows = re.findall(
            r'<line x1="(\S+)" y1="(\S+)" x2="(\S+)" y2="(\S+)"[^>]*stroke-width="1.2"',
            problem.picture,
        )
        assert len(arrows) == 2
        for arrow in arrows:
            x, y, u, v = map(float, arrow)
            # Lean over fall of the arrow is tan(theta): 0.01 pt on some 27 pt.
            lean, fall = (x - u) / dist((x, y), (u, v)), (v - y) / dist((x, y), (u, v))
            assert lean == pytest.approx(sin(problem.values["theta"]), abs=2e-3)
            assert fall == pytest.approx(cos(problem.values["theta"]), abs=2e-3)
