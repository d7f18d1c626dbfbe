"""What a live page carries: the runtime without what no lift needs, and boomsim itself."""

import gzip
from base64 import b64encode
from collections.abc import Iterable, Iterator
from importlib.resources import files
from importlib.resources.abc import Traversable
from io import BytesIO
from zipfile import ZIP_STORED, ZipFile, ZipInfo

from boomsim.lab.live.runtime import NUMPY, Runtime

Entry = tuple[str, bytes]

_UNUSED_STDLIB = (
    *("curses/", "ctypes/macholib/", "dbm/", "email/mime/", "idlelib/", "lib2to3/", "msilib/"),
    *("multiprocessing/", "pydoc_data/", "sqlite3/", "tkinter/", "turtledemo/", "unittest/"),
    *("venv/", "wsgiref/", "xml/", "xmlrpc/", "ensurepip/", "distutils/", "test/"),
    *("turtle.py", "pydoc.py", "doctest.py", "pdb.py", "mailbox.py", "tarfile.py", "imaplib.py"),
    *("smtplib.py", "ftplib.py", "nntplib.py", "telnetlib.py", "poplib.py", "aifc.py", "wave.py"),
    *("cgi.py", "cProfile.py", "profile.py", "pstats.py", "optparse.py", "pickletools.py"),
)
"""What of Python's own library no page needs: other windows, other networks, other formats."""

_UNUSED_NUMPY = (
    *("numpy/random/", "numpy/f2py/", "numpy/fft/", "numpy/distutils/", "numpy/doc/", "numpy/tests/"),
    *("numpy/polynomial/", "numpy/_core/include/", "numpy/_core/lib/", "numpy/_core/tests/"),
    *("numpy/testing/", "numpy/_pyinstaller/"),
)
"""What of numpy boomsim does not call; numpy itself asks for these only when they are used."""

_UNUSED_ROOMS = ("papers/", "lab/lessons/", "lab/views/__pycache__/")
"""Examinations and notebooks have no place in the explorer."""


def packed(runtime: Runtime) -> dict[str, str]:
    """Pack all that the page's worker needs.

    Parameters
    ----------
    runtime : Runtime

    Returns
    -------
    dict of str to str
        By part: "code", "wasm", "stdlib", "site"; each compressed with gzip, in base64
    """
    held = runtime.files
    code = b"\n".join([held["pyodide.js"], held["pyodide.asm.js"]])
    parts = {
        "code": code,
        "wasm": held["pyodide.asm.wasm"],
        "stdlib": _zipped(_kept(held["python_stdlib.zip"], _UNUSED_STDLIB)),
        "site": _zipped([*_kept(held[NUMPY], _UNUSED_NUMPY), *own_files()]),
    }
    return {
        name: b64encode(gzip.compress(one, mtime=0)).decode("ascii") for name, one in parts.items()
    }


def own_files() -> Iterator[Entry]:
    """Give boomsim's own files, as the browser's Python finds them.

    Yields
    ------
    (str, bytes)
        Path within the archive, content
    """
    for path, one in _walked(files("boomsim"), ""):
        if path.endswith((".py", ".toml")) and not path.startswith(_UNUSED_ROOMS):
            yield f"boomsim/{path}", one.read_bytes()


def _walked(folder: Traversable, where: str) -> Iterator[tuple[str, Traversable]]:
    for one in sorted(folder.iterdir(), key=lambda entry: entry.name):
        if one.is_dir():
            yield from _walked(one, f"{where}{one.name}/")
        else:
            yield where + one.name, one


def _kept(archive: bytes, unused: tuple[str, ...]) -> Iterator[Entry]:
    """Files of an archive but those that are unused, type stubs and tests."""
    with ZipFile(BytesIO(archive)) as held:
        for name in sorted(held.namelist()):
            idle = name.startswith(unused) or "/tests/" in name
            if not idle and not name.endswith((".pyi", ".pxd", ".a", ".h", ".txt", "/")):
                yield name, held.read(name)


def _zipped(entries: Iterable[Entry]) -> bytes:
    """One archive, stored: it is compressed as a whole, which makes it smaller, and read fast."""
    made = BytesIO()
    with ZipFile(made, "w", ZIP_STORED) as archive:
        for name, content in entries:
            archive.writestr(ZipInfo(name), content)
    return made.getvalue()
