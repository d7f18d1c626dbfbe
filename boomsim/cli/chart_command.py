"""``boomsim chart``: load charts with the bold line, one by one or the whole book."""

import argparse
from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from boomsim.cli import chart_command_options as chart_inputs
from boomsim.cli import command_options as inputs
from boomsim.cli.answer_printing import refuse_picture
from boomsim.cli.progress_bar import Bar
from boomsim.face.chart_result import refuse_both_rows
from boomsim.reports.text_in_trade_words import in_trade_words

if TYPE_CHECKING:
    from boomsim.face.chart_result import Charted
    from boomsim.rating.charts.chart_tables import Added
    from boomsim.rating.charts.load_chart import Chart

HELP = "load charts with the bold line between what strength sets and what stability sets"
EXAMPLE = "boomsim chart yard60 --figure chart.pdf; boomsim chart truck18 --all charts"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    inputs.add_machine(parser)
    what = parser.add_mutually_exclusive_group()
    what.add_argument(
        "--best",
        action="store_true",
        help="the best of all ways to extend at each radius, a column for each boom length "
        "(default: one way for each length, as the boom goes out step by step)",
    )
    what.add_argument(
        "--extension",
        metavar="PERCENT",
        action="append",
        help="a column for this way to extend, as 0,0,45,45; repeat it for more columns",
    )
    what.add_argument(
        "--length",
        metavar="LENGTH",
        help="a column for each way to reach this boom length, or these, as '18.7 m, 25.9 m'",
    )
    what.add_argument(
        "--all", metavar="DIR", help="the whole book into a folder: PDF, HTML, CSV and JSON"
    )
    parser.add_argument("--system", metavar="NAME", help="boom system: pinned, sequenced, ...")
    parser.add_argument(
        "--breaks-first",
        action="store_true",
        help="a second line beside the bold one: where something would break before the crane "
        "tips, if the load were raised past all margins",
    )
    grid = parser.add_argument_group("grid")
    grid.add_argument("--radii", metavar="LENGTH", help="the rows, such as '6 m, 8 m, 10 m'")
    grid.add_argument("--rows", metavar="LENGTH", help="from row to row (default: 1 m or 5 ft)")
    grid.add_argument(
        "--step", metavar="MASS", help="capacities are rounded down to it (50 kg or 100 lb)"
    )
    read = parser.add_argument_group("read the chart as the trade does")
    read.add_argument("--read", metavar="RADIUS,BOOM", help="such as '11.3 m, 25 m'")
    read.add_argument("--load", metavar="MASS", help="net load to lift there")
    read.add_argument("--jib", metavar="MASS", help="deduction for a jib stowed on the boom")
    inputs.add_setup(parser)
    parser.add_argument(
        "--sector", metavar="NAME", dest="slew", help="around or rear: another name for --slew"
    )
    parser.set_defaults(slew=None, rule=None)
    inputs.add_output(parser)
    out = parser.add_argument_group("files")
    out.add_argument("--csv", metavar="FILE", help="the rated cells as comma-separated values")
    out.add_argument(
        "--html", metavar="FILE", help="a page that asks which way lifts most, and shows the charts"
    )
    out.add_argument(
        "--paper", choices=("a4", "letter"), help="default: a4, or letter with us units"
    )
    out.add_argument(
        "--class",
        dest="class_version",
        action="store_true",
        help="without bold line and shading; the answer sheet goes beside it",
    )


def run(chosen: argparse.Namespace) -> None:
    """Answer."""
    _refuse_mixtures(chosen)
    if chosen.all is not None:
        from boomsim.cli.chart_command_book import run_book

        run_book(chosen)
        return
    _refuse_targets(chosen)
    made = chart(chosen)
    # Worked out before the first file is written, so that what is refused leaves none.
    tell = _chart(chosen, made) if chosen.read is None else _read(chosen, made.study)
    _write_files(chosen, made)
    tell()


def _refuse_targets(chosen: argparse.Namespace) -> None:
    """Refuse files that could not be written, before any of them is."""
    from pathlib import Path

    from boomsim.files.text_file import refuse_ending
    from boomsim.files.whole_files import refuse_target

    refuse_picture(chosen)
    if chosen.html is not None:
        refuse_ending(chosen.html, ending=".html")
    if chosen.csv is not None:
        refuse_target(Path(chosen.csv))


def _chart(chosen: argparse.Namespace, made: "Charted") -> Callable[[], None]:
    """Work out the whole chart; what is given tells it."""
    from boomsim.cli.json_printing import print_json

    if chosen.json:
        return partial(print_json, made.kind, made.data())
    if not chosen.class_version:
        return partial(print, made.text(chosen.units))
    from boomsim.reports.chart_report import as_text

    text = as_text(made.study, units=chosen.units, marked=False, rule=made.rule)
    return partial(print, in_trade_words(text, chosen.units))


