"""Sources made into bytecode when a page is written, so that no reader's browser has to.

Bytecode belongs to one version of Python, that of the browser's runtime; without such a Python at
hand the sources go into the page, and it takes about twice as long to start.
"""

import json
import shutil
import subprocess
import sys
from base64 import b64decode, b64encode
from dataclasses import dataclass

PYTHON = "3.12"
"""Version of the runtime's Python."""

_MAKER = """
import json, marshal, struct, sys
from base64 import b64decode, b64encode
from importlib.util import MAGIC_NUMBER, source_hash
asked, found = json.load(sys.stdin), []
for name, text in asked["sources"]:
    source = b64decode(text)
    code = compile(source, name, "exec", dont_inherit=True, optimize=asked["level"])
    # 1: goes by the source's hash, which nobody checks: the source does not come along.
    made = MAGIC_NUMBER + struct.pack("<I", 1) + source_hash(source) + marshal.dumps(code)
    found.append(b64encode(made).decode("ascii"))
json.dump(found, sys.stdout)
"""
"""Runs in a Python of that version."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Compiler:
    """A Python that makes bytecode for the page.

    Attributes
    ----------
    python : str
        Path
    """

    python: str

    def compiled(self, entries: list[tuple[str, bytes]], *, level: int) -> list[tuple[str, bytes]]:
        """Put bytecode in the place of sources.

        Parameters
        ----------
        entries : list of (str, bytes)
            Path, content; what is no source stays
        level : int
            Of optimisation: 2 leaves descriptions out [1]
        """
        sources = [(name, content) for name, content in entries if name.endswith(".py")]
        asked = [(name, b64encode(content).decode("ascii")) for name, content in sources]
        told = self._run(_MAKER, json.dumps({"sources": asked, "level": level}))
        made = {
            name: b64decode(code) for (name, _), code in zip(sources, json.loads(told), strict=True)
        }
        return [(f"{name}c", made[name]) if name in made else (name, c) for name, c in entries]

    def _run(self, program: str, given: str = "") -> str:
        words = [self.python, "-I", "-W", "ignore", "-c", program]
        done = subprocess.run(words, input=given, capture_output=True, text=True, check=True)
        return done.stdout

    def fits(self) -> bool:
        """Whether it is there and of the version meant."""
        program = "import sys; print('%d.%d' % sys.version_info[:2], sys.implementation.name)"
        try:
            return self._run(program).split() == [PYTHON, "cpython"]
        except (OSError, subprocess.CalledProcessError):
            return False


def find_compiler() -> Compiler | None:
    """Find a Python of the runtime's version: this one, or one on the path."""
    places = (sys.executable, shutil.which(f"python{PYTHON}"))
    found = (Compiler(python=place) for place in places if place)
    return next((one for one in found if one.fits()), None)
