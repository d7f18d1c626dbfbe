"""A class of many at once: `boomsim class` is started, asked and measured; printed, never asserted.

    python tests/benchmarks/class_server.py [STUDENTS] [-- OPTIONS OF THE COMMAND]

Each student is an asyncio client that does what a phone does: opens the vote's page with script and
style, then the crane's page, listens to the stream, and votes when the question opens. The clients
share the machine with the server, so times are upper bounds.
"""

import asyncio
import json
import logging
import os
import re
import socket
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
from tornado.httpclient import AsyncHTTPClient, HTTPRequest

ROOT = Path(__file__).resolve().parents[2]
FILES = ("", "vote.css", "vote.js", "student.js")
JSON = {"Content-Type": "application/json"}


def memory(process: int, name: str) -> float:
    """Of a process [MiB]: VmRSS now, VmHWM at most so far."""
    status = Path(f"/proc/{process}/status").read_text()
    return int(re.search(rf"{name}:\s+(\d+)", status)[1]) / 1024


class Student:
    """One phone."""

    def __init__(self, base: str) -> None:
        self.base, self.began = base, time.perf_counter()
        self.client = AsyncHTTPClient(force_instance=True)
        self.voter, self.ready, self.crane, self.seen = "", 0.0, 0.0, []
        self.heard: dict[str, float] = {}
        self.rest = ""

    async def get(self, path: str) -> int:
        request = HTTPRequest(f"{self.base}{path}", decompress_response=False, request_timeout=120)
        request.headers["Accept-Encoding"] = "gzip"
        return len((await self.client.fetch(request)).body)

    async def come(self) -> None:
        await asyncio.gather(*(self.get(path) for path in FILES))
        stream = HTTPRequest(f"{self.base}events", request_timeout=0, streaming_callback=self._hear)
        self.stream = asyncio.ensure_future(self.client.fetch(stream))
        while not self.ready:
            await asyncio.sleep(0.005)
        self.bytes = await self.get("crane")
        self.crane = time.perf_counter() - self.began

    def _hear(self, piece: bytes) -> None:
        *whole, self.rest = (self.rest + piece.decode()).split("\n\n")
        for event in whole:
            data = event.split("data: ")[-1]
            if event.startswith("event: you"):
                self.voter = json.loads(data)
            elif event.startswith("event: seen"):
                self.ready = self.ready or time.perf_counter() - self.began
                self.heard[data] = time.perf_counter()
                self.seen.append(json.loads(data))

    async def until(self, fits) -> float:
        while not (self.seen and fits(self.seen[-1])):
            await asyncio.sleep(0.005)
        return time.perf_counter()

    async def vote(self) -> float:
        await self.until(lambda seen: seen["phase"] == "open")
        seen, began = self.seen[-1], time.perf_counter()
        letter = seen["question"]["options"][0]["letter"]
        body = json.dumps({"id": self.voter, "letter": letter, "round": seen["round"]})
        await self.client.fetch(
            HTTPRequest(f"{self.base}vote", method="POST", body=body, headers=JSON)
        )
        return time.perf_counter() - began


def told(what: str, values, unit: str = "s") -> None:
    low, middle, high = np.min(values), np.median(values), np.max(values)
    print(f"  {what}: first {low:.2f} {unit}, half {middle:.2f}, last {high:.2f}", flush=True)


async def class_of(count: int, base: str, token: str, process: int) -> None:
    print(f"  before anybody came: {memory(process, 'VmRSS'):.0f} MiB")
    students = [Student(base) for _ in range(count)]
    await asyncio.gather(*(one.come() for one in students))
    told(f"{count} students, the vote ready after", [one.ready for one in students])
    told("with the crane's page fetched after", [one.crane for one in students])
    print(f"  the crane's page: {students[0].bytes / 1e6:.2f} MB as sent")
    teacher = AsyncHTTPClient(force_instance=True)

    async def control(do: str, question: str = "") -> dict:
        body = json.dumps({"do": do, "question": question})
        headers = JSON | {"Authorization": f"Bearer {token}"}
        request = HTTPRequest(f"{base}control", method="POST", body=body, headers=headers)
        return json.loads((await teacher.fetch(request)).body)

    question = (await control("look"))["questions"][0]["key"]
    began = time.perf_counter()
    await control("open", question)
    votes = await asyncio.gather(*(one.vote() for one in students))
    told("a vote, sent to counted", 1000 * np.array(votes), "ms")
    all_in = await asyncio.gather(
        *(one.until(lambda seen: seen["votes"] == count) for one in students)
    )
    told("all votes on everybody's page after opening", np.array(all_in) - began)
    began = time.perf_counter()
    await control("tell")
    answers = await asyncio.gather(*(one.until(lambda seen: "answer" in seen) for one in students))
    told("the answer on everybody's page after", np.array(answers) - began)
    used = os.sysconf("SC_CLK_TCK")
    spent = sum(map(int, Path(f"/proc/{process}/stat").read_text().split()[13:15])) / used
    print(
        f"  the server: {memory(process, 'VmRSS'):.0f} MiB now, {memory(process, 'VmHWM'):.0f} MiB "
        f"at most; {spent:.1f} s of processor time in all, its start included"
    )
    for one in students:
        one.stream.cancel()


def main() -> None:
    words = sys.argv[1:]
    place = words.index("--") if "--" in words else len(words)
    own, options = words[:place], words[place + 1 :]
    count = int(own[0]) if own else 60
    for name in ("tornado", "asyncio"):  # streams that are cut off at the end are meant to be
        logging.getLogger(name).setLevel(logging.CRITICAL + 1)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    began = time.perf_counter()
    server = subprocess.Popen(
        [sys.executable, "-m", "boomsim", "class", f"--port={port}", *options],
        env={**os.environ, "PYTHONPATH": str(ROOT), "OPENBLAS_NUM_THREADS": "1"},
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        token = ""
        while not token:
            line = server.stdout.readline()
            token = line.partition("instructor#")[2].strip()
        print(f"  up after {time.perf_counter() - began:.1f} s, load {os.getloadavg()[0]:.1f}")
        asyncio.run(class_of(count, f"http://127.0.0.1:{port}/", token, server.pid))
    finally:
        server.terminate()
        server.wait(30)


if __name__ == "__main__":
    main()
