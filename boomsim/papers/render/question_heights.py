"""How much room a question will take on a page, estimated well enough to keep it in one piece.

Typst can keep a block in one piece by itself, but then it sets every block twice or more, and a
paper takes three times as long. Here the room is estimated from the texts, on the large side, and
a question that has less room left begins on the next page.
"""

import re

from boomsim.papers.language.formula_markup import PLAIN
from boomsim.papers.language.formula_printing import in_letters, in_numbers
from boomsim.papers.language.question_words import in_plain
from boomsim.papers.paper import Question

LINE, STEP, SLIP, PART, ROW = 14.0, 43.0, 11.5, 18.0, 14.5
"""Height of a line of text, a step of a solution, a slip, an answer line, a row of a table [pt]."""
WIDE, NARROW = 90, 70
"""Characters in a line of a question, and of a formula [1]."""
BROAD = 26
"""Characters of a formula that takes half the width of the marking key [1]."""
MOST = 640.0
"""Nothing asks for more than this: it would fit on no page [pt]."""
_HEIGHT = re.compile(r'height="([\d.]+)pt"')


def height_of(question: Question, *, kind: str) -> float:
    """Estimate the room of one question.

    Parameters
    ----------
    kind : str
        "paper", "solutions" or "marking"

    Returns
    -------
    float
        At most `MOST` [pt]
    """
    height = {"paper": _posed, "solutions": _solved, "marking": _keyed}[kind](question)
    return round(min(height + (45.0 if question.heading else 10.0), MOST), 1)


def room_for_working(question: Question) -> float:
    """Room on the candidate's paper for as many lines as there are steps, asked for or not [pt]."""
    if question.is_choice:
        return 26.0
    return min(34.0 + 28.0 * max(len(question.asked), question.marks), 175.0)


def _posed(question: Question) -> float:
    """Question, room for working, answer lines."""
    lines = max(len(question.asked), 1)
    return _asked(question) + room_for_working(question) + PART * lines


def _solved(question: Question) -> float:
    """Question and first step, or the reason of a choice; the other steps may go on a new page."""
    because = _lines(in_plain(question.problem.pieces(question.problem.because)))
    first = step_height(question, 0) if question.steps else _slips(question)
    return _asked(question) + because * LINE + first + 25.0 * question.is_choice


def step_height(question: Question, place: int) -> float:
    """Estimate the room of one step of a solution; the last one keeps the slips with it [pt].

    Parameters
    ----------
    place : int
        Of the step, from 0 [1]
    """
    problem, step = question.problem, question.steps[place]
    numbers = in_numbers(step.formula, problem.letters, PLAIN, shown=problem.shown)
    letters = in_letters(step.formula, problem.letters, PLAIN)
    long = len(letters) + len(numbers) > NARROW
    height = STEP + LINE * (_lines(step.does) - 1) + 24.0 * long
    is_last = place + 1 == len(question.steps)
    return height + _slips(question) * is_last


def _keyed(question: Question) -> float:
    """Title, a row for each step, slips."""
    steps = () if question.is_choice else question.steps
    stacked = sum("/" in in_letters(one.formula, question.problem.letters, PLAIN) for one in steps)
    below = sum(is_wide(question, place) for place in range(len(steps)))
    rows = 18.0 * len(steps) + 8.0 * stacked + 12.0 * below
    return 42.0 + rows + SLIP * _slip_count(question)


def is_wide(question: Question, place: int) -> bool:
    """Whether a formula leaves no room for words beside it in the marking key.

    Parameters
    ----------
    place : int
        Of the step, from 0 [1]
    """
    formula = question.steps[place].formula
    return len(in_letters(formula, question.problem.letters, PLAIN)) > BROAD


def _asked(question: Question) -> float:
    """Text, picture, table, choices."""
    problem, family = question.problem, question.problem.family
    text = f"{in_plain(problem.pieces(family.text))} {in_plain(problem.pieces(family.assume))}"
    drawn = _HEIGHT.search(problem.picture)
    picture = float(drawn[1]) + 14.0 if drawn else 0.0
    table = ROW * len(problem.table.rows) + 14.0 if problem.table else 0.0
    return _lines(text) * LINE + picture + table + _choices(question)


def _choices(question: Question) -> float:
    """In one row if they are short, else one below the other."""
    texts = [in_plain(one.text) for one in question.problem.choices]
    if not texts:
        return 0.0
    rows = 1 if all(len(text) < 26 for text in texts) else sum(map(_lines, texts))
    return 19.0 * rows + 6.0


def _slips(question: Question) -> float:
    """List what wrong answers give away, under a line of its own."""
    count = _slip_count(question)
    return SLIP * count + 22.0 * (count > 0)


def _slip_count(question: Question) -> int:
    """Count the slips that are listed."""
    wrong = sum(not one.right for one in question.problem.choices)
    return wrong if question.is_choice else len(question.slips())


def _lines(text: str) -> int:
    """Lines that a text takes."""
    return -(-len(text) // WIDE)
