"""What runs Python in a browser: named, pinned and checked, and never fetched by this program."""

from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from types import MappingProxyType

VERSION = "0.27.7"
"""Of Pyodide, which is CPython 3.12 for WebAssembly."""

NUMPY = "numpy-2.0.2-cp312-cp312-pyodide_2024_0_wasm32.whl"

PINNED = MappingProxyType(
    {
        "pyodide.js": "b4cb23a53aba19c221659b9fb40a2f18281d685691dc06647fb0afd0681baf98",
        "pyodide.asm.js": "6b4c90de5b7172873f04f21884d0e9d2274e305fe32116558fe3e4fbe3618d51",
        "pyodide.asm.wasm": "a50dd1843f805a0b7c45b61037ee0d7b26dfe85efe0e18ef95a34ad24e401f5f",
        "python_stdlib.zip": "16611534726e5d8ac2bd8f926410b2dcb8d6f49aa24913463533b457a2115c16",
        NUMPY: "ebb61241d962b98b21597d7ce43b67668a6d5bab3acec4fbe958657320d7cd08",
    }
)
"""SHA-256 of every file. The first four are those of the npm package pyodide 0.27.7 (the integrity
of its tarball stands in docs/live.md); the last is what its own pyodide-lock.json says of numpy."""

WHAT_TO_FETCH = (
    f"Unpack Pyodide's full release {VERSION} (which has all five), or the npm package pyodide "
    f"{VERSION} (npm pack pyodide@{VERSION}) with {NUMPY} beside it, and name that folder: "
    "--runtime FOLDER"
)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Runtime:
    """Files of the runtime, as they were checked.

    Attributes
    ----------
    files : dict of str to bytes
        By name, those of `PINNED`
    """

    files: dict[str, bytes]


def read_runtime(folder: str | None) -> Runtime:
    """Read the runtime and make sure that it is the one meant.

    Parameters
    ----------
    folder : str or None
        That holds the files; None where none was named

    Raises
    ------
    ValueError
        If a file is missing or is another than the pinned one.
    """
    if folder is None:
        raise ValueError(
            f"A live page carries Python for browsers, which boomsim does not. {WHAT_TO_FETCH}."
        )
    place = Path(folder)
    missing = [name for name in PINNED if not (place / name).is_file()]
    if missing:
        raise ValueError(f'The folder "{folder}" lacks {", ".join(missing)}. {WHAT_TO_FETCH}.')
    return Runtime(files={name: _checked(place / name) for name in PINNED})


def _checked(path: Path) -> bytes:
    held = path.read_bytes()
    if sha256(held).hexdigest() != PINNED[path.name]:
        raise ValueError(
            f'"{path}" is not the {path.name} of Pyodide {VERSION}: its SHA-256 is another. '
            f"{WHAT_TO_FETCH}."
        )
    return held
