"""Machines from files: TOML in, a frozen `Machine` out, or everything that is wrong at once."""

import os
import tomllib
from functools import lru_cache
from os import PathLike
from pathlib import Path
from typing import Any

from boomsim.files.file_errors import FileError, refuse_name
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.machine.file_faults import Fault, MachineFileError
from boomsim.machine.file_schema import MACHINE
from boomsim.machine.model import Machine
from boomsim.machine.value_readers import Reading
from boomsim.units import did_you_mean

LARGEST_FILE = 256 * 1024
"""A machine file is a few kilobytes; anything larger is something else [bytes]."""

_BUILTIN = Path(__file__).with_name("builtin")


@lru_cache(maxsize=1)
def machine_names() -> tuple[str, ...]:
    """List the built-in machines.

    Returns
    -------
    tuple of str
        In alphabetical order
    """
    return tuple(sorted(path.stem for path in _BUILTIN.glob("*.toml")))


def builtin_text(name: str) -> str:
    """Read the file of a built-in machine, to copy and change it.

    Returns
    -------
    str
        TOML with a comment beside every figure
    """
    if name not in machine_names():
        raise MachineFileError(name, [Fault(path="", says=_no_such(name))])
    return (_BUILTIN / f"{name}.toml").read_text(encoding="utf-8")


def load_machine(name_or_path: str | PathLike[str]) -> Machine:
    """Load a machine.

    Parameters
    ----------
    name_or_path : str or path
        Name of a built-in machine, or a TOML file

    Raises
    ------
    MachineFileError
        With every fault: path in the file, what is needed and the way out

    Examples
    --------
    >>> load_machine("yard60").name
    'yard60'
    """
    if isinstance(name_or_path, str) and name_or_path in machine_names():
        return _load_builtin(name_or_path)
    path = Path(name_or_path)
    return read_machine(_read_text(path), str(path))


@lru_cache(maxsize=16)
def _load_builtin(name: str) -> Machine:
    """Load a built-in machine once; it is frozen, so it can be shared."""
    return read_machine(builtin_text(name), f"{name}.toml")


def read_machine(text: str, where: str) -> Machine:
    """Read a machine from text.

    Parameters
    ----------
    text : str
        TOML
    where : str
        Name of the file, for messages

    Raises
    ------
    MachineFileError
        With every fault
    """
    if len(text) > LARGEST_FILE:
        raise MachineFileError(where, [Fault(path="", says=_too_large(len(text)))])
    reading = Reading()
    machine: Machine | None = MACHINE.read(_read_toml(text, where), "", reading)
    if reading.faults or machine is None:
        raise MachineFileError(where, reading.faults)
    return machine


def _read_toml(text: str, where: str) -> dict[str, Any]:
    """Parse TOML; a bad file may also nest too deep or hold an endless integer."""
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        says = f"This is not valid TOML: {error}. Mend it there."
    except (ValueError, RecursionError):
        says = "This is not valid TOML: a number is too long or brackets nest too deep. Mend it."
    raise MachineFileError(where, [Fault(path="", says=says)])


def _read_text(path: Path) -> str:
    """Read a file that may be missing, huge, or no text."""
    try:
        refuse_name(path)
        if not os.path.exists(path) or os.path.isdir(path):  # also for a name that is too long
            raise MachineFileError(str(path), [Fault(path="", says=_no_such(str(path)))])
        return text_of(read_bytes(path, most=LARGEST_FILE), name=str(path))
    except FileError as error:
        says = str(error).removeprefix(f"{path} ")
        raise MachineFileError(str(path), [Fault(path="", says=says)]) from None


def _no_such(name: str) -> str:
    """Say what there is instead."""
    return (
        f"There is no such machine and no such file.{did_you_mean(name, machine_names())} "
        f"Built-in machines are {', '.join(machine_names())}; a file of your own ends in .toml."
    )


def _too_large(size: int) -> str:
    """Refuse a file by its size."""
    return (
        f"The file has {size // 1024} KiB and a machine file has at most "
        f"{LARGEST_FILE // 1024} KiB. Check that it is the right file."
    )
