"""A manifest that knows which files of a folder are complete, and a bar while they are made."""

import hashlib
import json
import sys
import time
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TypeVar

from boomsim.files.writing import write_whole

MANIFEST = "manifest.json"
_SCHEMA = "boomsim-manifest/1"
_T = TypeVar("_T")


def digest(content: bytes) -> str:
    """Fingerprint of some bytes.

    Parameters
    ----------
    content : bytes

    Returns
    -------
    str
    """
    return hashlib.sha256(content).hexdigest()


class Manifest:
    """Which files are complete: for each its own fingerprint and that of what it was made from.

    Parameters
    ----------
    folder : Path
    """

    EVERY = 2.0
    """Written at least so often while files are made [s]."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._entries = _read(folder / MANIFEST)
        self._written = time.monotonic()

    def is_complete(self, name: str, *, source: str) -> bool:
        """Whether a file is there, unchanged, and made from the same source."""
        entry = self._entries.get(name)
        if entry is None or entry["source"] != source:
            return False
        path = self.folder / name
        return path.is_file() and digest(path.read_bytes()) == entry["sha256"]

    def is_changed(self, name: str) -> bool:
        """Whether a file that we wrote is there with other content: somebody has worked in it."""
        entry, path = self._entries.get(name), self.folder / name
        return entry is not None and path.is_file() and digest(path.read_bytes()) != entry["sha256"]

    def write(self, name: str, content: bytes, *, source: str) -> None:
        """Write a file and remember it."""
        write_whole(self.folder / name, content)
        self._entries[name] = {"sha256": digest(content), "source": source}
        if time.monotonic() - self._written > self.EVERY:
            self.save()

    def save(self) -> None:
        """Write the manifest itself."""
        data = {"schema": _SCHEMA, "files": dict(sorted(self._entries.items()))}
        write_whole(self.folder / MANIFEST, (json.dumps(data, indent=1) + "\n").encode())
        self._written = time.monotonic()


def _read(path: Path) -> dict[str, dict[str, str]]:
    """Read an earlier manifest; one that cannot be read counts as none."""
    try:
        files = json.loads(path.read_bytes())["files"]
        return {
            str(name): {"sha256": str(one["sha256"]), "source": str(one["source"])}
            for name, one in files.items()
        }
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}


def with_progress(items: Iterable[_T], *, count: int, what: str) -> Iterator[_T]:
    """Show a bar on standard error, if that is a terminal and the work takes longer.

    Parameters
    ----------
    items : iterable
    count : int
        How many there are [1]
    what : str
        "papers"

    Yields
    ------
    object
        The items
    """
    shown = sys.stderr.isatty() and count > 1
    begun = time.monotonic()
    try:
        for done, item in enumerate(items):
            yield item
            if shown and (time.monotonic() - begun > 0.5 or done + 1 == count):
                filled = 30 * (done + 1) // count
                bar = "█" * filled + "·" * (30 - filled)
                print(f"\r{bar} {done + 1} of {count} {what}", end="", file=sys.stderr, flush=True)
    finally:
        if shown:
            print(file=sys.stderr)
