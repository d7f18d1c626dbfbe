"""``boomsim class``: a class votes on the lessons' questions, from any number of phones."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from boomsim.caution import CAUTION
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import paragraph

if TYPE_CHECKING:
    from boomsim.files.work_progress import Told

HELP = "serve a class: votes on the lessons' questions, live on the projector, and the crane"
EXAMPLE = "boomsim class --address 0.0.0.0 --lesson 02 --lesson 07"
STOPPED = "nothing was written, and all votes are forgotten."

PORT = 8866


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument(
        "--address",
        metavar="ADDRESS",
        default="127.0.0.1",
        help="network address to listen at; 0.0.0.0 lets the class's phones in "
        "(default: this machine only)",
    )
    parser.add_argument(
        "--port", metavar="N", type=int, default=PORT, help=f"port to serve at (default: {PORT})"
    )
    parser.add_argument(
        "--lesson",
        metavar="NUMBER",
        action="append",
        help="whose questions can be asked, such as 02 or same-length; repeat it for several "
        "(default: all)",
    )
    parser.add_argument(
        "--lessons",
        metavar="FOLDER",
        help="serve this folder of lessons too, which boomsim lessons wrote",
    )
    parser.add_argument(
        "--runtime",
        metavar="FOLDER",
        help="of Python for browsers: the crane is then the live page, where everything moves",
    )
    parser.add_argument("--units", choices=("metric", "us"), default="metric", help="of all pages")


def run(chosen: argparse.Namespace) -> int:
    """Serve until it is stopped."""
    import secrets

    from boomsim.classroom.votes import class_server
    from boomsim.classroom.votes.static_site import folder_pages
    from boomsim.lessons.lesson_order import lessons_named

    class_server.refuse_without_tornado()
    if not 0 <= chosen.port < 65536:
        raise ValueError(f"--port {chosen.port} is none. Give one from 1 to 65535, such as {PORT}.")
    lessons = lessons_named(chosen.lesson)
    folder = None if chosen.lessons is None else Path(chosen.lessons)
    if folder is not None:
        folder_pages(folder)
    with Bar() as bar:
        made = class_server.Class(
            lessons=lessons, units=chosen.units, crane=_crane(chosen, bar.tell), folder=folder
        )
        questions = class_server.questions_of(lessons, chosen.units, told=bar.tell)
    token = secrets.token_urlsafe(16)
    class_server.run(
        made,
        questions,
        address=chosen.address,
        port=chosen.port,
        token=token,
        ready=lambda port: _say(chosen.address, port, token),
    )
    print("Stopped; all votes are forgotten.", flush=True)
    return 0


def _say(address: str, port: int, token: str) -> None:
    from boomsim.classroom.votes.class_server import code_lines, joining

    here, own = joining(address, port), joining("127.0.0.1", port)
    mine = own if address in ("127.0.0.1", "0.0.0.0", "::") else here
    alone = address in ("127.0.0.1", "::1", "localhost")
    code = "" if alone else code_lines(here)
    print(
        *([code] if code else []),
        f"Students:    {here}",
        f"Projector:   {mine}board",
        f"Instructor:  {mine}instructor#{token}",
        "",
        *([paragraph(ALONE), ""] if alone else []),
        paragraph(f"Keep the instructor's address to yourself. Stop with Ctrl-C. {CAUTION}"),
        sep="\n",
        flush=True,
    )


ALONE = "Only this machine is let in; --address 0.0.0.0 lets the room's phones in."


def _crane(chosen: argparse.Namespace, told: "Told") -> bytes:
    """The live page where there is a runtime for it, else the page with every state in it."""
    from boomsim.lab.scene.scene import first_scene

    scene = first_scene()
    if chosen.runtime is None:
        from boomsim.lab.page.page_file import page
        from boomsim.lab.page.page_states import ways_of
        from boomsim.lab.scene.scene import machine_of
        from boomsim.rating.comparison.comparison_study import demonstration

        ways = demonstration(machine_of(scene.machine).boom)
        return page(ways_of(scene, ways, units=chosen.units), told=told).encode("utf-8")
    from boomsim.lab.live.bytecode import find_compiler
    from boomsim.lab.live.live_page import live_page
    from boomsim.lab.live.python_runtime import read_runtime

    runtime = read_runtime(chosen.runtime)
    compiler = find_compiler()
    made = live_page(runtime, scene, units=chosen.units, compiler=compiler, told=told)
    return made.encode("utf-8")
