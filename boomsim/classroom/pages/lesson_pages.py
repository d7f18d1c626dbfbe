"""A lesson as one HTML file: what follows its guess is sealed until there is one.

The notebook is run when the page is written; the page holds what its cells show, and no code.
"""

import gzip
import json
from base64 import b64encode
from html import escape
from importlib.resources import files
from itertools import pairwise

from boomsim.caution import CAUTION
from boomsim.classroom.pages.notebook_cells import (
    COMPARED,
    EXERCISE,
    GATE,
    Kernel,
    Shown,
    cells,
    exercise_of,
    guessed,
)
from boomsim.figures.qr_code import qr_svg
from boomsim.lessons.choice_questions import ChoiceQuestion, choice_questions
from boomsim.lessons.lesson_parts import Lesson
from boomsim.reports.text_tables import glued

CHECK, PREDICT, QUESTION = "## Check yourself", "## Predict", "this.question"
"""What a page has in a form of its own: the self-check at the end, and the question in front."""

HOW = "Choose first, then go on: what the model says is not shown before."
NO_SCRIPT = "This page asks before it answers, with a script; scripts are switched off."
WIDTH = 88
"""Of a line that a lesson's cell prints [characters]."""
GUESSED = "I have guessed: go on"
MOVED = "In the notebook sliders move this; here it is as it begins, and once moved."
READINGS = (
    "Write a few readings of each way between the brackets, each in quotes with its unit and "
    "parted by commas."
)
READINGS_HERE = "Take a few readings of each way; the notebook works them out."


def filled(**parts: str) -> str:
    """Fill the frame of a page.

    Parameters
    ----------
    **parts : str
        HTML of TITLE, NAV, BODY and DATA

    Returns
    -------
    str
        HTML that needs no network
    """
    folder = files("boomsim.classroom.pages")

    def read(name: str) -> str:
        return folder.joinpath(name).read_text(encoding="utf-8")

    own = {"STYLE": read("lesson_page.css"), "SCRIPT": read("lesson_page.js")}
    made = read("lesson_page.html")
    for name, text in ({"CAUTION": escape(CAUTION)} | own | parts).items():
        made = made.replace(f"@{name}@", text)
    return made


def lesson_page(lesson: Lesson, *, units: str, nav: str, crane: str, link: str = "") -> str:
    """Write a lesson's page.

    Parameters
    ----------
    nav : str
        HTML of the links to the other pages
    crane : str
        Address of the live crane, from this page; empty where there is none
    link : str
        The same on the web, for phones in the room; empty where it does not lie there
    """
    *guesses, check = choice_questions(lesson, units)
    front, rest = _halves(lesson, units)
    sealed = {
        "html": "\n".join([*rest, _check_form(check), *([_live(crane, link)] if crane else [])]),
        "parts": [_judged(one) for one in guesses],
        "check": _judged(check) | {"reason": check.reason},
    }
    packed = b64encode(gzip.compress(json.dumps(sealed, ensure_ascii=False).encode(), mtime=0))
    body = [*front, _guess_form(guesses), '<div id="rest"></div>']
    return filled(
        TITLE=escape(f"{lesson.number} {lesson.title}"),
        NAV=nav,
        BODY="\n".join(body),
        DATA=f'<script type="text/plain" id="sealed">{packed.decode("ascii")}</script>',
    )


def _halves(lesson: Lesson, units: str) -> tuple[list[str], list[str]]:
    """What stands before the guess, and what after."""
    kernel, front, rest = Kernel(), [], []  # type: Kernel, list[str], list[str]
    put = front
    for kind, text in cells(lesson.file):
        if kind == "markdown":
            if text.startswith(CHECK):
                break
            if not text.startswith(PREDICT):
                put.append(_set_words(text))
            continue
        if GATE in text:
            kernel.run(guessed(text, lesson, units))
            put = rest
            continue
        if EXERCISE in text:
            put.append(_set_exercise(*exercise_of(text, lesson, units)))
            continue
        shown = kernel.run(text.replace('units="metric"', f'units="{units}"'))
        if COMPARED in text:
            put.append('<div id="verdicts"></div>')
        elif QUESTION not in text:
            put.extend(_set(one) for one in shown)
    return front, rest


