"""``boomsim chart --all``: the whole chart book of a machine into a folder."""

import argparse
import os
from pathlib import Path
from typing import TYPE_CHECKING

from boomsim.caution import CAUTION
from boomsim.cli import chart_command_options as chart_inputs
from boomsim.cli import command_options as inputs
from boomsim.cli.json_printing import print_json
from boomsim.cli.progress_bar import Bar
from boomsim.reports.text_tables import paragraph

if TYPE_CHECKING:
    from boomsim.machine.model import Machine
    from boomsim.rating.charts.chart_book import Book
    from boomsim.rating.setup import Setup


def run_book(chosen: argparse.Namespace) -> None:
    """Rate and write a book; stopped half-way, it leaves nothing behind."""
    from boomsim.figures.charts.book.book_files import write_book

    folder = Path(chosen.all)
    _refuse(chosen, folder)
    machine = inputs.machine(chosen)
    chosen.stopped = "nothing was written. Run the command again to start over."
    with Bar() as bar:
        book = _book(chosen, machine, bar)
        files = write_book(
            book,
            folder,
            paper=chart_inputs.paper(chosen),
            class_version=chosen.class_version,
            progress=bar.tell,
        )
    _tell(chosen, book, files)


def _refuse(chosen: argparse.Namespace, folder: Path) -> None:
    for option in ("figure", "csv", "html", "read"):
        if getattr(chosen, option) is not None:
            raise ValueError(
                f"--{option} goes with one chart; --all writes all of its files itself. Leave one "
                "of the two out."
            )
    if folder.exists() and not folder.is_dir():
        raise ValueError(
            f'"{folder}" is a file. Give --all a folder; it is made if it is not there.'
        )


def _book(chosen: argparse.Namespace, machine: "Machine", bar: Bar) -> "Book":
    from boomsim.rating.charts.chart_book import make_book
    from boomsim.rating.charts.chart_configurations import every_configuration

    ways = every_configuration(machine.boom, system=chosen.system)
    return make_book(
        _setups(chosen, machine),
        configurations=ways,
        radii=chart_inputs.rows(chosen, machine, length=ways.length),
        step=chart_inputs.step(chosen),
        units=chosen.units,
        processes=os.cpu_count() or 1,
        progress=lambda done, of: bar.tell("rating", done, of),
    )


def _setups(chosen: argparse.Namespace, machine: "Machine") -> "tuple[Setup, ...]":
    """Combine all that was left open."""
    from boomsim.rating.charts.chart_book import every_setup
    from boomsim.rating.setup import SECTORS

    return every_setup(
        machine,
        sectors=SECTORS if chosen.slew is None else [inputs.slew(chosen.slew)],
        counterweights=None if chosen.counterweight is None else [chosen.counterweight],
        supports=None if chosen.support is None else [chosen.support],
        rules=None if chosen.rule is None else [chosen.rule],
        parts=chosen.parts,
        disturbances=inputs.disturbances(chosen),
        allowances=chosen.allowances,
    )


def _tell(chosen: argparse.Namespace, book: "Book", files: list[Path]) -> None:
    counts = {
        "chapters": len(book.chapters),
        "configurations": len(book.configurations.length),
        "radii": len(book.radii),
        "rated_cells": book.rated,
    }
    if chosen.json:
        listed = [str(file) for file in files]
        print_json("book", {"machine": book.machine.name, **counts, "files": listed})
        return
    print(
        f"{book.machine.name}: {counts['chapters']} ways to set it up, "
        f"{counts['configurations']} ways to extend, {counts['rated_cells']:,} rated cells."
    )
    for file in files:
        print(f"  {file}  {file.stat().st_size / 1e6:.1f} MB")
    print(paragraph(CAUTION))
