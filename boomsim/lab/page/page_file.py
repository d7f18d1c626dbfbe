"""One HTML file for home or a phone: one boom length, several ways, every state worked out before.

The page holds words and drawings only; its script chooses among them and works nothing out.
"""

import json
from html import escape
from importlib.resources import files

from boomsim.caution import CAUTION
from boomsim.figures.setup_words import allowance_words, setup_words
from boomsim.files.work_progress import Told
from boomsim.lab.page.page_states import CRANE, Ways, page_data
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.views.stylesheet import definitions
from boomsim.units import all_in_words, in_words, show


def page(ways: Ways, *, told: Told | None = None) -> str:
    """Write the page.

    Parameters
    ----------
    told : callable, optional
        Hears what is done

    Returns
    -------
    str
        HTML that needs no network
    """
    folder = files("boomsim.lab.page")
    made = folder.joinpath("page.html").read_text(encoding="utf-8")
    gathered = all_in_words(page_data(ways, told=told), ways.look.units)
    data = json.dumps(gathered, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
    filled = {
        "TITLE": escape(_title(ways)),
        "ABOUT": escape(in_words(_about(ways), ways.look.units)),
        "CAUTION": escape(CAUTION),
        "STYLE": folder.joinpath("page.css").read_text(encoding="utf-8"),
        "SCRIPT": folder.joinpath("page.js").read_text(encoding="utf-8"),
        "DEFINITIONS": _definitions(ways),
        # "</" inside the data would end the script element that holds it.
        "DATA": data.replace("</", "<\\/"),
    }
    for name, text in filled.items():
        made = made.replace(f"@{name}@", text)
    return made


def _definitions(ways: Ways) -> str:
    """Style, patterns and the crane without its boom, which all pictures share."""
    # The class again inside: a style sheet sees a re-used drawing without what is round it.
    crane = f'<defs><g id="{CRANE}" class="side">{fixed(ways.rating.setup).crane}</g></defs>'
    return f'<svg class="side" width="0" height="0">{definitions(1.0, "side")}{crane}</svg>'


def _title(ways: Ways) -> str:
    numbers = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}
    return f"One length, {numbers[len(ways.configurations.length)]} ways"


def _about(ways: Ways) -> str:
    setup = ways.rating.setup
    length = show(float(ways.configurations.length.mean()), "boom_length", ways.look.units)
    return (
        f"{setup.machine.name}, an invented crane: a boom {length} long. Rated gross load, "
        f"{setup_words(setup, units=ways.look.units)}. "
        f"{allowance_words(setup.rule, units=ways.look.units)}"
    )
