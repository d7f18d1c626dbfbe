"""``boomsim mark``: mark answers with errors carried forward."""

import argparse
from math import isfinite
from pathlib import Path
from typing import TYPE_CHECKING

from boomsim.cli.json_printing import print_json
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import table

if TYPE_CHECKING:
    from boomsim.papers.board.board_study import Board
    from boomsim.papers.board.candidate_roster import Roster
    from boomsim.papers.marking.mark_class import CandidateMark, Marked

HELP = "mark answers with errors carried forward, and report on each candidate and on the class"
EXAMPLE = "boomsim mark papers/keys/key.json answers.csv --report report"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("key", metavar="KEY", help="key.json that came with the papers")
    parser.add_argument("answers", metavar="ANSWERS", help="CSV or JSON file with the answers")
    parser.add_argument(
        "--locale",
        metavar="NAME",
        help="how numbers are written, such as de for 12,5; never guessed (default: 12.5)",
    )
    parser.add_argument(
        "--report",
        metavar="DIR",
        help="write a page for each candidate, one for the class and a report for the board",
    )
    parser.add_argument(
        "--judges", metavar="FILE",
        help="CSV: judge, and for each question the per cent of its marks that candidates who only "
        "just pass would earn; sets a cut score",
    )  # fmt: skip
    parser.add_argument(
        "--gradebook", metavar="FILE", help="write a CSV with marks, per cent and result"
    )
    parser.add_argument(
        "--roster", metavar="FILE",
        help="CSV: candidate, name; the names go into the gradebook and nowhere else",
    )  # fmt: skip
    parser.add_argument("--json", action="store_true", help="the marks as JSON and nothing else")


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.papers.board.board_study import Board
    from boomsim.papers.board.candidate_roster import gradebook, read_roster
    from boomsim.papers.board.cut_score import read_judgements
    from boomsim.papers.marking.mark_class import mark

    _refuse_places(chosen)
    with Bar() as bar:
        marked = mark(chosen.key, chosen.answers, locale=chosen.locale, told=bar.tell)
    board = Board(marked=marked)
    if chosen.judges:
        board = Board(marked=marked, judged=read_judgements(chosen.judges, board.items))
    roster = read_roster(chosen.roster) if chosen.roster else None
    if chosen.report:
        _write_report(board, chosen.report)
    if chosen.gradebook:
        from boomsim.files.whole_files import write_whole

        grades = gradebook(marked, roster=roster, judged=board.judged)
        write_whole(Path(chosen.gradebook), grades.encode())
    if chosen.json:
        from boomsim.papers.board.board_data import board_data
        from boomsim.papers.marking.marks_tables import marks_data

        print_json("mark", marks_data(marked) | {"board": board_data(board)})
        return
    pieces = [_as_text(marked, chosen.report), *_of_board(board)]
    if roster:
        pieces += _of_roster(board, roster)
    if chosen.gradebook:
        pieces.append(f"The gradebook is in {chosen.gradebook}.")
    print("\n\n".join(pieces))


def _refuse_places(chosen: argparse.Namespace) -> None:
    """Keep names out of a folder that is shown around, before anything is marked."""
    if chosen.roster and not chosen.gradebook:
        raise ValueError(
            "--roster has names for a gradebook, and there is none. Name its file with --gradebook."
        )
    if not chosen.gradebook:
        return
    from boomsim.files.whole_files import refuse_target

    place = Path(chosen.gradebook).resolve()
    if chosen.roster and chosen.report and Path(chosen.report).resolve() in place.parents:
        raise ValueError(
            f"The gradebook {chosen.gradebook} would lie in the report {chosen.report}, which is "
            "free of names. Name a file elsewhere."
        )
    refuse_target(Path(chosen.gradebook))


def _write_report(board: "Board", folder: str) -> None:
    """Write the report with its page for the board."""
    from boomsim.papers.board.board_report import board_page, board_text
    from boomsim.papers.marking.marking_report import write_report

    more = {"board.html": board_page(board), "board.txt": board_text(board)}
    write_report(board.marked, folder, more=more)


def _of_board(board: "Board") -> list[str]:
    """Reliability and standard; the report has the rest."""
    from boomsim.papers.board.board_sentences import sections

    shown = [
        one for one in sections(board) if one.title in ("The class", "Reliability", "Standard")
    ]
    return ["\n".join([f"{one.title}:", *(f"  {said}" for said in one.sentences)]) for one in shown]


def _of_roster(board: "Board", roster: "Roster") -> list[str]:
    """Say who is missing on either side."""
    from boomsim.papers.board.candidate_roster import strangers

    unknown, absent = strangers(board.marked, roster)
    said = [f"Not in the roster: {', '.join(unknown)}."] if unknown else []
    return said + ([f"In the roster and without answers: {', '.join(absent)}."] if absent else [])


def _as_text(marked: "Marked", report: str | None) -> str:
    rows = [[one.candidate, one.variant, _marks(one), _slip(one)] for one in marked.candidates]
    questions = [
        [one.name, one.title, str(one.count), f"{one.facility:.2f}", _said(one.discrimination)]
        for one in marked.figures
    ]
    pieces = [table(["candidate", "paper", "marks", "likely slips"], rows)]
    head = ["question", "about", "answers", "facility", "discrimination"]
    pieces.append(table(head, questions))
    if marked.refusals:
        said = [f"  {refusal}" for refusal in marked.refusals]
        pieces.append("\n".join(["Not marked; look at these yourself:", *said]))
    if marked.unanswered:
        pieces.append("No answers came for: " + ", ".join(marked.unanswered) + ".")
    if report:
        pieces.append(f"The report is in {report}.")
    return "\n\n".join(pieces)


def _marks(one: "CandidateMark") -> str:
    """Marks, and whether they may still change."""
    return f"{one.marks:g} of {one.most:g}{', provisional' if one.unread else ''}"


def _said(discrimination: float) -> str:
    """A dash where all earned the same, and nothing can be told apart."""
    return f"{discrimination:.2f}" if isfinite(discrimination) else "-"


def _slip(one: "CandidateMark") -> str:
    return "; ".join(dict.fromkeys(slip for q in one.questions for slip in q.slips)) or "-"
