"""Every check in a table, source by source: numbers first, then what holds without one."""

from verification.checks import Check
from verification.record import Record, Row
from verification.summary import anchor, sources
from verification.text import Lines, cell, code, number, table, used

SAME = "″"
WIDE_ENOUGH = "<style>#{} td:nth-last-child(2) {{ min-width: 18em }}</style>"
HEAD = [
    "check",
    "quantity",
    "expected",
    "computed",
    "deviation",
    "tolerance",
    "remark, and reason of the tolerance",
    "status",
]


def details(record: Record, checks: list[Check], rows: list[Row], folder: str, title: str) -> Lines:
    """One half of the page."""
    own = [check for check in checks if check.folder == folder]
    lines = [f"## {title}", "", *_how_to_read(folder), WIDE_ENOUGH.format(anchor(title)), ""]
    for source in sources(own):
        some = [check for check in own if check.source == source]
        lines += _of_source(record, source, some, [row for row in rows if row.check in some])
    return lines


def _how_to_read(folder: str) -> Lines:
    which = (
        "each printed figure has a row; of an array the value nearest to its tolerance is shown."
        if folder == "published"
        else "of all random draws of a check the one nearest to its tolerance is shown."
    )
    return [
        f"Rows: {which} The quantity is the test's own expression; in brackets how much of"
        " the tolerance is used. What is said of tolerances above a table holds for its rows."
        " Conditions that stand beside a number in the same test are not repeated.",
        "",
    ]


def _of_source(record: Record, source: str, checks: list[Check], rows: list[Row]) -> Lines:
    about = list(dict.fromkeys(check.about for check in checks))
    lines = [f"### {source}", "", *(f"- {cell(text)}" for text in about), ""]
    if rows:
        lines += table(HEAD, _numbers(rows))
    measured = {row.check for row in rows}
    rest = [check for check in checks if check not in measured]
    if rest:
        head = ["check", "outcome", "what holds", "remark", "status"]
        lines += table(head, (_held(record, check) for check in rest))
    return lines


def _numbers(rows: list[Row]) -> list[list[str]]:
    made, before = [], ["", ""]
    for row in rows:
        line = _line(row)
        own = [line[0], line[6]]
        for k, at in enumerate((0, 6)):
            line[at] = SAME if own[k] == before[k] and own[0] == before[0] else own[k]
        line[0] += f" [{row.case}]" if row.case else ""
        line[0] += f" (worst of {number(row.count)})" if row.count > 1 else ""
        before = own
        made.append(line)
    return made


def _line(row: Row) -> list[str]:
    worst = row.worst
    share = used(worst.used) if worst.within else "**missed**"
    return [
        row.check.sentence,
        code(row.assertion.text.split(" == pytest.approx")[0]),
        number(worst.expected),
        number(worst.computed),
        f"{worst.deviation:+.2g} ({share})",
        f"{worst.tolerance:.2g}",
        _placed(row.check, row.assertion.said),
        row.check.status,
    ]


def _placed(check: Check, words: str) -> str:
    """Where in the source, before what is said about it."""
    said = check.place and all(one in words for one in check.place.split(", "))
    return words if said or not check.place else f"**{check.place}.** {words}"


def _held(record: Record, check: Check) -> list[str]:
    outcomes = record.ran(check)
    lost = any(one.compares for one in check.assertions)
    bad = [how for how in outcomes if how != "passed"] + ["numbers not recorded"] * lost
    many = f", {len(outcomes)} cases" if len(outcomes) > 1 else ""
    texts = [code(one.text) for one in check.assertions]
    return [
        check.sentence,
        f"**{bad[0]}**{many}" if bad else f"holds{many}",
        "; ".join(texts) or "is refused",
        _placed(check, check.remark),
        check.status,
    ]
