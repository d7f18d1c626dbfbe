"""Answers from a JSON file, in which numbers stay text."""

import json
from collections import Counter
from collections.abc import Iterator

from boomsim.papers.marking.answer_sheets import Refusal, Sheet, label_of, short
from boomsim.papers.paper_errors import PaperError


def json_rows(data: bytes, name: str, refused: list[Refusal]) -> Iterator[Sheet]:
    """Read a JSON list. Numbers stay text, so no size of number does any harm."""
    try:
        rows = json.loads(
            data.removeprefix(b"\xef\xbb\xbf").decode("utf-8"),
            parse_int=str, parse_float=str, parse_constant=str, object_pairs_hook=_pairs,
        )  # fmt: skip
    except (ValueError, RecursionError) as error:
        raise PaperError(
            f"{name} is not JSON: {str(error)[:80]}. Mend it, or use the sheet that came with the "
            "papers."
        ) from None
    if not isinstance(rows, list):
        raise PaperError(
            f"{name} needs a list of objects with candidate, variant and answers. Write it so, or "
            "use the sheet that came with the papers."
        )
    for row, one in enumerate(rows, start=1):
        if sheet := _json_row(row, one, refused):
            yield sheet


class _Twice(str):
    """Marks a name that stands twice in one object."""


def _pairs(pairs: list[tuple[str, object]]) -> dict[str, object]:
    """Make an object; a repeated name keeps neither value."""
    counts = Counter(name for name, _ in pairs)
    return {name: value if counts[name] == 1 else _Twice("twice") for name, value in pairs}


def _json_row(row: int, one: object, refused: list[Refusal]) -> Sheet | None:
    """One candidate of a JSON file."""
    fields = one if isinstance(one, dict) else {}
    name, variant, answers = (fields.get(key) for key in ("candidate", "variant", "answers"))
    if not isinstance(name, str) or not isinstance(variant, str) or not isinstance(answers, dict):
        reason = "needs candidate and variant, each as text, and answers, each once"
        refused.append(Refusal(row=row, candidate=short(name), column="", reason=reason))
        return None
    kept: dict[str, str] = {}
    for column, value in answers.items():
        label = label_of(column)
        if not label or label in kept or not isinstance(value, str) or isinstance(value, _Twice):
            reason = "is no question, stands twice or has no text or number for an answer"
            refused.append(
                Refusal(row=row, candidate=short(name), column=short(column), reason=reason)
            )
        elif value.strip():
            kept[label] = value
    code = fields.get("code")
    typed = code if isinstance(code, str) else ""
    return Sheet(row=row, candidate=name, variant=variant.strip(), answers=kept, code=typed)
