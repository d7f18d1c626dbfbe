"""A real browser, and a real JupyterLab on copies of the notebooks; skipped without Chromium."""

import os
import secrets
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

import pytest

CHROMIUM = Path("/usr/bin/chromium")
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
SETTINGS = {
    "@jupyterlab/notebook-extension/tracker.jupyterlab-settings": '{"windowingMode": "defer"}',
    "@jupyterlab/docmanager-extension/plugin.jupyterlab-settings": '{"autosave": false}',
    "@jupyterlab/apputils-extension/notification.jupyterlab-settings": '{"fetchNews": "false"}',
}


@pytest.fixture(scope="session")
def browser():
    if not CHROMIUM.exists():
        pytest.skip(f"no Chromium at {CHROMIUM}")
    playwright = pytest.importorskip("playwright.sync_api")
    with playwright.sync_playwright() as started:
        made = started.chromium.launch(executable_path=str(CHROMIUM), args=QUIET)
        yield made
        made.close()


@pytest.fixture(scope="session")
def lab(tmp_path_factory) -> Iterator["Lab"]:
    """JupyterLab on this machine, every folder of its own temporary."""
    pytest.importorskip("jupyterlab")
    made = Lab(tmp_path_factory.mktemp("lab"))
    try:
        made.wait()
        yield made
    finally:
        made.stop()


class Lab:
    """One JupyterLab server."""

    def __init__(self, place: Path) -> None:
        self.folder, self.token = place / "notebooks", secrets.token_hex(8)
        self.folder.mkdir()
        self._settle(place / "user-settings")
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        root = Path(__file__).resolve().parents[1]
        kinds = ("CONFIG", "DATA", "RUNTIME")
        folders = {f"JUPYTER_{kind}_DIR": str(place / kind.lower()) for kind in kinds}
        environment = {
            **os.environ,
            **folders,
            "JUPYTERLAB_SETTINGS_DIR": str(place / "user-settings"),
            "JUPYTERLAB_WORKSPACES_DIR": str(place / "workspaces"),
            "IPYTHONDIR": str(place / "ipython"),
            "PYTHONPATH": os.pathsep.join([str(root), os.environ.get("PYTHONPATH", "")]),
        }
        words = [sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root"]
        words += [f"--ServerApp.port={self.port}", "--ServerApp.ip=127.0.0.1"]
        words += [f"--ServerApp.root_dir={self.folder}", f"--IdentityProvider.token={self.token}"]
        words += ["--LabApp.expose_app_in_browser=True", "--LabApp.news_url=None"]
        self.log = place / "log.txt"
        with self.log.open("w") as out:
            self.server = subprocess.Popen(words, env=environment, stdout=out, stderr=out)

    def _settle(self, folder: Path) -> None:
        for name, text in SETTINGS.items():
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")

    def wait(self) -> None:
        address = f"http://127.0.0.1:{self.port}/api/status?token={self.token}"
        for _ in range(300):
            try:
                urlopen(address, timeout=5).close()
                return
            except (URLError, OSError):
                assert self.server.poll() is None, self.log.read_text()
                time.sleep(0.2)
        raise AssertionError(self.log.read_text())

    def address(self, notebook: str) -> str:
        here = f"http://127.0.0.1:{self.port}"
        return f"{here}/lab/tree/{notebook}?reset&token={self.token}"

    def run(self, page, notebook: str) -> None:
        """Open a notebook and run it to the end."""
        page.goto(self.address(notebook))
        self.start(page)
        done = """() => {
          const cells = window.jupyterapp.shell.currentWidget.content.widgets
            .filter(cell => cell.model.type === 'code' && cell.model.sharedModel.source.trim());
          return cells.length > 0 && cells.every(cell => cell.model.executionState === 'idle'
            && cell.model.executionCount !== null);
        }"""
        page.wait_for_function(done, timeout=120_000)

    def start(self, page) -> None:
        """Run all cells of the notebook that is open, and do not wait for them."""
        ready = """() => {
          const app = window.jupyterapp, panel = app && app.shell.currentWidget;
          const kernel = panel && panel.sessionContext && panel.sessionContext.session?.kernel;
          return Boolean(kernel && kernel.status === 'idle');
        }"""
        page.wait_for_function(ready, timeout=60_000)
        page.evaluate("() => window.jupyterapp.commands.execute('notebook:run-all-cells')")

    def shut(self, page) -> None:
        """End the notebook's kernel."""
        page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.shutdown()")

    def stop(self) -> None:
        self.server.terminate()
        try:
            self.server.wait(20)
        except subprocess.TimeoutExpired:
            self.server.kill()
