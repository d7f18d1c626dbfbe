"""Reports of a marked class: pages for people, tables for other programs."""

import json
from collections.abc import Mapping
from pathlib import Path

from boomsim.files.folder_lock import only_writer
from boomsim.files.whole_files import write_whole
from boomsim.papers.marking.class_plot import class_png
from boomsim.papers.marking.mark_class import Marked
from boomsim.papers.marking.marks_tables import marks_csv, marks_data
from boomsim.papers.marking.report_pages import candidate_page, class_page


def write_report(
    marked: Marked, folder: str | Path, *, more: Mapping[str, str] | None = None
) -> list[Path]:
    """Write everything about a marked class.

    Parameters
    ----------
    more : mapping of str to str, optional
        Other texts of the report by their file, such as board.html

    Returns
    -------
    list of Path
        class.html, marks.csv, marks.json, class.png, and candidates/row-….html
    """
    base = Path(folder)
    picture = class_png(marked.figures)
    files: dict[str, bytes] = {
        "class.html": class_page(marked, picture).encode(),
        "marks.csv": marks_csv(marked).encode(),
        "marks.json": (
            json.dumps(marks_data(marked), indent=1, ensure_ascii=False) + "\n"
        ).encode(),
        "class.png": picture,
    }
    files |= {name: text.encode() for name, text in (more or {}).items()}
    for one in marked.candidates:
        text = candidate_page(one, title=marked.key.title, caution=marked.key.caution)
        files[f"candidates/row-{one.row:04d}.html"] = text.encode()
    with only_writer(base):
        for name, content in files.items():
            write_whole(base / name, content)
        for stale in (base / "candidates").glob("row-*.html"):
            if f"candidates/{stale.name}" not in files:  # of an earlier sheet with more rows
                stale.unlink()
    return [base / name for name in files]
