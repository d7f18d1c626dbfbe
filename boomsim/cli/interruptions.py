"""A run that is stopped half-way cleans up, and says so in one line."""

import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

STOPPED = 130
"""Exit code of a run that was stopped, as shells have it for Ctrl-C."""

_REQUESTS = ("SIGINT", "SIGTERM", "SIGHUP", "SIGBREAK")
"""Ctrl-C, a polite request to end, a closed terminal, and Ctrl-Break of Windows."""

_AGAIN = 0.05
"""A request that fell where Python cannot pass it on is made again after so long [s]."""


class Stopping:
    """Whether a run was asked to stop."""

    def __init__(self) -> None:
        self.asked = False

    def stop(self, number: int = 0, frame: object = None) -> None:
        """Stop at this place, so that unfinished files go away on the way out."""
        self.asked = True
        raise KeyboardInterrupt

    def unraisable(self, fault: Any) -> None:
        """Ask again if the first request got lost in a place that no exception leaves."""
        if fault.exc_type is KeyboardInterrupt and self.asked:
            threading.Timer(_AGAIN, signal.raise_signal, [signal.SIGINT]).start()
        else:
            sys.__unraisablehook__(fault)


@contextmanager
def stoppable(*, whole_process: bool) -> Iterator[Stopping]:
    """Take every request to stop as one from the keyboard.

    Parameters
    ----------
    whole_process : bool
        The process ends with this run: a request that comes after its last word does nothing
    """
    stopping = Stopping()
    before = _handlers() if threading.current_thread() is threading.main_thread() else {}
    hook = sys.unraisablehook
    try:
        for number in before:
            signal.signal(number, stopping.stop)
        sys.unraisablehook = stopping.unraisable
        yield stopping
    finally:
        sys.unraisablehook = hook
        for number, usual in before.items():
            signal.signal(number, signal.SIG_IGN if whole_process else usual)


def _handlers() -> dict[int, Any]:
    """Current handlers, without signals that the parent ignores (nohup)."""
    numbers = [getattr(signal, name) for name in _REQUESTS if hasattr(signal, name)]
    found = {number: signal.getsignal(number) for number in numbers}
    return {n: usual for n, usual in found.items() if usual not in (signal.SIG_IGN, None)}
