"""Pages, tables and pictures that are written from the code at every build of the site."""

import argparse
import contextlib
import io
import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import gallery
import lessons
import questions
import reference

from boomsim.cli import COMMANDS, main, parser
from boomsim.lab.scene.scene import first_scene
from boomsim.lab.views.draw_scene import draw
from boomsim.machine import file_schema as schema
from boomsim.machine import file_tables as tables
from boomsim.machine import value_readers as reading

HERE = Path(__file__).parent
SHOWN = HERE / "shown"
"""What commands print and draw, for the pages to include."""

PRINTED = {
    "chart": 'chart yard60 --extension 0,0,0,90 --extension 0,0,45,45 --radii "4 m, 8 m, 12 m"',
    "reading": 'chart yard60 --read "11.3 m, 25 m" --load "8 t"',
    "paper": "paper worksheet-overlap --format md --out shown/sheet",
}
DRAWN = ("compare", "reeving", "overload")
"""Of the gallery: what these print is shown, too."""
IN_FRONT = ("CHANGELOG", "CONTRIBUTING", "DEVELOPERS", "SECURITY")


def write_all() -> None:
    """Write every page, table and picture."""
    for folder in (SHOWN, HERE / "lessons", HERE / "api"):
        folder.mkdir(exist_ok=True)
    # Papers of another version are never written over: those of an earlier build go first.
    shutil.rmtree(SHOWN / "sheet", ignore_errors=True)
    for name, line in PRINTED.items():
        _write(SHOWN / f"{name}.txt", f"$ boomsim {line}\n\n{run(line)}")
    drawn = gallery.draw(run)
    for name in DRAWN:
        _write(SHOWN / f"{name}.txt", f"$ boomsim {gallery.PICTURES[name][1]}\n\n{drawn[name]}")
    _write(SHOWN / "explorer.svg", draw(first_scene()))
    for name, text in _pages():
        _write(HERE / name, text)


def _pages() -> Iterator[tuple[str, str]]:
    yield "commands.md", commands()
    yield "machine-entries.md", machine_entries()
    yield "families.md", questions.page(HERE / "asked")
    yield "gallery.md", gallery.page()
    for name in IN_FRONT:
        yield f"{name.lower()}.md", in_front(name)
    yield "shown/lessons.md", lessons.contents()
    yield from lessons.pages()
    yield from reference.pages()


def in_front(name: str) -> str:
    """A page that stands in front of the repository, its links as they are from here."""
    text = (HERE.parent / f"{name}.md").read_text(encoding="utf-8").replace("](docs/", "](")
    for other in IN_FRONT:
        text = text.replace(f"]({other}.md", f"]({other.lower()}.md")
    return text


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


def _write(path: Path, text: str) -> None:
    """Write a page; one that says the same stays as it is, so that it is not read anew."""
    if not path.is_file() or path.read_text(encoding="utf-8") != text:
        path.write_text(text, encoding="utf-8")
