"""Runs the derivations of `derivations.md` when the site is built, and sets what they give.

Every ```python block of that page is run with sympy, section by section; what a block leaves in
`shown` is set as formulas below it. A derivation that fails stops the build.
"""

import re
from typing import Any

import sympy

BLOCK = re.compile(r"```python\n(.*?)```\n", re.S)
SECTION = re.compile(r"^(?=## )", re.M)


def sections(text: str) -> list[tuple[str, list[str]]]:
    """Title and code blocks of every section of a page."""
    parts = SECTION.split(text)[1:]
    return [(part.splitlines()[0][3:], BLOCK.findall(part)) for part in parts]


def run(blocks: list[str]) -> list[list[Any]]:
    """Run a section's blocks one after another; what each leaves in `shown`."""
    names: dict[str, Any] = {}
    exec("from sympy import *", names)
    return [_run(block, names) for block in blocks]


def _run(block: str, names: dict[str, Any]) -> list[Any]:
    names["shown"] = []
    exec(compile(block, "derivations.md", "exec"), names)
    return list(names["shown"])


def set_results(text: str) -> str:
    """The page with every block's results set below it."""
    results = iter([shown for _, blocks in sections(text) for shown in run(blocks)])

    def with_result(block: re.Match[str]) -> str:
        formulas = [f"$$ {sympy.latex(each)} $$\n" for each in next(results)]
        return block.group(0) + "\n" + "\n".join(formulas)

    return BLOCK.sub(with_result, text)
