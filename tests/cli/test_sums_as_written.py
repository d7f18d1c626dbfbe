"""What a reader adds up or takes away, from the figures as they are written, comes out."""

import re

import pytest

from boomsim.cli import main

MASS = r"([\d,]+(?:\.\d+)?) (?:t|kg|lb)"
READ = [
    (machine, where, units)
    for machine, places in {
        "yard60": ("8.3 m, 11.5 m", "12 m, 25.9 m", "17.2 m, 36.7 m", "30 m, 43 m"),
        "truck18": ("6 m, 12.7 m", "9.5 m, 22 m", "14 m, 28.5 m"),
        "bench": ("0.45 m, 0.9 m", "0.33 m, 0.73 m"),
    }.items()
    for where in places
    for units in ("metric", "us")
]


def said(capsys: pytest.CaptureFixture[str], *given: str) -> str:
    assert main(list(given)) == 0
    return re.sub(r"\s+", " ", capsys.readouterr().out)


def tenths(figure: str) -> int:
    """A figure in its last hundredths, so that nothing is lost in a sum."""
    return round(100 * float(figure.replace(",", "")))


@pytest.mark.parametrize(("machine", "where", "units"), READ)
def test_a_reading_and_its_misreadings_add_up(machine, where, units, capsys) -> None:
    told = said(capsys, "chart", machine, "--read", where, "--units", units)
    cell = tenths(re.search(rf"The cell says {MASS} gross", told)[1])
    left = tenths(re.search(rf"that leaves {MASS} for the load", told)[1])
    deducted = re.search(r"Deduct (.*?): that leaves", told)[1]
    taken = dict(re.findall(rf"(hook block|slings|falls of (?:rope|line)) {MASS}", deducted))
    assert taken
    assert cell - sum(map(tenths, taken.values())) == left
    wrong = re.findall(rf"The reader ([^:]*): {MASS} for the load, {MASS} (more|less)", told)
    assert wrong
    for words, figure, apart, way in wrong:
        assert tenths(figure) - left == tenths(apart) * (1 if way == "more" else -1), words
    # Who forgot one deduction is wrong by what was told to be deducted.
    for words, _, apart, _ in wrong:
        for name, mass in taken.items():
            if words.startswith("forgot to deduct") and words.endswith(name):
                assert tenths(apart) == tenths(mass)


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize(
    "pick",
    [
        ("yard60", "--radius", "8 m", "--load", "5 t"),
        ("yard60", "--radius", "13.2 m", "--load", "3.33 t"),
        ("truck18", "--radius", "6 m", "--load", "2 t"),
        ("bench", "--radius", "0.8 m", "--load", "0.2 kg"),
    ],
)
def test_a_pick_adds_up(pick, units, capsys) -> None:
    told = said(capsys, "pick", *pick, "--units", units)
    terms, gross = re.search(rf"All that hangs counts: (.*?) = {MASS} gross", told).groups()
    parts = re.findall(rf"[a-z] {MASS}", terms)
    assert len(parts) == terms.count("+") + 1
    assert sum(map(tenths, parts)) == tenths(gross)
    figures = re.search(
        rf"says {MASS} gross \([^)]*\), {MASS} (more|less) than the {MASS} that hang", told
    )
    cell, apart, way, hangs = figures.groups()
    assert tenths(cell) - tenths(hangs) == tenths(apart) * (1 if way == "more" else -1)
    grown = re.search(r"Measured ([\d.]+) (?:m|ft) .*?grows by ([\d.]+) \S+ to ([\d.]+)", told)
    if grown:
        assert tenths(grown[1]) + tenths(grown[2]) == tenths(grown[3])
