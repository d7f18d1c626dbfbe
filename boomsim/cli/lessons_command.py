"""``boomsim lessons``: a folder with the lessons as pages, for any web server or an LMS."""

import argparse
from importlib.util import find_spec
from pathlib import Path

from boomsim.caution import CAUTION
from boomsim.cli.json_printing import print_json
from boomsim.cli.progress_bar import Bar
from boomsim.cli.web_address import web_address
from boomsim.reports.text_tables import paragraph

HELP = "a folder with the lessons as pages that need no network, for a web server or an LMS"
EXAMPLE = "boomsim lessons my-lessons --lesson 02 --lesson 05"

NEEDS = ("IPython", "mistune")
"""What runs a notebook's cells, and what sets its words."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("folder", metavar="DIR", help="where to put them; made if it is not there")
    parser.add_argument(
        "--lesson",
        metavar="NUMBER",
        action="append",
        help="such as 02 or same-length; repeat it for several (default: all)",
    )
    parser.add_argument(
        "--runtime",
        metavar="FOLDER",
        help="of Python for browsers: the crane is then live in the folder, from one copy of it",
    )
    parser.add_argument(
        "--address",
        metavar="URL",
        help="where the folder will lie on the web: links to the live crane and their QR codes "
        "begin with it; goes with --runtime",
    )
    parser.add_argument("--units", choices=("metric", "us"), default="metric", help="of all pages")
    parser.add_argument("--json", action="store_true", help="say what was written as JSON")


def run(chosen: argparse.Namespace) -> None:
    """Write them."""
    folder = Path(chosen.folder)
    if folder.exists() and not folder.is_dir():
        raise ValueError(f"{folder} is a file. Name a folder; it is made if it is not there.")
    address = _address(chosen)
    _refuse_without_notebooks()
    from boomsim.classroom.pages.lesson_folder import lesson_folder
    from boomsim.files.folder_lock import only_writer
    from boomsim.files.whole_files import write_whole
    from boomsim.lab.live.bytecode import find_compiler
    from boomsim.lab.live.python_runtime import read_runtime
    from boomsim.lessons.lesson_order import LESSONS, lessons_named

    lessons = tuple(sorted(lessons_named(chosen.lesson), key=LESSONS.index))
    runtime = None if chosen.runtime is None else read_runtime(chosen.runtime)
    # All pages are made before the first is written: a fault leaves nothing half done.
    with Bar() as bar:
        made = lesson_folder(
            lessons,
            units=chosen.units,
            runtime=runtime,
            compiler=None if runtime is None else find_compiler(),
            address=address,
            told=bar.tell,
        )
    with only_writer(folder):
        for name, content in made.items():
            write_whole(folder / name, content)
    if chosen.json:
        print_json("lessons", {"folder": str(folder), "files": sorted(made)})
        return
    print(paragraph(_said(folder, made, live=runtime is not None)), paragraph(CAUTION), sep="\n\n")


def _address(chosen: argparse.Namespace) -> str:
    """Where the folder will lie; empty where nobody says."""
    if chosen.address is None:
        return ""
    if chosen.runtime is None:
        raise ValueError(
            "--address is for links to the live crane, and without --runtime it is not in the "
            "folder. Add --runtime FOLDER, or leave --address out."
        )
    return web_address(chosen.address, example="https://example.org/lessons/")


def _said(folder: Path, made: dict[str, bytes], *, live: bool) -> str:
    size = sum(len(content) for content in made.values()) / 1e6
    crane = (
        "The crane is live in them."
        if live
        else "With --runtime FOLDER the crane is live in them, too."
    )
    return (
        f"{len(made)} files, {size:.1f} MB, in {folder}: open index.html in any browser, or put "
        f"the whole folder on a web server or into a learning platform. {crane}"
    )


def _refuse_without_notebooks() -> None:
    missing = [name for name in NEEDS if find_spec(name) is None]
    if missing:
        raise ValueError(
            f"The lessons are run with {' and '.join(missing)}, not installed here. Install what "
            "the notebooks need with pip install 'boomsim[lab]' and try again."
        )
