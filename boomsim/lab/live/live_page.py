"""The live page: one HTML file that needs no network, with the explorer's whole model in it."""

import json
from contextlib import chdir
from dataclasses import replace
from html import escape
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory

from boomsim.caution import CAUTION
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.files.work_progress import Told
from boomsim.lab.live.bytecode import Compiler
from boomsim.lab.live.live_model import MOST_LETTERS, Live
from boomsim.lab.live.live_package import packed
from boomsim.lab.live.live_pictures import LAYOUTS
from boomsim.lab.live.python_runtime import Runtime
from boomsim.lab.live.scene_address import to_address
from boomsim.lab.scene.scene import Look, Scene
from boomsim.machine.machine_files import machine_names

READY = "Ready. The model is in this file; nothing is fetched."

STYLES = (
    *(
        "base.css",
        "ways.css",
        "grips.css",
        "past.css",
        "share.css",
        "phone.css",
        "presenting.css",
        "print.css",
    ),
)
SCRIPTS = (
    *("asking.js", "controls.js", "ways.js", "grips.js", "past.js", "pictures.js"),
    *("showing.js", "looks.js", "share.js", "shortcuts.js"),
    "start.js",
)
"""Parts of the page in the folder page/, in their order; a later one may use an earlier one."""

WORKER = ("changes.js", "worker.js")
"""Parts of what runs beside it."""


def live_page(
    runtime: Runtime,
    scene: Scene,
    *,
    units: str,
    compiler: Compiler | None,
    address: str = "",
    told: Told | None = None,
) -> str:
    """Write the page.

    Parameters
    ----------
    scene : Scene
        That it opens with; its machine goes into the page where it is a file
    units : str
        "metric" or "us", until the reader chooses others
    compiler : Compiler or None
        With one the page starts in about half the time
    address : str
        Web address at which the page will lie: its links and their codes begin with it
    told : callable, optional
        Hears what is done

    Returns
    -------
    str
        HTML that needs no network
    """
    folder = files("boomsim.lab.live").joinpath("page")

    def read(name: str) -> str:
        return folder.joinpath(name).read_text(encoding="utf-8")

    filled = {
        "TITLE": "A telescoping boom, live",
        "CAUTION": escape(CAUTION),
        "STYLE": "\n".join(read(name) for name in STYLES),
        "SCRIPT": "\n".join(read(name) for name in SCRIPTS),
        "WORKER": "\n".join(read(name) for name in WORKER),
        "FIRST": _first(scene, units, address),
        "PARTS": "\n".join(
            f'<script type="text/plain" id="part-{name}">{text}</script>'
            for name, text in packed(runtime, compiler=compiler, told=told).items()
        ),
    }
    made = read("page.html")
    for name, text in filled.items():
        made = made.replace(f"@{name}@", text)
    return made


def _first(scene: Scene, units: str, address: str) -> str:
    """What is shown while the model starts: its own answers, worked out when the page is made."""
    carried = _carried(scene)
    scene = replace(scene, machine=Path(scene.machine).name)
    start = to_address(scene, Look(units=units))
    # The model reads a machine file where it works, as it does in the browser's memory.
    with TemporaryDirectory() as place, chdir(place):
        told = {layout: Live(start, files=carried, layout=layout).told() for layout in LAYOUTS}
        told |= json.loads(Live(start, files=carried).ask('{"do": "why"}'))
    begin = {"start": start, "files": carried}
    data = json.dumps({"begin": begin, "ready": READY, "web": address, **told}, ensure_ascii=False)
    # "</" inside the data would end the script element that holds it.
    return data.replace("</", "<\\/")


def _carried(scene: Scene) -> dict[str, str]:
    if scene.machine in machine_names():
        return {}
    path = Path(scene.machine)
    return {path.name: text_of(read_bytes(path, most=MOST_LETTERS), name=path.name)}
