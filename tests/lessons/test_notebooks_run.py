"""Every lesson runs to its end, says the caution, and hides no error behind a slider."""

import json
import os
from pathlib import Path

import pytest
from notebook_files import ALL, GATE, OF_LESSONS, name, with_guess

from boomsim.caution import CAUTION
from boomsim.lessons.first_guess import FIRST, said_of
from boomsim.lessons.lesson_order import lesson_named

MOVED = """
from boomsim.lessons.lesson_sliders import Slides

this.live.try_all()
assert isinstance(this.live, Slides)
assert not this.live.troubles, this.live.troubles[-1]
print("moved")
"""
"""Runs last: moves every slider of the lesson through its range."""

# Jupyter's packages are imported where a notebook is run: they take seconds, in the daily part too.


@pytest.fixture(scope="module")
def kernel(tmp_path_factory):
    """One kernel for all of them; keeps what Jupyter writes in a folder of its own."""
    from jupyter_client import KernelManager

    folder = tmp_path_factory.mktemp("jupyter")
    with pytest.MonkeyPatch.context() as patched:
        for variable in (
            "JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR"
        ):  # fmt: skip
            patched.setenv(variable, str(folder / variable.lower()))
        root = str(Path(__file__).parents[2])
        patched.setenv("PYTHONPATH", os.pathsep.join([root, os.environ.get("PYTHONPATH", "")]))
        manager = KernelManager(kernel_name="python3")
        manager.start_kernel(cwd=str(folder))
        yield manager
        manager.shutdown_kernel(now=True)


def run_in(kernel, notebook):
    """Run a notebook with nothing left of the one before."""
    import nbformat
    from nbclient import NotebookClient

    for cells in ([nbformat.v4.new_code_cell("%reset -f")], notebook.cells):
        one = nbformat.v4.new_notebook(cells=cells)
        client = NotebookClient(one, km=kernel, timeout=120)
        try:
            client.execute()
        finally:
            client.kc.stop_channels()


@pytest.mark.slow
@pytest.mark.parametrize("path", ALL, ids=name)
def test_the_notebook_runs_to_its_end(path, kernel):
    import nbformat

    notebook = nbformat.reads(json.dumps(with_guess(path)), as_version=4)
    if path in OF_LESSONS:
        notebook.cells.append(nbformat.v4.new_code_cell(MOVED))
    run_in(kernel, notebook)
    outputs = [out for cell in notebook.cells if cell.cell_type == "code" for out in cell.outputs]
    assert not [out for out in outputs if out.get("name") == "stderr"]
    plain = " ".join(str(out.get("data", {}).get("text/plain", "")) for out in outputs)
    assert CAUTION in plain
    if path in OF_LESSONS:
        # A stream may come in pieces.
        assert "".join(out.get("text", "") for out in notebook.cells[-1].outputs) == "moved\n"


@pytest.mark.slow
@pytest.mark.parametrize("path", OF_LESSONS, ids=name)
def test_without_a_guess_it_stops_with_one_sentence_and_has_not_said_the_answer(path, kernel):
    import nbformat
    from nbclient.exceptions import CellExecutionError

    notebook = nbformat.read(path, as_version=4)
    with pytest.raises(CellExecutionError):
        run_in(kernel, notebook)
    run = [cell for cell in notebook.cells if cell.cell_type == "code" and cell.execution_count]
    assert GATE in run[-1].source
    (stopped,) = run[-1].outputs
    assert (stopped.ename, stopped.traceback) == ("GuessFirst", [FIRST])
    told = " ".join(str(out.get("data", "")) for cell in run for out in cell.outputs)
    figures = [t for t in lesson_named(path.stem).guess("metric").truths if t.quantity]
    # Letters and words stand in the question as what to choose from.
    assert not [truth for truth in figures if said_of(truth, "metric") in told]
