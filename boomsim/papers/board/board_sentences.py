"""What a board reads, in sentences and rows; the text and the page say the same."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from boomsim.papers.board.board_study import Board
from boomsim.papers.board.cut_score import METHOD, Cut
from boomsim.papers.board.item_analysis import Item, Way
from boomsim.papers.board.mark_reliability import Reliability
from boomsim.papers.marking.class_plot import WEAK

NOT_TOLD = "–"


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One section of the report.

    Attributes
    ----------
    head : tuple of str
        Of the table; () for none
    """

    title: str
    sentences: tuple[str, ...] = ()
    head: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


def sections(board: Board) -> Iterator[Section]:
    """Write the report of a board."""
    yield Section(title="The class", sentences=tuple(_class(board)))
    if not board.count:
        return
    yield _reliability(board)
    yield from _standard(board)
    yield _questions(board)
    yield _outcomes(board)
    yield from _ways(board)
    yield Section(title="Questions to look at", sentences=tuple(_look(board)))


def _class(board: Board) -> Iterator[str]:
    """Size, mean and range, and what they leave open."""
    ones = board.marked.candidates
    if ones:
        shares = [one.marks / one.most for one in ones]
        mean = math.fsum(shares) / len(shares)
        spread = f", from {min(shares):.0%} to {max(shares):.0%}" if len(ones) > 1 else ""
        yield f"{_candidates(len(ones))}; mean {mean:.0%} of the marks{spread}."
    yield from board.cautions


def _candidates(count: int) -> str:
    """Number of candidates."""
    return "1 candidate" if count == 1 else f"{count} candidates"


def _reliability(board: Board) -> Section:
    """Alpha, its interval, and what it means for a single candidate."""
    found = board.reliability
    if not isinstance(found, Reliability):
        return Section(title="Reliability", sentences=(found,))
    said = [
        f"Cronbach's alpha is {found.alpha:.2f}; the 95 % interval after Feldt is {found.low:.2f} "
        f"to {found.high:.2f}, from {found.questions} questions and {found.candidates} candidates."
    ]
    if found.alpha > 0:
        said.append(
            f"A candidate's total is uncertain by about {found.error:.1f} marks either way (one "
            "standard error of measurement)."
        )
    else:
        said.append("Below zero, the questions have less in common than chance would give.")
    return Section(title="Reliability", sentences=tuple(said))


def _standard(board: Board) -> Iterator[Section]:
    """Cut score, its uncertainty, and how many pass."""
    if board.judged is None:
        return
    judges = len(board.judged.judges)
    said = [f"Method: {METHOD}; {'1 judge' if judges == 1 else f'{judges} judges'}."]
    said += [_cut(one) for one in board.cuts]
    said.append(f"{_candidates(board.passed())} of {board.count} reach it.")
    errors = [one.error for one in board.cuts]
    if errors[0] is None:
        said.append("How far judges agree cannot be told from one judge.")
    elif len(errors) == 1:
        fewer, more = board.passed(shift=errors[0]), board.passed(shift=-errors[0])
        said.append(
            f"One standard error higher it would be {fewer}, one standard error lower {more}."
        )
    rows = [
        (name, *(f"{one.by_judge[place]:.1f}" for one in board.cuts))
        for place, name in enumerate(board.judged.judges)
    ]
    heads = ["cut score"] if len(board.cuts) == 1 else [f"set {n + 1}" for n in range(len(errors))]
    yield Section(title="Standard", sentences=tuple(said), head=("judge", *heads), rows=tuple(rows))


def _cut(one: Cut) -> str:
    """One cut score."""
    error = "" if one.error is None else f" (standard error over judges {one.error:.1f})"
    return (
        f"The cut score is {one.marks:.1f} of {one.most} marks{error}: {one.passes_at} marks pass."
    )


def _questions(board: Board) -> Section:
    """Facility and discrimination."""
    rows = tuple(
        (one.name, one.title, str(one.count), str(one.most), f"{one.facility:.2f}", _told(one))
        for one in board.items
    )
    return Section(
        title="Questions",
        sentences=(
            "Facility is the mean share of the marks. Discrimination is the correlation of the "
            "question with the rest of the paper.",
        ),
        head=("question", "about", "answers", "marks", "facility", "discrimination"),
        rows=rows,
    )


def _told(one: Item) -> str:
    """Discrimination, or a dash."""
    return f"{one.discrimination:.2f}" if math.isfinite(one.discrimination) else NOT_TOLD


def _outcomes(board: Board) -> Section:
    """By topic."""
    rows = tuple(
        (one.topic, f"{one.share:.0%}", ", ".join(one.questions), one.weakest.title)
        for one in board.outcomes
    )
    return Section(
        title="Learning outcomes",
        head=("topic", "marks earned", "questions", "weakest question"),
        rows=rows,
    )


def _ways(board: Board) -> Iterator[Section]:
    """Every wrong way of every question, by thirds."""
    for one in board.items:
        rows = tuple(_way(way, board) for way in one.ways if way.count or way.is_slip)
        thirds = ("lower third", "middle", "upper third") if board.shows_thirds else ("candidates",)
        yield Section(
            title=f"{one.name} {one.title}: how it was answered",
            head=("way", *thirds), rows=rows,
        )  # fmt: skip


def _way(way: Way, board: Board) -> tuple[str, ...]:
    """One way to answer."""
    counts = way.counts if board.shows_thirds else (way.count,)
    return (f"slip: {way.words}" if way.is_slip else way.words, *map(str, counts))


def _look(board: Board) -> Iterator[str]:
    """Name questions and wrong ways that are worth a look."""
    found = [words for one in board.items for words in _faults(one, board)]
    yield from found or ["Nothing stands out."]


def _faults(one: Item, board: Board) -> Iterator[str]:
    """What is strange about one question."""
    if one.discrimination < 0:
        yield f"Question {one.name}: the better the rest of a paper, the worse this question."
    elif one.discrimination < WEAK:
        yield (
            f"Question {one.name}: discrimination {one.discrimination:.2f} is below {WEAK:.1f}; it "
            "hardly tells those who know from those who do not."
        )
    if board.count >= 2 and one.facility in (0.0, 1.0):
        everybody = "Everybody earned all" if one.facility else "Nobody earned any"
        yield f"Question {one.name}: {everybody} of its marks."
    if board.shows_thirds:
        yield from (
            f"Question {one.name}: more of the upper third than of the lower "
            f'"{way.words}" ({way.counts[2]} and {way.counts[0]}).'
            for way in one.ways
            if way.draws_the_best
        )
