"""Fuzz machine files: text into `load_machine`, and what is accepted into the commands.

pip install atheris
python tests/fuzz/machine_files.py -max_total_time=60
"""

from typing import Any

import contract
import edits

from boomsim.machine.file_faults import MachineFileError
from boomsim.machine.machine_files import builtin_text, load_machine, machine_names

TEXTS = [builtin_text(name) for name in machine_names()]
WAYS = (
    ["describe"],
    ["describe", "--json"],
    ["describe", "--toml"],
    ["lift", "--load", "100 kg"],
    ["lift", "--json"],
    ["compare", "--json"],
    ["compare", "--radii", "2 m, 5 m, 9 m", "--units", "us"],
    ["range"],
    ["around", "--json"],
    ["around"],
    ["overload"],
    ["overload", "--json"],
    ["losses"],
    ["chart", "--json"],
    ["chart"],
    ["compare", "--slew", "rear", "--rule", "limit-states"],
)


def trial(draw: Any) -> None:
    """Raw bytes, or a built-in machine with a few edits."""
    kind = draw.ConsumeIntInRange(0, 15)
    with contract.folder() as where:
        path = where / "machine.toml"
        if kind == 0:
            path.write_bytes(draw.ConsumeBytes(20000))
        else:
            text = TEXTS[draw.ConsumeIntInRange(0, len(TEXTS) - 1)]
            path.write_bytes(edits.edited(text, draw).encode("utf-8", "replace"))
        try:
            load_machine(path)
        except MachineFileError as error:
            assert error.faults and all(fault.says.strip() for fault in error.faults)
            return
        command, *options = WAYS[draw.ConsumeIntInRange(0, len(WAYS) - 1)]
        given = path.read_text(encoding="utf-8", errors="replace")
        contract.run([command, str(path), *options], where=where, given=given)


if __name__ == "__main__":
    raw = [b"\x00" + text.encode() for text in TEXTS]
    contract.fuzz(trial, seeds=raw)
