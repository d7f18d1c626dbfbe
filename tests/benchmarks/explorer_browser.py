"""From a key on a slider to the new picture, in a real browser on a real JupyterLab: printed.

    python tests/benchmarks/explorer_browser.py

A press of an arrow key moves a slider by a step. Counted is the time from the key to the frame that
shows the new picture: browser, websocket, kernel, websocket, browser. Beside it the floor: a slider
that redraws one rectangle, on the same server in the same run.
"""

import json
import os
import shutil
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent)]

import numpy as np  # noqa: E402
from browser_fixtures import CHROMIUM, QUIET, Lab  # noqa: E402
from playwright.sync_api import sync_playwright  # noqa: E402

PRESSES = 120
NOTEBOOK = HERE.parents[1] / "notebooks" / "explorer.ipynb"

FLOOR = """
import ipywidgets as widgets
slider, picture = widgets.FloatSlider(min=0, max=100), widgets.HTML()
slider.add_class('boomsim-load')
picture.add_class('boomsim-picture')
def show(change):
    rectangle = '<rect width="90" height="50"/>'
    picture.value = f'<svg width="900" height="500" data-load="{slider.value}">{rectangle}</svg>'
slider.observe(show, names='value')
show(None)
widgets.VBox([slider, picture])
"""

WATCH = """([attribute]) => {
  window.took = []; window.pressed = null;
  document.addEventListener('keydown', () => { window.pressed = performance.now(); }, true);
  const host = document.querySelector('.boomsim-picture');
  const now = () => host.querySelector('svg')?.getAttribute(attribute);
  let last = now();
  new MutationObserver(() => {
    if (now() === undefined || now() === last || window.pressed === null) return;
    last = now();
    const began = window.pressed;
    window.pressed = null;
    requestAnimationFrame(() => { window.took.push(performance.now() - began); });
  }).observe(host, {childList: true, subtree: true});
}"""


def presses(page, slider: str, attribute: str) -> list[float]:
    page.evaluate(WATCH, [attribute])
    page.locator(f".boomsim-{slider} .noUi-handle").focus()
    for k in range(PRESSES):
        page.keyboard.press("ArrowRight" if k % 40 < 20 else "ArrowLeft")
        page.wait_for_function("n => window.took.length > n", arg=k, timeout=30_000)
    return page.evaluate("window.took")


def floor_notebook(path: Path) -> None:
    cell = {"cell_type": "code", "execution_count": None, "id": "floor", "metadata": {}}
    cell |= {"outputs": [], "source": FLOOR.strip()}
    kernel = {"display_name": "Python 3", "language": "python", "name": "python3"}
    whole = {"cells": [cell], "metadata": {"kernelspec": kernel}, "nbformat": 4}
    path.write_text(json.dumps({**whole, "nbformat_minor": 5}), encoding="utf-8")


def measure(lab: Lab, page, notebook: str, sliders: dict[str, str]) -> None:
    lab.run(page, notebook)
    page.wait_for_selector(".boomsim-picture svg")
    for slider, attribute in sliders.items():
        took = presses(page, slider, attribute)
        middle, slow = np.percentile(took, [50, 95])
        print(f"  {notebook:16s} {slider:10s} {middle:6.0f} {slow:6.0f} {max(took):6.0f}")
    lab.shut(page)


def main() -> None:
    lab = Lab(Path(tempfile.mkdtemp(prefix="explorer-")))
    try:
        lab.wait()
        shutil.copyfile(NOTEBOOK, lab.folder / NOTEBOOK.name)
        floor_notebook(lab.folder / "floor.ipynb")
        with sync_playwright() as started:
            browser = started.chromium.launch(executable_path=str(CHROMIUM), args=QUIET)
            page = browser.new_page(viewport={"width": 1280, "height": 800})
            print("key to new picture [ms]:         half   95 %   most")
            measure(lab, page, "floor.ipynb", {"load": "data-load"})
            measure(lab, page, NOTEBOOK.name, {"load": "data-load", "radius": "data-radius"})
            measure(lab, page, "floor.ipynb", {"load": "data-load"})
            browser.close()
    finally:
        lab.stop()


if __name__ == "__main__":
    main()
