"""What an examiner decides about marks beyond right and wrong, and how a paper says it.

The usual policy pays for every error once: that is what examiners do by hand, and what a candidate
can be told beforehand in a few sentences.
"""

from typing import Literal

from pydantic import BaseModel, ConfigDict


class Policy(BaseModel):
    """Marking policy: the table ``[marking]`` of a blueprint.

    Attributes
    ----------
    method : str
        Where only the answer is asked for: "known slip" leaves an answer that shows one known slip
        the marks of the other steps that it rests on; "none" gives marks for the right answer alone
    factor : str
        An answer that a unit alone makes wrong, by a power of ten, 9.81 or 12: "once" takes one
        mark, and no second one for the same factor in the same question; "all" takes all marks
    rounding : str
        An answer that is right and rounded further than asked: "one mark" takes one, "free" none,
        "all" takes all
    """

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)

    method: Literal["known slip", "none"] = "known slip"
    factor: Literal["once", "all"] = "once"
    rounding: Literal["one mark", "free", "all"] = "one mark"


USUAL = Policy()

_METHOD = {
    "known slip": "Where only the answer is asked for, an answer that shows one known slip keeps "
    "the marks of the other steps that it rests on; working on paper is not marked.",
    "none": "Where only the answer is asked for, a wrong answer earns nothing; working on paper is "
    "not marked.",
}
_FACTOR = {
    "once": "An answer that is wrong by a unit alone (a power of ten, 9.81 or 12) loses one mark, "
    "and only once in a question.",
    "all": "An answer that is wrong by a unit alone (a power of ten, 9.81 or 12) is wrong.",
}
_ROUNDING = {
    "one mark": "An answer that is right but rounded further than asked loses one mark.",
    "free": "An answer that is right but rounded further than asked loses nothing.",
    "all": "An answer that is rounded further than asked, and so leaves the accepted range, is "
    "wrong.",
}
INTERMEDIATE = "Intermediate results that are rounded to three figures cost nothing."


def policy_notes(policy: Policy, *, answer_alone: bool) -> list[str]:
    """Say a policy in sentences for candidates and markers.

    Parameters
    ----------
    answer_alone : bool
        Whether any question with several steps asks for its answer alone
    """
    alone = [_METHOD[policy.method], INTERMEDIATE] if answer_alone else []
    return [*alone, _FACTOR[policy.factor], _ROUNDING[policy.rounding]]
