"""The pictures of the verification page, as SVG that comes out alike from equal numbers."""

from pathlib import Path
from typing import Any

import numpy as np
from matplotlib import rc_context
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.ticker import FuncFormatter, NullLocator
from verification.record import Record

from boomsim.figures.colours_and_lines import IDENTITIES

STYLE = {"svg.hashsalt": "boomsim", "font.size": 9, "axes.spines.top": False,
         "axes.spines.right": False, "axes.axisbelow": True}  # fmt: skip
TITLES = {
    "moment": "section moments",
    "front_pad": "front-pad forces",
    "rear_pad": "rear-pad forces",
    "deflection": "tip deflection",
}
SETS = {"as they are": ("#1f5a99", "o")}
MISSED = "#c0392b"
LEAST = 1e-6
"""Smaller deviations are drawn here [1]."""


def draw_deviations(record: Record, target: Path) -> bool:
    """Every random state's deviation over how far it bends; misses in red with their number."""
    studies = {s["title"]: s for s in record.of_kind("deviations") if s["title"] in SETS}
    if not studies:
        return False
    with rc_context(STYLE):
        figure = Figure(figsize=(9.0, 6.4), layout="constrained")
        for axes, name in zip(figure.subplots(2, 2, sharex=True).flat, TITLES, strict=True):
            for title in reversed(SETS):
                if title in studies:
                    _cloud(axes, studies[title], name)
            _frame(axes, name, next(iter(studies.values()))["promises"][name])
        figure.supxlabel("tip deflection over boom length")
        figure.supylabel("deviation from the finite-element program")
        marks, words = figure.axes[0].get_legend_handles_labels()
        figure.legend(marks, words, loc="outside upper center", ncols=2, frameon=False)
        _save(figure, target)
    return True


def _cloud(axes: Axes, study: dict[str, Any], name: str) -> None:
    colour, mark = SETS[study["title"]]
    bent, found = np.array(study["bent"]), np.maximum(study["found"][name], LEAST)
    missed = found >= study["promises"][name]
    axes.scatter(bent[~missed], found[~missed], s=11, c=colour, marker=mark, linewidths=0.8,
                 label=f"{study['title']}: {len(found)} states")  # fmt: skip
    axes.scatter(bent[missed], found[missed], s=26, c=MISSED, marker=mark)
    for k in np.flatnonzero(missed):
        axes.annotate(str(study["seeds"][k]), (bent[k], found[k]), xytext=(5, 3),
                      textcoords="offset points", color=MISSED, fontsize=8)  # fmt: skip


def _frame(axes: Axes, name: str, promise: float) -> None:
    axes.set_yscale("log")
    axes.set_ylim(LEAST / 1.3, 1e-2)
    axes.set_title(f"{TITLES[name]}: promised {100 * promise:g} %", fontsize=9, loc="left")
    axes.axhline(promise, color="black", lw=1.0)
    axes.grid(True, alpha=0.25)
    axes.xaxis.set_major_formatter(FuncFormatter(lambda x, _: f"{100 * x:g} %"))
    axes.yaxis.set_major_formatter(FuncFormatter(lambda y, _: f"{100 * y:g} %"))


def draw_convergence(record: Record, target: Path) -> bool:
    """Errors over sizes with a line of the expected slope through the finest."""
    studies = record.of_kind("convergence")
    if not studies:
        return False
    groups = list(dict.fromkeys(_group(study) for study in studies))
    with rc_context(STYLE):
        figure = Figure(figsize=(9.0, 3.6), layout="constrained")
        panels = figure.subplots(1, len(groups), squeeze=False)[0]
        for axes, group in zip(panels, groups, strict=True):
            _panel(axes, group, [study for study in studies if _group(study) == group])
        panels[0].set_ylabel("error")
        _save(figure, target)
    return True


def _group(study: dict[str, Any]) -> str:
    return str(study["title"].split(":")[0])


def _panel(axes: Axes, group: str, studies: list[dict[str, Any]]) -> None:
    for number, study in enumerate(studies):
        kind = IDENTITIES[number % len(IDENTITIES)]
        sizes, errors = np.array(study["sizes"]), np.abs(study["errors"])
        name = study["title"].partition(": ")[2]
        # Hollow and of growing size: what lies on another hides nothing.
        axes.loglog(
            sizes, errors, kind.marker, ms=5 + 3 * number, mfc="none", mec=kind.colour, mew=1.5,
            zorder=3, label=f"{name}: {study['slope']:.2f}",
        )  # fmt: skip
        k = int(np.argmin(sizes))
        line = errors[k] * (sizes / sizes[k]) ** study["expected"]
        axes.loglog(sizes, line, color="black", lw=0.8, zorder=0)
    axes.set_title(f"{group}: slope {studies[0]['expected']:.0f} expected", fontsize=9, loc="left")
    axes.set_xlabel(studies[0]["size"], fontsize=8)
    ticks = sorted({size for study in studies for size in study["sizes"]})
    axes.set_xticks(ticks, [f"{size:.2g}" for size in ticks])
    axes.xaxis.set_minor_locator(NullLocator())
    low, high = axes.get_ylim()
    axes.set_ylim(low, high * (high / low) ** 0.3)
    axes.yaxis.set_major_formatter(FuncFormatter(lambda y, _: f"{100 * y:g} %"))
    axes.grid(True, alpha=0.25)
    axes.legend(fontsize=8, frameon=False, loc="upper left")


def _save(figure: Figure, target: Path) -> None:
    figure.savefig(target, format="svg", metadata={"Date": None})
