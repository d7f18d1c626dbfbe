"""Data for JSON with stable keys: the number of their schema, and what stands before an answer."""

import math
from typing import Any

from boomsim.caution import CAUTION
from boomsim.version import __version__

SCHEMA = 4
"""Version of the keys of every --json answer; grows when a key changes its meaning.

2: a rule is told with all that is in it; where the crane turns over with its empty hook; a chart's
blank cells have reasons of many kinds.
3: losses list "effects", which were "takers"; parts of line are those that a boom is reeved in, and
the empty hook hangs with the falls of its rope.
"""


def headed(kind: str, answer: dict[str, Any]) -> dict[str, Any]:
    """Put the schema's version and the caution before an answer, and null for NaN.

    Parameters
    ----------
    kind : str
        Which study answers
    answer : dict
        SI numbers, arrays and strings

    Returns
    -------
    dict
        Of what JSON can hold
    """
    head = {
        "schema": f"boomsim.{kind}/{SCHEMA}",
        "boomsim": __version__,
        "caution": CAUTION,
    }
    found: dict[str, Any] = plain({**head, **answer})
    return found


def plain(value: Any) -> Any:
    """Turn arrays and dataclasses into lists and dicts, and what is not a number into null."""
    from dataclasses import fields, is_dataclass

    if isinstance(value, dict):
        return {str(key): plain(item) for key, item in value.items()}
    if hasattr(value, "as_data"):
        return plain(value.as_data())
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, (list, tuple)):
        return [plain(item) for item in value]
    if hasattr(value, "tolist"):
        return plain(value.tolist())
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return value
