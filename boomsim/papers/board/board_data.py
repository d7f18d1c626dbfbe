"""What a board is told, as plain data; what cannot be told is null and has its reason."""

from dataclasses import asdict
from typing import Any

from boomsim.papers.board.board_study import Board
from boomsim.papers.board.cut_score import METHOD
from boomsim.papers.board.item_analysis import Item
from boomsim.papers.board.mark_reliability import Reliability


def board_data(board: Board) -> dict[str, Any]:
    """Turn the study of a board into plain data."""
    found = board.reliability if board.count else "Nobody could be marked."
    told = isinstance(found, Reliability)
    return {
        "cautions": list(board.cautions),
        "reliability": asdict(found) if isinstance(found, Reliability) else None,
        "reliability_reason": "" if told else found,
        "standard": _standard(board) if board.judged and board.count else None,
        "items": [_item(one) for one in board.items],
        "outcomes": [
            {"topic": one.topic, "share": one.share, "questions": list(one.questions)}
            for one in board.outcomes
        ],
    }


def _standard(board: Board) -> dict[str, Any]:
    """Cut scores and who reaches them."""
    return {
        "method": METHOD,
        "judges": list(board.judged.judges) if board.judged else [],
        "cuts": [
            {
                "marks": one.marks, "passes_at": one.passes_at, "of": one.most,
                "standard_error": one.error, "by_judge": list(one.by_judge),
            }
            for one in board.cuts
        ],
        "passed": board.passed(),
    }  # fmt: skip


def _item(one: Item) -> dict[str, Any]:
    """One question with every way in which it was answered."""
    return {
        "name": one.name, "family": one.key, "topic": one.topic, "facility": one.facility,
        "discrimination": one.discrimination,
        "ways": [
            {
                "words": way.words, "slip": way.is_slip,
                "lower": way.counts[0], "middle": way.counts[1], "upper": way.counts[2],
            }
            for way in one.ways
        ],
    }  # fmt: skip
