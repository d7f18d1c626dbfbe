"""``boomsim mark``: mark answers with errors carried forward."""

import argparse
from math import isfinite
from typing import TYPE_CHECKING

from boomsim.cli.answer import print_json, table
from boomsim.cli.progress import Bar

if TYPE_CHECKING:
    from boomsim.papers.marking.mark import CandidateMark, Marked

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
        "--report", metavar="DIR", help="write a page for each candidate and one for the class"
    )
    parser.add_argument("--json", action="store_true", help="the marks as JSON and nothing else")


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.papers.marking.mark import mark

    with Bar() as bar:
        marked = mark(chosen.key, chosen.answers, locale=chosen.locale, told=bar.tell)
    if chosen.report:
        from boomsim.papers.marking.report import write_report

        write_report(marked, chosen.report)
    if chosen.json:
        from boomsim.papers.marking.marks_tables import marks_data

        print_json("mark", marks_data(marked))
    else:
        print(_as_text(marked, chosen.report))


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
    if marked.unchecked:
        pieces.append(marked.unchecked)
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
