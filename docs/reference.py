"""API pages: what `import boomsim` offers, and each room of the package, set by autodoc."""

import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator
from types import ModuleType
from typing import Any

from sphinx.domains.python import PythonDomain

import boomsim
from boomsim.face.offered_names import OFFERED

LEFT_OUT = (
    "boomsim.__main__",
    "boomsim.cli.",
    "boomsim.reports.",
    "boomsim.classroom.",
    "boomsim.lab.",
    "boomsim.papers.families.",
)
"""Nothing to import: commands, what they print and serve, and a file for each problem family."""

FACE = "face"
"""Page of what `import boomsim` offers."""


def rooms() -> dict[str, list[str]]:
    """Modules by the package in which they are."""
    found: dict[str, list[str]] = {}
    for info in pkgutil.walk_packages(boomsim.__path__, "boomsim."):
        if not info.ispkg and not info.name.startswith(LEFT_OUT):
            found.setdefault(info.name.rpartition(".")[0], []).append(info.name)
    return {room: sorted(modules) for room, modules in sorted(found.items())}


QUOTED = re.compile(r"(``.*?``|:\w+:`.*?`|`.*?`)")
NAMED = re.compile(r":type [^:]+: ")
FIELD = re.compile(r":(?:param|type) [^:]+:")
WORD = re.compile(r"(?<![\w.`~:])[A-Z]\w+")

SENTENCES: dict[str, list[str]] = {}
"""Of constants, by their full names."""


def escape(app: Any, what: str, name: str, thing: Any, options: Any, lines: list[str]) -> None:
    """Our docstrings have names in backticks and no other markup: |x|, * and a_ are meant.

    A constant's is a sentence: what stands before its colon is no type.
    """
    if what in ("data", "attribute"):
        SENTENCES[name] = [_escaped(line) for line in lines]
    lines[:] = [line if line.lstrip().startswith(">>>") else _escaped(line) for line in lines]


def _escaped(line: str) -> str:
    """Outside of quotes."""
    parts = QUOTED.split(line)
    parts[::2] = [re.sub(r"([*|])|(?<=\w)_(?!\w)", r"\\\g<0>", part) for part in parts[::2]]
    return "".join(parts)


def link(app: Any, what: str, name: str, thing: Any, options: Any, lines: list[str]) -> None:
    """Link a type to the class of that name which the module knows, and to no other."""
    lines[:] = SENTENCES.get(name, lines)
    # A function of the face is called by another name than that under which it is written.
    module = _module_of(thing.__module__ if inspect.isfunction(thing) else name)
    for number, line in enumerate(lines):
        # The attributes of a dataclass are what it is made with; an ivar's name would be looked up.
        line = line.replace(":ivar ", ":param ").replace(":vartype ", ":type ")
        # Of several names with spaces all but the last would be read as a type.
        line = lines[number] = FIELD.sub(lambda m: m.group().replace(", ", ",\u200b"), line)
        if found := NAMED.match(line):
            lines[number] = found.group() + _linked(line[found.end() :], module)


def _linked(words: str, module: ModuleType) -> str:
    def to(found: re.Match[str]) -> str:
        known = getattr(module, found.group(), None)
        if not inspect.isclass(known) or not known.__module__.startswith("boomsim."):
            return found.group()
        return f":class:`~{known.__module__}.{known.__qualname__}`"

    made = WORD.sub(to, words.replace("*", ""))
    # Bare words would be looked up, and found in the strangest places.
    return made if ":class:" in made else f"*{made}*"


def _module_of(name: str) -> ModuleType:
    """The module in which something of this full name is."""
    while True:
        try:
            return importlib.import_module(name)
        except ImportError:
            name = name.rpartition(".")[0]


def pages() -> Iterator[tuple[str, str]]:
    """Every page by its file."""
    yield "api/index.md", _index()
    yield f"api/{FACE}.md", _face()
    for room, modules in rooms().items():
        yield f"api/{room}.md", _room(room, modules)


def _index() -> str:
    short = {room: room.removeprefix("boomsim.") for room in rooms()}
    rows = [
        f"| [{name}]({room}.md) | {_summary(importlib.import_module(room))} |"
        for room, name in short.items()
    ]
    lines = [
        "# API",
        "",
        f"[What `import boomsim as bs` offers]({FACE}.md) is enough for most: every study as a "
        "function. Below are the rooms behind it, for who builds on them: public functions and "
        "classes with shapes and units in brackets, SI units, angles in radians. What begins with "
        "an underscore is nobody's business. How the rooms lean on one another is in "
        "[Developers](../developers.md).",
        "",
        "| room | holds |",
        "|---|---|",
        *rows,
        "",
        "```{toctree}\n:hidden:\n",
        FACE,
        *rooms(),
        "```",
    ]
    return "\n".join([*lines, ""])


def _face() -> str:
    """The functions under the names by which they are called, for other sites to link to."""
    lines = [
        "# What `import boomsim` offers",
        "",
        '```python\nimport boomsim as bs\n\nfound = bs.compare("yard60", length="18.7 m")',
        'print(found.text(units="us"))\n```',
        "",
        'Figures are text with a unit (`"18.7 m"`) or plain SI numbers. What comes back shows '
        "itself in a notebook, and has `text()`, `plot()`, `to_dict()`, `rows()` and "
        "`to_dataframe()`: see [the results](boomsim.face.md).",
        "",
        "```{eval-rst}",
        *(f".. autofunction:: boomsim.{name}" for name in sorted(OFFERED)),
        "```",
        "",
    ]
    return "\n".join(lines)


def _room(room: str, modules: list[str]) -> str:
    package = importlib.import_module(room)
    lines = [f"# {room}", "", _summary(package), ""]
    for name in modules:
        if _is_empty(importlib.import_module(name)):
            continue
        lines += [
            f"## {name.rpartition('.')[2]}",
            "",
            "```{eval-rst}",
            f".. automodule:: {name}",
            "```",
            "",
        ]
    return "\n".join(lines)


def _summary(module: ModuleType) -> str:
    return (inspect.getdoc(module) or "").split("\n\n")[0].replace("\n", " ")


def _is_empty(module: ModuleType) -> bool:
    return not inspect.getdoc(module)


class Names(PythonDomain):
    """Looks up only what there is: most types of a signature (`int`, `ndarray`) are not ours.

    Sphinx would compare each of them with every name of the site.
    """

    ends: set[str]
    counted = -1

    def find_obj(self, env: Any, modname: Any, classname: Any, name: str, *rest: Any) -> Any:
        """Find an object, as Sphinx does."""
        if self.counted != len(self.objects):
            self.counted = len(self.objects)
            self.ends = {known.rpartition(".")[2] for known in self.objects}
        if name.removesuffix("()").rpartition(".")[2] not in self.ends:
            return []
        return super().find_obj(env, modname, classname, name, *rest)
