"""What is wrong with a machine file: where in it, and what to do."""

from collections.abc import Iterable
from dataclasses import dataclass

_MOST_SHOWN = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing that is wrong.

    Attributes
    ----------
    path : str
        "boom.sections[2].stroke"; empty for the file as a whole
    says : str
        Which value, what is needed and the way out
    """

    path: str
    says: str

    def __str__(self) -> str:
        return f"{self.path}: {self.says}" if self.path else self.says


class MachineFileError(ValueError):
    """A machine that cannot be used, with everything that is wrong with it.

    Attributes
    ----------
    where : str
        File or name of the machine
    faults : tuple of Fault
    """

    def __init__(self, where: str, faults: Iterable[Fault]) -> None:
        self.where = where
        self.faults = tuple(faults)
        super().__init__(_report(where, self.faults))


def _report(where: str, faults: tuple[Fault, ...]) -> str:
    """Put the faults under the name of the file."""
    if len(faults) == 1:
        return f"{where}: {faults[0]}"
    lines = [f"{where} has {len(faults)} faults:"]
    lines += [f"  {fault}" for fault in faults[:_MOST_SHOWN]]
    if len(faults) > _MOST_SHOWN:
        lines.append(f"  … and {len(faults) - _MOST_SHOWN} more.")
    return "\n".join(lines)
