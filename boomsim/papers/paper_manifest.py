"""A manifest that knows which files of a folder are complete."""

import hashlib
import json
import time
from pathlib import Path

from boomsim.files.whole_files import write_whole

MANIFEST = "manifest.json"
_SCHEMA = "boomsim-manifest/1"


def digest(content: bytes) -> str:
    """Fingerprint of some bytes."""
    return hashlib.sha256(content).hexdigest()


class Manifest:
    """Which files are complete: for each its own fingerprint and that of what it was made from."""

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
