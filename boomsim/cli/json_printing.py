"""Printing an answer; how it is laid out is the reports' business."""

import json
from typing import Any

from boomsim.cli import standard_streams as streams
from boomsim.reports.json_schema import headed


def print_json(kind: str, answer: dict[str, Any]) -> None:
    """Print an answer as JSON: a schema version, the caution, no NaN (null instead).

    Parameters
    ----------
    kind : str
        Which command answers
    answer : dict
        SI numbers, arrays and strings
    """
    # Readable where standard output can hold every character, and the same in every code page.
    narrow = not streams.is_utf_8()
    print(json.dumps(headed(kind, answer), indent=1, allow_nan=False, ensure_ascii=narrow))
