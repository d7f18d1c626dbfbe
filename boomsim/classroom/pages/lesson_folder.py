"""A folder with all lessons as pages, for any web server, a memory stick or an LMS.

With a runtime the crane is live there, too: one page, one copy of the runtime beside it.
"""

import re
from html import escape

from boomsim.classroom.lesson_scenes import lesson_address
from boomsim.classroom.pages.lesson_pages import filled, lesson_page
from boomsim.files.work_progress import Told, counted
from boomsim.lab.live.bytecode import Compiler
from boomsim.lab.live.live_page import live_page
from boomsim.lab.live.python_runtime import Runtime
from boomsim.lab.page.page_file import page
from boomsim.lab.page.page_states import ways_of
from boomsim.lab.scene.scene import first_scene, machine_of
from boomsim.lessons.lesson_order import LESSONS
from boomsim.lessons.lesson_parts import Lesson
from boomsim.rating.comparison.comparison_study import demonstration

CRANE, RUNTIME, WAYS, INDEX = "crane.html", "runtime.js", "three-ways.html", "index.html"

HOW = (
    "One question each. You choose an answer first; then the page shows what the model says and "
    "why, and asks once more at the end. Nothing is sent anywhere, and no network is needed."
)


def lesson_folder(
    lessons: tuple[Lesson, ...],
    *,
    units: str,
    runtime: Runtime | None,
    compiler: Compiler | None,
    address: str = "",
    told: Told | None = None,
) -> dict[str, bytes]:
    """Write all files of the folder.

    Parameters
    ----------
    runtime : Runtime or None
        Without it the crane's page has every state worked out before, and not everything moves
    compiler : Compiler or None
        With one the live crane starts in about half the time
    address : str
        Web address of the folder: links and their codes begin with it
    told : callable, optional
        Hears what is done

    Returns
    -------
    dict of str to bytes
        By name; nothing lies deeper
    """
    made, web = {}, f"{address.rstrip('/')}/{CRANE}" if address and runtime is not None else ""
    for one in counted(lessons, what="running lessons", told=told):
        state = lesson_address(one, units=units)
        crane = "" if runtime is None else f"{CRANE}#{state}"
        link = f"{web}#{state}" if web else ""
        text = lesson_page(one, units=units, nav=_nav(one, lessons), crane=crane, link=link)
        made[f"{one.file}.html"] = text
    if runtime is None:
        scene = first_scene()
        ways = demonstration(machine_of(scene.machine).boom)
        made[WAYS] = page(ways_of(scene, ways, units=units), told=told)
    else:
        whole = live_page(
            runtime, first_scene(), units=units, compiler=compiler, address=web, told=told
        )
        made[CRANE], made[RUNTIME] = parted(whole)
    made[INDEX] = _index(lessons, live=runtime is not None)
    return {name: text.encode("utf-8") for name, text in made.items()}


_PART = re.compile(r'<script type="text/plain" id="part-(\w+)">([A-Za-z0-9+/=]*)</script>\n?')

_LAY_OUT = """for (const [name, text] of Object.entries(parts)) {
  const held = document.createElement('script');
  Object.assign(held, {type: 'text/plain', id: `part-${name}`, textContent: text});
  document.currentScript.before(held);
}
"""
"""A script, since a page that was opened as a file may read no other file in any other way."""


def parted(whole: str) -> tuple[str, str]:
    """Part a live page from what it carries, so that many pages can share one copy.

    Parameters
    ----------
    whole : str
        As :func:`boomsim.lab.live.live_page.live_page` writes it

    Returns
    -------
    str, str
        The page, and the script that it takes the rest from

    Raises
    ------
    ValueError
        If the page carries nothing
    """
    parts = _PART.findall(whole)
    if not parts:
        raise ValueError("The live page carries no runtime. Write it with one.")
    bare = _PART.sub("", whole).replace("in this file", "in this folder")
    bare = bare.replace("script-src 'unsafe-inline'", "script-src 'self' file: 'unsafe-inline'", 1)
    first = '<script type="application/json" id="first">'
    if first not in bare:
        raise ValueError("The live page is of another form than it was. Write it in one file.")
    bare = bare.replace(first, f'<script src="{RUNTIME}"></script>\n{first}', 1)
    held = ",\n".join(f'{name}: "{text}"' for name, text in parts)
    return bare, f"'use strict';\nconst parts = {{{held}}};\n{_LAY_OUT}"


def _nav(lesson: Lesson, lessons: tuple[Lesson, ...]) -> str:
    place = lessons.index(lesson)
    links = [f'<a href="{INDEX}">All lessons</a>']
    if place > 0:
        before = lessons[place - 1]
        links.append(f'<a href="{before.file}.html">← {before.number}</a>')
    if place + 1 < len(lessons):
        after = lessons[place + 1]
        links.append(f'<a href="{after.file}.html">{after.number} {escape(after.title)} →</a>')
    else:
        links.append("<span>The last lesson</span>")
    return "".join(links)


def _index(lessons: tuple[Lesson, ...], *, live: bool) -> str:
    rows = "\n".join(
        f'<li><a href="{one.file}.html"><b>{one.number}</b><span>{escape(one.title)}</span>'
        f'<span class="small">You will be able to {escape(one.able[0])}.</span></a></li>'
        for one in lessons
    )
    crane = (
        f'<p><a class="button" href="{CRANE}">The crane, live</a> Everything on it can be moved; '
        "the model is in these files and starts in some seconds.</p>"
        if live
        else f'<p><a class="button" href="{WAYS}">One length, three ways</a> One boom length at '
        "every radius.</p>"
    )
    missing = len(LESSONS) - len(lessons)
    some = f'<p class="small">{missing} more lessons are not in this folder.</p>' if missing else ""
    return filled(
        TITLE="boomsim: lessons about a telescoping boom",
        NAV="<span>boomsim</span>",
        BODY=f"<h1>Why does one boom length lift differently?</h1>\n<p>{escape(HOW)}</p>\n"
        f'<ol class="lessons">\n{rows}\n</ol>\n{some}{crane}',
        DATA="",
    )
