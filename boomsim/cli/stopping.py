"""A run that is stopped half-way cleans up, and says so in one line."""

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager

STOPPED = 130
"""Exit code of a run that was stopped, as shells have it for Ctrl-C."""

_REQUESTS = ("SIGINT", "SIGTERM", "SIGHUP", "SIGBREAK")
"""Ctrl-C, a polite request to end, a closed terminal, and Ctrl-Break of Windows."""


@contextmanager
def stoppable() -> Iterator[None]:
    """Take every request to stop as one from the keyboard, so that unfinished files go away.

    Yields
    ------
    None
    """
    before = {}
    if threading.current_thread() is threading.main_thread():
        numbers = [getattr(signal, name) for name in _REQUESTS if hasattr(signal, name)]
        # What whoever started us told us to ignore stays ignored, as with nohup.
        known = {number: signal.getsignal(number) for number in numbers}
        before = {n: usual for n, usual in known.items() if usual not in (signal.SIG_IGN, None)}
    try:
        for number in before:
            signal.signal(number, _stop)
        yield
    finally:
        for number, usual in before.items():
            signal.signal(number, usual)


def _stop(number: int, frame: object) -> None:
    raise KeyboardInterrupt
