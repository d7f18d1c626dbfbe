"""What the class server gives out, all of it held in memory: no request ever reaches a file."""

import gzip
from dataclasses import dataclass
from hashlib import sha256
from importlib.resources import files
from pathlib import Path

STRICT = (
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; "
    "img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
"""For the vote's own pages: nothing inline, nothing from elsewhere, nobody's frame."""

WRITTEN_HERE = (
    "default-src 'none'; script-src 'self' 'unsafe-inline' 'wasm-unsafe-eval' blob:; "
    "worker-src blob:; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
    "frame-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'self'"
)
"""For pages that boomsim wrote in one file: their own scripts stand in them, nothing is fetched."""

KINDS = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".svg": "image/svg+xml",
    ".png": "image/png",
}

WORTH = 1400
"""What fits into one packet is not compressed [bytes]."""

MOST_BYTES = 64_000_000
"""A folder of lessons with a runtime has some 20 MB."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Given:
    """One file that is given out.

    Attributes
    ----------
    kind : str
        Media type
    packed : bytes or None
        The same, compressed with gzip; None where that is no gain
    policy : str
        Content security policy
    tag : str
        By which a browser knows whether its copy still holds
    """

    kind: str
    content: bytes
    packed: bytes | None
    policy: str
    tag: str


def given(name: str, content: bytes, *, policy: str = WRITTEN_HERE) -> Given:
    """Hold a file ready.

    Parameters
    ----------
    name : str
        Its ending says what it is
    """
    packed = gzip.compress(content, mtime=0) if len(content) > WORTH else None
    if packed is not None and len(packed) > 0.95 * len(content):
        packed = None
    return Given(
        kind=KINDS[Path(name).suffix.lower()],
        content=content,
        packed=packed,
        policy=policy,
        tag=f'"{sha256(content).hexdigest()[:32]}"',
    )


def vote_pages(filled: dict[str, str]) -> dict[str, Given]:
    """Take the vote's own pages from the package.

    Parameters
    ----------
    filled : dict of str to str
        HTML by the name of the place that it fills

    Returns
    -------
    dict of str to Given
        By path
    """
    folder, made = files("boomsim.classroom.votes"), {}
    for name in ("student.html", "board.html", "instructor.html"):
        text = folder.joinpath(name).read_text(encoding="utf-8")
        for place, words in filled.items():
            text = text.replace(f"@{place}@", words)
        path = "" if name == "student.html" else name.removesuffix(".html")
        made[path] = given(name, text.encode("utf-8"), policy=STRICT)
    for name in ("vote.css", "vote.js", "student.js", "board.js", "instructor.js"):
        made[name] = given(name, folder.joinpath(name).read_bytes(), policy=STRICT)
    return made


def folder_pages(folder: Path) -> dict[str, Given]:
    """Read a folder of lessons once, before anybody can ask.

    Parameters
    ----------
    folder : Path
        As ``boomsim lessons`` writes it

    Returns
    -------
    dict of str to Given
        By path, below "lessons/"

    Raises
    ------
    ValueError
        If it is no such folder, or too large
    """
    found = [one for one in sorted(folder.glob("*")) if one.suffix.lower() in KINDS]
    if not (folder / "index.html").is_file():
        raise ValueError(
            f'"{folder}" holds no index.html. Write a folder of lessons first, with '
            "boomsim lessons FOLDER, and name that."
        )
    size = sum(one.stat().st_size for one in found)
    if size > MOST_BYTES:
        raise ValueError(
            f'"{folder}" holds {size / 1e6:.0f} MB, and a folder of lessons at most '
            f"{MOST_BYTES / 1e6:.0f}. Name a folder that boomsim lessons wrote."
        )
    made = {f"lessons/{one.name}": given(one.name, one.read_bytes()) for one in found}
    return made | {"lessons/": made["lessons/index.html"]}
