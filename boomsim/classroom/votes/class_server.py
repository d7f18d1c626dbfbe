"""A class: questions, pages and addresses put together, and served until somebody stops it."""

import asyncio
import signal
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from html import escape
from importlib.util import find_spec
from ipaddress import ip_address
from pathlib import Path
from socket import AF_INET, SOCK_DGRAM, socket
from threading import Lock

from boomsim.caution import CAUTION
from boomsim.classroom.votes.static_site import folder_pages, given, vote_pages
from boomsim.classroom.votes.vote_room import Room
from boomsim.classroom.votes.vote_server import application, listen
from boomsim.figures.qr_code import qr_svg
from boomsim.files.work_progress import Told, counted
from boomsim.lessons.choice_questions import ChoiceQuestion, choice_questions
from boomsim.lessons.lesson_parts import Lesson

NOWHERE = ("192.0.2.1", 9)
"""An address that nobody has (RFC 5737): asked only which way a packet would go; none is sent."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Class:
    """What a class is served.

    Attributes
    ----------
    lessons : tuple of Lesson
        Whose questions can be asked
    crane : bytes
        The page with the crane, HTML
    folder : Path or None
        Of lessons as pages
    """

    lessons: tuple[Lesson, ...]
    units: str
    crane: bytes
    folder: Path | None


def questions_of(
    lessons: tuple[Lesson, ...], units: str, *, told: Told | None = None
) -> tuple[ChoiceQuestion, ...]:
    """Work all questions out before anybody waits for one.

    Parameters
    ----------
    told : callable, optional
        Hears what is done
    """
    each = counted(lessons, what="working questions out", told=told)
    return tuple(one for lesson in each for one in choice_questions(lesson, units))


def refuse_without_tornado() -> None:
    """Refuse to begin where the server's library is missing.

    Raises
    ------
    ValueError
    """
    if find_spec("tornado") is None:
        raise ValueError(
            "A class is served with tornado, which is not installed here. Install it with "
            "pip install 'boomsim[class]' and try again. Without it, "
            '"boomsim page three-ways.html" writes a page for any browser.'
        )


def joining(address: str, port: int) -> str:
    """Say under which address a class finds the server.

    Parameters
    ----------
    address : str
        That it listens at
    """
    host = address
    with suppress(ValueError):
        if ip_address(address).is_unspecified:
            host = _own_address()
    return f"http://{f'[{host}]' if ':' in host else host}:{port}/"


def _own_address() -> str:
    with socket(AF_INET, SOCK_DGRAM) as probe:
        try:
            probe.connect(NOWHERE)
            return str(probe.getsockname()[0])
        except OSError:
            return "127.0.0.1"


def code_lines(address: str) -> str:
    """Draw the code with characters for a terminal.

    Returns
    -------
    str
        Nothing without segno
    """
    if find_spec("segno") is None:
        return ""
    from io import StringIO

    import segno

    made = StringIO()
    segno.make(address, micro=False).terminal(made, compact=True, border=2)
    return made.getvalue()


def run(
    given_class: Class,
    questions: tuple[ChoiceQuestion, ...],
    *,
    address: str,
    port: int,
    token: str,
    ready: Callable[[int], None],
) -> None:
    """Serve until somebody stops it.

    Parameters
    ----------
    port : int
        0 takes any that is free
    token : str
        Of the instructor
    ready : callable
        Told the port once it listens
    """
    asyncio.run(
        _serve(given_class, questions, address=address, port=port, token=token, ready=ready)
    )


async def _serve(
    given_class: Class,
    questions: tuple[ChoiceQuestion, ...],
    *,
    address: str,
    port: int,
    token: str,
    ready: Callable[[int], None],
) -> None:
    pages = {"crane": given("crane.html", given_class.crane)}
    if given_class.folder is not None:
        pages |= folder_pages(given_class.folder)
    room = Room(questions, token=token)
    made = application(room, pages=pages, picture=pictures_of(given_class))
    server, found = listen(made, address=address, port=port)
    # The port is known only now, and the board says it.
    pages |= vote_pages(
        filled_places(joining(address, found), folder=given_class.folder is not None)
    )
    stop = asyncio.Event()
    _stop_by_signals(stop)
    ready(found)
    try:
        await stop.wait()
    finally:
        server.stop()


def filled_places(address: str, *, folder: bool) -> dict[str, str]:
    """Say what the pages are filled with.

    Parameters
    ----------
    address : str
        That students open
    folder : bool
        Whether lessons are served too

    Returns
    -------
    dict of str to str
        HTML by place
    """
    links = '<a href="crane" target="_blank" rel="noopener">the crane</a>'
    if folder:
        links += '<a href="lessons/" target="_blank" rel="noopener">the lessons</a>'
    return {
        "CAUTION": escape(CAUTION),
        "ADDRESS": escape(address),
        "CODE": qr_svg(address),
        "LINKS": links,
    }


def _stop_by_signals(stop: asyncio.Event) -> None:
    """End in good order; where the loop knows no signals, Ctrl-C raises and ends it too."""
    for name in ("SIGINT", "SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            with suppress(NotImplementedError, RuntimeError, ValueError):
                asyncio.get_running_loop().add_signal_handler(getattr(signal, name), stop.set)


def pictures_of(given_class: Class) -> Callable[[str], bytes | None]:
    """Draw a lesson's picture when its question is asked: that of its sheet, without an answer.

    Returns
    -------
    callable
        Takes a question's key, gives SVG
    """
    by_number = {one.number: one for one in given_class.lessons}
    alone = Lock()  # two boards may ask at once, and what draws is not made for that

    @cache
    def drawn(number: str) -> bytes:
        from boomsim.figures.figure_page import picture

        return picture(by_number[number].sheet(given_class.units).figure(), kind="svg")

    def picture_of(key: str) -> bytes:
        with alone:
            return drawn(key.split("-")[0])

    return picture_of
