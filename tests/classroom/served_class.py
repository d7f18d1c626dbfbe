"""A class with two questions, served in this process or asked without a server."""

import asyncio
import json
from concurrent.futures import ThreadPoolExecutor
from contextlib import asynccontextmanager

from tornado.httpclient import AsyncHTTPClient, HTTPRequest

from boomsim.classroom.votes.class_server import Class, filled_places, pictures_of
from boomsim.classroom.votes.static_site import given, vote_pages
from boomsim.classroom.votes.vote_room import Room
from boomsim.classroom.votes.vote_server import application, listen
from boomsim.lessons.choice_questions import choice_questions
from boomsim.lessons.lesson_order import lesson_named

TOKEN = "a token of the instructor"
LESSON = lesson_named("08")
QUESTIONS = choice_questions(LESSON, "metric")
CRANE = b"<!doctype html><title>the crane</title>"


class Served:
    """A server, and a client that asks it."""

    def __init__(self, room, port):
        self.room, self.base = room, f"http://127.0.0.1:{port}"
        self.client = AsyncHTTPClient(force_instance=True, max_clients=200)

    async def ask(self, path, *, method="GET", body=None, headers=None):
        sent = json.dumps(body) if isinstance(body, dict) else body
        request = HTTPRequest(
            f"{self.base}/{path}", method=method, body=sent, headers=headers or {}
        )
        return await self.client.fetch(request, raise_error=False)

    async def post(self, path, body, **headers):
        kind = {"Content-Type": "application/json"}
        return await self.ask(path, method="POST", body=body, headers=kind | headers)

    async def control(self, do, question="", token=TOKEN):
        body = {"do": do, "question": question}
        return await self.post("control", body, Authorization=f"Bearer {token}")

    def joined(self):
        """Connect a page without a stream; give its number."""
        voter, _ = self.room.join("")
        return voter


@asynccontextmanager
async def served():
    room = Room(QUESTIONS, token=TOKEN)
    made = Class(lessons=(LESSON,), units="metric", crane=CRANE, folder=None)
    pages = vote_pages(filled_places("http://127.0.0.1/", folder=False))
    pages["crane"] = given("crane.html", CRANE)
    app = application(room, pages=pages, picture=pictures_of(made))
    server, port = listen(app, address="127.0.0.1", port=0)
    try:
        yield Served(room, port)
    finally:
        server.stop()
        await server.close_all_connections()


def run(act):
    """Serve a class, do something with it, and stop."""

    async def whole():
        async with served() as one:
            await act(one)

    # In a thread of its own: a browser of other tests keeps a loop in this one.
    with ThreadPoolExecutor(max_workers=1) as apart:
        apart.submit(lambda: asyncio.run(asyncio.wait_for(whole(), 60))).result()
