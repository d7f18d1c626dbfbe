"""One run at a time writes to a folder, so that files of two runs are never mixed."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from boomsim.files.file_errors import FileError, refuse_name
from boomsim.files.whole_files import PART, make_folder


@contextmanager
def only_writer(folder: Path) -> Iterator[None]:
    """Keep other runs out of a folder; the system itself lets go when a run ends in any way.

    Parameters
    ----------
    folder : Path
        Made if it is not there; taken away again if nothing has been written

    Raises
    ------
    FileError
        If another run is writing to it
    """
    refuse_name(folder)
    made, hold = not folder.exists(), None
    try:
        hold = _held(make_folder(folder))
        yield
    finally:
        if hold is not None:
            os.close(hold)
        if made:
            with suppress(OSError):  # there are files in it, as there should be
                folder.rmdir()


def _held(folder: Path) -> int | None:
    """Take hold of a folder; None where its file system knows no such thing."""
    try:
        return _hold(folder)
    except (BlockingIOError, FileExistsError):
        raise FileError(
            f"Another run is writing to {folder} at this moment. Wait until it has ended, or "
            "choose another folder."
        ) from None
    except OSError:
        return None


if sys.platform == "win32":

    def _hold(folder: Path) -> int:
        """Make a file that Windows deletes when its only holder is gone."""
        flags = os.O_CREAT | os.O_EXCL | os.O_TEMPORARY
        return os.open(folder / f"{PART}lock", flags)

else:

    def _hold(folder: Path) -> int:
        """Lock the folder itself, which leaves no file behind."""
        from fcntl import LOCK_EX, LOCK_NB, flock

        hold = os.open(folder, os.O_RDONLY)
        try:
            flock(hold, LOCK_EX | LOCK_NB)
        except BaseException:
            with suppress(OSError):
                os.close(hold)
            raise
        return hold