def _set_words(text: str) -> str:
    import mistune

    made = mistune.create_markdown(escape=True)(text.replace(READINGS, READINGS_HERE))
    return made if isinstance(made, str) else ""


def _set_exercise(question: str, answer: str) -> str:
    said = f"<summary>{escape(GUESSED)}</summary>"
    asked = f"<p>{escape(glued(question))}</p>"
    return f'{asked}<details>{said}<div class="shown">{answer}</div></details>'


def _set(one: Shown) -> str:
    if one.kind == "html":
        return f'<div class="shown">{one.text}</div>'
    if one.kind == "sliders":
        said, there = one.moved
        return (
            f'<div class="shown">{one.text}</div><p class="small">{escape(MOVED)}</p>'
            f'<p><b>{escape(said)}</b></p><div class="shown">{there}</div>'
        )
    said = unwrapped(one.text) if one.kind == "printed" else one.text.strip("'")
    return f"<pre>{escape(said)}</pre>"


def unwrapped(text: str) -> str:
    """Join lines that a notebook breaks for its width; a page breaks them for its own."""
    lines = text.splitlines()
    made = lines[:1]
    for before, line in pairwise(lines):
        # It was broken there only if the next word had found no room.
        if line.strip() and len(before) + 1 + len(line.split()[0]) > WIDTH:
            made[-1] += f" {line.strip()}"
        else:
            made.append(line)
    return "\n".join(made)


def _guess_form(guesses: list[ChoiceQuestion]) -> str:
    return "\n".join(
        [
            '<section id="guess" class="asked" aria-label="Your guess">',
            f"<p>{escape(glued(guesses[0].words))}</p>",
            *(_choices(one, f"guess-{n}") for n, one in enumerate(guesses)),
            '<button type="button" id="go" disabled hidden>I have chosen: go on</button>',
            f'<p class="small" id="how">{escape(HOW)}</p>',
            f"<noscript><p>{escape(NO_SCRIPT)}</p></noscript>",
            "</section>",
        ]
    )


def _check_form(check: ChoiceQuestion) -> str:
    return "\n".join(
        [
            "<h2>Check yourself</h2>",
            '<section id="check" class="asked">',
            f"<p>{escape(glued(check.words))}</p>",
            _choices(check, "check"),
            '<p id="checked" role="status"></p>',
            '<button type="button" id="working" class="quiet">Show the working</button>',
            "</section>",
        ]
    )


def _choices(question: ChoiceQuestion, name: str) -> str:
    rows = "\n".join(
        f'<label class="choice"><input type="radio" name="{name}" value="{one.letter}">'
        f"<span>{escape(one.words or f'way {one.letter}')}</span></label>"
        for one in question.options
    )
    asked = escape(question.asked or "your answer")
    return f"<fieldset><legend>{asked}</legend>\n{rows}\n</fieldset>"


def _judged(question: ChoiceQuestion) -> dict[str, object]:
    return {
        "asked": question.asked,
        "letter": question.right.letter,
        "options": {one.letter: one.words or one.letter for one in question.options},
        "thoughts": {one.letter: one.thought for one in question.options if one.thought},
    }


def _live(crane: str, link: str) -> str:
    at = escape(crane, quote=True)
    return (
        "<h2>Move it yourself</h2>\n<p>The same crane, with everything that can be moved; the "
        f'model starts in some seconds. <a href="{at}" target="_blank" rel="noopener">On a page '
        f'of its own</a></p>\n<button type="button" id="crane" data-at="{at}">Start it here'
        f"</button>{_code(link)}"
    )


def _code(link: str) -> str:
    """A link for phones that look at the screen."""
    if not link:
        return ""
    at = escape(link, quote=True)
    return (
        f'<figure class="code">{qr_svg(link)}<figcaption>This lift on a phone: <a href="{at}" '
        f'target="_blank" rel="noopener">{at}</a></figcaption></figure>'
    )
