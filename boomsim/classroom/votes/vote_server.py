"""The one process of a class: pages out of memory, votes in, news out (Server-Sent Events)."""

import asyncio
import hmac
import json
import logging
from collections.abc import Callable, Mapping
from typing import Any

from tornado.httpserver import HTTPServer
from tornado.iostream import StreamClosedError
from tornado.netutil import bind_sockets
from tornado.web import Application, RequestHandler

from boomsim.classroom.votes.rate_limit import RateLimit
from boomsim.classroom.votes.static_site import STRICT, Given
from boomsim.classroom.votes.vote_room import Full, Room

MOST_LETTERS = 500
"""A vote, or what the instructor asks, has no more [bytes]."""

MOST_HEADER = 8_000
"""A request's head has no more [bytes]."""

PIECE = 256_000
"""Of a page, handed to the network at once [bytes]."""

BEAT = 15.0
"""A stream without news says so often that it lives, so that nothing between cuts it off [s]."""

ALWAYS = {
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
    "Server": "boomsim",
}

Picture = Callable[[str], bytes | None]
"""Draws a question's picture by its key; None where there is none."""


class Limits:
    """How often anybody may ask. A school often shows all its phones under one address."""

    def __init__(self) -> None:
        self.pages = RateLimit(rate=100.0, burst=1500.0)
        self.joins = RateLimit(rate=20.0, burst=400.0)
        self.votes = RateLimit(rate=2.0, burst=8.0)
        self.control = RateLimit(rate=10.0, burst=40.0)


class _Answer(RequestHandler):
    """What all answers share; what goes wrong says a number and nothing else."""

    def initialize(self, room: Room, limits: Limits) -> None:
        self.room, self.limits = room, limits

    def set_default_headers(self) -> None:
        for name, value in ALWAYS.items():
            self.set_header(name, value)
        self.set_header("Content-Security-Policy", STRICT)
        self.set_header("Cache-Control", "no-store")

    def write_error(self, status_code: int, **more: Any) -> None:
        self.set_header("Content-Type", "text/plain; charset=utf-8")
        self.finish(f"{status_code}: {self._reason}\n")

    @property
    def address(self) -> str:
        return str(self.request.remote_ip)

    def allowed(self, limit: RateLimit, who: str) -> bool:
        """Whether somebody may ask now; answers where not."""
        if limit.allows(who):
            return True
        self.set_header("Retry-After", "2")
        self.send_error(429)
        return False

    def plain(self) -> dict[str, Any] | None:
        """The body as JSON of this page's own making; answers where it is none.

        Another site's form cannot send this media type, and its script is stopped by the browser.
        """
        kind = self.request.headers.get("Content-Type", "")
        try:
            found = json.loads(self.request.body) if kind == "application/json" else None
        except (ValueError, RecursionError):
            found = None
        if isinstance(found, dict):
            return found
        self.send_error(400)
        return None

    def tell(self, made: Any) -> None:
        self.set_header("Content-Type", "application/json; charset=utf-8")
        self.finish(json.dumps(made, ensure_ascii=False))


class _Page(_Answer):
    """A file out of memory."""

    def initialize(self, room: Room, limits: Limits, pages: Mapping[str, Given]) -> None:  # type: ignore[override]
        super().initialize(room, limits)
        self.pages = pages

    async def get(self, path: str) -> None:
        found = self.pages.get(path)
        if not self.allowed(self.limits.pages, self.address):
            return
        if found is None:
            self.send_error(404)
            return
        self.set_header("Content-Type", found.kind)
        self.set_header("Content-Security-Policy", found.policy)
        self.set_header("Cache-Control", "no-cache")
        self.set_header("Vary", "Accept-Encoding")
        self.set_header("Etag", found.tag)
        if self.check_etag_header():
            self.set_status(304)
            self.finish()
            return
        body, packs = found.content, self.request.headers.get("Accept-Encoding", "")
        if "gzip" in packs and found.packed is not None:
            self.set_header("Content-Encoding", "gzip")
            body = found.packed
        self.set_header("Content-Length", len(body))
        # Piece by piece: sixty copies of a page of 10 MB are not held for sixty slow phones.
        for start in range(0, len(body), PIECE):
            self.write(body[start : start + PIECE])
            await self.flush()


