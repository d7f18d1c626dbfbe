"""The class of 45 minutes: scenes, timings, questions and the wrong answers to expect."""

from dataclasses import dataclass, replace

from boomsim.lessons.first_guess import said_of
from boomsim.lessons.lesson_display import Table, table
from boomsim.lessons.lesson_order import lesson_named


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """One scene of the class.

    Attributes
    ----------
    lesson : str
        Number of the lesson that it is taken from
    show : str
        What is on the screen
    ask : str
        What the class is asked before anything is shown
    point : str
        What must have been said when the scene ends
    wrong : tuple of (str, str)
        What a class says, and what to answer
    """

    name: str
    minutes: int
    lesson: str
    show: str
    ask: str
    point: str
    wrong: tuple[tuple[str, str], ...]


SCENES = (
    Scene(
        name="Hands up",
        minutes=5,
        lesson="02",
        show="three booms of one length, nothing else",
        ask=(
            "Same length, same crane, same radius. Which carries most? Write it down, then hands "
            "up."
        ),
        point="everybody has bet on something; do not tell yet",
        wrong=(
            ("All the same: same length, same load.", "Then why can it be run out in three ways?"),
            ("C, heavy steel is strong steel.", "Good reason. Close in or far out?"),
        ),
    ),
    Scene(
        name="The surprise",
        minutes=8,
        lesson="02",
        show="rated load over radius for all three",
        ask="Where does the lead change, and who leads then?",
        point="there is no best way, only a best way at a radius",
        wrong=(
            ("The lead changes where the curves are steep.", "Look where they cross."),
            (
                "A broken line is a guess.",
                "Broken: strength or a maker's value sets it. Whole: stability does.",
            ),
        ),
    ),
    Scene(
        name="Kilograms",
        minutes=8,
        lesson="02",
        show="the difference of two ways, section by section",
        ask="Which section costs most when it goes out, and why?",
        point="boom weight costs the more load the farther out it lies; nested it costs little",
        wrong=(
            ("The longest section costs most.", "They are nearly of one length. Look at the mass."),
            ("Weight is weight, wherever it is.", "About which line does the crane turn over?"),
        ),
    ),
    Scene(
        name="Close in",
        minutes=8,
        lesson="04",
        show="bending moment section by section, and the pads",
        ask="Where would you look for the first crack in A? In C?",
        point=(
            "the moment passes from section to section through two pads; short overlap, hard pads"
        ),
        wrong=(
            ("At the tip, where the load hangs.", "How large is the moment there?"),
            ("In the middle of the boom.", "Where does a section leave its neighbour?"),
        ),
    ),
    Scene(
        name="Breaks or tips",
        minutes=8,
        lesson="07",
        show="what happens past the rated load, close in and far out",
        ask="An old hand says: the crane gets light before anything happens. True?",
        point=(
            "far out it tips first, close in it breaks with every float still down; the bold line "
            "parts what sets the figures, and errs on the safe side about what comes first"
        ),
        wrong=(
            ("A float that lifts is the warning.", "Far out one lifts below the rated load."),
            (
                "The margin is the same everywhere.",
                "Strength keeps a larger one than stability: look at the multiples.",
            ),
            (
                "The bold line says what comes first.",
                "It says what sets a figure. Look above it.",
            ),
        ),
    ),
    Scene(
        name="Check yourself",
        minutes=8,
        lesson="05",
        show="the self-check, first alone, then in pairs",
        ask="Read the answers aloud with their units. Who can say how a wrong one came about?",
        point="a wrong number has a reason, and the reason can be named",
        wrong=(
            ("I have the number, the unit is clear.", "Then write it: t and kN are not the same."),
        ),
    ),
)
"""In order; together 45 minutes."""

LENGTH = 45
"""Of the class [min]."""


def timetable() -> Table:
    """List the scenes with their clock."""
    rows, clock = [], 0
    for scene in SCENES:
        rows.append((scene.name, f"{clock} to {clock + scene.minutes}", scene.lesson, scene.show))
        clock += scene.minutes
    return table("scene | minute | lesson | on the screen", *rows)


def scene_named(name: str) -> Scene:
    """Find a scene.

    Raises
    ------
    ValueError
        If there is none of this name
    """
    for scene in SCENES:
        if scene.name == name:
            return scene
    raise ValueError(f"There is no scene {name!r}. Choose one of {[s.name for s in SCENES]}.")


def script(name: str) -> Table:
    """Say what to ask in a scene, what the class will say, and what to answer."""
    scene = scene_named(name)
    rows = [
        ("ask", scene.ask),
        *(("they say", f"“{said}” – {reply}") for said, reply in scene.wrong),
        ("must be said", scene.point),
    ]
    return table(f"{scene.name} | {scene.minutes} minutes", *rows)


def wrong_answers(number: str, *, units: str = "metric") -> Table:
    """Answers to expect from a lesson's self-check, right and wrong.

    Parameters
    ----------
    number : str
        Of the lesson
    """
    check = lesson_named(number).check(units)
    slips = sorted(check.slips.items(), key=lambda item: item[1])
    rows = [("is right", check.exact), *((words, check.said(value)) for words, value in slips)]
    return table("whoever writes this … | answer", *rows, capacity=True)


def right_guesses(number: str, *, units: str = "metric") -> Table:
    """Say what the model says to a lesson's guess.

    Parameters
    ----------
    number : str
        Of the lesson
    """
    guess = lesson_named(number).guess(units)
    rows = [(truth.what, said_of(truth, units)) for truth in guess.truths]
    return table("asked | the model says", *rows, capacity=True)


def wrong_guesses(number: str, *, units: str = "metric") -> Table:
    """Wrong guesses to expect in a lesson, and the thought that leads to each.

    Parameters
    ----------
    number : str
        Of the lesson
    """
    rows = []
    for truth in lesson_named(number).guess(units).truths:
        for words, wrong in truth.wrong_guesses():
            said = said_of(replace(truth, answer=wrong, slips={}), units)
            rows.append((truth.what, said, words))
    return table("asked | whoever guesses … | probably …", *rows, capacity=True)
