"""docs/class.md: its JupyterHub lines are code that runs, and the commands it names are there."""

import re
from pathlib import Path
from types import SimpleNamespace

import pytest

from boomsim.cli import parser

PAGE = Path(__file__).resolve().parents[2] / "docs" / "class.md"


class Settings:
    """Takes any setting, as the hub's own does."""

    def __getattr__(self, name):
        made = SimpleNamespace()
        setattr(self, name, made)
        return made


def test_the_hub_lines_run_and_give_each_person_the_notebooks(tmp_path):
    lines = re.search(r"```python\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.S).group(1)
    settings = Settings()
    exec(lines, {"get_config": lambda: settings})
    settings.Spawner.pre_spawn_hook(SimpleNamespace(home_dir=str(tmp_path / "ada")))
    assert (tmp_path / "ada" / "explorer.ipynb").is_file()
    assert any("cull_idle_timeout" in one for one in settings.Spawner.args)
    assert len([line for line in lines.splitlines() if line.startswith(("c.", "idle"))]) <= 15


@pytest.mark.parametrize("line", re.findall(r"`boomsim ([^`]+)`", PAGE.read_text(encoding="utf-8")))
def test_every_command_on_the_page_is_understood(line):
    parser().parse_args(line.split())
