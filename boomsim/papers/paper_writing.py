"""From a blueprint to a folder of papers, solutions, keys and packages."""

import csv
import io
import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from boomsim.files.folder_lock import only_writer
from boomsim.files.work_progress import Told, counted
from boomsim.papers.blueprint import Blueprint, read_blueprint
from boomsim.papers.check_code import code_of
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.paper_errors import PaperError
from boomsim.papers.paper_manifest import Manifest, digest
from boomsim.papers.parallel_variants import Hardness, hardness
from boomsim.papers.render.paper_data import key_data, paper_data, to_json
from boomsim.papers.render.paper_notes import KINDS
from boomsim.units import did_you_mean

FORMATS = ("pdf", "large-print", "answer-sheet", "html", "md", "json", "qti", "qti3", "moodle")

KEYS = "keys"
"""Folder of all that must not be handed out; the rest may be copied as it is."""

FOLDERS = {"paper": "papers", "solutions": f"{KEYS}/solutions", "marking": f"{KEYS}/marking"}
KEY, SHEET = f"{KEYS}/key.json", "answers.csv"

RENDERED = ("pdf", "html", "md", "json")
"""Formats in which paper, solutions and marking key are written alike."""

_Make = Callable[[Paper, str], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What has been written.

    Attributes
    ----------
    key : Path
        For :func:`boomsim.papers.marking.mark_class.mark`
    sheet : Path
        Empty answer sheet
    made, kept : int
        Files written now, and files that were complete already [1]
    variants : int
        [1]
    sheet_kept : bool
        Whether the answer sheet had been filled in and was left alone
    hardness : Hardness
        How equally hard the variants are
    """

    folder: Path
    key: Path
    sheet: Path
    made: int
    kept: int
    variants: int
    hardness: Hardness
    sheet_kept: bool = False


def write_papers(
    blueprint_path: str | Path,
    out_dir: str | Path,
    *,
    formats: Sequence[str] = ("pdf",),
    units: str | None = None,
    variants: int | None = None,
    seed: str | int | None = None,
    told: Told | None = None,
) -> Written:
    """Set all variants of a blueprint and write them.

    Files that are complete from an earlier run are kept; nothing is ever half written.

    Parameters
    ----------
    formats : sequence of str
        Among `FORMATS`
    units, variants, seed : optional
        Instead of the blueprint's
    told : callable, optional
        Hears what is done

    Raises
    ------
    PaperError
        Before anything is written, if the blueprint, a format or a family is at fault, or if
        the folder holds other papers
    """
    unknown = [
        f'"{one}" is no format.{did_you_mean(one, FORMATS)}'
        for one in formats
        if one not in FORMATS
    ]
    if unknown or not formats:
        raise PaperError(" ".join([*unknown, f"Choose among {', '.join(FORMATS)}."]))
    plan = read_blueprint(blueprint_path, units=units, variants=variants, seed=seed)
    return write_plan(plan, Path(out_dir), formats=tuple(formats), told=told)


def write_plan(
    plan: Blueprint, folder: Path, *, formats: Sequence[str], told: Told | None = None
) -> Written:
    """Write all variants of a blueprint that has been read.

    Parameters
    ----------
    told : callable, optional
        Hears what is done
    """
    numbers = counted(range(plan.variants), what="setting papers", told=told)
    papers = [make_paper(plan, variant=number) for number in numbers]
    with only_writer(folder):
        return _write(plan, papers, folder, formats=formats, told=told)


def _write(
    plan: Blueprint,
    papers: list[Paper],
    folder: Path,
    *,
    formats: Sequence[str],
    told: Told | None,
) -> Written:
    """Write all files of papers that have been set."""
    key, sheet = key_data(papers), answer_sheet(papers)
    _refuse_other_papers(folder, key)
    manifest, made, kept = Manifest(folder), 0, 0
    filled = manifest.is_changed(SHEET)
    try:
        # The key first: what is handed out after a run that broke off can still be marked.
        for name, text in ((KEY, to_json(key)), (SHEET, sheet))[: 1 if filled else 2]:
            manifest.write(name, text.encode(), source=digest(text.encode()))
        for paper in counted(papers, what="writing papers", told=told):
            for name, source, make in _files(paper, formats):
                if manifest.is_complete(name, source=source):
                    kept += 1
                else:
                    manifest.write(name, make(), source=source)
                    made += 1
    finally:
        manifest.save()
    return Written(
        folder=folder, key=folder / KEY, sheet=folder / SHEET,
        made=made, kept=kept, variants=plan.variants, sheet_kept=filled,
        hardness=hardness(papers),
    )  # fmt: skip


def _refuse_other_papers(folder: Path, key: Mapping[str, Any]) -> None:
    """Keep an earlier key: without it, papers that were handed out could not be marked any more."""
    try:
        old = json.loads((folder / KEY).read_bytes())
        lost = [str(one["variant"]) for one in old["variants"] if one not in key["variants"]]
        title, seed = str(old["title"])[:60], str(old["seed"])[:40]
    except (OSError, ValueError, KeyError, TypeError):
        return
    if lost:
        raise PaperError(
            f'{folder} holds other papers: "{title}", seed "{seed}". Variant {lost[0]} would be '
            "changed or lost, and could no longer be marked if it has been handed out. Choose "
            "another folder, or remove this one."
        )


def answer_sheet(papers: Sequence[Paper]) -> str:
    """Write the empty sheet into which answers are typed, one row a candidate.

    Returns
    -------
    str
        CSV
    """
    labels = dict.fromkeys(label for paper in papers for label in paper.labels)
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    writer.writerow(["candidate", "variant", "code", *labels])
    blanks = [""] * len(labels)
    writer.writerows(["", paper.variant, code_of(paper), *blanks] for paper in papers)
    return buffer.getvalue()


def _files(paper: Paper, formats: Sequence[str]) -> Iterator[tuple[str, str, Callable[[], bytes]]]:
    """Every file of one variant: its name, what it is made from, and how."""
    for kind in KINDS:
        data = paper_data(paper, kind=kind)
        source = digest(json.dumps(data).encode() + _stamp())
        for one in formats:
            if one == "large-print" and kind == "paper":
                yield (
                    f"{FOLDERS[kind]}/{paper.variant}-large.pdf",
                    source,
                    _late(_large, paper, kind),
                )
            elif one == "answer-sheet" and kind == "paper":
                yield (
                    f"{FOLDERS[kind]}/{paper.variant}-answers.pdf",
                    source,
                    _late(_sheet, paper, kind),
                )
            elif one in RENDERED:
                name = f"{FOLDERS[kind]}/{paper.variant}.{one}"
                yield name, source, _late(_renderer(one), paper, kind)
        if "md" in formats:
            yield from _drawings(paper, kind, source)
        if kind == "solutions" and "qti" in formats:
            yield f"{KEYS}/qti/{paper.variant}.zip", source, _late(_qti, paper, kind)
        if kind == "solutions" and "qti3" in formats:
            yield f"{KEYS}/qti3/{paper.variant}.zip", source, _late(_qti3, paper, kind)
        if kind == "solutions" and "moodle" in formats:
            yield f"{KEYS}/moodle/{paper.variant}.xml", source, _late(_moodle, paper, kind)


def _late(make: _Make, paper: Paper, kind: str) -> Callable[[], bytes]:
    """Make the file only when it is wanted."""
    return lambda: make(paper, kind)


def _drawings(
    paper: Paper, kind: str, source: str
) -> Iterator[tuple[str, str, Callable[[], bytes]]]:
    """Drawings that lie beside a Markdown file."""
    from boomsim.papers.render.paper_markdown import drawings

    if kind != "marking":
        for name, svg in drawings(paper).items():
            yield f"{FOLDERS[kind]}/{name}", source, lambda svg=svg: svg.encode()  # type: ignore[misc]


def _renderer(name: str) -> _Make:
    """Return the function that makes one format."""
    return {"pdf": _pdf, "html": _html, "md": _markdown, "json": _json}[name]


def _pdf(paper: Paper, kind: str) -> bytes:
    from boomsim.papers.render.paper_pdf import render_pdf

    return render_pdf(paper, kind=kind)


def _large(paper: Paper, kind: str) -> bytes:
    from boomsim.papers.render.paper_pdf import render_pdf

    return render_pdf(paper, kind=kind, large=True)


def _sheet(paper: Paper, _: str) -> bytes:
    from boomsim.papers.scans.sheet_drawing import answer_sheet_pdf

    return answer_sheet_pdf(paper)


def _html(paper: Paper, kind: str) -> bytes:
    from boomsim.papers.render.paper_html import render_html

    return render_html(paper, kind=kind).encode()


def _markdown(paper: Paper, kind: str) -> bytes:
    from boomsim.papers.render.paper_markdown import render_markdown

    return render_markdown(paper, kind=kind).encode()


def _json(paper: Paper, kind: str) -> bytes:
    return to_json(paper_data(paper, kind=kind)).encode()


def _qti(paper: Paper, _: str) -> bytes:
    from boomsim.papers.qti.qti_package import qti_package

    return qti_package(paper)


def _qti3(paper: Paper, _: str) -> bytes:
    from boomsim.papers.qti.qti_package import qti_package
    from boomsim.papers.qti.qti_versions import QTI_3

    return qti_package(paper, version=QTI_3)


def _moodle(paper: Paper, _: str) -> bytes:
    from boomsim.papers.moodle.moodle_quiz import moodle_quiz

    return moodle_quiz(paper)


@lru_cache(maxsize=1)
def _stamp() -> bytes:
    """Fingerprint our templates and renderers, whose change makes papers stale."""
    here = Path(__file__).parent
    sources = sorted([*(here / "render" / "templates").iterdir(), *here.rglob("*.py")])
    return digest(b"".join(path.read_bytes() for path in sources)).encode()
