"""Every derivation of the documentation holds, section by section."""

import importlib.util
from pathlib import Path

import pytest

pytest.importorskip("sympy")
DOCS = Path(__file__).parents[1] / "docs"
_spec = importlib.util.spec_from_file_location("derived", DOCS / "derived.py")
assert _spec is not None
assert _spec.loader is not None
derived = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(derived)
PAGE = (DOCS / "derivations.md").read_text(encoding="utf-8")
SECTIONS = derived.sections(PAGE)


@pytest.mark.parametrize(("title", "blocks"), SECTIONS, ids=[title for title, _ in SECTIONS])
def test_a_derivation_holds(title, blocks):
    assert blocks, "a section without a derivation"
    assert any("assert" in block for block in blocks)
    derived.run(blocks)


def test_a_derivation_that_does_not_hold_stops_the_build():
    page = "# Page\n\n## Wrong\n\n```python\nassert expand((1 + pi)**2) == 1 + pi**2\n```\n"
    with pytest.raises(AssertionError):
        derived.set_results(page)


def test_what_a_derivation_gives_is_set_below_it():
    page = "# Page\n\n## Right\n\n```python\nx = Symbol('x')\nshown = [Eq(x, sqrt(2))]\n```\n"
    assert page in derived.set_results(page)
    assert r"$$ x = \sqrt{2} $$" in derived.set_results(page)
