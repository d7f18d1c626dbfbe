"""What an editor would say about a family before it goes into a paper."""

from collections.abc import Iterator

from sympy import Expr
from sympy.core.relational import Relational

from boomsim.papers.language.question_words import letters_in, names_in
from boomsim.papers.numbers.printed_units import METRIC, US
from boomsim.papers.paper_errors import FamilyError
from boomsim.papers.problems.choice_mixing import CHOICES
from boomsim.papers.problems.drawn_review import draw_complaints
from boomsim.papers.problems.family import TOPICS, AnyFamily, Family
from boomsim.papers.problems.formula_dimensions import Dimension, dimension_of, dimension_of_unit
from boomsim.papers.problems.step_solving import needed_by

DRAWS = 8
"""Problems drawn for a quick look, shared among both unit systems and both forms [1]."""


def complaints(family: AnyFamily, *, draws: int = DRAWS) -> list[str]:
    """Find what is wrong with a family and, if nothing is, with problems drawn from it.

    Parameters
    ----------
    family : Family or ChoiceFamily
    draws : int
        How many; 0 looks at the family alone [1]

    Returns
    -------
    list of str
        Empty if nothing is
    """
    found = list(_common(family))
    if isinstance(family, Family):
        found += [*_chain(family), *_wording(family), *_dimensions(family), *_slips(family)]
    found = found or list(draw_complaints(family, draws=draws))
    return [f"{family.id}: {words}" for words in found]


def _common(family: AnyFamily) -> Iterator[str]:
    """Say what both kinds of family need."""
    if isinstance(family, Family) and family.safe not in ("", "less", "more"):
        yield f'`safe` is "{family.safe}", and needs to be "less", "more" or ""'
    if family.topic not in TOPICS:
        yield f'the topic "{family.topic}" is not one of {", ".join(TOPICS)}'
    if not family.text.rstrip().endswith(("?", ".")):
        yield "the text does not end like a sentence"
    if not family.assume.endswith("."):
        yield "`assume` is not a full sentence"
    if family.picture and not family.seen:
        yield "the picture has no words in `seen` for those who do not see it"
    usual = family.usual if isinstance(family, Family) else ()
    for relation in (*family.where, *usual):
        if not isinstance(relation, Relational) or not relation.free_symbols:
            yield f"{relation} is demanded, which sympy has already decided; use plain symbols"
    for one in family.givens:
        if one.spread(METRIC).unit.si != one.spread(US).unit.si:
            yield f"{one.name} is measured differently in metric and US units"


def _chain(family: Family) -> Iterator[str]:
    """Each step uses only what is known by then, and leads to the answer."""
    known = {one.name for one in family.givens}
    used = set().union(*(step.needs for step in family.steps)) | _in_slips(family)
    drawn = {one.name for one in family.givens if not one.spread(METRIC).count}
    yield from (f"{name} is given and never used" for name in sorted(known - used - drawn))
    for step in family.steps:
        if step.needs - known:
            yield f"{step.name} needs {', '.join(sorted(step.needs - known))}, not known by then"
        known.add(step.name)
        if step.metric and step.unit(METRIC).si != step.unit(US).si:
            yield f"{step.name} is measured differently in metric and US units"
        if not step.unit(METRIC).quantity:
            yield f"{step.name}: answers in {step.metric} cannot be read"
        if not step.does.endswith("."):
            yield f"what {step.name} does is not a full sentence"
    last = family.steps[-1].name
    if family.by_check:
        return
    idle = {step.name for step in family.steps[:-1]} - needed_by(family, last)
    yield from (f"{name} does not lead to {last}" for name in sorted(idle))


def _in_slips(family: Family) -> set[str]:
    """Letters that only a slip uses: bait."""
    return {str(letter) for slip in family.slips for letter in slip.formula.free_symbols}


def _wording(family: Family) -> Iterator[str]:
    """See whether the text names every given that the solution uses."""
    named = names_in(family.text)
    for one in family.givens:
        drawn = not one.spread(METRIC).count
        if one.name not in named and not drawn and not family.picture:
            yield f"{one.name} is neither in the text nor in a picture"
    given = {one.name for one in family.givens}
    solved = set().union(*(step.needs for step in family.steps if not step.is_reading))
    for name in sorted(solved & given - letters_in(family.text + family.assume)):
        yield f"the solution uses {name}, which the text does not introduce: write {{{name}=}}"


def _dimensions(family: Family) -> Iterator[str]:
    """Formulas and slips have the dimension of their unit."""
    letters: dict[str, Dimension] = {
        one.name: dimension_of_unit(one.spread(METRIC).unit.si) for one in family.givens
    }
    letters |= {step.name: dimension_of_unit(step.unit(METRIC).si) for step in family.steps}
    pairs = [(step.name, step.formula) for step in family.steps]
    pairs += [(str(slip.step), slip.formula) for slip in family.slips]
    yield from (f for name, formula in pairs if (f := _unlike(name, formula, letters)))


def _unlike(name: str, formula: Expr, letters: dict[str, Dimension]) -> str:
    """Say why a formula has the wrong dimension, or ""."""
    try:
        right = dimension_of(formula, letters) == letters[name]
    except FamilyError as error:
        return str(error)
    except KeyError as error:
        return f"{name} uses {error}, which is neither a given nor a step"
    return "" if right else f"{name} = {formula} has not the dimension of its unit"


def _slips(family: Family) -> Iterator[str]:
    """Enough slips, each in a step that exists and with what is known by then."""
    if len(family.slips) < CHOICES - 1:
        yield f"it has {len(family.slips)} slips and needs at least {CHOICES - 1}"
    words = [slip.words for slip in family.slips]
    yield from (f'two slips are "{one}"' for one in sorted(set(words)) if words.count(one) > 1)
    known = {one.name for one in family.givens}
    before: dict[str, set[str]] = {}
    for step in family.steps:
        before[step.name] = set(known)
        known.add(step.name)
    for slip in family.slips:
        if str(slip.step) not in before:
            yield f'the slip "{slip.words}" is in no step'
        elif {str(one) for one in slip.formula.free_symbols} - before[str(slip.step)]:
            yield f'the slip "{slip.words}" uses what is not known by then'
