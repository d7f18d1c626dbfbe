"""The progress bar of all long commands, on standard error, where a person watches it."""

import sys
import time
from types import TracebackType

WIDTH = 30
"""Of the bar [characters]."""

PATIENCE = 0.5
"""What is done sooner needs no bar [s]."""


class Bar:
    """Shows how much is done; shows nothing where standard error is no terminal."""

    def __init__(self) -> None:
        self.shown = sys.stderr is not None and sys.stderr.isatty()
        self.begun = time.monotonic()
        self.last = ""

    def __enter__(self) -> "Bar":
        """Begin."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Wipe the bar."""
        if self.last:
            sys.stderr.write("\r" + " " * len(self.last) + "\r")
            sys.stderr.flush()

    def tell(self, what: str, done: int, of: int) -> None:
        """Draw the bar.

        Parameters
        ----------
        done, of : int
            So many of so many
        """
        if not self.shown or time.monotonic() - self.begun < PATIENCE:
            return
        filled = WIDTH * done // max(of, 1)
        line = f"{what}  [{'#' * filled}{'.' * (WIDTH - filled)}] {done}/{of}"
        sys.stderr.write("\r" + line.ljust(len(self.last)))
        sys.stderr.flush()
        self.last = line
