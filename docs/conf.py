"""Sphinx settings: `sphinx-build -W -b html docs site` builds the site, warnings as errors.

What can be written from the code is (see `written.py`), and the derivations are run (`derived.py`).
"""

import gc
import sys
from functools import partial
from pathlib import Path
from typing import Any

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))

from derived import set_results  # noqa: E402
from docutils.nodes import SkipNode  # noqa: E402
from latex2mathml.converter import convert  # noqa: E402
from reference import Names, escape, link  # noqa: E402
from written import write_all  # noqa: E402

import boomsim  # noqa: E402

project = "boomsim"
author = "the boomsim contributors"
copyright = "2026, the boomsim contributors"
release = boomsim.__version__
extensions = ["myst_parser", "sphinx.ext.autodoc", "sphinx.ext.napoleon"]
autodoc_default_options = {"members": True, "member-order": "bysource"}
autodoc_typehints = "signature"  # the docstrings add shape and unit
autodoc_use_type_comments = False  # there are none; each would be looked for
napoleon_google_docstring = False
napoleon_use_ivar = True
napoleon_use_rtype = False
toc_object_entries = False
myst_enable_extensions = ["dollarmath", "colon_fence"]
myst_heading_anchors = 3
html_theme = "furo"
html_title = "boomsim"
html_static_path = ["static"]
html_css_files = ["site.css"]
default_role = "code"  # names in docstrings
html_math_renderer = "mathml"
html_theme_options = {
    # Eighty characters of what a command prints fit in a line.
    f"{side}_css_variables": {"code-font-size": "0.72rem"}
    for side in ("light", "dark")
}
exclude_patterns = ["_build", "shown", "asked"]
# A study, its result in the face and a page of it share a name: an annotation takes the first.
suppress_warnings = ["myst.header", "ref.python"]


def run_derivations(app: Any, name: str, source: list[str]) -> None:
    """Run the derivations and set their results below them."""
    if name == "derivations":
        source[0] = set_results(source[0])


def mathml(writer: Any, node: Any, *, display: str) -> None:
    """Write a formula as MathML, which browsers set themselves: no script, no network."""
    writer.body.append(convert(node.astext(), display=display))
    raise SkipNode


def setup(app: Any) -> dict[str, bool]:
    """Tell Sphinx what is run while it reads, and how formulas are written."""
    app.connect("source-read", run_derivations)
    app.connect("autodoc-process-docstring", escape, priority=400)
    app.connect("autodoc-process-docstring", link, priority=600)  # after numpydoc's sections
    inline, block = (partial(mathml, display=how) for how in ("inline", "block"))
    app.add_html_math_renderer("mathml", (inline, None), (block, None))
    app.add_domain(Names, override=True)
    return {"parallel_read_safe": True, "parallel_write_safe": True}


# A site is a million small things that stay: to look through them again and again frees nothing.
gc.set_threshold(200_000, 50, 50)
write_all()
