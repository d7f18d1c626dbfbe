"""What a live page carries: the runtime without what no lift needs, and boomsim itself."""

import gzip
import json
from base64 import b64encode
from collections.abc import Iterator
from importlib.metadata import distribution
from importlib.resources import files
from importlib.resources.abc import Traversable
from io import BytesIO
from pathlib import Path
from zipfile import ZIP_STORED, ZipFile, ZipInfo

from boomsim.files.work_progress import Told, counted
from boomsim.lab.live.bytecode import Compiler
from boomsim.lab.live.python_runtime import NUMPY, Runtime
from boomsim.lab.live.unused_modules import NUMPY_UNUSED, ROOMS_UNUSED, STDLIB_UNUSED

Entry = tuple[str, bytes]

NO_DOCUMENTATION = 2
"""Level at which a compiler leaves descriptions out; numpy insists on its own."""


def packed(
    runtime: Runtime, *, compiler: Compiler | None, told: Told | None = None
) -> dict[str, str]:
    """Pack all that the page's worker needs.

    Parameters
    ----------
    runtime : Runtime
    compiler : Compiler or None
        Makes bytecode of Python's sources, which the page then need not; None leaves sources
    told : callable, optional
        Hears what is done

    Returns
    -------
    dict of str to str
        By part: "code", "wasm", "stdlib", "site"; each compressed with gzip, in base64
    """
    held = runtime.files
    stdlib = list(_kept(held["python_stdlib.zip"], STDLIB_UNUSED))
    numpy, own = list(_kept(held[NUMPY], NUMPY_UNUSED)), [*own_files(), *code_files()]
    if compiler is not None:
        stdlib = compiler.compiled(stdlib, level=NO_DOCUMENTATION)
        numpy, own = compiler.compiled(numpy, level=0), compiler.compiled(own, level=0)
    parts = {
        "code": b"\n".join([held["pyodide.js"], held["pyodide.asm.js"]]),
        "wasm": held["pyodide.asm.wasm"],
        "stdlib": _zipped(stdlib),
        "site": _listed([*numpy, *own]),
    }
    each = counted(list(parts.items()), what="packing the model", told=told)
    return {name: b64encode(gzip.compress(one, mtime=0)).decode("ascii") for name, one in each}


def own_files() -> Iterator[Entry]:
    """Give boomsim's own files, as the browser's Python finds them.

    Yields
    ------
    (str, bytes)
        Path, content
    """
    for path, one in _walked(files("boomsim"), ""):
        if path.endswith((".py", ".toml")) and not path.startswith(ROOMS_UNUSED):
            yield f"boomsim/{path}", one.read_bytes()


def code_files() -> Iterator[Entry]:
    """Give what makes QR codes of links: segno's encoder, where segno is installed.

    The rest of segno writes files, and needs what a browser's Python has not: an empty beginning
    takes its place.

    Yields
    ------
    (str, bytes)
        Path, content
    """
    try:
        place, known = files("segno"), distribution("segno")
    except ImportError:
        return
    yield "segno/__init__.py", b""
    for name in ("encoder.py", "consts.py"):
        yield f"segno/{name}", place.joinpath(name).read_bytes()
    for one in known.files or ():
        if one.name.startswith("LICENSE"):
            yield f"segno/{one.name}", Path(str(one.locate())).read_bytes()


def _walked(folder: Traversable, where: str) -> Iterator[tuple[str, Traversable]]:
    for one in sorted(folder.iterdir(), key=lambda entry: entry.name):
        if one.is_dir():
            yield from _walked(one, f"{where}{one.name}/")
        else:
            yield where + one.name, one


def _kept(archive: bytes, unused: tuple[str, ...]) -> Iterator[Entry]:
    """Sources and libraries of an archive, but those that are unused."""
    with ZipFile(BytesIO(archive)) as held:
        for name in sorted(held.namelist()):
            idle = name.startswith(unused) or "/tests/" in name
            if (not idle and name.endswith((".py", ".so"))) or name.endswith("LICENSE.txt"):
                yield name, held.read(name)


def _zipped(entries: list[Entry]) -> bytes:
    """Python starts from a zip file; it is stored, for the whole of it is compressed afterwards."""
    made = BytesIO()
    with ZipFile(made, "w", ZIP_STORED) as archive:
        for name, content in entries:
            archive.writestr(ZipInfo(name), content)
    return made.getvalue()


def _listed(entries: list[Entry]) -> bytes:
    """The rest: a line of JSON with names and sizes, then all contents one after the other."""
    index = json.dumps([[name, len(content)] for name, content in entries])
    return b"\n".join([index.encode("ascii"), b"".join(content for _, content in entries)])
