"""Finds the problem families: every module in :mod:`boomsim.papers.families` has one."""

import importlib
import pkgutil
from collections.abc import Mapping
from functools import lru_cache

from boomsim.papers import families as shelf
from boomsim.papers.paper_errors import FamilyError
from boomsim.papers.problems.family import TOPICS, AnyFamily
from boomsim.units import did_you_mean


@lru_cache(maxsize=1)
def families() -> Mapping[str, AnyFamily]:
    """Load all families.

    Returns
    -------
    mapping of str to Family or ChoiceFamily
        By id, in the order of the topics and then of the ids
    """
    names = sorted(module.name for module in pkgutil.iter_modules(shelf.__path__))
    found = [_load(name) for name in names]
    ordered = sorted(found, key=lambda family: (TOPICS.index(family.topic), family.id))
    return {family.id: family for family in ordered}


def family_named(name: str) -> AnyFamily:
    """Look a family up by its id."""
    known = families()
    if name not in known:
        raise FamilyError(
            f'There is no problem family "{name[:60]}".{did_you_mean(name, known)} They are the '
            "files of boomsim/papers/families."
        )
    return known[name]


def find_families(words: str) -> tuple[AnyFamily, ...]:
    """Find families by topic, id, or words of their titles.

    Parameters
    ----------
    words : str
        "statics", "statics_pad_force", "pad forces"

    Returns
    -------
    tuple of Family or ChoiceFamily
        At least one
    """
    wanted = words.strip().lower()
    every = families().values()
    exact = tuple(one for one in every if wanted in (one.topic, one.id, one.title.lower()))
    loose = tuple(one for one in every if _stems(wanted) <= _stems(one.title) | {one.topic})
    found = exact or (loose if wanted else ())
    if found:
        return found
    names = [*TOPICS, *families(), *(one.title for one in every)]
    raise FamilyError(
        f'No problem family has to do with "{words[:60]}".{did_you_mean(wanted, names)} '
        f"The topics are {', '.join(TOPICS)}."
    )


def _stems(text: str) -> set[str]:
    """Words without a plural s, so that "pad force" finds "Pad forces"."""
    return {word.rstrip("s") for word in text.lower().replace("_", " ").split()}


def _load(name: str) -> AnyFamily:
    """Import one module and take its family."""
    module = importlib.import_module(f"{shelf.__name__}.{name}")
    family = getattr(module, "FAMILY", None)
    if not isinstance(family, AnyFamily) or family.id != name or family.topic not in TOPICS:
        raise FamilyError(
            f"boomsim/papers/families/{name}.py needs a FAMILY whose id is {name!r} and whose "
            f"topic is one of {', '.join(TOPICS)}."
        )
    return family
