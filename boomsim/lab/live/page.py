"""The live page: one HTML file that needs no network, with the explorer's whole model in it."""

import json
from html import escape
from importlib.resources import files

from boomsim.caution import CAUTION
from boomsim.lab.live.model import Live
from boomsim.lab.live.pack import packed
from boomsim.lab.live.pictures import LAYOUTS
from boomsim.lab.live.runtime import Runtime

READY = "Move anything: the model answers from this file, and nothing is fetched."


def live_page(runtime: Runtime, *, machine: str = "yard60") -> str:
    """Write the page.

    Parameters
    ----------
    runtime : Runtime
    machine : str
        Built-in name that it opens with

    Returns
    -------
    str
        HTML that needs no network
    """
    folder = files("boomsim.lab.live")

    def read(name: str) -> str:
        return folder.joinpath(name).read_text(encoding="utf-8")

    filled = {
        "TITLE": "A telescoping boom, live",
        "CAUTION": escape(CAUTION),
        "STYLE": read("live.css"),
        "SCRIPT": read("live.js"),
        "WORKER": read("worker.js"),
        "FIRST": _first(machine),
        "PARTS": "\n".join(
            f'<script type="text/plain" id="part-{name}">{text}</script>'
            for name, text in packed(runtime).items()
        ),
    }
    made = read("live.html")
    for name, text in filled.items():
        made = made.replace(f"@{name}@", text)
    return made


def _first(machine: str) -> str:
    """What is shown while the model starts: its own answer, worked out when the page is made."""
    told = {layout: Live(machine=machine, layout=layout).told() for layout in LAYOUTS}
    data = json.dumps({"machine": machine, "ready": READY, **told}, ensure_ascii=False)
    # "</" inside the data would end the script element that holds it.
    return data.replace("</", "<\\/")
