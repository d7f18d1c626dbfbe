"""What working every limit of a thousand rated cells once more has found, limit by limit."""

from verification.record import Record
from verification.text import Lines, number, percent, table

HEAD = ["limit", "sets the figure in", "compared", "held to", "largest deviation"]


def rated_again(record: Record) -> Lines:
    """The table; nothing where the study was not made."""
    lines: Lines = []
    for study in record.of_kind("rated again"):
        rows = [
            [
                kind,
                f"{number(int(one['governs']))} cells",
                number(int(one["compared"])),
                percent(one["promise"]),
                percent(one["worst"]) if one["compared"] else "–",
            ]
            for kind, one in study["limits"].items()
        ]
        lines += [
            "## Rated once more",
            "",
            f"{number(int(study['cells']))} places on charts of built-in, altered and random"
            " cranes, rated by boomsim, and every limit at the rated load worked again by"
            " formulas that share no code with it. At the rated load the largest utilisation is"
            f" one, and {percent(study['above'] - 1.0)} above it more than one, in every cell."
            " Compared are limits that are used by more than half.",
            "",
            *table(HEAD, rows, right=1),
        ]
    return lines