class _Picture(_Answer):
    """The picture of the question that is asked, and of no other."""

    def initialize(self, room: Room, limits: Limits, picture: Picture) -> None:  # type: ignore[override]
        super().initialize(room, limits)
        self.picture = picture

    async def get(self) -> None:
        question = self.room.ballot.question
        if not self.allowed(self.limits.pages, self.address):
            return
        made = None
        if question is not None:
            made = await asyncio.to_thread(self.picture, question.key)
        if made is None:
            self.send_error(404)
            return
        self.set_header("Content-Type", "image/svg+xml")
        policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
        self.set_header("Content-Security-Policy", policy)
        self.finish(made)


class _Events(_Answer):
    """A stream of what may be seen."""

    news: "asyncio.Queue[str | None] | None" = None

    async def get(self) -> None:
        if not self.allowed(self.limits.joins, self.address):
            return
        try:
            voter, news = self.room.join(self.get_query_argument("id", "")[:64])
        except Full:
            self.send_error(503)
            return
        self.news = news
        self.set_header("Content-Type", "text/event-stream")
        try:
            self._say("you", json.dumps(voter))
            self._say("seen", self.room.seen())
            await self.flush()
            while (told := await self._next(news)) is not None:
                self.write(told)
                await self.flush()
        except StreamClosedError:
            pass
        finally:
            self.room.leave(news)

    def on_connection_close(self) -> None:
        """End the loop at once where the page is gone."""
        if self.news is not None:
            self.room.leave(self.news)
            self.news.put_nowait(None)

    async def _next(self, news: "asyncio.Queue[str | None]") -> str | None:
        """The newest state; a sign of life where there is none; None at the end."""
        try:
            seen = await asyncio.wait_for(news.get(), BEAT)
        except TimeoutError:
            return ": still here\n\n"
        return None if seen is None else f"event: seen\ndata: {seen}\n\n"

    def _say(self, name: str, data: str) -> None:
        self.write(f"event: {name}\ndata: {data}\n\n")


class _Vote(_Answer):
    """One letter of one voter."""

    def post(self) -> None:
        asked = self.plain()
        if asked is None:
            return
        voter, letter, round = asked.get("id"), asked.get("letter"), asked.get("round")
        if not (isinstance(voter, str) and isinstance(letter, str) and isinstance(round, int)):
            self.send_error(400)
            return
        # First by address: random numbers that somebody makes up each have an empty record.
        if not self.allowed(self.limits.pages, self.address):
            return
        if not self.allowed(self.limits.votes, voter):
            return
        if not self.room.vote(voter, letter, round):
            self.send_error(409)
            return
        self.tell({"counted": letter})


class _Control(_Answer):
    """What the instructor asks, with the token."""

    def post(self) -> None:
        if not self.allowed(self.limits.control, self.address):
            return
        token = self.request.headers.get("Authorization", "").removeprefix("Bearer ")
        if not hmac.compare_digest(token.encode(), self.room.token.encode()):
            self.send_error(401)
            return
        asked = self.plain()
        if asked is None:
            return
        if not self.room.control(str(asked.get("do")), str(asked.get("question"))):
            self.send_error(400)
            return
        self.tell(self.room.known())


def application(room: Room, *, pages: Mapping[str, Given], picture: Picture) -> Application:
    """Put the room's pages and requests together.

    Parameters
    ----------
    pages : mapping of str to Given
        By path
    picture : callable
    """
    shared = {"room": room, "limits": Limits()}
    return Application(
        [
            ("/events", _Events, shared),
            ("/vote", _Vote, shared),
            ("/control", _Control, shared),
            ("/picture", _Picture, shared | {"picture": picture}),
            ("/(.*)", _Page, shared | {"pages": pages}),
        ],
        log_function=lambda handler: None,  # nobody's address is written down
    )


def listen(made: Application, *, address: str, port: int) -> tuple[HTTPServer, int]:
    """Begin to listen.

    Parameters
    ----------
    port : int
        0 takes any that is free

    Returns
    -------
    HTTPServer, int
        And the port that it has

    Raises
    ------
    ValueError
        If nothing can listen there
    """
    logging.getLogger("tornado").setLevel(logging.CRITICAL)
    server = HTTPServer(
        made,
        max_header_size=MOST_HEADER,
        max_body_size=MOST_LETTERS,
        body_timeout=5.0,
        idle_connection_timeout=60.0,
    )
    try:
        sockets = bind_sockets(port, address=address)
    except (OSError, OverflowError) as fault:
        reason = getattr(fault, "strerror", None) or str(fault)
        raise ValueError(
            f"Nothing can be served at {address}, port {port}: {reason}. Give another --port, or "
            "an --address of this machine."
        ) from None
    server.add_sockets(sockets)
    return server, int(sockets[0].getsockname()[1])
