"""``boomsim handouts``: one page for each lesson, for students without a computer."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from boomsim.caution import CAUTION
from boomsim.cli import command_options as inputs
from boomsim.cli.json_printing import print_json
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import paragraph

if TYPE_CHECKING:
    from boomsim.files.work_progress import Told
    from boomsim.lessons.lesson_parts import Lesson

HELP = "one page for each lesson as PDF, for students without a computer, and the answers"
EXAMPLE = "boomsim handouts my-class --lesson 02 --lesson 05"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("folder", metavar="DIR", help="where to put them; made if it is not there")
    parser.add_argument(
        "--lesson",
        metavar="NUMBER",
        action="append",
        help="such as 02 or same-length; repeat it for several (default: all)",
    )
    parser.add_argument("--no-answers", action="store_true", help="leave the answers out")
    parser.add_argument(
        "--address",
        metavar="URL",
        help="of a live page on the web (boomsim page --live, or crane.html of boomsim lessons): a "
        "link to the lesson's lift there and its QR code go onto each sheet",
    )
    inputs.add_output(parser, figure=False)


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    folder = _folder(chosen.folder)
    _refuse_without_typst()
    live = _live(chosen.address)
    from boomsim.files.folder_lock import only_writer
    from boomsim.files.whole_files import write_whole
    from boomsim.lessons.lesson_order import lessons_named

    lessons = lessons_named(chosen.lesson)
    # All pages are set before the first is written: a fault leaves nothing half done.
    with Bar() as bar:
        links = _links(lessons, live, units=chosen.units)
        made = _pages(lessons, links, units=chosen.units, told=bar.tell)
        if not chosen.no_answers:
            made |= _answers(lessons, units=chosen.units)
    with only_writer(folder):
        for name, content in made.items():
            write_whole(folder / name, content)
    if chosen.json:
        print_json("handouts", {"folder": str(folder), "files": sorted(made)})
        return
    paper = "A4" if chosen.units == "metric" else "Letter"
    print(f"In {folder}, one {paper} page for each lesson:")
    print("\n".join(f"  {name}{_remark(name)}" for name in made))
    print("\n" + paragraph(CAUTION))


def _remark(name: str) -> str:
    return "  (for the instructor)" if name.startswith("answers") else ""


def _folder(text: str) -> Path:
    folder = Path(text)
    if folder.exists() and not folder.is_dir():
        raise ValueError(f"{folder} is a file. Name a folder; it is made if it is not there.")
    return folder


def _refuse_without_typst() -> None:
    from importlib.util import find_spec

    if find_spec("typst") is None:
        raise ValueError(
            "Handouts are set with typst, which is not installed. Install it with: "
            'pip install "boomsim[papers]".'
        )


def _live(address: str | None) -> str:
    """Where the live page lies; empty where no sheet is to lead to it."""
    if address is None:
        return ""
    from boomsim.cli.web_address import web_address
    from boomsim.figures.qr_code import qr_svg

    found = web_address(address)
    if not qr_svg(found):
        raise ValueError(
            "QR codes are made with segno, which is not installed. Install it with: "
            'pip install "boomsim[papers]", or leave --address out.'
        )
    return found


def _links(lessons: tuple["Lesson", ...], live: str, *, units: str) -> list[str]:
    """To each lesson's lift; empty ones where there is no live page."""
    if not live:
        return [""] * len(lessons)
    from boomsim.classroom.lesson_scenes import lesson_address

    return [f"{live}#{lesson_address(one, units=units)}" for one in lessons]


def _pages(
    lessons: tuple["Lesson", ...], links: list[str], *, units: str, told: "Told"
) -> dict[str, bytes]:
    from boomsim.files.work_progress import counted
    from boomsim.lessons.lesson_handouts import handout_pdf

    each = counted(list(zip(lessons, links, strict=True)), what="setting handouts", told=told)
    return {f"{one.file}.pdf": handout_pdf(one, units=units, link=link) for one, link in each}


def _answers(lessons: tuple["Lesson", ...], *, units: str) -> dict[str, bytes]:
    from boomsim.lessons.lesson_handouts import ANSWERS, answers_pdf

    return {f"{ANSWERS}.pdf": answers_pdf(lessons, units=units)}
