"""Sphinx settings: `sphinx-build -W -b html docs site` builds the site, warnings as errors.

Two pages are written from the code at every build: `commands.md` from the command line's own
parser and `api.md` from the modules' docstrings. The derivations of `derivations.md` are run.
"""

import importlib
import inspect
import pkgutil
import sys
from pathlib import Path
from typing import Any

import boomsim
from boomsim.cli import COMMANDS, parser

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))

project = "boomsim"
author = "the boomsim contributors"
copyright = "2026, the boomsim contributors"
release = boomsim.__version__
extensions = ["myst_parser", "sphinx.ext.mathjax"]
myst_enable_extensions = ["dollarmath", "colon_fence"]
myst_heading_anchors = 3
html_theme = "furo"
html_title = "boomsim"
exclude_patterns = ["_build"]
suppress_warnings = ["myst.header"]


def write_commands() -> None:
    """Write the command reference from the parser."""
    import argparse

    top = parser()
    actions = [a for a in top._actions if isinstance(a, argparse._SubParsersAction)]
    pages = ["# Commands", "", "Written from the command line's own parser.", ""]
    for name in COMMANDS:
        text = actions[0].choices[name].format_help()
        pages += [f"## boomsim {name}", "", "```text", text.rstrip(), "```", ""]
    (HERE / "commands.md").write_text("\n".join(pages), encoding="utf-8")


def write_api() -> None:
    """Write the API reference: every public function and class, signature and docstring."""
    pages = ["# API", "", "Written from the docstrings. Shapes and units stand in brackets.", ""]
    names = sorted(m.name for m in pkgutil.walk_packages(boomsim.__path__, "boomsim."))
    for name in names:
        if name == "boomsim.__main__" or ".families." in name:
            continue
        module = importlib.import_module(name)
        public = [
            (key, value)
            for key, value in vars(module).items()
            if not key.startswith("_")
            and (inspect.isfunction(value) or inspect.isclass(value))
            and value.__module__ == name
        ]
        summary = (inspect.getdoc(module) or "").split("\n\n")[0].replace("\n", " ")
        pages += [f"## {name}", "", summary, ""]
        for key, value in public:
            try:
                signature = str(inspect.signature(value))
            except (TypeError, ValueError):
                signature = "(...)"
            pages += [f"### {name.rsplit('.', 1)[1]}.{key}", "", "```text", key + signature, ""]
            pages += [inspect.getdoc(value) or "", "```", ""]
    (HERE / "api.md").write_text("\n".join(pages), encoding="utf-8")


def run_derivations(app: Any, name: str, source: list[str]) -> None:
    """Run the derivations and set their results below them."""
    if name == "derivations":
        from derived import set_results

        source[0] = set_results(source[0])


def setup(app: Any) -> None:
    """Tell Sphinx what is run while it reads."""
    app.connect("source-read", run_derivations)


write_commands()
write_api()
