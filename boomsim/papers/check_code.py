"""The check code of a paper: right answers to the right paper.

It follows from the blueprint, the seed, the variant, this program's version and the questions
themselves. Papers, answer sheet, key and packages carry it, and answers of another sitting are
noticed. It has consonants only, so that no spreadsheet takes it for a number and nobody for a word.
"""

import hashlib
import json
import re
from functools import lru_cache

import segno

from boomsim import __version__
from boomsim.papers.paper import Paper, Question

LETTERS = "BCDFGHJKLMNPQRSTVWXZ"
LENGTH = 6
"""Letters: one of 64 million codes [1]."""

QUIET = 4
"""White modules around a QR code, which readers need [1]."""

_NOT_LETTERS = re.compile(r"[^A-Z]")


def code_of(paper: Paper) -> str:
    """Find the check code of one variant.

    Returns
    -------
    str
        "BCDFGH"
    """
    plan = paper.plan.model_dump(exclude={"variants"})  # more variants leave the others as they are
    told = [__version__, plan, paper.variant, [_told(one) for one in paper.questions]]
    text = json.dumps(told, sort_keys=True, ensure_ascii=True)
    number = int.from_bytes(hashlib.sha256(text.encode()).digest(), "big")
    letters = []
    for _ in range(LENGTH):
        number, place = divmod(number, len(LETTERS))
        letters.append(LETTERS[place])
    return "".join(letters)


def qr_text(paper: Paper) -> str:
    """Write what the QR code of a paper says.

    Returns
    -------
    str
        "BOOMSIM BCDFGH 01": check code and variant
    """
    return f"BOOMSIM {code_of(paper)} {paper.variant}"


@lru_cache(maxsize=16)  # of every kind of page of one paper it is the same
def qr_svg(paper: Paper) -> str:
    """Draw the QR code of a paper.

    Returns
    -------
    str
        SVG; error level M, with the quiet zone of four modules that readers need
    """
    made = segno.make(qr_text(paper), error="m", boost_error=False, micro=False)
    side = len(made.matrix) + 2 * QUIET
    dark = "".join(
        f"M{x + QUIET} {y + QUIET}h1v1h-1z"
        for y, row in enumerate(made.matrix)
        for x, module in enumerate(row)
        if module
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}">'
        f'<path fill="#000" d="{dark}"/></svg>'
    )


def tidy(code: str) -> str:
    """Bring a code to the form in which it is printed.

    Parameters
    ----------
    code : str
        As typed: "bcd fgh"
    """
    return _NOT_LETTERS.sub("", code.upper())


def _told(question: Question) -> dict[str, object]:
    """What makes a question this one."""
    problem = question.problem
    return {
        "family": problem.family.id, "form": problem.form, "guided": question.guided,
        "givens": {name: amount.plain() for name, amount in problem.givens.items()},
        "answer": {name: amount.plain() for name, amount in problem.results.items()},
        "words": dict(problem.words), "right": problem.right,
    }  # fmt: skip
