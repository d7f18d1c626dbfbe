"""``boomsim scan``: answers from scanned answer sheets."""

import argparse
import shlex
from pathlib import Path
from typing import TYPE_CHECKING

from boomsim.cli.json_printing import print_json
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from boomsim.papers.scans.scan_reading import Doubt, ScansRead

HELP = "answers from scanned answer sheets; what is doubtful is referred to you, never guessed"
EXAMPLE = "boomsim scan papers/keys/key.json scans.pdf --out read.csv"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("key", metavar="KEY", help="key.json that came with the papers")
    parser.add_argument("scans", metavar="SCANS", nargs="+", help="PDF, PNG, JPEG or TIFF files")
    parser.add_argument(
        "--out", metavar="FILE", default="read.csv",
        help="CSV with the answers, for boomsim mark (default: read.csv)",
    )  # fmt: skip
    parser.add_argument(
        "--doubtful", metavar="DIR",
        help="folder for a picture of each doubtful answer (default: beside the CSV)",
    )  # fmt: skip
    parser.add_argument(
        "--locale", metavar="NAME",
        help="the one that you will name to boomsim mark: with de numbers are written 12,5",
    )  # fmt: skip
    parser.add_argument("--json", action="store_true", help="what was read, as JSON")


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    from boomsim.files.whole_files import refuse_target, write_whole
    from boomsim.papers.scans.scan_reading import read_scans

    out = Path(chosen.out)
    refuse_target(out)
    with Bar() as bar:
        read = read_scans(chosen.key, chosen.scans, locale=chosen.locale, told=bar.tell)
    write_whole(out, read.csv().encode())
    folder = Path(chosen.doubtful) if chosen.doubtful else out.with_name(f"{out.stem}-doubtful")
    names = [_name(number, one) for number, one in enumerate(read.doubts, start=1)]
    for name, one in zip(names, read.doubts, strict=True):
        if one.picture:
            write_whole(folder / name, one.picture)
    if chosen.json:
        print_json("scan", _data(read, out, folder, names))
        return
    print(_as_text(read, names, folder))
    mark = ["boomsim", "mark", chosen.key, str(out)]
    mark += ["--locale", chosen.locale] if chosen.locale else []
    print(f"\nThe answers are in {out}. To mark: {shlex.join(mark)}")


def _name(number: int, one: "Doubt") -> str:
    """File of a picture; "" where there is none."""
    return f"{number:03d}-{one.candidate.replace(' ', '-')}-{one.label}.png" if one.picture else ""


def _data(read: "ScansRead", out: Path, folder: Path, names: list[str]) -> dict[str, object]:
    doubts = [
        {
            "where": one.where, "candidate": one.candidate, "question": one.label,
            "reason": one.reason, "picture": str(folder / name) if name else None,
        }
        for name, one in zip(names, read.doubts, strict=True)
    ]  # fmt: skip
    return {
        "answers": str(out), "pages": read.pages, "candidates": len(read.rows),
        "certain": read.certain, "doubtful": doubts,
    }  # fmt: skip


def _as_text(read: "ScansRead", names: list[str], folder: Path) -> str:
    first = (
        f"Pages: {read.pages}. Candidates: {len(read.rows)}. Answers read for certain: "
        f"{read.certain}."
    )
    if not read.doubts:
        return f"{first} Nothing is doubtful."
    head = ["where", "candidate", "question", "reason", "picture"]
    rows = [
        [one.where, one.candidate or "-", one.label or "-", one.reason, name or "-"]
        for name, one in zip(names, read.doubts, strict=True)
    ]
    what = paragraph(
        "Look at these yourself, and write what you see into the CSV in the place of the question "
        f"mark; until then they are not marked. Pictures are in {folder}."
    )
    return "\n\n".join([first, table(head, rows), what])
