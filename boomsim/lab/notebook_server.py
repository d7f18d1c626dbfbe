"""Opening the notebooks: where they come from, where they are copied to, what serves them."""

import os
import signal
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

from boomsim.files.file_errors import refuse_name
from boomsim.files.shipped_files import shipped, shipped_files
from boomsim.files.whole_files import make_folder, write_whole

NEVER_ASK = (
    "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
    "--LabApp.news_url=None",
    "--LabApp.extension_manager=readonly",
)
"""JupyterLab looks nowhere in the network."""


def folder_of(named: str | None) -> Path:
    """Choose the folder for a person's own copies.

    Parameters
    ----------
    named : str or None
        None is boomsim-notebooks in the home folder
    """
    folder = Path(named).expanduser() if named else Path.home() / "boomsim-notebooks"
    refuse_name(folder)
    folder = folder.resolve()
    originals = shipped("notebooks")
    if isinstance(originals, Path) and folder == originals.resolve():
        raise ValueError("That folder holds the original notebooks. Choose another for the copies.")
    if folder.exists() and not folder.is_dir():
        raise ValueError(f'"{folder}" is a file. Choose a folder for the notebooks.')
    return folder


def copy_notebooks(folder: Path) -> tuple[int, int]:
    """Copy the notebooks; what is there already is a person's own work and stays.

    Parameters
    ----------
    folder : Path
        Made if it is not there

    Returns
    -------
    int, int
        How many were copied, and how many were left
    """
    make_folder(folder)
    found = shipped_files("notebooks", ending=".ipynb")
    new = [name for name in found if not (folder / name).exists()]
    for name in new:
        write_whole(folder / name, found[name].read_bytes())
    return len(new), len(found) - len(new)


def lab_command(folder: Path, *, port: int | None = None, browser: bool = True) -> list[str]:
    """Say how JupyterLab is started.

    Raises
    ------
    ValueError
        If JupyterLab is not installed.
    """
    _refuse_without_jupyterlab()
    return [
        sys.executable,
        "-m",
        "jupyterlab",
        f"--ServerApp.root_dir={folder}",
        # Whatever a person's own settings say: code can be run there.
        "--ServerApp.ip=127.0.0.1",
        *NEVER_ASK,
        *([] if port is None else [f"--ServerApp.port={port}"]),
        *([] if browser else ["--no-browser"]),
        # In a container the only user is often root, and the server listens to this machine alone.
        *(["--allow-root"] if getattr(os, "geteuid", lambda: 1)() == 0 else []),
    ]


def _refuse_without_jupyterlab() -> None:
    if find_spec("jupyterlab") is None:
        raise ValueError(
            "JupyterLab is not installed here. Install what the notebooks need with "
            "pip install 'boomsim[lab]' and try again. Without it, "
            '"boomsim page three-ways.html" writes a page for any browser.'
        )


def serve(command: list[str], folder: Path) -> int:
    """Run a server until it ends; Ctrl-C goes to it, and it says the rest.

    Parameters
    ----------
    folder : Path
        To run in

    Returns
    -------
    int
        The server's exit code; 0 if a person stopped it
    """
    requests = [getattr(signal, name) for name in ("SIGTERM", "SIGHUP") if hasattr(signal, name)]
    with subprocess.Popen(command, cwd=folder) as server:
        # Such a request reaches this process alone; the server must not live on without it.
        usual = {one: signal.signal(one, lambda *_: server.terminate()) for one in requests}
        try:
            return _waited(server)
        finally:
            for one, before in usual.items():
                signal.signal(one, before)


def _waited(server: "subprocess.Popen[bytes]") -> int:
    """Wait for the end of a server; one that a signal ended has the shell's exit code for it."""
    told = False
    while True:
        try:
            code = server.wait()
        except KeyboardInterrupt:
            # The server has had the same Ctrl-C and asks whether it is meant.
            told = True
            continue
        return 0 if told else code if code >= 0 else 128 - code
