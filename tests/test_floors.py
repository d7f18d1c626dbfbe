"""The rooms of the package: imports point down the list only, and the cheap stays cheap."""

import ast
import subprocess
import sys
from collections import Counter
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "boomsim"
FLOORS = (
    "files",
    "units",
    "machine",
    "mechanics",
    "rating",
    "figures",
    "reports",
    "face",
    "papers",
    "lessons",
    "game",
    "lab",
    "classroom",
    "cli",
)
"""From the ground up. `caution`, `gravity` and `version` are free to all."""

FREE = ("caution", "gravity", "version")
ROOF = ("__init__", "__main__")
NOT_IN_MECHANICS = {"pint", "matplotlib", "ipywidgets", "pathlib", "io", "os", "sympy", "tomllib"}


def room(path: Path) -> str:
    inside = path.relative_to(PACKAGE)
    return inside.parts[0].removesuffix(".py")


def imported(path: Path) -> list[str]:
    names = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import hides which room it enters"
            names += [f"{node.module}.{alias.name}" for alias in node.names]
    return names


MODULES = [path for path in sorted(PACKAGE.rglob("*.py")) if room(path) not in FREE + ROOF]


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_imports_point_down_only(path):
    own = FLOORS.index(room(path))
    for name in imported(path):
        parts = name.split(".")
        if parts[0] != "boomsim" or (parts[1:2] and parts[1] in FREE):
            continue
        # What the package itself offers is the face's, so whoever asks it stands above the face.
        entered = parts[1] if parts[1:2] and parts[1] in FLOORS else "face"
        assert FLOORS.index(entered) <= own, f"{path} is in {room(path)} and imports {name}"


def inside(name: str) -> Path | None:
    """File of a module, or of the module that a name is taken from; None outside the package."""
    for parts in (name.split(".")[1:], name.split(".")[1:-1]):
        file = PACKAGE.joinpath(*parts).with_suffix(".py")
        if name.startswith("boomsim.") and file.is_file():
            return file.relative_to(PACKAGE)
    return None


@cache
def arrows() -> set[tuple[Path, Path]]:
    """Which file imports which, the late imports inside functions too."""
    found = {(path.relative_to(PACKAGE), inside(n)) for path in MODULES for n in imported(path)}
    return {(one, other) for one, other in found if other is not None and one != other}


def in_order(pairs: set[tuple[Path, Path]]) -> list[Path]:
    """From the ground up; CycleError where files or rooms import each other."""
    needs: dict[Path, set[Path]] = {}
    for one, other in pairs:
        needs.setdefault(one, set()).add(other)
    return list(TopologicalSorter(needs).static_order())


def test_no_files_import_each_other():
    assert len(in_order(arrows())) > 300


WITH_ROOMS = sorted({*FLOORS} - {"cli", "classroom", "files", "units"})


@pytest.mark.parametrize("floor", WITH_ROOMS)
def test_no_rooms_of_a_floor_import_each_other(floor):
    """A room is a folder of the floor, or a file that lies on it."""
    within = [(one.parts, other.parts) for one, other in arrows()]
    rooms = {(a[1], b[1]) for a, b in within if a[0] == b[0] == floor and a[1] != b[1]}
    assert len(in_order({(Path(a), Path(b)) for a, b in rooms})) > 4


def test_a_file_name_says_which_file():
    """In a traceback's last line, and where an editor opens a file by its name."""
    names = Counter(path.name for path in MODULES if path.name != "__init__.py")
    assert [name for name, times in names.items() if times > 1] == []


def taken_at_the_top(path: Path) -> set[str]:
    body = ast.parse(path.read_text(encoding="utf-8")).body
    names = [alias for node in body if isinstance(node, ast.ImportFrom) for alias in node.names]
    return {alias.asname or alias.name for alias in names}


def test_a_name_is_imported_from_the_file_that_defines_it():
    """So that the import says where to look."""
    taken = {path.relative_to(PACKAGE): taken_at_the_top(path) for path in MODULES}
    passed_on = [
        f"{path.relative_to(PACKAGE)}: {name}"
        for path in MODULES
        for name in imported(path)
        if "." in name and name.rsplit(".", 1)[1] in taken.get(inside(name), ())
    ]
    assert passed_on == []


def test_every_module_is_in_a_known_room():
    assert {room(path) for path in MODULES} == set(FLOORS)


@pytest.mark.parametrize(
    "path", sorted((PACKAGE / "mechanics").rglob("*.py")), ids=lambda path: path.name
)
def test_mechanics_knows_no_units_library_no_figures_no_widgets_no_files(path):
    used = {name.split(".")[0] for name in imported(path)}
    assert not used & NOT_IN_MECHANICS
    assert "boomsim.units" not in {".".join(name.split(".")[:2]) for name in imported(path)}


def test_help_imports_nothing_that_computes():
    code = (
        "import sys\n"
        "from boomsim.cli import main\n"
        "try: main(['--help'])\n"
        "except SystemExit: pass\n"
        "heavy = {'numpy', 'scipy', 'matplotlib', 'pint', 'sympy', 'ipywidgets', 'typst'}\n"
        "print('HEAVY', sorted(heavy & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert done.stdout.strip().endswith("HEAVY []")


def test_a_comparison_without_a_picture_draws_nothing():
    code = (
        "import sys, io, contextlib\n"
        "from boomsim.cli import main\n"
        "with contextlib.redirect_stdout(io.StringIO()):\n"
        "    main(['compare', '--length', '18.7 m', '--radii', '6 m'])\n"
        "print('HEAVY', sorted({'matplotlib', 'pint', 'sympy'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert done.stdout.strip().endswith("HEAVY []")