def _refuse_mixtures(chosen: argparse.Namespace) -> None:
    refuse_both_rows(chosen.radii, chosen.rows)
    if chosen.read is None and (chosen.load is not None or chosen.jib is not None):
        raise ValueError(
            "--load and --jib belong to --read 'RADIUS, BOOM', which is missing. Add it, or leave "
            "them out."
        )
    if chosen.breaks_first and (chosen.read is not None or chosen.all is not None):
        other = "--read" if chosen.read is not None else "--all"
        raise ValueError(
            f"--breaks-first draws a line on one chart and {other} draws none. Leave one of the "
            "two out."
        )
    if chosen.class_version and chosen.figure is None and chosen.all is None:
        raise ValueError("--class needs a file to draw in: add --figure FILE or --all DIR.")


def chart(chosen: argparse.Namespace) -> "Charted":
    """Rate the chart that was asked for."""
    from boomsim.face import chart_result as face

    chosen.slew = "around" if chosen.slew is None else chosen.slew
    chosen.rule = "share" if chosen.rule is None else chosen.rule
    with Bar() as bar:
        return face.chart(
            chosen.machine,
            best=chosen.best,
            extension=chosen.extension,
            length=chosen.length,
            system=chosen.system,
            radii=chosen.radii,
            rows=chosen.rows,
            step=chosen.step,
            breaks_first=chosen.breaks_first,
            units=chosen.units,
            told=bar.tell,
            **inputs.choices(chosen),
        )


def _write_files(chosen: argparse.Namespace, made: "Charted") -> None:
    if chosen.figure is not None:
        _draw(chosen, made)
    if chosen.csv is not None:
        from pathlib import Path

        from boomsim.files.whole_files import whole_file
        from boomsim.rating.charts.chart_tables import write_csv

        with (
            whole_file(Path(chosen.csv)) as part,
            part.open("w", encoding="utf-8", newline="") as f,
        ):
            write_csv([made.study], f, units=chosen.units, added=_added(chosen, made))
    if chosen.html is not None:
        _page(chosen, made.study)


def _added(chosen: argparse.Namespace, made: "Charted") -> "Added | None":
    """What the second line adds to the table, where it is asked for."""
    from boomsim.rating.overload.second_line import second_columns

    return None if made.raised is None else second_columns(made.raised, units=chosen.units)


def _draw(chosen: argparse.Namespace, made: "Charted") -> None:
    from dataclasses import replace
    from pathlib import Path

    from boomsim.figures.charts.chart_page import chart_sheets
    from boomsim.figures.charts.chart_sizes_and_tints import ANSWERS, CLASS, FULL
    from boomsim.figures.charts.sheet_files import write_sheets

    target = Path(chosen.figure)
    full, answers = (replace(one, second_line=chosen.breaks_first) for one in (FULL, ANSWERS))
    looks = {target: CLASS if chosen.class_version else full}
    if chosen.class_version:
        looks[target.with_stem(f"{target.stem}-answers")] = answers
    for path, look in looks.items():
        sheets = chart_sheets(
            made.study,
            units=chosen.units,
            paper=chart_inputs.paper(chosen),
            look=look,
            rule=made.rule,
        )
        write_sheets(sheets, path)


def _page(chosen: argparse.Namespace, made: "Chart") -> None:
    from pathlib import Path

    from boomsim.figures.charts.book.book_html import book_html
    from boomsim.files.whole_files import whole_file
    from boomsim.rating.charts.chart_book import make_book
    from boomsim.rating.charts.chart_configurations import every_configuration

    stated = chosen.extension is not None or chosen.length is not None
    ways = made.configurations
    if not stated:
        # Whatever way the chart states for each length: a question needs several to choose from.
        ways = every_configuration(made.setup.machine.boom, system=chosen.system)
    book = make_book(
        [made.setup],
        configurations=ways,
        radii=chart_inputs.rows(chosen, made.setup.machine, length=ways.length),
        step=made.step,
        units=chosen.units,
    )
    with whole_file(Path(chosen.html)) as part:
        part.write_text(book_html(book), encoding="utf-8")


def _read(chosen: argparse.Namespace, made: "Chart") -> Callable[[], None]:
    """Compute a reading and return what prints it."""
    from boomsim.cli.json_printing import print_json
    from boomsim.rating.charts.chart_reading import read_chart
    from boomsim.reports.chart_report import reading_json, reading_text
    from boomsim.units import parse

    where = inputs.radii(chosen.read, what="--read")
    assert where is not None
    if len(where) != 2:
        raise ValueError(
            f"--read: {chosen.read!r} needs a radius and a boom length, such as '11.3 m, 25 m'."
        )
    reading = read_chart(
        made,
        radius=float(where[0]),
        length=float(where[1]),
        load=None if chosen.load is None else parse(chosen.load, "mass", what="--load"),
        stowed_jib=0.0 if chosen.jib is None else parse(chosen.jib, "mass", what="--jib"),
        units=chosen.units,
    )
    if chosen.json:
        return partial(print_json, "reading", reading_json(reading))
    return partial(print, in_trade_words(reading_text(reading, units=chosen.units), chosen.units))
