"""``boomsim markers``: two markers of one sitting compared."""

import argparse
from typing import TYPE_CHECKING

from boomsim.cli.json_printing import print_json
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from boomsim.papers.board.two_markers import Agreed, Compared

HELP = "two markers compared: agreement, Cohen's kappa, and every disagreement"
EXAMPLE = "boomsim markers report/marks.csv second-marker.csv"

UNWEIGHTED = (
    "Kappa is the agreement beyond chance: 1 is full agreement, 0 no more than chance. It is not "
    "weighted: two marks apart counts as much as one. A dash stands where both gave one and the "
    "same mark throughout, so that chance alone agrees."
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("first", metavar="MARKS", help="marks.csv of a report, or one like it")
    parser.add_argument("second", metavar="MARKS", help="the same papers marked by somebody else")
    parser.add_argument("--json", action="store_true", help="the comparison as JSON")


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.papers.board.two_markers import compare_markers

    found = compare_markers(chosen.first, chosen.second)
    if chosen.json:
        print_json("markers", {"compared": found})
    else:
        print(_as_text(found))


def _as_text(found: "Compared") -> str:
    head = ["question", "marks", "the same", "kappa", "second gives less by"]
    rows = [_row(one) for one in (*found.questions, found.whole)]
    pieces = [table(head, rows), paragraph(UNWEIGHTED)]
    if found.disagreements:
        apart = [
            [one.question, one.candidate, str(one.one), str(one.other)]
            for one in found.disagreements
        ]
        pieces.append(table(["question", "candidate", "first", "second"], apart))
    else:
        pieces.append("There is no disagreement.")
    if found.single:
        pieces.append("Marked by one of the two only: " + ", ".join(found.single) + ".")
    return "\n\n".join(pieces)


def _row(one: "Agreed") -> list[str]:
    """One question, or all of them."""
    said = "-" if one.kappa is None else f"{one.kappa:.2f}"
    return [one.question or "all", str(one.count), f"{one.share:.0%}", said, f"{one.harder:+.2f}"]
