"""``boomsim paper``: examination papers, worked solutions and marking keys from a blueprint."""

import argparse
import shlex

from boomsim.caution import CAUTION
from boomsim.cli.json_printing import print_json
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import paragraph

HELP = "examination papers, worked solutions and marking keys from a blueprint"
EXAMPLE = "boomsim paper quiz-10-minutes --out papers --variants 30"

SECRET = (
    "Hand out nothing from the folder keys, nor the seed: whoever has blueprint and seed can make "
    "the solutions."
)

STOPPED = "no partial files were left; the same command goes on from here."


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument(
        "blueprint",
        metavar="BLUEPRINT",
        help="a ready one, such as theory-paper, or a TOML file: topics, difficulty, marks, time",
    )
    parser.add_argument(
        "--toml", action="store_true", help="print the blueprint instead, to copy and change it"
    )
    parser.add_argument(
        "--out", metavar="DIR", default="papers", help="folder to write to (default: papers)"
    )
    parser.add_argument(
        "--format",
        metavar="NAME",
        action="append",
        help="pdf, large-print, answer-sheet, html, md, json, qti, qti3 or moodle; repeat it for "
        "several (default: pdf)",
    )
    parser.add_argument("--variants", metavar="N", type=int, help="number of different papers")
    parser.add_argument(
        "--seed", metavar="WORD", help="same seed, same papers: secret until the sitting is over"
    )
    parser.add_argument(
        "--units", choices=("metric", "us"), help="of the questions (default: as in the blueprint)"
    )
    parser.add_argument("--json", action="store_true", help="what was written, as JSON")


def run(chosen: argparse.Namespace) -> int:
    """Answer."""
    if chosen.toml:
        return _print_blueprint(chosen.blueprint)
    from boomsim.papers.paper_writing import write_papers

    with Bar() as bar:
        written = write_papers(
            chosen.blueprint,
            chosen.out,
            formats=tuple(chosen.format or ("pdf",)),
            units=chosen.units,
            variants=chosen.variants,
            seed=chosen.seed,
            told=bar.tell,
        )
    if chosen.json:
        print_json(
            "paper",
            {
                "folder": str(written.folder),
                "key": str(written.key),
                "answer_sheet": str(written.sheet),
                "variants": written.variants,
                "made": written.made,
                "kept": written.kept,
                "answer_sheet_kept": written.sheet_kept,
                "effort": written.hardness.effort,
                "simulated_marks": written.hardness.means,
                "marks": written.hardness.marks,
            },
        )
        return 0
    kept = f", {written.kept} were there already" if written.kept else ""
    variants = "1 variant" if written.variants == 1 else f"{written.variants} variants"
    print(f"{written.made} files written to {written.folder}{kept}; {variants}.")
    if written.variants > 1:
        print(paragraph(str(written.hardness)))
    print(f"Marking key: {written.key}. Sheet for the answers: {written.sheet}.")
    if written.sheet_kept:
        print("The answer sheet already has entries; it was not changed.")
    print(f"To mark: {shlex.join(['boomsim', 'mark', str(written.key), str(written.sheet)])}")
    print()
    print(paragraph(f"{SECRET} {CAUTION}"))
    return 0


def _print_blueprint(name: str) -> int:
    from boomsim.papers.blueprint import blueprint_text

    print(blueprint_text(name), end="")
    return 0
