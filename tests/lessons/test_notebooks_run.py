"""Every lesson runs to its end, says the caution, and hides no error behind a slider."""

import os
from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient
from notebook_files import ALL, name

from boomsim.caution import CAUTION

MOVED = """
from boomsim.lab.lessons.slides import Slides

_found = {id(value): value for value in list(globals().values()) if isinstance(value, Slides)}
for _one in _found.values():
    _one.try_all()
    assert not _one.troubles, _one.troubles[-1]
print(f"{len(_found)} moved")
"""
"""Runs last: moves every slider of the notebook through its range."""


@pytest.fixture
def quiet(tmp_path, monkeypatch):
    """Keep what Jupyter writes in a folder of its own."""
    for variable in ("JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR"):
        monkeypatch.setenv(variable, str(tmp_path / variable.lower()))
    root = str(Path(__file__).parents[2])
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join([root, os.environ.get("PYTHONPATH", "")]))
    return tmp_path


@pytest.mark.slow
@pytest.mark.parametrize("path", ALL, ids=name)
def test_the_notebook_runs_to_its_end(path, quiet):
    notebook = nbformat.read(path, as_version=4)
    notebook.cells.append(nbformat.v4.new_code_cell(MOVED))
    client = NotebookClient(
        notebook, timeout=120, kernel_name="python3", resources={"metadata": {"path": str(quiet)}}
    )
    client.execute()
    outputs = [out for cell in notebook.cells if cell.cell_type == "code" for out in cell.outputs]
    assert not [out for out in outputs if out.get("name") == "stderr"]
    plain = " ".join(str(out.get("data", {}).get("text/plain", "")) for out in outputs)
    assert CAUTION in plain
    # A stream may come in pieces.
    said = "".join(out.get("text", "") for out in notebook.cells[-1].outputs)
    wanted = sum("Slides(" in cell.source for cell in notebook.cells[:-1])
    assert said == f"{wanted} moved\n"
