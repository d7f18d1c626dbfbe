"""Pages, tables and pictures that are written from the code at every build of the site."""

import argparse
import contextlib
import importlib
import inspect
import io
import pkgutil
import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import boomsim
from boomsim.cli import COMMANDS, main, parser
from boomsim.lab.draw import draw
from boomsim.lab.scene import first_scene
from boomsim.machine import reading, schema, tables
from boomsim.papers.problems.family import TOPICS
from boomsim.papers.registry import families

HERE = Path(__file__).parent
SHOWN = HERE / "shown"
"""What commands print and draw, for the pages to include."""

PRINTED = {
    "compare": 'compare --radius "6 m, 16 m" --figure shown/compare.svg',
    "chart": 'chart yard60 --extension 0,0,0,90 --extension 0,0,45,45 --radii "4 m, 8 m, 12 m"',
    "reading": 'chart yard60 --read "11.3 m, 25 m" --load "8 t"',
    "overload": 'overload yard60 --extension 0,0,0,90 --radius "6 m"',
    "losses": 'losses yard60 --extension 0,0,45,45 --radius "12 m"',
    "paper": "paper ../exercises/worksheet-overlap.toml --format md --out shown/sheet",
}
DRAWN = {
    "chart": "chart yard60",
    "around": 'around truck18 --radius "12 m"',
    "range": "range yard60 --extension 0,0,45,45",
    "overload": 'overload yard60 --extension 0,0,0,90 --radius "6 m"',
    "map": "overload yard60 --map",
    "telescope": 'telescope yard60 --load "8 t" --angle "60 deg"',
    "pins": "pins yard60 --from 0,0,45,45 --to 45,45,0,0",
    "lower": 'lower yard60 --extension 0,0,0,90 --load "12 t"',
    "losses": 'losses yard60 --extension 0,0,45,45 --radius "12 m"',
}


def write_all() -> None:
    """Write every page, table and picture."""
    SHOWN.mkdir(exist_ok=True)
    # Papers of another version are never written over: those of an earlier build go first.
    shutil.rmtree(SHOWN / "sheet", ignore_errors=True)
    _write(HERE / "commands.md", commands())
    _write(HERE / "api.md", api())
    _write(HERE / "machine-entries.md", machine_entries())
    _write(HERE / "families.md", problem_families())
    for name, line in PRINTED.items():
        _write(SHOWN / f"{name}.txt", f"$ boomsim {line}\n\n{run(line)}")
    for name, line in DRAWN.items():
        run(f"{line} --figure shown/{name}.svg")
    _write(SHOWN / "explorer.svg", draw(first_scene()))


def run(line: str) -> str:
    """What a command prints, run from the folder of the pages."""
    said = io.StringIO()
    with contextlib.chdir(HERE), contextlib.redirect_stdout(said):
        code = main(shlex.split(line))
    if code:
        raise RuntimeError(f"boomsim {line}: exit code {code}")
    return said.getvalue()


def commands() -> str:
    """Command reference, from the parser."""
    actions = [a for a in parser()._actions if isinstance(a, argparse._SubParsersAction)]
    pages = ["# Commands", "", "Written from the command line's own parser.", ""]
    for name in COMMANDS:
        text = actions[0].choices[name].format_help()
        pages += [f"## boomsim {name}", "", "```text", text.rstrip(), "```", ""]
    return "\n".join(pages)


def api() -> str:
    """API reference: every public function and class, signature and docstring."""
    pages = ["# API", "", "Written from the docstrings. Shapes and units stand in brackets.", ""]
    names = sorted(m.name for m in pkgutil.walk_packages(boomsim.__path__, "boomsim."))
    for name in names:
        if name == "boomsim.__main__" or ".families." in name:
            continue
        module = importlib.import_module(name)
        summary = (inspect.getdoc(module) or "").split("\n\n")[0].replace("\n", " ")
        pages += [f"## {name}", "", summary, ""]
        for key, value in _public(module):
            pages += [f"### {name.rsplit('.', 1)[1]}.{key}", "", "```text", key + _signature(value)]
            pages += ["", inspect.getdoc(value) or "", "```", ""]
    return "\n".join(pages)


def machine_entries() -> str:
    """Every entry of a machine file: what it means, how it is written, its plausible range."""
    pages = ["# Entries of a machine file", "", "Written from the reader's own tables.", ""]
    for title, table in _tables("", schema.MACHINE):
        pages += [f"## {title}", "", "| entry | meaning | written as |", "|---|---|---|"]
        for name, key in table.keys.items():
            default = "" if key.default is tables.MISSING else "; may be left out"
            pages.append(f"| `{name}` | {key.about} | {_form(key.reader)}{default} |")
        pages.append("")
    return "\n".join(pages)


def problem_families() -> str:
    """Every problem family by topic."""
    pages = ["# Problem families", "", "Written from the families themselves.", ""]
    for topic in TOPICS:
        pages += [f"## {topic.capitalize()}", "", "| family | asks |", "|---|---|"]
        of_topic = [family for family in families().values() if family.topic == topic]
        pages += [f"| `{family.id}` | {family.title} |" for family in of_topic]
        pages.append("")
    return "\n".join(pages)


def _tables(path: str, table: Any, *, many: bool = False) -> Iterator[tuple[str, Any]]:
    """A table of the machine file and all tables inside it, outermost first."""
    title = f"[[{path}]]" if many else f"[{path}]"
    yield (title if path else "The machine"), table
    for name, key in table.keys.items():
        for inner in _inside(key.reader):
            several = isinstance(key.reader, reading.Several)
            yield from _tables(f"{path}.{name}".lstrip("."), inner, many=several)


def _inside(reader: Any) -> list[Any]:
    if isinstance(reader, tables.Table):
        return [reader]
    if isinstance(reader, reading.Several | tables.Named):
        return _inside(reader.item)
    return []


def _form(reader: Any) -> str:
    match reader:
        case reading.Figure(quantity=quantity, least=least, most=most, zero=zero):
            return f"{quantity.replace('_', ' ')}, {'0 or ' if zero else ''}{least} to {most}"
        case reading.Choice(words=words):
            return "one of " + ", ".join(f"`{word}`" for word in words)
        case reading.Several(item=item, least=least, most=most):
            return f"list of {least} to {most}: {_form(item)}"
        case reading.Whole(least=least, most=most):
            return f"whole number, {least} to {most}"
        case reading.Text(longest=longest):
            return f"text of up to {longest} characters"
        case tables.NameOf(kind=kind):
            return f"a name under `[{kind}]`"
        case tables.Named():
            return "tables, each under a name of its own"
        case _:
            return "table, below"


def _public(module: Any) -> list[tuple[str, Any]]:
    return [
        (key, value)
        for key, value in vars(module).items()
        if not key.startswith("_")
        and (inspect.isfunction(value) or inspect.isclass(value))
        and value.__module__ == module.__name__
    ]


def _signature(value: Any) -> str:
    try:
        return str(inspect.signature(value))
    except (TypeError, ValueError):
        return "(...)"


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8")
