"""The game for a class in one HTML file: a pick, a choice, the answer, and the next pick.

The page holds words only; its script chooses among them and works nothing out.
"""

import json
from collections.abc import Sequence
from html import escape
from importlib.resources import files
from typing import Any

from boomsim.caution import CAUTION
from boomsim.game.pick_verdict import ask, judge, options
from boomsim.game.player_progress import WHERE
from boomsim.game.stated_pick import BEST, Pick
from boomsim.mechanics.geometry import layout


def game_page(picks: Sequence[Pick], *, head: str, units: str) -> str:
    """Write the page.

    Parameters
    ----------
    head : str
        What holds for all picks

    Returns
    -------
    str
        HTML that needs no network
    """
    folder = files("boomsim.game")
    made = folder.joinpath("game.html").read_text(encoding="utf-8")
    gathered = {
        "best": BEST,
        "where": WHERE,
        "picks": [_pick(pick, units) for pick in picks],
    }
    data = json.dumps(gathered, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
    filled = {
        "HEAD": escape(head),
        "CAUTION": escape(CAUTION),
        "STYLE": folder.joinpath("game.css").read_text(encoding="utf-8"),
        "SCRIPT": folder.joinpath("game.js").read_text(encoding="utf-8"),
        # "</" inside the data would end the script element that holds it.
        "DATA": data.replace("</", "<\\/"),
    }
    for name, text in filled.items():
        made = made.replace(f"@{name}@", text)
    return made


def _pick(pick: Pick, units: str) -> dict[str, Any]:
    fronts = layout(pick.setup.machine.boom, extension=pick.extension).front
    ends = (fronts / fronts[:, -1:]).round(4).tolist()
    bars = [*ends, []]
    verdicts = [judge(pick, letter, units=units) for letter in pick.letters]
    return {
        "asked": ask(pick, units=units),
        "set_by": pick.limits[pick.best].set_by,
        "ways": verdicts[0].ways,
        "carries": pick.carries.tolist(),
        "options": [
            {
                "letter": letter,
                "words": words,
                "ends": bar,
                "points": said.points,
                "first": said.first,
                "why": said.why,
            }
            for (letter, words), bar, said in zip(options(pick), bars, verdicts, strict=True)
        ],
    }
