"""What a learner hears at once about an answer."""

from collections.abc import Mapping
from dataclasses import dataclass

from boomsim.papers.marking.mark_question import BLANK, PartMark


@dataclass(frozen=True, slots=True, kw_only=True)
class Feedback:
    """What a learner hears at once.

    Attributes
    ----------
    right : bool
        Whether the answer earned its marks
    said : str
        One or two sentences
    """

    right: bool
    said: str

    def __str__(self) -> str:
        """Write the sentences."""
        return self.said


def feedback_on(parts: list[PartMark], names: Mapping[str, str], *, end: str) -> Feedback:
    """Put the marks of the given answers into words.

    Parameters
    ----------
    parts : list of PartMark
        Of the answers that were given
    names : mapping of str to str
        What each letter stands for
    end : str
        Label of the last part
    """
    if not parts:
        return Feedback(right=False, said="Give an answer first, or ask for a hint.")
    last = parts[-1]
    wrong = [part for part in parts if part.status not in ("right", "carried forward", BLANK)]
    if not wrong:
        kind = "Right" if last.status == "right" else "Right for your own earlier value"
        kind += "" if last.label == end else " so far"
        return Feedback(
            right=True, said=f"{kind}.{f' Next time {last.note}.' if last.note else ''}"
        )
    return Feedback(
        right=False, said=" ".join(_said(part, names.get(part.letter, "")) for part in wrong)
    )


def _said(part: PartMark, name: str) -> str:
    """One wrong answer in words; never the right value, so that trying again makes sense."""
    head = f"{name[:1].upper()}{name[1:]}: " if name else ""
    if part.status == "refused":
        return f"{head}{'your' if head else 'Your'} answer {part.note.rstrip('.')}."
    if part.status == "rounded too far":
        return f"{head}right so far, but rounded too far; {part.note}."
    verdict = f"{head}not right." if head else "Not right."
    return f"{verdict} You probably {part.slip}." if part.slip else verdict
