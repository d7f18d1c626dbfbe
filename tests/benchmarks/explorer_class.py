"""Many pages of the explorer opened together, as at the beginning of a class: printed.

    python tests/benchmarks/explorer_class.py [PAGES]

Serves with `boomsim lab --class`, opens the pages at once in one browser, waits until each has
its picture, moves one slider in each, measures each kernel's memory, closes the pages
and waits until the idle kernels have gone.
"""

import os
import signal
import socket
import subprocess
import sys
import tempfile
import time
from pathlib import Path

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent)]

import numpy as np  # noqa: E402
from browser_fixtures import CHROMIUM, QUIET  # noqa: E402
from playwright.sync_api import sync_playwright  # noqa: E402

IDLE = 90
"""Long enough for the last page to come back to its kernel on a busy machine [s]."""

PICTURE = ".boomsim-picture svg"


def free_port() -> int:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])


def serve(port: int, folder: str) -> subprocess.Popen:
    words = ["lab", "--class", "--no-browser", f"--port={port}", f"--idle={IDLE}"]
    words += ["--folder", folder]
    root = str(HERE.parents[1])
    environment = {**os.environ, "PYTHONPATH": root, "HOME": folder}
    server = subprocess.Popen(
        [sys.executable, "-m", "boomsim", *words],
        env=environment,
        start_new_session=True,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    for _ in range(300):
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)) == 0:
                return server
        time.sleep(0.1)
    raise SystemExit("The server does not answer.")


def kernels(server: subprocess.Popen) -> list[int]:
    """Process ids of the sessions' kernels: the server's descendants that run a kernel."""
    parents, words = {}, {}
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                words[int(entry.name)] = (entry / "cmdline").read_bytes()
                status = (entry / "stat").read_text().rsplit(")", 1)[1].split()
                parents[int(entry.name)] = int(status[1])
            except OSError:
                continue
    return [
        one
        for one, line in words.items()
        if b"ipykernel" in line and server.pid in ancestors(one, parents)
    ]


def ancestors(process: int, parents: dict[int, int]) -> list[int]:
    found = []
    while process in parents:
        process = parents[process]
        found.append(process)
    return found


def memory(process: int) -> float:
    """Proportional share of memory, what is shared counted once among the sharers [MiB]."""
    for line in Path(f"/proc/{process}/smaps_rollup").read_text().splitlines():
        if line.startswith("Pss:"):
            return int(line.split()[1]) / 1024
    return float("nan")


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 30
    port, folder = free_port(), tempfile.mkdtemp(prefix="class-")
    server = serve(port, folder)
    try:
        with sync_playwright() as started:
            browser = started.chromium.launch(executable_path=str(CHROMIUM), args=QUIET)
            context = browser.new_context(viewport={"width": 1280, "height": 800})
            began = time.perf_counter()
            pages = [context.new_page() for _ in range(count)]
            for page in pages:
                page.goto(f"http://127.0.0.1:{port}/", wait_until="commit", timeout=300_000)
            ready = []
            for page in pages:
                page.wait_for_selector(PICTURE, timeout=300_000)
                ready.append(time.perf_counter() - began)
            print(
                f"{count} pages opened together: first ready after {min(ready):.1f} s, "
                f"last after {max(ready):.1f} s"
            )
            began = time.perf_counter()
            for page in pages:
                before = page.locator(PICTURE).get_attribute("data-load")
                page.locator(".boomsim-load .noUi-handle").focus()
                page.keyboard.press("ArrowRight")
                page.wait_for_function(
                    "before => document.querySelector('.boomsim-picture svg')"
                    ".getAttribute('data-load') !== before",
                    arg=before,
                )
            moved = time.perf_counter() - began
            print(f"each moved once, one after another: {moved:.1f} s", flush=True)
            running = kernels(server)
            sizes = [memory(one) for one in running]
            print(
                f"{len(running)} kernels of {np.min(sizes):.0f} to {np.max(sizes):.0f} MiB, "
                f"{np.sum(sizes) / 1024:.1f} GiB in all"
            )
            context.close()
            began = time.perf_counter()
            while kernels(server) and time.perf_counter() - began < 3 * IDLE:
                time.sleep(1)
            print(
                f"{len(kernels(server))} kernels left {time.perf_counter() - began:.0f} s after "
                f"the pages were closed (idle time allowed: {IDLE} s)"
            )
            browser.close()
    finally:
        os.killpg(server.pid, signal.SIGINT)
        server.wait(60)


if __name__ == "__main__":
    main()
