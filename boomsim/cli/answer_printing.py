"""Telling an answer: first the picture into its file, then the words or the JSON."""

import argparse
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from boomsim.cli.json_printing import print_json
from boomsim.reports.json_schema import plain
from boomsim.reports.text_in_trade_words import in_trade_words

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.face.study_result import Result


def tell(
    chosen: argparse.Namespace,
    kind: str,
    *,
    data: Callable[[], dict[str, Any]],
    text: Callable[[], str],
    figure: "Callable[[], Figure]",
    picture: str | None = None,
) -> None:
    """Compute before printing, so that a refused command prints nothing.

    Parameters
    ----------
    kind : str
        Which command answers
    data, text, figure : callable
        The answer as JSON, as words, and as a picture
    picture : str, optional
        File for the picture if none was named
    """
    answer: dict[str, Any] = plain(data()) if chosen.json else {}
    words = "" if chosen.json else in_trade_words(text(), chosen.units)
    path = chosen.figure or picture
    if path:
        from boomsim.figures.figure_page import write
        from boomsim.figures.labels_in_trade_words import label_in_trade_words

        write(label_in_trade_words(figure(), chosen.units), path)
    if chosen.json:
        print_json(kind, answer)
        return
    print(words)
    if path:
        print(f"\nThe picture is in {path}.")


def tell_result(chosen: argparse.Namespace, found: "Result", *, picture: str | None = None) -> None:
    """Tell what a study found.

    Parameters
    ----------
    picture : str, optional
        File for the picture if none was named
    """
    tell(
        chosen,
        found.kind,
        data=found.data,
        text=lambda: found.text(chosen.units),
        figure=lambda: found.plot(chosen.units),
        picture=picture,
    )


def refuse_picture(chosen: argparse.Namespace) -> None:
    """Refuse a picture's file that could not be written, before any work is done."""
    if chosen.figure is not None:
        from boomsim.figures.figure_page import check_path

        check_path(chosen.figure)
